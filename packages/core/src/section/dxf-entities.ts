/** Entities of a DXF as drawn curves, in the drawing's own units, y up. Other kinds of entity give nothing. */

import type { Point } from "../curve/index.ts";
import { ASLANT_RATIO, FULL_TURN_SLACK } from "../measure/index.ts";
import { type DxfRecord, numberOf, readDxfNumber } from "./dxf-tags.ts";
import { type Affine, IDENTITY, scaling } from "./read-affine.ts";
import { type DrawnCurve, drawnBulge, drawnCircle, mapCurve } from "./read-curves.ts";
import { nurbsPoint } from "./read-nurbs.ts";

/** A run of curves as one entity draws it. */
export interface DxfRun {
  readonly curves: readonly DrawnCurve[];
  readonly closed: boolean;
}

/** Why an entity could not be read. */
export type EntityTrouble = "dxf-entity-broken" | "dxf-out-of-plane";

export const DRAWN_ENTITIES: ReadonlySet<string> = new Set([
  "LINE",
  "ARC",
  "CIRCLE",
  "LWPOLYLINE",
  "POLYLINE",
  "SPLINE",
  "ELLIPSE",
]);

/** `vertices` are the VERTEX records that follow a POLYLINE. */
export function entityRun(record: DxfRecord, vertices: readonly DxfRecord[]): DxfRun | EntityTrouble {
  const facing = facingOf(record);
  if (facing === null) return record.type === "LINE" ? lineRun(record) : "dxf-out-of-plane";
  switch (record.type) {
    case "LINE":
      return lineRun(record);
    case "CIRCLE":
      return circleRun(record, facing);
    case "ARC":
      return arcRun(record, facing);
    case "LWPOLYLINE":
      return polylineRun(lightVertices(record), (numberOf(record, 70, 0) & 1) === 1, facing);
    case "POLYLINE":
      return heavyPolyline(record, vertices, facing);
    case "ELLIPSE":
      return ellipseRun(record, facing);
    case "SPLINE":
      return splineRun(record);
    default:
      return { curves: [], closed: false };
  }
}

/**
 * 1 where an entity's own frame faces up, -1 where it faces down, which mirrors its x (the reference's arbitrary
 * axis for (0, 0, -1)); null where it lies aslant.
 */
function facingOf(record: DxfRecord): 1 | -1 | null {
  const x = numberOf(record, 210, 0);
  const y = numberOf(record, 220, 0);
  const z = numberOf(record, 230, 1);
  const length = Math.hypot(x, y, z);
  if (!(length > 0) || Math.abs(x) + Math.abs(y) > length * ASLANT_RATIO) return null;
  return z > 0 ? 1 : -1;
}

export function facingMap(facing: 1 | -1): Affine {
  return facing === 1 ? IDENTITY : scaling(-1, 1);
}

/** The map of the frame an INSERT's place is given in; null where it lies aslant. */
export function insertFacing(record: DxfRecord): Affine | null {
  const facing = facingOf(record);
  return facing === null ? null : facingMap(facing);
}

function pointOf(record: DxfRecord, code: number): Point {
  return { x: numberOf(record, code, Number.NaN), y: numberOf(record, code + 10, Number.NaN) };
}

function areNumbers(...values: readonly number[]): boolean {
  return values.every(Number.isFinite);
}

function faced(facing: 1 | -1, curve: DrawnCurve): DrawnCurve {
  return facing === 1 ? curve : mapCurve(facingMap(facing), curve);
}

function lineRun(record: DxfRecord): DxfRun | EntityTrouble {
  const from = pointOf(record, 10);
  const to = pointOf(record, 11);
  if (!areNumbers(from.x, from.y, to.x, to.y)) return "dxf-entity-broken";
  return { curves: [{ kind: "line", from, to }], closed: false };
}

function circleRun(record: DxfRecord, facing: 1 | -1): DxfRun | EntityTrouble {
  const centre = pointOf(record, 10);
  const radius = numberOf(record, 40, Number.NaN);
  if (!areNumbers(centre.x, centre.y) || !(radius > 0) || !areNumbers(radius)) return "dxf-entity-broken";
  return { curves: [faced(facing, drawnCircle(centre, radius))], closed: true };
}

function arcRun(record: DxfRecord, facing: 1 | -1): DxfRun | EntityTrouble {
  const centre = pointOf(record, 10);
  const radius = numberOf(record, 40, Number.NaN);
  const startDeg = numberOf(record, 50, 0);
  const endDeg = numberOf(record, 51, 360);
  if (!areNumbers(centre.x, centre.y, radius, startDeg, endDeg) || radius <= 0) return "dxf-entity-broken";
  const startRad = (startDeg * Math.PI) / 180;
  let sweepDeg = (endDeg - startDeg) % 360;
  if (sweepDeg <= 0) sweepDeg += 360;
  const sweepRad = (sweepDeg * Math.PI) / 180;
  const u = { x: radius, y: 0 };
  const v = { x: 0, y: radius };
  const at = (angle: number): Point => ({
    x: centre.x + radius * Math.cos(angle),
    y: centre.y + radius * Math.sin(angle),
  });
  const closed = sweepDeg === 360;
  const from = at(startRad);
  const to = closed ? from : at(startRad + sweepRad);
  return { curves: [faced(facing, { kind: "ellipse", from, to, centre, u, v, startRad, sweepRad })], closed };
}

