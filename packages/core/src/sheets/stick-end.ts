/** The stick's end as a cut finds and leaves it: what stays, what goes, what still will go later. */
import type { Vertex } from "../curve/index.ts";
import type { Plan, PlanCut } from "../cutting/index.ts";
import { fill, group, type Item, openPath, type PaperPoint, stroke } from "./drawing.ts";
import { type Box, boxOf, flatPoints, isInside, pathOf } from "./flat-path.ts";
import { growthRings, wasteLines } from "./hatch.ts";
import { FAINT_INK, WASTE_PATTERN, WASTE_TINT, WOOD_TINT } from "./palette.ts";
import { type StickView, toPaper, turnedBox } from "./stick-view.ts";

type Polygons = readonly (readonly PaperPoint[])[];

/** The section before a cut: the stick, or what the cut before left. */
export function ringsBefore(plan: Plan, cut: PlanCut): readonly (readonly Vertex[])[] {
  const index = plan.cuts.indexOf(cut);
  return plan.cuts[index - 1]?.after ?? [plan.stick];
}

export function polygonsOnPaper(view: StickView, rings: readonly (readonly Vertex[])[]): Polygons {
  return rings.map((ring) => flatPoints(pathOf(ring, (point) => toPaper(view, point), "ring")));
}

/** Wood, waste, and the wanted section dashed where it still lies inside the wood. */
export function stickEnd(plan: Plan, cut: PlanCut, view: StickView): readonly Item[] {
  const place = (point: PaperPoint): PaperPoint => toPaper(view, point);
  const before = ringsBefore(plan, cut).map((ring) => pathOf(ring, place, "ring"));
  const after = cut.after.map((ring) => pathOf(ring, place, "ring"));
  const afterPolygons = after.map(flatPoints);
  return [
    group("waste", [
      fill(before, WASTE_TINT),
      ...wasteLines(before.map(flatPoints), afterPolygons),
      ...before.map((path) => stroke(path, { colour: WASTE_PATTERN })),
    ]),
    group("wood", [fill(after, WOOD_TINT), ...growthRings(afterPolygons, pithOf(plan, view))]),
    group("goes later", [stroke(pathOf(plan.section, place, "ring"), { line: "dashed" })]),
    group(
      "outline",
      after.map((path) => stroke(path, { weight: "wide" })),
    ),
  ];
}

/** The finished section in its stick: what `stickEnd` comes to after the last cut. */
export function finishedEnd(plan: Plan, view: StickView): readonly Item[] {
  const place = (point: PaperPoint): PaperPoint => toPaper(view, point);
  const section = pathOf(plan.section, place, "ring");
  return [
    group("stick", [stroke(pathOf(plan.stick, place, "ring"), { line: "dashed" })]),
    group("wood", [fill([section], WOOD_TINT), ...growthRings([flatPoints(section)], pithOf(plan, view))]),
    group("outline", [stroke(section, { weight: "wide" })]),
  ];
}

/** The whole stick, the section wanted of it dashed. */
export function uncutEnd(plan: Plan, view: StickView): readonly Item[] {
  const place = (point: PaperPoint): PaperPoint => toPaper(view, point);
  const stick = pathOf(plan.stick, place, "ring");
  return [
    group("wood", [fill([stick], WOOD_TINT), ...growthRings([flatPoints(stick)], pithOf(plan, view))]),
    group("wanted", [stroke(pathOf(plan.section, place, "ring"), { line: "dashed" })]),
    group("outline", [stroke(stick, { weight: "wide" })]),
  ];
}

/** A tree's middle somewhat below and to the right of the stick, so that the rings lie as in a flat-sawn board. */
function pithOf(plan: Plan, view: StickView): PaperPoint {
  const box = turnedBox(plan.stick, 0);
  const widthMm = box.maxX - box.minX;
  const heightMm = box.maxY - box.minY;
  return toPaper(view, [box.minX + 0.68 * widthMm, -box.maxY - 0.9 * heightMm - 0.3 * widthMm]);
}

/** The part of a cut that goes, as a box on paper, and the middle of it; null where nothing visible goes. */
export interface WasteExtent {
  readonly box: Box;
  /** Longest way through the waste along `axis`: from the wood that stays up to the old surface. */
  readonly deepest: { readonly bottom: PaperPoint; readonly top: PaperPoint };
  /** A way as deep as that, or nearly, beside the wall the cut leaves; the deepest where it leaves none, or two. */
  readonly atWall: { readonly bottom: PaperPoint; readonly top: PaperPoint };
}

const SAMPLE_LINES = 240;
/** Below this, on paper, nothing can be seen to go. */
const LEAST_SEEN_MM = 0.02;

