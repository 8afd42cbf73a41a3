/** How bright a matt face looks: Lambert's cosine for the lamp, and what comes from the whole room in front. */
import { type Piece, type Point, sweepRad, tangentRad } from "../curve/index.ts";
import type { SectionRay } from "./lamp.ts";
import { meetingRatio } from "./parts.ts";
import type { Lamp, LightState } from "./types.ts";

/**
 * Brightness at `t` of a piece that runs anticlockwise, 0 to 1: (1 − a) cos i in the light, and a (1 + cos w) / 2
 * everywhere, with a the ambient share, i the light's angle to square on, and w that of the face to the wall's own:
 * a face that looks along the wall has half of the room before it. Sources: J. H. Lambert, Photometria (1760); the
 * share of an evenly bright half space that a leaning face looks at, elementary.
 */
export function brightnessAt(
  piece: Piece,
  t: number,
  state: LightState,
  ray: SectionRay,
  { ambientRatio }: Pick<Lamp, "ambientRatio">,
): number {
  const fromLamp = state === "light" ? Math.max(0, meetingRatio(piece, t, ray)) * ray.shareRatio : 0;
  const room = (1 + towardsRoom(piece, t)) / 2;
  return (1 - ambientRatio) * fromLamp + ambientRatio * room;
}

/** Cosine of the angle between a face and the wall's: 1 towards the viewer. The outline runs anticlockwise. */
function towardsRoom(piece: Piece, t: number): number {
  return Math.sin(tangentRad(piece, t));
}

/** The least and the most brightness of a run of pieces in one state. */
export function leastAndMost(
  pieces: readonly Piece[],
  state: LightState,
  ray: SectionRay,
  lamp: Lamp,
): { readonly least: number; readonly most: number } {
  const way = brightestWay(state, ray, lamp);
  let least = Number.POSITIVE_INFINITY;
  let most = 0;
  for (const piece of pieces) {
    for (const t of [0, 1, ...turningTs(piece, way)]) {
      const brightness = brightnessAt(piece, t, state, ray, lamp);
      least = Math.min(least, brightness);
      most = Math.max(most, brightness);
    }
  }
  return { least, most };
}

/** Lamp and room together are a constant and one cosine, largest for a face that looks this way. */
function brightestWay(state: LightState, ray: SectionRay, { ambientRatio }: Lamp): Point {
  const lampShare = state === "light" ? (1 - ambientRatio) * ray.shareRatio : 0;
  return { x: ambientRatio / 2 - lampShare * ray.way.x, y: 0 - lampShare * ray.way.y };
}

/** Where an arc looks that way, or the opposite way. */
function turningTs(piece: Piece, way: Point): readonly number[] {
  if (piece.kind === "line") return [];
  // The outline runs a quarter turn on from the way it looks.
  const offRad = tangentRad(piece, 0.5) - Math.PI / 2 - Math.atan2(way.y, way.x);
  return [-2, -1, 0, 1, 2]
    .map((half) => 0.5 + (half * Math.PI - offRad) / sweepRad(piece))
    .filter((t) => t > 0 && t < 1);
}
