import { expect, test } from "vitest";
import { ringFromVertices } from "../curve/index.ts";
import { buildSection, type Section, type SectionSpec, stickRing, workedFaces } from "./index.ts";
import { FRAME, GLAZING_BAR, PILASTER } from "./testing/chart-cabinet.ts";

function built(spec: SectionSpec): Section {
  const outcome = buildSection(spec);
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.trouble));
  return outcome.value;
}

const BACK = 0;
const FAR_EDGE = 1;
const FACE = 2;
const GAUGE_EDGE = 3;
const sides = (section: Section) => workedFaces(section).faces.map((face) => [face.fromSide, face.toSide]);

test("the pilaster: one run within the face, from side to side of the band", () => {
  const section = built(PILASTER);
  const { faces, pieces } = workedFaces(section);
  expect(sides(section)).toEqual([[FACE, FACE]]);
  // Two steps and five reeds.
  expect(faces[0]?.count).toBe(7);
  expect(pieces.filter((worked) => worked)).toHaveLength(7);
});

test("the frame: the moulded face, and the rebate between gauge edge and back", () => {
  expect(sides(built(FRAME))).toEqual([
    [FACE, GAUGE_EDGE],
    [GAUGE_EDGE, BACK],
  ]);
});

test("the glazing bar: two ovolos and two rebates", () => {
  expect(sides(built(GLAZING_BAR))).toEqual([
    [BACK, FAR_EDGE],
    [FAR_EDGE, FACE],
    [FACE, GAUGE_EDGE],
    [GAUGE_EDGE, BACK],
  ]);
});

test("a run may pass the ring's start", () => {
  // The same block with a chamfer, its ring started in the middle of the worked run.
  const outline = ringFromVertices([
    [35, 15],
    [30, 20],
    [0, 20],
    [0, 0],
    [40, 0],
    [40, 12],
  ]);
  const section: Section = { name: "s", stick: stickRing(40, 20), outline, freeSpans: [], named: [] };
  expect(workedFaces(section).faces).toMatchObject([
    { first: 5, count: 2, fromSide: FAR_EDGE, toSide: FACE },
  ]);
});

test("what lies a hundredth off the stick's side counts as that side", () => {
  const at = (y: number): Section => ({
    name: "s",
    stick: stickRing(40, 20),
    outline: ringFromVertices([
      [0, 0],
      [40, 0],
      [40, y],
      [0, y],
    ]),
    freeSpans: [],
    named: [],
  });
  expect(workedFaces(at(19.995)).faces).toHaveLength(0);
  expect(workedFaces(at(19.9)).faces).toHaveLength(1);
});

test("a section that touches no side of its stick is one face all round", () => {
  const section: Section = {
    name: "s",
    stick: stickRing(40, 20),
    outline: ringFromVertices([
      [5, 5],
      [35, 5],
      [35, 15],
      [5, 15],
    ]),
    freeSpans: [],
    named: [],
  };
  expect(workedFaces(section).faces).toMatchObject([{ first: 0, count: 4 }]);
});

test("a free curve that leaves the face tangent is worked from its very start", () => {
  const section = built({
    name: "s",
    stick: { widthMm: 40, thicknessMm: 20 },
    parts: [
      { kind: "fillet", widthMm: 10 },
      { kind: "free curve", beziers: [{ control1: [10, 0], control2: [20, -4], to: [30, -8] }] },
    ],
  });
  const { faces } = workedFaces(section);
  expect(faces).toHaveLength(1);
  expect(faces[0]?.to.x).toBeCloseTo(10, 9);
  expect(faces[0]?.from.x).toBeCloseTo(40, 9);
});
