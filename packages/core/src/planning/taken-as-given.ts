/** What a plan takes as given, told on the card in the maker's own unit: only what bears on this plan. */
import type { PlanCut, PlanMark, PlanUncut } from "../cutting/index.ts";
import { writerFor } from "../measure/index.ts";
import { assumedOf, type Shelf } from "../shelf/index.ts";
import type { HandAccuracy } from "./accuracy.ts";
import type { Shavings } from "./bench.ts";
import { COMMON_WORKING, type Working } from "./minutes.ts";
import type { BenchWriting } from "./plan-cuts.ts";

/** What is planned so far, from which it is told what bears on it. */
export interface Bearing {
  readonly shelf: Shelf;
  readonly cuts: readonly PlanCut[];
  readonly marks: readonly PlanMark[];
  readonly uncut: readonly PlanUncut[];
  /** Whether a plane is carried on as it is from one line to another. */
  readonly isCarriedOn: boolean;
}

export interface Given {
  readonly shavings: Shavings;
  readonly working: Working;
  readonly hand: HandAccuracy;
}

export function takenAsGiven(
  { shavings, working, hand }: Given,
  bearing: Bearing,
  writing: BenchWriting,
): string[] {
  const { length, thickness } = writerFor(writing.unit, "print", writing.inchStep);
  const { lengthM, sticks, testPieceM, ...pace } = { ...COMMON_WORKING, ...working };
  const long = writing.unit === "mm" ? `${lengthM} m` : length(lengthM * MM_PER_METRE);
  const each = sticks === 1 ? "One stick" : `${sticks} sticks run at each setting, each`;
  const test =
    testPieceM === 0
      ? "no test piece"
      : `a test piece of ${length(testPieceM * MM_PER_METRE)} run first at each setting`;
  const isSawn = bearing.cuts.some(({ line }) => line !== undefined);
  const isPlaned = bearing.cuts.some(({ line }) => line === undefined);
  const carried = bearing.isCarriedOn
    ? `, and ${counted(pace.carryMinutes, "minute")} to carry it on to its next line`
    : "";
  const planed = [
    `Shavings of ${thickness(shavings.heavyMm)} for waste and ${thickness(shavings.ordinaryMm)} for shaping.`,
    `${each} of ${long}; ${test}.`,
    `${counted(pace.setMinutes, "minute")} to set a plane, once for all sticks${carried}; ${counted(pace.secondsPerMetre, "second")} a stroke for each metre; ${counted(pace.sharpenMinutes, "minute")} to sharpen an iron for every ${pace.sharpForM} m of stroke.`,
  ];
  const sawn = `A saw takes ${counted(pace.sawSetMinutes, "minute")} to set and ${counted(pace.sawSecondsPerMetre, "second")} for each metre of cut.`;
  const kept = [
    ...(bearing.marks.length > 0
      ? [`gauge set within ${thickness(hand.gaugeMm)}`, `knife line ${thickness(hand.lineMm)}`]
      : []),
    ...(isPlaned ? [`plane along a line ${thickness(hand.sidewaysMm)}`] : []),
    ...(bearing.cuts.some(({ fence }) => fence !== undefined) ? [`fence ${thickness(hand.fenceMm)}`] : []),
    ...(isSawn ? [`saw ${thickness(hand.sawMm)}`] : []),
    ...(isPlaned ? [`depth ${thickness(hand.depthMm)}`, `a sole's width ${thickness(hand.widthMm)}`] : []),
  ];
  return [
    ...assumedOf(bearing.shelf, (plane) => bearsOn(bearing, plane)),
    ...(isPlaned ? planed : []),
    ...(isSawn ? [sawn] : []),
    ...(kept.length > 0 ? [`A good hand, 95 times in 100: ${kept.join(", ")}.`] : []),
  ];
}

/** A plane bears on a plan that uses it, or in which something stays uncut for what the plane is. */
function bearsOn({ cuts, uncut }: Bearing, plane: { readonly id: string; readonly name: string }): boolean {
  return cuts.some((cut) => cut.plane.id === plane.id) || uncut.some(({ why }) => why.includes(plane.name));
}

const MM_PER_METRE = 1000;

function counted(count: number, what: string): string {
  return `${count} ${what}${count === 1 ? "" : "s"}`;
}
