/**
 * What would cure the places that stay uncut: the one plane to buy or borrow, or the smallest change of the section; and,
 * where it is asked for, the one plane that saves most cuts of a plan. Nothing is advised that was not planned so first.
 */
import { nearestOnPiece, pointAt } from "../curve/index.ts";
import type { Plan, PlanCure, PlanUncut } from "../cutting/index.ts";
import { planeEntry } from "../shelf/index.ts";
import type { Attempt } from "./cure-attempt.ts";
import { type Proof, provenAfter, provenAnew, settingsOf } from "./cure-proof.ts";
import { beadDraft, curesFor, planeForCurve } from "./cures.ts";
import type { ProvenWay } from "./proven-plan.ts";
import type { PlanRequest } from "./request.ts";
import type { UncutPlace } from "./uncut.ts";

/**
 * Cures that are tried with the cuts that were found, and those for which the whole is searched again: together they take
 * no longer than the plan itself did, or little more.
 */
const MOST_QUICK = 8;
const MOST_ANEW = 2;
/**
 * Once so much work has gone into cures no further one is begun (`Effort`): where wood stands that hardly any plane
 * reaches, each costs as much as the plan itself.
 */
const MOST_WORK = 10_000_000;
/** Sections of more worked pieces are not searched again. */
const ANEW_UP_TO_PIECES = 12;
/** Planes that are tried for how many cuts they save: each is a plan of its own, and is asked for. */
const MOST_SAVERS = 3;

interface Proven {
  readonly attempt: Attempt;
  readonly proof: Proof;
}

/** The plan with each uncut place told what would cure it, as far as a cure was found and proven. */
export function* advised(request: PlanRequest, proven: ProvenWay): Generator<string, Plan> {
  const { plan, places, bench, found } = proven;
  const lists = places.map((place) => curesFor(request, bench, place));
  const attempts = inTurns(lists);
  const cures: Proven[] = [];
  const { effort } = found.bench;
  const before = effort.spent;
  const isSpent = (): boolean => effort.spent - before >= MOST_WORK;
  const quick = attempts.filter(({ isAnew }) => !isAnew).slice(0, MOST_QUICK);
  let tried = 0;
  for (const attempt of quick) {
    if (!effort.maySeekCures || isSpent()) break;
    tried++;
    yield `trying: ${attempt.says}`;
    const proof = provenAfter(found, proofRequest(proven, attempt));
    if (proof && proof.left.length < plan.uncut.length) cures.push({ attempt, proof });
  }
  if (bench.worked.length <= ANEW_UP_TO_PIECES && effort.isThorough) {
    const cured = cures.length;
    for (const attempt of worthPlanningAnew(lists, cures, proven).slice(0, MOST_ANEW)) {
      if (!effort.maySeekCures || isSpent() || cures.length > cured) break;
      yield `planning anew: ${attempt.says}`;
      const proof = provenAnew(found, proofRequest(proven, attempt));
      if (proof && proof.left.length < plan.uncut.length) cures.push({ attempt, proof });
    }
  }
  const isAllTried = tried === quick.length;
  return withCures(plan, cures, proven, isAllTried ? NO_CURE : NOT_ALL_TRIED);
}

/**
 * Cures that only a plan of its own proves, of places that nothing else cures; and, where nothing cures any place, the
 * likeliest of all others. A bead plane is none that the search would use.
 */
function worthPlanningAnew(
  lists: readonly (readonly Attempt[])[],
  cures: readonly Proven[],
  proven: ProvenWay,
): Attempt[] {
  const open = lists.filter((_, i) => {
    const place = proven.places[i];
    return place && cures.every(({ proof }) => isStillLeft(place, proof, proven));
  });
  const attempts = inTurns(open).filter(({ bead }) => !bead);
  const others = cures.length === 0 ? attempts.filter(({ isAnew }) => !isAnew).slice(0, 1) : [];
  return [...attempts.filter(({ isAnew }) => isAnew), ...others];
}

