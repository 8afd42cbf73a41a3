/** Which of the smallest sets of sticks: the one that keeps most neighbours together, then the shortest. */
import { type ChosenSticks, leadingSets, type StickRoom, stretchesOf } from "./choose-sticks.ts";
import { improved } from "./improve.ts";
import { apartIn, type MeetingRun, mostTogether } from "./neighbours.ts";
import { at, isPlainlyTooMuch, type StepBudget, sum } from "./packing.ts";

export interface PickedSet {
  readonly chosen: ChosenSticks;
  readonly apart: number;
  /** No way with as many sticks has fewer meetings apart than this. */
  readonly leastApart: number;
}

/** Sets of shorter sticks that are tried once the best number of neighbours is known. */
const MOST_SHORTER_SETS = 300;

/** Parts of the budget: the first for most neighbours, the rest for shorter sticks. */
const SHARE_FOR_NEIGHBOURS = 0.7;

/** `known` is a way that fits; the result never keeps fewer neighbours together than it. */
export function pickSet(
  sizes: readonly number[],
  sticks: readonly StickRoom[],
  runs: readonly MeetingRun[],
  known: ChosenSticks,
  budget: StepBudget,
): PickedSet {
  const most = mostNeighbours(sizes, sticks, runs, known, {
    left: Math.ceil(budget.left * SHARE_FOR_NEIGHBOURS),
  });
  return shorterSticks(sizes, sticks, runs, most, {
    left: Math.ceil(budget.left * (1 - SHARE_FOR_NEIGHBOURS)),
  });
}

function mostNeighbours(
  sizes: readonly number[],
  sticks: readonly StickRoom[],
  runs: readonly MeetingRun[],
  known: ChosenSticks,
  budget: StepBudget,
): PickedSet {
  let best = improvedSet(sizes, sticks, runs, known);
  // Whatever a set allows, the set with its leaders in it allows too: so only those are looked at.
  const { sets, isComplete } = leadingSets(sticks, known.sticks.length);
  let leastApart = Number.POSITIVE_INFINITY;
  for (const [index, set] of sets.entries()) {
    const share = { left: Math.ceil(budget.left / (sets.length - index)) };
    const given = share.left;
    const way = bestOfSet(sizes, sticks, runs, set, best, share);
    budget.left -= given - Math.max(0, share.left);
    if (way === "nothing better") continue;
    leastApart = Math.min(leastApart, way.leastApart);
    if (way.apart < best.apart) best = improvedSet(sizes, sticks, runs, way.chosen);
  }
  const isBounded = isComplete && Number.isFinite(leastApart);
  return { ...best, leastApart: isBounded ? Math.min(best.apart, leastApart) : isComplete ? best.apart : 0 };
}

/** The best way with exactly this set, or word that the search has shown it to have none better than `best`. */
function bestOfSet(
  sizes: readonly number[],
  sticks: readonly StickRoom[],
  runs: readonly MeetingRun[],
  set: readonly number[],
  best: PickedSet,
  budget: StepBudget,
): PickedSet | "nothing better" {
  const stretches = stretchesOf(set, sticks);
  const room = stretches.map((one) => one.room);
  const falling = [...sizes].sort((a, b) => b - a);
  if (isPlainlyTooMuch(falling, room)) return "nothing better";
  const together = mostTogether(sizes, room, runs, best.apart, budget);
  if (together.stretchOf === null) {
    return together.leastApart >= best.apart
      ? "nothing better"
      : { ...best, leastApart: together.leastApart };
  }
  const places = together.stretchOf.map((stretch) => at(stretches, stretch).place);
  const chosen = { sticks: [...set].sort((a, b) => a - b), places };
  return { chosen, apart: together.apart, leastApart: together.leastApart };
}

/** The way at hand, bettered by single moves and swaps within its own sticks. */
function improvedSet(
  sizes: readonly number[],
  sticks: readonly StickRoom[],
  runs: readonly MeetingRun[],
  known: ChosenSticks,
): PickedSet {
  const stretches = stretchesOf(known.sticks, sticks);
  const start = known.places.map((own) =>
    stretches.findIndex(({ place }) => place.stick === own.stick && place.stretch === own.stretch),
  );
  const room = stretches.map((one) => one.room);
  const way = improved(sizes, room, runs, start);
  const places = way.map((stretch) => at(stretches, stretch).place);
  return { chosen: { sticks: known.sticks, places }, apart: apartIn(way, runs), leastApart: 0 };
}

function shorterSticks(
  sizes: readonly number[],
  sticks: readonly StickRoom[],
  runs: readonly MeetingRun[],
  most: PickedSet,
  budget: StepBudget,
): PickedSet {
  const length = (set: readonly number[]) => sum(set.map((stick) => at(sticks, stick).length));
  const mostLength = length(most.chosen.sticks);
  for (const set of setsByLength(sticks, most.chosen.sticks.length)) {
    if (length(set) >= mostLength) break;
    const share = { left: Math.ceil(budget.left / 4) };
    const given = share.left;
    // One more than the best: as good a way is wanted here, not a better one.
    const way = bestOfSet(sizes, sticks, runs, set, { ...most, apart: most.apart + 1 }, share);
    budget.left -= given - Math.max(0, share.left);
    if (way !== "nothing better" && way.apart <= most.apart && way.chosen !== most.chosen) {
      return { chosen: way.chosen, apart: way.apart, leastApart: most.leastApart };
    }
    if (budget.left <= 0) break;
  }
  return most;
}

/** Sets of so many sticks by rising whole length; of alike sticks the earlier ones only. */
function setsByLength(sticks: readonly StickRoom[], count: number): number[][] {
  const order = sticks
    .map((_, index) => index)
    .sort((a, b) => at(sticks, a).length - at(sticks, b).length || a - b);
  const sets: number[][] = [];
  const grow = (next: number, taken: readonly number[]): void => {
    if (sets.length >= MOST_SHORTER_SETS) return;
    if (taken.length === count) {
      sets.push([...taken]);
      return;
    }
    for (let place = next; place <= order.length - (count - taken.length); place++) {
      const before = order[place - 1];
      const isSameAgain = place > next && before !== undefined && alike(sticks, before, at(order, place));
      if (!isSameAgain) grow(place + 1, [...taken, at(order, place)]);
    }
  };
  grow(0, []);
  const length = (set: readonly number[]) => sum(set.map((stick) => at(sticks, stick).length));
  return sets.sort((a, b) => length(a) - length(b));
}

function alike(sticks: readonly StickRoom[], first: number, second: number): boolean {
  const a = at(sticks, first);
  const b = at(sticks, second);
  return a.length === b.length && a.room.join() === b.room.join();
}
