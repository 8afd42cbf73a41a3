/** Each rule sees what it is there for, on cuts drawn by hand in a stick of 40 by 30 mm, and lets the honest one by. */
import { describe, expect, test } from "vitest";
import type { SaidCut, SaidPlan } from "./bench.ts";
import { type BelievedRule, unbelievedIn } from "./rules.ts";

type Ring = readonly (readonly [number, number])[];

const STICK: Ring = [
  [0, 0],
  [40, 0],
  [40, 30],
  [0, 30],
];

/** The stick with grooves from the face, each from x to x down to a height, left to right. */
function grooved(...grooves: readonly (readonly [number, number, number])[]): Ring {
  const face = [...grooves].reverse().flatMap(
    ([from, to, floor]): Ring => [
      [to, 30],
      [to, floor],
      [from, floor],
      [from, 30],
    ],
  );
  return [[0, 0], [40, 0], [40, 30], ...face, [0, 30]];
}

/** The stick with a rebate along the far edge: from x on, down to a height. */
const rebated = (from: number, floor: number): Ring => [
  [0, 0],
  [40, 0],
  [40, floor],
  [from, floor],
  [from, 30],
  [0, 30],
];

const flatSole = (width: number): Ring => [
  [-width / 2, 0],
  [width / 2, 0],
];

/** Sole of a curved plane of radius and width 10: a bulge of tan(60° / 4), below the chord for a round. */
const BULGE = Math.tan(Math.PI / 12);
const CORNER_MM = 10 * (1 - Math.cos(Math.PI / 6));
const ROUND_SOLE = [
  [-5, CORNER_MM, BULGE],
  [5, CORNER_MM],
] as const;

interface Drawn {
  readonly plane: SaidCut["plane"];
  readonly sole: NonNullable<SaidCut["sole"]>;
  readonly runs: NonNullable<SaidCut["runs"]>;
  readonly after: readonly Ring[];
  readonly runsAgainst?: string | null;
  readonly seat?: SaidCut["seat"];
  readonly says?: string;
}

function planOf(...drawn: readonly Drawn[]): SaidPlan {
  const cuts = drawn.map(
    (one, i): SaidCut => ({
      number: i + 1,
      purpose: "shape",
      cant: 0,
      takes: 1,
      wall: [0, 0],
      seat: null,
      runsAgainst: "gauge edge",
      setting: i + 1,
      says: "",
      doneWhen: "",
      ...one,
    }),
  );
  return {
    format: "mouldwright/plan",
    version: 1,
    unit: "mm",
    tolerance: 0.2,
    shelf: { planes: [] },
    stick: STICK,
    section: STICK,
    planned: STICK,
    marks: [],
    parts: [{ id: "p1", name: "cove", madeBy: cuts.map(({ number }) => number) }],
    cuts,
    finish: { proud: 0, under: 0, rms: 0 },
    uncut: [],
    warnings: [],
  };
}

function plough(width: number, x: number, floor: number, after: Ring): Drawn {
  return {
    plane: { id: "plough", kind: "plough", depth: 20 },
    sole: flatSole(width),
    runs: [[[x, floor, 0]]],
    after: [after],
  };
}

const rulesIn = (plan: SaidPlan): readonly BelievedRule[] => unbelievedIn(plan).map(({ rule }) => rule);

describe("overlapping grooves", () => {
  const first = plough(6, 15, 24, grooved([12, 18, 24]));

  test("a groove half in an older one and deeper", () => {
    const second = plough(6, 19, 20, grooved([12, 16, 24], [16, 22, 20]));
    expect(rulesIn(planOf(first, second))).toEqual(["overlapping grooves"]);
  });

  test("the same groove twice, the second time deeper", () => {
    expect(rulesIn(planOf(first, plough(6, 15, 20, grooved([12, 18, 20]))))).toEqual(["overlapping grooves"]);
  });

  test("a wide groove of two with one floor, and a quirk in the floor of a wide one, are believed", () => {
    const beside = plough(6, 19, 24, grooved([12, 22, 24]));
    expect(rulesIn(planOf(first, beside))).toEqual([]);
    const quirk: Ring = [...grooved([12, 18, 24])];
    const at = quirk.findIndex(([x, y]) => x === 12 && y === 24);
    const within: Ring = [...quirk.slice(0, at), [16, 24], [16, 20], [14, 20], [14, 24], ...quirk.slice(at)];
    expect(rulesIn(planOf(first, plough(2, 15, 20, within)))).toEqual([]);
  });
});

