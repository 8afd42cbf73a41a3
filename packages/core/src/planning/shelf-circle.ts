/** The circle of a shelf's radius that an arc is best laid on. */
import {
  type Arc,
  type Circle,
  circleOf,
  distanceMm,
  insideRing,
  nearestOnRing,
  type Ring,
  sagittaMm,
} from "../curve/index.ts";
import { OVERCUT_MM, SAME_POINT_MM } from "../measure/index.ts";
import { circleThroughEnds, isConvex, outOf } from "./arc-circles.ts";
import type { MissSide } from "./request.ts";

/** Share of what an arc may move that is used where its circle is moved to halve a miss; the rest is for its ends. */
const USED_SHARE = 0.95;

/**
 * The circle of the nearest radius that keeps an arc within what it may move: through the arc's own ends, or, where its
 * middle would then lie too far off, moved a little so that the ends take their share of it. A crown that would rise out of
 * the stick is let down. Null where the arc has a radius of the shelf already, or none serves.
 */
export function shelfCircle(
  piece: Arc,
  radiiMm: readonly number[],
  allowedMm: number,
  missSide: MissSide,
  stick: Ring,
): Circle | null {
  const own = circleOf(piece).radiusMm;
  if (radiiMm.some((r) => Math.abs(r - own) <= SAME_POINT_MM)) return null;
  const byNearness = [...radiiMm].sort((a, b) => Math.abs(a - own) - Math.abs(b - own) || a - b);
  for (const mostOutMm of [0, allowedMm * USED_SHARE]) {
    for (const radiusMm of byNearness) {
      const outMm = leastMoveMm(piece, radiusMm, allowedMm, mostOutMm, missSide);
      if (outMm === null) continue;
      const circle = circleThroughEnds(piece, radiusMm, outMm);
      const lowered =
        circle && circleThroughEnds(piece, radiusMm, outMm - crownOutsideMm(piece, circle, stick));
      if (lowered) return lowered;
    }
  }
  return null;
}

/** How far out of the wood the circle through an arc's ends has to be moved at the least (into it: negative); null if too far. */
function leastMoveMm(
  piece: Arc,
  radiusMm: number,
  allowedMm: number,
  mostOutMm: number,
  missSide: MissSide,
): number | null {
  const chordMm = distanceMm(piece.from, piece.to);
  if (2 * radiusMm < chordMm) return null;
  const heightMm = Math.abs(piece.bulge) * (chordMm / 2);
  const side = isConvex(piece) ? 1 : -1;
  // How far the middle of the arc comes to lie out of the wood when its ends stay.
  const middleOutMm = side * (sagittaMm(chordMm, radiusMm) - heightMm);
  const isForbidden = missSide !== "either" && Math.abs(middleOutMm) > OVERCUT_MM / 4;
  if (isForbidden && middleOutMm > 0 !== (missSide === "proud")) return null;
  const overMm = Math.abs(middleOutMm) - allowedMm;
  if (overMm <= 0) return 0;
  // Moving the circle back lays its ends on the other side of the drawing, which may be the forbidden one.
  if (missSide !== "either" || overMm > mostOutMm) return null;
  return -Math.sign(middleOutMm) * (overMm + allowedMm * (1 - USED_SHARE));
}

/** How far the middle of an arc on this circle would stand out of the stick, mm: a crown level with the face must not. */
function crownOutsideMm(piece: Arc, { centre, radiusMm }: Circle, stick: Ring): number {
  const out = outOf(piece);
  const byMm = isConvex(piece) ? radiusMm : -radiusMm;
  const crown = { x: centre.x + out.x * byMm, y: centre.y + out.y * byMm };
  return insideRing(stick, crown) === "out" ? nearestOnRing(stick, crown).distanceMm : 0;
}
