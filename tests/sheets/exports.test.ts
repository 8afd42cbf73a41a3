/** Files for other programs, read back by readers that are not ours. */
import DxfParser from "dxf-parser";
import { chromium } from "playwright-core";
import { describe, expect, test } from "vitest";
import {
  areaMm2,
  insideRing,
  nearestOnRing,
  point,
  type Ring,
  ringFromVertices,
  type Vertex,
} from "../../packages/core/src/curve/index.ts";
import {
  depthGaugeSolid,
  exportDxf,
  exportLayers,
  exportSvg,
  gaugeDepths,
  mouldingSolid,
  type Solid,
  sandingBlockSolid,
  writeStl,
} from "../../packages/core/src/sheets/index.ts";
import { EXAMPLE_NAMES, examplePlan } from "./plans.ts";
import { browserPath } from "./tools.ts";

const SAME_MM = 0.001;
const SAMPLED = ["cornice", "glazing-bar", "pilaster"];

describe("DXF", () => {
  test.each(EXAMPLE_NAMES)("%s comes back from dxf-parser, layer by layer, in millimetres", (name) => {
    const plan = examplePlan(name);
    const parsed = new DxfParser().parseSync(exportDxf(plan));
    expect(parsed?.header.$INSUNITS).toBe(4);
    const layers = exportLayers(plan);
    expect(layers.map((layer) => layer.name)).toContain("SECTION");
    const found = new Map<string, Vertex[][]>();
    for (const entity of parsed?.entities ?? []) {
      expect(entity.type).toBe("LWPOLYLINE");
      const vertices = verticesIn(entity);
      found.set(entity.layer, [...(found.get(entity.layer) ?? []), vertices]);
    }
    expect([...found.keys()].sort()).toEqual(layers.map((layer) => layer.name).sort());
    for (const layer of layers) {
      const outlines = found.get(layer.name) ?? [];
      expect(outlines).toHaveLength(layer.outlines.length);
      layer.outlines.forEach((outline, index) => {
        const back = outlines[index] ?? [];
        expect(back).toHaveLength(outline.vertices.length);
        outline.vertices.forEach((vertex, at) => {
          const [x, y, bulge = 0] = back[at] ?? [Number.NaN, Number.NaN];
          expect(Math.hypot(x - vertex[0], y - vertex[1])).toBeLessThan(SAME_MM);
          // The crown of an arc stands bulge × half its chord off it.
          const next = outline.vertices[(at + 1) % outline.vertices.length] ?? vertex;
          const halfMm = Math.hypot(next[0] - vertex[0], next[1] - vertex[1]) / 2;
          expect(Math.abs(bulge - (vertex[2] ?? 0)) * halfMm).toBeLessThan(SAME_MM);
        });
      });
    }
  });
});

function verticesIn(entity: object): Vertex[] {
  if (!("vertices" in entity) || !Array.isArray(entity.vertices)) return [];
  return entity.vertices.map(
    (vertex: { x: number; y: number; bulge?: number }): Vertex =>
      vertex.bulge === undefined ? [vertex.x, vertex.y] : [vertex.x, vertex.y, vertex.bulge],
  );
}

interface BrowserPath {
  readonly layer: string;
  readonly points: readonly (readonly [number, number])[];
}

describe("SVG", () => {
  test("comes back from a browser in millimetres: every outline lies on the plan's own within 0.001 mm, and the other way", async () => {
    const browser = await chromium.launch({ executablePath: browserPath(), args: ["--no-sandbox"] });
    try {
      const page = await browser.newPage();
      for (const name of SAMPLED) {
        const plan = examplePlan(name);
        await page.setContent(exportSvg(plan).replace(/^<\?xml.*\?>\n/, ""));
        const paths = (await page.evaluate(WALK_PATHS)) as readonly BrowserPath[];
        for (const layer of exportLayers(plan)) {
          const id = layer.name.toLowerCase().replaceAll(" ", "-");
          const drawn = paths.filter((path) => path.layer === id);
          expect(drawn).toHaveLength(layer.outlines.length);
          layer.outlines.forEach((outline, index) => {
            const points = drawn[index]?.points ?? [];
            expect(points.length).toBeGreaterThan(20);
            if (!outline.isClosed) {
              const [from, to] = outline.vertices as [Vertex, Vertex];
              const [first, last] = [points[0], points.at(-1)] as [
                readonly [number, number],
                readonly [number, number],
              ];
              expect(Math.hypot(first[0] - from[0], first[1] - from[1])).toBeLessThan(SAME_MM);
              expect(Math.hypot(last[0] - to[0], last[1] - to[1])).toBeLessThan(SAME_MM);
              return;
            }
            const ring = ringFromVertices(outline.vertices);
            for (const [x, y] of points)
              expect(nearestOnRing(ring, point(x, y)).distanceMm).toBeLessThan(SAME_MM);
            // Points are walked in equal steps: a corner lies within half of one from the nearest.
            expect(perimeterMm(points)).toBeGreaterThan(0);
            for (const vertex of outline.vertices) {
              const nearest = Math.min(...points.map(([x, y]) => Math.hypot(x - vertex[0], y - vertex[1])));
              expect(nearest).toBeLessThan((perimeterMm(points) / points.length) * 0.6 + SAME_MM);
            }
          });
        }
        const width = await page.evaluate(
          "document.querySelector('svg').width.baseVal.valueInSpecifiedUnits",
        );
        const unit = await page.evaluate("document.querySelector('svg').width.baseVal.unitType");
        expect(unit).toBe(7); // SVG_LENGTHTYPE_MM
        expect(width).toBeCloseTo(
          (await page.evaluate("document.querySelector('svg').viewBox.baseVal.width")) as number,
          3,
        );
      }
    } finally {
      await browser.close();
    }
  });
});

