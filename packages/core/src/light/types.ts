/** The plain data of light on a moulding. Frames and signs: see the folder's README. */
import type { Piece, Point } from "../curve/index.ts";

/**
 * A lamp so far off that its light is parallel, as it is drawn: `heightDeg` above level as seen on the end of a level
 * run, `directionDeg` in plan from straight in front, to the left as the viewer stands; both may be less than nought
 * (from below, from the right). `ambientRatio` is the share of light that comes from the whole room in front.
 */
export interface Lamp {
  readonly heightDeg: number;
  readonly directionDeg: number;
  readonly ambientRatio: number;
}

export type StickEdge = "gauge edge" | "far edge";

/**
 * How a run is fixed, its face towards the viewer. `firstEdge` is the upper edge of a level run, the left one of an
 * upright run. `springFromWallDeg` is how far the back leans from the wall, the first edge coming forward.
 */
export interface Hanging {
  readonly run: "level" | "upright";
  readonly firstEdge: StickEdge;
  readonly springFromWallDeg: number;
}

/** Where light of a lamp travels, of length 1: to the viewer's right, up, and out of the wall. */
export interface LightDirection {
  readonly right: number;
  readonly up: number;
  readonly out: number;
}

/** In the light; turned away from it (its own shade); or with another part of the moulding before the lamp. */
export type LightState = "light" | "shade" | "shadow";

/** A length of the face with one state, all of it seen from the front or none. */
export interface Stretch {
  readonly state: LightState;
  readonly isSeen: boolean;
  /** As it hangs, from the first edge on. */
  readonly pieces: readonly Piece[];
  /** Its ends as it hangs: x out from the wall, y from the last edge towards the first, mm. */
  readonly from: Point;
  readonly to: Point;
  /** The same ends in the stick's frame, mm. */
  readonly fromOnStick: Point;
  readonly toOnStick: Point;
  /** Between which distances from the first edge it lies as seen from the front, mm. */
  readonly startMm: number;
  readonly endMm: number;
  /** How wide it shows from the front, mm; 0 where it is not seen. */
  readonly showsMm: number;
  /** Brightness of a matt face, 0 to 1: at both ends, and the least and most between them. */
  readonly brightness: Brightness;
  /** The part of the section it belongs to; empty where none is named. */
  readonly partName: string;
}

export interface Brightness {
  readonly from: number;
  readonly to: number;
  readonly least: number;
  readonly most: number;
}

/** The ray that ends a cast shadow: from what casts it to the shadow's end, as it hangs. */
export interface ShadowEnd {
  readonly caster: Point;
  readonly end: Point;
  /** Length of the ray in space, mm. */
  readonly rayMm: number;
}

/** How much of what is seen lies in each state, mm. */
export type Shares = Readonly<Record<LightState, number>>;

/** How far the moulding's shadow reaches over the wall beyond either edge, mm, and what casts it there. */
export interface WallShadow {
  readonly beyondFirstMm: number;
  readonly beyondLastMm: number;
  readonly firstCaster: Point;
  readonly lastCaster: Point;
}

export interface SectionInLight {
  readonly lamp: Lamp;
  readonly hanging: Hanging;
  readonly direction: LightDirection;
  /** The lamp's height above level in space, degrees: 35.26 for one drawn at 45 and 45. */
  readonly trueHeightDeg: number;
  /** From the first edge to the last. */
  readonly stretches: readonly Stretch[];
  readonly shadowEnds: readonly ShadowEnd[];
  /** What is seen from the front, first edge to last edge, mm. */
  readonly widthMm: number;
  readonly projectionMm: number;
  readonly shares: Shares;
  readonly onWall: WallShadow;
  /** The whole outline as it hangs, anticlockwise with x to the right and y up. */
  readonly outline: readonly Piece[];
}
