/**
 * Large waste at an arris, sawn off before anything is planed: one straight rip, clear of the section by enough for a
 * plane to clean up after the saw.
 */
import { type Point, type Region, regionAreaMm2 } from "../curve/index.ts";
import { cutAway } from "../cutting/index.ts";
import { SAME_POINT_MM } from "../measure/index.ts";
import type { Bench } from "./bench.ts";
import { type SawDraft, sawDraft } from "./draft-cut.ts";
import { layForSaw } from "./strategy.ts";

/** Waste that is ripped off rather than planed, mm²: below it the planes are as quick (common practice, no source). */
const RIPPED_FROM_MM2 = 600;
/** And how deep it must lie under the arris: shallow waste, however wide, is planed (common practice, no source). */
const RIPPED_FROM_DEEP_MM = 15;
/** How far a rip keeps off the section, mm (common practice, no source). */
const RIP_CLEAR_MM = 1.5;

/** The rip along the face's far arris that takes most, or null where none takes enough. */
export function sawnWaste(bench: Bench, wood: Region): SawDraft | null {
  let best: { draft: SawDraft; mm2: number } | null = null;
  for (const [from, to] of fallsToFarEdge(bench)) {
    const draft = ripAlong(bench, from, to);
    const mm2 = regionAreaMm2(wood) - regionAreaMm2(cutAway(wood, draft.sweep));
    if (mm2 >= RIPPED_FROM_MM2 && deepMm(bench, draft) >= RIPPED_FROM_DEEP_MM && mm2 > (best?.mm2 ?? 0))
      best = { draft, mm2 };
  }
  return best?.draft ?? null;
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
