/** The same section turned in a square stick of its own. */
import { extentsOf, moveRing, transformRing } from "../../curve/index.ts";
import { toRad } from "../../measure/index.ts";
import { type Section, stickRing } from "../../section/index.ts";

/**
 * Turns the outline by `cantDeg`, anticlockwise seen on its end, and sets it into the smallest square stick that
 * holds it, lower left corner at (0, 0). Arcs stay arcs; names and free spans stay with their pieces.
 */
export function turnSection(section: Section, cantDeg: number): Section {
  const turned = transformRing(section.outline, { turnRad: toRad(cantDeg) });
  const { minX, minY, maxX, maxY } = extentsOf(turned);
  return {
    ...section,
    stick: stickRing(maxX - minX, maxY - minY),
    outline: moveRing(turned, -minX, -minY),
  };
}
