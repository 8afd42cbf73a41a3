/** What a plan takes as given, told on the card in the maker's own unit. */
import { writerFor } from "../measure/index.ts";
import type { HandAccuracy } from "./accuracy.ts";
import type { Shavings } from "./bench.ts";
import { COMMON_WORKING, type Working } from "./passes.ts";
import type { BenchWriting } from "./plan-cuts.ts";

export function takenAsGiven(
  shavings: Shavings,
  working: Working,
  hand: HandAccuracy,
  { unit, inchStep }: BenchWriting,
): string[] {
  const { length, thickness } = writerFor(unit, "print", inchStep);
  const { lengthM, sticks, testPieceM, ...pace } = { ...COMMON_WORKING, ...working };
  const long = unit === "mm" ? `${lengthM} m` : length(lengthM * MM_PER_METRE);
  const each = sticks === 1 ? "One stick" : `${sticks} sticks run at each setting, each`;
  const test =
    testPieceM === 0
      ? "no test piece"
      : `a test piece of ${length(testPieceM * MM_PER_METRE)} run first at each setting`;
  return [
    `Shavings of ${thickness(shavings.heavyMm)} for waste and ${thickness(shavings.ordinaryMm)} for shaping.`,
    `${each} of ${long}; ${test}.`,
    `${counted(pace.setMinutes, "minute")} to set a plane, once for all sticks; ${counted(pace.secondsPerMetre, "second")} a stroke for each metre; ${counted(pace.sharpenMinutes, "minute")} to sharpen an iron for every ${pace.sharpForM} m of stroke.`,
    `A saw takes ${counted(pace.sawSetMinutes, "minute")} to set and ${counted(pace.sawSecondsPerMetre, "second")} for each metre of cut.`,
    `A good hand, 95 times in 100: gauge set within ${thickness(hand.gaugeMm)}, knife line ${thickness(hand.lineMm)}, plane along a line ${thickness(hand.sidewaysMm)}, fence ${thickness(hand.fenceMm)}, saw ${thickness(hand.sawMm)}, depth ${thickness(hand.depthMm)}, a sole's width ${thickness(hand.widthMm)}.`,
  ];
}

const MM_PER_METRE = 1000;

function counted(count: number, what: string): string {
  return `${count} ${what}${count === 1 ? "" : "s"}`;
}
