/** Flattening, areas and distances, written from the definitions of the file format: bulge = tan(sweep / 4). */
import { CHORD_MM } from "./limits.ts";
import type { BulgedVertex, Xy } from "./plan-json.ts";

/** A closed outline without arcs; first point not repeated. */
export type FlatOutline = readonly Xy[];

/** Outlines taken together by the even-odd rule: outer ones and holes in no particular order. */
export type FlatRegion = readonly FlatOutline[];

export interface ArcOf {
  readonly centre: Xy;
  readonly radiusMm: number;
  /** Signed, anticlockwise positive, radians. */
  readonly sweepRad: number;
  readonly startRad: number;
}

/** Circle of the arc from `a` to `b`. A bulge of tan(s/4) over the chord c gives the radius c / (2 sin(s/2)). */
export function arcOf(a: Xy, b: Xy, bulge: number): ArcOf {
  const sweepRad = 4 * Math.atan(bulge);
  const dx = b[0] - a[0];
  const dy = b[1] - a[1];
  // The centre lies on the chord's left at c/2 · cot(s/2) for an anticlockwise arc, on its right for a clockwise one.
  const offRatio = 0.5 / Math.tan(sweepRad / 2);
  const centre: Xy = [a[0] + dx / 2 - dy * offRatio, a[1] + dy / 2 + dx * offRatio];
  return {
    centre,
    radiusMm: Math.hypot(a[0] - centre[0], a[1] - centre[1]),
    sweepRad,
    startRad: Math.atan2(a[1] - centre[1], a[0] - centre[0]),
  };
}

export function bulgeOf(v: BulgedVertex): number {
  return v[2] ?? 0;
}

/** Points of the arc after its start up to and with its end. */
function arcPoints(a: Xy, b: Xy, bulge: number, chordMm: number): Xy[] {
  const { centre, radiusMm, sweepRad, startRad } = arcOf(a, b, bulge);
  const stepRad = 2 * Math.acos(Math.max(0.5, 1 - chordMm / radiusMm));
  const count = Math.max(1, Math.ceil(Math.abs(sweepRad) / stepRad));
  const points: Xy[] = [];
  for (let i = 1; i < count; i++) {
    const angle = startRad + (sweepRad * i) / count;
    points.push([centre[0] + radiusMm * Math.cos(angle), centre[1] + radiusMm * Math.sin(angle)]);
  }
  points.push([b[0], b[1]]);
  return points;
}

/** An open chain as a run of points. */
export function flatChain(chain: readonly BulgedVertex[], chordMm = CHORD_MM): Xy[] {
  const points: Xy[] = [[chain[0][0], chain[0][1]]];
  for (let i = 0; i + 1 < chain.length; i++) {
    const a: Xy = [chain[i][0], chain[i][1]];
    const b: Xy = [chain[i + 1][0], chain[i + 1][1]];
    const bulge = bulgeOf(chain[i]);
    if (bulge === 0) points.push(b);
    else points.push(...arcPoints(a, b, bulge, chordMm));
  }
  return points;
}

/** A ring as a closed outline. */
export function flatRing(ring: readonly BulgedVertex[], chordMm = CHORD_MM): FlatOutline {
  const points = flatChain([...ring, [ring[0][0], ring[0][1]]], chordMm);
  points.pop();
  return points;
}

/** Signed area by the shoelace sum about the first point, so that far-off outlines lose no digits. */
export function signedAreaMm2(outline: FlatOutline): number {
  const [ox, oy] = outline[0] ?? [0, 0];
  let twice = 0;
  for (let i = 0; i < outline.length; i++) {
    const [ax, ay] = outline[i];
    const [bx, by] = outline[(i + 1) % outline.length];
    twice += (ax - ox) * (by - oy) - (bx - ox) * (ay - oy);
  }
  return twice / 2;
}

export interface Box {
  readonly minX: number;
  readonly minY: number;
  readonly maxX: number;
  readonly maxY: number;
}

export function boxOf(region: FlatRegion): Box {
  let minX = Number.POSITIVE_INFINITY;
  let minY = Number.POSITIVE_INFINITY;
  let maxX = Number.NEGATIVE_INFINITY;
  let maxY = Number.NEGATIVE_INFINITY;
  for (const outline of region)
    for (const [x, y] of outline) {
      minX = Math.min(minX, x);
      minY = Math.min(minY, y);
      maxX = Math.max(maxX, x);
      maxY = Math.max(maxY, y);
    }
  return { minX, minY, maxX, maxY };
}

