/**
 * Whether any plane on the shelf, held any way a hand can hold it, can touch a place of the section without overcut;
 * and, where none can, which pose comes nearest and what stands in its way.
 */

import { type Point, pointAt } from "../curve/index.ts";
import { type Profile, restOn, type SoleShape, soleHeightMm, turned, turnOf } from "../cutting/index.ts";
import { SAME_POINT_MM } from "../measure/index.ts";
import type { Bench, Tool } from "./bench.ts";
import { cantFor } from "./turning.ts";
import { outwardTiltDeg, type WorkedPiece } from "./worked-piece.ts";

export interface Reach {
  readonly reached: boolean;
  /** The plane that reaches it, or comes nearest. */
  readonly tool: Tool | null;
  /** How deep the nearest pose would overcut, mm; 0 where reached. */
  readonly overcutMm: number;
  /** Where that pose meets the section. */
  readonly meets: Point | null;
}

/** A sole that touches a wall beside it is not stopped by it, mm. */
const NARROW_MM = 0.001;

const TILT_STEP_DEG = 5;
const SOLE_PLACES = 13;

/**
 * Reach at one place of a piece, `t` along it; a plane counts that comes within `withinMm` of the place.
 *
 * Most tilts are told at once: where the section itself stands over the place, as a plane of that tilt comes down to it, every
 * sole overcuts by at least as much. Narrow soles are tried first, since they come nearest to a place that none reaches.
 */
export function reachAt(bench: Bench, piece: WorkedPiece, t: number, withinMm: number): Reach {
  const at = pointAt(piece.piece, t);
  const own = outwardTiltDeg(piece.piece, t);
  const tools = [...bench.tools].sort((a, b) => a.sole.widthMm - b.sole.widthMm);
  let best: Reach = { reached: false, tool: null, overcutMm: Number.POSITIVE_INFINITY, meets: null };
  for (const tilt of tiltsToTry(own)) {
    if (cantFor(bench, tilt) === null) continue;
    const profile = bench.profileOfPlanned(tilt);
    const place = turned(turnOf(tilt), at);
    if (standsOverMm(profile, place) > withinMm + best.overcutMm) continue;
    for (const tool of tools) {
      for (let i = 0; i < SOLE_PLACES; i++) {
        const x = tool.sole.leftMm + ((tool.sole.rightMm - tool.sole.leftMm) * i) / (SOLE_PLACES - 1);
        // The sole's own place x is laid on the wanted place, `withinMm` above it.
        const height = place.y + withinMm - soleHeightMm(tool.shape, x);
        const rest = restOn(profile, tool.shape, place.x - x, {
          narrowMm: NARROW_MM,
          enoughAboveMm: height + best.overcutMm,
        });
        if (!rest) continue;
        const overcutMm = Math.max(0, rest.heightMm - height);
        if (overcutMm < best.overcutMm - SAME_POINT_MM) {
          const back = turnOf(-tilt);
          const meets = turned(back, {
            x: rest.touchXMm,
            y: rest.heightMm + soleHeightMm(tool.shape, rest.touchXMm - (place.x - x)),
          });
          best = { reached: overcutMm === 0, tool, overcutMm, meets };
          if (best.reached) return best;
        }
      }
    }
  }
  return best;
}

/** How high the section stands over one of its own places, seen by a plane of a tilt: the lower of just left and just right of it. */
function standsOverMm(profile: Profile, place: Point): number {
  const heightAt = (x: number): number => {
    const rest = restOn(profile, POINT, x);
    return rest ? rest.heightMm - place.y : Number.NEGATIVE_INFINITY;
  };
  return Math.min(heightAt(place.x - 2 * NARROW_MM), heightAt(place.x + 2 * NARROW_MM));
}

/** A sole of no width. */
const POINT: SoleShape = {
  leftMm: 0,
  rightMm: 0,
  widthMm: 0,
  parts: [{ fromX: 0, toX: 0, fromY: 0, slope: 0, centreX: 0, centreY: 0, radiusMm: 0, side: 0 }],
  corners: [],
  bellies: [],
};

/** Few tilts matter: square on the place, along it to either side, and a grid between. */
function tiltsToTry(own: number): number[] {
  const tilts = new Set<number>();
  for (const off of [0, 90, -90, 60, -60, 30, -30]) tilts.add(wrapped(own + off));
  for (let t = -180 + TILT_STEP_DEG; t <= 180; t += TILT_STEP_DEG) tilts.add(t);
  return [...tilts].sort((a, b) => Math.abs(wrapped(a - own)) - Math.abs(wrapped(b - own)) || a - b);
}

function wrapped(deg: number): number {
  const d = ((deg % 360) + 360) % 360;
  const w = d > 180 ? d - 360 : d;
  return Math.round(w * 1e6) / 1e6;
}
