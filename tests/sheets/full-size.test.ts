/** What lies on wood is as large as it says: held against the paper that poppler prints. */
import { beforeAll, describe, expect, test } from "vitest";
import { extentsOf, flattenPiece, ringFromVertices } from "../../packages/core/src/curve/index.ts";
import type { Plan } from "../../packages/core/src/cutting/index.ts";
import {
  type Group,
  type Item,
  PAPER_NAMES,
  PAPERS,
  type Page,
  type PaperName,
} from "../../packages/core/src/sheets/index.ts";
import { writePdf } from "../../packages/pdf/src/index.ts";
import { nodeFonts } from "../../packages/pdf/src/node-fonts.ts";
import { distanceMm, pathsOf } from "./pdf-paths.ts";
import { examplePlan, pagesOf } from "./plans.ts";
import { type Crop, darkMiddles, rasterOf, readPdf } from "./tools.ts";

const DOTS = 600;
const DOTS_PER_MM = DOTS / 25.4;
const POINTS_PER_MM = 72 / 25.4;

async function pdfOf(pages: readonly Page[]): Promise<Uint8Array> {
  return writePdf(pages, { title: "Held against the ruler", fonts: await nodeFonts() });
}

function groupOf(items: readonly Item[], role: string): Group | null {
  for (const item of items) {
    if (item.kind !== "group") continue;
    if (item.role === role) return item;
    const inner = groupOf(item.items, role);
    if (inner !== null)
      return { ...inner, moveMm: [inner.moveMm[0] + item.moveMm[0], inner.moveMm[1] + item.moveMm[1]] };
  }
  return null;
}

/** Where a bar begins on the printed page, mm, from the drawing: its first stroke is the bar itself. */
function barStart(page: Page, role: string): readonly [number, number] {
  const bar = groupOf(page.items, role);
  const line = bar?.items[0];
  if (bar === null || line?.kind !== "stroke") throw new Error(`no ${role}`);
  return [line.path.start[0] + bar.moveMm[0], line.path.start[1] + bar.moveMm[1]];
}

interface Printer {
  /** What it makes of 100 mm. */
  readonly acrossMm: number;
  readonly upMm: number;
}

/**
 * Length from the bar's 0 to its 100 on paper, mm, as a printer of this error prints the page: looked for in a strip
 * just inside the long ticks.
 */
function printedBarMm(pdf: Uint8Array, page: Page, role: string, printer: Printer): number {
  const [x, y] = barStart(page, role);
  const scale = [printer.acrossMm / 100, printer.upMm / 100] as const;
  const stretch = page.stretch ?? { acrossRatio: 1, upRatio: 1 };
  const dots = [DOTS * scale[0], DOTS * scale[1]] as const;
  // Pixels of paper that really comes out: 600 to the inch whatever the printer's error.
  const perMm = [
    DOTS_PER_MM * scale[0] * stretch.acrossRatio,
    DOTS_PER_MM * scale[1] * stretch.upRatio,
  ] as const;
  const isAcross = role.endsWith("across");
  // Long ticks reach 2.8 mm from the bar, short ones 1.4 mm: the strip lies between.
  const crop: Crop = isAcross
    ? strip(perMm, [x - 3, y - 2.2], [110, 0.4])
    : strip(perMm, [x + 1.8, y - 107], [0.4, 110]);
  const raster = rasterOf(pdf, 1, dots, crop);
  const middles = darkMiddles(raster, isAcross ? "row" : "column", 2);
  const places = isAcross ? middles : [...middles].reverse();
  const [zero, , hundred] = places;
  if (zero === undefined || hundred === undefined) throw new Error("the ticks are not there");
  return Math.abs(hundred - zero) / DOTS_PER_MM;
}

function strip(
  perMm: readonly [number, number],
  at: readonly [number, number],
  size: readonly [number, number],
): Crop {
  return {
    x: Math.round(at[0] * perMm[0]),
    y: Math.round(at[1] * perMm[1]),
    width: Math.round(size[0] * perMm[0]),
    height: Math.round(size[1] * perMm[1]),
  };
}

const TRUE: Printer = { acrossMm: 100, upMm: 100 };

