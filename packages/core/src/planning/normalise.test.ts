import { describe, expect, test } from "vitest";
import { circleOf, distanceMm, type Point, pointAt } from "../curve/index.ts";
import { normalise } from "./normalise.ts";
import { drawnSection, sectionOf } from "./testing/benches.ts";
import { hollow, round, shelfOf } from "./testing/shelves.ts";

const BULGE_60 = Math.tan(Math.PI / 12);

/** A low bead of 60° and this radius on a face lowered to 16 mm in a 60 × 20 mm stick. */
function lowBead(radiusMm: number) {
  return drawnSection(60, 20, [
    [0, 0],
    [60, 0],
    [60, 16],
    [10 + radiusMm, 16, BULGE_60],
    [10, 16],
    [0, 16],
  ]);
}

function onlyRadius(normalised: ReturnType<typeof normalise>): number {
  const arcs = normalised.planned.pieces.filter((piece) => piece.kind === "arc");
  if (arcs.length !== 1 || !arcs[0]) throw new Error(`one arc expected, ${arcs.length} found`);
  return circleOf(arcs[0]).radiusMm;
}

describe("arcs drawn near a radius of the shelf", () => {
  test("0.05 mm off: the plane's own radius on the same ends, moved by the difference of the sagittas", () => {
    const normalised = normalise(lowBead(12.75), shelfOf(hollow(12.7)), 0.2);
    expect(onlyRadius(normalised)).toBeCloseTo(12.7, 6);
    // Chord 12.75: 1.70818 mm high as drawn, 12.7 - sqrt(12.7² - 6.375²) = 1.71590 mm with the plane's radius.
    const drawnHighMm = 12.75 * (1 - Math.sqrt(3) / 2);
    const plannedHighMm = 12.7 - Math.sqrt(12.7 ** 2 - 6.375 ** 2);
    expect(normalised.movedMm).toBeCloseTo(plannedHighMm - drawnHighMm, 6);
    expect(normalised.movedMm).toBeCloseTo(0.0077, 3);
    const ends = normalised.planned.pieces.find((piece) => piece.kind === "arc");
    expect([ends?.from, ends?.to]).toEqual([
      { x: 22.75, y: 16 },
      { x: 10, y: 16 },
    ]);
  });

  test("1 mm off: left as drawn, for it would move by 0.17 mm of the 0.12 that six tenths of the tolerance allow", () => {
    const normalised = normalise(lowBead(13.7), shelfOf(hollow(12.7)), 0.2);
    expect(onlyRadius(normalised)).toBeCloseTo(13.7, 9);
    expect(normalised.movedMm).toBe(0);
  });

  test("a wider tolerance lets the same arc move", () => {
    // Chord 13.2: 1.768 mm high as drawn, 1.850 with the plane's radius. 0.081 mm is within six tenths of 0.2, not of 0.1.
    expect(onlyRadius(normalise(lowBead(13.2), shelfOf(hollow(12.7)), 0.2))).toBeCloseTo(12.7, 6);
    expect(onlyRadius(normalise(lowBead(13.2), shelfOf(hollow(12.7)), 0.1))).toBeCloseTo(13.2, 6);
  });

  test("of two radii within reach the nearer is taken", () => {
    const normalised = normalise(lowBead(12.75), shelfOf(hollow(12.65), hollow(12.77), hollow(12.9)), 0.2);
    expect(onlyRadius(normalised)).toBeCloseTo(12.77, 6);
  });

  test("a convex arc looks at hollows only", () => {
    const normalised = normalise(lowBead(12.75), shelfOf(round(12.7)), 0.2);
    expect(onlyRadius(normalised)).toBeCloseTo(12.75, 9);
  });

  test("a tiny bead may move by a share of its own height only", () => {
    // 1.5 mm of 60° is 0.2 mm high. With a radius of 2 mm it would be 0.146 high: 0.055 mm off, a quarter of it.
    const normalised = normalise(lowBead(1.5), shelfOf(hollow(2)), 0.2);
    expect(onlyRadius(normalised)).toBeCloseTo(1.5, 9);
  });
});

describe("free curves", () => {
  const QUARTER = 4 * (Math.SQRT2 - 1) * (1 / 3);
  const [WIDE_MM, HIGH_MM] = [20, 12];
  /** A quarter of an ellipse, from level at its top to upright at its foot. */
  const ellipse = sectionOf({
    name: "quarter ellipse",
    stick: { widthMm: 40, thicknessMm: 20 },
    parts: [
      { kind: "fillet", widthMm: 10 },
      {
        kind: "free curve",
        beziers: [
          {
            control1: [WIDE_MM * QUARTER, 0],
            control2: [WIDE_MM, -HIGH_MM * (1 - QUARTER)],
            to: [WIDE_MM, -HIGH_MM],
          },
        ],
      },
      { kind: "fillet", widthMm: "rest" },
    ],
  });

  /** Distance from a place to the ellipse about (10, 8), by dense sampling of the ellipse itself. */
  function offEllipseMm(p: Point): number {
    let least = Number.POSITIVE_INFINITY;
    for (let i = 0; i <= 4000; i++) {
      const angle = (i / 4000) * (Math.PI / 2);
      const on = { x: 10 + WIDE_MM * Math.sin(angle), y: 8 + HIGH_MM * Math.cos(angle) };
      least = Math.min(least, distanceMm(on, p));
    }
    return least;
  }

  test("an ellipse's quarter becomes few arcs, all within six tenths of the tolerance of the ellipse", () => {
    const normalised = normalise(ellipse, shelfOf(hollow(8), hollow(12.7), hollow(25.4)), 0.2);
    const arcs = normalised.planned.pieces.filter((piece) => piece.kind === "arc");
    expect(normalised.arcsForCurves).toBe(arcs.length);
    expect(arcs.length).toBeGreaterThanOrEqual(2);
    expect(arcs.length).toBeLessThanOrEqual(4);
    // The Bézier lies within 0.03 % of the radius of the true ellipse, 0.006 mm.
    for (const piece of arcs)
      for (let k = 0; k <= 20; k++) expect(offEllipseMm(pointAt(piece, k / 20))).toBeLessThan(0.12 + 0.01);
  });

  test("a finer tolerance takes more arcs, never fewer", () => {
    const shelf = shelfOf(hollow(8), hollow(12.7), hollow(25.4));
    const counts = [0.4, 0.2, 0.05, 0.02].map((tolMm) => normalise(ellipse, shelf, tolMm).arcsForCurves);
    for (let i = 1; i < counts.length; i++) expect(counts[i]).toBeGreaterThanOrEqual(counts[i - 1] as number);
  });

  test("lines and places of the drawing stay where they are", () => {
    const normalised = normalise(ellipse, shelfOf(hollow(12.7)), 0.2);
    const lines = (ring: typeof ellipse.outline) =>
      ring.pieces.filter((piece) => piece.kind === "line" && distanceMm(piece.from, piece.to) > 5).length;
    // Back, far edge, two fillets, gauge edge.
    expect(lines(normalised.planned)).toBe(5);
  });
});
