/** Lamps: what is allowed, and where their light travels. */
import type { Point } from "../curve/index.ts";
import { asinRad, cataloguedTrouble, fine, type Outcome, refused, toDeg, toRad } from "../measure/index.ts";
import type { Hanging, Lamp, LightDirection } from "./types.ts";

/** A lamp nearer than this to the wall's own plane only grazes it; nothing could be judged by it, degrees. */
export const MOST_LAMP_DEG = 89;

/** As much light from everywhere as walls and ceiling of a room send back: common practice, no source. */
export const USUAL_AMBIENT_RATIO = 0.25;

/**
 * Over the left shoulder, drawn at 45° in plan and in elevation, so that a shadow is as deep as what casts it stands
 * out. Source: J. Gwilt, Encyclopaedia of Architecture, art. 2460; W. R. Ware, Shades and Shadows (1912).
 */
export const DRAWING_LAMP: Lamp = { heightDeg: 45, directionDeg: 45, ambientRatio: USUAL_AMBIENT_RATIO };

/** The lamp, if it stands in front of the wall. Troubles: `light-angle`, `light-ambient`. */
export function checkedLamp(lamp: Lamp): Outcome<Lamp> {
  for (const which of ["height", "direction"] as const) {
    const angleDeg = which === "height" ? lamp.heightDeg : lamp.directionDeg;
    // Written so that what is no number is refused too.
    if (Math.abs(angleDeg) <= MOST_LAMP_DEG) continue;
    return refused(cataloguedTrouble("light-angle", which, { which, angleDeg, mostDeg: MOST_LAMP_DEG }));
  }
  const { ambientRatio } = lamp;
  if (ambientRatio >= 0 && ambientRatio <= 1) return fine(lamp);
  return refused(cataloguedTrouble("light-ambient", "ambient", { percent: ambientRatio * 100 }));
}

/**
 * Where the light travels: right = tan(direction), down = tan(height) for every 1 into the wall, made of length 1.
 * Drawn at 45 and 45 it runs along a cube's diagonal.
 */
export function lightDirection({ heightDeg, directionDeg }: Lamp): LightDirection {
  const right = Math.tan(toRad(directionDeg));
  const down = Math.tan(toRad(heightDeg));
  const length = Math.hypot(right, down, 1);
  return { right: right / length, up: 0 - down / length, out: -1 / length };
}

/** Height of the lamp above level in space, degrees. */
export function trueHeightDeg({ up }: LightDirection): number {
  return 0 - toDeg(asinRad(up));
}

/** A direction in the plane of the section, and which part of the light runs in it. */
export interface SectionRay {
  /** Of length 1, the way the light travels. */
  readonly way: Point;
  readonly angleRad: number;
  /** Cosine of the light's angle to the plane of the section: 1 for light square to the run. */
  readonly shareRatio: number;
}

/** The light seen along the run: a straight run casts its shadows as its section does with this ray. */
export function rayInSection({ right, up, out }: LightDirection, { run }: Pick<Hanging, "run">): SectionRay {
  const along = run === "level" ? up : 0 - right;
  const shareRatio = Math.hypot(out, along);
  const way = { x: out / shareRatio, y: along / shareRatio };
  return { way, angleRad: Math.atan2(way.y, way.x), shareRatio };
}

/** The viewer's own line of sight: what it reaches is seen. */
export const SIGHT: SectionRay = { way: { x: -1, y: 0 }, angleRad: Math.PI, shareRatio: 1 };
