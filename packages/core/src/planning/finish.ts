/** How the finished face stands to the drawing, and how its parts meet. */
import { distanceMm, nearestOnRing, type Point, type Region, type Ring } from "../curve/index.ts";
import { faceFigures, type Plan, type PlanJoin, type PlanUncut } from "../cutting/index.ts";
import { DRAWING_NOISE_MM } from "../measure/index.ts";
import { joinsOf } from "../section/index.ts";
import type { Bench } from "./bench.ts";
import { tidy } from "./draft-cut.ts";
import { joinErrors, type Placement } from "./join-errors.ts";

const STEP_MM = 0.25;

/** Deviation of what is left from the section as drawn, uncut places apart, and the joins as they come out. */
export function finishOf(
  bench: Bench,
  drawn: Ring,
  wood: Region,
  placement: Placement,
  uncut: readonly PlanUncut[],
): Plan["finish"] {
  // The same going round as the proof's, so that plan and proof cannot tell different heights.
  const { proudMm, underMm } = faceFigures({
    drawn,
    planned: bench.planned,
    left: wood,
    toleranceMm: bench.toleranceMm,
    uncut,
  });
  let squares = 0;
  let count = 0;
  for (const p of facePlaces(bench, wood)) {
    const d = nearestOnRing(drawn, p).distanceMm;
    // Wood that stands higher than the tolerance is listed as uncut, place by place.
    if (d > Math.max(proudMm, underMm)) continue;
    squares += d * d;
    count++;
  }
  return {
    proud: round4(proudMm),
    under: round4(underMm),
    rms: round4(count > 0 ? Math.sqrt(squares / count) : 0),
    joins: joinsOnFace(bench, wood, placement),
  };
}

/** Places along the cut faces of the wood, evenly spread; the stick's own sides are left out. */
function facePlaces(bench: Bench, wood: Region): Point[] {
  const places: Point[] = [];
  for (const ring of wood) {
    const n = ring.xs.length;
    for (let i = 0; i < n; i++) {
      const j = (i + 1) % n;
      const a = { x: ring.xs[i], y: ring.ys[i] };
      const b = { x: ring.xs[j], y: ring.ys[j] };
      if (onStick(bench, a) && onStick(bench, b)) continue;
      const steps = Math.max(1, Math.ceil(distanceMm(a, b) / STEP_MM));
      for (let k = 0; k < steps; k++) {
        const t = (k + 0.5) / steps;
        places.push({ x: a.x + (b.x - a.x) * t, y: a.y + (b.y - a.y) * t });
      }
    }
  }
  return places;
}

function onStick(bench: Bench, p: Point): boolean {
  return nearestOnRing(bench.stick, p).distanceMm < DRAWING_NOISE_MM;
}

function joinsOnFace(bench: Bench, wood: Region, placement: Placement): PlanJoin[] {
  const worked = new Set(bench.worked.map((w) => w.index));
  const count = bench.planned.pieces.length;
  return joinsOf(bench.planned)
    .filter((join) => worked.has(join.piece) || worked.has((join.piece + count - 1) % count))
    .map((join): PlanJoin => {
      return {
        at: [tidy(join.at.x), tidy(join.at.y)],
        kind: join.kind,
        angle: Math.round(join.angleDeg * 100) / 100,
        gap: round4(gapAt(wood, join.at)),
        ...joinErrors(bench, placement, join.piece, join.at),
      };
    });
}

/** Distance from the wanted meeting place of two parts to the nearest surface that was cut, mm. */
function gapAt(wood: Region, at: Point): number {
  let gap = Number.POSITIVE_INFINITY;
  for (const ring of wood) {
    const n = ring.xs.length;
    for (let i = 0; i < n; i++) {
      const j = (i + 1) % n;
      const dx = ring.xs[j] - ring.xs[i];
      const dy = ring.ys[j] - ring.ys[i];
      const lengthSquared = dx * dx + dy * dy;
      const t =
        lengthSquared > 0
          ? Math.max(0, Math.min(1, ((at.x - ring.xs[i]) * dx + (at.y - ring.ys[i]) * dy) / lengthSquared))
          : 0;
      gap = Math.min(gap, Math.hypot(ring.xs[i] + dx * t - at.x, ring.ys[i] + dy * t - at.y));
    }
  }
  return Number.isFinite(gap) ? gap : 0;
}

function round4(value: number): number {
  return Math.round(value * 1e4) / 1e4;
}
