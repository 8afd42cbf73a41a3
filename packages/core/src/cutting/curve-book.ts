/** Ids for the circles that soles and sections lie on, so that a cut surface can be given back as arcs. */
import type { Circle, Circles, Point } from "../curve/index.ts";
import { SAME_CIRCLE_MM } from "../measure/index.ts";

export interface CurveBook {
  /** Id of a circle, above 0; the same circle (within `SAME_CIRCLE_MM`) keeps its id. */
  idOf(centre: Point, radiusMm: number): number;
  readonly circles: Circles;
}

/** A new, empty book. It only ever grows, and gives the same ids for the same questions in the same order. */
export function curveBook(): CurveBook {
  const circles = new Map<number, Circle>();
  const byKey = new Map<string, number>();
  return {
    circles,
    idOf(centre, radiusMm) {
      const cell = (v: number) => Math.round(v / SAME_CIRCLE_MM);
      const [cx, cy, cr] = [cell(centre.x), cell(centre.y), cell(radiusMm)];
      // Neighbouring cells are asked too: two readings of one circle may straddle a cell's edge.
      for (let dx = -1; dx <= 1; dx++)
        for (let dy = -1; dy <= 1; dy++)
          for (let dr = -1; dr <= 1; dr++) {
            const known = byKey.get(`${cx + dx},${cy + dy},${cr + dr}`);
            if (known !== undefined) return known;
          }
      const id = circles.size + 1;
      circles.set(id, { centre, radiusMm });
      byKey.set(`${cx},${cy},${cr}`, id);
      return id;
    },
  };
}
