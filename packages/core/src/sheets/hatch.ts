/**
 * The two patterns: cut end grain, hatched sparsely along growth rings, and waste, hatched at 45° across it.
 * Lines are cut off here by geometry, so that every writer shows the same.
 */
import {
  circlePath,
  closedPath,
  fill,
  type Item,
  openPath,
  type PaperPoint,
  type Path,
  stroke,
} from "./drawing.ts";
import { boxOf, clipPolygon, clipRun, type Disc, flatPoints, isInside } from "./flat-path.ts";
import { WASTE_PATTERN, WOOD_GRAIN } from "./palette.ts";

type Polygons = readonly (readonly PaperPoint[])[];

/** Distance of growth rings on paper, and the narrower step of late wood after each. */
const RING_SPACING_MM = 4.2;
const LATE_WOOD_RATIO = 0.28;
const WASTE_SPACING_MM = 1.5;
/** Runs shorter than this on paper are dust, not hatch. */
const LEAST_RUN_MM = 0.5;

/** Arcs about the pith, inside the polygons. `pith` lies on paper, outside the wood as a rule. */
export function growthRings(polygons: Polygons, pith: PaperPoint): readonly Item[] {
  const points = polygons.flat();
  const distances = points.map((point) => Math.hypot(point[0] - pith[0], point[1] - pith[1]));
  const farthest = Math.max(0, ...distances);
  const items: Item[] = [];
  for (let ring = 1; ring * RING_SPACING_MM < farthest + RING_SPACING_MM; ring++) {
    for (const radiusMm of [ring * RING_SPACING_MM, (ring + LATE_WOOD_RATIO) * RING_SPACING_MM]) {
      items.push(...ringRuns(polygons, { centre: pith, radiusMm }));
    }
  }
  return items;
}

function ringRuns(polygons: Polygons, circle: Disc): readonly Item[] {
  const { centre, radiusMm } = circle;
  const anglesRad = edgesOf(polygons)
    .flatMap(([from, to]) => circleCrossings(from, to, circle))
    .sort((a, b) => a - b);
  const at = (angleRad: number): PaperPoint => [
    centre[0] + radiusMm * Math.cos(angleRad),
    centre[1] + radiusMm * Math.sin(angleRad),
  ];
  return anglesRad.flatMap((startRad, index): Item[] => {
    const isLast = index === anglesRad.length - 1;
    const endRad = isLast ? (anglesRad[0] as number) + 2 * Math.PI : (anglesRad[index + 1] as number);
    const sweepRad = endRad - startRad;
    if (sweepRad * radiusMm < LEAST_RUN_MM || !isInside(polygons, at(startRad + sweepRad / 2))) return [];
    // Growing angles turn clockwise as seen, because paper's y runs down. Two arcs, so that none passes a half circle.
    const bulge = -Math.tan(sweepRad / 8);
    const steps = [
      { to: at(startRad + sweepRad / 2), bulge },
      { to: at(endRad), bulge },
    ];
    const path: Path = { start: at(startRad), steps, closed: false };
    return [stroke(path, { weight: "hatch", colour: WOOD_GRAIN })];
  });
}

function circleCrossings(from: PaperPoint, to: PaperPoint, circle: Disc): readonly number[] {
  const dx = to[0] - from[0];
  const dy = to[1] - from[1];
  const fx = from[0] - circle.centre[0];
  const fy = from[1] - circle.centre[1];
  const a = dx * dx + dy * dy;
  const halfB = fx * dx + fy * dy;
  const discriminant = halfB * halfB - a * (fx * fx + fy * fy - circle.radiusMm * circle.radiusMm);
  if (a === 0 || discriminant <= 0) return [];
  const root = Math.sqrt(discriminant);
  return [(-halfB - root) / a, (-halfB + root) / a]
    .filter((ratio) => ratio >= 0 && ratio < 1)
    .map((ratio) => Math.atan2(fy + dy * ratio, fx + dx * ratio));
}

/** Lines at 45° inside `before` and outside `after`: the wood that goes. */
export function wasteLines(before: Polygons, after: Polygons): readonly Item[] {
  const points = before.flat();
  if (points.length === 0) return [];
  const edges = [...edgesOf(before), ...edgesOf(after)];
  const box = boxOf(points);
  const items: Item[] = [];
  const stepMm = WASTE_SPACING_MM * Math.SQRT2;
  // Lines x + y = sum, on a raster fixed to the paper: turning the page moves no line.
  const first = Math.ceil((box.minX + box.minY) / stepMm);
  const last = Math.floor((box.maxX + box.maxY) / stepMm);
  for (let line = first; line <= last; line++) {
    const sum = line * stepMm;
    const xs = edges.flatMap(([from, to]) => diagonalCrossing(from, to, sum)).sort((a, b) => a - b);
    for (let index = 1; index < xs.length; index++) {
      const fromX = xs[index - 1] as number;
      const toX = xs[index] as number;
      const middle: PaperPoint = [(fromX + toX) / 2, sum - (fromX + toX) / 2];
      if ((toX - fromX) * Math.SQRT2 < LEAST_RUN_MM) continue;
      if (!isInside(before, middle) || isInside(after, middle)) continue;
      const path = openPath([
        [fromX, sum - fromX],
        [toX, sum - toX],
      ]);
      items.push(stroke(path, { weight: "hatch", colour: WASTE_PATTERN }));
    }
  }
  return items;
}

function diagonalCrossing(from: PaperPoint, to: PaperPoint, sum: number): readonly number[] {
  const sumFrom = from[0] + from[1] - sum;
  const sumTo = to[0] + to[1] - sum;
  if (sumFrom > 0 === sumTo > 0) return [];
  return [from[0] + ((to[0] - from[0]) * sumFrom) / (sumFrom - sumTo)];
}

function edgesOf(polygons: Polygons): readonly (readonly [PaperPoint, PaperPoint])[] {
  return polygons.flatMap((polygon) =>
    polygon.map(
      (to, index) => [polygon[(index + polygon.length - 1) % polygon.length] as PaperPoint, to] as const,
    ),
  );
}

/** Strokes and fills cut off at the rim of a disc; lettering is left out. */
export function clipItems(items: readonly Item[], disc: Disc): readonly Item[] {
  return items.flatMap((item) => clipItem(item, disc));
}

function clipItem(item: Item, disc: Disc): readonly Item[] {
  switch (item.kind) {
    case "group": {
      const inner = clipItems(item.items, disc);
      return inner.length === 0 ? [] : [{ ...item, items: inner }];
    }
    case "text":
      return [];
    case "fill": {
      const polygons = item.paths
        .map((path) => clipPolygon(flatPoints(path), disc))
        .filter((p) => p.length > 2);
      return polygons.length === 0 ? [] : [fill(polygons.map(closedPath), item.colour)];
    }
    case "stroke": {
      const points = flatPoints(item.path);
      const run = item.path.closed ? [...points, item.path.start] : points;
      return clipRun(run, disc).map((part) => ({ ...item, path: openPath(part) }));
    }
  }
}

/** The rim itself. */
export function rim(disc: Disc): Item {
  return stroke(circlePath(disc.centre, disc.radiusMm));
}
