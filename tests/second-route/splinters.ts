/**
 * What comes away with the shaving: wood over the planned face that is no larger than a shaving and hangs by less than a
 * thread, and fins. Whether two cuts that meet on an arris leave a splinter joined to the stick in one point or free of it
 * is rounding.
 */
import { boundaryPlaces, type FlatRegion } from "./flat.ts";
import { FIN_MM, SHAVING_MM2, THREAD_MM } from "./limits.ts";
import type { Xy } from "./plan-json.ts";

/** Wood no further over the face than this lies on it, mm: above what flattening leaves between the two. */
const OFF_MM = 1e-3;

/** Places of the wood's boundary, `stepMm` apart, that no splinter has; `overMm` says how far a place lies over the face. */
export function solidPlaces(left: FlatRegion, stepMm: number, overMm: (p: Xy) => number): Xy[] {
  return left.flatMap((outline) => {
    const places = [...boundaryPlaces([outline], stepMm)];
    const over = places.map(overMm);
    const first = over.findIndex((mm) => mm <= OFF_MM);
    if (first < 0) return places;
    const solid: Xy[] = [];
    let run: Xy[] = [];
    let highMm = 0;
    let highSum = 0;
    let foot = places[first] as Xy;
    // Once round, from a place on the drawing back to it.
    for (let i = 0; i <= places.length; i++) {
      const at = (first + i) % places.length;
      const p = places[at] as Xy;
      const mm = over[at] as number;
      if (mm > OFF_MM) {
        run.push(p);
        highMm = Math.max(highMm, mm);
        highSum += mm;
        continue;
      }
      if (run.length > 0) {
        const middle: Xy = [(foot[0] + p[0]) / 2, (foot[1] + p[1]) / 2];
        // Between two crests the face itself falls away under the line from foot to foot: what fills a valley is as
        // large as it is high over the face, place by place.
        const size = overMm(middle) > OFF_MM ? highSum * stepMm : areaMm2([foot, ...run, p]);
        const hangs = Math.hypot(p[0] - foot[0], p[1] - foot[1]) < THREAD_MM && size <= SHAVING_MM2;
        if (!hangs && size >= FIN_MM * highMm) solid.push(...run);
      }
      if (i < places.length) solid.push(p);
      run = [];
      highMm = 0;
      highSum = 0;
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
