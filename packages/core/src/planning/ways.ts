/** What a way of working means at the bench, and why one is taken or left. */
import { leanDeg } from "../cutting/index.ts";
import { isCurved } from "./draft-cut.ts";
import type { Found } from "./search.ts";
import { isFaceUp } from "./turning.ts";
import type { Way } from "./way.ts";

/** The ways in the order they are preferred at equal cost: the plainest to hold first. */
export const ALL_WAYS: readonly Way[] = ["flat", "bevelled", "canted"];

/** The way that costs least; of two that cost the same, the plainer. */
export function bestWay(found: readonly Found[]): Found {
  return found.reduce((best, other) => (other.cost < best.cost - WORTH_CHANGING ? other : best));
}

/** A less plain way must save at least this, in settings. */
const WORTH_CHANGING = 0.5;

/** The way that is planned: the one asked for wherever it exists for this section, else the best of those compared. */
export function takenWay(found: readonly Found[], asked: Way | null): Found {
  return found.find(({ way }) => way === asked) ?? bestWay(found);
}

/** The one way a maker asked for; null where they left it open. */
export function askedWay(ways: readonly Way[] | undefined): Way | null {
  return ways?.length === 1 ? (ways[0] ?? null) : null;
}

/** How a way stands beside the others: what it costs, which is taken, and whether the maker asked for that one. */
export interface WayStanding {
  readonly taken: Found;
  readonly found: readonly Found[];
  readonly asked: Way | null;
}

/** One or two sentences for the maker: how the stick is held, what that does to lean and lines, why it is taken or left. */
export function wayWords(found: Found, standing: WayStanding): string {
  const lean = greatestLean(found);
  const cant = found.sequence.cuts.map((cut) => cut.draft.cantDeg).find((c) => c !== 0 && isFaceUp(c));
  const leans = lean < 1 ? "curved planes stand upright" : `curved planes lean up to ${Math.round(lean)}°`;
  const held: Record<Way, string> = {
    flat: `The stick lies flat on its back, lines are gauged from square edges, and the ${leans}.`,
    bevelled: `The spring bevels are sawn first and the stick lies on one of them${
      cant === undefined ? "" : `, turned by ${Math.round(Math.abs(cant))}°`
    }: the ${leans}, but the gauge runs on what is left of the edges.`,
    canted: `The stick is held in a jaw${
      cant === undefined ? "" : ` canted ${Math.round(Math.abs(cant))}°`
    }: the ${leans}, the edges stay square for the gauge, and the jaw has to be made.`,
  };
  return `${held[found.way]} ${reasonWords(found, standing)}`;
}

function reasonWords(found: Found, { taken, found: all, asked }: WayStanding): string {
  const isAsked = taken.way === asked;
  if (found === taken) {
    if (isAsked && all.length > 1) return "It is the way asked for.";
    const isLeast = all.every((other) => other.cost >= found.cost);
    return isLeast
      ? "It costs the fewest settings and seats to find."
      : "No other way saves enough to hold the stick less plainly.";
  }
  if (found.cost >= taken.cost) return "It costs more settings, seats or turning of the stick.";
  return isAsked
    ? "It would cost fewer settings, seats or turning of the stick, but another way was asked for."
    : "It saves too little to hold the stick so.";
}

function greatestLean(found: Found): number {
  let lean = 0;
  for (const { draft } of found.sequence.cuts) {
    if (draft.kind !== "plane" || !isCurved(draft)) continue;
    lean = Math.max(lean, ...draft.runs.flat().map((pose) => Math.abs(leanDeg(pose[2], draft.cantDeg))));
  }
  return lean;
}
