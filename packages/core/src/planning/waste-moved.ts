/** Cuts of waste placed elsewhere once an order is found: to make a later cut needless, and to leave no thin strip. */
import type { Region } from "../curve/index.ts";
import type { Bench } from "./bench.ts";
import { withSeatsFromWaste } from "./exchanged.ts";
import type { Sequence } from "./sequence.ts";
import { withStripsClosed } from "./strips-closed.ts";

/** The sequence so, or the very same one where nothing is gained. `wood` is what its first cut is made on. */
export function withWasteMoved(bench: Bench, wood: Region, sequence: Sequence): Sequence {
  return withStripsClosed(bench, wood, withSeatsFromWaste(bench, wood, sequence));
}
