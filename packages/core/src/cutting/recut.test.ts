import { describe, expect, test } from "vitest";
import type { Vertex } from "../curve/index.ts";
import { COMMON_LIMITS } from "./limits.ts";
import { recutPlan } from "./recut.ts";
import type { Plan, PlanCut, PlanUncut, Run } from "./types.ts";

// A stick 40 by 20 with a step of 10 by 8 at its right and a shallow flute about x = 10, everything computed by hand.

const RADIUS = 6;
/** The flute's circle has its centre 5.4 above the face. */
const HALF_CHORD = Math.sqrt(RADIUS ** 2 - 5.4 ** 2);
const HALF_ANGLE = Math.asin(HALF_CHORD / RADIUS);
const FLUTE = -Math.tan(HALF_ANGLE / 2);
const FLUTE_MM2 = (RADIUS ** 2 / 2) * (2 * HALF_ANGLE - Math.sin(2 * HALF_ANGLE));
const GROOVE_MM2 = 3 * 0.4;

/** Height of a round's sole, `x` off its middle. */
const rise = (x: number): number => RADIUS - Math.sqrt(RADIUS ** 2 - x ** 2);

const STICK: readonly Vertex[] = [
  [0, 0],
  [40, 0],
  [40, 20],
  [0, 20],
];
const flute: readonly Vertex[] = [
  [10 + HALF_CHORD, 20, FLUTE],
  [10 - HALF_CHORD, 20],
];
const groove: readonly Vertex[] = [
  [11.5, 20],
  [11.5, 19.6],
  [8.5, 19.6],
  [8.5, 20],
];
const stepped = (floor: number, face: readonly Vertex[]): readonly Vertex[] => [
  [0, 0],
  [40, 0],
  [40, floor],
  [30, floor],
  [30, 20],
  ...face,
  [0, 20],
];
const PLANNED = stepped(12, flute);

const flat = (id: string, width: number) => ({ id, name: id, kind: "rebate", width });
const flatSole = (width: number): readonly Vertex[] => [
  [-width / 2, 0],
  [width / 2, 0],
];
const roundSole: readonly Vertex[] = [
  [-3, rise(3), Math.tan(Math.PI / 12)],
  [3, rise(3)],
];

const common = {
  cant: 0,
  seat: null,
  setting: 1,
  passes: 1,
  shaving: 0.3,
  minutes: 3,
  says: "",
  doneWhen: "",
} as const;

const CUTS: readonly PlanCut[] = [
  {
    ...common,
    number: 1,
    purpose: "waste",
    plane: flat("wide", 12),
    sole: flatSole(12),
    runs: [[[36, 14, 0]]],
    after: [stepped(14, [])],
    takes: 60,
    wall: [6, 0],
    runsAgainst: "far edge",
  },
  {
    ...common,
    number: 2,
    purpose: "shape",
    plane: flat("wide", 12),
    sole: flatSole(12),
    runs: [[[36, 12, 0]]],
    after: [stepped(12, [])],
    takes: 20,
    wall: [2, 0],
    runsAgainst: "wall of cut 1",
  },
  {
    ...common,
    number: 3,
    purpose: "guide",
    plane: flat("narrow", 3),
    sole: flatSole(3),
    runs: [[[10, 19.6, 0]]],
    after: [stepped(12, groove)],
    takes: GROOVE_MM2,
    wall: [0.4, 0.4],
    runsAgainst: "line m1",
  },
  {
    ...common,
    number: 4,
    purpose: "shape",
    plane: { id: "round", name: "6 mm round", kind: "round", radius: RADIUS, width: RADIUS },
    sole: roundSole,
    runs: [[[10, 19.4, 0]]],
    after: [PLANNED],
    takes: FLUTE_MM2 - GROOVE_MM2,
    wall: [0, 0],
    // It rides on the groove's arrises, 1.5 off its middle; w/8 = 0.75 aside the nearer one stands 0.75 off it.
    seat: { lift: rise(1.5) - rise(0.75), shift: 0 },
    runsAgainst: null,
  },
];

