/**
 * Waste taken elsewhere so that a later cut is not needed at all: a groove moved over until its own arrises hold the
 * curve that otherwise wants a seat made for it.
 */
import type { Region } from "../curve/index.ts";
import { cutAway, soleHeightMm, turned, turnedBack, turnOf } from "../cutting/index.ts";
import { SAME_POINT_MM, SAME_SCORE } from "../measure/index.ts";
import { along, type Bench, type Tool } from "./bench.ts";
import { type Draft, isCurved, type PlaneDraft, sweepOfDraft } from "./draft-cut.ts";
import { loweredAt } from "./lowered-at.ts";
import { roughingPool } from "./roughing.ts";
import { seatedOn } from "./seated.ts";
import { leftMm2, makeAll, placesCost, SAME_LEFT_MM2, type Sequence } from "./sequence.ts";
import { FIRM_STRIP_MM, slotsIn } from "./slots.ts";
import { isClumsy, type TriedCut } from "./try-cut.ts";
import type { WorkedPiece } from "./worked-piece.ts";

/** Other places of one cut of waste that are worked through to the end, at most. */
const MOST_WORKED_THROUGH = 8;

/** The sequence, each cut that only makes a seat left out where an earlier cut of waste can be placed so that it makes that seat too. */
export function withSeatsFromWaste(bench: Bench, wood: Region, sequence: Sequence): Sequence {
  if (!sequence.allowed) return sequence;
  let best = sequence;
  for (let at = best.cuts.length - 1; at > 0; at--) best = withoutHelper(bench, wood, best, at) ?? best;
  return best;
}

/** Whether a cut takes waste with a flat plane, and so may be there for the sake of a seat alone. */
function takesWaste(cut: TriedCut | undefined): cut is TriedCut & { readonly draft: PlaneDraft } {
  return cut?.draft.kind === "plane" && cut.draft.purpose === "waste" && !isCurved(cut.draft);
}

/** The cheapest sequence without the helper, an earlier cut of the same curve's waste placed elsewhere; null where none costs less. */
function withoutHelper(bench: Bench, wood: Region, sequence: Sequence, helperAt: number): Sequence | null {
  if (!takesWaste(sequence.cuts[helperAt])) return null;
  const curveAt = curveHeldBy(bench, wood, sequence, helperAt);
  const curve = sequence.cuts[curveAt]?.draft;
  if (curve?.kind !== "plane") return null;
  const piece = bench.worked.find(({ index }) => index === curve.shapes[0]);
  if (!piece) return null;
  let best: Sequence | null = null;
  let leastCost = placesCost(bench, sequence) - SAME_SCORE;
  let workedThrough = 0;
  for (let wasteAt = helperAt - 1; wasteAt >= 0; wasteAt--) {
    const waste = sequence.cuts[wasteAt];
    if (!takesWaste(waste)) continue;
    for (const other of otherPlaces(bench, waste, curve, piece)) {
      if (!seatsInstead(bench, wood, sequence, { helperAt, wasteAt, curveAt, other })) continue;
      if (++workedThrough > MOST_WORKED_THROUGH) return best;
      const made = makeAll(bench, wood, draftsWith(sequence, helperAt, wasteAt, other));
      if (!isAsGood(bench, made, sequence)) continue;
      const cost = placesCost(bench, made);
      if (cost >= leastCost) continue;
      best = made;
      leastCost = cost;
    }
  }
  return best;
}

/** The place of the curved cut that nothing holds once the helper is gone; -1 where the helper makes no seat. */
function curveHeldBy(bench: Bench, wood: Region, sequence: Sequence, helperAt: number): number {
  let before = sequence.cuts[helperAt]?.before ?? wood;
  for (let i = helperAt + 1; i < sequence.cuts.length; i++) {
    const { draft, seat } = sequence.cuts[i] as TriedCut;
    if (draft.kind === "plane" && seat && !seatedOn(bench, before, draft)) return i;
    before = cutAway(before, sweepOfDraft(draft));
  }
  return -1;
}

/** Where else the same waste could be taken: over the curve, and, a groove, closed up to an older one or about the curve's axis. */
function otherPlaces(
  bench: Bench,
  { draft, before }: TriedCut & { readonly draft: PlaneDraft },
  curve: PlaneDraft,
  piece: WorkedPiece,
): PlaneDraft[] {
  const over = roughingPool(bench, [piece]).filter(({ work }) => work === draft.work);
  const more = draft.work === "groove" ? groovesAbout(bench, before, draft, curve) : [];
  const places = new Map([...more, ...over].map((other) => [other.key, other]));
  places.delete(draft.key);
  return [...places.values()].filter((other) => other.work !== "groove" || standsFirm(other, before));
}

