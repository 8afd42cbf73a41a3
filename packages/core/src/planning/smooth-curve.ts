/** The arcs that are one curve to the eye: bent the same way, one going on into the next without an arris. */
import { type Piece, tangentRad } from "../curve/index.ts";
import { normaliseDeg, toDeg } from "../measure/index.ts";
import type { Bench } from "./bench.ts";

/** A join that breaks by no more than this is no arris to the eye, degrees. */
const SMOOTH_WITHIN_DEG = 3;

/** Places in the planned ring of all worked arcs that make one curve with this one, in the ring's order; itself among them. */
export function sameCurve(bench: Bench, index: number): readonly number[] {
  const { pieces } = bench.planned;
  const worked = new Set(bench.worked.flatMap((piece) => (piece.curve ? [piece.index] : [])));
  if (!worked.has(index)) return [index];
  const place = (i: number) => (i + pieces.length) % pieces.length;
  const run = [index];
  for (const step of [-1, 1]) {
    for (let at = index; run.length < pieces.length; ) {
      const next = place(at + step);
      const [before, after] = step === 1 ? [at, next] : [next, at];
      if (!worked.has(next) || !goesOn(pieces[before], pieces[after])) break;
      if (step === 1) run.push(next);
      else run.unshift(next);
      at = next;
    }
  }
  return run;
}

function goesOn(before: Piece, after: Piece): boolean {
  if (before.kind === "line" || after.kind === "line" || before.bulge > 0 !== after.bulge > 0) return false;
  return Math.abs(normaliseDeg(toDeg(tangentRad(after, 0) - tangentRad(before, 1)))) <= SMOOTH_WITHIN_DEG;
}
