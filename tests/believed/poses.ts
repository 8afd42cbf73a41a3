/** Settings that one part takes with hollows and rounds, or with a flat plane that goes round a curve in flats. */
import { CURVED_KINDS, FLAT_KINDS, type SaidCut, type SaidPlan } from "./bench.ts";
import type { Said } from "./rules.ts";

/** So many need no reason: a rock, or two planes and a last touch. */
const MOST_POSES = 3;

/** Poses nearer than this are one, mm and degrees: runs that rock to either side begin in it. */
const SAME_POSE = 0.05;

/** A sentence that gives a reason holds one of these. */
const REASON = /\bbecause\b|\bfor want of\b|\bno (hollow|round|plane)\b|\bnot on the shelf\b|\binstead of\b/i;

/** Whether a flat plane goes round a curve: set more than once, and leaned otherwise each time. */
function isInFlats({ plane, runs = [] }: SaidCut): boolean {
  const leans = runs.map((run) => run[0][2]);
  return FLAT_KINDS.includes(plane.kind) && Math.max(...leans) - Math.min(...leans) > SAME_POSE;
}

/** Parts that take more than three poses, and no sentence of their cuts nor warning that names one of them says why. */
export function posesUnsaid(plan: SaidPlan): readonly Said[] {
  return plan.parts.flatMap((part): Said[] => {
    const cuts = plan.cuts.filter(
      (cut) =>
        part.madeBy.includes(cut.number) &&
        cut.purpose === "shape" &&
        (CURVED_KINDS.includes(cut.plane.kind) || isInFlats(cut)),
    );
    const starts = cuts.flatMap(({ runs }) => runs ?? []).map((run) => run[0]);
    const poses = starts.filter(
      (pose, i) =>
        !starts.slice(0, i).some((earlier) => earlier.every((v, k) => Math.abs(v - pose[k]) < SAME_POSE)),
    );
    if (poses.length <= MOST_POSES) return [];
    const sentences = [
      ...cuts.flatMap(({ says, doneWhen }) => [says, doneWhen]),
      ...plan.warnings.filter((text) =>
        cuts.some(({ number }) => new RegExp(`\\bcut ${number}\\b`, "i").test(text)),
      ),
    ];
    if (sentences.some((text) => REASON.test(text))) return [];
    return [
      {
        cut: cuts[0].number,
        says: `${part.name} (${part.id}) takes ${poses.length} poses and nothing says why`,
      },
    ];
  });
}
