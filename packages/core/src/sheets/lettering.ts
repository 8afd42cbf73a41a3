/** Sizes of lettering on paper. ISO 3098: capitals of 2.5 mm or more; a sans-serif's capitals are 0.718 of its size. */

/** Names and words at a picture. */
export const LABEL_MM = 3.6;
/** The least size on any sheet. */
export const LEAST_LETTERING_MM = 3.5;
const FRACTION_LABEL_MM = 4.4;

/** Figures: inches are set larger, because the digits of a fraction are half as high. */
export function figureMm(unit: "mm" | "in"): number {
  return unit === "in" ? FRACTION_LABEL_MM : LABEL_MM;
}
