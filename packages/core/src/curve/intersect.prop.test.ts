import * as fc from "fast-check";
import { expect, test } from "vitest";
import { SAME_POINT_MM } from "../measure/index.ts";
import { intersect } from "./intersect.ts";
import { pointAt, reversePiece } from "./piece.ts";
import { distanceMm, samePoint } from "./point.ts";
import { PROPERTY, piecePair } from "./testing/generators.ts";
import { sampledMeeting } from "./testing/sampling-oracle.ts";

const TOL_MM = SAME_POINT_MM;
/** What crossings may be off beside the tolerance: rounding on radii of up to some kilometres in the generators. */
const ROUND_OFF_MM = 1e-7;

const settings = { ...PROPERTY, numRuns: 4000 };

test("the order of the pieces and their directions change nothing but the places along them", () => {
  fc.assert(
    fc.property(piecePair, ([a, b]) => {
      const straight = intersect(a, b, TOL_MM);
      for (const other of [
        intersect(b, a, TOL_MM),
        intersect(reversePiece(a), b, TOL_MM),
        intersect(reversePiece(b), reversePiece(a), TOL_MM),
      ]) {
        expect(other.kind).toBe(straight.kind);
        if (straight.kind === "overlap") expect(other).toEqual(straight);
        if (straight.kind !== "points" || other.kind !== "points") continue;
        const key = (hit: (typeof straight.hits)[number]) => `${hit.point.x} ${hit.point.y} ${hit.tangent}`;
        expect(other.hits.map(key).sort()).toEqual(straight.hits.map(key).sort());
      }
    }),
    settings,
  );
});

test("every answer lies on both pieces, where it says", () => {
  fc.assert(
    fc.property(piecePair, ([a, b]) => {
      const crossing = intersect(a, b, TOL_MM);
      if (crossing.kind === "none") return;
      if (crossing.kind === "overlap") {
        expect(samePoint(crossing.from, crossing.to, TOL_MM)).toBe(false);
        return;
      }
      for (const hit of crossing.hits) {
        expect(distanceMm(pointAt(a, hit.tA), hit.point)).toBeLessThanOrEqual(TOL_MM + ROUND_OFF_MM);
        expect(distanceMm(pointAt(b, hit.tB), hit.point)).toBeLessThanOrEqual(TOL_MM + ROUND_OFF_MM);
      }
    }),
    settings,
  );
});

test("dense samples see the same: crossings where they are sure of them, none where they are sure of none", () => {
  let sure = 0;
  fc.assert(
    fc.property(piecePair, ([a, b]) => {
      const seen = sampledMeeting(a, b, 60);
      // Chords of 60 samples lie within a hundredth of the arcs; ends and grazing nearer than that say nothing.
      if (seen.leastEndGapMm < 0.2 || seen.leastSine < 0.2) return;
      const crossing = intersect(a, b, TOL_MM);
      if (seen.crossings.length > 0) {
        sure++;
        if (crossing.kind !== "points") throw new Error(`${crossing.kind}, but samples cross`);
        expect(crossing.hits).toHaveLength(seen.crossings.length);
        for (const p of seen.crossings) {
          expect(Math.min(...crossing.hits.map((hit) => distanceMm(hit.point, p)))).toBeLessThan(0.2);
        }
      } else if (seen.leastGapMm > 3) {
        sure++;
        expect(crossing.kind).toBe("none");
      }
    }),
    settings,
  );
  // A test that hardly ever is sure would prove nothing.
  expect(sure).toBeGreaterThan(settings.numRuns / 10);
});
