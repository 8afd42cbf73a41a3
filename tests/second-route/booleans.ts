/**
 * Union and difference by polygon-clipping, the tests' second opinion.
 *
 * The library throws now and then on nearly coincident outlines ("Unable to complete output ring"), and an answer
 * need not be right because none was thrown. So both operands are turned by an odd angle and set on a fine grid
 * before each try, and the answer is believed only if the areas agree: |A| + |B| = |A ∪ B| + |A ∩ B| for a union,
 * |A| = |A − B| + |A ∩ B| for a difference. Each try takes another angle and a coarser grid. A turn moves nothing
 * by more than 1e-12 mm here and the coarsest grid by 1e-6 mm, far below the flattening.
 */
import polygonClipping, { type MultiPolygon } from "polygon-clipping";
import { type FlatRegion, signedAreaMm2, turnedBy } from "./flat.ts";
import type { Xy } from "./plan-json.ts";

/** Odd angles, degrees, each with the grid of its try, mm; the first try leaves everything as it stands. */
const TRIES: readonly (readonly [number, number])[] = [
  [0, 0],
  [17.3, 1e-9],
  [-31.7, 1e-8],
  [73.9, 1e-8],
  [5.1, 1e-7],
  [-58.2, 1e-7],
  [41.6, 1e-6],
];

/** By how much the areas of one operation may fail to add up, mm². */
const ADDS_UP_MM2 = 1e-3;

export class NoAnswer extends Error {}

export function areaMm2(region: MultiPolygon): number {
  let area = 0;
  for (const polygon of region)
    polygon.forEach((outline, i) => {
      const size = Math.abs(signedAreaMm2(outline as Xy[]));
      area += i === 0 ? size : -size;
    });
  return area;
}

/**
 * All outlines of a region together; even-odd, so holes need no mark. The library repeats the first point. Hairs are
 * left off: where two sides that are meant to be one miss by rounding, a fin without width stands between them, and a
 * plane let down would be stopped by it.
 */
export function outlinesOf(region: MultiPolygon): FlatRegion {
  return region
    .flatMap((polygon) => polygon.map((outline) => withoutHairs(outline.slice(0, -1) as Xy[])))
    .filter((outline) => outline.length > 2);
}

/** Width under which a fin is a hair, mm: a few roundings of a pose, far below the flattening. */
const HAIR_MM = 1e-5;

function withoutHairs(outline: readonly Xy[]): Xy[] {
  let points = [...outline];
  for (;;) {
    const kept: Xy[] = [];
    points.forEach((p, i) => {
      const before = kept[kept.length - 1] ?? points[points.length - 1];
      const after = points[(i + 1) % points.length];
      if (apart(before, p) >= HAIR_MM && !isHairTip(before, p, after)) kept.push(p);
    });
    // A corner left off may lay bare the next one of the same hair.
    if (kept.length === points.length || kept.length < 3) return kept;
    points = kept;
  }
}

/** Whether the outline turns back on itself at b, to within a hair's width. */
function isHairTip(a: Xy, b: Xy, c: Xy): boolean {
  const [ux, uy] = [b[0] - a[0], b[1] - a[1]];
  const [vx, vy] = [c[0] - b[0], c[1] - b[1]];
  if (ux * vx + uy * vy >= 0) return false;
  return Math.abs(ux * vy - uy * vx) < HAIR_MM * Math.max(Math.hypot(ux, uy), Math.hypot(vx, vy));
}

function apart(a: Xy, b: Xy): number {
  return Math.hypot(a[0] - b[0], a[1] - b[1]);
}

export function regionOf(outlines: FlatRegion): MultiPolygon {
  return outlines.map((outline) => [outline.map(([x, y]): [number, number] => [x, y])]);
}

/** `a` without `b`. */
export function without(a: MultiPolygon, b: MultiPolygon): MultiPolygon {
  return tried(a, b, (x, y) => {
    const left = polygonClipping.difference(x, y);
    const shared = polygonClipping.intersection(x, y);
    return { answer: left, off: areaMm2(x) - areaMm2(left) - areaMm2(shared) };
  });
}

/** Everything in any of the regions, joined two and two so that every join is of things of like size. */
export function together(regions: readonly MultiPolygon[]): MultiPolygon {
  if (regions.length === 0) return [];
  let round = [...regions];
  while (round.length > 1) {
    const joined: MultiPolygon[] = [];
    for (let i = 0; i < round.length; i += 2)
      joined.push(i + 1 < round.length ? joinedPair(round[i], round[i + 1]) : round[i]);
    round = joined;
  }
  return round[0];
}

function joinedPair(a: MultiPolygon, b: MultiPolygon): MultiPolygon {
  return tried(a, b, (x, y) => {
    const all = polygonClipping.union(x, y);
    const shared = polygonClipping.intersection(x, y);
    return { answer: all, off: areaMm2(x) + areaMm2(y) - areaMm2(all) - areaMm2(shared) };
  });
}

interface Try {
  readonly answer: MultiPolygon;
  readonly off: number;
}

function tried(
  a: MultiPolygon,
  b: MultiPolygon,
  work: (a: MultiPolygon, b: MultiPolygon) => Try,
): MultiPolygon {
  const said: string[] = [];
  for (const [deg, gridMm] of TRIES) {
    try {
      const { answer, off } = work(set(a, deg, gridMm), set(b, deg, gridMm));
      if (Math.abs(off) <= ADDS_UP_MM2) return set(answer, -deg, 0);
      said.push(`areas are off by ${off}`);
    } catch (error) {
      said.push(error instanceof Error ? error.message : String(error));
    }
  }
  throw new NoAnswer(`polygon-clipping gave no answer in ${TRIES.length} tries: ${said.join("; ")}`);
}

function set(region: MultiPolygon, deg: number, gridMm: number): MultiPolygon {
  if (deg === 0 && gridMm === 0) return region;
  const onGrid = (value: number) => (gridMm > 0 ? Math.round(value / gridMm) * gridMm : value);
  return region.map((polygon) =>
    polygon.map((outline) =>
      outline.map((p): [number, number] => {
        const [x, y] = turnedBy(deg, p);
        return [onGrid(x), onGrid(y)];
      }),
    ),
  );
}
