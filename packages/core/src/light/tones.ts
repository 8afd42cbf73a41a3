/** The face as the viewer sees it: narrow strips of one brightness each, for whoever draws it. */
import { pointAt, reversePiece, sweepRad } from "../curve/index.ts";
import { SAME_POINT_MM, toRad } from "../measure/index.ts";
import { brightnessAt } from "./brightness.ts";
import { rayInSection } from "./lamp.ts";
import type { SectionInLight } from "./types.ts";

/** Between two distances from the first edge, seen from the front, mm. */
export interface Tone {
  readonly startMm: number;
  readonly endMm: number;
  readonly brightnessRatio: number;
}

/** An arc's brightness changes by less than 1 part in 40 over so much of it, degrees. */
const TONE_STEP_DEG = 1.4;

/** Everything seen from the front, first edge to last, without gaps; arcs in strips of at most `stepDeg` of turn. */
export function tonesOf(lit: SectionInLight, stepDeg = TONE_STEP_DEG): readonly Tone[] {
  const ray = rayInSection(lit.direction, lit.hanging);
  return lit.stretches
    .filter(({ isSeen }) => isSeen)
    .flatMap(({ pieces, state }) =>
      pieces.flatMap((piece): readonly Tone[] => {
        const count =
          piece.kind === "line" ? 1 : Math.max(1, Math.ceil(Math.abs(sweepRad(piece)) / toRad(stepDeg)));
        // Brightness is asked of the outline as it runs round the wood.
        const round = reversePiece(piece);
        return Array.from({ length: count }, (_, index): Tone => {
          const [start, middle, end] = [index, index + 0.5, index + 1].map((step) => step / count) as [
            number,
            number,
            number,
          ];
          return {
            startMm: lit.widthMm - pointAt(piece, start).y,
            endMm: lit.widthMm - pointAt(piece, end).y,
            brightnessRatio: brightnessAt(round, 1 - middle, state, ray, lit.lamp),
          };
        });
      }),
    )
    .filter(({ startMm, endMm }) => endMm - startMm > SAME_POINT_MM);
}
