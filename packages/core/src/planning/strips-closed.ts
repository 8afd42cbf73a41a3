/**
 * Waste cut right up to the opening beside it: where a groove or step would leave a strip too thin to stand between
 * its wall and that of another cut, it is set over until nothing is left between them, or enough to stand.
 */
import type { Region } from "../curve/index.ts";
import { isFlatKind, isInWood, turned, turnedBack, turnOf } from "../cutting/index.ts";
import { SAME_POINT_MM, SAME_SCORE } from "../measure/index.ts";
import type { Bench } from "./bench.ts";
import type { Draft, PlaneDraft } from "./draft-cut.ts";
import { loweredAt } from "./lowered-at.ts";
import { leftMm2, makeAll, placesCost, SAME_LEFT_MM2, type Sequence } from "./sequence.ts";
import { FIRM_STRIP_MM } from "./slots.ts";
import { isClumsy, type TriedCut } from "./try-cut.ts";

/** Strips closed in one sequence, at most. */
const MOST_CLOSED = 8;
/** How far above the higher of its two floors a strip is looked for, mm: lower ones are no more than a burr. */
const STANDS_MM = 0.5;

/**
 * The sequence with such strips closed wherever that costs no more. Wood over the section may grow by `mayLeaveMm2`:
 * before the curves are cut a shaving here or there is still waste.
 */
export function withStripsClosed(
  bench: Bench,
  wood: Region,
  sequence: Sequence,
  mayLeaveMm2 = SAME_LEFT_MM2,
): Sequence {
  let best = sequence;
  for (let closed = 0; closed < MOST_CLOSED; closed++) {
    const next = firstClosed(bench, wood, best, mayLeaveMm2);
    if (!next) break;
    best = next;
  }
  return best;
}

function firstClosed(bench: Bench, wood: Region, sequence: Sequence, mayLeaveMm2: number): Sequence | null {
  if (!sequence.allowed) return null;
  const cost = placesCost(bench, sequence);
  const left = leftMm2(bench, sequence.wood);
  for (const { at, draft } of closings(bench, sequence)) {
    const drafts = sequence.cuts.map((cut, i): Draft => (i === at ? draft : cut.draft));
    const made = makeAll(bench, wood, drafts);
    if (!made.allowed || made.cuts.filter(isClumsy).length > sequence.cuts.filter(isClumsy).length) continue;
    if (leftMm2(bench, made.wood) > left + mayLeaveMm2) continue;
    if (placesCost(bench, made) <= cost + SAME_SCORE) return made;
  }
  return null;
}

/** Each cut of waste that leaves a strip, set over so that it leaves none or a firm one; in the order of the cuts. */
function closings(bench: Bench, { cuts }: Sequence): { readonly at: number; readonly draft: PlaneDraft }[] {
  return cuts.flatMap((cut, at) => {
    const opening = openingOf(cut);
    if (!opening || cut.draft.purpose !== "waste") return [];
    return cuts.flatMap((other, i) => {
      const beside = i === at ? null : openingOf(other);
      if (!beside || beside.tiltDeg !== opening.tiltDeg) return [];
      const stripMm = stripBetween(opening, beside, i > at ? other.after : cut.after);
      if (stripMm === null) return [];
      // Up to the other wall, or far enough from it for what stands between to stand firm.
      const places = [stripMm, stripMm - Math.sign(stripMm) * FIRM_STRIP_MM];
      return places
        .flatMap((overMm) => setOver(bench, opening.draft, overMm) ?? [])
        .map((draft) => ({ at, draft }));
    });
  });
}

/** What a flat plane opens in its first setting, in its own upright frame. */
interface Opening {
  readonly draft: PlaneDraft;
  readonly tiltDeg: number;
  readonly leftMm: number;
  readonly rightMm: number;
  readonly floorMm: number;
}

function openingOf({ draft }: TriedCut): Opening | null {
  if (draft.kind !== "plane" || !isFlatKind(draft.tool.plane.kind)) return null;
  const tiltDeg = draft.runs[0][0][2];
  if (draft.runs.some((run) => run.length > 1 || run[0][2] !== tiltDeg)) return null;
  const places = draft.runs.map(([[x, y]]) => turned(turnOf(tiltDeg), { x, y }));
  const { leftMm, rightMm } = draft.tool.sole;
  return {
    draft,
    tiltDeg,
    leftMm: Math.min(...places.map(({ x }) => x)) + leftMm,
    rightMm: Math.max(...places.map(({ x }) => x)) + rightMm,
    floorMm: Math.max(...places.map(({ y }) => y)),
  };
}

/** How wide the strip between a cut and another one's wall is: to the right of the cut above zero, to its left below; null where none stands. */
function stripBetween(own: Opening, other: Opening, after: Region): number | null {
  const toRight = other.leftMm - own.rightMm;
  const toLeft = own.leftMm - other.rightMm;
  const stripMm = Math.max(toRight, toLeft);
  if (stripMm <= SAME_POINT_MM || stripMm >= FIRM_STRIP_MM) return null;
  const middleMm = toRight > 0 ? own.rightMm + stripMm / 2 : own.leftMm - stripMm / 2;
  const heightMm = Math.max(own.floorMm, other.floorMm) + STANDS_MM;
  const place = turnedBack(turnOf(own.tiltDeg), { x: middleMm, y: heightMm });
  if (!isInWood(after, place)) return null;
  return toRight > 0 ? stripMm : -stripMm;
}

/** The same cut this much further over. */
function setOver(bench: Bench, draft: PlaneDraft, overMm: number): PlaneDraft | null {
  const turn = turnOf(draft.runs[0][0][2]);
  const shifts = draft.runs.map(([[x, y]]) => turned(turn, { x, y }).x + overMm);
  return loweredAt(bench, draft, draft.tool, shifts);
}
