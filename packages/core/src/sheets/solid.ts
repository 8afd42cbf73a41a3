/** Solids for a 3D printer, as binary STL: a length of the moulding, the block that fits it, a gauge for its depths. */
import earcut from "earcut";
import { flatRingOf, ringFromVertices, type Vertex } from "../curve/index.ts";
import type { Plan } from "../cutting/index.ts";
import { cataloguedTrouble, fine, type Outcome, refused } from "../measure/index.ts";
import { negativeOf, PAPER_ALLOWANCE_MM } from "./template-outline.ts";

/** How far the facets of an arc stand from it, mm: a tenth of what a printer's layer shows. */
const FACET_MM = 0.005;

/** A section drawn out along z from 0 to its length: triangles, anticlockwise as seen from outside. */
export interface Solid {
  readonly name: string;
  /** Nine numbers a triangle: three corners, mm. */
  readonly triangles: readonly number[];
}

type Corner = readonly [number, number, number];

/** Anticlockwise ring drawn out to a length; lengths above 0. */
export function drawnOut(name: string, ring: readonly Vertex[], lengthMm: number): Solid {
  const { xs, ys } = flatRingOf(ringFromVertices(ring), FACET_MM);
  const points = Array.from(xs, (x, index) => [x, ys[index] ?? 0] as const);
  const caps = earcut(points.flat());
  const triangles: number[] = [];
  const add = (...corners: readonly Corner[]): void => {
    for (const corner of corners) triangles.push(...corner);
  };
  const at = (index: number, z: number): Corner => {
    const [x, y] = points[index % points.length] as readonly [number, number];
    return [x, y, z];
  };
  for (let i = 0; i < caps.length; i += 3) {
    const turned = orientedUp(points, caps.slice(i, i + 3));
    add(at(turned[0], lengthMm), at(turned[1], lengthMm), at(turned[2], lengthMm));
    add(at(turned[2], 0), at(turned[1], 0), at(turned[0], 0));
  }
  for (let i = 0; i < points.length; i++) {
    add(at(i, 0), at(i + 1, 0), at(i + 1, lengthMm));
    add(at(i, 0), at(i + 1, lengthMm), at(i, lengthMm));
  }
  return { name, triangles };
}

/** The corners of a triangle so that it faces up. */
function orientedUp(
  points: readonly (readonly [number, number])[],
  [i = 0, j = 0, k = 0]: readonly number[],
): readonly [number, number, number] {
  const [a, b, c] = [points[i], points[j], points[k]] as readonly (readonly [number, number])[];
  if (a === undefined || b === undefined || c === undefined) return [i, j, k];
  const area = (b[0] - a[0]) * (c[1] - a[1]) - (c[0] - a[0]) * (b[1] - a[1]);
  return area >= 0 ? [i, j, k] : [k, j, i];
}

/** A length of the finished moulding. */
export function mouldingSolid(plan: Plan, lengthMm: number): Solid {
  return drawnOut(`${plan.name}: moulding`, plan.section, lengthMm);
}

/** The block whose sole is the face's negative, abrasive paper allowed for. */
export function sandingBlockSolid(plan: Plan, lengthMm: number): Solid {
  return drawnOut(`${plan.name}: sanding block`, negativeOf(plan, PAPER_ALLOWANCE_MM), lengthMm);
}

const GAUGE = { barMm: 12, tongueMm: 5, gapMm: 4, endMm: 10, thickMm: 4 } as const;
const ONE_DEPTH_MM = 0.05;

/** The depths a gauge can measure: each distance from the face once, rising, mm. */
export function gaugeDepths(plan: Plan): readonly number[] {
  const depths = plan.marks
    .filter((mark) => mark.kind === "depth" && mark.from === "face" && mark.distance > ONE_DEPTH_MM)
    .map((mark) => mark.distance)
    .sort((a, b) => a - b);
  return depths.filter((depth, index) => index === 0 || depth - (depths[index - 1] ?? 0) >= ONE_DEPTH_MM);
}

/**
 * A bar to lay on the face, with a tongue for every depth, from left to right as they rise; the depth is reached where
 * the bar just bears. Trouble: `sheet-depths-missing`.
 */
export function depthGaugeSolid(plan: Plan): Outcome<Solid> {
  const depths = gaugeDepths(plan);
  if (depths.length === 0) return refused(cataloguedTrouble("sheet-depths-missing", "", { name: plan.name }));
  const { barMm, tongueMm, gapMm, endMm, thickMm } = GAUGE;
  const widthMm = 2 * endMm + depths.length * tongueMm + (depths.length - 1) * gapMm;
  const tongues = depths.flatMap((depth, index): readonly Vertex[] => {
    const left = endMm + index * (tongueMm + gapMm);
    return [
      [left, 0],
      [left, -depth],
      [left + tongueMm, -depth],
      [left + tongueMm, 0],
    ];
  });
  const ring: readonly Vertex[] = [[0, 0], ...tongues, [widthMm, 0], [widthMm, barMm], [0, barMm]];
  return fine(drawnOut(`${plan.name}: depth gauge`, ring, thickMm));
}

const HEADER_BYTES = 80;
const COUNT_BYTES = 4;
const TRIANGLE_BYTES = 50;

/** The bytes of a binary STL file; millimetres, as every printer takes them. Single precision: 7 figures. */
export function writeStl(solid: Solid): Uint8Array {
  const count = solid.triangles.length / 9;
  const bytes = new Uint8Array(HEADER_BYTES + COUNT_BYTES + count * TRIANGLE_BYTES);
  const view = new DataView(bytes.buffer);
  // "solid" at the start would say that the file is text.
  const header = `Mouldwright, millimetres: ${solid.name}`.replace(/[^ -~]/g, "?").slice(0, HEADER_BYTES);
  for (let i = 0; i < header.length; i++) bytes[i] = header.charCodeAt(i);
  view.setUint32(HEADER_BYTES, count, true);
  for (let triangle = 0; triangle < count; triangle++) {
    const corners = solid.triangles.slice(triangle * 9, triangle * 9 + 9);
    const start = HEADER_BYTES + COUNT_BYTES + triangle * TRIANGLE_BYTES;
    const numbers = [...normalOf(corners), ...corners];
    numbers.forEach((value, index) => {
      view.setFloat32(start + index * 4, value, true);
    });
  }
  return bytes;
}

/** The unit step out of a triangle; nothing for one without area, which readers work out for themselves. */
function normalOf(corners: readonly number[]): readonly number[] {
  const [ax = 0, ay = 0, az = 0, bx = 0, by = 0, bz = 0, cx = 0, cy = 0, cz = 0] = corners;
  const [ux, uy, uz] = [bx - ax, by - ay, bz - az];
  const [vx, vy, vz] = [cx - ax, cy - ay, cz - az];
  const normal = [uy * vz - uz * vy, uz * vx - ux * vz, ux * vy - uy * vx];
  const length = Math.hypot(...normal);
  return length === 0 ? [0, 0, 0] : normal.map((value) => value / length);
}