describe("plunged slot", () => {
  test("a plough deeper than it goes", () => {
    expect(rulesIn(planOf(plough(6, 15, 9, grooved([12, 18, 9]))))).toEqual(["plunged slot"]);
    expect(rulesIn(planOf(plough(6, 15, 11, grooved([12, 18, 11]))))).toEqual([]);
  });

  test("a rebate plane let aslant into solid wood, both walls new", () => {
    // Leaned 45° to the right, its sole's middle 2 mm down the slant from the face: a notch of 6 mm square to it.
    const half = Math.SQRT1_2;
    const at = (a: number, b: number): readonly [number, number] => [
      20 + (a + b) * half,
      28 + (b - a) * half,
    ];
    const leaned: Drawn = {
      plane: { id: "rebate-6", kind: "rebate", width: 6 },
      sole: flatSole(6),
      runs: [[[20, 28, -45]]],
      runsAgainst: "batten",
      after: [
        [
          [0, 0],
          [40, 0],
          [40, 30],
          // Where the sides meet the face: a = ±3, y = 30.
          [20 + (3 + (2 / half + 3)) * half, 30],
          at(3, 0),
          at(-3, 0),
          [0, 30],
        ],
      ],
    };
    // The left end stands out of the wood here, so nothing is new on that side and it is a chamfer's cut.
    expect(rulesIn(planOf(leaned))).toEqual([]);
    const deep = (a: number, b: number): readonly [number, number] => [
      20 + (a + b) * half,
      20 + (b - a) * half,
    ];
    const upAt = (a: number): readonly [number, number] => deep(a, 10 / half + a);
    const plunged: Drawn = {
      ...leaned,
      runs: [[[20, 20, -45]]],
      after: [[[0, 0], [40, 0], [40, 30], upAt(3), deep(3, 0), deep(-3, 0), upAt(-3), [0, 30]]],
    };
    expect(rulesIn(planOf(plunged))).toEqual(["plunged slot"]);
  });
});

describe("poses without a reason", () => {
  const runsAt = (...xs: readonly number[]) => xs.map((x) => [[x, 28, 0]] as const);
  const scraped = (count: number, says: string): SaidPlan =>
    planOf({
      plane: { id: "round-10", kind: "round", radius: 10, width: 10 },
      sole: ROUND_SOLE,
      runs: runsAt(...Array.from({ length: count }, (_, i) => 10 + 4 * i)),
      runsAgainst: "batten",
      after: [STICK],
      says,
    });

  test("four poses of one part, unless a sentence says why; three need none", () => {
    expect(rulesIn(scraped(4, "Set four times side by side."))).toEqual(["poses without a reason"]);
    expect(
      rulesIn(scraped(4, "Set four times side by side, because no round of 14 mm stands there.")),
    ).toEqual([]);
    expect(rulesIn(scraped(3, ""))).toEqual([]);
  });

  test("a curve planed in four flats without a word why", () => {
    const inFlats = (says: string): SaidPlan =>
      planOf({
        plane: { id: "rebate-10", kind: "rebate", width: 10 },
        sole: [
          [-5, 0],
          [5, 0],
        ],
        runs: [-10, -20, -30, -40].map((deg) => [[20, 28, deg]] as const),
        runsAgainst: "batten",
        after: [STICK],
        says,
      });
    expect(rulesIn(inFlats("Set four times."))).toContain("poses without a reason");
    expect(rulesIn(inFlats("Set four times, for want of a hollow that goes in."))).not.toContain(
      "poses without a reason",
    );
  });

  test("runs that rock to either side from one pose are one", () => {
    const rocked = planOf({
      plane: { id: "round-10", kind: "round", radius: 10, width: 10 },
      sole: ROUND_SOLE,
      runs: [1, 2, 3, 4].map((deg) => [
        [20, 28, 0],
        [20, 28, deg],
      ]),
      runsAgainst: "batten",
      after: [STICK],
    });
    expect(rulesIn(rocked)).toEqual([]);
  });
});

