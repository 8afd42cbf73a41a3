/**
 * A second route to the mitres, in three dimensions, for the tests only: sticks as bundles of lines, a saw that is set
 * by its two scales, and the walls. It shares no formula with the folder it tests.
 */

export type Vec = readonly [number, number, number];

export const add = (a: Vec, b: Vec): Vec => [a[0] + b[0], a[1] + b[1], a[2] + b[2]];
export const times = (a: Vec, k: number): Vec => [a[0] * k, a[1] * k, a[2] * k];
export const dot = (a: Vec, b: Vec): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
export const apart = (a: Vec, b: Vec): number => Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]);

const radians = (degrees: number) => (degrees * Math.PI) / 180;

export type Turn = (v: Vec) => Vec;

/** Right-handed turns about the axes, degrees. */
export const aboutX =
  (degrees: number): Turn =>
  ([x, y, z]) => {
    const [c, s] = [Math.cos(radians(degrees)), Math.sin(radians(degrees))];
    return [x, y * c - z * s, y * s + z * c];
  };
export const aboutY =
  (degrees: number): Turn =>
  ([x, y, z]) => {
    const [c, s] = [Math.cos(radians(degrees)), Math.sin(radians(degrees))];
    return [x * c + z * s, y, z * c - x * s];
  };
export const aboutZ =
  (degrees: number): Turn =>
  ([x, y, z]) => {
    const [c, s] = [Math.cos(radians(degrees)), Math.sin(radians(degrees))];
    return [x * c - y * s, x * s + y * c, z];
  };

export interface SawSetting {
  readonly mitreDeg: number;
  readonly bevelDeg: number;
  readonly turnHandleTo: "left" | "right" | "neither";
  readonly bladeLeans: "left" | "right" | "upright";
  readonly keep: "left" | "right";
  readonly edgeAtFence: "ceiling edge" | "wall edge";
}

/**
 * The blade as a plane through the table's origin: its direction to the right. Table: x right, y to the fence, z up;
 * the operator stands below y and looks along it. First the blade leans, then the table swings: a handle pushed to the
 * right takes the blade's far end to the left, which is anticlockwise from above.
 */
export function bladeNormal({ mitreDeg, bevelDeg, turnHandleTo, bladeLeans }: SawSetting): Vec {
  // The top goes left by a turn about y against the clock as seen by the operator, which is negative here.
  const lean = bladeLeans === "left" ? -bevelDeg : bladeLeans === "right" ? bevelDeg : 0;
  const swing = turnHandleTo === "right" ? mitreDeg : turnHandleTo === "left" ? -mitreDeg : 0;
  return aboutZ(swing)(aboutY(lean)([1, 0, 0]));
}

/** A point of the section in the flat stick: across its back from the wall's edge, up from its back. */
export interface FlatPoint {
  readonly acrossMm: number;
  readonly upMm: number;
}

/**
 * Where the blade meets the line of one section point, as a distance along the stick (to the right as one faces the
 * wall), the stick lying flat with the stated edge at the fence. With the ceiling's edge there the stick's right is
 * the operator's; with the wall's edge there it has been turned end for end.
 */
export function sawnAt(setting: SawSetting, { acrossMm, upMm }: FlatPoint): number {
  const normal = bladeNormal(setting);
  const turned = setting.edgeAtFence === "ceiling edge" ? 1 : -1;
  const onTable: Vec = [0, turned * acrossMm, upMm];
  const alongTable = -dot(normal, onTable) / normal[0];
  return turned * alongTable;
}

/** On which end of the kept piece the cut lies, seen from the room. */
export function endOfKeptPiece({ keep, edgeAtFence }: SawSetting): "left" | "right" {
  const isStickRight = edgeAtFence === "ceiling edge";
  return (keep === "left") === isStickRight ? "right" : "left";
}

/**
 * A sawn stick put up on a wall: wall frame x right, y into the wall, z up. The back, flat on the table, is turned up
 * to the spring: its normal looked down, now it looks into the corner of wall and ceiling.
 */
export function hung({ acrossMm, upMm }: FlatPoint, alongMm: number, springFromWallDeg: number): Vec {
  // Standing flat against the wall the stick's across is up and its up is out of the wall.
  const upright: Vec = [alongMm, -upMm, acrossMm];
  // Leaning the top out into the room by the spring: z goes to −y.
  return aboutX(springFromWallDeg)(upright);
}

/** A sloping stick: turned in the wall's own plane, up to the right. */
export const raked = (slopeDeg: number): Turn => aboutY(-slopeDeg);

/** The second wall's frame brought to the first's: inside corners come towards the eye, outside ones go away. */
export function onSecondWall(cornerDeg: number, kind: "inside" | "outside"): Turn {
  const turn = 180 - cornerDeg;
  return aboutZ(kind === "inside" ? -turn : turn);
}