/** The plan with the one plane that saves most cuts, or, where none saves a cut, most settings of a plane. */
export function* withSavers(request: PlanRequest, proven: ProvenWay, plan: Plan): Generator<string, Plan> {
  const { bench, sequence } = proven.found;
  const creeping = sequence.cuts.flatMap(({ draft }) =>
    draft.work === "ridges" || draft.work === "facets" ? draft.shapes : [],
  );
  const attempts = inTurns(
    [...new Set(creeping)].map((index) => {
      const piece = bench.worked.find((worked) => worked.index === index);
      const attempt = piece ? planeForCurve(request, piece) : null;
      return attempt ? [attempt] : [];
    }),
  );
  const settingsBefore = settingsOf(sequence.cuts);
  const saves = ({ proof }: Proven): readonly [number, number] => [
    plan.cuts.length - proof.cuts,
    settingsBefore - proof.settings,
  ];
  let best: Proven | null = null;
  for (const attempt of attempts.slice(0, MOST_SAVERS)) {
    yield `planning anew: ${attempt.says}`;
    const proof = provenAnew(proven.found, proofRequest(proven, attempt));
    if (!proof || proof.left.length > plan.uncut.length) continue;
    const one = { attempt, proof };
    const [cuts, settings] = saves(one);
    const [mostCuts, mostSettings] = best ? saves(best) : [0, 0];
    if (cuts > mostCuts || (cuts === mostCuts && settings > mostSettings)) best = one;
  }
  if (!best) return plan;
  const saver = {
    ...cureOf(plan, best, []),
    settingsBefore,
    settingsAfter: best.proof.settings,
  };
  return { ...plan, cures: [...(plan.cures ?? []), saver] };
}

/** The first cure of every place, then the second of each: every place has its turn. Each cure once. */
function inTurns(lists: readonly (readonly Attempt[])[]): Attempt[] {
  const kept = new Map<string, Attempt>();
  const longest = Math.max(0, ...lists.map((list) => list.length));
  for (let turn = 0; turn < longest; turn++) {
    for (const list of lists) {
      const attempt = list[turn];
      if (attempt && !kept.has(attempt.key)) kept.set(attempt.key, attempt);
    }
  }
  return [...kept.values()];
}

function proofRequest({ plan, found }: ProvenWay, attempt: Attempt) {
  const count = found.bench.planned.pieces.length;
  const isMirrored = plan.gaugeEdge === "right";
  const indexOf = (index: number) => (isMirrored ? count - 1 - index : index);
  const bead = attempt.bead;
  return {
    request: attempt.request,
    changed: new Set(attempt.changed.map(indexOf)),
    ...(bead
      ? { extra: (bench: ProvenWay["bench"]) => beadDraft(bench, bead.plane, indexOf(bead.index)) }
      : {}),
  };
}

/** Said of a place for which cures were looked for and none was found. */
const NO_CURE = "No plane to borrow and no small change of the section was found that would cut it.";

/** The same, where planning it took too much work for all of them to be tried. */
const NOT_ALL_TRIED =
  "So much is drawn here that not every plane to borrow and not every change of the section was tried.";

function withCures(plan: Plan, cures: readonly Proven[], proven: ProvenWay, uncured: string): Plan {
  const best = [...cures].sort(
    (a, b) => a.proof.left.length - b.proof.left.length || a.proof.cuts - b.proof.cuts,
  );
  const cured = best.map(({ proof }) =>
    proven.places.flatMap((place, i) => (isStillLeft(place, proof, proven) ? [] : [i])),
  );
  const uncut = plan.uncut.map((place, i): PlanUncut => {
    const at = cured.findIndex((indices) => indices.includes(i));
    const cure = best[at];
    return {
      ...place,
      try: cure ? `${cure.attempt.says} ${restWords(cure.proof.left.length)}` : `${uncured} ${place.try}`,
    };
  });
  if (best.length === 0) return { ...plan, uncut };
  return { ...plan, uncut, cures: best.map((cure, i) => cureOf(plan, cure, cured[i] ?? [])) };
}

function restWords(left: number): string {
  if (left === 0) return "Planned so: nothing stays uncut.";
  return `Planned so: ${left} other ${left === 1 ? "place stays" : "places stay"} uncut.`;
}

function cureOf(plan: Plan, { attempt, proof }: Proven, places: readonly number[]): PlanCure {
  return {
    kind: attempt.change ? "change" : "plane",
    says: attempt.says,
    ...(attempt.planes.length > 0 ? { planes: attempt.planes.map(planeEntry) } : {}),
    ...(attempt.change ? { change: attempt.change } : {}),
    places,
    placesBefore: plan.uncut.length,
    placesAfter: proof.left.length,
    cutsBefore: plan.cuts.length,
    cutsAfter: proof.cuts,
  };
}

/** A place and one that is left with a cure are the same where they lie this near to one another, mm. */
const SAME_PLACE_MM = 0.5;

/** Whether a place of the plan is among those that stay uncut with a cure. */
function isStillLeft({ stretch }: UncutPlace, proof: Proof, { plan, found }: ProvenWay): boolean {
  const { minX, maxX } = found.bench.box;
  const p = pointAt(stretch.piece.piece, (stretch.from + stretch.to) / 2);
  const middle = { x: plan.gaugeEdge === "right" ? minX + maxX - p.x : p.x, y: p.y };
  const reachMm = Math.min(SAME_PLACE_MM, ((stretch.to - stretch.from) * stretch.piece.lengthMm) / 2);
  return proof.left.some(({ piece }) => nearestOnPiece(piece.piece, middle).distanceMm < reachMm);
}
