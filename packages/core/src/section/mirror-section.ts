/** The same section for the other hand: gauge edge and far edge change places. */
import { extentsOf, mirrorRing } from "../curve/index.ts";
import type { Section } from "./types.ts";

/** Mirrors section and stick in the stick's middle. Names and free spans keep to their pieces. */
export function mirrorSection(section: Section): Section {
  const { minX, maxX } = extentsOf(section.stick);
  const axisXMm = (minX + maxX) / 2;
  const total = section.outline.pieces.length;
  const mirrored = <S extends { readonly first: number; readonly count: number }>(span: S): S => ({
    ...span,
    // mirrorRing walks the pieces backwards, so a span's last piece comes first.
    first: (total - span.first - span.count + total) % total,
  });
  return {
    name: section.name,
    stick: mirrorRing(section.stick, axisXMm),
    outline: mirrorRing(section.outline, axisXMm),
    freeSpans: section.freeSpans.map(mirrored).reverse(),
    named: section.named.map(mirrored).reverse(),
  };
}