describe("check bars", () => {
  test.each(PAPER_NAMES)("0 to 100 prints as 100 mm both ways on %s", async (paper: PaperName) => {
    const pages = pagesOf(examplePlan("cavetto"), { unit: "mm", kinds: ["ends"], paper });
    const [page] = pages;
    if (page === undefined) throw new Error("no page");
    const pdf = await pdfOf(pages);
    expect(Math.abs(printedBarMm(pdf, page, "check bar across", TRUE) - 100)).toBeLessThan(0.1);
    expect(Math.abs(printedBarMm(pdf, page, "check bar up", TRUE) - 100)).toBeLessThan(0.1);
    const info = readPdf("pdfinfo", pdf, []).toString();
    const [, width, height] = /Page size:\s+([\d.]+) x ([\d.]+)/.exec(info) ?? [];
    expect(Math.abs(Number(width) / POINTS_PER_MM - PAPERS[paper].widthMm)).toBeLessThan(0.1);
    expect(Math.abs(Number(height) / POINTS_PER_MM - PAPERS[paper].heightMm)).toBeLessThan(0.1);
  });

  test("a sheet made for a printer's error comes out true on that printer, and is out on a true one", async () => {
    const printer: Printer = { acrossMm: 100.4, upMm: 98.9 };
    const pages = pagesOf(examplePlan("cavetto"), { unit: "mm", kinds: ["ends"], made: printer });
    const [page] = pages;
    if (page === undefined) throw new Error("no page");
    const pdf = await pdfOf(pages);
    expect(Math.abs(printedBarMm(pdf, page, "check bar across", printer) - 100)).toBeLessThan(0.1);
    expect(Math.abs(printedBarMm(pdf, page, "check bar up", printer) - 100)).toBeLessThan(0.1);
    expect(printedBarMm(pdf, page, "check bar across", TRUE)).toBeCloseTo(100 / 1.004, 1);
    expect(printedBarMm(pdf, page, "check bar up", TRUE)).toBeCloseTo(100 / 0.989, 1);
  });
});

describe("outlines", () => {
  test.each(["cornice", "barometer-frame", "glazing-bar"])(
    "%s: the template passes within 0.01 mm of the plan at 20 points, at both ends",
    async (name) => {
      const plan = examplePlan(name);
      const pages = pagesOf(plan, { unit: "mm", kinds: ["ends"] });
      const paths = await pathsOf(await pdfOf(pages), 1);
      const { minX, maxX, maxY } = extentsOf(ringFromVertices(plan.stick));
      // The stick's outline, a box of its size, tells where a template lies; every other point follows from the plan.
      const sticks = paths.filter((path) => {
        const xs = path.map(([x]) => x);
        const ys = path.map(([, y]) => y);
        return (
          path.length <= plan.stick.length + 2 &&
          Math.abs(Math.max(...xs) - Math.min(...xs) - (maxX - minX)) < 0.001 &&
          Math.abs(Math.max(...ys) - Math.min(...ys) - maxY) < 0.001
        );
      });
      expect(sticks).toHaveLength(2);
      const wanted = ringFromVertices(plan.section).pieces.flatMap((piece) => flattenPiece(piece, 0.00001));
      for (const [end, stick] of sticks.entries()) {
        const left = Math.min(...stick.map(([x]) => x));
        const top = Math.min(...stick.map(([, y]) => y));
        for (let i = 0; i < 20; i++) {
          const point = wanted[Math.floor((wanted.length * i) / 20)];
          if (point === undefined) throw new Error("no point");
          const across = end === 0 ? point.x - minX : maxX - point.x;
          const place = [left + across, top + maxY - point.y] as const;
          const nearest = Math.min(
            ...paths
              .filter((path) => path.length > plan.section.length)
              .map((path) => distanceMm(path, ...place)),
          );
          expect(nearest).toBeLessThan(0.01);
        }
      }
    },
  );

  test("the check itself sees a template that is a fiftieth of a millimetre out", () => {
    expect(
      distanceMm(
        [
          [0, 0],
          [10, 0],
        ],
        5,
        0.02,
      ),
    ).toBeCloseTo(0.02, 9);
  });
});

/** A skirting of the harbour office, wider than any page: a cavetto between two flats, and no cut. */
function wideBoard(widthMm: number): Plan {
  const plan = examplePlan("cavetto");
  const bulge = -Math.tan(Math.PI / 8);
  // The cavetto runs from the lower flat up to the upper one.
  const outline = [
    [0, 0],
    [widthMm, 0],
    [widthMm, 12],
    [widthMm - 60, 12, bulge],
    [widthMm - 80, 32],
    [0, 32],
  ] as const;
  return {
    ...plan,
    name: "Harbour office: skirting",
    stick: [
      [0, 0],
      [widthMm, 0],
      [widthMm, 32],
      [0, 32],
    ],
    section: outline,
    planned: outline,
    cuts: [],
    marks: [],
    parts: [],
    uncut: [],
    finish: { ...plan.finish, joins: [] },
  };
}

