/** Booleans of flat regions: the only file that knows the polygon library. */
import {
  Clipper64,
  ClipType,
  FillRule,
  type OutPt,
  type OutRec,
  type Path64,
  type Paths64,
  type Point64,
} from "clipper2-ts";
import {
  BOOLEAN_GRID_MM,
  bug,
  countWork,
  FARTHEST_MM,
  LEAST_EDGE_MM,
  LEAST_RING_MM2,
} from "../measure/index.ts";
import { EdgeBook } from "./edge-book.ts";
import { areApart, flatRingAreaMm2, reversedFlatRing, surrounds } from "./flat-ring.ts";
import { flatRingOf } from "./flatten.ts";
import { cleanRing, withoutLevelSpikes } from "./grid-ring.ts";
import { lineMeetsLine } from "./meets.ts";
import { type NarrowedRing, narrowedTo } from "./narrowed-ring.ts";
import type { FlatRing, Point, Region, Ring } from "./types.ts";

/** The region that holds nothing. */
export const EMPTY_REGION: Region = [];

/** Grid lines per mm. Whole, so that a coordinate read off the grid goes back to the same line. */
const GRID_PER_MM = Math.round(1 / BOOLEAN_GRID_MM);

/** The local origin is a whole multiple of this, mm, so that everything on a bench shares the origin 0. */
const ORIGIN_STEP_MM = 1000;

/**
 * The region inside one or several rings, arcs flattened to `chordTolMm`; each edge carries its piece's source.
 * Rings are joined by their winding: anticlockwise ones add up, clockwise ones inside them are holes.
 */
export function regionOf(shape: Ring | readonly Ring[], chordTolMm: number): Region {
  const rings = "pieces" in shape ? [shape] : shape;
  return settle(rings.map((ring) => flatRingOf(ring, chordTolMm)));
}

/** The region inside a polygon given by its vertices in either direction; every edge gets `source`. */
export function regionOfPolygon(points: readonly Point[], source = 0): Region {
  const count = points.length;
  const xs = new Float64Array(count);
  const ys = new Float64Array(count);
  for (let i = 0; i < count; i++) {
    const p = points[i] as Point;
    xs[i] = p.x;
    ys[i] = p.y;
  }
  return settle([{ xs, ys, sources: new Int32Array(count).fill(source) }]);
}

/** What lies in any of the regions. Edges keep their sources; where edges coincide, the first region's. */
export function union(...regions: readonly Region[]): Region {
  const filled = regions.filter((region) => region.length > 0);
  if (filled.length === 0) return EMPTY_REGION;
  if (filled.length === 1) return filled[0] as Region;
  return booleanOf(ClipType.Union, filled.flat(), []);
}

/** What lies in `a` and not in `b`. Edges keep their sources; where edges coincide, those of `a`. */
export function difference(a: Region, b: Region): Region {
  if (a.length === 0) return EMPTY_REGION;
  if (b.length === 0 || areApart(a, b)) return a;
  return narrowedDifference(a, b) ?? booleanOf(ClipType.Difference, a, b);
}

/** What lies in both. Edges keep their sources; where edges coincide, those of `a`. */
export function intersection(a: Region, b: Region): Region {
  if (a.length === 0 || b.length === 0 || areApart(a, b)) return EMPTY_REGION;
  return booleanOf(ClipType.Intersection, a, b);
}

/** Area, mm²; holes taken off. */
export function regionAreaMm2(region: Region): number {
  let area = 0;
  for (const ring of region) area += flatRingAreaMm2(ring);
  return area;
}

/** The connected parts of a region, each an outer ring with its holes, the largest first. */
export function splitRegion(region: Region): Region[] {
  const outers = region
    .map((ring) => ({ ring, areaMm2: flatRingAreaMm2(ring), holes: [] as FlatRing[] }))
    .filter((part) => part.areaMm2 > 0)
    .sort((a, b) => b.areaMm2 - a.areaMm2);
  const smallestFirst = [...outers].reverse();
  for (const hole of region) {
    const holeMm2 = -flatRingAreaMm2(hole);
    if (holeMm2 <= 0) continue;
    // The smallest that surrounds it: an island's hole lies in what surrounds the island too.
    const owner = smallestFirst.find((part) => surrounds(part.ring, hole));
    (owner ?? bug("a hole lies in no outer ring", { holeMm2 })).holes.push(hole);
  }
  const netMm2 = (part: Region) => regionAreaMm2(part);
  return outers.map((part): Region => [part.ring, ...part.holes]).sort((a, b) => netMm2(b) - netMm2(a));
}

