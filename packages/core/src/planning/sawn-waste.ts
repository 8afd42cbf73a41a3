/**
 * Large waste at an arris, sawn off before anything is planed: one straight rip, clear of the section by enough for a
 * plane to clean up after the saw. Much waste goes so always, less of it where that saves minutes.
 */
import { type Point, type Region, regionAreaMm2 } from "../curve/index.ts";
import { cutAway } from "../cutting/index.ts";
import { SAME_POINT_MM } from "../measure/index.ts";
import type { Bench } from "./bench.ts";
import { type SawDraft, sawDraft } from "./draft-cut.ts";
import { minutesOf, planeTime, sawTime } from "./minutes.ts";
import { passesOf } from "./passes.ts";
import { makeAll } from "./sequence.ts";
import { layForSaw } from "./strategy.ts";
import { LEAST_TAKE_MM2, type TriedCut, tryCut } from "./try-cut.ts";

/** Waste that is ripped off without asking how else: this much, and as deep under the arris (common practice, no source). */
const SURE_FROM_MM2 = 600;
const SURE_FROM_DEEP_MM = 15;
/** Waste that may be worth a rip, where that saves minutes (common practice, no source). */
const DOUBTFUL_FROM_MM2 = 250;
const DOUBTFUL_FROM_DEEP_MM = 10;
/** Such a rip saves at least this, or the saw is not fetched for it, minutes (common practice, no source). */
const LEAST_SAVED_MINUTES = 3;
/** How far a rip keeps off the section, mm (common practice, no source). */
const RIP_CLEAR_MM = 1.5;

export interface Rip {
  readonly draft: SawDraft;
  /** Whether no planing would be as quick; else it is for `savesMinutes` to tell. */
  readonly isSure: boolean;
}

/** The rip along the face's far arris that takes most, or null where none takes enough. */
export function sawnWaste(bench: Bench, wood: Region): Rip | null {
  let best: { rip: Rip; mm2: number } | null = null;
  for (const [from, to] of fallsToFarEdge(bench)) {
    const draft = ripAlong(bench, from, to);
    const mm2 = regionAreaMm2(wood) - regionAreaMm2(cutAway(wood, draft.sweep));
    const deep = deepMm(bench, draft);
    const isWorthIt = mm2 >= DOUBTFUL_FROM_MM2 && deep >= DOUBTFUL_FROM_DEEP_MM;
    const isSure = mm2 >= SURE_FROM_MM2 && deep >= SURE_FROM_DEEP_MM;
    const isBetter = !best || (isSure === best.rip.isSure ? mm2 > best.mm2 : isSure);
    if (isWorthIt && isBetter) best = { rip: { draft, isSure }, mm2 };
  }
  return best?.rip ?? null;
}

/** Whether a rip before the first of these cuts would save minutes of planing, the same cuts made after it. */
export function savesMinutes(bench: Bench, wood: Region, cuts: readonly TriedCut[], { draft }: Rip): boolean {
  const ripped = tryCut(bench, wood, draft);
  const after = makeAll(
    bench,
    ripped.after,
    cuts.map((cut) => cut.draft),
  );
  return isQuicker(bench, [ripped, ...after.cuts], cuts);
}

/** Whether one run of cuts is so much quicker than another that a saw is worth fetching for it. */
export function isQuicker(bench: Bench, cuts: readonly TriedCut[], than: readonly TriedCut[]): boolean {
  return minutesOfAll(bench, than) - minutesOfAll(bench, cuts) >= LEAST_SAVED_MINUTES;
}

function minutesOfAll(bench: Bench, cuts: readonly TriedCut[]): number {
  return cuts.reduce((sum, { draft, before, takesMm2 }) => {
    if (takesMm2 < LEAST_TAKE_MM2) return sum;
    if (draft.kind === "saw") return sum + minutesOf(sawTime(true, bench.working));
    const { passes } = passesOf(bench, before, draft, takesMm2);
    return sum + minutesOf(planeTime(passes, "set", bench.working));
  }, 0);
}

/** How far the stick's far arris stands over a rip's line, mm. */
function deepMm(bench: Bench, { from, to }: SawDraft): number {
  const length = Math.hypot(to.x - from.x, to.y - from.y);
  const x = bench.gaugeEdge === "left" ? bench.box.maxX : bench.box.minX;
  return ((x - from.x) * (to.y - from.y) - (bench.box.maxY - from.y) * (to.x - from.x)) / length;
}

/** Straight lines that lie on the section like a straightedge where it falls to the far edge, each as two places. */
function fallsToFarEdge(bench: Bench): readonly (readonly [Point, Point])[] {
  const places = bench.plannedRegion.flatMap((ring) =>
    Array.from(ring.xs, (x, i): Point => ({ x, y: ring.ys[i] as number })),
  );
  const sign = bench.gaugeEdge === "left" ? 1 : -1;
  const hull = upperHull(places.map((p) => ({ x: sign * p.x, y: p.y }))).map((p) => ({
    x: sign * p.x,
    y: p.y,
  }));
  const falls: [Point, Point][] = [];
  for (let i = 1; i < hull.length; i++) {
    const a = hull[i - 1] as Point;
    const b = hull[i] as Point;
    if (Math.abs(b.x - a.x) > SAME_POINT_MM && a.y - b.y > SAME_POINT_MM) falls.push([a, b]);
  }
  return falls;
}

/** The upper half of the convex hull, in rising order of x (monotone chain). */
function upperHull(points: readonly Point[]): readonly Point[] {
  const sorted = [...points].sort((p, q) => p.x - q.x || p.y - q.y);
  const hull: Point[] = [];
  for (const p of sorted) {
    while (hull.length > 1) {
      const a = hull[hull.length - 2] as Point;
      const b = hull[hull.length - 1] as Point;
      const turn = (b.x - a.x) * (p.y - a.y) - (b.y - a.y) * (p.x - a.x);
      if (turn < 0) break;
      hull.pop();
    }
    hull.push(p);
  }
  return hull;
}

function ripAlong(bench: Bench, a: Point, b: Point): SawDraft {
  const length = Math.hypot(b.x - a.x, b.y - a.y);
  const sign = b.x > a.x ? 1 : -1;
  const normal = { x: (-(b.y - a.y) / length) * sign, y: ((b.x - a.x) / length) * sign };
  const off = (p: Point): Point => ({
    x: p.x + normal.x * RIP_CLEAR_MM,
    y: p.y + normal.y * RIP_CLEAR_MM,
  });
  // What lies right of the line goes, seen along it: the waste lies above.
  const [from, to] = sign > 0 ? [off(b), off(a)] : [off(a), off(b)];
  return sawDraft(bench, from, to, layForSaw(from, to), []);
}
