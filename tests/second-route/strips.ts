/**
 * What one cut sweeps, built from the plan file's own words: the sole placed at each pose, swept up along the axis.
 *
 * A plane that is rocked about the centre of its sole's circle has dozens of poses whose strips all but coincide,
 * which is what polygon libraries are worst at. Their union has a plain outline of its own (rockOutline), so it is
 * drawn at once; the tests hold it against the union of the strips.
 */
import type { MultiPolygon } from "polygon-clipping";
import { regionOf, together } from "./booleans.ts";
import { arcOf, bulgeOf, type FlatOutline, flatChain } from "./flat.ts";
import { CHORD_MM, SAME_CENTRE_MM, SAME_NUMBER } from "./limits.ts";
import type { BulgedVertex, PoseXyt, Xy } from "./plan-json.ts";

const RAD = Math.PI / 180;

/** A point of the plane's frame in the stick's: turned by the tilt, then moved to the pose. */
export function inPlace([x, y, tilt]: PoseXyt, [px, py]: Xy): Xy {
  const cos = Math.cos(tilt * RAD);
  const sin = Math.sin(tilt * RAD);
  return [x + px * cos - py * sin, y + px * sin + py * cos];
}

/** Direction in which the plane's axis points, out of the wood. */
export function axisOf(tilt: number): Xy {
  return [-Math.sin(tilt * RAD), Math.cos(tilt * RAD)];
}

/** Direction across the plane, to its right. */
export function rightOf(tilt: number): Xy {
  return [Math.cos(tilt * RAD), Math.sin(tilt * RAD)];
}

export function stripOutline(sole: readonly BulgedVertex[], pose: PoseXyt, reachMm: number): FlatOutline {
  const points = flatChain(sole, CHORD_MM).map((p) => inPlace(pose, p));
  const [ux, uy] = axisOf(pose[2]);
  const first = points[0];
  const last = points[points.length - 1];
  return [
    ...points,
    [last[0] + ux * reachMm, last[1] + uy * reachMm],
    [first[0] + ux * reachMm, first[1] + uy * reachMm],
  ];
}

/** Everything that a cut's runs sweep. */
export function sweptBy(
  sole: readonly BulgedVertex[],
  runs: readonly (readonly PoseXyt[])[],
  reachMm: number,
): MultiPolygon {
  return together(
    runs.flatMap((run) => {
      const rock = rockOf(sole, run);
      if (rock) return [regionOf([rockOutline(rock, reachMm)])];
      return lowestOf(run).map((pose) => regionOf([stripOutline(sole, pose, reachMm)]));
    }),
  );
}

/** Poses of a run without those that only stand straight above another: their strips lie inside the lower one's. */
function lowestOf(run: readonly PoseXyt[]): readonly PoseXyt[] {
  return run.filter((pose, i) => {
    const [ux, uy] = axisOf(pose[2]);
    return !run.some((other, j) => {
      if (i === j || other[2] !== pose[2]) return false;
      const dx = pose[0] - other[0];
      const dy = pose[1] - other[1];
      const up = dx * ux + dy * uy;
      const aside = Math.abs(dx * uy - dy * ux);
      return aside < SAME_NUMBER && (up > 0 || (up === 0 && j < i));
    });
  });
}

export interface Rock {
  readonly centre: Xy;
  readonly radiusMm: number;
  /** True for a round, whose centre stands above its sole. */
  readonly isRound: boolean;
  /** From the axis to the sole's left and right end. */
  readonly leftMm: number;
  readonly rightMm: number;
  readonly lowDeg: number;
  readonly highDeg: number;
}

