import { expect, test } from "vitest";
import { ringFromVertices, type Vertex } from "../curve/index.ts";
import { exampleOf, sayTrouble } from "../measure/index.ts";
import { inspectSection, type Section, stickRing } from "./index.ts";

function inspected(vertices: readonly Vertex[], widthMm = 40, thicknessMm = 20) {
  return inspectSection(sectionOf(vertices, widthMm, thicknessMm));
}

function sectionOf(vertices: readonly Vertex[], widthMm = 40, thicknessMm = 20): Section {
  return {
    name: "s",
    stick: stickRing(widthMm, thicknessMm),
    outline: ringFromVertices(vertices),
    freeSpans: [],
    named: [],
  };
}

const CHAMFERED: readonly Vertex[] = [
  [0, 0],
  [40, 0],
  [40, 15],
  [35, 20],
  [0, 20],
];

test("a chamfered block: nothing to say", () => {
  expect(inspected(CHAMFERED)).toEqual({ refusals: [], warnings: [] });
});

test("an outline with a gap is not closed, and says where and how wide", () => {
  const section = sectionOf(CHAMFERED);
  const pieces = section.outline.pieces.map((piece, index) =>
    index === 2 ? { ...piece, to: { x: 35, y: 19.6 } } : piece,
  );
  const { refusals } = inspectSection({ ...section, outline: { pieces } });
  expect(refusals).toHaveLength(1);
  expect(refusals[0]).toMatchObject({ code: "section-open", facts: { acrossMm: 35, upMm: 19.6 } });
  expect(refusals[0]?.facts.gapMm).toBeCloseTo(0.4, 9);
});

test("an outline that crosses itself says where", () => {
  const { refusals } = inspected([
    [0, 0],
    [40, 0],
    [40, 20],
    [20, 20],
    [30, 5],
    [10, 5],
    [20, 20],
    [0, 20],
  ]);
  expect(refusals.map((one) => one.code)).toContain("section-crosses-itself");
  expect(refusals[0]?.facts).toMatchObject({ acrossMm: 20, upMm: 20 });
});

test("an arc that bulges out of the face: by its whole height, at its crown", () => {
  const { refusals } = inspected([
    [0, 0],
    [40, 0],
    [40, 20],
    [30, 20, 0.1],
    [10, 20],
    [0, 20],
  ]);
  // Height of the arc: half the chord times the bulge = 10 × 0.1.
  expect(refusals).toHaveLength(1);
  expect(refusals[0]).toMatchObject({ code: "section-outside-stick", facts: { side: "face" } });
  expect(refusals[0]?.facts.byMm).toBeCloseTo(1, 9);
  expect(refusals[0]?.facts.acrossMm).toBeCloseTo(20, 9);
});

test("standing out beyond two sides is said of each", () => {
  const { refusals } = inspected([
    [-1, 0],
    [40, 0],
    [42, 10],
    [30, 20],
    [0, 20],
  ]);
  expect(refusals.map((one) => `${one.facts.side} ${one.facts.byMm}`).sort()).toEqual([
    "far edge 2",
    "gauge edge 1",
  ]);
});

test("drawing noise beyond a side is none", () => {
  const { refusals } = inspected([
    [0, 0],
    [40, 0],
    [40.009, 15],
    [35, 20],
    [0, 20],
  ]);
  expect(refusals).toEqual([]);
});

test("the stick itself: nothing to cut", () => {
  const { refusals } = inspected([
    [0, 0],
    [40, 0],
    [40, 20],
    [0, 20],
  ]);
  expect(refusals.map((one) => one.code)).toEqual(["section-not-worked"]);
});

/** A groove whose mouth is narrower than its floor; `mouthMm` and `floorMm` wide, 10 deep, in the middle of the face. */
const dovetailGroove = (mouthMm: number, floorMm: number): readonly Vertex[] => [
  [0, 0],
  [40, 0],
  [40, 20],
  [20 + mouthMm / 2, 20],
  [20 + floorMm / 2, 10],
  [20 - floorMm / 2, 10],
  [20 - mouthMm / 2, 20],
  [0, 20],
];

