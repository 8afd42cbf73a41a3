/** What stays uncut: each place with the rule that kept the planes off it, why, and what to do there. */
import { pointAt, type Region, type Ring } from "../curve/index.ts";
import type { PlanUncut } from "../cutting/index.ts";
import type { Bench } from "./bench.ts";
import { tidy } from "./draft-cut.ts";
import type { Refused } from "./order.ts";
import type { Reason } from "./refusal-reason.ts";
import { type LeftStretch, leftStretches } from "./uncut-stretches.ts";
import { reasonFor } from "./why-uncut.ts";
import type { BenchUnit } from "./words.ts";

/** A place that stays uncut, with the stretch and the reason that it was made from. */
export interface UncutPlace {
  readonly place: PlanUncut;
  readonly stretch: LeftStretch;
  readonly reason: Reason;
}

/**
 * Every place where more than the tolerance is left on the wanted section, in the order of the outline. What is left is
 * read on the bench of the proof; what could reach it on the search's, whose arcs are coarser.
 */
export function uncutPlaces(
  bench: Bench,
  searched: Bench,
  wood: Region,
  refused: readonly Refused[],
  unit: BenchUnit,
  drawn: Ring,
): UncutPlace[] {
  const inquest = { bench: searched, wood, refused, unit };
  return leftStretches(bench, wood, drawn).map((stretch) => {
    const reason = reasonFor(inquest, stretch);
    const from = pointAt(stretch.piece.piece, Math.max(0, stretch.from));
    const to = pointAt(stretch.piece.piece, Math.min(1, stretch.to));
    const place: PlanUncut = {
      from: [tidy(from.x), tidy(from.y)],
      to: [tidy(to.x), tidy(to.y)],
      left: Math.round(stretch.leftMm * 1000) / 1000,
      rule: reason.rule,
      why: reason.why,
      try: reason.cure,
    };
    return { place, stretch, reason };
  });
}
