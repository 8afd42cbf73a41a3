/** Forms that stand on, or sink below, the level of their start: half-rounds, low bead, reeds, flutes. */
import { type Piece, type Point, point } from "../../curve/index.ts";
import { toRad } from "../../measure/index.ts";
import type { FlutesSpec, HalfRoundSpec, LowBeadSpec, ReedsSpec } from "../part-spec.ts";
import { arcBySweep, type Bend, lineTo, START } from "./strokes.ts";

/** The arc of one plane's sole held upright: a sixth of the circle (common practice; chord = radius). */
export const SOLE_SWEEP_DEG = 60;

/** Bead, astragal, torus: radius half the width (Nicholson: the semicircle on the whole height). */
export function halfRound(spec: HalfRoundSpec): readonly Piece[] {
  return [arcBySweep(START, point(spec.widthMm, 0), Math.PI, "round")];
}

export function lowBead(spec: LowBeadSpec): readonly Piece[] {
  return row({ count: 1, widthMm: spec.widthMm, sweepDeg: spec.sweepDeg, gapMm: 0 }, "round");
}

export function reeds(spec: ReedsSpec): readonly Piece[] {
  return row(spec, "round");
}

export function flutes(spec: FlutesSpec): readonly Piece[] {
  return row(spec, "hollow");
}

interface Row {
  readonly count: number;
  readonly widthMm: number;
  readonly sweepDeg?: number | undefined;
  readonly gapMm?: number | undefined;
}

/** Equal arcs side by side on one level. Places are multiples of one pitch, so that no error adds up along the row. */
function row(spec: Row, bend: Bend): readonly Piece[] {
  const sweepRad = toRad(spec.sweepDeg ?? SOLE_SWEEP_DEG);
  const gapMm = spec.gapMm ?? 0;
  const pieces: Piece[] = [];
  let at: Point = START;
  for (let index = 0; index < spec.count; index++) {
    if (index > 0 && gapMm > 0) {
      const gap = lineTo(at, index * (spec.widthMm + gapMm), 0);
      pieces.push(gap);
      at = gap.to;
    }
    const next = point((index + 1) * spec.widthMm + index * gapMm, 0);
    pieces.push(arcBySweep(at, next, sweepRad, bend));
    at = next;
  }
  return pieces;
}