/** The run as a rock about its sole's centre, if it is one: a single arc whose centre stands still in every pose. */
export function rockOf(sole: readonly BulgedVertex[], run: readonly PoseXyt[]): Rock | null {
  if (sole.length !== 2 || bulgeOf(sole[0]) === 0 || run.length < 3) return null;
  const from: Xy = [sole[0][0], sole[0][1]];
  const to: Xy = [sole[1][0], sole[1][1]];
  const arc = arcOf(from, to, bulgeOf(sole[0]));
  if (Math.abs(arc.centre[0]) > SAME_NUMBER) return null;
  const centre = inPlace(run[0], arc.centre);
  for (const pose of run) {
    const here = inPlace(pose, arc.centre);
    if (Math.hypot(here[0] - centre[0], here[1] - centre[1]) > SAME_CENTRE_MM) return null;
  }
  const tilts = run.map((pose) => pose[2]);
  const lowDeg = Math.min(...tilts);
  const highDeg = Math.max(...tilts);
  if (highDeg - lowDeg > 120) return null;
  return {
    centre,
    radiusMm: arc.radiusMm,
    isRound: bulgeOf(sole[0]) > 0,
    leftMm: -from[0],
    rightMm: to[0],
    lowDeg,
    highDeg,
  };
}

/**
 * Outline of the union of all strips between the two outermost leans. With c the centre, v(t) the direction across
 * and u(t) the axis at lean t, a strip is all c + a v + b u with a from -left to right and b above the sole's circle.
 *
 * Hollow (wood inside the circle): the left side is that of the leftmost lean, the right side that of the rightmost,
 * the bottom the circle between their ends.
 * Round: below the centre the sides cross over, so the bottom runs from the left end of the rightmost lean to the
 * right end of the leftmost, and each side follows the one lean up to where it meets the other's. Both are tangents
 * of the circle of the half width about c, so they meet on v halfway between, 1 / cos of half the range further out;
 * the sides of the leans between pass inside that corner.
 */
export function rockOutline(rock: Rock, reachMm: number): FlatOutline {
  const { centre, radiusMm, isRound, leftMm, rightMm, lowDeg, highDeg } = rock;
  const at = (tilt: number, a: number, b: number): Xy => {
    const [vx, vy] = rightOf(tilt);
    const [ux, uy] = axisOf(tilt);
    return [centre[0] + a * vx + b * ux, centre[1] + a * vy + b * uy];
  };
  const middle = (lowDeg + highDeg) / 2;
  const further = 1 / Math.cos(((highDeg - lowDeg) / 2) * RAD);
  const level = isRound ? -1 : 1;
  const leftEnd = level * Math.sqrt(Math.max(0, radiusMm ** 2 - leftMm ** 2));
  const rightEnd = level * Math.sqrt(Math.max(0, radiusMm ** 2 - rightMm ** 2));
  const first = isRound ? at(lowDeg, -leftMm, leftEnd) : at(highDeg, -leftMm, leftEnd);
  const last = isRound ? at(highDeg, rightMm, rightEnd) : at(lowDeg, rightMm, rightEnd);
  const bottom = flatChain([[first[0], first[1], circleBulge(centre, first, last, isRound)], last]);
  return [
    ...bottom,
    ...(isRound ? [at(middle, rightMm * further, 0)] : []),
    at(lowDeg, rightMm, reachMm),
    at(middle, 0, reachMm * further * 1.5),
    at(highDeg, -leftMm, reachMm),
    ...(isRound ? [at(middle, -leftMm * further, 0)] : []),
  ];
}

/** Bulge of the circle's arc from one place to another: anticlockwise under a round, clockwise over a hollow. */
function circleBulge(centre: Xy, from: Xy, to: Xy, anticlockwise: boolean): number {
  const start = Math.atan2(from[1] - centre[1], from[0] - centre[0]);
  const end = Math.atan2(to[1] - centre[1], to[0] - centre[0]);
  let sweep = end - start;
  if (anticlockwise) while (sweep <= 0) sweep += 2 * Math.PI;
  else while (sweep >= 0) sweep -= 2 * Math.PI;
  return Math.tan(sweep / 4);
}
