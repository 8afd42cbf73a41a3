/** A cut under consideration: plane, poses and what it is meant for, before it has a place in an order. */
import { type Point, type Region, regionAreaMm2 } from "../curve/index.ts";
import {
  type CutShape,
  cutShape,
  leanDeg,
  type Pose,
  type Purpose,
  placedSole,
  type Run,
  sawnAway,
  turned,
  turnOf,
} from "../cutting/index.ts";
import type { Bench, Tool } from "./bench.ts";

/** What a maker would call the doing of it; the words of the sentence follow from it. */
export type DraftWork =
  | "step"
  | "chamfer"
  | "flat"
  | "groove"
  | "wall"
  | "snipe line"
  | "open V"
  | "curve"
  | "ridges"
  | "facets"
  | "saw";

interface DraftBase {
  /** Says the same for the same cut and differs for different ones. */
  readonly key: string;
  readonly work: DraftWork;
  readonly purpose: Purpose;
  readonly cantDeg: number;
  /** Worked pieces (place in the planned ring) that this cut finishes. */
  readonly shapes: readonly number[];
}

/** A line that several cuts share: the axis of a curve to come, and the piece it is for. */
export interface SharedLine {
  readonly at: Point;
  readonly forPiece: number;
}

export interface PlaneDraft extends DraftBase {
  readonly kind: "plane";
  readonly tool: Tool;
  readonly runs: readonly Run[];
  readonly cut: CutShape;
  /** Leans of the first pose that may be used instead, where the sweep stays the same: a rock's two ends, tilt in degrees. */
  readonly rock?: { readonly lowDeg: number; readonly highDeg: number; readonly centre: Point };
  /** Set where the cut opens the line of a curve to come. */
  readonly onLine?: SharedLine;
  /** The curve (place in the planned ring) that the cut makes room for. */
  readonly roomFor?: number;
  /** How high the ridges between its settings are left, where it leaves any, mm. */
  readonly ridgeMm?: number;
  /** What must follow to finish the same arc, with the stick laid otherwise. */
  readonly followedBy?: PlaneDraft;
}

export interface SawDraft extends DraftBase {
  readonly kind: "saw";
  readonly from: Point;
  readonly to: Point;
  readonly sweep: Region;
}

export type Draft = PlaneDraft | SawDraft;

export interface PlaneDraftFacts extends Omit<DraftBase, "key"> {
  readonly tool: Tool;
  readonly runs: readonly Run[];
  readonly rock?: PlaneDraft["rock"];
  readonly onLine?: SharedLine;
  readonly roomFor?: number;
  readonly ridgeMm?: number;
  readonly followedBy?: PlaneDraft;
}

const DRAFTS = new WeakMap<Bench, Map<string, PlaneDraft[]>>();

/** The draft with these facts; drawn once for a bench, since the same cut comes to mind again and again. */
export function planeDraft(bench: Bench, facts: PlaneDraftFacts): PlaneDraft {
  const { tool, runs, cantDeg } = facts;
  const key = `${tool.plane.id}/${tool.sole.widthMm.toFixed(3)}@${cantDeg}:${runs.map(runKey).join("|")}`;
  const drafts = DRAFTS.get(bench) ?? new Map<string, PlaneDraft[]>();
  DRAFTS.set(bench, drafts);
  const alike = drafts.get(key) ?? [];
  drafts.set(key, alike);
  const sameCut = alike.filter((draft) => draft.tool === tool && isSameRuns(draft.runs, runs));
  const known = sameCut.find((draft) => hasFacts(draft, facts));
  if (known) return known;
  const cut =
    sameCut[0]?.cut ?? cutShape(tool.sole.chain, runs, cantDeg, bench.sweepOptions, tool.sole.shoulder);
  const draft = drawn(key, facts, cut);
  alike.push(draft);
  return draft;
}

/** The same draft with its settings in another order, or begun in another pose; its sweep stays the same. */
export function withRuns(bench: Bench, draft: PlaneDraft, runs: readonly Run[]): PlaneDraft {
  const alike = DRAFTS.get(bench)?.get(draft.key) ?? [];
  const known = alike.find(
    (other) => other.tool === draft.tool && isSameRuns(other.runs, runs) && hasFacts(other, draft),
  );
  if (known) return known;
  const other = { ...draft, runs, cut: { ...draft.cut, runs } };
  alike.push(other);
  return other;
}

