import { expect, test } from "vitest";
import {
  arc,
  circleOf,
  flattenPiece,
  type Piece,
  type Point,
  point,
  splitPiece,
  tangentRad,
} from "../curve/index.ts";
import { FLATTEN_MM, toDeg } from "../measure/index.ts";
import { cyma } from "./forms/cymas.ts";
import { quarter, scotia } from "./forms/quarters.ts";
import { halfRound } from "./forms/rounds.ts";
import { arcsApartMm, fitArcs, snapArc } from "./index.ts";

function runOf(pieces: readonly Piece[], chordTolMm = FLATTEN_MM): readonly Point[] {
  return pieces.flatMap((piece, index) => flattenPiece(piece, chordTolMm).slice(index === 0 ? 0 : 1));
}

const radiiOf = (pieces: readonly Piece[]) =>
  pieces.map((piece) => (piece.kind === "arc" ? circleOf(piece).radiusMm : Number.POSITIVE_INFINITY));

test("a straight run is one line", () => {
  const fit = fitArcs([point(0, 0), point(3, 4), point(6, 8)], { tolMm: 0.1 });
  expect(fit.chain.pieces).toEqual([{ kind: "line", from: point(0, 0), to: point(6, 8) }]);
  expect(fit.breaks).toEqual([0, 2]);
});

test("two lines at a corner are two lines that meet at the corner", () => {
  const fit = fitArcs([point(0, 0), point(5, 0), point(10, 0), point(10, 5), point(10, 10)], { tolMm: 0.1 });
  expect(fit.chain.pieces.map((piece) => piece.kind)).toEqual(["line", "line"]);
  expect(fit.breaks).toEqual([0, 2, 4]);
});

test("exact radii come back from the flattened scotia, joined at the bottom", () => {
  const pieces = scotia({ kind: "scotia", acrossMm: 30 });
  const fit = fitArcs(runOf(pieces), { tolMm: 0.2 });
  const radii = radiiOf(fit.chain.pieces);
  expect(radii).toHaveLength(2);
  expect(radii[0]).toBeCloseTo(10, 3);
  expect(radii[1]).toBeCloseTo(20, 3);
  expect(fit.chain.pieces[0]?.to.x).toBeCloseTo(10, 3);
  expect(fit.chain.pieces[0]?.to.y).toBeCloseTo(-10, 3);
});

test("a shelf radius is taken where it lies within the tolerance", () => {
  // A quadrant of 12.5 mm: a 12.7 mm radius over the same chord is higher by less than 0.1 mm.
  const pieces = quarter({ kind: "ovolo", acrossMm: 12.5, riseMm: -12.5 });
  const bare = fitArcs(runOf(pieces), { tolMm: 0.2 });
  const shelf = fitArcs(runOf(pieces), { tolMm: 0.2, radiiMm: [6.35, 12.7, 25.4] });
  expect(radiiOf(bare.chain.pieces)[0]).toBeCloseTo(12.5, 3);
  expect(radiiOf(shelf.chain.pieces)[0]).toBeCloseTo(12.7, 9);
  expect(shelf.deviationMm).toBeLessThanOrEqual(0.2);
});

test("a shelf radius outside the tolerance is not taken", () => {
  const pieces = quarter({ kind: "ovolo", acrossMm: 12.5, riseMm: -12.5 });
  const shelf = fitArcs(runOf(pieces), { tolMm: 0.02, radiiMm: [12.7] });
  expect(radiiOf(shelf.chain.pieces)[0]).toBeCloseTo(12.5, 3);
});

test("a quarter ellipse: few arcs, joined within two degrees", () => {
  const points = Array.from({ length: 400 }, (_, k) => {
    const t = ((k / 399) * Math.PI) / 2;
    return point(20 * Math.sin(t), 10 * Math.cos(t));
  });
  const fit = fitArcs(points, { tolMm: 0.1, startRad: 0, endRad: -Math.PI / 2 });
  // Radius runs from a²/b = 40 to b²/a = 5 mm: one circle cannot do it; the count is small (two or three by hand).
  expect(fit.chain.pieces.length).toBeGreaterThan(1);
  expect(fit.chain.pieces.length).toBeLessThanOrEqual(3);
  for (const [k, piece] of fit.chain.pieces.slice(1).entries()) {
    const before = fit.chain.pieces[k] as Piece;
    expect(Math.abs(toDeg(tangentRad(piece, 0) - tangentRad(before, 1)))).toBeLessThan(2);
  }
});

test("what is no curve is refused as our own mistake", () => {
  expect(() => fitArcs([point(0, 0)], { tolMm: 0.1 })).toThrow("two points");
  expect(() => fitArcs([point(0, 0), point(1, 0)], { tolMm: 0 })).toThrow("tolMm");
});

test("a snapped arc keeps its ends and its side", () => {
  const drawn = arc(point(0, 0), point(10, 0), -0.3);
  const snapped = snapArc(drawn, 12.7);
  if (snapped === null) throw new Error("12.7 spans 10");
  expect(circleOf(snapped).radiusMm).toBeCloseTo(12.7, 9);
  expect(Math.sign(snapped.bulge)).toBe(-1);
  expect(snapArc(drawn, 4.9)).toBeNull();
  // Heights over the chord: 5 × 0.3 = 1.5 and 12.7 − √(12.7² − 5²).
  expect(arcsApartMm(drawn, snapped)).toBeCloseTo(1.5 - (12.7 - Math.sqrt(12.7 ** 2 - 25)), 9);
});

test("K-14 for a row of tolerances and sizes, either way round and turned", () => {
  const forms: readonly (readonly [string, number, readonly Piece[]])[] = [
    ["torus", 1, halfRound({ kind: "torus", widthMm: 20 })],
    ["ovolo", 1, quarter({ kind: "ovolo", acrossMm: 15, riseMm: -20 })],
    ["cavetto", 1, quarter({ kind: "cavetto", acrossMm: 20, riseMm: 20 })],
    ["scotia", 2, scotia({ kind: "scotia", acrossMm: 20, small: "last" })],
    ["cyma 60", 2, cyma({ kind: "cyma recta", acrossMm: 20, riseMm: 20 })],
    ["cyma quadrant", 2, cyma({ kind: "cyma reversa", acrossMm: 20, riseMm: -20, construction: "thick" })],
  ];
  for (const [name, count, pieces] of forms) {
    for (const tolMm of [0.004, 0.02, 0.19]) {
      const run = runOf(pieces);
      const turned = run.map((p) => point(p.x * 0.8 - p.y * 0.6, p.x * 0.6 + p.y * 0.8));
      for (const points of [run, [...run].reverse(), turned]) {
        const fit = fitArcs(points, { tolMm });
        expect(fit.chain.pieces.length, `${name} at ${tolMm}`).toBe(count);
        expect(fit.deviationMm).toBeLessThanOrEqual(tolMm);
      }
    }
  }
});

test("a noisy run stays within its tolerance and needs no more arcs than it was made of", () => {
  // Two quadrants, each point off by 0.05 in turn: the arcs themselves pass within 0.05.
  const pieces = scotia({ kind: "scotia", acrossMm: 30 });
  const halves = pieces.flatMap((piece) => splitPiece(piece, 0.5));
  const run = runOf(halves, 0.01).map((p, k) => point(p.x, p.y + (k % 2 === 0 ? 0.05 : -0.05)));
  const fit = fitArcs(run, { tolMm: 0.2 });
  expect(fit.chain.pieces.length).toBe(2);
  expect(fit.deviationMm).toBeLessThanOrEqual(0.2);
});