/** Samples lines along the axis through the waste; good to about a 240th of its width, for pictures only. */
export function wasteExtent(plan: Plan, cut: PlanCut, view: StickView, axis: PaperPoint): WasteExtent | null {
  const before = polygonsOnPaper(view, ringsBefore(plan, cut));
  const after = polygonsOnPaper(view, cut.after);
  const aside: PaperPoint = [-axis[1], axis[0]];
  const edges = [...edgesOf(before), ...edgesOf(after)];
  const acrossAll = before.flat().map((point) => point[0] * aside[0] + point[1] * aside[1]);
  if (acrossAll.length === 0) return null;
  const lowest = Math.min(...acrossAll);
  const widthMm = Math.max(...acrossAll) - lowest;
  const corners = [...before.flat(), ...after.flat()].flatMap((point) => {
    const across = point[0] * aside[0] + point[1] * aside[1];
    return [across - LEAST_SEEN_MM / 2, across + LEAST_SEEN_MM / 2];
  });
  const raster = Array.from(
    { length: SAMPLE_LINES },
    (_, i) => lowest + (widthMm * (i + 0.5)) / SAMPLE_LINES,
  );
  const found: PaperPoint[] = [];
  const ways: Way[] = [];
  let deepest: WasteExtent["deepest"] | null = null;
  let depthMm = LEAST_SEEN_MM;
  for (const across of [...raster, ...corners]) {
    const at = (along: number): PaperPoint => [
      aside[0] * across + axis[0] * along,
      aside[1] * across + axis[1] * along,
    ];
    const alongs = edges.flatMap(([a, b]) => crossing(a, b, aside, axis, across)).sort((p, q) => p - q);
    for (let i = 1; i < alongs.length; i++) {
      const low = alongs[i - 1] as number;
      const high = alongs[i] as number;
      if (high - low < LEAST_SEEN_MM) continue;
      const middle = at((low + high) / 2);
      if (!isInside(before, middle) || isInside(after, middle)) continue;
      found.push(at(low), at(high));
      ways.push({ across, bottom: at(low), top: at(high), depthMm: high - low });
      if (high - low > depthMm + LEAST_SEEN_MM) {
        depthMm = high - low;
        deepest = { bottom: at(low), top: at(high) };
      }
    }
  }
  if (deepest === null) return null;
  const isWood = (point: PaperPoint): boolean => isInside(after, point);
  return { box: boxOf(found), deepest, atWall: besideWall(ways, aside, isWood) ?? deepest };
}

interface Way {
  readonly across: number;
  readonly bottom: PaperPoint;
  readonly top: PaperPoint;
  readonly depthMm: number;
}

/** Share of the greatest depth that a way has to have to be as deep, for pictures. */
const AS_DEEP_RATIO = 0.98;
/** How far beyond the last deep way the wall is looked for, mm on paper. */
const WALL_BESIDE_MM = 0.2;

/** The outermost deep way on the one side where wood stands beside it; null where it does on both or on neither. */
function besideWall(
  ways: readonly Way[],
  aside: PaperPoint,
  isWood: (point: PaperPoint) => boolean,
): Way | null {
  const mostMm = Math.max(...ways.map((way) => way.depthMm));
  const deep = ways
    .filter((way) => way.depthMm >= mostMm * AS_DEEP_RATIO)
    .sort((a, b) => a.across - b.across);
  const walled = ([-1, 1] as const).flatMap((sign) => {
    const way = sign < 0 ? deep[0] : deep[deep.length - 1];
    if (way === undefined) return [];
    const beside: PaperPoint = [
      (way.bottom[0] + way.top[0]) / 2 + sign * aside[0] * WALL_BESIDE_MM,
      (way.bottom[1] + way.top[1]) / 2 + sign * aside[1] * WALL_BESIDE_MM,
    ];
    return isWood(beside) ? [way] : [];
  });
  const [only] = walled;
  return walled.length === 1 && only !== undefined ? only : null;
}

function crossing(
  a: PaperPoint,
  b: PaperPoint,
  aside: PaperPoint,
  axis: PaperPoint,
  across: number,
): readonly number[] {
  const fromA = a[0] * aside[0] + a[1] * aside[1] - across;
  const fromB = b[0] * aside[0] + b[1] * aside[1] - across;
  if (fromA > 0 === fromB > 0) return [];
  const ratio = fromA / (fromA - fromB);
  const x = a[0] + (b[0] - a[0]) * ratio;
  const y = a[1] + (b[1] - a[1]) * ratio;
  return [x * axis[0] + y * axis[1]];
}

function edgesOf(polygons: Polygons): readonly (readonly [PaperPoint, PaperPoint])[] {
  return polygons.flatMap((polygon) =>
    polygon.map((to, i) => [polygon[(i + polygon.length - 1) % polygon.length] as PaperPoint, to] as const),
  );
}

/** The highest wood on the paper at x, or null beside it. */
export function surfaceY(polygons: Polygons, x: number): number | null {
  const ys = edgesOf(polygons).flatMap(([a, b]) => {
    if (a[0] > x === b[0] > x) return [];
    return [a[1] + ((x - a[0]) / (b[0] - a[0])) * (b[1] - a[1])];
  });
  return ys.length === 0 ? null : Math.min(...ys);
}

/** The bench: a narrow line with short strokes beneath it at either side of the stick. */
export function benchLine(fromX: number, toX: number, y: number): Item {
  const items: Item[] = [
    stroke(
      openPath([
        [fromX, y],
        [toX, y],
      ]),
    ),
  ];
  for (let x = fromX + 1; x <= toX; x += 2.2) {
    if (x > fromX + 12 && x < toX - 12) continue;
    items.push(
      stroke(
        openPath([
          [x, y],
          [x - 1.5, y + 1.5],
        ]),
        { weight: "hatch", colour: FAINT_INK },
      ),
    );
  }
  return group("bench", items);
}
