/** The scale of an SVG's page: from user units, y down, to millimetres, y up. */
import type { Affine } from "./read-affine.ts";
import { type Reading, refuse } from "./read-troubles.ts";
import { PIXEL_MM, readLength, readNumberList, type SvgLength } from "./svg-attributes.ts";

export interface PageScale {
  readonly toMm: Affine;
  /** What had to be assumed, to be said once the section's size is known. */
  readonly doubt: SizeDoubt | null;
}

export type SizeDoubt = "size-without-unit" | "size-in-pixels-assumed";

const MILLIMETRES_ASSUMED: PageScale = { toMm: pageMap(1, 1), doubt: "size-without-unit" };

/** Every number of the drawing is so many millimetres: the maker says so, whatever the page says. */
export function plainScale(numberMm: number): PageScale {
  return { toMm: pageMap(numberMm, numberMm), doubt: null };
}

/**
 * Source: W3C, Scalable Vector Graphics 1.1 (second edition), sections 7.2, 7.7 and 7.8; pixels at 96 to the inch by
 * CSS. Where the drawing is placed on the page does not matter here: the stick's corner becomes the origin.
 */
export function pageScale(reading: Reading, attributes: Readonly<Record<string, string>>): PageScale | null {
  const width = pageLength(reading, attributes, "width");
  const height = pageLength(reading, attributes, "height");
  if (reading.refusal !== null) return null;
  const viewBox = viewBoxOf(reading, attributes);
  if (reading.refusal !== null) return null;
  if (viewBox === null) {
    const isUnitless = (width?.unitMm ?? null) === null && (height?.unitMm ?? null) === null;
    return isUnitless ? MILLIMETRES_ASSUMED : { toMm: pageMap(PIXEL_MM, PIXEL_MM), doubt: null };
  }
  const scaleX = width === null ? null : lengthMm(width) / viewBox.width;
  const scaleY = height === null ? null : lengthMm(height) / viewBox.height;
  const anyScale = scaleX ?? scaleY;
  if (anyScale === null) return MILLIMETRES_ASSUMED;
  const toMm = fitted(scaleX ?? anyScale, scaleY ?? anyScale, attributes.preserveAspectRatio ?? "");
  const isUnitless = (width ?? height)?.unitMm === null;
  return { toMm, doubt: isUnitless ? "size-in-pixels-assumed" : null };
}

/** "meet" (unless said otherwise) takes the smaller scale for both, "slice" the larger, "none" each its own. */
function fitted(scaleX: number, scaleY: number, fit: string): Affine {
  if (fit.includes("none")) return pageMap(scaleX, scaleY);
  const even = fit.includes("slice") ? Math.max(scaleX, scaleY) : Math.min(scaleX, scaleY);
  return pageMap(even, even);
}

function pageMap(scaleX: number, scaleY: number): Affine {
  return { a: scaleX, b: 0, c: 0, d: -scaleY, e: 0, f: 0 };
}

function lengthMm(length: SvgLength): number {
  return length.number * (length.unitMm ?? PIXEL_MM);
}

/** A width or height of the root; null if it is missing or relative to a window. */
function pageLength(
  reading: Reading,
  attributes: Readonly<Record<string, string>>,
  name: "width" | "height",
): SvgLength | null {
  const text = attributes[name]?.trim() ?? "";
  if (text === "" || text === "auto") return null;
  const length = readLength(text);
  if (length === "relative") return null;
  if (length === null || length.number <= 0) {
    refuse(reading, "svg-size-unreadable", name, {
      element: "svg",
      attribute: name,
      value: text.slice(0, 40),
    });
    return null;
  }
  return length;
}

function viewBoxOf(
  reading: Reading,
  attributes: Readonly<Record<string, string>>,
): { width: number; height: number } | null {
  const text = attributes.viewBox;
  if (text === undefined) return null;
  const numbers = text.length > 200 ? null : readNumberList(text);
  const [, , width, height] = numbers ?? [];
  if (numbers?.length !== 4 || !(width! > 0 && height! > 0) || !numbers.every(Number.isFinite)) {
    refuse(reading, "svg-size-unreadable", "viewBox", {
      element: "svg",
      attribute: "viewBox",
      value: text.slice(0, 40),
    });
    return null;
  }
  return { width: width!, height: height! };
}