describe("bare flat", () => {
  const round = (over: Partial<Drawn>): Drawn => ({
    plane: { id: "round-10", kind: "round", radius: 10, width: 10 },
    sole: ROUND_SOLE,
    runs: [[[20, 29, 0]]],
    runsAgainst: null,
    after: [STICK],
    ...over,
  });

  test("a round set on the face, a line under it or none; against a batten it is believed", () => {
    expect(rulesIn(planOf(round({})))).toEqual(["bare flat"]);
    expect(rulesIn(planOf(round({ runsAgainst: "line m1" })))).toEqual(["bare flat"]);
    expect(rulesIn(planOf(round({ runsAgainst: "batten" })))).toEqual([]);
  });

  test("over a groove's two arrises it is held", () => {
    const ground = plough(6, 20, 26, grooved([17, 23, 26]));
    // Resting on arrises 6 mm apart its middle hangs 10 - √(100 - 9) below the face.
    const rest = round({ runs: [[[20, 30 - (10 - Math.sqrt(91)), 0]]], after: [grooved([17, 23, 26])] });
    expect(rulesIn(planOf(ground, rest))).toEqual([]);
  });

  test("on one arris alone it is not", () => {
    const ground: Drawn = { ...plough(20, 30, 26, rebated(20, 26)), runsAgainst: "far edge" };
    const onOne = round({ runs: [[[22, 29, 0]]], after: [rebated(20, 26)] });
    expect(rulesIn(planOf(ground, onOne))).toEqual(["bare flat"]);
  });
});

describe("dropped into a face", () => {
  const rebate = (runsAgainst: string | null): Drawn => ({
    plane: { id: "rebate-12", kind: "rebate", width: 12 },
    sole: flatSole(12),
    runs: [[[20, 27, 0]]],
    runsAgainst,
    after: [grooved([14, 26, 27])],
  });

  const wide: Drawn = {
    plane: { id: "rebate-12", kind: "rebate", width: 12 },
    sole: flatSole(12),
    runs: [[[36, 25, 0]], [[25, 25, 0]]],
    runsAgainst: "far edge",
    after: [rebated(19, 25)],
  };

  test("a rebate plane between two new walls, on a line or an edge it does not reach; a batten guides it", () => {
    expect(rulesIn(planOf(rebate("line m1")))).toEqual(["dropped into a face"]);
    expect(rulesIn(planOf(rebate("far edge")))).toEqual(["dropped into a face"]);
    expect(rulesIn(planOf(rebate("batten")))).toEqual([]);
  });

  test("a second run that no longer hangs over the edge of the first", () => {
    expect(rulesIn(planOf(wide))).toEqual(["dropped into a face"]);
    const narrow: Drawn = { ...wide, runs: [[[36, 25, 0]]], after: [rebated(30, 25)] };
    expect(rulesIn(planOf(narrow))).toEqual([]);
  });

  test("unless it goes along a wall that an earlier cut left there, and says so", () => {
    const line: Drawn = {
      plane: { id: "plough-3", kind: "plough", width: 3 },
      sole: flatSole(3),
      runs: [[[20.5, 29, 0]]],
      runsAgainst: "gauge edge",
      after: [grooved([19, 22, 29])],
    };
    const told: Drawn = { ...wide, says: "In two widths (the second along the wall of cut 1)." };
    expect(rulesIn(planOf(line, told))).toEqual([]);
    expect(rulesIn(planOf(line, wide))).toEqual(["dropped into a face"]);
    const elsewhere: Drawn = { ...line, runs: [[[15.5, 29, 0]]], after: [grooved([14, 17, 29])] };
    expect(rulesIn(planOf(elsewhere, told))).toEqual(["dropped into a face"]);
  });

  test("a moving fillister whose fence would have to pass through wood", () => {
    const fillister: Drawn = {
      ...rebate("gauge edge"),
      plane: { id: "f", kind: "moving fillister", depth: 20 },
    };
    expect(rulesIn(planOf(fillister))).toEqual(["dropped into a face"]);
  });
});

