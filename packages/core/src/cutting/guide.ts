/** Whether what a plane is said to run against is there when it is needed, in the cut's first pose. */
import { extentsOf, type Point, type Region, type Ring } from "../curve/index.ts";
import { BESIDE_MM } from "../measure/index.ts";
import type { Plane } from "../shelf/index.ts";
import { armsMmOf, edgeAsItStands, edgeGuides } from "./edge.ts";
import type { CuttingLimits } from "./limits.ts";
import { profileOf, turned, turnedBack, turnOf } from "./profile.ts";
import type { CutShape } from "./simulate.ts";
import { placed, placedSole } from "./sweep.ts";
import type { Plan, PlanCut, Pose } from "./types.ts";
import { type Span, spansAlong, standingBeside } from "./wall.ts";

/** Planes that carry a fence of their own. */
const FENCED: ReadonlySet<string> = new Set(["moving fillister", "plough", "bead"]);

/** The way out of the stick at each of its edges, the gauge edge on the left. */
const OUTWARD: Readonly<Record<string, Point>> = {
  "gauge edge": { x: -1, y: 0 },
  "far edge": { x: 1, y: 0 },
  face: { x: 0, y: 1 },
  back: { x: 0, y: -1 },
};

/** What a plan calls a wall that stands beside the sole and that no single cut of its own left. */
export const STANDING_WALL = "standing wall";

/** A plane's cut, to be made next, with what its guide is told from. */
export interface GuidedCut {
  readonly plan: Plan;
  readonly cut: PlanCut;
  readonly plane: Plane;
  readonly shape: CutShape;
  readonly stick: Ring;
  /** `woods[n]` is the wood after the n-th cut, `woods[0]` the stick; the last is what the cut is made on. */
  readonly woods: readonly Region[];
  readonly limits: CuttingLimits;
}

/**
 * Whether the guide named by `runsAgainst` is there.
 *
 * A line has to be scribed before the cut, a wall to stand beside the sole and, where a cut is named, enough of it to have
 * been left by that one, an edge to lie under the sole or within its fence, and as it then stands to be within reach of a fence or
 * finger. Where an older file does not say which of its two sides a stick's gauge edge is, either serves. A batten is
 * always there: the maker clamps it on.
 */
export function guideIsThere(made: GuidedCut): boolean {
  const { plan, cut, shape, woods, limits } = made;
  const guide = cut.runsAgainst;
  const pose = shape.runs[0]?.[0];
  if (guide === null || guide === "batten" || pose === undefined) return true;
  const line = /^line (\S+)$/.exec(guide);
  if (line) return plan.marks.some((mark) => mark.id === line[1] && mark.before <= cut.number);
  const wall = /^wall of cut (\d+)$/.exec(guide);
  if (wall) return wallStands(shape, pose, Number(wall[1]), woods, limits);
  const now = woods[woods.length - 1];
  if (guide === STANDING_WALL)
    return now !== undefined && wallsBesideSole(shape, pose, now, limits).length > 0;
  return edgeStands(made, guide, pose);
}

/** Whether the named edge is at a side of the stick as it is turned, and what is left of it guides the plane. */
function edgeStands(
  { plan, plane, shape, stick, woods, limits }: GuidedCut,
  edge: string,
  pose: Pose,
): boolean {
  const outward = OUTWARD[edge];
  const now = woods[woods.length - 1];
  if (outward === undefined || now === undefined) return false;
  const { minX, maxX } = extentsOf(placedSole({ pieces: stick.pieces }, [0, 0, shape.cantDeg]));
  const across = turned(turnOf(-shape.cantDeg), outward).x;
  const isEither = plan.gaugeEdge === undefined && outward.x !== 0;
  const isLeft = (plan.gaugeEdge === "right" && outward.x !== 0 ? -across : across) < 0;
  const armsMm = armsMmOf(plane, limits);
  const seen = profileOf(now, pose[2]);
  return (["left", "right"] as const).some((side) => {
    if (!isEither && (side === "left") !== isLeft) return false;
    const at = { side, atMm: side === "left" ? minX : maxX };
    const found = edgeAsItStands(now, seen, shape, pose, at, limits, armsMm);
    return (found.overhangMm > 0 || FENCED.has(plane.kind)) && edgeGuides(found, plane, limits);
  });
}

