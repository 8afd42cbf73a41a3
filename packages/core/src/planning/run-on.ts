/** Floors that are worth running on out of the wood, so that no waste stands between them and the next. */
import type { Region } from "../curve/index.ts";
import { SAME_SCORE } from "../measure/index.ts";
import type { Bench } from "./bench.ts";
import type { PlaneDraft } from "./draft-cut.ts";
import { floorsRunOn } from "./floors-run-on.ts";
import { type FlatToCut, orderFlats } from "./order.ts";
import { leftMm2 } from "./sequence.ts";

/** What running floors on has to spare before the whole face is worked through so, in settings. */
const WORTH_TRYING = 1;

/**
 * The flats, each floor cut so that it runs on out of the wood where that spares more than it costs; the very same ones
 * where all of it spares no more than a setting. Waste is what leads here: whether seats are left for the curves shows
 * only when they are cut.
 */
export function withFloorsRunOn(
  bench: Bench,
  wood: Region,
  flats: readonly FlatToCut[],
): readonly FlatToCut[] {
  let costAsDrawn: number | null = null;
  let best = flats;
  let spared = 0;
  for (const flat of flats) {
    for (const draft of runningOn(bench, flat)) {
      const tried = best.map((other) => (isSameFlat(other, flat) ? { ways: [draft, ...flat.ways] } : other));
      costAsDrawn ??= costOfFlats(bench, wood, flats);
      const spares = costAsDrawn - costOfFlats(bench, wood, tried);
      if (spares <= spared + SAME_SCORE) continue;
      best = tried;
      spared = spares;
    }
  }
  return spared > WORTH_TRYING * bench.weights.setting ? best : flats;
}

/** A flat keeps its own ways behind the one that runs on. */
function isSameFlat({ ways }: FlatToCut, { ways: [first] }: FlatToCut): boolean {
  return first !== undefined && ways.includes(first);
}

function runningOn(bench: Bench, { ways: [first] }: FlatToCut): readonly PlaneDraft[] {
  if (first?.work !== "step" || first.cantDeg !== 0) return [];
  const piece = bench.worked.find(({ index }) => index === first.shapes[0]);
  return piece && !piece.curve ? floorsRunOn(bench, piece) : [];
}

/** The cost of the flats in their order, and of the waste that they leave to curved planes. */
function costOfFlats(bench: Bench, wood: Region, flats: readonly FlatToCut[]): number {
  const { cost, wood: left, refused, keptOff } = orderFlats(bench, wood, flats, "guided");
  return (
    cost +
    refused.length * bench.weights.refused +
    keptOff.length * bench.weights.intoGroove +
    leftMm2(bench, left) * bench.weights.wasteLeftPerMm2
  );
}
