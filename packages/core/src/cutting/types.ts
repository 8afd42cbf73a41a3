/** The plan as its file holds it (millimetres, degrees), and the pieces of it that the cutting model works with. */
import type { Vertex } from "../curve/index.ts";

/** x, y of the sole's origin and the tilt of its axis (0 upright, anticlockwise positive), in the stick's own frame. */
export type Pose = readonly [number, number, number];

/** One movement of the plane: between its poses everything moves linearly. */
export type Run = readonly Pose[];

export type Purpose = "relief" | "waste" | "guide" | "shape" | "finish" | "saw";

export interface SeatFigures {
  /** How much a shift to the easier side lifts the plane, mm. */
  readonly lift: number;
  /** How far from the aim the plane comes to rest, mm across, to the right positive. */
  readonly shift: number;
}

export interface PlanCut {
  readonly number: number;
  readonly purpose: Purpose;
  /** The shelf file's entry of the plane, or a saw. */
  readonly plane: PlaneEntry;
  readonly cant: number;
  readonly sole?: readonly Vertex[];
  readonly runs?: readonly Run[];
  /** Only for a saw: what lies right of it goes. */
  readonly line?: readonly [readonly [number, number], readonly [number, number]];
  readonly after: readonly (readonly Vertex[])[];
  readonly takes: number;
  readonly wall: readonly [number, number];
  readonly seat: SeatFigures | null;
  readonly runsAgainst: string | null;
  /** Distance from the fence's edge to the near side of the cut, mm; present where a fence is used. */
  readonly fence?: number;
  readonly setting: number;
  readonly passes: number;
  readonly shaving: number;
  readonly minutes: number;
  readonly says: string;
  readonly doneWhen: string;
}

/** A plane as it stands in a shelf or plan file; `kind: "saw"` for a saw. */
export type PlaneEntry = Readonly<Record<string, unknown>> & {
  readonly id: string;
  readonly kind: string;
  readonly name?: string;
};

export interface PlanMark {
  readonly id: string;
  /** Scribe it before this cut. */
  readonly before: number;
  readonly kind: "place" | "depth" | "end";
  readonly at: readonly [number, number];
  readonly from: string;
  readonly distance: number;
  readonly fromGaugeEdge: number;
  /** Expected error of what the line serves, across, mm, 95 %. */
  readonly error: number;
  /**
   * What the error is of: the place from the edge it is gauged from, the join with the finished neighbour, or the same
   * join where the line is taken so that the band holds its width.
   */
  readonly serves?: "place" | "join" | "band";
  /** The same error if the line is gauged from an edge. */
  readonly errorFromEdge?: number;
  /** The same if it is taken from the foot of the finished neighbour; absent where there is none. */
  readonly errorFromFoot?: number;
}

/** A row of reeds or flutes that has to keep to a width. */
export interface PlanBand {
  readonly name: string;
  readonly from: readonly [number, number];
  readonly to: readonly [number, number];
  readonly width: number;
  readonly cuts: readonly number[];
  /** From what its lines are taken: whichever gives the width the smaller error. */
  readonly linesFrom: "gauge edge" | "foot";
  /** Expected error of the width, mm, 95 %: as taken, and both ways. */
  readonly error: number;
  readonly errorFromEdge: number;
  readonly errorFromFoot: number;
}

export interface PlanPart {
  readonly id: string;
  readonly kind: string;
  readonly name: string;
  readonly from: readonly [number, number];
  readonly to: readonly [number, number];
  readonly madeBy: readonly number[];
}

export interface PlanJoin {
  readonly at: readonly [number, number];
  readonly kind: "smooth" | "arris" | "quirk" | "step";
  readonly angle: number;
  readonly gap: number;
  /** How far the two parts may stand out from each other across, mm, 95 %. */
  readonly error: number;
  /** The same if the later of the two is placed from an edge, or from the other's foot where that can be. */
  readonly errorFromEdge?: number;
  readonly errorFromFoot?: number;
}

