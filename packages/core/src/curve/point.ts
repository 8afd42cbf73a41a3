import { requireFinite, SAME_POINT_MM } from "../measure/index.ts";
import type { Point } from "./types.ts";

/** Throws a bug that names the number unless it is finite; gives it back without a negative zero. */
export function finite(name: string, value: number): number {
  return requireFinite(name, value) + 0;
}

/** The point (x, y), mm. Throws a bug for a number that is not finite. */
export function point(x: number, y: number): Point {
  return { x: finite("x", x), y: finite("y", y) };
}

/** Straight-line distance, mm. */
export function distanceMm(a: Point, b: Point): number {
  // Math.hypot guards against overflow that lengths in mm never meet, and costs five times as much.
  const dx = b.x - a.x;
  const dy = b.y - a.y;
  return Math.sqrt(dx * dx + dy * dy);
}

export function addPoints(a: Point, b: Point): Point {
  return { x: a.x + b.x, y: a.y + b.y };
}

/** a − b. */
export function subtractPoints(a: Point, b: Point): Point {
  return { x: a.x - b.x, y: a.y - b.y };
}

export function scalePoint(a: Point, factor: number): Point {
  return { x: a.x * factor + 0, y: a.y * factor + 0 };
}

/** Scalar product of two vectors, mm². */
export function dot(a: Point, b: Point): number {
  return a.x * b.x + a.y * b.y;
}

/** Signed area of the parallelogram of two vectors, mm²; positive if b points to the left of a. */
export function cross(a: Point, b: Point): number {
  return a.x * b.y - a.y * b.x;
}

/** Turns about the origin, radians anticlockwise. */
export function turnPoint(p: Point, angleRad: number): Point {
  const cos = Math.cos(angleRad);
  const sin = Math.sin(angleRad);
  return { x: p.x * cos - p.y * sin + 0, y: p.x * sin + p.y * cos + 0 };
}

/** The point at `t` from a (0) to b (1); exactly a and exactly b at the ends. */
export function lerpPoint(a: Point, b: Point, t: number): Point {
  if (t === 1) return b;
  return { x: a.x + (b.x - a.x) * t, y: a.y + (b.y - a.y) * t };
}

/** The one equality of points: straight-line distance at most `tolMm`. */
export function samePoint(a: Point, b: Point, tolMm: number = SAME_POINT_MM): boolean {
  const dx = b.x - a.x;
  const dy = b.y - a.y;
  return dx * dx + dy * dy <= tolMm * tolMm;
}
