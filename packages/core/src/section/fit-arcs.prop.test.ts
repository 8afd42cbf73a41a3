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
