/**
 * Area in which two regions differ, by upright slabs: no polygon library, so nothing that could throw, and a check on
 * the one that is used for cutting.
 *
 * Between two neighbouring vertex abscissas every edge is a straight run, so each region is a set of trapezoids there.
 * Where the two regions' edges cross inside a slab the length of the difference has a kink; three Gauss places
 * then miss by a share of a sliver, far below the agreement asked for.
 */
import type { FlatRegion } from "./flat.ts";

interface Edge {
  readonly lowX: number;
  readonly highX: number;
  readonly y: (x: number) => number;
}

function edgesOf(region: FlatRegion): Edge[] {
  const edges: Edge[] = [];
  for (const outline of region)
    for (let i = 0; i < outline.length; i++) {
      const [ax, ay] = outline[i];
      const [bx, by] = outline[(i + 1) % outline.length];
      if (ax === bx) continue;
      const slope = (by - ay) / (bx - ax);
      const y = ax < bx ? (x: number) => ay + (x - ax) * slope : (x: number) => by + (x - bx) * slope;
      edges.push({ lowX: Math.min(ax, bx), highX: Math.max(ax, bx), y });
    }
  return edges.sort((a, b) => a.lowX - b.lowX);
}

/** Places and weights of three-point Gauss quadrature on 0 … 1. */
const GAUSS: readonly (readonly [number, number])[] = [
  [0.5 - Math.sqrt(0.15), 5 / 18],
  [0.5, 8 / 18],
  [0.5 + Math.sqrt(0.15), 5 / 18],
];

/** Area of what lies in exactly one of the two regions, mm². */
export function differenceAreaMm2(one: FlatRegion, other: FlatRegion): number {
  const sides = [edgesOf(one), edgesOf(other)] as const;
  const stops = [...new Set([...one, ...other].flatMap((outline) => outline.map(([x]) => x)))].sort(
    (a, b) => a - b,
  );
  const next = [0, 0];
  const active: [Edge[], Edge[]] = [[], []];
  let area = 0;
  for (let i = 0; i + 1 < stops.length; i++) {
    const from = stops[i];
    const to = stops[i + 1];
    for (const s of [0, 1] as const) {
      active[s] = active[s].filter((edge) => edge.highX > from);
      while (next[s] < sides[s].length && sides[s][next[s]].lowX <= from) {
        const edge = sides[s][next[s]];
        if (edge.highX > from) active[s].push(edge);
        next[s]++;
      }
    }
    for (const [t, weight] of GAUSS) {
      const x = from + t * (to - from);
      area += weight * (to - from) * lengthInOne(active[0], active[1], x);
    }
  }
  return area;
}

/** Along an upright line: by the even-odd rule a place lies in exactly one region between the 1st and 2nd, 3rd and 4th … stop of both together. */
function lengthInOne(one: readonly Edge[], other: readonly Edge[], x: number): number {
  const ys = [...one, ...other].map((edge) => edge.y(x)).sort((a, b) => a - b);
  let length = 0;
  for (let i = 0; i + 1 < ys.length; i += 2) length += ys[i + 1] - ys[i];
  return length;
}
