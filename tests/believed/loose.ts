/** Pieces that come away from the stick. */
import { flatRing, signedAreaMm2 } from "../second-route/flat.ts";
import type { SaidPlan } from "./bench.ts";
import type { Said } from "./rules.ts";

/** A piece this small is a shaving, mm². */
const SHAVING_MM2 = 0.3;

/** Cuts of planes that part a piece off the stick. */
export function looseIn(plan: SaidPlan): readonly Said[] {
  return plan.cuts.flatMap((cut): Said[] => {
    if (cut.plane.kind === "saw") return [];
    // Outlines run anticlockwise, holes clockwise.
    const piecesMm2 = cut.after.map((ring) => signedAreaMm2(flatRing(ring))).filter((area) => area > 0);
    const looseMm2 = piecesMm2
      .sort((a, b) => b - a)
      .slice(1)
      .filter((area) => area > SHAVING_MM2);
    return looseMm2.map((area) => ({ cut: cut.number, says: `${area.toFixed(2)} mm² of wood lies loose` }));
  });
}
