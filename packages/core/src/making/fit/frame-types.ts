/** How a frame is stated. */
import type { Point } from "../../curve/index.ts";

export type FrameShape =
  | { readonly kind: "rectangle"; readonly acrossMm: number; readonly upMm: number }
  | { readonly kind: "regular"; readonly sides: number; readonly sideMm: number }
  /** Corners in order round the frame, either way. */
  | { readonly kind: "polygon"; readonly corners: readonly Point[] };

/** Which size the shape gives: what is seen, the rebate's opening, the outside, or the glass, panel or picture. */
export type StatedSize = "sight" | "rebate" | "outside" | "glass";
