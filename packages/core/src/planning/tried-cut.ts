/** A cut as it was tried on the wood: what came of it. */
import type { Region } from "../curve/index.ts";
import type { Seat, UncutRule } from "../cutting/index.ts";
import type { Draft } from "./draft-cut.ts";
import type { Fin } from "./fins.ts";
import type { Guide } from "./guide.ts";

/** Why a cut is not made: the rule, with the figures a sentence needs. */
export interface Refusal {
  readonly rule: UncutRule;
  readonly side?: "left" | "right";
  readonly foundMm?: number;
  readonly limitMm?: number;
}

export interface TriedCut {
  readonly draft: Draft;
  readonly before: Region;
  readonly after: Region;
  readonly takesMm2: number;
  readonly wallMm: readonly [number, number];
  readonly seat: Seat | null;
  /** Null for a curved plane that is held by its seat, and for a saw. */
  readonly guide: Guide | null;
  readonly refusals: readonly Refusal[];
  /** Whether it is a groove that runs into an older one at another depth: no rule forbids it, and no hand would do it. */
  readonly intoGroove: boolean;
  /** The fin of waste that it leaves standing beside a flat plane, if any. */
  readonly fin: Fin | null;
}
