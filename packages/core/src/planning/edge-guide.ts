/**
 * The edges of the stick that a flat plane can run against: one that its sole hangs over, or one that a plough's fence
 * reaches on its arms; as they stand when the cut is made.
 */
import type { Region } from "../curve/index.ts";
import {
  armsMmOf,
  edgeAsItStands,
  edgeGuides,
  leanDeg,
  type Pose,
  turned,
  turnOf,
} from "../cutting/index.ts";
import type { Bench } from "./bench.ts";
import { endsInPlace, type PlaneDraft } from "./draft-cut.ts";
import { seenAt } from "./seen.ts";

export type Edge = "gauge edge" | "far edge" | "face" | "back";

export interface EdgeGuide {
  readonly kind: "edge";
  readonly edge: Edge;
  /** How far the cut's wall lies from the edge, mm. */
  readonly fenceMm: number;
}

/** How far a sole must hang over an edge for a finger to find it, mm. */
const OVERHANG_MM = 0.2;

/** How much nearer than the limits of the cutting model the planner keeps, mm: other routes measure a shade differently. */
const MARGIN_MM = 0.02;

/** The edge that the sole hangs over and a fence or finger finds, or null. */
export function overhangingEdge(
  bench: Bench,
  before: Region,
  draft: PlaneDraft,
  pose: Pose,
): EdgeGuide | null {
  return nearest(standing(bench, before, draft, pose, overhung(bench, draft, pose)));
}

/** The edge that a plough's fence runs on, or null. */
export function fencedEdge(bench: Bench, before: Region, draft: PlaneDraft, pose: Pose): EdgeGuide | null {
  return nearest(standing(bench, before, draft, pose, fenced(bench, draft, pose)));
}

/** Whether a pose would have an edge to run against if the edges still stood as the whole stick's. */
export function hasLostItsEdge(bench: Bench, before: Region, draft: PlaneDraft, pose: Pose): boolean {
  const options = [...overhung(bench, draft, pose), ...fenced(bench, draft, pose)];
  return options.length > 0 && standing(bench, before, draft, pose, options).length === 0;
}

function overhung(bench: Bench, draft: PlaneDraft, pose: Pose): readonly EdgeGuide[] {
  const { low, high } = acrossOf(draft, pose);
  const { left, right, leftAt, rightAt } = edgesBySide(bench, draft.cantDeg);
  const options: EdgeGuide[] = [];
  if (low < leftAt - OVERHANG_MM && high > leftAt)
    options.push({ kind: "edge", edge: left, fenceMm: high - leftAt });
  if (high > rightAt + OVERHANG_MM && low < rightAt)
    options.push({ kind: "edge", edge: right, fenceMm: rightAt - low });
  return options.filter(({ fenceMm }) => fenceMm <= bench.limits.fenceMm);
}

function fenced(bench: Bench, draft: PlaneDraft, pose: Pose): readonly EdgeGuide[] {
  const plane = draft.tool.plane;
  if (plane.kind !== "plough") return [];
  if (Math.abs(leanDeg(pose[2], draft.cantDeg)) >= bench.limits.leaningFromDeg) return [];
  const { low, high } = acrossOf(draft, pose);
  const { left, right, leftAt, rightAt } = edgesBySide(bench, draft.cantDeg);
  const reachMm = Math.min(plane.fenceMm, bench.limits.fenceMm * 2);
  const options: readonly EdgeGuide[] = [
    { kind: "edge", edge: left, fenceMm: low - leftAt },
    { kind: "edge", edge: right, fenceMm: rightAt - high },
  ];
  return options.filter(({ fenceMm }) => fenceMm <= reachMm);
}

/** Where the sole's ends stand across, with the stick turned as for the cut, mm. */
function acrossOf(draft: PlaneDraft, pose: Pose): { readonly low: number; readonly high: number } {
  const ends = endsInPlace(draft, pose);
  const turn = turnOf(-draft.cantDeg);
  const a = turned(turn, ends.left).x;
  const b = turned(turn, ends.right).x;
  return { low: Math.min(a, b), high: Math.max(a, b) };
}

/** Those of the edges that are, as they then stand, upright and within reach of the plane's fence or of a finger. */
function standing(
  bench: Bench,
  before: Region,
  draft: PlaneDraft,
  pose: Pose,
  options: readonly EdgeGuide[],
): readonly EdgeGuide[] {
  if (options.length === 0) return options;
  const { limits } = bench;
  const { left, leftAt, rightAt } = edgesBySide(bench, draft.cantDeg);
  const { plane } = draft.tool;
  const seen = seenAt(before, pose[2]);
  return options.filter(({ edge }) => {
    const at =
      edge === left ? ({ side: "left", atMm: leftAt } as const) : ({ side: "right", atMm: rightAt } as const);
    const found = edgeAsItStands(before, seen, draft.cut, pose, at, limits, armsMmOf(plane, limits));
    return edgeGuides(found, plane, limits, MARGIN_MM);
  });
}

function nearest(options: readonly EdgeGuide[]): EdgeGuide | null {
  let best: EdgeGuide | null = null;
  const gaugeFirst = [...options].sort((a, b) => rankOfEdge(a) - rankOfEdge(b));
  for (const option of gaugeFirst) {
    // The gauge edge is the one everything else is measured from: it is taken unless the other is much nearer.
    if (!best || option.fenceMm < best.fenceMm - 5) best = option;
  }
  return best;
}

function rankOfEdge({ edge }: EdgeGuide): number {
  return edge === "gauge edge" || edge === "face" ? 0 : 1;
}

interface EdgesBySide {
  readonly left: Edge;
  readonly right: Edge;
  readonly leftAt: number;
  readonly rightAt: number;
}

/** The stick's edges to the left and right as it is turned for a cut, and where they stand in that frame. */
function edgesBySide(bench: Bench, cantDeg: number): EdgesBySide {
  const turn = turnOf(-cantDeg);
  const { minX, maxX, minY, maxY } = bench.box;
  const corners = [minX, maxX].flatMap((x) => [minY, maxY].map((y) => turned(turn, { x, y }).x));
  const leftAt = Math.min(...corners);
  const rightAt = Math.max(...corners);
  const names: Record<string, readonly [Edge, Edge]> = {
    "0": ["gauge edge", "far edge"],
    "180": ["far edge", "gauge edge"],
    "90": ["face", "back"],
    "-90": ["back", "face"],
  };
  const [left, right] = names[String(cantDeg)] ?? ["gauge edge", "far edge"];
  const named = (edge: Edge): Edge => (bench.gaugeEdge === "left" ? edge : OTHER_HAND[edge]);
  return { left: named(left), right: named(right), leftAt, rightAt };
}

const OTHER_HAND: Readonly<Record<Edge, Edge>> = {
  "gauge edge": "far edge",
  "far edge": "gauge edge",
  face: "face",
  back: "back",
};
