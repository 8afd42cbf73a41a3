import { expect, test } from "vitest";
import { areaMm2, circleOf, extentsOf, type Point, tangentRad } from "../curve/index.ts";
import { toDeg } from "../measure/index.ts";
import {
  buildSection,
  joinsOf,
  mirrorSection,
  type PartSpec,
  type Section,
  type SectionSpec,
  workedFaces,
} from "./index.ts";
import {
  CHART_CABINET,
  CORNICE,
  FRAME,
  GLAZING_BAR,
  PILASTER,
  PLINTH,
  REED_MM,
} from "./testing/chart-cabinet.ts";

function built(spec: SectionSpec): Section {
  const outcome = buildSection(spec);
  if (!outcome.ok) throw new Error(JSON.stringify(outcome));
  expect(outcome.warnings).toEqual([]);
  return outcome.value;
}

function refusal(spec: SectionSpec): string {
  const outcome = buildSection(spec);
  return outcome.ok ? "built" : `${outcome.trouble.code} ${outcome.trouble.where}`;
}

const STICK = { widthMm: 40, thicknessMm: 20 };
const withParts = (parts: readonly PartSpec[], more: Partial<SectionSpec> = {}): SectionSpec => ({
  name: "trial",
  stick: STICK,
  parts,
  ...more,
});
const near = (at: Point, x: number, y: number) => Math.hypot(at.x - x, at.y - y) < 1e-9;

test.each(CHART_CABINET)("the chart cabinet's $name is built without a word", (spec) => {
  const section = built(spec);
  const { minX, minY, maxX, maxY } = extentsOf(section.outline);
  expect(minX).toBeCloseTo(0, 9);
  expect(minY).toBeCloseTo(0, 9);
  expect(maxX).toBeCloseTo(spec.stick.widthMm, 9);
  expect(maxY).toBeLessThanOrEqual(spec.stick.thicknessMm + 1e-9);
});

test("a glazing bar's area is that of its rectangles and segments", () => {
  const section = built(GLAZING_BAR);
  // R = (s² + l²) / 2s with s = 8, l = 11; the segment stands on the joining line of each ovolo.
  const radiusMm = (8 ** 2 + 11 ** 2) / 16;
  const sweepRad = 2 * Math.atan2(8, 11);
  const segmentMm2 = (radiusMm ** 2 / 2) * (sweepRad - Math.sin(sweepRad));
  const rectanglesMm2 = 6 * 12 + 22 * 9 + 6 * 11;
  expect(areaMm2(section.outline)).toBeCloseTo(rectanglesMm2 + 2 * (44 + segmentMm2), 9);
});

test("the pilaster's reeds: five arcs of radius = width, quirks of 120° between them", () => {
  const section = built(PILASTER);
  const reeds = section.named.find((span) => span.kind === "reeds");
  expect(reeds?.count).toBe(5);
  const arcs = section.outline.pieces.slice(reeds?.first, (reeds?.first ?? 0) + 5);
  for (const arc of arcs) {
    if (arc.kind !== "arc") throw new Error("a reed is an arc");
    expect(circleOf(arc).radiusMm).toBeCloseTo(REED_MM, 9);
  }
  const between = joinsOf(section.outline).filter((join) => join.radiusAfterMm && join.radiusBeforeMm);
  expect(between.map((join) => join.kind)).toEqual(["quirk", "quirk", "quirk", "quirk"]);
  for (const join of between) expect(join.angleDeg).toBeCloseTo(120, 9);
});

test("the ring starts at the back's gauge end and names every part from far to gauge edge, back corners round it", () => {
  expect(built(FRAME).named.map((span) => `${span.first}+${span.count} ${span.name}`)).toEqual([
    "2+1 fillet",
    "3+2 cyma reversa",
    "5+1 fillet",
    "6+3 quirk",
    "9+1 bead",
    "11+2 glass rebate",
  ]);
});

test("a spring bevel rises at its angle from the back", () => {
  const pieces = built(CORNICE).outline.pieces;
  const last = pieces.at(-1);
  expect(last?.kind).toBe("line");
  // Walked down from the gauge edge towards the back: 38° below level.
  expect(toDeg(tangentRad(last as never, 0))).toBeCloseTo(-38, 9);
  expect(last?.from.y).toBeCloseTo(6, 9);
});

test("a smooth fillet runs on at the slope of the low bead before it", () => {
  const section = built(
    withParts([
      { kind: "fillet", widthMm: 10 },
      { kind: "step", riseMm: -8 },
      { kind: "low bead", widthMm: 10 },
      { kind: "fillet", widthMm: 4, smooth: true },
      { kind: "fillet", widthMm: "rest" },
    ]),
  );
  // 60° held upright: the foot slopes 30°, so 4 mm run 4 cos 30° across and 4 sin 30° down.
  const ends = section.outline.pieces.map((piece) => piece.from);
  expect(ends.some((at) => near(at, 20 + 4 * Math.cos(Math.PI / 6), 12 - 2))).toBe(true);
});

