import { describe, expect, test } from "vitest";
import {
  type Arc,
  circleOf,
  distanceMm,
  insideRing,
  nearestOnRing,
  type Point,
  pointAt,
  sweepRad,
} from "../curve/index.ts";
import { mirrorSection } from "../section/index.ts";
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

  test("1 mm off: the ends take their share of what the middle alone could not", () => {
    const normalised = normalise(lowBead(13.7), shelfOf(hollow(12.7)), 0.2);
    expect(onlyRadius(normalised)).toBeCloseTo(12.7, 6);
    // Through the same ends it would stand 0.17 mm higher; six tenths of the tolerance allow 0.12.
    const sameEndsMm = 12.7 - Math.sqrt(12.7 ** 2 - 6.85 ** 2) - 13.7 * (1 - Math.sqrt(3) / 2);
    expect(sameEndsMm).toBeCloseTo(0.17, 2);
    expect(normalised.movedMm).toBeLessThanOrEqual(0.12);
    const arc = normalised.planned.pieces.find((piece) => piece.kind === "arc");
    // Both feet stay on the flat, moved inwards alike.
    expect([arc?.from.y, arc?.to.y]).toEqual([16, 16]);
    expect((arc?.to.x ?? 0) - 10).toBeCloseTo(23.7 - (arc?.from.x ?? 0), 6);
    expect((arc?.to.x ?? 0) - 10).toBeGreaterThan(0.05);
  });

  test("2 mm off: left as drawn, for no share of it would do", () => {
    const normalised = normalise(lowBead(14.7), shelfOf(hollow(12.7)), 0.2);
    expect(onlyRadius(normalised)).toBeCloseTo(14.7, 9);
    expect(normalised.movedMm).toBe(0);
  });

  test("a wider tolerance lets the same arc move", () => {
    // Chord 13.7: 0.17 mm between the two heights; with half the tolerance 0.06 at the ends and as much in the middle.
    expect(onlyRadius(normalise(lowBead(13.7), shelfOf(hollow(12.7)), 0.2))).toBeCloseTo(12.7, 6);
    expect(onlyRadius(normalise(lowBead(13.7), shelfOf(hollow(12.7)), 0.1))).toBeCloseTo(13.7, 6);
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

/** Degrees of the circle that an arc of the planned section goes through. */
const sweepDeg = (piece: Arc) => (Math.abs(sweepRad(piece)) * 180) / Math.PI;
const arcsOf = (normalised: ReturnType<typeof normalise>) =>
  normalised.planned.pieces.filter((piece): piece is Arc => piece.kind === "arc");

describe("room for the plane's own sole", () => {
  /** A bead of 12.7 mm radius and this angle on a flat. */
  const beadOf = (angleDeg: number) => {
    const half = (angleDeg * Math.PI) / 360;
    return drawnSection(60, 20, [
      [0, 0],
      [60, 0],
      [60, 16],
      [30 + 12.7 * Math.sin(half), 16, Math.tan(half / 2)],
      [30 - 12.7 * Math.sin(half), 16],
      [0, 16],
    ]);
  };

  test("an arc a little narrower than its sole is raised until the sole lies on it from end to end", () => {
    const normalised = normalise(beadOf(58.4), shelfOf(hollow(12.7)), 0.2);
    const [bead] = arcsOf(normalised);
    expect(bead && sweepDeg(bead)).toBeCloseTo(60, 3);
    expect(normalised.movedMm).toBeLessThanOrEqual(0.12);
  });

  test("one that is too narrow for its sole by far stays as drawn, and one that is wider too", () => {
    for (const angleDeg of [50, 75]) {
      const section = beadOf(angleDeg);
      expect(normalise(section, shelfOf(hollow(12.7)), 0.2).planned.pieces).toEqual(section.outline.pieces);
    }
  });

  /** An ogee of two 60° arcs of 15.4 mm between a wall and a flat; the shelf has 15.875. */
  const OGEE = sectionOf({
    name: "ogee",
    stick: { widthMm: 60, thicknessMm: 25 },
    parts: [
      { kind: "fillet", widthMm: 8 },
      { kind: "step", riseMm: -3 },
      { kind: "cyma recta", acrossMm: 27.05, riseMm: -14.86 },
      { kind: "fillet", widthMm: "rest" },
    ],
  });
  const PAIR = shelfOf(hollow(15.875), round(15.875));

  test("the hollow of an ogee runs out past the join without digging into the cove", () => {
    const normalised = normalise(OGEE, PAIR, 0.2);
    const arcs = arcsOf(normalised);
    const convex = arcs.find((piece) => piece.bulge > 0) as Arc;
    const cove = arcs.find((piece) => piece.bulge < 0) as Arc;
    for (const piece of arcs) expect(circleOf(piece).radiusMm).toBeCloseTo(15.875, 6);
    // The foot of the hollow's arc is where the sole's one corner stands; the other lies 60° up the same circle.
    const { centre } = circleOf(convex);
    const foot = Math.atan2(convex.from.y - centre.y, convex.from.x - centre.x);
    const corner = {
      x: centre.x + 15.875 * Math.cos(foot + Math.PI / 3),
      y: centre.y + 15.875 * Math.sin(foot + Math.PI / 3),
    };
    // In the cove's own circle there is no wood: the corner stands in the air, or at most on the face.
    expect(distanceMm(corner, circleOf(cove).centre)).toBeLessThanOrEqual(15.875 + 1e-4);
    expect(normalised.movedMm).toBeLessThanOrEqual(0.12);
  });

  test("the side of the drawing that may be missed is kept to, or else the drawing", () => {
    for (const side of ["proud", "under"] as const) {
      const normalised = normalise(OGEE, PAIR, 0.2, side);
      const wanted = side === "proud" ? "out" : "in";
      for (const piece of arcsOf(normalised))
        for (let k = 1; k < 12; k++) {
          const p = pointAt(piece, k / 12);
          if (nearestOnRing(OGEE.outline, p).distanceMm > 0.003)
            expect(insideRing(OGEE.outline, p)).toBe(wanted);
        }
    }
  });

  test("nothing is aimed at outside the stick: a crown level with the face is let down", () => {
    const sag = 12.75 * (1 - Math.sqrt(3) / 2);
    const level = drawnSection(60, 20, [
      [0, 0],
      [60, 0],
      [60, 20 - sag],
      [22.75, 20 - sag, BULGE_60],
      [10, 20 - sag],
      [0, 20 - sag],
    ]);
    const [bead] = arcsOf(normalise(level, shelfOf(hollow(12.7)), 0.2));
    if (!bead) throw new Error("no arc");
    expect(circleOf(bead).radiusMm).toBeCloseTo(12.7, 6);
    expect(pointAt(bead, 0.5).y).toBeLessThanOrEqual(20 + 1e-6);
    expect(pointAt(bead, 0.5).y).toBeCloseTo(20, 3);
  });

  test("the mirrored drawing gives the mirrored section", () => {
    const there = normalise(OGEE, PAIR, 0.2).planned;
    const back = normalise(mirrorSection(OGEE), PAIR, 0.2).planned;
    for (const piece of there.pieces) {
      const mirrored = { x: 60 - piece.from.x, y: piece.from.y };
      expect(nearestOnRing(back, mirrored).distanceMm).toBeLessThan(2e-6);
      expect(Math.min(...back.pieces.map((other) => distanceMm(other.from, mirrored)))).toBeLessThan(2e-6);
    }
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

  test("one arc more is taken for radii that are all on the shelf", () => {
    const radii = [6.35, 12.7, 25.4, 28.575];
    const normalised = normalise(ellipse, shelfOf(...radii.map((r) => hollow(r))), 0.2);
    for (const piece of arcsOf(normalised))
      expect(Math.min(...radii.map((r) => Math.abs(r - circleOf(piece).radiusMm)))).toBeLessThan(1e-6);
    expect(normalised.arcsForCurves).toBeLessThanOrEqual(4);
  });

  test("lines and places of the drawing stay where they are", () => {
    const normalised = normalise(ellipse, shelfOf(hollow(12.7)), 0.2);
    const lines = (ring: typeof ellipse.outline) =>
      ring.pieces.filter((piece) => piece.kind === "line" && distanceMm(piece.from, piece.to) > 5).length;
    // Back, far edge, two fillets, gauge edge.
    expect(lines(normalised.planned)).toBe(5);
  });
});
