/**
 * How a stick is held that is too small for fingers and vice: on a sticking board, or worked on the edge of a board and
 * ripped off when all is done. Common practice, no source.
 */
import type { Bench } from "./bench.ts";
import type { BenchWriting } from "./plan-cuts.ts";
import type { TriedCut } from "./try-cut.ts";
import { sayLength } from "./words.ts";

/** A word on holding, with its caution; none for a stick that is held like any other. */
export function smallStickWords(bench: Bench, cuts: readonly TriedCut[], writing: BenchWriting): string[] {
  const { minX, maxX, minY, maxY } = bench.box;
  const widthMm = maxX - minX;
  const thicknessMm = maxY - minY;
  const leastMm = Math.min(widthMm, thicknessMm);
  const { stickingBoardBelowMm, boardEdgeBelowMm, thickestBoardMm } = bench.limits.holding;
  if (leastMm >= stickingBoardBelowMm || cuts.length === 0) return [];
  const say = (mm: number) => sayLength(mm, writing.unit, writing.inchStep);
  const size = `A stick ${say(widthMm)} wide and ${say(thicknessMm)} thick`;
  const backUp = cuts.flatMap((cut, i) => (isBackUp(cut) ? [i + 1] : []));
  if (leastMm < boardEdgeBelowMm && backUp.length === 0)
    return [`${size} ${onBoard(say, widthMm, thickestBoardMm)}`];
  const held = `${size} is held on a sticking board: a longer board with a fence along it and a stop at its end, never in fingers.`;
  return [backUp.length === 0 ? held : `${held} ${packed(backUp)}`];
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

function packed(numbers: readonly number[]): string {
  const told = [...numbers];
  const last = told.pop();
  const cuts = told.length === 0 ? `cut ${last}` : `cuts ${told.join(", ")} and ${last}`;
  return `For ${cuts} it lies on what is moulded already: pack it so that it cannot rock.`;
}
