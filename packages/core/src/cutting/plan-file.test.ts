import { describe, expect, test } from "vitest";
import { readPlan, writePlan } from "./plan-file.ts";
import type { Plan } from "./types.ts";

/** A 20 × 10 stick with one 5 × 4 rebate on the far edge, then a corner sawn off: made by hand. */
const PLAN: Plan = {
  format: "mouldwright/plan",
  version: 1,
  unit: "mm",
  name: "Rebate",
  tolerance: 0.2,
  shelf: {
    format: "mouldwright/shelf",
    version: 1,
    unit: "mm",
    planes: [{ id: "rebate-19", kind: "rebate", width: 19 }],
  },
  assumed: [],
  warnings: [],
  way: "flat",
  ways: [{ way: "flat", cuts: 2, settings: 2, minutes: 12.5, why: "the only way tried" }],
  standing: "proven least",
  stick: [
    [0, 0],
    [20, 0],
    [20, 10],
    [0, 10],
  ],
  section: [
    [0, 0],
    [18, 0],
    [20, 2],
    [20, 6],
    [15, 6],
    [15, 10],
    [0, 10],
  ],
  planned: [
    [0, 0],
    [18, 0],
    [20, 2],
    [20, 6],
    [15, 6],
    [15, 10],
    [0, 10],
  ],
  parts: [{ id: "p1", kind: "step", name: "rebate", from: [15, 10], to: [20, 6], madeBy: [1] }],
  marks: [
    {
      id: "m1",
      before: 1,
      kind: "place",
      at: [15, 10],
      from: "gauge edge",
      distance: 15,
      fromGaugeEdge: 15,
      error: 0.2,
    },
  ],
  cuts: [
    {
      number: 1,
      purpose: "waste",
      plane: { id: "rebate-19", kind: "rebate", width: 19 },
      cant: 0,
      sole: [
        [-9.5, 0],
        [9.5, 0],
      ],
      runs: [[[24.5, 6, 0]]],
      after: [
        [
          [0, 0],
          [20, 0],
          [20, 6],
          [15, 6],
          [15, 10],
          [0, 10],
        ],
      ],
      takes: 20,
      wall: [4, 0],
      seat: null,
      runsAgainst: "far edge",
      fence: 5,
      setting: 1,
      passes: 27,
      shaving: 0.15,
      minutes: 6.5,
      says: "Rebate plane, upright, fence 5 mm from the far edge.",
      doneWhen: "the stop bears",
    },
    {
      number: 2,
      purpose: "saw",
      plane: { id: "saw", kind: "saw" },
      cant: 0,
      line: [
        [18, 0],
        [20, 2],
      ],
      after: [],
      takes: 2,
      wall: [0, 0],
      seat: null,
      runsAgainst: "line m1",
      setting: 2,
      passes: 1,
      shaving: 0,
      minutes: 6,
      says: "Saw the corner off.",
      doneWhen: "it is off",
    },
  ],
  finish: {
    proud: 0,
    under: 0,
    rms: 0,
    joins: [{ at: [15, 6], kind: "step", angle: 90, gap: 0, error: 0.1 }],
  },
  uncut: [],
};

/** The plan's file with something in it changed; `path` as in troubles. */
function changed(change: (file: Record<string, unknown>) => void): string {
  const file = JSON.parse(writePlan(PLAN)) as Record<string, unknown>;
  change(file);
  return JSON.stringify(file);
}

function refusal(text: string): { readonly code: string; readonly where: string } {
  const outcome = readPlan(text);
  if (outcome.ok) throw new Error("the file was read, but should have been refused");
  return { code: outcome.trouble.code, where: outcome.trouble.where };
}

type Cut = Record<string, unknown>;
const cutsOf = (file: Record<string, unknown>): Cut[] => file.cuts as Cut[];

