/**
 * What it costs to work curves that stand side by side otherwise than one at a time, each line taken from the foot of the
 * one just made, so that it follows what the plane really cut (common practice, no source). Bands that keep to a width are
 * no matter of this: their lines may be gauged from the edge, all at once.
 */
import { distanceMm } from "../curve/index.ts";
import type { Bench } from "./bench.ts";
import { type Draft, endsInPlace, isCurved } from "./draft-cut.ts";

/**
 * What a curved cut costs beside those made before it: for each line of a neighbour that stands cut already and cannot be
 * taken from this one's foot any more, and for closing a gap between two finished neighbours, both of which it must meet.
 * A line where the two meet is this one's own as well, where it has no other there.
 */
export function rowCost(bench: Bench, draft: Draft, before: readonly Draft[]): number {
  if (draft.kind !== "plane" || !isCurved(draft)) return 0;
  let cost = 0;
  for (const index of draft.shapes) {
    const beside = bench.inBand.has(index) ? [] : curvesTouching(bench, index);
    const open = beside.filter((other) => !before.some((made) => isFinishing(made, other)));
    if (beside.length > 1 && open.length === 0 && !before.some((made) => isFinishing(made, index)))
      cost += bench.weights.closedGap;
    if (open.length === 0) continue;
    const early = before.filter((made) => {
      const served = lineServes(made);
      return served !== null && open.includes(served) && !isOnlyLineAtEnd(bench, before, made, index);
    });
    cost += early.length * bench.weights.earlyLine;
  }
  return cost;
}

function isFinishing(draft: Draft, index: number): boolean {
  return draft.kind === "plane" && isCurved(draft) && draft.shapes.includes(index);
}

/** The curve to come (its place in the planned ring) that a snipe line, a V or a groove is cut for; null for other cuts. */
function lineServes(draft: Draft): number | null {
  if (draft.kind !== "plane" || isCurved(draft)) return null;
  if (draft.onLine) return draft.onLine.forPiece;
  return draft.work === "snipe line" ? (draft.roomFor ?? null) : null;
}

/** Whether a line stands where a curve ends that has no line of its own there. */
function isOnlyLineAtEnd(bench: Bench, before: readonly Draft[], line: Draft, index: number): boolean {
  const own = bench.planned.pieces[index];
  const at = beakMm(line);
  if (!own || at === null) return false;
  const end = [own.from, own.to].find((one) => Math.abs(one.x - at) <= TOUCHES_MM);
  if (!end) return false;
  return !before.some((other) => {
    const otherAt = lineServes(other) === index ? beakMm(other) : null;
    return otherAt !== null && Math.abs(end.x - otherAt) <= TOUCHES_MM;
  });
}

/** Where the beak of a snipe bill's line comes to stand across, mm; null for other cuts. */
function beakMm(draft: Draft): number | null {
  if (draft.kind !== "plane" || draft.tool.plane.kind !== "snipe bill" || draft.onLine) return null;
  const { left, right } = endsInPlace(draft, draft.runs[0][0]);
  return (draft.tool.plane.hand === "right" ? right : left).x;
}

/** Ends of curves nearer than this touch, mm. */
const TOUCHES_MM = 0.5;

const TOUCHING = new WeakMap<Bench, Map<number, readonly number[]>>();

/** The other worked curves that share an end with this one, by their places in the planned ring. */
export function curvesTouching(bench: Bench, index: number): readonly number[] {
  const known = TOUCHING.get(bench) ?? new Map<number, readonly number[]>();
  TOUCHING.set(bench, known);
  const found = known.get(index) ?? touchingOf(bench, index);
  known.set(index, found);
  return found;
}

function touchingOf(bench: Bench, index: number): readonly number[] {
  const own = bench.planned.pieces[index];
  if (!own) return [];
  return bench.worked.flatMap(({ index: other, curve, piece }) => {
    if (other === index || !curve) return [];
    const isTouching = [own.from, own.to].some((end) =>
      [piece.from, piece.to].some((at) => distanceMm(end, at) <= TOUCHES_MM),
    );
    return isTouching ? [other] : [];
  });
}
