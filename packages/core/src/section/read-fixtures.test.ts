import { readFileSync } from "node:fs";
import DxfParser from "dxf-parser";
import { describe, expect, it } from "vitest";
import { areaMm2, type Ring, verticesOf } from "../curve/index.ts";
import { readSectionFile } from "./read-file.ts";
import type { Section } from "./types.ts";

const FOLDER = new URL("../../../../tests/fixtures/drawings/", import.meta.url);

function read(fileName: string, warnings: readonly string[] = []): Section {
  const outcome = readSectionFile({ fileName, text: readFileSync(new URL(fileName, FOLDER), "utf8") });
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.trouble));
  expect(outcome.warnings.map(({ code }) => code)).toEqual(warnings);
  return outcome.value;
}

type Corner = readonly [number, number, number?];

/** Every vertex within `withinMm`, every bulge as close on its chord, from whichever vertex the file starts. */
function expectRing(ring: Ring, expected: readonly Corner[], withinMm: number): void {
  const vertices = verticesOf(ring);
  expect(vertices).toHaveLength(expected.length);
  const [x0, y0] = expected[0]!;
  const start = vertices.findIndex(([x, y]) => Math.hypot(x - x0, y - y0) <= withinMm);
  expected.forEach(([x, y, bulge = 0], i) => {
    const [foundX, foundY, foundBulge = 0] = vertices[(start + i) % vertices.length]!;
    expect(Math.hypot(foundX - x, foundY - y), `vertex ${i}`).toBeLessThanOrEqual(withinMm);
    expect(Math.abs(foundBulge - bulge), `bulge ${i}`).toBeLessThanOrEqual(withinMm / 4);
  });
}

// By hand. tan(sweep / 4) of a quarter circle, and of an arc whose sweep has the sine 5/13 (half its sweep: 1/5).
const QUARTER = Math.SQRT2 - 1;
const OGEE = 5 * (Math.sqrt(26) / 5 - 1);

const CORNICE: readonly Corner[] = [
  ...([
    [0, 0],
    [70, 0],
    [70, 6],
    [60, 6, -QUARTER],
    [50, 16],
    [46, 16],
    [46, 18],
  ] as const),
  ...([
    [44, 18, 1],
    [36, 18],
    [30, 18, -OGEE],
    [20, 20, OGEE],
    [10, 22],
    [0, 22],
  ] as const),
];
const PLINTH: readonly Corner[] = [
  ...([
    [0, 0],
    [90, 0],
    [90, 5],
    [86, 5, QUARTER],
    [78, 13],
    [74, 13],
    [74, 15, -QUARTER],
  ] as const),
  ...([
    [69, 20],
    [0, 20],
  ] as const),
];
const GLAZING_BAR: readonly Corner[] = [
  ...([
    [6, 0],
    [16, 0],
    [16, 10],
    [22, 10],
    [22, 24, QUARTER],
    [14, 32],
    [8, 32, QUARTER],
  ] as const),
  ...([
    [0, 24],
    [0, 10],
    [6, 10],
  ] as const),
];
const GRID_MM = 2e-6;

function box(widthMm: number, thicknessMm: number): readonly Corner[] {
  return [
    [0, 0],
    [widthMm, 0],
    [widthMm, thicknessMm],
    [0, thicknessMm],
  ];
}

describe("SVG saved by Inkscape", () => {
  it("layers, nested transforms, a millimetre page in pixels", () => {
    const section = read("cornice-layers.svg");
    expectRing(section.outline, CORNICE, GRID_MM);
    expectRing(section.stick, box(70, 22), GRID_MM);
    expect(section.name).toBe("cornice-layers");
  });

  it("shapes cut and joined: its noise of 0.0002 mm settled on the stick and said", () => {
    const section = read("plinth-booleans.svg", ["noise-sides", "noise-tangency"]);
    expectRing(section.outline, PLINTH, 4e-4);
    expectRing(section.stick, box(90, 20), GRID_MM);
  });

  it("transforms worked into the points", () => {
    const section = read("glazing-bar-plain.svg");
    expectRing(section.outline, GLAZING_BAR, GRID_MM);
    expectRing(section.stick, box(22, 32), GRID_MM);
  });
});

describe("DXF saved by libraries", () => {
  it("light polylines with bulges, layers, other things beside", () => {
    const section = read("cornice-polylines.dxf");
    expectRing(section.outline, CORNICE, GRID_MM);
    expectRing(section.stick, box(70, 22), GRID_MM);
  });

  it("loose lines and arcs in inches, one from behind, without layers", () => {
    expectRing(read("plinth-loose.dxf").outline, PLINTH, GRID_MM);
  });

  it("old polylines in nested blocks, mirrored and at a tenth, in cm", () => {
    const section = read("glazing-bar-blocks.dxf");
    // The halves meet in the middle of the back and of the top.
    expectRing(section.outline, GLAZING_BAR, GRID_MM);
    expectRing(section.stick, box(22, 32), GRID_MM);
  });

  it("a spline and half an ellipse", () => {
    const section = read("frame-spline-ellipse.dxf");
    expect(section.freeSpans).toHaveLength(2);
    // Lines 320 - 6 × 2, less the corner beyond the spline, more half an ellipse of 5 by 3. The spline's curve is
    // point-symmetric about (24, 7): what lies under it between x = 18 and 30 is half of 12 × 6, on 4.
    const underSpline = 12 * 4 + 36;
    const expected = 18 * 10 + underSpline + 2 * 4 + (Math.PI * 5 * 3) / 2;
    expect(areaMm2(section.outline)).toBeCloseTo(expected, 2);
    expect(verticesOf(section.stick)).toEqual([
      [0, 0],
      [32, 0],
      [32, 13],
      [0, 13],
    ]);
  });

  it("the small DXF of a script", () => {
    const section = read("pilaster-writer.dxf");
    expect(areaMm2(section.outline)).toBeCloseTo(42 * 12 - 26 * 3 + 3 * ((Math.PI * 9) / 2), 6);
  });

  it("what a general DXF library finds in the same files agrees", () => {
    const text = readFileSync(new URL("cornice-polylines.dxf", FOLDER), "utf8");
    const parsed = new DxfParser().parseSync(text);
    const polyline = parsed?.entities.find(({ layer, type }) => layer === "SECTION" && type === "LWPOLYLINE");
    const { vertices } = polyline as unknown as { vertices: { x: number; y: number; bulge?: number }[] };
    expectRing(
      read("cornice-polylines.dxf").outline,
      vertices.map(({ x, y, bulge }) => [x - 125, y - 40, bulge ?? 0] as const),
      GRID_MM,
    );
  });
});
