/** The cuts that the planner found for a section: what an order is chosen from when it is held against all others. */
import type { Region } from "../curve/index.ts";
import type { Draft, PlaneDraft } from "./draft-cut.ts";
import { cutWithHelp } from "./help.ts";
import { MOST_WAYS, orderFlats } from "./order.ts";
import { roughingCuts } from "./roughing.ts";
import type { Found } from "./search.ts";
import { wantedCuts, wasteOverCurves } from "./strategy.ts";

/**
 * Every plane's cut that was thought of: those of the sequence itself, each flat's ways, the steps and chamfers over
 * the curves, each curve's planes, and the lines, grooves and shavings that help a curve on the wood as it stands
 * before any cut of the sequence. Saws keep their place and are left out.
 */
export function candidatesOf({ bench, sequence }: Pick<Found, "bench" | "sequence">): readonly PlaneDraft[] {
  const found = new Map<string, PlaneDraft>();
  const add = (draft: Draft) => {
    if (draft.kind === "plane" && !found.has(draft.key)) found.set(draft.key, draft);
  };
  const wanted = wantedCuts(bench);
  for (const { draft } of sequence.cuts) add(draft);
  for (const flat of wanted.flats) for (const draft of flat.ways.slice(0, MOST_WAYS)) add(draft);
  const afterFlats = orderFlats(bench, bench.startRegion, wanted.flats).wood;
  const arcs = bench.worked.filter((piece) => piece.curve);
  for (const draft of roughingCuts(bench, afterFlats, arcs, wasteOverCurves(bench, afterFlats))) add(draft);
  const woods: readonly Region[] = [bench.startRegion, afterFlats, ...sequence.cuts.map((cut) => cut.before)];
  for (const arc of wanted.curves) {
    for (const draft of arc.covers.flat()) {
      add(draft);
      for (const wood of woods) {
        const made = cutWithHelp(bench, wood, draft);
        if (made.ok) for (const help of made.cuts.slice(0, -1)) add(help.draft);
      }
    }
  }
  return [...found.values()];
}
