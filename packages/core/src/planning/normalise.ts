/**
 * From the section as drawn to the one that is aimed at: lines and arcs only, arcs of radii that are on the shelf
 * wherever that keeps within the tolerance, with their ends where the plane's own sole fits between its neighbours.
 */
import {
  areaMm2,
  type Circle,
  distanceMm,
  lengthMm,
  line,
  type Piece,
  type Point,
  type Ring,
  ring,
  selfCrossings,
} from "../curve/index.ts";
import { FLAT_SAGITTA_MM, LEAST_EDGE_MM, OVERCUT_MM, SAME_POINT_MM } from "../measure/index.ts";
import { fitArcs, type Section } from "../section/index.ts";
import type { Shelf } from "../shelf/index.ts";
import { onCircles } from "./arc-circles.ts";
import { movedFrom, outsideMm, staysWithin } from "./moved-from.ts";
import type { MissSide } from "./request.ts";
import { shelfCircle } from "./shelf-circle.ts";
import { roomForSoles, type ShelfSoles, solesOnShelf } from "./sole-room.ts";

export interface Normalised {
  readonly planned: Ring;
  /** Greatest distance between drawn and planned, mm; and of each planned piece, in its order. */
  readonly movedMm: number;
  readonly movedByPieceMm: readonly number[];
  /** How many arcs stand for free curves. */
  readonly arcsForCurves: number;
}

/** Share of the tolerance spent on replacing what is drawn; the rest is for the hand and the ridges. */
const DRAWING_SHARE = 0.6;
/** Tiny curves get less: a share of their own height. */
const HEIGHT_SHARE = 0.06;

export function normalise(
  section: Section,
  shelf: Shelf,
  toleranceMm: number,
  missSide: MissSide = "either",
): Normalised {
  const soles = solesOnShelf(shelf);
  const drawn = withoutFreeCurves(section, soles, toleranceMm, missSide);
  const moved = ontoShelf(drawn, soles, section.stick, missSide);
  const planned = closed(moved.pieces, section.outline);
  // Close neighbours may cross once both are moved: then the section is aimed at just as it is drawn.
  if (selfCrossings(planned, SAME_POINT_MM).length > 0) {
    const movedByPieceMm = section.outline.pieces.map(() => 0);
    return { planned: section.outline, movedMm: 0, movedByPieceMm, arcsForCurves: 0 };
  }
  const movedByPieceMm = moved.movedMm;
  return {
    planned,
    movedMm: Math.max(0, ...movedByPieceMm),
    movedByPieceMm,
    arcsForCurves: drawn.arcsForCurves,
  };
}

/** Lines and arcs of a section, and for each how far it may still be moved and how far it has been, mm. */
interface Drawn {
  readonly pieces: readonly Piece[];
  readonly allowedMm: readonly number[];
  readonly spentMm: readonly number[];
  readonly arcsForCurves: number;
}

function withoutFreeCurves(
  section: Section,
  soles: ShelfSoles,
  toleranceMm: number,
  missSide: MissSide,
): Drawn {
  const pieces = section.outline.pieces;
  const out: Piece[] = [];
  const allowedMm: number[] = [];
  const spentMm: number[] = [];
  let arcsForCurves = 0;
  const add = (piece: Piece, allowed: number, spent: number): void => {
    out.push(piece);
    allowedMm.push(allowed);
    spentMm.push(spent);
  };
  const freeFrom = new Map(section.freeSpans.map((span) => [span.first % pieces.length, span.count]));
  const start = firstOutsideFree(section);
  for (let k = 0; k < pieces.length; ) {
    const index = (start + k) % pieces.length;
    const count = freeFrom.get(index);
    if (count !== undefined) {
      const points = Array.from({ length: count + 1 }, (_, i) =>
        i === count
          ? (pieces[(index + count - 1) % pieces.length] as Piece).to
          : (pieces[(index + i) % pieces.length] as Piece).from,
      );
      // A free curve's arcs weave to both sides of it: where one side is forbidden they are fitted as near as arcs go.
      const mostMm = fitTolMm(points, toleranceMm);
      const tolMm = missSide === "either" ? mostMm : OVERCUT_MM;
      const fit = fittedTo(distinct(points), tolMm, soles);
      arcsForCurves += fit.chain.pieces.length;
      const leftMm = missSide === "either" ? mostMm - fit.deviationMm : 0;
      for (const piece of fit.chain.pieces) add(piece, leftMm, fit.deviationMm);
      k += count;
      continue;
    }
    const piece = pieces[index] as Piece;
    k++;
    if (lengthMm(piece) < LEAST_EDGE_MM) continue;
    if (piece.kind === "line") {
      add(piece, toleranceMm * DRAWING_SHARE, 0);
      continue;
    }
    const heightMm = Math.abs(piece.bulge) * (distanceMm(piece.from, piece.to) / 2);
    if (heightMm < FLAT_SAGITTA_MM) add(line(piece.from, piece.to), 0, heightMm);
    else add(piece, Math.min(toleranceMm * DRAWING_SHARE, heightMm * HEIGHT_SHARE), 0);
  }
  return { pieces: joined(out), allowedMm, spentMm, arcsForCurves };
}