describe("writePlan", () => {
  test("what older files do not say is kept where it is said", () => {
    const [mark] = PLAN.marks;
    const [way] = PLAN.ways;
    const fuller: Plan = {
      ...PLAN,
      gaugeEdge: "right",
      ways: [{ ...way!, uncut: 3 }],
      marks: [{ ...mark!, serves: "join", errorFromEdge: 0.332, errorFromFoot: 0.229 }],
      bands: [
        {
          name: "reeds",
          from: [2, 10],
          to: [12, 10],
          width: 10,
          cuts: [1],
          linesFrom: "gauge edge",
          error: 0.3,
          errorFromEdge: 0.3,
          errorFromFoot: 0.7,
        },
      ],
      time: {
        totalMinutes: 12.5,
        settingMinutes: 6,
        strokeMinutes: 5,
        testPieceMinutes: 1,
        sharpeningMinutes: 0.5,
        reckonedWith: { setMinutes: 3, sticks: 2 },
      },
      finish: {
        ...PLAN.finish,
        joins: [
          {
            at: [15, 6],
            kind: "quirk",
            angle: 90,
            gap: 0,
            error: 0.2,
            errorFromEdge: 0.3,
            errorFromFoot: 0.2,
          },
        ],
      },
    };
    const read = readPlan(writePlan(fuller));
    expect(read.ok && read.value).toEqual(fuller);
    const older = readPlan(writePlan(PLAN));
    expect(older.ok && Object.keys(older.value)).not.toContain("gaugeEdge");
  });

  test("what is written reads back as the very same plan", () => {
    const outcome = readPlan(writePlan(PLAN));
    expect(outcome).toEqual({ ok: true, value: PLAN, warnings: [] });
  });

  test("the same plan with its keys in another order is the same text", () => {
    const turned = (value: unknown): unknown => {
      if (Array.isArray(value)) return value.map(turned);
      if (typeof value !== "object" || value === null) return value;
      return Object.fromEntries(
        Object.entries(value)
          .reverse()
          .map(([key, inner]) => [key, turned(inner)]),
      );
    };
    expect(writePlan(turned(PLAN) as Plan)).toBe(writePlan(PLAN));
  });

  test("points stand side by side, each whole on its line", () => {
    const lines = writePlan(PLAN).split("\n");
    expect(lines).toContain('  "stick": [');
    expect(lines).toContain("    [0, 0], [20, 0], [20, 10], [0, 10]");
  });

  test("no -0 is written", () => {
    const cut = { ...PLAN.cuts[0]!, cant: -0, wall: [-0, 4] as const };
    expect(writePlan({ ...PLAN, cuts: [cut, PLAN.cuts[1]!] })).not.toMatch(/-0[,\]\s]/);
  });

  test("a number that is not finite throws: it is our own mistake", () => {
    expect(() => writePlan({ ...PLAN, tolerance: Number.NaN })).toThrow(/not finite/);
  });

  test("characters that steer a terminal are escaped and read back unchanged", () => {
    const name = "Cornice \u001b[2J\u009b31m \u202e";
    const text = writePlan({ ...PLAN, name });
    for (const steering of ["\u001b", "\u009b", "\u202e"]) expect(text).not.toContain(steering);
    const outcome = readPlan(text);
    expect(outcome.ok && outcome.value.name).toBe(name);
  });
});

