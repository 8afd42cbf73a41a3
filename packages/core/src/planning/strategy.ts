/** Which cuts a section wants: floors and walls for its flats, a saw for its bevels, a curved plane for each arc. */
import { difference, flattenPiece, type Point, type Region, regionAreaMm2 } from "../curve/index.ts";
import { cutAway } from "../cutting/index.ts";
import {
  DRAWING_NOISE_MM,
  FLATTEN_MM,
  normaliseDeg,
  SAME_LEAN_DEG,
  SAME_POINT_MM,
  toDeg,
} from "../measure/index.ts";
import type { Bench } from "./bench.ts";
import { type CurveCover, curveCovers, facetCovers, otherCovers } from "./curves.ts";
import { type PlaneDraft, type SawDraft, sawDraft, sweepOfDraft } from "./draft-cut.ts";
import { floorCuts, wallCuts } from "./flats.ts";
import type { ArcToCut, CurveWays, FlatToCut } from "./order.ts";
import { sameCurve } from "./smooth-curve.ts";
import { standsOn } from "./standing.ts";
import { cantFor, isFaceUp } from "./turning.ts";
import type { WorkedPiece } from "./worked-piece.ts";

export interface Wanted {
  readonly flats: readonly FlatToCut[];
  readonly saws: readonly SawDraft[];
  /** For each arc its covers, best first, each with its ways. */
  readonly curves: readonly ArcToCut[];
  readonly covers: readonly CurveCover[];
  /** Worked pieces for which the shelf has no cut at all. */
  readonly none: readonly WorkedPiece[];
}

/** Waste beyond a straight piece that is sawn off rather than planed, mm². */
const SAWN_FROM_MM2 = 60;
/** The same with the back up: a flat to lie on is gone once it is planed, so the saw comes sooner. */
const SAWN_FROM_BACK_MM2 = 12;

const WANTED = new WeakMap<Bench, Wanted>();

/** The cuts that the section wants; worked out once for a bench. */
export function wantedCuts(bench: Bench): Wanted {
  const wanted = WANTED.get(bench) ?? newlyWanted(bench);
  WANTED.set(bench, wanted);
  return wanted;
}

function newlyWanted(bench: Bench): Wanted {
  const saws: SawDraft[] = [];
  const flats = new Map<string, FlatToCut>();
  const none: WorkedPiece[] = [];
  const lines = bench.worked.filter((piece) => !piece.curve);
  const left: WorkedPiece[] = [];
  for (const piece of lines) {
    const saw = sawnBevel(bench, piece);
    if (saw) saws.push(saw);
    else left.push(piece);
  }
  let wood = bench.startRegion;
  const still: WorkedPiece[] = [];
  const take = (ways: readonly PlaneDraft[]) => {
    const first = ways[0];
    if (!first) return;
    flats.set(first.key, { ways });
    wood = cutAway(wood, sweepOfDraft(first));
  };
  for (const piece of left) {
    // Floors with the face or the back up; a side is a wall first, so that the stick need not be stood on edge.
    const floors = floorCuts(bench, piece);
    const cant = floors[0]?.cantDeg;
    if (cant !== undefined && (isFaceUp(cant) || cant === 180)) take(floors);
    else still.push(piece);
  }
  for (const piece of still) {
    if (!standsOn(wood, piece, STANDS_OFF_MM)) continue;
    const walls = wallCuts(bench, piece);
    take(walls);
    if (!standsOn(wood, piece, STANDS_OFF_MM)) continue;
    const floors = floorCuts(bench, piece);
    take(floors);
    if (floors.length === 0 && walls.length === 0) none.push(piece);
  }
  const curves: ArcToCut[] = [];
  const covers: CurveCover[] = [];
  const faceted = new Set<number>();
  for (const piece of bench.worked) {
    if (!piece.curve || faceted.has(piece.index)) continue;
    const whole = curveInFlats(bench, piece);
    if (whole) {
      for (const index of whole.indices) faceted.add(index);
      covers.push(whole.best);
      curves.push(whole.arc);
      continue;
    }
    const found = curveCovers(bench, piece);
    const best = found[0];
    if (!best) {
      none.push(piece);
      continue;
    }
    covers.push(best);
    curves.push({ covers: waysOf(found), others: () => waysOf(otherCovers(bench, piece)) });
  }
  return { flats: [...flats.values()], saws, curves, covers, none };
}

/** A curve is planed in flats as a whole where this share of its length would be, arc by arc. */
const IN_FLATS_SHARE = 1 / 2;

/**
 * A curve of several arcs, most of which would be planed in flats for want of a hollow, as one thing to cut: one plane,
 * its flats shared out over all arcs; arc by arc only where that cannot be made. Null for any other curve.
 */