/** Rings as given brought to a region: crossings resolved, outer rings anticlockwise, holes clockwise. */
function settle(rings: readonly FlatRing[]): Region {
  const filled = rings.filter((ring) => ring.xs.length > 0);
  return filled.length === 0 ? EMPTY_REGION : booleanOf(ClipType.Union, filled, []);
}

/** A difference from one ring, made only of what lies near `b`; null where that cannot be done. */
function narrowedDifference(a: Region, b: Region): Region | null {
  const whole = a.length === 1 ? a[0] : undefined;
  const narrowed = whole && narrowedTo(whole, b);
  if (!whole || !narrowed) return null;
  const solved = solve(ClipType.Difference, [narrowed.ring], b);
  // Of several outlines the library's order follows from all of the ring: that is rare, and done whole.
  if (solved.paths.length > 1) return null;
  const restored = withSkipped(solved, whole, narrowed);
  return restored && regionOfPaths(restored);
}

/** An answer of one outline with what was passed over put back in; null where a chord is not found in it as it was. */
function withSkipped(solved: Solved, whole: FlatRing, { skipped }: NarrowedRing): Solved | null {
  const { originX, originY } = solved;
  const count = whole.xs.length;
  const pointOf = (i: number): Point64 => ({
    x: gridLine(whole.xs[i] as number) - originX,
    y: gridLine(whole.ys[i] as number) - originY,
    z: 0,
  });
  let [found] = solved.paths;
  for (const { first, last } of skipped) {
    if (found === undefined) return null;
    const { path } = found;
    const at = chordAt(path, pointOf(first), pointOf(last));
    if (at < 0) return null;
    const points: Point64[] = [];
    const sources: number[] = [];
    for (let i = (first + 1) % count; i !== last; i = (i + 1) % count) {
      points.push(pointOf(i));
      sources.push(whole.sources[i] as number);
    }
    const before = [...found.sources.slice(0, at), whole.sources[first] as number];
    // The library begins with the vertex after the one it closed the ring at: that is one of those put back.
    const isSeam = at + 1 === path.length;
    found = isSeam
      ? { path: [...points, ...path], sources: Int32Array.from([...sources, ...before]) }
      : {
          path: [...path.slice(0, at + 1), ...points, ...path.slice(at + 1)],
          sources: Int32Array.from([...before, ...sources, ...found.sources.slice(at + 1)]),
        };
  }
  return found === undefined ? null : { ...solved, paths: [found] };
}

/** Where in a path a point is followed by another; -1 where it is not. */
function chordAt(path: Path64, from: Point64, to: Point64): number {
  return path.findIndex((point, i) => {
    const next = path[i + 1 === path.length ? 0 : i + 1] as Point64;
    return point.x === from.x && point.y === from.y && next.x === to.x && next.y === to.y;
  });
}

/** One book for all booleans, begun anew for each: they never run inside one another. */
const BOOK = new EdgeBook();

function booleanOf(clipType: ClipType, subject: Region, clip: Region): Region {
  return regionOfPaths(solve(clipType, subject, clip));
}

/** What a boolean counts for, and each vertex that goes into it (`countWork`). */
const WORK_OF_BOOLEAN = 120;
const WORK_OF_VERTEX = 8;

/** The library's answer on the grid, each edge's source found, before it is tidied. */
interface Solved {
  readonly originX: number;
  readonly originY: number;
  readonly paths: readonly { readonly path: Path64; readonly sources: Int32Array }[];
}

function solve(clipType: ClipType, subject: Region, clip: Region): Solved {
  const first = subject[0] as FlatRing;
  const originX = originOf(first.xs[0] ?? 0);
  const originY = originOf(first.ys[0] ?? 0);
  const book = BOOK;
  const vertices = vertexCount(subject) + vertexCount(clip);
  countWork(WORK_OF_BOOLEAN + WORK_OF_VERTEX * vertices);
  book.begin(vertices);
  const clipper = new Clipper64();
  clipper.zCallback = (bottom1, top1, bottom2, top2, crossing) => {
    // At a vertex the library has handed on that vertex's number already; the point may be its own, so leave it.
    if (!crossing.z) crossing.z = book.addCrossing(bottom1.z ?? 0, top1.z ?? 0, bottom2.z ?? 0, top2.z ?? 0);
  };
  clipper.addSubject(pathsOf(subject, originX, originY, book));
  if (clip.length > 0) clipper.addClip(pathsOf(clip, originX, originY, book));
  const solution: Paths64 = [];
  const parted = keepPartedTriangles(clipper);
  if (!clipper.execute(clipType, FillRule.NonZero, solution)) bug("a polygon boolean failed", { clipType });
  const paths = [...solution, ...parted].map((path) => ({ path, sources: sourcesOf(path, book) }));
  return { originX, originY, paths };
}

