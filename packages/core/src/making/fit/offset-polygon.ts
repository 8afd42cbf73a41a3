/** A polygon with each of its sides moved outward by its own distance. */
import { type Point, point } from "../../curve/index.ts";

/**
 * The corners of the polygon whose sides lie `distancesMm` outside of those of the given one (negative: inside),
 * vertices anticlockwise, side i from vertex i to the next. Neighbouring sides must not be parallel: what comes in has
 * corners of 175° at most. Sides may turn round if they are moved in too far: the caller compares directions.
 */
export function offsetPolygon(vertices: readonly Point[], distancesMm: readonly number[]): Point[] {
  const total = vertices.length;
  return vertices.map((vertex, index) => {
    const before = vertices[(index + total - 1) % total] as Point;
    const after = vertices[(index + 1) % total] as Point;
    const incoming = unit(before, vertex);
    const outgoing = unit(vertex, after);
    const a = distancesMm[(index + total - 1) % total] as number;
    const b = distancesMm[index] as number;
    // The outward side of a direction (x, y) is (y, −x). The moved vertex v + d has d·outward = a and b.
    const cross = incoming.x * outgoing.y - incoming.y * outgoing.x;
    return point(
      vertex.x + (b * incoming.x - a * outgoing.x) / cross,
      vertex.y + (b * incoming.y - a * outgoing.y) / cross,
    );
  });
}

export function unit(from: Point, to: Point): Point {
  const length = Math.hypot(to.x - from.x, to.y - from.y);
  return { x: (to.x - from.x) / length, y: (to.y - from.y) / length };
}
