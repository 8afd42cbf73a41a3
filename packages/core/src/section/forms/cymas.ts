/**
 * Cyma recta and cyma reversa: a hollow and a round in one S.
 *
 * Both arcs turn by the same sweep and their chords lie on one line, so they meet with one tangent wherever on that
 * line the S turns. Sources: the two equilateral triangles on the halved line ("flat", 60° each) are Nicholson's
 * (Mechanic's Companion) and Hatfield's (American House Carpenter, art. 317); the two quadrants ("thick") Nicholson's;
 * for unequal sizes "thick" keeps what Ware (The American Vignola) defines them by, the tangents at the ends: along the
 * projection for a recta, along the height for a reversa.
 */
import { type Piece, point } from "../../curve/index.ts";
import type { CymaSpec } from "../part-spec.ts";
import { arcBySweep, type Bend, START } from "./strokes.ts";

const FLAT_SWEEP_RAD = Math.PI / 3;

export function cyma(spec: CymaSpec): readonly Piece[] {
  const sweepRad = cymaSweepRad(spec);
  const hollowRatio = spec.hollowRatio ?? 0.5;
  const hollowIsHigher = spec.kind === "cyma recta";
  const hollowFirst = hollowIsHigher === spec.riseMm < 0;
  const ratio = hollowFirst ? hollowRatio : 1 - hollowRatio;
  const turn = point(spec.acrossMm * ratio, spec.riseMm * ratio);
  const end = point(spec.acrossMm, spec.riseMm);
  const bends: readonly [Bend, Bend] = hollowFirst ? ["hollow", "round"] : ["round", "hollow"];
  return [arcBySweep(START, turn, sweepRad, bends[0]), arcBySweep(turn, end, sweepRad, bends[1])];
}

function cymaSweepRad(spec: CymaSpec): number {
  if (spec.construction !== "thick") return FLAT_SWEEP_RAD;
  const riseMm = Math.abs(spec.riseMm);
  // Twice the angle from the joining line to the direction that the ends run in.
  return spec.kind === "cyma recta"
    ? 2 * Math.atan2(spec.acrossMm, riseMm)
    : 2 * Math.atan2(riseMm, spec.acrossMm);
}
