/** What a way of working comes to beside cuts and minutes: seats, lines that last, and where the waste goes. */
import { nearestOnRing } from "../curve/index.ts";
import type { PlanMark, PlanWay } from "../cutting/index.ts";
import { OVERCUT_MM } from "../measure/index.ts";
import type { Bench } from "./bench.ts";
import { isCurved } from "./draft-cut.ts";
import type { TriedCut } from "./try-cut.ts";

export type WayFigures = Required<
  Pick<PlanWay, "curved" | "seats" | "lines" | "linesAtFirst" | "planed" | "sawn">
>;

/** The figures of a way's cuts in order and of the lines that place them; areas in mm². */
export function wayFigures(bench: Bench, cuts: readonly TriedCut[], marks: readonly PlanMark[]): WayFigures {
  const curved = cuts.filter(({ draft }) => draft.kind === "plane" && isCurved(draft));
  const takenBy = (kind: "plane" | "saw") =>
    Math.round(cuts.reduce((sum, cut) => sum + (cut.draft.kind === kind ? cut.takesMm2 : 0), 0) * 100) / 100;
  return {
    curved: curved.length,
    seats: curved.filter(({ seat }) => seat !== null).length,
    lines: marks.length,
    linesAtFirst: marks.filter((mark) => isScribedAtFirst(bench, mark)).length,
    planed: takenBy("plane"),
    sawn: takenBy("saw"),
  };
}

/** Whether a line can be scribed on the stick before any cut and still stands when it is wanted: it lies on the stick's own surface. */
function isScribedAtFirst({ stick }: Bench, { at: [x, y], from }: PlanMark): boolean {
  return !from.startsWith("foot") && nearestOnRing(stick, { x, y }).distanceMm <= OVERCUT_MM;
}
