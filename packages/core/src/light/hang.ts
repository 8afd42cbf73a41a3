/** A section as it hangs: its face towards the viewer, x out from the wall, y from the last edge to the first. */
import { extentsOf, type Piece, type Point, reversePiece } from "../curve/index.ts";
import { cataloguedTrouble, fine, type Outcome, refused, SAME_POINT_DEG, toRad } from "../measure/index.ts";
import type { Section } from "../section/index.ts";
import type { Hanging } from "./types.ts";

/** A back that leans more from the wall shows its edge rather than its face, degrees. */
export const MOST_SPRING_DEG = 90;

/** A spring from -90 to 90. Trouble: `light-spring`. */
export function checkedHanging(hanging: Hanging): Outcome<Hanging> {
  const { springFromWallDeg } = hanging;
  const isTooFar = !(Math.abs(springFromWallDeg) <= MOST_SPRING_DEG + SAME_POINT_DEG);
  if (!isTooFar) return fine(hanging);
  const facts = { springDeg: springFromWallDeg, mostDeg: MOST_SPRING_DEG };
  return refused(cataloguedTrouble("light-spring", "spring", facts));
}

export interface HungOutline {
  /** Anticlockwise with x to the right and y up. */
  readonly pieces: readonly Piece[];
  /** For each of them the section's own piece. */
  readonly origins: readonly number[];
  /** From the hanging's frame back to the stick's. */
  readonly onStick: (place: Point) => Point;
  readonly widthMm: number;
  readonly projectionMm: number;
}

/** The outline in its place: the wall at x = 0, the last edge at y = 0. */
export function hangOutline(section: Section, { firstEdge, springFromWallDeg }: Hanging): HungOutline {
  const sine = Math.sin(toRad(springFromWallDeg));
  const cosine = Math.cos(toRad(springFromWallDeg));
  // With the gauge edge first x runs against y; with the far edge first the stick is seen from its other end.
  const side = firstEdge === "gauge edge" ? -1 : 1;
  const turned = ({ x, y }: Point): Point => ({
    x: side * x * sine + y * cosine,
    y: side * x * cosine - y * sine,
  });
  const drawn = section.outline.pieces.map((piece) => mapped(piece, turned, side));
  const { minX, minY, maxX, maxY } = extentsOf({ pieces: drawn });
  const moved = (place: Point): Point => ({ x: place.x - minX, y: place.y - minY });
  const placed = drawn.map((piece) => mapped(piece, moved, -1));
  const origins = placed.map((_, index) => index);
  return {
    // A mirror image runs clockwise.
    pieces: side < 0 ? placed : placed.map((piece) => reversePiece(piece)).reverse(),
    origins: side < 0 ? origins : origins.reverse(),
    onStick: (place) => {
      const x = place.x + minX;
      const y = place.y + minY;
      return { x: side * (x * sine + y * cosine) + 0, y: x * cosine - y * sine + 0 };
    },
    widthMm: maxY - minY,
    projectionMm: maxX - minX,
  };
}

function mapped(piece: Piece, place: (p: Point) => Point, side: 1 | -1): Piece {
  const ends = { from: place(piece.from), to: place(piece.to) };
  return piece.kind === "line" ? { ...piece, ...ends } : { ...piece, ...ends, bulge: -side * piece.bulge };
}