describe("fence out of reach", () => {
  /** A step in from a far edge that an earlier cut took down to a height. */
  const stepOver = (edgeMm: number): SaidPlan => {
    const lowered: Drawn = {
      plane: { id: "rebate-12", kind: "rebate", width: 12 },
      sole: flatSole(12),
      runs: [[[40, edgeMm, 0]]],
      runsAgainst: "far edge",
      after: [rebated(34, edgeMm)],
    };
    const wide: Drawn = {
      plane: { id: "rebate-32", kind: "rebate", width: 32 },
      sole: flatSole(32),
      runs: [[[36, 28, 0]]],
      runsAgainst: "far edge",
      after: [rebated(34, edgeMm)],
    };
    return planOf(lowered, wide);
  };

  test("a fence that would have to hang 14 mm below the sole; at 11 mm it is believed", () => {
    expect(rulesIn(stepOver(16))).toEqual(["fence out of reach"]);
    expect(rulesIn(stepOver(19))).toEqual([]);
  });

  test("an edge of which only a sliver is left upright", () => {
    const thin = planOf({
      plane: { id: "rebate-12", kind: "rebate", width: 12 },
      sole: flatSole(12),
      runs: [[[40, 4, 0]]],
      runsAgainst: "far edge",
      after: [STICK],
    });
    const bevelled = {
      ...thin,
      stick: [
        [0, 0],
        [30, 0],
        [40, 28.5],
        [40, 30],
        [0, 30],
      ] as Ring,
    };
    expect(rulesIn(thin)).toEqual([]);
    expect(rulesIn(bevelled)).toEqual(["fence out of reach"]);
  });

  test("arms that would have to pass 24 mm of wood; another edge serves", () => {
    const low = plough(6, 30, 6, rebated(24, 6));
    const groove = (runsAgainst: string) =>
      planOf(
        {
          ...low,
          plane: { id: "r", kind: "rebate" },
          sole: flatSole(32),
          runs: [[[40, 8, 0]]],
          after: [rebated(24, 8)],
          runsAgainst: "far edge",
        },
        { ...low, runsAgainst },
      );
    expect(rulesIn(groove("gauge edge"))).toEqual(["fence out of reach"]);
    expect(rulesIn(groove("far edge"))).toEqual([]);
  });
});

describe("free lean", () => {
  const chamfer = (tilt: number, runsAgainst: string): Drawn => ({
    plane: { id: "rebate-12", kind: "rebate", width: 12 },
    sole: flatSole(12),
    runs: [[[40, 28, tilt]]],
    runsAgainst,
    after: [STICK],
  });

  test("beyond 45° on a line alone; at 45° or against a batten it is believed", () => {
    expect(rulesIn(planOf(chamfer(-50, "line m1")))).toEqual(["free lean"]);
    expect(rulesIn(planOf(chamfer(-45, "line m1")))).toEqual([]);
    expect(rulesIn(planOf(chamfer(-50, "batten")))).toEqual([]);
  });

  test("a stick turned under the plane brings it upright", () => {
    const turned = planOf(chamfer(-50, "line m1"));
    const canted = { ...turned, cuts: turned.cuts.map((cut) => ({ ...cut, cant: 30 })) };
    expect(rulesIn(canted)).toEqual([]);
  });
});

describe("loose wood", () => {
  const loose: Ring = [
    [37, 29],
    [40, 29],
    [40, 30],
    [37, 30],
  ];

  test("a piece parted off by a plane; a saw may", () => {
    const cut: Drawn = { ...plough(1, 36.5, 28.5, rebated(36, 28.5)), after: [rebated(36, 28.5), loose] };
    expect(rulesIn(planOf({ ...cut, runsAgainst: "far edge" }))).toEqual(["loose wood"]);
    const parted = planOf(cut);
    const sawn = {
      ...parted,
      cuts: parted.cuts.map((one) => ({ ...one, plane: { id: "saw", kind: "saw" } })),
    };
    expect(rulesIn(sawn)).toEqual([]);
  });
});

describe("standing fin", () => {
  const first = plough(6, 15, 20, grooved([12, 18, 20]));
  /** Two grooves with a strip left between them, of a stick of which only a thin plate is wanted. */
  const between = (thickMm: number, floor = 20): SaidPlan => {
    const from = 18 + thickMm;
    const second = plough(6, from + 3, floor, grooved([12, 18, 20], [from, from + 6, floor]));
    const plate: Ring = [
      [0, 0],
      [40, 0],
      [40, 2],
      [0, 2],
    ];
    return { ...planOf(first, second), planned: plate };
  };

  test("a strip of waste 1 mm thick and 10 mm high between two grooves", () => {
    expect(unbelievedIn(between(1)).map(({ rule, cut }) => [rule, cut])).toEqual([["standing fin", 2]]);
  });

  test("3 mm thick, low, or no more than two cuts that touch as drawn, it is believed; a hair of wood is not", () => {
    expect(rulesIn(between(3.2))).toEqual([]);
    expect(rulesIn(between(2.5, 24))).toEqual([]);
    expect(rulesIn(between(0.01))).toEqual([]);
    expect(rulesIn(between(0.2))).toContain("standing fin");
  });

  test("a strip that the section itself has is none", () => {
    const plan = between(1);
    expect(rulesIn({ ...plan, planned: plan.cuts[1].after[0] })).toEqual([]);
  });
});
