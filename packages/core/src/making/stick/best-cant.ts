/** The tilt of the stick that brings the curved planes most upright, and what it costs. */
import { areaMm2, extentsOf, lengthMm, type Piece, type Point } from "../../curve/index.ts";
import type { Plan } from "../../cutting/index.ts";
import { toDeg } from "../../measure/index.ts";
import type { Section } from "../../section/index.ts";
import { CANT_WORTH_DEG, MOST_CANT_DEG } from "./defaults.ts";
import { type FaceRun, viewSection } from "./section-view.ts";
import { turnSection } from "./turn-section.ts";

/** How a curved plane leans, held square to its curve: tilt in the stick's frame, anticlockwise from upright. */
export interface CurveLean {
  readonly leanDeg: number;
  /** What it counts: length of curve (from the section), or wood taken (from a plan). */
  readonly weight: number;
  /** Ends of the curve; null for a plan's cut. */
  readonly chord: { readonly from: Point; readonly to: Point } | null;
}

export type CantReason = "flat" | "line between the ends of the curves" | "middle of the leans" | "plan";

export interface CantCandidate {
  /** The stick turned anticlockwise by this; a plane's lean in the hand is its tilt plus this. */
  readonly cantDeg: number;
  readonly reason: CantReason;
  /** Leans in the hand once turned: on average by weight, and the worst. Both without sign. */
  readonly meanLeanDeg: number;
  readonly worstLeanDeg: number;
  /** The square stick needed if the section lies turned in it; a canted jaw or cradle needs none of this. */
  readonly stick: { readonly widthMm: number; readonly thicknessMm: number };
  readonly extraMm2: number;
  /** Over the flat stick's section, 0 for none. */
  readonly extraRatio: number;
  /** Width of back to be sawn aslant afterwards. */
  readonly sawnBackMm: number;
}

export interface BestCant {
  readonly leans: readonly CurveLean[];
  /** Flat first; no two alike. */
  readonly candidates: readonly CantCandidate[];
  readonly best: CantCandidate;
  /** Whether the best one gains enough over flat to be worth a sawcut or a canted jaw. */
  readonly isWorthIt: boolean;
  readonly gainDeg: number;
  readonly worthDeg: number;
}

/**
 * Where the best cant comes from. A plane held square to its curve leans with the curve's outward normal. The mean of
 * the normals, each counted by the length of curve it stands for, is the normal of the straight line that joins the
 * curves' ends: ∫ n ds along a curve is its chord turned by 90°. So for an ogee this is the old rule, the straight
 * line between its ends; several curves add their chords. With a plan, the leans of the cuts that shape curves are
 * taken as they are, weighted by what they take. The middle of the outermost leans keeps the worst one least.
 * Null if the section has no curve on its moulded face.
 */
export function bestCant(
  section: Section,
  plan: Plan | null = null,
  worthDeg: number = CANT_WORTH_DEG,
): BestCant | null {
  const view = viewSection(section);
  const leans = view.moulded === null ? [] : sectionLeans(view.moulded, section);
  const normal = leans.reduce((sum, { chord }) => addNormal(sum, chord), { x: 0, y: 0 });
  if (leans.length === 0 || (normal.x === 0 && normal.y === 0)) return null;
  const planned = plan === null ? [] : planLeans(plan);
  const judged = planned.length > 0 ? planned : leans;
  const wanted: readonly (readonly [number, CantReason])[] = [
    [0, "flat"],
    [-leanOfNormal(normal), "line between the ends of the curves"],
    ...(planned.length > 0 ? [[-meanDeg(planned), "plan"] as const] : []),
    [-middleDeg(judged), "middle of the leans"],
  ];
  const candidates = wanted
    .map(([cantDeg, reason]) => ({ cantDeg: heldDeg(cantDeg), reason }))
    .filter(({ cantDeg }, index, all) => all.findIndex((one) => one.cantDeg === cantDeg) === index)
    .map(({ cantDeg, reason }) => candidate(section, judged, cantDeg, reason));
  const flat = candidates[0] as CantCandidate;
  const best = candidates.reduce((a, b) => (b.meanLeanDeg < a.meanLeanDeg ? b : a), flat);
  const gainDeg = flat.meanLeanDeg - best.meanLeanDeg;
  return {
    leans: judged,
    candidates,
    best,
    isWorthIt: gainDeg >= worthDeg,
    gainDeg,
    worthDeg,
  };
}