function regionOfPaths({ originX, originY, paths }: Solved): Region {
  const region: FlatRing[] = [];
  for (const { path, sources } of paths) {
    const ring = flatRingOfPath(path, sources, originX, originY);
    if (ring !== undefined) region.push(ring);
  }
  return directed(region);
}

/**
 * Catches the triangles that the library throws away where an outline passes through itself within three edges.
 *
 * It takes a smaller one of the other direction for noise of rounding, but where a corner touches an edge it is a
 * real hole as often. Those of a size that counts are kept; `directed` tells holes from outer rings. Reaches into
 * the library (2.0.1, pinned), which has no other way in; the test "a three-cornered hole" fails if that moves.
 */
function keepPartedTriangles(clipper: Clipper64): Paths64 {
  const parted: Paths64 = [];
  const inner = clipper as unknown as {
    readonly outrecList: readonly OutRec[];
    doSplitOp(outrec: OutRec, splitOp: OutPt): void;
  };
  const split = inner.doSplitOp.bind(clipper);
  inner.doSplitOp = (outrec, splitOp) => {
    const before = splitOp.prev.pt;
    const first = splitOp.pt;
    const second = (splitOp.next as OutPt).pt;
    const after = ((splitOp.next as OutPt).next as OutPt).pt;
    const count = inner.outrecList.length;
    split(outrec, splitOp);
    // Kept as an outline of its own.
    if (inner.outrecList.length > count) return;
    const meet = lineMeetsLine(before, first, second, after, 0).points[0];
    if (meet === undefined) return;
    const corner = { x: Math.round(meet.x), y: Math.round(meet.y), z: 0 };
    parted.push([corner, { ...first }, { ...second }]);
  };
  return parted;
}

/**
 * Outer rings anticlockwise, holes clockwise. The library says so itself, but turns the ring of a polygon with a
 * level spike round; whether a ring lies in an odd number of others decides.
 */
function directed(rings: FlatRing[]): Region {
  return rings.map((ring) => {
    const depth = rings.filter((outer) => outer !== ring && surrounds(outer, ring)).length;
    const isHole = depth % 2 === 1;
    return flatRingAreaMm2(ring) < 0 === isHole ? ring : reversedFlatRing(ring);
  });
}

function vertexCount(region: Region): number {
  return region.reduce((count, ring) => count + ring.xs.length, 0);
}

/** Whole grid lines from 0 to the local origin, which keeps products small where a piece lies far away. */
function originOf(firstMm: number): number {
  return Math.round(firstMm / ORIGIN_STEP_MM) * ORIGIN_STEP_MM * GRID_PER_MM;
}

function pathsOf(region: Region, originX: number, originY: number, book: EdgeBook): Paths64 {
  const paths: Paths64 = [];
  for (const { xs, ys, sources } of region) {
    const path: Path64 = [];
    for (let i = 0; i < xs.length; i++) {
      path.push({ x: gridLine(xs[i] as number) - originX, y: gridLine(ys[i] as number) - originY, z: 0 });
    }
    const clean = withoutLevelSpikes(path, sources);
    // The library trips over a path without vertices, and fewer than three enclose nothing.
    if (clean.path.length < 3) continue;
    book.addRing(clean.path, clean.sources);
    paths.push(clean.path);
  }
  return paths;
}

function gridLine(mm: number): number {
  if (!(Math.abs(mm) <= FARTHEST_MM))
    bug("a coordinate of a region is not a number or too far away", { mm: String(mm) });
  return Math.round(mm * GRID_PER_MM);
}

function sourcesOf(path: Path64, book: EdgeBook): Int32Array {
  const count = path.length;
  const sources = new Int32Array(count);
  for (let i = 0; i < count; i++) {
    const start = path[i] as Point64;
    const end = path[i + 1 === count ? 0 : i + 1] as Point64;
    sources[i] = book.sourceOf(start, end);
  }
  return sources;
}

function flatRingOfPath(
  path: Path64,
  sources: Int32Array,
  originX: number,
  originY: number,
): FlatRing | undefined {
  const clean = cleanRing(path, sources, LEAST_EDGE_MM * GRID_PER_MM);
  if (clean === undefined) return undefined;
  const { xs, ys } = clean;
  for (let i = 0; i < xs.length; i++) {
    xs[i] = ((xs[i] as number) + originX) / GRID_PER_MM;
    ys[i] = ((ys[i] as number) + originY) / GRID_PER_MM;
  }
  const ring = { xs, ys, sources: clean.sources };
  return Math.abs(flatRingAreaMm2(ring)) < LEAST_RING_MM2 ? undefined : ring;
}
