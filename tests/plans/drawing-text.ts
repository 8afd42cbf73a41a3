/** A section as the text of an SVG drawing in millimetres or inches, every number at full precision. */
import type { Section } from "../../packages/core/src/section/index.ts";

const MM_PER = { mm: 1, in: 25.4 } as const;

export function svgText(section: Section, unit: "mm" | "in"): string {
  const corners = section.stick.pieces.map((piece) => piece.from);
  const width = Math.max(...corners.map((p) => p.x));
  const height = Math.max(...corners.map((p) => p.y));
  const size = (mm: number) => `${mm / MM_PER[unit]}`;
  // SVG's y runs down: the drawing is turned upside down, and with it the direction of every arc.
  const place = (p: { readonly x: number; readonly y: number }) => `${size(p.x)} ${size(height - p.y)}`;
  const steps = section.outline.pieces.map((piece) => {
    if (piece.kind === "line") return `L ${place(piece.to)}`;
    const chord = Math.hypot(piece.to.x - piece.from.x, piece.to.y - piece.from.y);
    const radius = (chord * (1 + piece.bulge ** 2)) / (4 * Math.abs(piece.bulge));
    return `A ${size(radius)} ${size(radius)} 0 0 ${piece.bulge > 0 ? 0 : 1} ${place(piece.to)}`;
  });
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" width="${size(width)}${unit}" height="${size(height)}${unit}" viewBox="0 0 ${size(width)} ${size(height)}">`,
    `<rect id="stick" x="0" y="0" width="${size(width)}" height="${size(height)}"/>`,
    `<path id="section" d="M ${place(section.outline.pieces[0].from)} ${steps.join(" ")} Z"/>`,
    `</svg>`,
  ].join("\n");
}
