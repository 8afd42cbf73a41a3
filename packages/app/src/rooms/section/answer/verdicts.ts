/** What the plan says of each part: the planes that make it, or that it cannot be made, why, and what would cure that. */
import {
  nearestOnPiece,
  nearestOnRing,
  type Piece,
  pointAt,
  reversePiece,
  ringFromVertices,
} from "mouldwright/curve";
import type { Plan, PlanCure, PlanCut, PlanUncut } from "mouldwright/cutting";
import type { ComputedJob, Job } from "mouldwright/job";
import { chainCounts, type PlacedPart, partOfPiece } from "../chain/laid-chain.ts";

export interface Verdict {
  /** The part's place in the chain, or, for a section held as a path, in the plan's own list. */
  readonly index: number;
  /** The planes that make it, in the order they are taken up, each once. */
  readonly planes: readonly string[];
  readonly cuts: readonly number[];
  readonly uncut: readonly PlanUncut[];
  /** What was planned and cures some of it, the best first. */
  readonly cures: readonly PlanCure[];
}

/** One verdict for each part of the chain, or, where the section is a path, for each part of the plan. */
export function verdictsOf(computed: ComputedJob, of: Job): readonly Verdict[] {
  const { plan } = computed;
  const owners = ownersOf(computed, of);
  const count = of.section.parts === undefined ? plan.parts.length : of.section.parts.length;
  const uncutOf = plan.uncut.map((place) => owners[planPartOf(plan, place)] ?? -1);
  return Array.from({ length: count }, (_, index) => {
    const cuts = [
      ...new Set(plan.parts.flatMap((part, place) => (owners[place] === index ? part.madeBy : []))),
    ].sort((a, b) => a - b);
    const uncut = plan.uncut.filter((_, place) => uncutOf[place] === index);
    return { index, cuts, planes: planesOf(plan, cuts), uncut, cures: curesOf(plan, uncutOf, index) };
  });
}

/** A plan tells its parts from the far edge on; they are counted from the gauge edge, as a chain is. */
function fromGaugeEdge(plan: Plan, place: number): number {
  return plan.parts.length - 1 - place;
}

/** For each part of the plan its place in the chain, −1 for the back's; for a path its place from the gauge edge. */
function ownersOf({ plan, section }: ComputedJob, of: Job): readonly number[] {
  if (of.section.parts === undefined) return plan.parts.map((_, place) => fromGaugeEdge(plan, place));
  const ofPiece = partOfPiece(section, chainCounts(of));
  const planned = plannedPieces(plan);
  return plan.parts.map((part) => {
    const piece = planned.find(({ from, to }) => isSame(from, part.from) && isSame(to, part.to));
    const middle =
      piece === undefined
        ? { x: (part.from[0] + part.to[0]) / 2, y: (part.from[1] + part.to[1]) / 2 }
        : pointAt(piece, 0.5);
    return ofPiece[nearestOnRing(section.outline, middle).piece] ?? -1;
  });
}

export function plannedPieces(plan: Plan): readonly Piece[] {
  return ringFromVertices(plan.planned).pieces;
}

/** Plans are written to a millionth; their own points come back as near as that. */
const SAME_MM = 0.001;

function isSame(one: { readonly x: number; readonly y: number }, other: readonly [number, number]): boolean {
  return Math.hypot(one.x - other[0], one.y - other[1]) <= SAME_MM;
}

/** The part of the plan that an uncut place lies on: the one both its ends are nearest to. */
function planPartOf(plan: Plan, place: PlanUncut): number {
  const planned = plannedPieces(plan);
  const away = plan.parts.map((part) => {
    const piece = planned.find(({ from, to }) => isSame(from, part.from) && isSame(to, part.to));
    if (piece === undefined) return Number.POSITIVE_INFINITY;
    const awayMm = (at: readonly [number, number]): number =>
      nearestOnPiece(piece, { x: at[0], y: at[1] }).distanceMm;
    return awayMm(place.from) + awayMm(place.to);
  });
  return away.indexOf(Math.min(...away));
}

function planesOf(plan: Plan, cuts: readonly number[]): readonly string[] {
  const names = cuts.flatMap((number) => {
    const cut = plan.cuts.find((one) => one.number === number);
    return cut === undefined ? [] : [planeName(cut)];
  });
  return [...new Set(names)];
}

export function planeName(cut: PlanCut): string {
  return cut.plane.name ?? cut.plane.kind;
}

/** Those that cure most first; of as many, a change of the section before a plane to be got. */
function curesOf(plan: Plan, uncutOf: readonly number[], index: number): readonly PlanCure[] {
  const own = (plan.cures ?? []).filter((cure) => cure.places.some((place) => uncutOf[place] === index));
  return sortedCures(own);
}

export function sortedCures(cures: readonly PlanCure[]): readonly PlanCure[] {
  const cost = (cure: PlanCure): number => cure.placesAfter + (cure.kind === "change" ? 0 : 0.5);
  return [...cures].sort((a, b) => cost(a) - cost(b));
}

/** The whole answer in one sentence: "Every part can be cut: 14 cuts". */
export function wholeVerdict(plan: Plan): { readonly canBeMade: boolean; readonly says: string } {
  const cuts = plan.cuts.length === 1 ? "1 cut" : `${plan.cuts.length} cuts`;
  if (plan.uncut.length === 0) return { canBeMade: true, says: `Every part can be cut: ${cuts}` };
  const places = plan.uncut.length === 1 ? "1 place stays uncut" : `${plan.uncut.length} places stay uncut`;
  return { canBeMade: false, says: places };
}

/** The parts of a plan where they stand: what is numbered of a section that is held as a path. */
export function plannedPlaces(plan: Plan): readonly PlacedPart[] {
  const planned = plannedPieces(plan);
  return plan.parts.toReversed().flatMap((part, index) => {
    const piece = planned.find(({ from, to }) => isSame(from, part.from) && isSame(to, part.to));
    return piece === undefined
      ? []
      : [{ index, pieces: [reversePiece(piece)], from: piece.to, to: piece.from, turnedRad: 0 }];
  });
}
