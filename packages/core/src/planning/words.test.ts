import { describe, expect, test } from "vitest";
import {
  type CutFacts,
  cutSentence,
  cutTitle,
  doneSentence,
  leanWords,
  stickWords,
  workOf,
} from "./words.ts";

const NBSP = "\u00a0";

const ROUND_IN_V: CutFacts = {
  purpose: "shape",
  planeName: "5/8 in round",
  kind: "round",
  leanDeg: 0,
  cantDeg: 0,
  rocked: null,
  seatOn: "the V",
  runsAgainst: null,
  fenceMm: null,
  line: { distanceMm: 26.5, from: "gauge edge" },
  depthMm: 3.4,
  passes: 23,
  shavingMm: 0.15,
  unit: "mm",
};

function facts(changes: Partial<CutFacts>): CutFacts {
  return { ...ROUND_IN_V, seatOn: null, line: null, ...changes };
}

describe("sentences for the bench", () => {
  test("a curve planed as one flat is told of one flat", () => {
    const flat = facts({
      planeName: "6 mm rebate plane",
      kind: "rebate",
      leanDeg: -15,
      work: "facets",
      placesCount: 1,
      line: { distanceMm: 44, from: "gauge edge" },
      otherLine: { distanceMm: 47, from: "gauge edge" },
    });
    expect(cutSentence(flat)).toContain(
      `from the line 44${NBSP}mm from the gauge edge to the one 47${NBSP}mm`,
    );
    expect(cutSentence(flat)).toContain("until the flat just touches the curve");
    expect(cutSentence(flat)).not.toMatch(/the first|each flat/);
    expect(doneSentence(flat)).toMatch(/^Done when the flat just touches/);
    expect(cutSentence({ ...flat, placesCount: 3, leansDeg: [-15, -30, -45] })).toMatch(
      /the first from the line.*until each flat/,
    );
  });

  test("two settings leaned alike are told apart by how far they stand from one another", () => {
    const creeping = facts({
      work: "ridges",
      placesCount: 3,
      leansDeg: [-0.2, -0.2, 29.8],
      acrossMm: [20, 20.6, 12],
    });
    expect(cutSentence(creeping)).toContain(
      `: upright, upright again 0.6${NBSP}mm further to the right and leaned 30° to the left,`,
    );
    const leaned = { ...creeping, leansDeg: [-30, -30.2, -41], acrossMm: [20, 18, 22] };
    expect(cutSentence(leaned)).toContain(
      `: leaned 30° to the right, leaned 30° to the right again 2${NBSP}mm further to the left and leaned 41° to the right,`,
    );
  });

  test("what leaves no wall is planed level: no fence, no wall, no step", () => {
    const level = facts({
      purpose: "shape",
      kind: "smoother",
      planeName: "50 mm smoother",
      work: "step",
      leavesWall: false,
      runsAgainst: "gauge edge",
      depthMm: 3.3,
    });
    expect(cutSentence(level)).toContain(
      `50 mm smoother, hanging over the gauge edge, 3.3${NBSP}mm deep, planing it down level`,
    );
    expect(cutSentence({ ...level, placesCount: 2 })).toContain("in two widths side by side");
    expect(cutSentence({ ...level, placesCount: 3, laterWalls: [{ width: 2, ofCut: 4 }] })).toContain(
      "in three widths side by side (the second along the wall of cut 4),",
    );
    expect(`${cutSentence(level)} ${doneSentence(level)} ${cutTitle(level)}`).not.toMatch(
      /fence|wall|[Ss]tep/,
    );
  });

  test("the reason is said in every cut of a curve that takes many settings, be they few in each", () => {
    const few = facts({ work: "facets", kind: "rebate", placesCount: 2, leansDeg: [-6, -20] });
    expect(cutSentence({ ...few, curveSettings: 3 })).not.toContain("for want of");
    expect(cutSentence({ ...few, curveSettings: 5 })).toContain("for want of a hollow");
    expect(cutSentence({ ...few, placesCount: 1, curveSettings: 5 })).toContain("for want of a hollow");
  });

  test("a round in its V: plane, place, lean, until when, last shaving", () => {
    const sentence = cutSentence({ ...ROUND_IN_V, until: "the ridge beside the bead is gone" });
    expect(sentence).toBe(
      `Five-eighths round, upright, in the V whose line is 26.5${NBSP}mm from the gauge edge, until the ridge beside the bead is gone; finish with one fine shaving, as wide as the sole, from end to end.`,
    );
  });

  test("the same line in inches is a proper fraction with its side", () => {
    // 26.5 mm is 1.0433 in; the nearest 1/32 is 1 1/32 = 1.03125 in, so it is full by 0.31 mm.
    expect(cutSentence({ ...ROUND_IN_V, unit: "in" })).toContain("line is 1¹⁄₃₂″ full from the gauge edge");
  });

  test("a step from an edge says fence, depth and how heavy the iron is set", () => {
    const sentence = cutSentence(
      facts({
        purpose: "waste",
        kind: "moving fillister",
        planeName: "Moving fillister",
        runsAgainst: "gauge edge",
        fenceMm: 12,
        depthMm: 5,
        passes: 17,
        shavingMm: 0.3,
      }),
    );
    expect(sentence).toBe(
      `Moving fillister, its fence on the gauge edge and set 12${NBSP}mm out, 5${NBSP}mm deep, taking the step's floor and wall, about 17 passes with a heavy iron.`,
    );
  });

  test("in a canted jaw the fence needs a strip planed to the edge's lean", () => {
    const sentence = cutSentence(
      facts({
        purpose: "waste",
        kind: "plough",
        planeName: "plough",
        cantDeg: 20,
        runsAgainst: "far edge",
        fenceMm: 51,
        depthMm: 7,
      }),
    );
    expect(sentence).toContain(
      `a strip planed to 20° on its fence, this on the far edge and set 51${NBSP}mm out`,
    );
  });

  test("a rocked round is begun at one lean and ends at the other", () => {
    const sentence = cutSentence({ ...ROUND_IN_V, leanDeg: 8.2, rocked: { fromDeg: 0, toDeg: 8.2 } });
    expect(sentence).toContain("begun upright, in the V whose line");
    expect(sentence).toContain("rocked little by little until it is leaned 8° to the left");
  });

  test("a V is opened upright, then leaning to the side that is meant", () => {
    const sentence = cutSentence(
      facts({
        purpose: "guide",
        kind: "snipe bill",
        planeName: "left snipe bill",
        openedToDeg: -20,
        leanDeg: -20,
        line: { distanceMm: 7.9375, from: "foot of cut 3" },
      }),
    );
    expect(sentence).toContain("upright first and then leaned little by little, 20° to the right");
    expect(sentence).toContain(`on the line 7.9${NBSP}mm from the foot of cut 3`);
  });

  test("the stick is turned before the plane is named", () => {
    const sentence = cutSentence(
      facts({ purpose: "saw", kind: "saw", planeName: "tenon saw", cantDeg: 180 }),
    );
    expect(sentence.startsWith("Turn the stick back up. Tenon saw, blade upright")).toBe(true);
  });

  test("a saw's scale is read to a quarter of a degree, a hand's lean to one", () => {
    const saw = facts({ purpose: "saw", kind: "saw", planeName: "saw", leanDeg: 33.86 });
    expect(cutSentence(saw)).toContain("blade leaned 33¾° to the left");
    expect(leanWords(-33.86)).toBe("leaned 34° to the right");
  });

  test("a plane with no seat says that a batten guides it", () => {
    expect(cutSentence(facts({ runsAgainst: "batten" }))).toContain(
      "against a batten clamped on to guide it",
    );
  });

  test("a seat between arrises tells where the plane's middle goes", () => {
    expect(cutSentence({ ...ROUND_IN_V, seatOn: "the groove's two arrises" })).toContain(
      `on the groove's two arrises, its middle 26.5${NBSP}mm from the gauge edge`,
    );
  });

  test.each([
    ["3/8 in hollow", "Three-eighths hollow"],
    ["⅜ in hollow", "Three-eighths hollow"],
    ["½ in round", "Half-inch round"],
    ["³⁄₁₆ in hollow", "Three-sixteenths hollow"],
    ["1⅛ in round", "Inch-and-an-eighth round"],
    ["1 1/4 in hollow", "Inch-and-a-quarter hollow"],
    ["2 3/8 in hollow", "Two-inch-and-three-eighths hollow"],
    ["grandfather's round", "Grandfather's round"],
    ["5/7 in round", "5/7 in round"],
  ])("%s is spoken %s", (planeName, spoken) => {
    expect(cutSentence({ ...ROUND_IN_V, planeName }).startsWith(`${spoken}, upright`)).toBe(true);
  });

  test("no control character of a plane's name comes through", () => {
    expect(cutSentence(facts({ planeName: "\u001b[31mround\u0007\u202e" }))).not.toMatch(/[\p{Cc}\p{Cf}]/u);
  });

  const everyKind = [
    "saw",
    "snipe bill",
    "plough",
    "side round",
    "bead",
    "rebate",
    "moving fillister",
    "smoother",
    "hollow",
    "round",
    "shaped",
  ];
  const everyPurpose = ["relief", "waste", "guide", "shape", "finish", "saw"] as const;
  test.each(everyKind.flatMap((kind) => everyPurpose.map((purpose) => [kind, purpose] as const)))(
    "%s for %s: every sentence is whole",
    (kind, purpose) => {
      for (const unit of ["mm", "in"] as const) {
        for (const leanDeg of [0, 12, -45]) {
          for (const rocked of [null, { fromDeg: 0, toDeg: leanDeg }]) {
            const told = facts({ kind, purpose, unit, leanDeg, rocked, planeName: `my ${kind}` });
            for (const sentence of [cutSentence(told), doneSentence(told)]) {
              expect(sentence).toMatch(/^[A-Z0-9].*[^., ]\.$/);
              expect(sentence).not.toMatch(/undefined|null|NaN|, ,| {2}|,\.|\.\./);
            }
            expect(cutTitle(told).length).toBeGreaterThan(3);
            expect(cutTitle(told).length).toBeLessThan(44);
          }
        }
      }
    },
  );
});