function curveInFlats(
  bench: Bench,
  piece: WorkedPiece,
): { readonly indices: readonly number[]; readonly best: CurveCover; readonly arc: ArcToCut } | null {
  const indices = sameCurve(bench, piece.index);
  if (indices.length < 2) return null;
  const arcs = indices.flatMap((index) => bench.worked.filter((one) => one.index === index));
  const own = arcs.map((arc) => curveCovers(bench, arc)[0]?.drafts[0]);
  const lengthOf = (some: readonly WorkedPiece[]) => some.reduce((sum, { lengthMm }) => sum + lengthMm, 0);
  const inFlats = arcs.filter((_, i) => own[i]?.work === "facets");
  if (lengthOf(inFlats) < IN_FLATS_SHARE * lengthOf(arcs)) return null;
  const found = facetCovers(bench, arcs);
  const [best] = found;
  if (!best) return null;
  const arcByArc = own.reduceRight<PlaneDraft | undefined>(
    (then, draft) => (draft ? followedBy(draft, then) : then),
    undefined,
  );
  return {
    indices,
    best,
    arc: { covers: waysOf(found), others: () => (arcByArc ? [[arcByArc]] : []) },
  };
}

/** A draft with another one put after it and after all that follows it already. */
function followedBy(draft: PlaneDraft, then: PlaneDraft | undefined): PlaneDraft {
  if (!then) return draft;
  return { ...draft, followedBy: draft.followedBy ? followedBy(draft.followedBy, then) : then };
}

function waysOf(covers: readonly CurveCover[]): CurveWays {
  return covers.slice(0, MOST_COVERS).map((cover) => cover.drafts);
}

/** How many planes are tried on an arc when the better ones cannot be made to work. */
const MOST_COVERS = 3;

/** How far outside a piece the wood is looked at to tell whether it still stands, mm. */
const STANDS_OFF_MM = 0.06;

/** A bevel that no part of the section crosses and that parts off enough waste is sawn. */
function sawnBevel(bench: Bench, piece: WorkedPiece): SawDraft | null {
  const { from, to } = piece.piece;
  const length = Math.hypot(to.x - from.x, to.y - from.y);
  const ux = (to.x - from.x) / length;
  const uy = (to.y - from.y) / length;
  // The ring runs anticlockwise, so the section lies left of its pieces: nothing of it may lie to the right.
  for (const other of bench.planned.pieces) {
    // A round may swell past the line between its ends.
    for (const p of flattenPiece(other, FLATTEN_MM)) {
      if ((p.x - from.x) * uy - (p.y - from.y) * ux > DRAWING_NOISE_MM) return null;
    }
  }
  const square = Math.abs(ux) * length < SAME_POINT_MM || Math.abs(uy) * length < SAME_POINT_MM;
  if (square) return null;
  const cant = cantFor(bench, piece.startTiltDeg);
  const draft = sawDraft(bench, from, to, layForSaw(from, to), [piece.index]);
  const waste = regionAreaMm2(bench.stickRegion) - regionAreaMm2(cutAway(bench.stickRegion, draft.sweep));
  const from_ = cant !== null && isFaceUp(cant) ? SAWN_FROM_MM2 : SAWN_FROM_BACK_MM2;
  return waste >= from_ ? draft : null;
}

/** Most that a blade is leaned; beyond it the stick is stood on an edge instead, degrees (common practice, no source). */
const MOST_BLADE_LEAN_DEG = 45;

/** How the stick lies for sawing a bevel: on its back, or stood on an edge where the blade would have to lean too far. */
export function layForSaw(from: Point, to: Point): number {
  if (Math.abs(bladeLeanDeg(from, to, 0)) <= MOST_BLADE_LEAN_DEG + SAME_LEAN_DEG) return 0;
  // The bevel's side of the stick is brought up, so that the offcut falls away from the table.
  return to.y > from.y ? 90 : -90;
}

/** Lean of a blade in a line of the section, the stick turned by a cant: degrees from upright, positive to the left. */
export function bladeLeanDeg(from: Point, to: Point, cantDeg: number): number {
  const lean = normaliseDeg(toDeg(Math.atan2(-(to.x - from.x), to.y - from.y)) + cantDeg);
  // A line has no direction of its own: the lean within a quarter turn of upright is meant.
  return Math.abs(lean) > 90 ? normaliseDeg(lean + 180) : lean;
}

/** Waste that stands over the arcs once the flats are cut, mm². */
export function wasteOverCurves(bench: Bench, wood: Region): number {
  return regionAreaMm2(difference(wood, bench.plannedRegion));
}