/** A stick is set by a wedge or a bevel gauge: whole degrees, and no further than a plane may lean. */
function heldDeg(cantDeg: number): number {
  return Math.max(-MOST_CANT_DEG, Math.min(MOST_CANT_DEG, Math.round(cantDeg))) + 0;
}

function candidate(
  section: Section,
  leans: readonly CurveLean[],
  cantDeg: number,
  reason: CantReason,
): CantCandidate {
  const view = viewSection(section);
  const { minX, minY, maxX, maxY } =
    cantDeg === 0 ? view.stick : extentsOf(turnSection(section, cantDeg).stick);
  const stick = { widthMm: maxX - minX, thicknessMm: maxY - minY };
  const extraMm2 = cantDeg === 0 ? 0 : stick.widthMm * stick.thicknessMm - areaMm2(section.stick);
  const inHand = leans.map(({ leanDeg, weight }) => ({ lean: Math.abs(leanDeg + cantDeg), weight }));
  const total = inHand.reduce((sum, { weight }) => sum + weight, 0);
  return {
    cantDeg,
    reason,
    meanLeanDeg: inHand.reduce((sum, { lean, weight }) => sum + lean * weight, 0) / total,
    worstLeanDeg: Math.max(...inHand.map(({ lean }) => lean)),
    stick,
    extraMm2,
    extraRatio: extraMm2 / view.stickMm2,
    sawnBackMm: cantDeg === 0 || view.bed === null ? 0 : view.bed.toMm - view.bed.fromMm,
  };
}

function sectionLeans(moulded: FaceRun, section: Section): CurveLean[] {
  const { pieces } = section.outline;
  const free = new Set(
    section.freeSpans.flatMap(({ first, count }) =>
      Array.from({ length: count }, (_, k) => pieces[(first + k) % pieces.length]),
    ),
  );
  return moulded.pieces.flatMap((piece) =>
    piece.kind === "arc" || free.has(piece) ? [leanOfPiece(piece)] : [],
  );
}

function leanOfPiece(piece: Piece): CurveLean {
  const chord = { from: piece.from, to: piece.to };
  return { leanDeg: leanOfNormal(addNormal({ x: 0, y: 0 }, chord)), weight: lengthMm(piece), chord };
}

/** Adds the outward normal of a chord, as long as the chord: the ring runs anticlockwise, so outward is to its right. */
function addNormal(sum: Point, chord: CurveLean["chord"]): Point {
  if (chord === null) return sum;
  return { x: sum.x + (chord.to.y - chord.from.y), y: sum.y - (chord.to.x - chord.from.x) };
}

/** Anticlockwise from straight up, degrees. */
function leanOfNormal({ x, y }: Point): number {
  return toDeg(Math.atan2(-x, y));
}

const CURVED_KINDS: ReadonlySet<string> = new Set(["hollow", "round", "bead", "shaped", "side round"]);

/** The cuts of a plan that shape curves with the back down, each by its last pose. */
function planLeans(plan: Plan): CurveLean[] {
  return plan.cuts.flatMap((cut) => {
    if (cut.cant !== 0 || !CURVED_KINDS.has(cut.plane.kind)) return [];
    if (cut.purpose !== "shape" && cut.purpose !== "finish") return [];
    const tilts = (cut.runs ?? []).flatMap((run) => {
      const last = run.at(-1);
      return last === undefined ? [] : [last[2]];
    });
    if (tilts.length === 0 || !(cut.takes > 0)) return [];
    const leanDeg = tilts.reduce((sum, tilt) => sum + tilt, 0) / tilts.length;
    return [{ leanDeg, weight: cut.takes, chord: null }];
  });
}

function meanDeg(leans: readonly CurveLean[]): number {
  const total = leans.reduce((sum, { weight }) => sum + weight, 0);
  return leans.reduce((sum, { leanDeg, weight }) => sum + leanDeg * weight, 0) / total;
}

function middleDeg(leans: readonly CurveLean[]): number {
  const all = leans.map(({ leanDeg }) => leanDeg);
  return (Math.min(...all) + Math.max(...all)) / 2;
}