/** More arcs than the fewest that are taken so that all of them are on the shelf. */
const MORE_ARCS_FOR_SHELF = 1;

/** The fewest arcs, or one more if then all of them have radii that are on the shelf. */
function fittedTo(points: readonly Point[], tolMm: number, soles: ShelfSoles) {
  const radiiMm = soles.all;
  const fewest = fitArcs(points, { tolMm, radiiMm });
  const isOnShelf = (piece: Piece) => piece.kind === "line" || soles.has(piece);
  if (fewest.chain.pieces.every(isOnShelf) || radiiMm.length === 0) return fewest;
  const shelf = fitArcs(points, { tolMm, radiiMm, onlyRadii: true });
  return shelf.chain.pieces.length <= fewest.chain.pieces.length + MORE_ARCS_FOR_SHELF ? shelf : fewest;
}

/**
 * Arcs onto radii of the shelf, and room for the soles. What cannot be had within the tolerance is left out arc by arc:
 * first the room, then the radius.
 */
function ontoShelf(drawn: Drawn, soles: ShelfSoles, stick: Ring, missSide: MissSide) {
  const { pieces, allowedMm, spentMm } = drawn;
  const onShelf = new Map<number, Circle>();
  pieces.forEach((piece, i) => {
    if (piece.kind === "line") return;
    const circle = shelfCircle(piece, soles.of(piece), allowedMm[i] as number, missSide, stick);
    if (circle) onShelf.set(i, circle);
  });
  const radii = settled(drawn, onShelf, stick, missSide);
  const roomy = roomForSoles(radii.pieces, radii.circles, soles, missSide);
  const both = settled(drawn, roomy, stick, missSide, radii.circles);
  return { pieces: both.pieces, movedMm: both.movedMm.map((mm, i) => mm + (spentMm[i] as number)) };
}

interface Settled {
  readonly pieces: readonly Piece[];
  readonly circles: ReadonlyMap<number, Circle>;
  readonly movedMm: readonly number[];
}

/** The pieces on as many of these circles as keep within what each may move; the others on what they had before. */
function settled(
  drawn: Drawn,
  wanted: ReadonlyMap<number, Circle>,
  stick: Ring,
  missSide: MissSide,
  before: ReadonlyMap<number, Circle> = new Map(),
): Settled {
  const { pieces, allowedMm } = drawn;
  const circles = new Map(wanted);
  for (;;) {
    const made = onCircles(pieces, circles);
    const offs = made && pieces.map((_, i) => movedFrom(pieces, made, i));
    const tooFar = offs
      ? [...circles.keys()].filter(
          (i) =>
            !staysWithin(offs[i], allowedMm[i] as number, missSide) ||
            outsideMm(made[i] as Piece, stick) > SAME_POINT_MM,
        )
      : [...circles.keys()];
    const worst = tooFar.filter((i) => circles.get(i) !== before.get(i));
    if (made && offs && tooFar.length === 0) {
      return { pieces: made, circles, movedMm: offs.map(({ movedMm }) => movedMm) };
    }
    if (worst.length === 0) {
      const plain = onCircles(pieces, before) ?? pieces;
      return {
        pieces: plain,
        circles: before,
        movedMm: pieces.map((_, i) => movedFrom(pieces, plain, i).movedMm),
      };
    }
    for (const i of worst) {
      const old = before.get(i);
      if (old) circles.set(i, old);
      else circles.delete(i);
    }
  }
}

/** A piece at which no free span is cut in two when the ring is walked from there. */
function firstOutsideFree(section: Section): number {
  const count = section.outline.pieces.length;
  const inside = new Set<number>();
  for (const span of section.freeSpans)
    for (let i = 1; i < span.count; i++) inside.add((span.first + i) % count);
  for (let i = 0; i < count; i++) if (!inside.has(i)) return i;
  return 0;
}

function fitTolMm(points: readonly Point[], toleranceMm: number): number {
  const a = points[0] as Point;
  const b = points[points.length - 1] as Point;
  const chord = distanceMm(a, b);
  let height = 0;
  for (const p of points) {
    const h =
      chord > 0 ? Math.abs((b.x - a.x) * (p.y - a.y) - (b.y - a.y) * (p.x - a.x)) / chord : distanceMm(a, p);
    height = Math.max(height, h);
  }
  return Math.max(OVERCUT_MM, Math.min(toleranceMm * DRAWING_SHARE, height * HEIGHT_SHARE));
}

function distinct(points: readonly Point[]): Point[] {
  return points.filter((p, i) => i === 0 || distanceMm(p, points[i - 1] as Point) > LEAST_EDGE_MM);
}

/** Each piece starting exactly where the one before ends. */
function joined(pieces: readonly Piece[]): Piece[] {
  return pieces.map((piece, i) => ({ ...piece, to: (pieces[(i + 1) % pieces.length] as Piece).from }));
}

function closed(pieces: readonly Piece[], drawn: Ring): Ring {
  const made = ring(pieces);
  return areaMm2(made) > 0 ? made : drawn;
}