function wallStands(
  shape: CutShape,
  pose: Pose,
  by: number,
  woods: readonly Region[],
  limits: CuttingLimits,
): boolean {
  const left = woods[by];
  const before = woods[by - 1];
  const now = woods[woods.length - 1];
  if (!left || !before || !now) return false;
  return wallLeftMm(shape, pose, { before, left, now }, limits) >= limits.guideWallMm;
}

/** The sides of a sole, told as they lie across it, beside which a wall stands that a plane can run against in a pose. */
export function wallsBesideSole(
  shape: Pick<CutShape, "ends">,
  pose: Pose,
  wood: Region,
  limits: CuttingLimits,
): readonly ("left" | "right")[] {
  return (["left", "right"] as const).filter(
    (side) => standingWallMm(shape, pose, side, wood, limits) >= limits.guideWallMm,
  );
}

/**
 * How much of an upright face stands beside one end of the sole, above the wood just inside it, mm. It is looked at hard
 * by and at a body's clearance: neither a crack that no body goes into nor a film that gives way to one is a wall.
 */
function standingWallMm(
  { ends }: Pick<CutShape, "ends">,
  pose: Pose,
  side: "left" | "right",
  wood: Region,
  limits: CuttingLimits,
): number {
  const turn = turnOf(pose[2]);
  const up = turnedBack(turn, { x: 0, y: 1 });
  const end = placed(pose, ends[side]);
  const standingAt = (besideMm: number): readonly Span[] => {
    const across = turnedBack(turn, { x: side === "left" ? -besideMm : besideMm, y: 0 });
    return spansAlong(wood, { x: end.x + across.x, y: end.y + across.y }, up);
  };
  const heightsMm = [BESIDE_MM, limits.bodyClearanceMm].map((besideMm) => {
    const outside = standingAt(besideMm);
    return heightWithin(outside, topOf(standingAt(-besideMm)), topOf(outside));
  });
  return Math.min(...heightsMm);
}

/** The wood before and after an earlier cut, and as it stands now. */
export interface WoodsOfWall {
  readonly before: Region;
  readonly left: Region;
  readonly now: Region;
}

/**
 * How much of the wall that a plane can run against in a pose an earlier cut left, mm; 0 where no such wall stands. Two
 * cuts one below the other leave one wall between them.
 */
export function wallLeftMm(
  shape: Pick<CutShape, "ends">,
  pose: Pose,
  { before, left, now }: WoodsOfWall,
  limits: CuttingLimits,
): number {
  const turn = turnOf(pose[2]);
  const up = turnedBack(turn, { x: 0, y: 1 });
  let mostMm = 0;
  for (const side of [-1, 1] as const) {
    const end = placed(pose, side === -1 ? shape.ends.left : shape.ends.right);
    const outside = topOf(standingBeside(now, end, pose, side));
    const inside = topOf(standingBeside(now, end, pose, side === 1 ? -1 : 1));
    if (outside - inside < limits.guideWallMm) continue;
    // Along the wall, just inside it, stood wood that the named cut took.
    const takenMm = (besideMm: number) => {
      const across = turnedBack(turn, { x: -side * besideMm, y: 0 });
      const start: Point = { x: end.x + across.x, y: end.y + across.y };
      const standing = (wood: Region) => heightWithin(spansAlong(wood, start, up), inside, outside);
      return standing(before) - standing(left);
    };
    // Where the wood slopes beside the wall, one place along it reads part of the slope as wall: the lesser is sure.
    mostMm = Math.max(mostMm, Math.min(takenMm(BESIDE_MM), takenMm(limits.bodyClearanceMm)));
  }
  return mostMm;
}

function heightWithin(spans: readonly Span[], fromMm: number, toMm: number): number {
  return spans.reduce(
    (sum, [low, high]) => sum + Math.max(0, Math.min(high, toMm) - Math.max(low, fromMm)),
    0,
  );
}

function topOf(spans: readonly Span[]): number {
  return spans.length > 0 ? (spans[spans.length - 1] as Span)[1] : 0;
}

/** How far the sole reaches beyond the nearer side of the stick as it is turned for the cut, mm; below 0 if inside. */
export function overhangMm(shape: CutShape, pose: Pose, stick: Ring): number {
  const box = extentsOf(placedSole({ pieces: stick.pieces }, [0, 0, shape.cantDeg]));
  const turn = turnOf(-shape.cantDeg);
  const at = turned(turn, { x: pose[0], y: pose[1] });
  const sole = extentsOf(placedSole(shape.sole, [at.x, at.y, pose[2] + shape.cantDeg]));
  return Math.max(box.minX - sole.minX, sole.maxX - box.maxX);
}
