/**
 * Grooves with wood on both sides of a flat sole, and one that runs into an older one at another depth: the plane tips
 * off the older floor, rides on one side of it, or leaves a step that no stop foresaw. Wood does not tell which of its
 * openings were grooves, so each wood that a cut left keeps those it came by.
 */
import { intersection, type Region, regionAreaMm2, regionOfPolygon } from "../curve/index.ts";
import {
  isFlatKind,
  type Pose,
  type Span,
  standingBeside,
  turned,
  turnedBack,
  turnOf,
  wallsBeside,
} from "../cutting/index.ts";
import { type Draft, endsInPlace, type PlaneDraft } from "./draft-cut.ts";

/** A groove as it was cut, in the upright frame of the plane that cut it. */
export interface Slot {
  readonly tiltDeg: number;
  readonly leftMm: number;
  readonly rightMm: number;
  readonly floorMm: number;
  /** Height of the lower of its two sides. */
  readonly depthMm: number;
}

/** Between two openings there stands at least this much, or nothing: a plane set on less breaks it off, mm (common practice, no source). */
export const FIRM_STRIP_MM = 1.5;

/** Lower than this on either side it is a scratch, no groove, mm (common practice, no source, as all here). */
const SLOT_FROM_MM = 0.45;
/** Grooves share a place from this much across on, mm: less is what gauging makes of two that touch. */
const SHARED_MM = 0.25;
/** Floors that differ by less are one, mm. */
const SAME_FLOOR_MM = 0.09;
/** Planes that lean within this of each other cut in one frame, degrees. */
const SAME_FRAME_DEG = 0.9;
/** Grooves of different leans cross from this much on, mm². */
const CROSSING_MM2 = 0.25;

const SLOTS = new WeakMap<Region, readonly Slot[]>();

/** The grooves that wood came by, oldest first; none where it is not told. */
export function slotsIn(wood: Region): readonly Slot[] {
  return SLOTS.get(wood) ?? [];
}

/** Keeps with the wood after a cut the grooves of the wood before it and the cut's own. */
export function keepSlots(before: Region, after: Region, own: readonly Slot[]): void {
  if (after === before) return;
  const older = slotsIn(before);
  if (older.length + own.length > 0) SLOTS.set(after, [...older, ...own]);
}

/** The grooves that a flat plane's cut leaves, one for each of its settings that has wood standing on both sides. */
export function slotsOfCut(before: Region, after: Region, draft: PlaneDraft): readonly Slot[] {
  if (!isFlatKind(draft.tool.plane.kind)) return [];
  return draft.runs.flatMap((run) => {
    const pose = run[run.length - 1] as Pose;
    const ends = endsInPlace(draft, pose);
    const depthMm = Math.min(
      heightOf(standingBeside(after, ends.left, pose, -1)),
      heightOf(standingBeside(after, ends.right, pose, 1)),
    );
    if (depthMm < SLOT_FROM_MM) return [];
    if (Math.max(...wallsBeside(before, after, draft.cut.ends, pose)) < SLOT_FROM_MM) return [];
    const turn = turnOf(pose[2]);
    const [left, right] = [turned(turn, ends.left), turned(turn, ends.right)];
    return [{ tiltDeg: pose[2], leftMm: left.x, rightMm: right.x, floorMm: left.y, depthMm }];
  });
}

/** The first of the earlier cuts into whose groove a cut runs, by its place among them; -1 where it runs into none. */
export function grooveInTheWay(earlier: readonly GroovedCut[], cut: GroovedCut): number {
  const own = slotsOf(cut);
  return own.length === 0 ? -1 : earlier.findIndex((other) => runIntoOlder(own, slotsOf(other)));
}

interface GroovedCut {
  readonly draft: Draft;
  readonly before: Region;
  readonly after: Region;
}

function slotsOf({ draft, before, after }: GroovedCut): readonly Slot[] {
  return draft.kind === "plane" ? slotsOfCut(before, after, draft) : [];
}

/** Whether any of the grooves runs into an older one beside it at another depth, or aslant through it. */
export function runIntoOlder(own: readonly Slot[], older: readonly Slot[]): boolean {
  return own.some((slot) => older.some((other) => runsInto(slot, other)));
}

function runsInto(slot: Slot, older: Slot): boolean {
  if (Math.abs(slot.tiltDeg - older.tiltDeg) > SAME_FRAME_DEG) {
    return regionAreaMm2(intersection(openingOf(slot), openingOf(older))) > CROSSING_MM2;
  }
  const sharedMm = Math.min(slot.rightMm, older.rightMm) - Math.max(slot.leftMm, older.leftMm);
  if (sharedMm < SHARED_MM || slot.floorMm > older.floorMm + older.depthMm) return false;
  // One wide groove of two narrower ones, floor at one level.
  if (Math.abs(slot.floorMm - older.floorMm) < SAME_FLOOR_MM) return false;
  // A narrower groove let into the floor of a wide one.
  const isWithin = slot.leftMm > older.leftMm - SHARED_MM && slot.rightMm < older.rightMm + SHARED_MM;
  const isNarrower = slot.rightMm - slot.leftMm < older.rightMm - older.leftMm - SHARED_MM;
  return !(isWithin && isNarrower && slot.floorMm < older.floorMm);
}

function openingOf({ tiltDeg, leftMm, rightMm, floorMm, depthMm }: Slot): Region {
  const turn = turnOf(tiltDeg);
  const corners = [
    { x: leftMm, y: floorMm },
    { x: rightMm, y: floorMm },
    { x: rightMm, y: floorMm + depthMm },
    { x: leftMm, y: floorMm + depthMm },
  ];
  return regionOfPolygon(corners.map((corner) => turnedBack(turn, corner)));
}

function heightOf(spans: readonly Span[]): number {
  return spans.reduce((sum, [from, to]) => sum + to - from, 0);
}
