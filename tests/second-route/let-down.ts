/**
 * Whether wood holds a curved plane, by letting it down again and again: the wood's outline and the sole are both
 * taken as a great many places, and the plane stops where the first of them meets.
 *
 * Places are needed where a contact can be: every corner of the outline and places between them, where a round lies on a
 * straight edge (places d apart would miss that by d²/8r, and a level floor would seem to ripple), and the outline exactly
 * under either end of the sole. Without those last an arris that lies just past the end of the sole makes the answer flip.
 */
import { arcOf, boundaryPlaces, bulgeOf, type FlatRegion, turnedBy } from "./flat.ts";
import { CLEARANCE_MM, LEVEL_MM } from "./limits.ts";
import type { BulgedVertex, PoseXyt, Xy } from "./plan-json.ts";

const PLACE_MM = 0.02;

/** Shifts tried within the distance from the aim, and to either side of the resting place. */
const REST_TRIES = 60;
const SIDE_TRIES = 50;

export interface Held {
  readonly liftMm: number;
  readonly shiftMm: number;
}

/** Height of the sole over its origin at a place across; the lower one where it stands upright, null beyond its ends. */
export function soleHeight(sole: readonly BulgedVertex[]): (x: number) => number | null {
  const pieces = sole.slice(0, -1).map((v, i) => pieceHeight(v, sole[i + 1]));
  if (pieces.length === 1) return pieces[0];
  return (x) => {
    let lowest: number | null = null;
    for (const piece of pieces) {
      const y = piece(x);
      if (y !== null && (lowest === null || y < lowest)) lowest = y;
    }
    return lowest;
  };
}

function pieceHeight(a: BulgedVertex, b: BulgedVertex): (x: number) => number | null {
  const low = Math.min(a[0], b[0]);
  const high = Math.max(a[0], b[0]);
  const bulge = bulgeOf(a);
  if (bulge === 0) {
    const lower = Math.min(a[1], b[1]);
    const slope = b[0] === a[0] ? 0 : (b[1] - a[1]) / (b[0] - a[0]);
    const start = b[0] === a[0] ? lower : a[1];
    return (x) => (x < low || x > high ? null : start + (x - a[0]) * slope);
  }
  const { centre, radiusMm } = arcOf([a[0], a[1]], [b[0], b[1]], bulge);
  const squared = radiusMm * radiusMm;
  const side = bulge > 0 ? -1 : 1;
  return (x) => {
    if (x < low || x > high) return null;
    const off = x - centre[0];
    return centre[1] + side * Math.sqrt(Math.max(0, squared - off * off));
  };
}

/** How the wood holds this plane in this pose; null where it does not, by the rule of the cutting model. */
export function heldIn(wood: FlatRegion, sole: readonly BulgedVertex[], pose: PoseXyt): Held | null {
  const left = Math.min(...sole.map((v) => v[0]));
  const right = Math.max(...sole.map((v) => v[0]));
  const width = right - left;
  const offMm = Math.max(0.2, width / 20);
  const aside = width / 8;
  const heightAt = lettingDown(wood, sole, pose, offMm + aside);

  let rest = { shift: 0, height: heightAt(0) };
  for (let i = 1; i <= REST_TRIES; i++)
    for (const side of [-1, 1]) {
      const shift = (side * offMm * i) / REST_TRIES;
      const height = heightAt(shift);
      if (height < rest.height - LEVEL_MM / REST_TRIES) rest = { shift, height };
    }
  if (!Number.isFinite(rest.height)) return null;
  rest = settled(heightAt, rest, offMm);
  const liftMm = Math.min(...[-aside, aside].map((to) => liftOnTheWay(heightAt, rest, to)));
  return liftMm >= width / 100 ? { liftMm, shiftMm: rest.shift } : null;
}

/** The lowest place near a coarse one, by halving the step. */
function settled(
  heightAt: (shift: number) => number,
  coarse: { shift: number; height: number },
  offMm: number,
) {
  let best = coarse;
  for (let step = offMm / REST_TRIES / 2; step > 1e-5; step /= 2)
    for (const shift of [best.shift - step, best.shift + step]) {
      if (Math.abs(shift) > offMm) continue;
      const height = heightAt(shift);
      if (height < best.height - LEVEL_MM / REST_TRIES) best = { shift, height };
    }
  return best;
}