function ellipseRun(record: DxfRecord, facing: 1 | -1): DxfRun | EntityTrouble {
  const centre = pointOf(record, 10);
  const u = pointOf(record, 11);
  const ratio = numberOf(record, 40, Number.NaN);
  const startRad = numberOf(record, 41, 0);
  const endRad = numberOf(record, 42, 2 * Math.PI);
  if (!areNumbers(centre.x, centre.y, u.x, u.y, ratio, startRad, endRad) || ratio === 0)
    return "dxf-entity-broken";
  // An ellipse stands in the world's frame; only its sense of turning follows the direction it faces.
  const v = { x: -facing * ratio * u.y, y: facing * ratio * u.x };
  let sweepRad = (endRad - startRad) % (2 * Math.PI);
  if (sweepRad <= 0) sweepRad += 2 * Math.PI;
  const at = (t: number): Point => ({
    x: centre.x + u.x * Math.cos(t) + v.x * Math.sin(t),
    y: centre.y + u.y * Math.cos(t) + v.y * Math.sin(t),
  });
  // The full ellipse is written 0 to 6.28318… with as many digits as the program cares for.
  const closed = (2 * Math.PI - sweepRad) * Math.hypot(u.x, u.y) < FULL_TURN_SLACK * Math.hypot(u.x, u.y);
  const from = at(startRad);
  const to = closed ? from : at(startRad + sweepRad);
  const sweep = closed ? 2 * Math.PI : sweepRad;
  return { curves: [{ kind: "ellipse", from, to, centre, u, v, startRad, sweepRad: sweep }], closed };
}

interface BulgeVertex {
  readonly x: number;
  readonly y: number;
  readonly bulge: number;
}

function lightVertices(record: DxfRecord): BulgeVertex[] {
  const vertices: { x: number; y: number; bulge: number }[] = [];
  for (const { code, value } of record.groups) {
    if (code === 10) vertices.push({ x: readDxfNumber(value), y: Number.NaN, bulge: 0 });
    const last = vertices[vertices.length - 1];
    if (last === undefined) continue;
    if (code === 20) last.y = readDxfNumber(value);
    if (code === 42) last.bulge = readDxfNumber(value);
  }
  return vertices;
}

function heavyPolyline(
  record: DxfRecord,
  vertices: readonly DxfRecord[],
  facing: 1 | -1,
): DxfRun | EntityTrouble {
  const flags = numberOf(record, 70, 0);
  const isMesh = (flags & (16 | 64)) !== 0;
  if (isMesh) return { curves: [], closed: false };
  // Points of a spline's frame (16) are not on the curve.
  const onCurve = vertices.filter((vertex) => (numberOf(vertex, 70, 0) & 16) === 0);
  const drawn = onCurve.map((vertex) => ({ ...pointOf(vertex, 10), bulge: numberOf(vertex, 42, 0) }));
  // A polyline in space (8) is given in the world's frame.
  return polylineRun(drawn, (flags & 1) === 1, (flags & 8) !== 0 ? 1 : facing);
}

function polylineRun(
  vertices: readonly BulgeVertex[],
  closed: boolean,
  facing: 1 | -1,
): DxfRun | EntityTrouble {
  if (!vertices.every(({ x, y, bulge }) => areNumbers(x, y, bulge))) return "dxf-entity-broken";
  const curves: DrawnCurve[] = [];
  const last = closed ? vertices.length : vertices.length - 1;
  for (let i = 0; i < last; i++) {
    const { x, y, bulge } = vertices[i]!;
    const to = vertices[(i + 1) % vertices.length]!;
    curves.push(faced(facing, drawnBulge({ x, y }, { x: to.x, y: to.y }, bulge)));
  }
  return { curves, closed: closed && curves.length > 0 };
}

/** Degrees that drawing programs offer. */
const HIGHEST_DEGREE = 25;

function splineRun(record: DxfRecord): DxfRun | EntityTrouble {
  const degree = numberOf(record, 71, 3);
  const knots: number[] = [];
  const weights: number[] = [];
  const points: { x: number; y: number }[] = [];
  for (const { code, value } of record.groups) {
    if (code === 40) knots.push(readDxfNumber(value));
    else if (code === 41) weights.push(readDxfNumber(value));
    else if (code === 10) points.push({ x: readDxfNumber(value), y: Number.NaN });
    else if (code === 20 && points.length > 0) points[points.length - 1]!.y = readDxfNumber(value);
  }
  const count = points.length;
  const whole =
    Number.isInteger(degree) &&
    degree >= 1 &&
    degree <= HIGHEST_DEGREE &&
    count > degree &&
    knots.length === count + degree + 1 &&
    (weights.length === 0 || weights.length === count) &&
    points.every(({ x, y }) => areNumbers(x, y)) &&
    knots.every((knot, i) => areNumbers(knot) && (i === 0 || knot >= knots[i - 1]!)) &&
    weights.every((weight) => areNumbers(weight) && weight > 0) &&
    knots[count]! > knots[degree]!;
  if (!whole) return "dxf-entity-broken";
  const curve = { degree, points, knots, weights: weights.length === 0 ? points.map(() => 1) : weights };
  const from = nurbsPoint(curve, knots[degree]!);
  const to = nurbsPoint(curve, knots[count]!);
  return { curves: [{ kind: "nurbs", from, to, curve }], closed: false };
}
