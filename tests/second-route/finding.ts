/** What the second route found against a plan. */

export type Rule =
  | "file"
  | "no answer"
  | "takes"
  | "after"
  | "overcut"
  | "wall said"
  | "wall"
  | "leaning wall"
  | "slot"
  | "seat"
  | "seat said"
  | "guide"
  | "lean"
  | "bench"
  | "body"
  | "loose wood"
  | "poses"
  | "bearing"
  | "sole"
  | "mark"
  | "planned"
  | "under"
  | "unlisted"
  | "uncut said"
  | "finish said";

export interface Finding {
  readonly rule: Rule;
  /** Number of the cut, where it is about one. */
  readonly cut?: number;
  readonly says: string;
}

/** Numbers in findings: short enough to read, long enough to find the place. */
export function mm(value: number): string {
  return `${Math.round(value * 1e4) / 1e4} mm`;
}
