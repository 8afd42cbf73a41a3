import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import {
  arcsThrough,
  areaMm2,
  circleOf,
  distanceMm,
  extentsOf,
  lengthMm,
  line,
  point,
  radiusOfChordAndHeightMm,
  ring,
  sagittaMm,
  segmentAreaMm2,
  sweepRad,
} from "../packages/core/src/curve/index.ts";
import { toRad } from "../packages/core/src/measure/index.ts";

interface Row {
  readonly id: string;
  readonly input: Readonly<Record<string, number>>;
  readonly expected: Readonly<Record<string, number>>;
  readonly source: string;
}

const { rows } = JSON.parse(readFileSync(new URL("./area-a.json", import.meta.url), "utf8")) as {
  rows: readonly Row[];
};

const rowOf = (id: string): Row => rows.find((row) => row.id === id) as Row;

function near(actual: number, expected: number | undefined, tolerance: number): void {
  expect(Math.abs(actual - (expected as number))).toBeLessThanOrEqual(tolerance);
}

/** An arc of a sweep, its middle straight down, at a place of no significance: the kernel is meant to cope. */
function hangingArc(radiusMm: number, arcDeg: number) {
  const circle = { centre: point(3.7, -1.3), radiusMm };
  const sweep = toRad(arcDeg);
  const [arc] = arcsThrough(circle, -Math.PI / 2 - sweep / 2, sweep);
  return { circle, arc: arc as NonNullable<typeof arc> };
}

describe("Area A: segments of circles", () => {
  test("all rows are here and name their source", () => {
    expect(rows).toHaveLength(16);
    for (const row of rows) expect(row.source, row.id).not.toBe("");
  });

  test.each(rows.filter((row) => row.id < "A-1"))(
    "$id: $input.arc_deg degrees of radius 1",
    ({ input, expected }) => {
      const { circle, arc } = hangingArc(input.radius as number, input.arc_deg as number);
      near(lengthMm(arc), expected.arc_length, 1e-9);
      near(distanceMm(arc.from, arc.to), expected.chord, 1e-9);
      const { minY } = extentsOf(arc);
      near(arc.from.y - minY, expected.height, 1e-9);
      near(
        sagittaMm(expected.chord as number, circle.radiusMm),
        expected.height,
        1e-9 * heightPerChord(expected),
      );
      near(segmentAreaMm2(circle.radiusMm, sweepRad(arc)), expected.segment_area, 1e-9);
      near(areaMm2(ring([arc, line(arc.to, arc.from)])), expected.segment_area, 1e-9);
      near(radiusOfChordAndHeightMm(distanceMm(arc.from, arc.to), arc.from.y - minY), 1, 1e-9);
    },
  );

  /** A chord printed to ten digits gives a height whose last digits it cannot hold: dh = c dc / 4 (r - h), and dc. */
  function heightPerChord(expected: Row["expected"]): number {
    const { chord = 0, height = 0 } = expected;
    // At the half circle the height turns straight up over the chord; the row's digits are exact there.
    return height === 1 ? 1 : 1 + chord / (4 * (1 - height));
  }

  test("A-101: radius, arc and areas from a chord and a height", () => {
    const { input, expected } = rowOf("A-101");
    const { chord = 0, height = 0 } = input;
    const radiusMm = radiusOfChordAndHeightMm(chord, height);
    near(radiusMm, expected.radius, 1e-5 * 12);
    near(sagittaMm(chord, radiusMm), height, 1e-5 * 6);
    const { arc } = hangingArc(radiusMm, expected.arc_deg as number);
    near(circleOf(arc).radiusMm, radiusMm, 1e-12 * 12);
    near(distanceMm(arc.from, arc.to), chord, 1e-5 * 21);
    near(lengthMm(arc), expected.arc_length, 1e-5 * 25);
    near((lengthMm(arc) * radiusMm) / 2, expected.sector_area, 1e-5 * 154);
    near(segmentAreaMm2(radiusMm, sweepRad(arc)), expected.segment_area, 1e-5 * 89);
  });

  test("A-102: radius, chord, height and areas from an arc's length and angle", () => {
    const { input, expected } = rowOf("A-102");
    const radiusMm = (input.arc_length as number) / toRad(input.arc_deg as number);
    const { circle, arc } = hangingArc(radiusMm, input.arc_deg as number);
    near(radiusMm, expected.radius, 1e-6);
    near(lengthMm(arc), input.arc_length, 1e-12);
    near(distanceMm(arc.from, arc.to), expected.chord, 1e-6);
    near(sagittaMm(distanceMm(arc.from, arc.to), radiusMm), expected.height, 1e-6 * 0.1);
    near(circle.centre.y - arc.from.y, expected.distance_to_chord, 1e-5);
    near((lengthMm(arc) * radiusMm) / 2, expected.sector_area, 1e-6);
    near(segmentAreaMm2(radiusMm, sweepRad(arc)), expected.segment_area, 1e-6 * 0.1);
  });

  // The published rule in words: r = (c² + 4h²) / 8h; segment = arc r / 2 − c (r − h) / 2. Chord 16 and height 4
  // give (256 + 64) / 32 = 10 by hand, with half the arc's angle asin(8/10).
  test("A-103: the pocketbook's rule, chord 16 and height 4", () => {
    expect(rowOf("A-103").source).toContain("Building Trades Pocketbook");
    expect(radiusOfChordAndHeightMm(16, 4)).toBe(10);
    expect(sagittaMm(16, 10)).toBe(4);
    const sweep = 2 * Math.asin(0.8);
    const arcMm = 10 * sweep;
    near(segmentAreaMm2(10, sweep), (arcMm * 10) / 2 - (16 * (10 - 4)) / 2, 1e-12 * 50);
  });

  test("A-104: a 60 degree sole is as wide as its radius, 0.13397 of it deep", () => {
    const { input, expected } = rowOf("A-104");
    const { arc } = hangingArc(expected.radius as number, input.arc_deg as number);
    near(distanceMm(arc.from, arc.to), input.sole_width, 1e-6);
    near(sagittaMm(input.sole_width as number, expected.radius as number), expected.depth, 1e-6);
  });

  test("refuses what no circle has", () => {
    expect(() => sagittaMm(21, 10)).toThrow("chordMm");
    expect(() => sagittaMm(1, Number.NaN)).toThrow("radiusMm");
    expect(() => radiusOfChordAndHeightMm(1, 0)).toThrow("heightMm");
    expect(() => radiusOfChordAndHeightMm(Number.POSITIVE_INFINITY, 1)).toThrow("chordMm");
    expect(() => segmentAreaMm2(1, 7)).toThrow("sweepRad");
  });
});
