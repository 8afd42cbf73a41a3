import type { Cornice } from "../fit/index.ts";
import type { PieceRun } from "./types.ts";

/** The pieces of a cornice as they are shared out on sticks: in their order round the run, by their long points. */
export function corniceRun({ pieces, run }: Cornice): PieceRun {
  return {
    name: "Piece",
    ends: run,
    pieces: pieces.map(({ longMm, number, kind }) => ({
      lengthMm: longMm,
      name: kind === "return" ? `Return ${number}` : `Piece ${number}`,
    })),
  };
}
