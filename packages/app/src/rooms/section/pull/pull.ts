/** A handle that is pulled, and what came of it. */
import type { Job } from "mouldwright/job";
import type { PlacedPart } from "../chain/laid-chain.ts";
import type { Handle } from "./handles.ts";
import type { SettleRule } from "./settle.ts";
import type { ShelfRadius } from "./soles.ts";

export interface Pull {
  /** As it stood when it was taken hold of. */
  readonly job: Job;
  readonly placed: readonly PlacedPart[];
  readonly handle: Handle;
  readonly radii: readonly ShelfRadius[];
  /** How it settles; null where it is to go exactly where it is put. */
  readonly rule: SettleRule | null;
  readonly length: (lengthMm: number) => string;
}

export interface Pulled {
  readonly job: Job;
  readonly says: string;
}