const PLAN: Plan = {
  format: "mouldwright/plan",
  version: 1,
  unit: "mm",
  name: "step and flute",
  tolerance: 0.2,
  shelf: { planes: [] },
  assumed: [],
  warnings: [],
  way: "flat",
  ways: [],
  standing: "best found",
  stick: STICK,
  section: PLANNED,
  planned: PLANNED,
  parts: [{ id: "p1", kind: "cove", name: "flute", from: [12.6, 20], to: [7.4, 20], madeBy: [3, 4] }],
  marks: [
    {
      id: "m1",
      before: 3,
      kind: "place",
      at: [10, 20],
      from: "gauge edge",
      distance: 10,
      fromGaugeEdge: 10,
      error: 0.1,
    },
  ],
  cuts: CUTS,
  finish: { proud: 0, under: 0, rms: 0, joins: [] },
  uncut: [],
};

/** The plan with some keys of cut `number` changed. */
function withCut(number: number, change: Partial<PlanCut>): Plan {
  return { ...PLAN, cuts: PLAN.cuts.map((cut) => (cut.number === number ? { ...cut, ...change } : cut)) };
}

function codesOf(plan: Plan): string[] {
  return recutPlan(plan).findings.map((finding) => `${finding.code} ${finding.where}`);
}

test("a sound plan holds, and its figures come out as worked by hand", () => {
  const report = recutPlan(PLAN);
  expect(report.findings).toEqual([]);
  expect(report.holds).toBe(true);
  const found = [60, 20, GROOVE_MM2, FLUTE_MM2 - GROOVE_MM2];
  report.cuts.forEach((cut, i) => {
    expect(cut.takesMm2).toBeCloseTo(found[i] as number, 3);
    expect(cut.overcutMm).toBeLessThan(0.001);
  });
  expect(report.cuts.map((cut) => cut.wallMm.map((mm) => Math.round(mm * 1000) / 1000))).toEqual([
    [6, 0],
    [2, 0],
    [0.4, 0.4],
    [0, 0],
  ]);
  expect(report.cuts[3]?.seatLiftMm).toBeCloseTo(rise(1.5) - rise(0.75), 4);
});

describe("a figure changed by hand is found", () => {
  test.each<[string, Plan, readonly string[]]>([
    ["what a cut takes", withCut(1, { takes: 60.1 }), ["recut-takes cuts[0]"]],
    ["the picture after it", withCut(1, { after: [stepped(13.9, [])] }), ["recut-after cuts[0]"]],
    ["a wall", withCut(2, { wall: [2.2, 0] }), ["recut-wall-said cuts[1]"]],
    ["a seat's lift", withCut(4, { seat: { lift: 0.3, shift: 0 } }), ["recut-seat-said cuts[3]"]],
    [
      "a number",
      withCut(4, { number: 5 }),
      ["recut-number cuts[3].number", "plan-names-no-cut parts[0].madeBy"],
    ],
    [
      "how proud the face is",
      { ...PLAN, finish: { ...PLAN.finish, proud: 0.05 } },
      ["recut-finish finish.proud"],
    ],
    [
      "how far under it lies",
      { ...PLAN, finish: { ...PLAN.finish, under: 0.02 } },
      ["recut-finish finish.under"],
    ],
    [
      "a mark for no cut",
      { ...PLAN, marks: PLAN.marks.map((mark) => ({ ...mark, before: 9 })) },
      ["plan-names-no-cut marks[0].before", "recut-guide-absent cuts[2]"],
    ],
    [
      "the plane's radius",
      withCut(4, { plane: { ...CUTS[3]!.plane, radius: 6.1 } }),
      ["recut-sole-other cuts[3].sole"],
    ],
    [
      "the plane's kind",
      withCut(4, { plane: { id: "x", kind: "rond" } }),
      ["recut-plane-unknown cuts[3].plane"],
    ],
    ["a guide that is no wall", withCut(2, { runsAgainst: "wall of cut 2" }), ["recut-guide-absent cuts[1]"]],
    ["an edge it does not reach", withCut(3, { runsAgainst: "gauge edge" }), ["recut-guide-absent cuts[2]"]],
    [
      "the edge on its other side",
      { ...withCut(1, { runsAgainst: "gauge edge" }), gaugeEdge: "left" },
      ["recut-guide-absent cuts[0]"],
    ],
    ["a line that is not there", withCut(3, { runsAgainst: "line m7" }), ["recut-guide-absent cuts[2]"]],
    ["no guide at all", withCut(3, { runsAgainst: null }), ["recut-guide cuts[2]"]],
    [
      "a seat is no guide of a flat plane",
      withCut(3, { runsAgainst: null, seat: { lift: 1, shift: 0 } }),
      ["recut-guide cuts[2]", "recut-seat cuts[2]"],
    ],
  ])("%s", (_, plan, codes) => {
    expect(codesOf(plan)).toEqual(codes);
  });
});

