/** The bevels sawn off the back's corners, on which a sprung moulding stands. */
import { distanceMm, type Piece, type Point } from "../../curve/index.ts";
import { toDeg } from "../../measure/index.ts";
import type { Section } from "../../section/index.ts";
import { isAt, viewSection } from "./section-view.ts";
import type { EdgeName, FromTo } from "./types.ts";

export interface SpringBevel extends FromTo {
  readonly edge: EdgeName;
  /**
   * Between bevel and back, degrees: also the spring from the surface that this bevel lies on (wall or ceiling), for
   * the back stands off that surface by just this angle.
   */
  readonly fromBackDeg: number;
  /** Where the blade enters: on the back from that edge, and on the edge from the back. */
  readonly onBackMm: number;
  readonly onEdgeMm: number;
  /** Width of the sawn surface. */
  readonly widthMm: number;
  readonly wasteMm2: number;
  /** Of the stick's whole section, 0 to 1. */
  readonly wasteRatio: number;
  /** Lean of the blade from upright, for the stick lying on its back and for it standing on this edge. */
  readonly backOnTableDeg: number;
  readonly edgeOnTableDeg: number;
  /** The one that leans the blade less: most saws go no further than 45°. */
  readonly layOn: "back" | "edge";
}

export interface SpringBevels {
  readonly bevels: readonly SpringBevel[];
  readonly wasteMm2: number;
  readonly wasteRatio: number;
  /** Both together square: the moulding stands in a square corner of wall and ceiling. Null with fewer than two. */
  readonly togetherDeg: number | null;
}

/** A bevel is one straight cut from the back to an edge; a rebate or a curve is none. Gauge edge first. */
export function springBevels(section: Section): SpringBevels {
  const { stick, stickMm2 } = viewSection(section);
  const bevels = section.outline.pieces
    .flatMap((piece) => {
      const ends = endsOf(piece, stick.minY);
      if (ends === null) return [];
      if (isAt(ends.onEdge.x, stick.minX))
        return [bevel("gauge edge", ends, stick.minX, stick.minY, stickMm2)];
      if (isAt(ends.onEdge.x, stick.maxX)) return [bevel("far edge", ends, stick.maxX, stick.minY, stickMm2)];
      return [];
    })
    .sort((a, b) => a.from.x - b.from.x);
  const wasteMm2 = bevels.reduce((total, one) => total + one.wasteMm2, 0);
  const [first, second] = bevels;
  return {
    bevels,
    wasteMm2,
    wasteRatio: wasteMm2 / stickMm2,
    togetherDeg: first !== undefined && second !== undefined ? first.fromBackDeg + second.fromBackDeg : null,
  };
}

/** A spring that the section itself tells, and what told it. */
export interface ToldSpring {
  readonly springFromWallDeg: number;
  readonly toldBy: "bevel at that edge" | "bevel at the other edge" | "no bevel";
}

const SQUARE_DEG = 90;

/**
 * How far the back of a section leans from the wall when `wallEdge` is the edge at the wall, degrees: the bevel at that
 * edge lies on the wall; without it the other one lies on the ceiling, square to the wall; without either the back
 * stands flat against the wall.
 */
export function springToldBy(section: Section, wallEdge: EdgeName): ToldSpring {
  const { bevels } = springBevels(section);
  const atWall = bevels.find(({ edge }) => edge === wallEdge);
  if (atWall !== undefined) return { springFromWallDeg: atWall.fromBackDeg, toldBy: "bevel at that edge" };
  const atCeiling = bevels.find(({ edge }) => edge !== wallEdge);
  if (atCeiling !== undefined && atCeiling.fromBackDeg <= SQUARE_DEG) {
    return { springFromWallDeg: SQUARE_DEG - atCeiling.fromBackDeg, toldBy: "bevel at the other edge" };
  }
  return { springFromWallDeg: 0, toldBy: "no bevel" };
}

interface Ends {
  readonly onBack: Point;
  readonly onEdge: Point;
}

function endsOf(piece: Piece, backMm: number): Ends | null {
  if (piece.kind !== "line") return null;
  const isFromBack = isAt(piece.from.y, backMm);
  const isToBack = isAt(piece.to.y, backMm);
  if (isFromBack === isToBack || isAt(piece.from.x, piece.to.x)) return null;
  return isFromBack ? { onBack: piece.from, onEdge: piece.to } : { onBack: piece.to, onEdge: piece.from };
}

function bevel(
  edge: EdgeName,
  { onBack, onEdge }: Ends,
  edgeXMm: number,
  backMm: number,
  stickMm2: number,
): SpringBevel {
  const onBackMm = Math.abs(onBack.x - edgeXMm);
  const onEdgeMm = onEdge.y - backMm;
  const fromBackDeg = toDeg(Math.atan2(onEdgeMm, onBackMm));
  const wasteMm2 = (onBackMm * onEdgeMm) / 2;
  return {
    edge,
    from: onBack,
    to: onEdge,
    fromBackDeg,
    onBackMm,
    onEdgeMm,
    widthMm: distanceMm(onBack, onEdge),
    wasteMm2,
    wasteRatio: wasteMm2 / stickMm2,
    backOnTableDeg: 90 - fromBackDeg,
    edgeOnTableDeg: fromBackDeg,
    layOn: 90 - fromBackDeg <= fromBackDeg ? "back" : "edge",
  };
}