function drawn(key: string, facts: PlaneDraftFacts, cut: CutShape): PlaneDraft {
  return {
    kind: "plane",
    key,
    work: facts.work,
    purpose: facts.purpose,
    cantDeg: facts.cantDeg,
    shapes: facts.shapes,
    tool: facts.tool,
    runs: facts.runs,
    cut,
    ...(facts.rock ? { rock: facts.rock } : {}),
    ...(facts.onLine ? { onLine: facts.onLine } : {}),
    ...(facts.roomFor === undefined ? {} : { roomFor: facts.roomFor }),
    ...(facts.ridgeMm === undefined ? {} : { ridgeMm: facts.ridgeMm }),
    ...(facts.followedBy ? { followedBy: facts.followedBy } : {}),
  };
}

function isSameRuns(a: readonly Run[], b: readonly Run[]): boolean {
  return (
    a === b ||
    (a.length === b.length &&
      a.every((run, i) => {
        const other = b[i] as Run;
        return run.length === other.length && run.every((pose, k) => isSamePose(pose, other[k] as Pose));
      }))
  );
}

function isSamePose(a: Pose, b: Pose): boolean {
  return a[0] === b[0] && a[1] === b[1] && a[2] === b[2];
}

function hasFacts(draft: PlaneDraft, facts: PlaneDraftFacts): boolean {
  return (
    draft.work === facts.work &&
    draft.purpose === facts.purpose &&
    draft.cantDeg === facts.cantDeg &&
    draft.roomFor === facts.roomFor &&
    draft.ridgeMm === facts.ridgeMm &&
    draft.followedBy === facts.followedBy &&
    draft.shapes.length === facts.shapes.length &&
    draft.shapes.every((shape, i) => shape === facts.shapes[i]) &&
    isSameLine(draft.onLine, facts.onLine) &&
    isSameRock(draft.rock, facts.rock)
  );
}

function isSameLine(a: SharedLine | undefined, b: SharedLine | undefined): boolean {
  if (!a || !b) return a === b;
  return a.forPiece === b.forPiece && a.at.x === b.at.x && a.at.y === b.at.y;
}

function isSameRock(a: PlaneDraft["rock"], b: PlaneDraft["rock"]): boolean {
  if (!a || !b) return a === b;
  return (
    a.lowDeg === b.lowDeg && a.highDeg === b.highDeg && a.centre.x === b.centre.x && a.centre.y === b.centre.y
  );
}

export function sawDraft(
  bench: Bench,
  from: Point,
  to: Point,
  cantDeg: number,
  shapes: readonly number[],
): SawDraft {
  return {
    kind: "saw",
    key: `saw:${[from.x, from.y, to.x, to.y].map((v) => v.toFixed(4)).join(",")}`,
    work: "saw",
    purpose: "saw",
    cantDeg,
    shapes,
    from,
    to,
    sweep: sawnAway(from, to, bench.sweepOptions.reachMm),
  };
}

export function sweepOfDraft(draft: Draft): Region {
  return draft.kind === "saw" ? draft.sweep : draft.cut.sweep;
}

/** Lean of the first pose as the maker holds it, degrees. */
export function firstLeanDeg(draft: PlaneDraft): number {
  return leanDeg((draft.runs[0] as Run)[0][2], draft.cantDeg);
}

export function isCurved(draft: PlaneDraft): boolean {
  return draft.tool.plane.kind === "hollow" || draft.tool.plane.kind === "round";
}

/** The pose of a plane whose origin is given in its own upright frame. */
export function poseAt(tiltDeg: number, shiftMm: number, heightMm: number): Pose {
  const turn = turnOf(tiltDeg);
  return [
    tidy(shiftMm * turn.cos - heightMm * turn.sin),
    tidy(shiftMm * turn.sin + heightMm * turn.cos),
    tidy(tiltDeg),
  ];
}

/** Numbers of a plan are kept to a millionth, so that the same drawing in inches and millimetres gives the same plan. */
export function tidy(value: number): number {
  const rounded = Math.round(value * 1e6) / 1e6;
  return rounded === 0 ? 0 : rounded;
}

/** Extent of a plane's sole across, in its own upright frame, in one pose. */
export function spanAcross(draft: PlaneDraft, pose: Pose): { readonly left: number; readonly right: number } {
  const shift = turned(turnOf(pose[2]), { x: pose[0], y: pose[1] }).x;
  return { left: shift + draft.tool.sole.leftMm, right: shift + draft.tool.sole.rightMm };
}

/** Left and right end of the sole in the stick's frame, in one pose. */
export function endsInPlace(draft: PlaneDraft, pose: Pose): { readonly left: Point; readonly right: Point } {
  const pieces = placedSole(draft.tool.sole.chain, pose).pieces;
  return { left: pieces[0].from, right: pieces[pieces.length - 1].to };
}

export function areaOf(region: Region): number {
  return regionAreaMm2(region);
}

function runKey(run: Run): string {
  const first = run[0];
  const last = run[run.length - 1];
  return `${first.map((v) => v.toFixed(4)).join(",")}>${last.map((v) => v.toFixed(4)).join(",")}`;
}