/** Every path in its layer's own millimetres: the numbers of the file, read as the browser walks them. */
const WALK_PATHS = `[...document.querySelectorAll("svg g[id]")].flatMap((layer) =>
  [...layer.querySelectorAll("path")].map((path) => {
    const length = path.getTotalLength();
    const count = 240;
    return {
      layer: layer.id,
      points: Array.from({ length: count + 1 }, (_, i) => {
        const { x, y } = path.getPointAtLength((length * i) / count);
        return [x, y];
      }),
    };
  }))`;

function perimeterMm(points: readonly (readonly [number, number])[]): number {
  return points.slice(1).reduce((sum, [x, y], i) => {
    const [px, py] = points[i] ?? [x, y];
    return sum + Math.hypot(x - px, y - py);
  }, 0);
}

interface ReadStl {
  readonly triangles: readonly (readonly [Corner, Corner, Corner])[];
}
type Corner = readonly [number, number, number];

/** A binary STL file, by its published layout: 80 bytes, a count, 50 bytes a triangle. */
function readStl(bytes: Uint8Array): ReadStl {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const count = view.getUint32(80, true);
  expect(bytes.length).toBe(84 + 50 * count);
  const triangles = Array.from({ length: count }, (_, i) => {
    const corner = (k: number): Corner => {
      const at = 84 + 50 * i + 12 * (k + 1);
      return [view.getFloat32(at, true), view.getFloat32(at + 4, true), view.getFloat32(at + 8, true)];
    };
    return [corner(0), corner(1), corner(2)] as const;
  });
  return { triangles };
}

function volumeMm3({ triangles }: ReadStl): number {
  return triangles.reduce((sum, [[ax, ay, az], [bx, by, bz], [cx, cy, cz]]) => {
    return sum + (ax * (by * cz - bz * cy) - ay * (bx * cz - bz * cx) + az * (bx * cy - by * cx)) / 6;
  }, 0);
}

/** Edges that are not walked once each way: none in a closed solid whose faces all look out. */
function openEdges({ triangles }: ReadStl): number {
  const edges = new Map<string, number>();
  for (const corners of triangles) {
    corners.forEach((corner, k) => {
      const to = corners[(k + 1) % 3] as Corner;
      const [a, b] = [corner.join(" "), to.join(" ")];
      const key = a < b ? `${a}|${b}` : `${b}|${a}`;
      edges.set(key, (edges.get(key) ?? 0) + (a < b ? 1 : -1));
    });
  }
  return [...edges.values()].filter((sum) => sum !== 0).length;
}

function solidOf(solid: Solid): ReadStl {
  return readStl(writeStl(solid));
}

describe("STL", () => {
  test.each(EXAMPLE_NAMES)(
    "%s: moulding and block are closed, face out, and hold what section × length holds",
    (name) => {
      const plan = examplePlan(name);
      const moulding = solidOf(mouldingSolid(plan, 100));
      expect(openEdges(moulding)).toBe(0);
      const wanted = areaMm2(ringFromVertices(plan.section)) * 100;
      expect(Math.abs(volumeMm3(moulding) - wanted) / wanted).toBeLessThan(0.001);
      const block = solidOf(sandingBlockSolid(plan, 80));
      expect(openEdges(block)).toBe(0);
      expect(volumeMm3(block)).toBeGreaterThan(0);
    },
  );

  test("the block keeps its allowance off the face, nowhere more than the allowance round an arris", () => {
    const plan = examplePlan("cornice");
    const section = ringFromVertices(plan.section);
    const corners = solidOf(sandingBlockSolid(plan, 80)).triangles.flat();
    const top = Math.max(...corners.map(([, y]) => y));
    const below = corners.filter(([, y]) => y < top - 1);
    for (const [x, y] of below) expect(isClear(section, x, y, 0.5)).toBe(true);
    const nearest = below.map(([x, y]) => nearestOnRing(section, point(x, y)).distanceMm);
    expect(Math.min(...nearest)).toBeCloseTo(0.5, 2);
  });

  test("the gauge has a tongue as long as each depth", () => {
    const plan = examplePlan("cornice");
    const depths = gaugeDepths(plan);
    expect(depths.length).toBeGreaterThan(2);
    const gauge = depthGaugeSolid(plan);
    if (!gauge.ok) throw new Error(gauge.trouble.code);
    const read = solidOf(gauge.value);
    expect(openEdges(read)).toBe(0);
    const ends = new Set(read.triangles.flat().map(([, y]) => Math.round(-y * 1000) / 1000));
    for (const depth of depths) expect([...ends].some((end) => Math.abs(end - depth) < SAME_MM)).toBe(true);
  });

  test("a plan without depths has no gauge, and says so", () => {
    const plan = { ...examplePlan("cornice"), marks: [] };
    expect(depthGaugeSolid(plan)).toMatchObject({ ok: false, trouble: { code: "sheet-depths-missing" } });
  });
});

function isClear(section: Ring, x: number, y: number, allowanceMm: number): boolean {
  const at = point(x, y);
  return insideRing(section, at) === "out" && nearestOnRing(section, at).distanceMm > allowanceMm - 0.01;
}
