/** What a way of working comes to beside cuts and minutes: seats, lines that last, and where the waste goes. */
import type { Region } from "../curve/index.ts";
import { offBoundaryMm, type PlanMark, type PlanWay } from "../cutting/index.ts";
import { OVERCUT_MM } from "../measure/index.ts";
import { isCurved } from "./draft-cut.ts";
import type { TriedCut } from "./try-cut.ts";

export type WayFigures = Required<
  Pick<PlanWay, "curved" | "seats" | "lines" | "linesAtFirst" | "planed" | "sawn">
>;

/** The figures of a way's cuts in order and of the lines that place them; areas in mm². */
export function wayFigures(cuts: readonly TriedCut[], marks: readonly PlanMark[]): WayFigures {
  const start = cuts[0]?.before ?? [];
  const curved = cuts.filter(({ draft }) => draft.kind === "plane" && isCurved(draft));
  const takenBy = (kind: "plane" | "saw") =>
    Math.round(cuts.reduce((sum, cut) => sum + (cut.draft.kind === kind ? cut.takesMm2 : 0), 0) * 100) / 100;
  return {
    curved: curved.length,
    seats: curved.filter(({ seat }) => seat !== null).length,
    lines: marks.length,
    linesAtFirst: marks.filter((mark) => isScribedAtFirst(start, mark)).length,
    planed: takenBy("plane"),
    sawn: takenBy("saw"),
  };
}

/** Whether a line can be scribed before the first cut and still stands when it is wanted: it lies on the wood's surface as it then is. */
function isScribedAtFirst(start: Region, { at: [x, y], from }: PlanMark): boolean {
  return !from.startsWith("foot") && offBoundaryMm(start, { x, y }) <= OVERCUT_MM;
}
