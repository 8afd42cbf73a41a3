/** What to buy at the wood yard and what becomes of it: the stick, its timber, how it moves, what it is built up of. */
import { type Job, sectionOfJob } from "mouldwright/job";
import {
  type BuiltUp,
  builtUp,
  corniceRun,
  type LengthsQuestion,
  type SharedOut,
  type StickAnswer,
  shareOut,
  stickFor,
} from "mouldwright/making";
import { fine, type Outcome, type Trouble } from "mouldwright/measure";
import { type Drawing, drawMovement, drawRod, drawStick } from "mouldwright/sheets";
import { dustCautionsOf, findTimber, type Movement, movement, type Timber } from "mouldwright/timber";
import { hungRun, sharingOf } from "./cornice-answer.ts";
import { choicesOf, type FitChoices } from "./fit-choices.ts";
import { frameOf, frameRun } from "./frame-answer.ts";
import { pictureOptions } from "./pictures.ts";
import type { Said } from "./said.ts";

export interface StickPageAnswer extends Said {
  readonly kind: "stick";
  readonly stick: StickAnswer;
  /** Lengths of the sticks to buy, the longest first, each with how many. */
  readonly buys: readonly { readonly lengthMm: number; readonly count: number }[];
  /** Frame or cornice marked along its sticks; null for plain lengths. */
  readonly shared: SharedOut | null;
  readonly timber: TimberAnswer | null;
  readonly built: BuiltUp | null;
  readonly picture: Drawing;
  readonly rod: Drawing | null;
}

export interface TimberAnswer {
  readonly timber: Timber;
  /** From the day of fitting to the driest and to the wettest. */
  readonly drying: Movement;
  readonly wetting: Movement;
  readonly picture: Drawing;
}

export function stickAnswer(job: Job, widthMm: number): Outcome<StickPageAnswer> {
  const choices = choicesOf(job);
  const section = sectionOfJob(job);
  if (!section.ok) return section;
  const shared = sharedOf(job, choices);
  if (!shared.ok) return shared;
  const buys = buysOf(shared.value, choices);
  // Of frame and cornice the longest stick is drawn; its ends for planing are the sharing's own.
  const { planingMm, endChecksMm } = choices.allowances;
  const finishedMm =
    shared.value === null ? choices.lengthMm : (buys[0]?.lengthMm ?? 0) - 2 * (planingMm + endChecksMm);
  const answer = stickFor({
    section: section.value,
    way: choices.way,
    lengthMm: finishedMm,
    count: choices.sticks,
    allowances: choices.allowances,
    ...(choices.cantDeg === undefined ? {} : { cantDeg: choices.cantDeg }),
  });
  if (!answer.ok) return answer;
  const timber = timberAnswer(job, choices, widthMm);
  if (!timber.ok) return timber;
  const built =
    choices.atHand === null
      ? fine(null)
      : builtUp({
          section: section.value,
          timber: choices.atHand,
          lengthMm: finishedMm,
          allowances: choices.allowances,
        });
  if (!built.ok) return built;
  const options = pictureOptions(job, widthMm);
  return fine({
    kind: "stick",
    stick: answer.value,
    buys:
      shared.value === null ? [{ lengthMm: answer.value.stock.buy.lengthMm, count: choices.sticks }] : buys,
    shared: shared.value,
    timber: timber.value,
    built: built.value,
    picture: drawStick(answer.value, built.value, options),
    rod: shared.value === null ? null : drawRod(shared.value, job.name, options),
    warnings: [...section.warnings, ...answer.warnings, ...timber.warnings, ...built.warnings],
    assumed: [...answer.value.assumed, ...(built.value?.assumed ?? []), ...(shared.value?.assumed ?? [])],
    cautions: cautionsOf(answer.value, timber.value),
  });
}

/** Frame or cornice along the sticks that there are. */
function sharedOf(job: Job, choices: FitChoices): Outcome<SharedOut | null> {
  if (choices.pieces === "lengths") return fine(null);
  const question = choices.pieces === "frame" ? frameQuestion(choices) : corniceQuestion(job, choices);
  return question.ok ? shareOut(question.value) : question;
}

function frameQuestion(choices: FitChoices): Outcome<LengthsQuestion> {
  const answer = frameOf(choices);
  return answer.ok ? fine(sharingOf(frameRun(answer.value), choices)) : answer;
}

function corniceQuestion(job: Job, choices: FitChoices): Outcome<LengthsQuestion> {
  const hung = hungRun(job, choices);
  return hung.ok ? fine(sharingOf(corniceRun(hung.value.answer), choices)) : hung;
}

/** The sticks used, alike ones counted, the longest first. */
export function buysOf(shared: SharedOut | null, choices: Pick<FitChoices, "lengthMm" | "sticks">) {
  if (shared === null) return [{ lengthMm: choices.lengthMm, count: choices.sticks }];
  const counts = new Map<number, number>();
  for (const { lengthMm } of shared.sticks) counts.set(lengthMm, (counts.get(lengthMm) ?? 0) + 1);
  return [...counts]
    .map(([lengthMm, count]) => ({ lengthMm, count }))
    .sort((a, b) => b.lengthMm - a.lengthMm);
}

function timberAnswer(job: Job, choices: FitChoices, widthMm: number): Outcome<TimberAnswer | null> {
  if (choices.timber === "") return fine(null);
  const timber = findTimber(choices.timber);
  if (!timber.ok) return timber;
  const { sawn, fittedPercent, driestPercent, wettestPercent } = choices;
  const sizes = { widthMm: job.stick.widthMm, thicknessMm: job.stick.thicknessMm };
  const to = (toPercent: number): Outcome<Movement> =>
    movement({ timber: timber.value, ...sizes, sawn, fromPercent: fittedPercent, toPercent });
  const drying = to(driestPercent);
  if (!drying.ok) return drying;
  const wetting = to(wettestPercent);
  if (!wetting.ok) return wetting;
  const season = { sawn, fromPercent: fittedPercent, toPercent: driestPercent };
  return fine(
    {
      timber: timber.value,
      drying: drying.value,
      wetting: wetting.value,
      picture: drawMovement(drying.value, season, pictureOptions(job, widthMm)),
    },
    [...timber.warnings, ...drying.warnings, ...wetting.warnings],
  );
}

function cautionsOf({ cautions }: StickAnswer, timber: TimberAnswer | null): readonly Trouble[] {
  return [...cautions, ...(timber === null ? [] : dustCautionsOf(timber.timber))];
}
