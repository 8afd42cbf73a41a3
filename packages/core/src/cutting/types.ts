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
  /** Expected error, mm, 95 %. */
  readonly error: number;
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
  readonly error: number;
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

export interface PlanWay {
  readonly way: string;
  readonly cuts: number;
  readonly settings: number;
  readonly minutes: number;
  readonly why: string;
}

export interface Plan {
  readonly format: "mouldwright/plan";
  readonly version: 1;
  readonly unit: "mm";
  readonly name: string;
  readonly tolerance: number;
  /** The shelf file as read, defaults filled in. */
  readonly shelf: unknown;
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
  readonly cuts: readonly PlanCut[];
  readonly finish: {
    readonly proud: number;
    readonly under: number;
    readonly rms: number;
    readonly joins: readonly PlanJoin[];
  };
  readonly uncut: readonly PlanUncut[];
}