export type UncutRule =
  | "out of reach"
  | "wall"
  | "seat"
  | "body"
  | "bench"
  | "loose wood"
  | "bearing"
  | "lean"
  | "guide";

export interface PlanUncut {
  readonly from: readonly [number, number];
  readonly to: readonly [number, number];
  /** Greatest height of wood left standing, mm. */
  readonly left: number;
  readonly rule: UncutRule;
  readonly why: string;
  readonly try: string;
}

/** A change of the section that was planned: what of it, the stretch it stands on, and how far (to, or by), mm. */
export interface PlanCureChange {
  readonly what: "radius" | "width" | "flat" | "wall";
  readonly from: readonly [number, number];
  readonly to: readonly [number, number];
  readonly toMm?: number;
  readonly byMm?: number;
}

/** What would cure places that stay uncut, or save cuts: told only after it was planned so. */
export interface PlanCure {
  readonly kind: "plane" | "change";
  readonly says: string;
  /** Entries for the shelf, in mm; one, or a pair. */
  readonly planes?: readonly unknown[];
  readonly change?: PlanCureChange;
  /** Which of the plan's uncut places it cures, by their place in `uncut`. */
  readonly places: readonly number[];
  readonly placesBefore: number;
  readonly placesAfter: number;
  readonly cutsBefore: number;
  readonly cutsAfter: number;
  /** How often a plane is set, facets and lines of a curve that is crept over counted; where it is settings that are saved. */
  readonly settingsBefore?: number;
  readonly settingsAfter?: number;
}

export interface PlanWay {
  readonly way: string;
  readonly cuts: number;
  readonly settings: number;
  readonly minutes: number;
  /** How many places stay uncut. */
  readonly uncut?: number;
  /** Cuts of hollows and rounds, and how many of them the wood holds. */
  readonly curved?: number;
  readonly seats?: number;
  /** Lines to scribe, and how many of them can be scribed before the first cut and stand until they are wanted. */
  readonly lines?: number;
  readonly linesAtFirst?: number;
  /** What goes to shavings and what the saw takes off, mm² of the section. */
  readonly planed?: number;
  readonly sawn?: number;
  readonly why: string;
}

/** Where the minutes go, and what they are reckoned with. */
export interface PlanTime {
  readonly totalMinutes: number;
  /** Setting planes and saw: once each, however many sticks are run. */
  readonly settingMinutes: number;
  /** Strokes on all sticks. */
  readonly strokeMinutes: number;
  /** Strokes on the test piece, which is run first at each setting. */
  readonly testPieceMinutes: number;
  readonly sharpeningMinutes: number;
  readonly reckonedWith: Readonly<Record<string, number>>;
}

export interface Plan {
  readonly format: "mouldwright/plan";
  readonly version: 1;
  readonly unit: "mm";
  readonly name: string;
  readonly tolerance: number;
  /** The shelf file as read, defaults filled in. */
  readonly shelf: unknown;
  /** Side of the drawing that the gauge edge lies on; told from the marks where an older file does not say. */
  readonly gaugeEdge?: "left" | "right";
  readonly assumed: readonly string[];
  readonly warnings: readonly string[];
  readonly way: string;
  readonly ways: readonly PlanWay[];
  readonly standing: "proven least" | "best found";
  readonly stick: readonly Vertex[];
  readonly section: readonly Vertex[];
  readonly planned: readonly Vertex[];
  readonly parts: readonly PlanPart[];
  readonly marks: readonly PlanMark[];
  readonly bands?: readonly PlanBand[];
  readonly time?: PlanTime;
  readonly cuts: readonly PlanCut[];
  readonly finish: {
    readonly proud: number;
    readonly under: number;
    readonly rms: number;
    readonly joins: readonly PlanJoin[];
  };
  readonly uncut: readonly PlanUncut[];
  /** Only where a cure was found. */
  readonly cures?: readonly PlanCure[];
}