describe("a rule that is broken is found", () => {
  const found = (plan: Plan): readonly string[] => recutPlan(plan).findings.map((finding) => finding.code);

  test("overcut, by how much and where", () => {
    const { findings } = recutPlan(withCut(2, { runs: [[[36, 11.5, 0]]] }));
    const overcut = findings.find((one) => one.code === "recut-overcut");
    expect(overcut?.facts).toMatchObject({ cut: 2 });
    expect(overcut?.facts.depthMm).toBeCloseTo(0.5, 2);
    expect(findings.map((one) => one.code)).toContain("recut-under");
  });

  test("a wall beside a round", () => {
    expect(found(withCut(4, { runs: [[[16, 18, 0]]] }))).toContain("recut-wall");
  });

  test("a round set on a bare flat, with a seat claimed", () => {
    expect(found(withCut(4, { runs: [[[20, 19.4, 0]]] }))).toContain("recut-seat");
  });

  test("a round that hangs by a corner", () => {
    expect(found(withCut(4, { runs: [[[10, 19.8, 0]]] }))).toContain("recut-bearing");
  });

  test("a plane that leans too far, unless the stick is turned to meet it", () => {
    const leaning: Run = [[41, 5, -75]];
    expect(found(withCut(1, { runs: [leaning] }))).toContain("recut-lean");
    expect(found(withCut(1, { runs: [leaning], cant: 75 }))).not.toContain("recut-lean");
  });

  test("a leaning flat plane beside a tall wall", () => {
    expect(found(withCut(1, { runs: [[[30, 12, -45]]] }))).toContain("recut-leaning-wall");
  });

  test("a slot too deep", () => {
    expect(found(withCut(3, { runs: [[[10, 3, 0]]] }))).toContain("recut-slot");
    expect(found(withCut(3, { runs: [[[10, 5, 0]]] }))).not.toContain("recut-slot");
  });

  test("the bench in the way", () => {
    expect(found(withCut(1, { runs: [[[46, -1, 0]]] }))).toContain("recut-bench");
  });

  test("a piece parted off, except by a saw", () => {
    expect(found(withCut(3, { runs: [[[10, -0.005, 0]]] }))).toContain("recut-loose");
    const saw = withCut(1, {
      plane: { id: "saw", kind: "saw" },
      purpose: "saw",
      line: [
        [30, 0],
        [30, 20],
      ],
    });
    const { sole: _, runs: __, ...sawn } = saw.cuts[0]!;
    const codes = found({ ...saw, cuts: [sawn, ...saw.cuts.slice(1)] });
    expect(codes).toContain("recut-overcut");
    expect(codes).not.toContain("recut-loose");
  });

  test("poses too far apart", () => {
    const run: Run = [
      [36, 14, 0],
      [36.3, 14, 0],
    ];
    expect(found(withCut(1, { runs: [run] }))).toContain("recut-poses-apart");
    const rounded: Run = [
      [36, 14, 0],
      [36.200001, 14, 0],
    ];
    expect(found(withCut(1, { runs: [rounded] }))).not.toContain("recut-poses-apart");
    expect(found(withCut(1, { runs: [[[36, 14, 0]], [[37, 14, 0]]] }))).not.toContain("recut-poses-apart");
  });

  test("a fence that does not reach", () => {
    const plane = { id: "f", name: "f", kind: "moving fillister", width: 3, fence: 5, depth: 20 };
    expect(found(withCut(3, { plane, runsAgainst: "gauge edge", fence: 8.5 }))).toContain("recut-fence");
    expect(
      found(withCut(3, { plane: { ...plane, fence: 9 }, runsAgainst: "gauge edge", fence: 8.5 })),
    ).toEqual([]);
  });

  test("shoulders that meet wood", () => {
    const shouldered = { ...CUTS[3]!.plane, shoulder: { width: 10, height: 0.3 } };
    expect(found(withCut(4, { plane: shouldered }))).toContain("recut-body");
    expect(found(withCut(4, { plane: { ...shouldered, shoulder: { width: 10, height: 0.7 } } }))).toEqual([]);
  });

  test("a planned face off the drawing, or outside the stick", () => {
    const section = stepped(12.3, flute);
    expect(found({ ...PLAN, section })).toContain("recut-planned-off");
    expect(
      found({ ...PLAN, section: stepped(12.15, flute), finish: { ...PLAN.finish, under: 0.15 } }),
    ).toEqual([]);
    const small: readonly Vertex[] = [
      [0, 0],
      [39, 0],
      [39, 20],
      [0, 20],
    ];
    expect(found({ ...PLAN, stick: small })).toContain("plan-outside-stick");
  });
});

