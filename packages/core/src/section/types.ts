/** A wanted section in its stick: what the drawing says, before anything is planned. */
import type { Ring } from "../curve/index.ts";

/**
 * `outline` is anticlockwise and holds lines and arcs exactly; a free curve (Bézier, ellipse, spline) stands in it
 * as a run of short lines (chord error `FLATTEN_MM` or less) and `freeSpans` says where.
 */
export interface Section {
  readonly name: string;
  readonly stick: Ring;
  readonly outline: Ring;
  readonly freeSpans: readonly FreeSpan[];
  /** Names of parts, where the source knows them (parts built by a maker; none for a bare drawing). */
  readonly named: readonly NamedSpan[];
}

/** Pieces `first` to `first + count - 1` (round the ring) of the outline came from one free curve. */
export interface FreeSpan {
  readonly first: number;
  readonly count: number;
}

export interface NamedSpan {
  readonly first: number;
  readonly count: number;
  readonly kind: string;
  readonly name: string;
}

export type JoinKind = "smooth" | "arris" | "quirk" | "step";
