/** Writes a section as an SVG drawing, to be read back here or by any drawing program. */
import { extentsOf, type Ring } from "../curve/index.ts";
import { FLATTEN_MM, INCH_MM, type LengthUnit } from "../measure/index.ts";
import { cleanName } from "./read-limits.ts";
import type { FreeSpan, Section } from "./types.ts";
import { numberText, pageRing, svgPathWithCurves } from "./write-path.ts";

/** Decimals that keep the grid of 1e-6 mm, in the drawing's unit. */
const DECIMALS: Readonly<Record<LengthUnit, number>> = { mm: 6, in: 8 };

/** Ten chord errors: fewer curves than the last digit would ask for, far below what any tool can follow. */
const CURVE_MM = 10 * FLATTEN_MM;

export interface SvgWriting {
  /** The unit of the page and of its numbers. */
  readonly unit: LengthUnit;
}

/**
 * The section and its stick at full size: a path `section` and a rectangle (else a path) `stick`. Lines and arcs stay
 * exact; a free curve is written as cubic Béziers within `CURVE_MM` of the short lines it is held in, and is read back as a
 * free curve.
 */
export function writeSvgSection(section: Section, { unit }: SvgWriting): string {
  const { maxX, maxY } = extentsOf(section.stick);
  const scale = unit === "mm" ? 1 : 1 / INCH_MM;
  const decimals = DECIMALS[unit];
  const width = numberText(maxX * scale, decimals);
  const height = numberText(maxY * scale, decimals);
  const stroke = numberText(0.1 * scale, decimals);
  const pathOf = (ring: Ring, freeSpans: readonly FreeSpan[] = []): string =>
    svgPathWithCurves(pageRing(ring, maxY, scale), freeSpans, { decimals, curveTolMm: CURVE_MM * scale });
  const stick = isBox(section.stick)
    ? `<rect id="stick" x="0" y="0" width="${width}" height="${height}"/>`
    : `<path id="stick" d="${pathOf(section.stick)}"/>`;
  return [
    `<?xml version="1.0" encoding="UTF-8"?>`,
    `<svg xmlns="http://www.w3.org/2000/svg" width="${width}${unit}" height="${height}${unit}" viewBox="0 0 ${width} ${height}">`,
    `  <title>${escaped(section.name)}</title>`,
    `  <g fill="none" stroke="black" stroke-width="${stroke}">`,
    `    ${stick}`,
    `    <path id="section" d="${pathOf(section.outline, section.freeSpans)}"/>`,
    `  </g>`,
    `</svg>`,
    ``,
  ].join("\n");
}

/** Four lines square to the page with a corner at the origin: what a rectangle of SVG can say. */
function isBox(stick: Ring): boolean {
  const { minX, minY } = extentsOf(stick);
  const isSquare = stick.pieces.every(
    ({ kind, from, to }) => kind === "line" && (from.x === to.x || from.y === to.y),
  );
  return isSquare && stick.pieces.length === 4 && minX === 0 && minY === 0;
}

/** Control characters, which no XML can hold, are dropped with everything else that is no part of a name. */
function escaped(text: string): string {
  return cleanName(text).replace(/&/g, "&amp;").replace(/</g, "&lt;").replace(/>/g, "&gt;");
}