describe("wood that is left", () => {
  const shallow: Plan = { ...PLAN, cuts: PLAN.cuts.slice(0, 3), parts: [] };
  const place: PlanUncut = {
    from: [10 + HALF_CHORD, 20],
    to: [10 - HALF_CHORD, 20],
    left: 0.4,
    rule: "seat",
    why: "",
    try: "",
  };

  test("has to be listed, with a place and its height", () => {
    const fluted = stepped(12, [
      [14, 20, -1],
      [6, 20],
    ]);
    const unlisted = {
      ...shallow,
      cuts: shallow.cuts.slice(0, 2),
      planned: fluted,
      section: fluted,
      marks: [],
    };
    const { findings } = recutPlan(unlisted);
    // A flute left full has all its corners on the drawing; its middle is four from its arrises and its floor.
    expect(findings.map((one) => one.code)).toEqual(["recut-unlisted"]);
    expect(findings[0]?.facts.leftMm).toBeCloseTo(4, 1);
    const listed = { ...unlisted, uncut: [{ ...place, from: [14, 20], to: [6, 20], left: 4 } as const] };
    expect(recutPlan(listed).findings).toEqual([]);
  });

  test("under the tolerance it is only proud", () => {
    const { findings } = recutPlan({ ...shallow, tolerance: 0.4 });
    expect(findings.map((one) => one.code)).toEqual(["recut-finish"]);
    // The groove's arris stands nearest to the circle's centre, 1.5 beside it and 5.4 under it.
    expect(findings[0]?.facts.foundMm).toBeCloseTo(RADIUS - Math.hypot(1.5, 5.4), 3);
  });

  test("that is listed has to be there", () => {
    expect(codesOf({ ...PLAN, uncut: [place] })).toEqual(["recut-uncut-said uncut[0]"]);
  });
});

