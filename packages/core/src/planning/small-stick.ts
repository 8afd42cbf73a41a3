/**
 * How a stick is held that is too small for fingers and vice: on a sticking board, or worked on the edge of a board and
 * ripped off when all is done. Common practice, no source.
 */
import { isSmallStick } from "../cutting/index.ts";
import type { Bench } from "./bench.ts";
import { lyingWords } from "./how-it-lies.ts";
import type { BenchWriting } from "./plan-cuts.ts";
import type { TriedCut } from "./try-cut.ts";
import { sayLength } from "./words.ts";

/**
 * A word on holding where a stick is too small to be held like any other, with its caution, and on what it stands on for
 * cuts that others have left little to stand on.
 */
export function holdingWords(bench: Bench, cuts: readonly TriedCut[], writing: BenchWriting): string[] {
  const { minX, maxX, minY, maxY } = bench.box;
  const widthMm = maxX - minX;
  const thicknessMm = maxY - minY;
  const { boardEdgeBelowMm, thickestBoardMm } = bench.limits.holding;
  if (cuts.length === 0 || !isSmallStick(widthMm, thicknessMm, bench.limits.holding))
    return lyingWords(bench, cuts, writing);
  const say = (mm: number) => sayLength(mm, writing.unit, writing.inchStep);
  const size = `A stick ${say(widthMm)} wide and ${say(thicknessMm)} thick`;
  if (Math.min(widthMm, thicknessMm) < boardEdgeBelowMm && !cuts.some(isBackUp))
    return [`${size} ${onBoard(say, widthMm, thickestBoardMm)}`];
  const held = `${size} is held on a sticking board: a longer board with a fence along it and a stop at its end, never in fingers.`;
  return [held, ...lyingWords(bench, cuts, writing)];
}

/** Whether the back, or a corner of it, looks up: a stick still on its board shows no back. */
function isBackUp({ draft }: TriedCut): boolean {
  return Math.abs(draft.cantDeg) > 90;
}

function onBoard(say: (mm: number) => string, widthMm: number, thickestBoardMm: number): string {
  const where =
    widthMm <= thickestBoardMm
      ? `work it on the edge of a wider board ${say(widthMm)} thick, the section's face on that edge, the board's two faces as gauge edge and far edge`
      : "work it on a board of that width that is thick enough to hold, the section on its face";
  return `is too small to be held and planed by itself: ${where}, and rip it off at the back when the last cut is made. At the saw: guard, push stick and a feather board that holds the thin strip; a strip let go of is thrown back.`;
}
