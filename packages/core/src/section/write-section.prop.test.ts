import * as fc from "fast-check";
import { expect, it } from "vitest";
import { extentsOf, moveRing, type Ring, ringFromVertices, verticesOf } from "../curve/index.ts";
import { PROPERTY, starRing } from "../curve/testing/generators.ts";
import { readSectionFile } from "./read-file.ts";
import type { Section } from "./types.ts";
import { writeDxfSection } from "./write-dxf.ts";
import { writeSvgSection } from "./write-svg.ts";

/** The grid, by whose half each coordinate may be off when it is written and again when it is read. */
const WITHIN_MM = 1.5e-6;

/** A star in a stick that leaves it room on every side, its corners on no grid. */
const anySection: fc.Arbitrary<Section> = fc.tuple(starRing, fc.boolean()).map(([star, isCornered]) => {
  const box = extentsOf(star);
  const outline = moveRing(star, 1 - box.minX, 1 - box.minY);
  const { maxX, maxY } = extentsOf(outline);
  const [width, thickness] = [Math.ceil(maxX + 1), Math.ceil(maxY + 1)];
  const corner = [
    [width, thickness - 0.5],
    [width - 0.5, thickness],
  ] as const;
  const top = isCornered ? corner : ([[width, thickness]] as const);
  const stick = ringFromVertices([[0, 0], [width, 0], ...top, [0, thickness]]);
  return { name: "star", stick, outline, freeSpans: [], named: [] };
});

/** Same pieces from the same start; crowns as near as ends. */
function expectSame(found: Ring, wanted: Ring): void {
  const [a, b] = [verticesOf(found), verticesOf(wanted)];
  expect(a).toHaveLength(b.length);
  const start = a.findIndex(([x, y]) => Math.hypot(x - b[0]![0], y - b[0]![1]) <= WITHIN_MM);
  expect(start).toBeGreaterThanOrEqual(0);
  b.forEach(([x, y, bulge = 0], i) => {
    const [foundX, foundY, foundBulge = 0] = a[(start + i) % a.length]!;
    const [nextX, nextY] = b[(i + 1) % b.length]!;
    expect(Math.hypot(foundX - x, foundY - y)).toBeLessThanOrEqual(WITHIN_MM);
    expect((Math.abs(foundBulge - bulge) * Math.hypot(nextX - x, nextY - y)) / 2).toBeLessThanOrEqual(
      WITHIN_MM,
    );
  });
}

/** Vertices on a straight line between lines are left out by the reader: no star that has one is of use here. */
function hasStraightJoint(ring: Ring): boolean {
  return ring.pieces.some((piece, i) => {
    const next = ring.pieces[(i + 1) % ring.pieces.length]!;
    if (piece.kind !== "line" || next.kind !== "line") return false;
    const [a, b] = [piece, next].map(({ from, to }) => Math.atan2(to.y - from.y, to.x - from.x));
    return Math.abs(Math.sin(a! - b!)) < 1e-4;
  });
}

const WRITERS: readonly (readonly [string, (section: Section) => string])[] = [
  ["SVG in millimetres", (section) => writeSvgSection(section, { unit: "mm" })],
  ["SVG in inches", (section) => writeSvgSection(section, { unit: "in" })],
  ["DXF", writeDxfSection],
];

it.each(WRITERS)("%s: what is written is read back, within the grid", (_, write) => {
  fc.assert(
    fc.property(anySection, (section) => {
      fc.pre(!hasStraightJoint(section.outline));
      const text = write(section);
      const outcome = readSectionFile({ fileName: "star.txt", text });
      if (!outcome.ok) throw new Error(JSON.stringify(outcome.trouble));
      fc.pre(outcome.warnings.every(({ code }) => !code.startsWith("noise")));
      expectSame(outcome.value.outline, section.outline);
      expectSame(outcome.value.stick, section.stick);
      // From then on it stays as it is.
      const again = readSectionFile({ fileName: "star.txt", text: write(outcome.value) });
      if (!again.ok) throw new Error(JSON.stringify(again.trouble));
      expectSame(again.value.outline, outcome.value.outline);
    }),
    { ...PROPERTY, numRuns: 150 },
  );
});