/** A groove's middle is tried this far to either side of the curve's axis, mm. */
const ASIDE_MM = [0, 0.5, -0.5, 1, -1];
/** A groove narrower than this share of the curved plane carries it badly, one wider leaves it no arris. */
const SHARES_OF_SOLE = [0.3, 0.85] as const;

/** Grooves whose two arrises may carry the curved plane, about its axis at the height where it begins; the widest first. */
function groovesAbout(bench: Bench, before: Region, draft: PlaneDraft, curve: PlaneDraft): PlaneDraft[] {
  const tiltDeg = draft.runs[0][0][2];
  const [pose] = curve.runs[0];
  const sagittaMm = soleHeightMm(curve.cut.shape, curve.cut.shape.rightMm);
  const up = turnedBack(turnOf(pose[2]), { x: 0, y: 1 });
  const axisMm = turned(turnOf(tiltDeg), along({ x: pose[0], y: pose[1] }, up, 2 * sagittaMm)).x;
  const slots = slotsIn(before).filter((slot) => slot.tiltDeg === tiltDeg);
  return bench.tools
    .filter((tool) => tool.plane === draft.tool.plane && carries(tool, curve))
    .sort((a, b) => b.sole.widthMm - a.sole.widthMm)
    .flatMap((tool) => {
      const { leftMm, rightMm } = tool.sole;
      const beside = slots.flatMap((slot) => [slot.rightMm - leftMm, slot.leftMm - rightMm]);
      const about = ASIDE_MM.map((aside) => axisMm + aside - (leftMm + rightMm) / 2);
      return [...beside, ...about].flatMap((shift) => loweredAt(bench, draft, tool, [shift]) ?? []);
    });
}

/** Whether enough wood, or none, is left between a groove and every older one of the same lean. */
function standsFirm({ tool, runs }: PlaneDraft, before: Region): boolean {
  const [x, y, tiltDeg] = runs[0][0];
  const at = turned(turnOf(tiltDeg), { x, y }).x;
  return slotsIn(before).every((slot) => {
    const stripMm = Math.max(at + tool.sole.leftMm - slot.rightMm, slot.leftMm - at - tool.sole.rightMm);
    return slot.tiltDeg !== tiltDeg || stripMm < SAME_POINT_MM || stripMm >= FIRM_STRIP_MM;
  });
}

function carries(tool: Tool, curve: PlaneDraft): boolean {
  const share = tool.sole.widthMm / curve.tool.sole.widthMm;
  return share >= SHARES_OF_SOLE[0] && share <= SHARES_OF_SOLE[1];
}

interface Exchange {
  readonly helperAt: number;
  readonly wasteAt: number;
  readonly curveAt: number;
  readonly other: PlaneDraft;
}

/** Whether the curve has a seat after the exchange, told by what is removed alone. */
function seatsInstead(bench: Bench, wood: Region, sequence: Sequence, exchange: Exchange): boolean {
  const { helperAt, wasteAt, curveAt, other } = exchange;
  let before = sequence.cuts[wasteAt]?.before ?? wood;
  before = cutAway(before, sweepOfDraft(other));
  for (let i = wasteAt + 1; i < curveAt; i++) {
    if (i !== helperAt) before = cutAway(before, sweepOfDraft((sequence.cuts[i] as TriedCut).draft));
  }
  const curve = sequence.cuts[curveAt]?.draft;
  return curve?.kind === "plane" && seatedOn(bench, before, curve);
}

function draftsWith(sequence: Sequence, helperAt: number, wasteAt: number, other: PlaneDraft): Draft[] {
  return sequence.cuts.flatMap(({ draft }, i) => (i === helperAt ? [] : [i === wasteAt ? other : draft]));
}

function isAsGood(bench: Bench, made: Sequence, than: Sequence): boolean {
  if (
    !made.allowed ||
    made.cuts.some((cut) => isClumsy(cut) && !than.cuts.some(({ draft }) => draft === cut.draft))
  )
    return false;
  return leftMm2(bench, made.wood) <= leftMm2(bench, than.wood) + SAME_LEFT_MM2;
}