describe("what is done in a cut", () => {
  test("a chamfer that nothing guides is told to be planed along a batten", () => {
    const bare = facts({ kind: "rebate", purpose: "waste", leanDeg: -45 });
    expect(cutSentence({ ...bare, runsAgainst: "batten" })).toContain(
      "against a batten clamped on to guide it",
    );
    expect(cutSentence({ ...bare, runsAgainst: "line m2" })).not.toContain("batten");
  });

  test("a flat plane held leaning makes a chamfer, upright a step", () => {
    expect(workOf(facts({ kind: "rebate", purpose: "waste", leanDeg: -45 }))).toBe("chamfer");
    expect(workOf(facts({ kind: "rebate", purpose: "waste", leanDeg: 0 }))).toBe("step");
  });

  test("a snipe bill opens a V where it makes a guide, and a line where it makes relief", () => {
    expect(workOf(facts({ kind: "snipe bill", purpose: "guide" }))).toBe("open V");
    expect(workOf(facts({ kind: "snipe bill", purpose: "relief" }))).toBe("snipe line");
  });
});

describe("how the stick is laid", () => {
  test("face up needs no word; the rest is told by which edge comes up", () => {
    expect(stickWords(0)).toBeNull();
    expect(stickWords(360)).toBeNull();
    expect(stickWords(180)).toBe("Turn the stick back up.");
    // Turned anticlockwise by 90° the far edge, which was on the right, comes up.
    expect(stickWords(90)).toBe("Stand the stick on its gauge edge, far edge up.");
    expect(stickWords(-90)).toBe("Stand the stick on its far edge, gauge edge up.");
    expect(stickWords(20)).toBe("Hold the stick in a jaw canted 20°, far edge raised.");
    expect(stickWords(-20)).toBe("Hold the stick in a jaw canted 20°, gauge edge raised.");
  });
});