test("a hollow upright followed by a round upright of another radius joins smoothly when both turn 60°", () => {
  const section = built(
    withParts([
      { kind: "fillet", widthMm: 5 },
      { kind: "step", riseMm: -8 },
      { kind: "low bead", widthMm: 9.525 },
      { kind: "swept arc", radiusMm: 12.7, sweepDeg: 60, bend: "hollow", smooth: true },
      { kind: "fillet", widthMm: "rest" },
    ]),
  );
  const join = joinsOf(section.outline).find((one) => one.radiusBeforeMm && one.radiusAfterMm);
  expect(join?.kind).toBe("smooth");
  // The round's foot stands level with its start: 12.7 mm across, as wide as its radius.
  const ends = section.outline.pieces.map((piece) => piece.from);
  expect(ends.some((at) => near(at, 5 + 9.525 + 12.7, 12))).toBe(true);
});

test("a running arc ends where it is told and starts without an arris", () => {
  const section = built(
    withParts([
      { kind: "fillet", widthMm: 20 },
      { kind: "running arc", acrossMm: 10, riseMm: -10 },
      { kind: "fillet", widthMm: "rest" },
    ]),
  );
  const arcs = section.outline.pieces.filter((piece) => piece.kind === "arc");
  expect(arcs).toHaveLength(1);
  expect(circleOf(arcs[0] as never).radiusMm).toBeCloseTo(10, 9);
});

test("a free curve stands as short lines that its span names", () => {
  const section = built(
    withParts([
      { kind: "fillet", widthMm: 10 },
      { kind: "free curve", beziers: [{ control1: [8, 0], control2: [2, -9], to: [14, -9] }], name: "knee" },
      { kind: "fillet", widthMm: "rest" },
    ]),
  );
  const [span] = section.freeSpans;
  const named = section.named.find((one) => one.name === "knee");
  expect(span).toEqual({ first: named?.first, count: named?.count });
  const pieces = section.outline.pieces.slice(span?.first, (span?.first ?? 0) + (span?.count ?? 0));
  expect(near(pieces[0]?.from as Point, 24, 11)).toBe(true);
  expect(near(pieces.at(-1)?.to as Point, 10, 20)).toBe(true);
  expect(workedFaces(section).faces).toHaveLength(1);
});

test("a chain may end on the back", () => {
  const section = built(
    withParts([
      { kind: "fillet", widthMm: 10 },
      { kind: "ovolo", acrossMm: 20, riseMm: -20 },
    ]),
  );
  expect(areaMm2(section.outline)).toBeCloseTo(200 + (Math.PI * 400) / 4, 9);
});

test("what is refused, and where", () => {
  expect(refusal(withParts([]))).toBe("parts-none section.parts");
  expect(refusal(withParts([{ kind: "fillet", widthMm: 39 }]))).toBe("parts-fall-short section.parts");
  expect(refusal(withParts([{ kind: "fillet", widthMm: 41 }]))).toBe("parts-too-wide section.parts");
  expect(refusal(withParts([{ kind: "fillet", widthMm: 40 }]))).toBe("section-not-worked section");
  expect(refusal(withParts([{ kind: "fillet", widthMm: Number.NaN }]))).toBe("part-size section.parts[0]");
  expect(refusal(withParts([{ kind: "fillet", widthMm: 20, smooth: true }]))).toBe(
    "part-runs-on-from-nothing section.parts[0]",
  );
  expect(
    refusal(
      withParts([
        { kind: "bead", widthMm: 8 },
        { kind: "fillet", widthMm: "rest" },
      ]),
    ),
  ).toBe("section-outside-stick section");
  expect(
    refusal(
      withParts([
        { kind: "fillet", widthMm: 20 },
        { kind: "arc", acrossMm: 10, riseMm: 0, radiusMm: 4, bend: "hollow" },
      ]),
    ),
  ).toBe("part-radius section.parts[1]");
  expect(
    refusal(
      withParts([
        { kind: "fillet", widthMm: "rest" },
        { kind: "fillet", widthMm: "rest" },
      ]),
    ),
  ).toBe("parts-two-rests section.parts[1]");
  expect(
    refusal(
      withParts([
        { kind: "fillet", widthMm: "rest" },
        { kind: "chamfer", acrossMm: 45, riseMm: -2 },
      ]),
    ),
  ).toBe("parts-no-rest section.parts[0]");
  expect(refusal({ ...PLINTH, startHeightMm: 21 })).toBe("section-start section.startHeightMm");
  expect(refusal({ ...PLINTH, stick: { widthMm: 900, thicknessMm: 20 } })).toBe("stick-size section.stick");
  const rebate = { kind: "rebate", edge: "gauge", widthMm: 6, depthMm: 5 } as const;
  expect(refusal({ ...FRAME, back: [rebate, rebate] })).toBe("back-twice section.back");
  expect(refusal({ ...FRAME, back: [{ ...rebate, depthMm: 13 }] })).toBe("back-too-high section.back");
  expect(refusal({ ...FRAME, back: [{ ...rebate, widthMm: 32 }] })).toBe("back-all-gone section.back");
  expect(refusal({ ...FRAME, back: [{ ...rebate, widthMm: -1 }] })).toBe("back-size section.back");
});

test("mirrored twice is the same section", () => {
  for (const spec of CHART_CABINET) {
    const section = built(spec);
    const once = mirrorSection(section);
    const twice = mirrorSection(once);
    expect(twice.named).toEqual(section.named);
    expect(areaMm2(once.outline)).toBeCloseTo(areaMm2(section.outline), 9);
    for (const [index, piece] of twice.outline.pieces.entries()) {
      const was = section.outline.pieces[index];
      expect(near(piece.from, was?.from.x ?? Number.NaN, was?.from.y ?? Number.NaN)).toBe(true);
    }
  }
});