describe("readPlan", () => {
  test("keys it does not know are ignored", () => {
    const text = changed((file) => {
      file.colour = "blue";
      cutsOf(file)[0]!.song = [1, 2];
    });
    expect(readPlan(text)).toEqual({ ok: true, value: PLAN, warnings: [] });
  });

  test("a byte order mark is passed over", () => {
    expect(readPlan(`\ufeff${writePlan(PLAN)}`).ok).toBe(true);
  });

  test.each([
    ["", "file-empty"],
    [" \n\t", "file-empty"],
    ["{", "file-not-json"],
    [writePlan(PLAN).slice(0, 400), "file-not-json"],
    ['{"a": NaN}', "file-not-json"],
    ['{"a": 01}', "file-not-json"],
    ['{"a": 1,}', "file-not-json"],
    ["[1, 2", "file-not-json"],
    ['{"a": "\u0001"}', "file-not-json"],
    ['{"a": "\\x"}', "file-not-json"],
    ["{} {}", "file-not-json"],
    ["[".repeat(100_000), "file-too-deep"],
    ["[]", "file-value-wrong"],
    ["null", "file-value-wrong"],
    ['{"format": "mouldwright/shelf", "version": 1}', "file-format-other"],
    ['{"version": 1}', "file-key-missing"],
    ['{"format": "mouldwright/plan"}', "file-key-missing"],
    [
      '{"format": "mouldwright/plan", "version": 2, "cuts": "in a shape of the future"}',
      "file-version-newer",
    ],
    ['{"format": "mouldwright/plan", "version": "1"}', "file-value-wrong"],
  ])("%j is refused", (text, code) => {
    expect(refusal(text).code).toBe(code);
  });

  test("a fault in the text is given by line and column", () => {
    const outcome = readPlan('{\n  "name": "x",\n  "cuts": [1 2]\n}');
    expect(outcome.ok === false && outcome.trouble.facts).toMatchObject({
      line: 3,
      column: 14,
      wanted: ", or ]",
    });
  });

  test("more characters than a plan has are refused before anything is read", () => {
    expect(refusal(" ".repeat(20_000_001)).code).toBe("file-too-large");
  });

  test.each(Object.keys(PLAN).filter((key) => key !== "format" && key !== "version"))("without %s", (key) => {
    const text = changed((file) => {
      delete file[key];
    });
    expect(refusal(text)).toEqual({ code: "file-key-missing", where: key });
  });

  test.each([
    "number",
    "purpose",
    "plane",
    "cant",
    "after",
    "takes",
    "wall",
    "seat",
    "runsAgainst",
    "setting",
    "passes",
    "shaving",
    "minutes",
    "says",
    "doneWhen",
  ])("a cut without %s", (key) => {
    const text = changed((file) => {
      delete cutsOf(file)[1]![key];
    });
    expect(refusal(text)).toEqual({ code: "file-key-missing", where: `cuts[1].${key}` });
  });

  test.each<[string, (file: Record<string, unknown>) => void, string, string]>([
    [
      "a pose's tilt that is text",
      (file) => {
        (cutsOf(file)[0]!.runs as unknown[][][])[0]![0]![2] = "0";
      },
      "file-value-wrong",
      "cuts[0].runs[0][0][2]",
    ],
    [
      "a far coordinate",
      (file) => {
        (file.stick as number[][])[2] = [1e300, 10];
      },
      "file-value-out-of-range",
      "stick[2][0]",
    ],
    [
      "a vertex of four numbers",
      (file) => {
        (file.stick as number[][])[2] = [20, 10, 0, 0];
      },
      "file-too-many",
      "stick[2]",
    ],
    [
      "a point twice",
      (file) => {
        (file.planned as number[][])[3] = [20, 2];
      },
      "file-points-coincide",
      "planned[3]",
    ],
    [
      "the first point again at the end",
      (file) => {
        (file.stick as number[][]).push([0, 0]);
      },
      "file-points-coincide",
      "stick[0]",
    ],
    [
      "two points and no arc",
      (file) => {
        file.section = [
          [0, 0],
          [5, 5],
        ];
      },
      "file-too-few",
      "section",
    ],
    [
      "a stick that crosses itself into two like halves",
      (file) => {
        file.stick = [
          [0, 0],
          [20, 10],
          [20, 0],
          [0, 10],
        ];
      },
      "file-outline-empty",
      "stick",
    ],
    [
      "arcs that flatten to more points than a re-cut can carry",
      (file) => {
        file.section = Array.from({ length: 2000 }, (_, i) => [
          9000 * Math.cos(i / 319),
          9000 * Math.sin(i / 319),
          9,
        ]);
      },
      "file-too-many",
      "section",
    ],
    [
      "an arc all but closed",
      (file) => {
        (file.section as number[][])[0] = [0, 0, 5000];
      },
      "file-value-out-of-range",
      "section[0][2]",
    ],
    [
      "a purpose of another trade",
      (file) => {
        cutsOf(file)[0]!.purpose = "milling";
      },
      "file-value-wrong",
      "cuts[0].purpose",
    ],
    [
      "a cut with neither runs nor line",
      (file) => {
        delete cutsOf(file)[0]!.runs;
      },
      "plan-cut-has-no-movement",
      "cuts[0]",
    ],
    [
      "a saw line under a plane",
      (file) => {
        cutsOf(file)[1]!.plane = { id: "r", kind: "rebate" };
      },
      "plan-cut-has-no-movement",
      "cuts[1]",
    ],
    [
      "two cuts of one number",
      (file) => {
        cutsOf(file)[1]!.number = 1;
      },
      "plan-cuts-out-of-order",
      "cuts[1].number",
    ],
    [
      "a mark before no cut",
      (file) => {
        (file.marks as Cut[])[0]!.before = 9;
      },
      "plan-names-no-cut",
      "marks[0].before",
    ],
    [
      "a part made by no cut",
      (file) => {
        (file.parts as Cut[])[0]!.madeBy = [1, 8];
      },
      "plan-names-no-cut",
      "parts[0].madeBy[1]",
    ],
    [
      "201 cuts",
      (file) => {
        const cut = cutsOf(file)[0]!;
        file.cuts = Array.from({ length: 201 }, (_, i) => ({ ...cut, number: i + 1 }));
      },
      "file-too-many",
      "cuts",
    ],
    [
      "20,001 vertices",
      (file) => {
        file.section = Array.from({ length: 20_001 }, (_, i) => [i / 2000, (i * i) / 1e8]);
      },
      "file-too-many",
      "section",
    ],
  ])("%s", (_, change, code, where) => {
    const found = refusal(changed(change));
    expect(found).toEqual({ code, where });
  });

  test("1e400 is more than a number can hold and is refused by its place", () => {
    const text = writePlan(PLAN).replace('"takes": 20,', '"takes": 1e400,');
    expect(refusal(text)).toEqual({ code: "file-number-not-finite", where: "cuts[0].takes" });
  });

  test("__proto__ as a key changes nothing", () => {
    const text = writePlan(PLAN).replace(
      '"name": "Rebate",',
      '"name": "Rebate", "__proto__": { "cuts": [] },',
    );
    const outcome = readPlan(text);
    expect(outcome).toEqual({ ok: true, value: PLAN, warnings: [] });
    expect(({} as Record<string, unknown>).cuts).toBeUndefined();
  });
});
