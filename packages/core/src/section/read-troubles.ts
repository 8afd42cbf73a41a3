/** What can be wrong with, or doubtful in, a drawing of a section; the sentences stand in `measure/say/drawing.ts`. */
import type { Facts, Trouble } from "../measure/index.ts";

/** Codes are kept for good: a retired one is never used again for something else. */
export type DrawingTroubleCode =
  // the file as a whole
  | "drawing-empty"
  | "drawing-too-long"
  | "drawing-kind-unknown"
  | "drawing-too-many-points"
  | "drawing-too-deep"
  | "drawing-number-absurd"
  // SVG
  | "svg-broken"
  | "svg-not-svg"
  | "svg-doctype"
  | "svg-size-unreadable"
  | "svg-path-broken"
  | "svg-transform-broken"
  | "svg-style-transform"
  // DXF
  | "dxf-binary"
  | "dxf-broken"
  | "dxf-cut-short"
  | "dxf-unit-unknown"
  | "dxf-entity-broken"
  | "dxf-block-missing"
  | "dxf-out-of-plane"
  // what is drawn
  | "outline-missing"
  | "outline-several"
  | "outline-open"
  | "outline-branches"
  | "outline-of-several-rings"
  | "outline-crosses-itself"
  | "outline-without-area"
  | "outline-too-large"
  | "outline-too-small"
  | "outline-outside-stick"
  | "stick-several"
  | "stick-broken"
  // warnings
  | "size-without-unit"
  | "size-in-pixels-assumed"
  | "noise-sides"
  | "noise-ends"
  | "noise-tangency"
  | "arc-radius-grown"
  | "dxf-unit-assumed"
  | "dxf-entities-left-out";

export type DrawingTrouble = Trouble<DrawingTroubleCode>;

/**
 * What one reading gathers on its way. The first refusal stands: whatever is found after it may be its consequence.
 */
export interface Reading {
  readonly warnings: DrawingTrouble[];
  refusal: DrawingTrouble | null;
  /** Pieces and flattened points still allowed. */
  pointsLeft: number;
}

export function newReading(pointLimit: number): Reading {
  return { warnings: [], refusal: null, pointsLeft: pointLimit };
}

export function refuse(reading: Reading, code: DrawingTroubleCode, where: string, facts: Facts = {}): void {
  reading.refusal ??= { code, where, facts };
}

export function warn(reading: Reading, code: DrawingTroubleCode, where: string, facts: Facts = {}): void {
  if (!reading.warnings.some((known) => known.code === code && known.where === where)) {
    reading.warnings.push({ code, where, facts });
  }
}
