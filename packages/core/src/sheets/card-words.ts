/** Words of the bench card for what needs more than a figure: places that stay uncut, and ways of working compared. */
import type { Plan, PlanUncut, PlanWay } from "../cutting/index.ts";
import { acrossFromGaugeMm } from "./gauge-edge.ts";

type Length = (valueMm: number) => string;

/** Where wood stays, how much of it, why, and what would cure it. */
export function uncutWords(plan: Plan, place: PlanUncut, length: Length): string {
  const left = `${length(place.left)} of wood is left (${place.rule})`;
  const cure = place.try.trim() === "" ? "" : `Try: ${sentence(place.try)}`;
  return [`${placeWords(plan, place, length)}: ${left}.`, sentence(place.why), cure]
    .filter((words) => words !== "")
    .join(" ");
}

/** A place on the stick's end as a maker finds it with a rule: from the gauge edge, and from the back where that tells more. */
function placeWords(plan: Plan, { from, to }: PlanUncut, length: Length): string {
  const across = span([acrossFromGaugeMm(plan, from), acrossFromGaugeMm(plan, to)], length);
  const up = span([from[1], to[1]], length);
  if (across.isOne && up.isOne) {
    return `At one place, ${across.words} from the gauge edge and ${up.words} above the back`;
  }
  if (across.isOne) return `Upright at ${across.words} from the gauge edge, ${up.words} above the back`;
  if (up.isOne) return `Level, ${across.words} from the gauge edge, ${up.words} above the back`;
  return `${capital(across.words)} from the gauge edge, ${up.words} above the back`;
}

/** Two distances, the smaller first; one figure where a rule would read the same twice. */
function span(
  [one, other]: readonly [number, number],
  length: Length,
): { readonly words: string; readonly isOne: boolean } {
  const near = length(Math.min(one, other));
  const far = length(Math.max(one, other));
  return near === far ? { words: near, isOne: true } : { words: `from ${near} to ${far}`, isOne: false };
}

/** One way that was compared: its figures, and what is to be said for or against it. */
export function comparedWords(plan: Plan, { way, cuts, settings, minutes, why }: PlanWay): string {
  const figures = `${counted(cuts, "cut")}, ${counted(settings, "setting")}, about ${counted(Math.round(minutes), "minute")}`;
  return `${capital(way)}${way === plan.way ? " (taken)" : ""}: ${figures}. ${sentence(why)}`;
}

export function counted(count: number, what: string): string {
  return `${count} ${what}${count === 1 ? "" : "s"}`;
}

function sentence(words: string): string {
  const trimmed = words.trim();
  return trimmed === "" || /[.!?]$/.test(trimmed) ? trimmed : `${trimmed}.`;
}

function capital(words: string): string {
  return words.charAt(0).toUpperCase() + words.slice(1);
}