describe("a section larger than the page", () => {
  let pages: readonly Page[] = [];
  let pdf = new Uint8Array();
  beforeAll(async () => {
    pages = pagesOf(wideBoard(420), { unit: "mm", kinds: ["ends"] });
    pdf = new Uint8Array(await pdfOf(pages));
  });

  test("is pieced together from sheets with a map", () => {
    const tiles = pages.filter((page) => groupOf(page.items, "map") !== null);
    expect(tiles.length).toBeGreaterThanOrEqual(3);
    expect(tiles.every((page) => groupOf(page.items, "check bar across") !== null)).toBe(true);
  });

  test("neighbouring sheets agree within 0.1 mm: their crosses, and the outline between them", () => {
    const tiles = pages.filter((page) => groupOf(page.items, "map") !== null).slice(0, 3);
    let compared = 0;
    for (const [index, page] of tiles.entries()) {
      const next = tiles[index + 1];
      if (next === undefined) break;
      const shift = figureAt(next) - figureAt(page);
      for (const [x, y] of crossesIn(page)) {
        const beside = x + shift;
        const figure = groupOf(next.items, "figure");
        if (figure?.window === undefined || !isInWindow(next, beside, y)) continue;
        const here = crossMiddle(pdf, pages.indexOf(page) + 1, x, y);
        const there = crossMiddle(pdf, pages.indexOf(next) + 1, beside, y);
        // Both crosses stand for one place of the figure.
        expect(Math.abs(here[0] + shift - there[0])).toBeLessThan(0.1);
        expect(Math.abs(here[1] - there[1])).toBeLessThan(0.1);
        compared += 1;
      }
    }
    expect(compared).toBeGreaterThanOrEqual(4);
  });
});

/** Where the figure's own left side lies on the page's paper, mm. */
function figureAt(page: Page): number {
  return groupOf(page.items, "figure")?.moveMm[0] ?? Number.NaN;
}

function isInWindow(page: Page, x: number, y: number): boolean {
  const figure = groupOf(page.items, "figure");
  const window = figure?.window;
  if (figure === null || window === undefined) return false;
  const [fx, fy] = [x - figure.moveMm[0], y - figure.moveMm[1]];
  return fx > window.minX + 5 && fx < window.maxX - 5 && fy > window.minY + 5 && fy < window.maxY - 5;
}

/** Middles of the page's registration marks on its paper, mm. */
function crossesIn(page: Page): readonly (readonly [number, number])[] {
  const figure = groupOf(page.items, "figure");
  if (figure === null) return [];
  return figure.items
    .filter((item): item is Group => item.kind === "group" && item.role === "registration mark")
    .flatMap((mark) => {
      const [level, upright] = mark.items;
      if (level?.kind !== "stroke" || upright?.kind !== "stroke") return [];
      return [[upright.path.start[0] + figure.moveMm[0], level.path.start[1] + figure.moveMm[1]] as const];
    })
    .filter(([x, y]) => isInWindow(page, x, y));
}

/** Where a cross stands on the printed page, mm, found by its own lines 3 mm off its middle. */
function crossMiddle(pdf: Uint8Array, page: number, x: number, y: number): readonly [number, number] {
  const halfMm = 4;
  const crop: Crop = strip([DOTS_PER_MM, DOTS_PER_MM], [x - halfMm, y - halfMm], [2 * halfMm, 2 * halfMm]);
  const raster = rasterOf(pdf, page, [DOTS, DOTS], crop);
  const aside = Math.round(raster.height * 0.12);
  const [upright] = nearestTo(darkMiddles(raster, "row", aside), raster.width / 2);
  const [level] = nearestTo(darkMiddles(raster, "column", aside), raster.height / 2);
  return [(crop.x + (upright ?? Number.NaN)) / DOTS_PER_MM, (crop.y + (level ?? Number.NaN)) / DOTS_PER_MM];
}

function nearestTo(values: readonly number[], wanted: number): readonly number[] {
  return [...values].sort((a, b) => Math.abs(a - wanted) - Math.abs(b - wanted));
}