describe("odd geometry gives findings, never a throw", () => {
  const bowtie: readonly Vertex[] = [
    [0, 0],
    [40, 20],
    [40, 0],
    [0, 15],
  ];

  test.each<[string, Plan, string]>([
    ["a planned outline that crosses itself", { ...PLAN, planned: bowtie }, "recut-outline-crosses planned"],
    ["a drawn outline that crosses itself", { ...PLAN, section: bowtie }, "recut-outline-crosses section"],
    [
      "a stick without area",
      {
        ...PLAN,
        stick: [
          [0, 0],
          [40, 0],
          [20, 0],
        ],
      },
      "file-outline-empty stick",
    ],
    ["a ring of nothing", { ...PLAN, planned: [] }, "file-too-few planned"],
    [
      "vertices a hair apart in a row",
      {
        ...PLAN,
        planned: [
          [0, 0],
          [9e-7, 0],
          [18e-7, 0],
          [40, 0],
          [40, 9],
        ],
      },
      "file-points-coincide planned[1]",
    ],
    [
      "a number that is none",
      {
        ...PLAN,
        planned: [
          [0, 0],
          [Number.NaN, 0],
          [40, 9],
        ],
      },
      "file-number-not-finite planned[1]",
    ],
    ["no runs", withCut(4, { runs: [] }), "plan-cut-has-no-movement cuts[3]"],
    ["a run without poses", withCut(4, { runs: [[]] }), "plan-cut-has-no-movement cuts[3]"],
    [
      "a pose that is none",
      withCut(4, { runs: [[[10, Number.POSITIVE_INFINITY, 0]]] }),
      "file-number-not-finite cuts[3].runs",
    ],
    ["a sole of one vertex", withCut(4, { sole: [[0, 0]] }), "file-too-few cuts[3].sole"],
    [
      "a sole without length",
      withCut(4, {
        sole: [
          [0, 0],
          [0, 0],
        ],
      }),
      "file-points-coincide cuts[3].sole[1]",
    ],
    [
      "an upright sole",
      withCut(4, {
        sole: [
          [0, 0],
          [0, 5],
        ],
      }),
      "recut-sole-bent cuts[3].sole",
    ],
    [
      "a sole that runs back",
      withCut(4, {
        sole: [
          [-3, 0],
          [3, 0],
          [1, 2],
          [4, 3],
        ],
      }),
      "recut-sole-bent cuts[3].sole",
    ],
    [
      "a line and runs at once",
      withCut(4, {
        line: [
          [0, 0],
          [1, 1],
        ],
      }),
      "plan-cut-has-no-movement cuts[3]",
    ],
    [
      "more poses than a proof carries",
      withCut(4, {
        runs: Array.from({ length: 11 }, () => Array.from({ length: 2000 }, () => [10, 19.4, 0] as const)),
      }),
      "file-too-many cuts[3].runs",
    ],
    [
      "a picture without area",
      withCut(4, {
        after: [
          [
            [0, 0],
            [5, 0],
          ],
        ],
      }),
      "file-too-few cuts[3].after[0]",
    ],
  ])("%s", (_, plan, code) => {
    const report = recutPlan(plan);
    expect(report.holds).toBe(false);
    expect(report.findings.map((one) => `${one.code} ${one.where}`)).toContain(code);
  });

  test("a saw line without length", () => {
    const { sole: _, runs: __, ...cut } = PLAN.cuts[0]!;
    const saw: PlanCut = {
      ...cut,
      plane: { id: "saw", kind: "saw" },
      line: [
        [3, 3],
        [3, 3],
      ],
    };
    expect(codesOf({ ...PLAN, cuts: [saw] })).toContain("file-points-coincide cuts[0].line[1]");
  });

  test("a cut that cannot be made is taken by its picture, so that the rest is judged by itself", () => {
    expect(codesOf(withCut(1, { runs: [] }))).toEqual(["plan-cut-has-no-movement cuts[0]"]);
  });

  test("a plan without cuts", () => {
    expect(codesOf({ ...PLAN, cuts: [], marks: [], parts: [] })).toEqual(["recut-unlisted uncut"]);
    const bare: Plan = { ...PLAN, cuts: [], marks: [], parts: [], planned: STICK, section: STICK };
    expect(recutPlan(bare).holds).toBe(true);
  });
});

test("a plane far away whose lean points at the stick goes right through it", () => {
  const { findings } = recutPlan(withCut(1, { runs: [[[2000, 10, 90]]] }));
  const takes = findings.find((one) => one.code === "recut-takes");
  // A sole 12 wide standing upright, its body towards the stick: a band 12 high and 40 long.
  expect(takes?.facts.foundMm2).toBeCloseTo(480, 3);
});

test("an edge that bears no fence, or begins too deep below the sole, is no guide", () => {
  const found = (limits: Partial<typeof COMMON_LIMITS>, plan = PLAN) =>
    recutPlan(plan, { ...COMMON_LIMITS, ...limits }).findings.map(({ code }) => code);
  expect(found({})).toEqual([]);
  // The stick is 20 mm thick.
  expect(found({ edgeBearsMm: 19 })).toEqual([]);
  expect(found({ edgeBearsMm: 21 })).toEqual(["recut-guide-absent"]);
  // Set down on the face for a step of its own, 6 mm above what the first cut left of the edge.
  const wide = { runs: [[[35, 12, 0]]] as const };
  const again = {
    ...PLAN,
    cuts: PLAN.cuts.map((cut) => (cut.number === 2 ? { ...cut, ...wide, runsAgainst: "far edge" } : cut)),
  };
  const isAbsent = (fenceHangMm: number) => found({ fenceHangMm }, again).includes("recut-guide-absent");
  expect([isAbsent(6.1), isAbsent(5.9)]).toEqual([false, true]);
});