/** Greatest rise on the way to one side before the plane would slip lower than it rested. */
function liftOnTheWay(
  heightAt: (shift: number) => number,
  rest: { shift: number; height: number },
  to: number,
): number {
  let lift = 0;
  for (let i = 1; i <= SIDE_TRIES; i++) {
    const height = heightAt(rest.shift + (to * i) / SIDE_TRIES);
    if (height < rest.height - LEVEL_MM) break;
    lift = Math.max(lift, height - rest.height);
  }
  return lift;
}

/** Height at which the plane is first stopped, shifted across by so much from the pose. */
function lettingDown(
  wood: FlatRegion,
  sole: readonly BulgedVertex[],
  pose: PoseXyt,
  farthestMm: number,
): (shift: number) => number {
  const tilt = pose[2];
  const turned: FlatRegion = wood.map((outline) => outline.map((p) => turnedBy(-tilt, p)));
  const aim = turnedBy(-tilt, [pose[0], pose[1]])[0];
  const left = Math.min(...sole.map((v) => v[0])) + CLEARANCE_MM;
  const right = Math.max(...sole.map((v) => v[0])) - CLEARANCE_MM;
  const low = aim + left - farthestMm;
  const high = aim + right + farthestMm;
  const places = [...boundaryPlaces(turned, PLACE_MM)].filter(([x]) => x >= low && x <= high);
  places.sort((a, b) => a[0] - b[0]);
  const edges = turned
    .flatMap((outline) => outline.map((a, i): [Xy, Xy] => [a, outline[(i + 1) % outline.length]]))
    .filter(([a, b]) => Math.max(a[0], b[0]) >= low && Math.min(a[0], b[0]) <= high);
  const sureOf = soleHeight(sole);
  const under = (x: number): number => {
    let top = Number.NEGATIVE_INFINITY;
    for (const [a, b] of edges) {
      if (x < Math.min(a[0], b[0]) || x > Math.max(a[0], b[0])) continue;
      const y = a[0] === b[0] ? Math.max(a[1], b[1]) : a[1] + ((x - a[0]) / (b[0] - a[0])) * (b[1] - a[1]);
      top = Math.max(top, y);
    }
    return top;
  };
  const corners = sole.map((v) => v[0]).filter((x) => x > left && x < right);
  const touching = sole.slice(0, -1).flatMap((v, i) => roundsOnEdges(v, sole[i + 1], edges));
  return (shift) => {
    const at = aim + shift;
    let height = Number.NEGATIVE_INFINITY;
    const meet = (x: number, y: number): void => {
      const b = sureOf(Math.min(right, Math.max(left, x - at)));
      if (b !== null && y - b > height) height = y - b;
    };
    for (let i = firstAtLeast(places, at + left); i < places.length && places[i][0] <= at + right; i++)
      meet(places[i][0], places[i][1]);
    for (const x of [left, right, ...corners]) meet(at + x, under(at + x));
    for (const { acrossMm, from, to } of touching) {
      const x = at + acrossMm;
      if (acrossMm < left || acrossMm > right || x < from[0] || x > to[0]) continue;
      meet(x, from[1] + ((x - from[0]) / (to[0] - from[0])) * (to[1] - from[1]));
    }
    return height;
  };
}

/** For a round piece of a sole and each edge: where across the sole it would lie on it, if anywhere. */
function roundsOnEdges(a: BulgedVertex, b: BulgedVertex, edges: readonly (readonly [Xy, Xy])[]) {
  const bulge = bulgeOf(a);
  if (bulge <= 0) return [];
  const { centre, radiusMm } = arcOf([a[0], a[1]], [b[0], b[1]], bulge);
  return edges.flatMap(([p, q]) => {
    const [from, to] = p[0] <= q[0] ? [p, q] : [q, p];
    if (to[0] - from[0] <= 0) return [];
    const slope = (to[1] - from[1]) / (to[0] - from[0]);
    const acrossMm = centre[0] + (radiusMm * slope) / Math.hypot(1, slope);
    const isOnPiece = acrossMm > Math.min(a[0], b[0]) && acrossMm < Math.max(a[0], b[0]);
    return isOnPiece ? [{ acrossMm, from, to }] : [];
  });
}

function firstAtLeast(places: readonly Xy[], x: number): number {
  let low = 0;
  let high = places.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (places[middle][0] < x) low = middle + 1;
    else high = middle;
  }
  return low;
}
