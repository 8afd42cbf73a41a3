import { describe, expect, it } from "vitest";
import { areaMm2, extentsOf, verticesOf } from "../curve/index.ts";
import { readSvgSection } from "./svg-read.ts";
import type { Section } from "./types.ts";

const MM = `xmlns="http://www.w3.org/2000/svg" width="42mm" height="18mm" viewBox="0 0 42 18"`;
const STICK = `<rect id="stick" width="42" height="18"/>`;

function svg(inside: string, root = MM): string {
  return `<?xml version="1.0" encoding="UTF-8"?>\n<svg ${root}>${inside}</svg>`;
}

/** Reads and expects exactly the warnings named. */
function read(text: string, warnings: readonly string[] = [], options = {}): Section {
  const outcome = readSvgSection(text, { name: "test", ...options });
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.trouble));
  expect(outcome.warnings.map(({ code }) => code)).toEqual(warnings);
  return outcome.value;
}

function refusal(text: string, options = {}) {
  const outcome = readSvgSection(text, { name: "test", ...options });
  if (outcome.ok) throw new Error("was read");
  return outcome.trouble;
}

function corners(section: Section): string {
  return verticesOf(section.outline)
    .map(([x, y, bulge]) => (bulge ? `${x},${y},${bulge.toFixed(9)}` : `${x},${y}`))
    .join(" ");
}

describe("what is read from an SVG", () => {
  it("a step with a quarter hollow: y flipped about the stick, the arc exact, anticlockwise", () => {
    const section = read(svg(`${STICK}<path id="section" d="M0 18 V6 H20 A8 8 0 0 0 28 14 H42 V18 Z"/>`));
    // Drawn anticlockwise on a page whose y runs down, so clockwise here: turned round, from the same first vertex.
    expect(corners(section)).toBe("0,0 42,0 42,4 28,4,-0.414213562 20,12 0,12");
    expect(verticesOf(section.stick)).toEqual([
      [0, 0],
      [42, 0],
      [42, 18],
      [0, 18],
    ]);
    expect(section.freeSpans).toEqual([]);
  });

  it("without a stick, the section's box", () => {
    const section = read(svg(`<path d="M10 15 h20 v-10 h-20 z"/>`));
    expect(extentsOf(section.stick)).toEqual({ minX: 0, minY: 0, maxX: 20, maxY: 10 });
    expect(areaMm2(section.outline)).toBe(200);
  });

  it("a given stick: against the gauge edge and top, or where it is put", () => {
    const text = svg(`<path id="section" d="M10 15 h20 v-10 h-20 z"/>`);
    const stickMm = { widthMm: 42, thicknessMm: 18 };
    expect(extentsOf(read(text, [], { stickMm }).outline)).toEqual({ minX: 0, minY: 8, maxX: 20, maxY: 18 });
    const at = read(text, [], { stickMm, atMm: { x: 3, y: 0 } });
    expect(extentsOf(at.outline)).toEqual({ minX: 3, minY: 0, maxX: 23, maxY: 10 });
    expect(refusal(text, { stickMm, atMm: { x: 30, y: 0 } }).code).toBe("outline-outside-stick");
  });

  it.each([
    ["mm", `width="20mm" height="10mm" viewBox="0 0 200 100"`, 20, []],
    ["cm", `width="2cm" height="1cm" viewBox="0 0 200 100"`, 20, []],
    ["in", `width="2in" height="1in" viewBox="0 0 200 100"`, 50.8, []],
    ["pt", `width="144pt" height="72pt" viewBox="0 0 200 100"`, 50.8, []],
    ["px", `width="192px" height="96px" viewBox="0 0 200 100"`, 50.8, []],
    ["px, unit left out", `width="192" height="96" viewBox="0 0 200 100"`, 50.8, ["size-in-pixels-assumed"]],
    ["units but no viewBox: user units are pixels", `width="80mm" height="40mm"`, (200 * 25.4) / 96, []],
    ["neither: millimetres", `width="200" height="100"`, 200, ["size-without-unit"]],
    ["nothing at all: millimetres", ``, 200, ["size-without-unit"]],
    ["only a viewBox: millimetres", `viewBox="0 0 200 100"`, 200, ["size-without-unit"]],
    [
      "a window's part: millimetres",
      `width="100%" height="100%" viewBox="0 0 200 100"`,
      200,
      ["size-without-unit"],
    ],
    ["narrower than its box: even scale", `width="20mm" height="40mm" viewBox="0 0 200 100"`, 20, []],
    [
      "stretched on purpose",
      `width="20mm" height="40mm" viewBox="0 0 200 100" preserveAspectRatio="none"`,
      20,
      [],
    ],
  ])("unit %s", (_, root, widthMm, warnings) => {
    const { maxX } = extentsOf(
      read(svg(`<path d="M0 0H200V100H0z"/>`, root as string), warnings as string[]).outline,
    );
    expect(maxX).toBeCloseTo(widthMm as number, 5);
  });
});
