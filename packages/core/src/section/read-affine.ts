/** Affine maps of the plane: transforms of SVG, inserts of DXF. */
import type { Point } from "../curve/index.ts";

/** x' = a x + c y + e, y' = b x + d y + f: the order in which SVG's `matrix()` names them. */
export interface Affine {
  readonly a: number;
  readonly b: number;
  readonly c: number;
  readonly d: number;
  readonly e: number;
  readonly f: number;
}

export const IDENTITY: Affine = { a: 1, b: 0, c: 0, d: 1, e: 0, f: 0 };

export function scaling(x: number, y: number): Affine {
  return { a: x, b: 0, c: 0, d: y, e: 0, f: 0 };
}

export function shifting(x: number, y: number): Affine {
  return { a: 1, b: 0, c: 0, d: 1, e: x, f: y };
}

/** Turning anticlockwise where y runs up (clockwise on an SVG's page, where y runs down), radians. */
export function turning(angleRad: number): Affine {
  const cos = Math.cos(angleRad);
  const sin = Math.sin(angleRad);
  return { a: cos, b: sin, c: -sin, d: cos, e: 0, f: 0 };
}

/** `inner` first, then `outer`. */
export function after(outer: Affine, inner: Affine): Affine {
  return {
    a: outer.a * inner.a + outer.c * inner.b,
    b: outer.b * inner.a + outer.d * inner.b,
    c: outer.a * inner.c + outer.c * inner.d,
    d: outer.b * inner.c + outer.d * inner.d,
    e: outer.a * inner.e + outer.c * inner.f + outer.e,
    f: outer.b * inner.e + outer.d * inner.f + outer.f,
  };
}

export function mapPoint(map: Affine, p: Point): Point {
  return { x: map.a * p.x + map.c * p.y + map.e, y: map.b * p.x + map.d * p.y + map.f };
}

/** A difference of points: the shift of the map does not touch it. */
export function mapVector(map: Affine, v: Point): Point {
  return { x: map.a * v.x + map.c * v.y, y: map.b * v.x + map.d * v.y };
}
