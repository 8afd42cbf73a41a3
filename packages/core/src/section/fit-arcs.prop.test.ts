import fc from "fast-check";
import { expect, test } from "vitest";
import { nearestOnPiece, type Piece, type Point, point, pointAt } from "../curve/index.ts";
import { fitArcs } from "./index.ts";

fc.configureGlobal({ seed: 20261124, numRuns: 60 });

/** A smooth run: curvature changes slowly along it. */
const smoothRun = fc
  .array(fc.double({ min: -0.15, max: 0.15, noNaN: true }), { minLength: 2, maxLength: 6 })
  .map((curvatures) => {
    const points: Point[] = [point(0, 0)];
    let headingRad = 0;
    let at = point(0, 0);
    for (let k = 0; k < curvatures.length - 1; k++) {
      for (let step = 0; step < 60; step++) {
        const share = step / 60;
        headingRad += 0.1 * ((curvatures[k] as number) * (1 - share) + (curvatures[k + 1] as number) * share);
        at = point(at.x + 0.1 * Math.cos(headingRad), at.y + 0.1 * Math.sin(headingRad));
        points.push(at);
      }
    }
    return points;
  });

/** Dense sampling, by another route than the code's: distance of points to pieces and of pieces' points to lines. */
function apartMm(points: readonly Point[], pieces: readonly Piece[]): number {
  let worst = 0;
  for (const p of points)
    worst = Math.max(worst, Math.min(...pieces.map((one) => nearestOnPiece(one, p).distanceMm)));
  const lines = points.slice(1).map((to, k): Piece => ({ kind: "line", from: points[k] as Point, to }));
  for (const piece of pieces) {
    for (let k = 0; k <= 20; k++) {
      const p = pointAt(piece, k / 20);
      worst = Math.max(worst, Math.min(...lines.map((one) => nearestOnPiece(one, p).distanceMm)));
    }
  }
  return worst;
}

test("arcs stay within the tolerance of the curve, both ways, and their ends are the curve's", () => {
  fc.assert(
    fc.property(smoothRun, fc.constantFrom(0.02, 0.1, 0.2), (points, tolMm) => {
      const fit = fitArcs(points, { tolMm, radiiMm: [3.175, 6.35, 12.7, 25.4] });
      const { pieces } = fit.chain;
      expect(apartMm(points, pieces)).toBeLessThanOrEqual(tolMm + 1e-9);
      expect(pieces[0]?.from).toEqual(points[0]);
      expect(pieces.at(-1)?.to).toEqual(points.at(-1));
      expect(fit.deviationMm).toBeLessThanOrEqual(tolMm);
    }),
  );
});

test("a wider tolerance never needs more pieces", () => {
  fc.assert(
    fc.property(smoothRun, (points) => {
      const counts = [0.4, 0.1, 0.025].map((tolMm) => fitArcs(points, { tolMm }).chain.pieces.length);
      // The curve is thinned by 2 % of the tolerance, which may hide a break point: one piece of slack.
      expect(counts[0]).toBeLessThanOrEqual((counts[1] as number) + 1);
      expect(counts[1]).toBeLessThanOrEqual((counts[2] as number) + 1);
    }),
    { numRuns: 25 },
  );
});

/**
 * The fewest pieces by trying everything: each pair of points, 401 heights of the arc, points against pieces by the
 * kernel's own distance. An oracle for runs of a few points.
 */
function fewestByTrying(points: readonly Point[], tolMm: number): number {
  const counts = points.map((_, index) => (index === 0 ? 0 : Number.POSITIVE_INFINITY));
  for (let last = 1; last < points.length; last++) {
    for (let first = 0; first < last; first++) {
      const count = (counts[first] as number) + 1;
      if (count < (counts[last] as number) && somePieceFits(points.slice(first, last + 1), tolMm)) {
        counts[last] = count;
      }
    }
  }
  return counts.at(-1) as number;
}

function somePieceFits(run: readonly Point[], tolMm: number): boolean {
  const [from, to] = [run[0] as Point, run.at(-1) as Point];
  for (let k = -200; k <= 200; k++) {
    const piece: Piece = k === 0 ? { kind: "line", from, to } : { kind: "arc", from, to, bulge: k / 200 };
    if (apartMm(run, [piece]) <= tolMm) return true;
  }
  return false;
}

test("no way with fewer pieces is found by trying everything", () => {
  const coarseRun = fc
    .tuple(smoothRun, fc.integer({ min: 9, max: 17 }))
    .map(([points, every]) => points.filter((_, k) => k % every === 0));
  fc.assert(
    fc.property(coarseRun, fc.constantFrom(0.05, 0.2), (points, tolMm) => {
      if (points.length < 3 || points.length > 16) return;
      // Tried within a little less, for the 2 % that the fit keeps back and the steps between heights.
      expect(fitArcs(points, { tolMm }).chain.pieces.length).toBeLessThanOrEqual(
        fewestByTrying(points, 0.93 * tolMm),
      );
    }),
    { numRuns: 25 },
  );
});

test("a ragged run is followed too, however many pieces it takes", () => {
  const ragged = fc
    .array(fc.double({ min: 0, max: 3, noNaN: true }), { minLength: 450, maxLength: 700 })
    .map((heights) => heights.map((y, k) => point(k / 20, y)));
  fc.assert(
    fc.property(ragged, fc.constantFrom(0.02, 0.2), (points, tolMm) => {
      const fit = fitArcs(points, { tolMm });
      expect(fit.deviationMm).toBeLessThanOrEqual(tolMm);
      const { pieces } = fit.chain;
      for (const p of points) {
        expect(Math.min(...pieces.map((one) => nearestOnPiece(one, p).distanceMm))).toBeLessThanOrEqual(
          tolMm + 1e-9,
        );
      }
    }),
    { numRuns: 5 },
  );
});

test("the same curve run backwards needs as many pieces", () => {
  fc.assert(
    fc.property(smoothRun, (points) => {
      const there = fitArcs(points, { tolMm: 0.1 }).chain.pieces.length;
      const back = fitArcs([...points].reverse(), { tolMm: 0.1 }).chain.pieces.length;
      expect(back).toBe(there);
    }),
    { numRuns: 25 },
  );
});