/** Even-odd test. */
export function isInside(region: FlatRegion, [x, y]: Xy): boolean {
  let inside = false;
  for (const outline of region) {
    let [ax, ay] = outline[outline.length - 1];
    for (const [bx, by] of outline) {
      if (ay > y !== by > y && x < ax + ((y - ay) / (by - ay)) * (bx - ax)) inside = !inside;
      ax = bx;
      ay = by;
    }
  }
  return inside;
}

/** Height of a row of edges in `insideOf`, mm: some dozen edges of a fine arc each. */
const ROW_MM = 0.1;

/** The even-odd test of one region for a great many places: edges lie in rows by height, and only a place's row is asked. */
export function insideOf(region: FlatRegion): (p: Xy) => boolean {
  const { minY, maxY } = boxOf(region);
  const rowAt = (y: number): number => Math.floor((y - minY) / ROW_MM);
  const rows: number[][] = Array.from({ length: Math.max(0, rowAt(maxY)) + 1 }, () => []);
  for (const outline of region) {
    let [ax, ay] = outline[outline.length - 1];
    for (const [bx, by] of outline) {
      if (ay !== by)
        for (let row = rowAt(Math.min(ay, by)); row <= rowAt(Math.max(ay, by)); row++)
          rows[row].push(ax, ay, bx, by);
      ax = bx;
      ay = by;
    }
  }
  return ([x, y]) => {
    const row = rows[rowAt(y)];
    if (row === undefined) return false;
    let inside = false;
    for (let k = 0; k < row.length; k += 4) {
      const [ax, ay, bx, by] = [row[k], row[k + 1], row[k + 2], row[k + 3]];
      if (ay > y !== by > y && x < ax + ((y - ay) / (by - ay)) * (bx - ax)) inside = !inside;
    }
    return inside;
  };
}

function toSegmentMm(x: number, y: number, ax: number, ay: number, bx: number, by: number): number {
  const dx = bx - ax;
  const dy = by - ay;
  const squared = dx * dx + dy * dy;
  const t = squared > 0 ? Math.max(0, Math.min(1, ((x - ax) * dx + (y - ay) * dy) / squared)) : 0;
  return Math.hypot(x - ax - t * dx, y - ay - t * dy);
}

/**
 * Distance from places to the boundary of a region. Neighbouring places are asked one after the other, so the search
 * begins at the edge that was nearest last and ends as soon as it is nearer than `enoughMm`.
 */
export function boundaryDistance(region: FlatRegion, enoughMm: number): (p: Xy) => number {
  const edges: (readonly [number, number, number, number])[] = [];
  for (const outline of region)
    for (let i = 0; i < outline.length; i++) {
      const a = outline[i];
      const b = outline[(i + 1) % outline.length];
      edges.push([a[0], a[1], b[0], b[1]]);
    }
  let last = 0;
  return ([x, y]) => {
    let best = Number.POSITIVE_INFINITY;
    let bestAt = last;
    const count = edges.length;
    for (let k = 0; k < count; k++) {
      // last, last+1, last-1, last+2, …
      const off = k % 2 === 1 ? (k + 1) / 2 : -k / 2;
      const at = (((last + off) % count) + count) % count;
      const [ax, ay, bx, by] = edges[at];
      // A box test spares most roots.
      if (
        Math.min(ax, bx) - x > best ||
        x - Math.max(ax, bx) > best ||
        Math.min(ay, by) - y > best ||
        y - Math.max(ay, by) > best
      )
        continue;
      const d = toSegmentMm(x, y, ax, ay, bx, by);
      if (d < best) {
        best = d;
        bestAt = at;
        if (best <= enoughMm) break;
      }
    }
    last = bestAt;
    return best;
  };
}

/** Places along the boundary of a region, its vertices and between them no further apart than `stepMm`. */
export function* boundaryPlaces(region: FlatRegion, stepMm: number): Generator<Xy> {
  for (const outline of region)
    for (let i = 0; i < outline.length; i++) {
      const [ax, ay] = outline[i];
      const [bx, by] = outline[(i + 1) % outline.length];
      const steps = Math.max(1, Math.ceil(Math.hypot(bx - ax, by - ay) / stepMm));
      for (let k = 0; k < steps; k++) yield [ax + ((bx - ax) * k) / steps, ay + ((by - ay) * k) / steps];
    }
}

/** A point turned by an angle about the origin, degrees anticlockwise. */
export function turnedBy(deg: number, [x, y]: Xy): Xy {
  const angle = (deg * Math.PI) / 180;
  const cos = Math.cos(angle);
  const sin = Math.sin(angle);
  return [x * cos - y * sin, x * sin + y * cos];
}
