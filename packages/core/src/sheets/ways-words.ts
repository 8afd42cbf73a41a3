/** The ways of working that were compared, as sentences for the card and as a table for the screen. */
import { areaMm2, ringFromVertices } from "../curve/index.ts";
import type { Plan, PlanWay } from "../cutting/index.ts";
import { capital, counted, sentence } from "./card-words.ts";

/** One way that was compared: its figures, and what is to be said for or against it. */
export function comparedWords(plan: Plan, compared: PlanWay): string {
  const { way, cuts, settings, minutes, uncut, why } = compared;
  const left = uncut === undefined || uncut === 0 ? "" : `, ${counted(uncut, "place")} left uncut`;
  const figures = `${counted(cuts, "cut")}, ${counted(settings, "setting")}, about ${counted(Math.round(minutes), "minute")}${left}`;
  return `${capital(way)}${way === plan.way ? " (taken)" : ""}: ${figures}. ${sentence(why)}${besidesWords(plan, compared)}`;
}

/** What seats its curved planes find, how many lines last from the start, where the waste goes; nothing in older files. */
function besidesWords(plan: Plan, { curved, seats, lines, linesAtFirst, planed, sawn }: PlanWay): string {
  const words: string[] = [];
  if (curved !== undefined && seats !== undefined && curved > 0)
    words.push(`${seats} of ${counted(curved, "curved cut")} ${curved === 1 ? "finds" : "find"} a seat`);
  if (lines !== undefined && linesAtFirst !== undefined && lines > 0)
    words.push(`${linesAtFirst} of ${counted(lines, "line")} can be scribed before the first cut`);
  if (planed !== undefined && sawn !== undefined) {
    const share = shareOf(plan);
    words.push(`${share(planed)} of the stick goes to shavings, ${share(sawn)} to the saw`);
  }
  return words.length === 0 ? "" : ` ${capital(words.join("; "))}.`;
}

/** One figure of every way that was compared, in the plan's order. */
export interface WaysRow {
  readonly what: string;
  readonly figures: readonly string[];
}

/** The ways side by side, a figure to a row; rows that an older file knows nothing of are left out. */
export function waysTable(plan: Plan): readonly WaysRow[] {
  const share = shareOf(plan);
  const rows: readonly (readonly [string, (way: PlanWay) => string | null])[] = [
    ["Cuts", ({ cuts }) => String(cuts)],
    ["Settings", ({ settings }) => String(settings)],
    ["Minutes", ({ minutes }) => String(Math.round(minutes))],
    ["Seats found", ({ seats, curved }) => outOf(seats, curved)],
    ["Lines before cut 1", ({ linesAtFirst, lines }) => outOf(linesAtFirst, lines)],
    ["Stick to shavings", ({ planed }) => (planed === undefined ? null : share(planed))],
    ["Stick to the saw", ({ sawn }) => (sawn === undefined ? null : share(sawn))],
    ["Left uncut", ({ uncut }) => (uncut === undefined ? null : String(uncut))],
  ];
  return rows.flatMap(([what, figureOf]) => {
    const figures = plan.ways.map(figureOf);
    return figures.every((figure) => figure !== null) ? [{ what, figures }] : [];
  });
}

function outOf(some: number | undefined, all: number | undefined): string | null {
  return some === undefined || all === undefined ? null : `${some} of ${all}`;
}

const NO_BREAK_SPACE = "\u00a0";

/** Areas of the section as shares of the stick's. */
function shareOf(plan: Plan): (partMm2: number) => string {
  const stickMm2 = areaMm2(ringFromVertices(plan.stick));
  return (partMm2) => `${Math.round((100 * partMm2) / stickMm2)}${NO_BREAK_SPACE}%`;
}
