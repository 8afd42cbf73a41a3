/**
 * Splinters: wood over the drawing, no larger than a shaving, that hangs by less than a thread. Whether two cuts that meet on
 * an arris leave it joined to the stick in one point or free of it is rounding; either way it comes away with the shaving.
 */
import { boundaryPlaces, type FlatRegion } from "./flat.ts";
import { SHAVING_MM2, THREAD_MM } from "./limits.ts";
import type { Xy } from "./plan-json.ts";

/** Places of the wood's boundary, `stepMm` apart, that no splinter has; `isOver` says whether a place lies over the drawing. */
export function solidPlaces(left: FlatRegion, stepMm: number, isOver: (p: Xy) => boolean): Xy[] {
  return left.flatMap((outline) => {
    const places = [...boundaryPlaces([outline], stepMm)];
    const over = places.map(isOver);
    const first = over.indexOf(false);
    if (first < 0) return places;
    const solid: Xy[] = [];
    let run: Xy[] = [];
    let foot = places[first] as Xy;
    // Once round, from a place on the drawing back to it.
    for (let i = 0; i <= places.length; i++) {
      const at = (first + i) % places.length;
      const p = places[at] as Xy;
      if (over[at]) {
        run.push(p);
        continue;
      }
      const isSplinter =
        Math.hypot(p[0] - foot[0], p[1] - foot[1]) < THREAD_MM && areaMm2([foot, ...run, p]) <= SHAVING_MM2;
      if (!isSplinter) solid.push(...run);
      if (i < places.length) solid.push(p);
      run = [];
      foot = p;
    }
    return solid;
  });
}

function areaMm2(points: readonly Xy[]): number {
  let doubled = 0;
  points.forEach(([x, y], i) => {
    const [nx, ny] = points[(i + 1) % points.length] as Xy;
    doubled += x * ny - nx * y;
  });
  return Math.abs(doubled) / 2;
}
