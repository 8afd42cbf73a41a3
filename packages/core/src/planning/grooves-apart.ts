/**
 * Flats and waste in an order in which no groove runs into an older one at another depth and no fin is left between two
 * openings: where one would, the older is cut another way, with another plane or further over, if it has one, else
 * the newer.
 */
import type { Region } from "../curve/index.ts";
import { isInWood } from "../cutting/index.ts";
import { SAME_SCORE } from "../measure/index.ts";
import type { Bench } from "./bench.ts";
import { sweepOfDraft } from "./draft-cut.ts";
import type { Fin } from "./fins.ts";
import { type FlatToCut, type OrderedFlats, orderFlats } from "./order.ts";
import { grooveInTheWay } from "./slots.ts";
import { isClumsy, type TriedCut } from "./try-cut.ts";

/** Grooves moved one after another, at most, before the best order so far is taken. */
const MOST_MOVED = 6;

/** As `orderFlats`, grooves kept apart where a flat can be cut another way for it. */
export function orderFlatsApart(bench: Bench, wood: Region, flats: readonly FlatToCut[]): OrderedFlats {
  let best = orderFlats(bench, wood, flats);
  if (!best.cuts.some(isForced) && best.keptOff.length === 0) return best;
  let given: readonly FlatToCut[] | null = flats;
  for (let moved = 0; given && moved <= MOST_MOVED && bench.effort.isThorough; moved++) {
    const tried: OrderedFlats = orderFlats(bench, wood, given, "guided");
    if (wholeCost(bench, tried) < wholeCost(bench, best) - SAME_SCORE) best = tried;
    given = withGrooveMoved(tried, given);
  }
  return best;
}

/** Whether a cut would be made otherwise if grooves beside it lay elsewhere. */
function isForced(cut: TriedCut): boolean {
  return isClumsy(cut) || cut.guide?.kind === "batten";
}

/** Waste that is left for a groove's sake is taken by the curved planes: as bad as running into it. */
function wholeCost(bench: Bench, { cost, refused, keptOff }: OrderedFlats): number {
  return cost + refused.length * bench.weights.refused + keptOff.length * bench.weights.intoGroove;
}

/** The flats without the way that opened the wood where a later cut runs into it or leaves a fin beside it; null where there is no other. */
function withGrooveMoved(
  { cuts, keptOff }: OrderedFlats,
  flats: readonly FlatToCut[],
): readonly FlatToCut[] | null {
  const clashing = [...cuts.filter(isClumsy), ...keptOff];
  for (const cut of clashing) {
    const at = cuts.indexOf(cut);
    const earlier = at < 0 ? cuts : cuts.slice(0, at);
    const older = cut.fin ? besideFin(earlier, cut.fin) : earlier[grooveInTheWay(earlier, cut)];
    for (const one of [older, cut]) {
      const fewer = one && withoutWay(flats, one.draft.key);
      if (fewer) return fewer;
    }
  }
  return null;
}

/** The last of the earlier cuts that opened the wood beyond a fin. */
function besideFin(earlier: readonly TriedCut[], { beyond }: Fin): TriedCut | undefined {
  return [...earlier].reverse().find(({ draft }) => isInWood(sweepOfDraft(draft), beyond));
}

function withoutWay(flats: readonly FlatToCut[], key: string): readonly FlatToCut[] | null {
  const at = flats.findIndex(({ ways }) => ways.length > 1 && ways.some((way) => way.key === key));
  if (at < 0) return null;
  return flats.map((flat, i) => (i === at ? { ways: flat.ways.filter((way) => way.key !== key) } : flat));
}