test("a dovetail groove's flanks see out over the other side: no warning while the mouth is wide", () => {
  expect(inspected(dovetailGroove(10, 12)).warnings).toEqual([]);
});

/** A slot 2 wide and 6 deep opens into a chamber 20 wide and 4 high. */
const CHAMBER: readonly Vertex[] = [
  [0, 0],
  [40, 0],
  [40, 20],
  [21, 20],
  [21, 14],
  [30, 14],
  [30, 10],
  [10, 10],
  [10, 14],
  [19, 14],
  [19, 20],
  [0, 20],
];

test("a chamber below a narrow slot: all but what stands under the slot has no way out", () => {
  const { refusals, warnings } = inspected(CHAMBER);
  expect(refusals).toEqual([]);
  expect(warnings.map((one) => one.code)).toEqual(["section-undercut", "section-undercut"]);
  // By hand: through the slot (2 wide, 6 deep) the steepest sight from the floor, 10 below the mouth, runs from
  // (21, 20) over (19, 14) to x = 19 − 2/6 × 4; so the floor is seen from 17.67 to 22.33. Hidden on each side:
  // ceiling 9, end wall 4, floor 7.67.
  for (const one of warnings) {
    expect(one.facts.stretchMm).toBeGreaterThan(9 + 4 + 7.67 - 1);
    expect(one.facts.stretchMm).toBeLessThan(9 + 4 + 7.67 + 1);
  }
});

test("a glass rebate at the back is no undercut: it opens to the back", () => {
  const { warnings } = inspected([
    [8, 0],
    [40, 0],
    [40, 20],
    [0, 20],
    [0, 6],
    [8, 6],
  ]);
  expect(warnings).toEqual([]);
});

test("a groove in the gauge edge opens to that edge alone", () => {
  const { warnings } = inspected([
    [0, 0],
    [40, 0],
    [40, 20],
    [0, 20],
    [0, 12],
    [6, 12],
    [6, 8],
    [0, 8],
  ]);
  expect(warnings).toEqual([]);
});

const block = (widthMm: number, heightMm: number) =>
  inspected(
    [
      [0, 0],
      [widthMm, 0],
      [widthMm, heightMm / 2],
      [0, heightMm],
    ],
    widthMm,
    heightMm,
  );

test("sizes: too small, too large, thin, doubtful", () => {
  expect(block(1.5, 0.75).refusals.map((one) => one.code)).toEqual(["section-too-small"]);
  expect(block(301, 20).refusals.map((one) => one.code)).toEqual(["section-too-large"]);
  expect(block(300, 20).refusals).toEqual([]);
  expect(block(3.5, 1.25).warnings.map((one) => one.code)).toEqual(["section-maybe-inches"]);
  expect(block(3.5, 1.25).warnings[0]?.facts.inchesWidthMm).toBeCloseTo(88.9, 9);
  expect(block(40, 1.5).warnings.map((one) => one.code)).toEqual(["section-thin"]);
  expect(block(40, 20)).toEqual({ refusals: [], warnings: [] });
});

test("pieces shorter than a hundredth of a millimetre are pointed out", () => {
  const { warnings } = inspected([
    [0, 0],
    [40, 0],
    [40, 15],
    [35, 20],
    [34.995, 20],
    [0, 20],
  ]);
  expect(warnings).toHaveLength(1);
  expect(warnings[0]).toMatchObject({ code: "section-short-pieces", facts: { count: 1, upMm: 20 } });
});

test("every trouble carries the facts its sentence is made of", () => {
  const found = [
    ...block(1.5, 0.75).refusals,
    ...block(301, 20).refusals,
    ...block(3.5, 1.25).warnings,
    ...inspected(CHAMBER).warnings,
  ];
  for (const one of found) {
    expect(Object.keys(one.facts).sort()).toEqual(Object.keys(exampleOf(one.code)).sort());
    expect(sayTrouble(one, { unit: "mm" }).sentence).not.toContain("?");
  }
});
