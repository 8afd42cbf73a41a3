/**
 * A curved cut with what must go before it: relief where a wall would stand beside it, and a seat where the wood as
 * it stands holds it nowhere.
 */
import { extentsOf, type Region } from "../curve/index.ts";
import { SAME_SCORE, SEARCH_FLATTEN_MM } from "../measure/index.ts";
import type { Bench } from "./bench.ts";
import { clearedFor } from "./clearing.ts";
import { rockedWithin } from "./curves.ts";
import { firstLeanDeg, type PlaneDraft } from "./draft-cut.ts";
import { evenedArrises, reliefEnd, reliefsAt, seatMakers } from "./relief.ts";
import { roughingPool, stepsBesideEnd } from "./roughing.ts";
import {
  isClumsy,
  isCurved,
  LEAST_TAKE_MM2,
  type Refusal,
  seatedOn,
  sinksAslant,
  type TriedCut,
  tryCut,
} from "./try-cut.ts";

/** A rock is drawn in from the side that would leave too much wall, in steps of this, as long as it helps, degrees. */
const DRAW_IN_DEG = 5;
const MOST_DRAWN_IN = 8;

/** As `cutWithHelp`; a rock that no relief makes room for is drawn in until it can be made, rather than given up. */
export function cutWithinRoom(bench: Bench, wood: Region, draft: PlaneDraft): Made {
  const whole = cutWithHelp(bench, wood, draft);
  if (whole.ok || !draft.rock) return whole;
  let rock = draft.rock;
  let refusal = whole.refusal;
  for (let tries = 0; tries < MOST_DRAWN_IN; tries++) {
    // Leaned to the left (a higher tilt) the plane's left end reaches furthest round: the refused side is given up.
    const giveUpHigh = refusal.side === "left";
    const lowDeg = giveUpHigh ? rock.lowDeg : rock.lowDeg + DRAW_IN_DEG;
    const highDeg = giveUpHigh ? rock.highDeg - DRAW_IN_DEG : rock.highDeg;
    if (highDeg - lowDeg < DRAW_IN_DEG / 2) break;
    rock = { ...rock, lowDeg, highDeg };
    const made = cutWithHelp(bench, wood, rockedWithin(bench, draft, lowDeg, highDeg));
    if (made.ok) return made;
    refusal = made.refusal;
  }
  return whole;
}

export type Made =
  | { readonly ok: true; readonly cuts: readonly TriedCut[] }
  | { readonly ok: false; readonly refusal: Refusal };

/** What was found for a curved cut: the cuts that must go before it, or why it is refused. */
type Known = { readonly helpers: readonly PlaneDraft[] } | { readonly refusal: Refusal };

const KNOWN = new WeakMap<Bench, Map<string, Known>>();
const CLEARED = new WeakMap<Bench, Map<string, Known>>();

/**
 * A curved cut with what must go before it: relief where a wall would stand, then a seat where none holds it.
 *
 * Asked once for each look of the wood near the arc: orders that differ only far away from it need the same help.
 * What was found is made again on the wood at hand, and looked for anew if it does not serve there.
 */
export function cutWithHelp(bench: Bench, wood: Region, draft: PlaneDraft): Made {
  return madeOnce(KNOWN, bench, wood, draft, cutWithNewHelp);
}

/** As `cutWithHelp`; where that does not free the cut, waste is cleared away before it as well. */
export function cutWithClearing(bench: Bench, wood: Region, draft: PlaneDraft): Made {
  const plain = cutWithHelp(bench, wood, draft);
  return plain.ok
    ? plain
    : madeOnce(CLEARED, bench, wood, draft, () => clearedCut(bench, wood, draft, plain));
}

function clearedCut(bench: Bench, wood: Region, draft: PlaneDraft, plain: Made): Made {
  const cleared = clearedFor(bench, wood, draft);
  if (!cleared) return plain;
  const made = cutWithHelp(bench, cleared[cleared.length - 1]?.after ?? wood, draft);
  return made.ok ? { ok: true, cuts: [...cleared, ...made.cuts] } : made;
}

function madeOnce(
  book: WeakMap<Bench, Map<string, Known>>,
  bench: Bench,
  wood: Region,
  draft: PlaneDraft,
  make: (bench: Bench, wood: Region, draft: PlaneDraft) => Made,
): Made {
  const known = book.get(bench) ?? new Map<string, Known>();
  book.set(bench, known);
  const key = `${draft.key}/${lookNear(bench, wood, draft)}`;
  const before = known.get(key);
  if (before && "refusal" in before) return { ok: false, refusal: before.refusal };
  const again = before ? madeAgain(bench, wood, before.helpers, draft) : null;
  if (again) return again;
  const made = make(bench, wood, draft);
  const helpers = made.ok ? made.cuts.slice(0, -1).map((cut) => cut.draft as PlaneDraft) : [];
  known.set(key, made.ok ? { helpers } : { refusal: made.refusal });
  return made;
}

function madeAgain(
  bench: Bench,
  wood: Region,
  helpers: readonly PlaneDraft[],
  draft: PlaneDraft,
): Made | null {
  const cuts: TriedCut[] = [];
  let before = wood;
  for (const cut of [...helpers, draft]) {
    const tried = tryCut(bench, before, cut);
    if (tried.takesMm2 < LEAST_TAKE_MM2) {
      if (cut === draft) return { ok: true, cuts: [] };
      continue;
    }
    if (tried.refusals.length > 0) return null;
    cuts.push(tried);
    before = tried.after;
  }
  return { ok: true, cuts };
}

function cutWithNewHelp(bench: Bench, wood: Region, draft: PlaneDraft): Made {
  const bare = tryCut(bench, wood, draft);
  if (bare.takesMm2 < LEAST_TAKE_MM2) return { ok: true, cuts: [] };
  const roomy = withRoom(bench, wood, draft);
  if (!roomy.ok) return roomy;
  const cuts = [...roomy.cuts];
  let before = cuts[cuts.length - 1]?.after ?? wood;
  let tried = tryCut(bench, before, draft);
  if (tried.takesMm2 < LEAST_TAKE_MM2) return { ok: true, cuts };
  if (isCurved(draft) && !tried.seat) {
    const seated = makeSeat(bench, before, draft);
    if (seated) {
      cuts.push(...seated);
      before = (seated[seated.length - 1] as TriedCut).after;
      tried = tryCut(bench, before, draft);
    }
  }
  return { ok: true, cuts: [...cuts, tried] };
}

/** The cuts after which no rule forbids the draft: a line to each side where a wall would stand. */
function withRoom(bench: Bench, wood: Region, draft: PlaneDraft): Made {
  const cuts: TriedCut[] = [];
  let before = wood;
  for (const side of ["left", "right"] as const) {
    if (!wallRefused(tryCut(bench, before, draft), side)) continue;
    const relieved = relieve(bench, before, draft, side);
    if (!relieved) break;
    cuts.push(relieved);
    before = relieved.after;
  }
  const refusal = tryCut(bench, before, draft).refusals[0];
  return refusal ? { ok: false, refusal } : { ok: true, cuts };
}

function wallRefused(tried: TriedCut, side: "left" | "right"): boolean {
  return tried.refusals.some((r) => r.rule === "wall" && r.side === side);
}

/**
 * The cut that makes room at one end of a curved cut: a step from an edge, where one stands right at that end and takes
 * waste worth a setting; else the likeliest line. A clumsy one only where no other serves.
 */
function relieve(bench: Bench, before: Region, draft: PlaneDraft, side: "left" | "right"): TriedCut | null {
  return relievedBy(bench, before, draft, side, false) ?? relievedBy(bench, before, draft, side, true);
}

function relievedBy(
  bench: Bench,
  before: Region,
  draft: PlaneDraft,
  side: "left" | "right",
  mayBeClumsy: boolean,
): TriedCut | null {
  const end = reliefEnd(draft, side);
  const steps = stepsBesideEnd(bench, draft, end, side);
  const serves = (relief: PlaneDraft): TriedCut | null => {
    const made = tryCut(bench, before, relief);
    if (made.refusals.length > 0 || (isClumsy(made) && !mayBeClumsy)) return null;
    return wallRefused(tryCut(bench, made.after, draft), side) ? null : made;
  };
  for (const step of steps) {
    const tried = tryCut(bench, before, step);
    if (tried.takesMm2 < LEAST_STEP_MM2 || tried.guide?.kind !== "edge") continue;
    const made = serves(step);
    if (made) return made;
  }
  for (const relief of reliefsAt(bench, before, draft, side)) {
    const made = serves(relief);
    if (made) return made;
  }
  return null;
}

/** A step that takes less is not worth its setting in place of a line, mm². */
const LEAST_STEP_MM2 = 1;

/** The outline of the wood within a sole's width of an arc, as text. */
function lookNear(bench: Bench, wood: Region, draft: PlaneDraft): string {
  const piece = bench.planned.pieces[draft.shapes[0] ?? 0];
  const reach = draft.tool.sole.widthMm;
  const { minX, maxX } = extentsOf(piece);
  const places: number[] = [];
  for (const ring of wood)
    for (let i = 0; i < ring.xs.length; i++) {
      if (ring.xs[i] < minX - reach || ring.xs[i] > maxX + reach) continue;
      places.push(Math.round(ring.xs[i] / SEARCH_FLATTEN_MM), Math.round(ring.ys[i] / SEARCH_FLATTEN_MM));
    }
  return places.join(",");
}

/**
 * Cuts that give a curved plane a seat: of all single ones that do, the best held at the least waste; else the
 * first set of several that does; one that leaves a fin only where none else does. A single cut is a plough's groove, a line, a step or a chamfer over the arc.
 */
function makeSeat(bench: Bench, before: Region, draft: PlaneDraft): TriedCut[] | null {
  return seatMade(bench, before, draft, false) ?? seatMade(bench, before, draft, true);
}

function seatMade(bench: Bench, before: Region, draft: PlaneDraft, mayLeaveFin: boolean): TriedCut[] | null {
  const sets = seatMakers(bench, before, draft);
  const piece = bench.worked.find((w) => w.index === draft.shapes[0]);
  const pool = piece ? roughingPool(bench, [piece]).map((cut) => [cut]) : [];
  let best: { made: TriedCut[]; score: number } | null = null;
  for (const set of [...sets.filter((s) => s.length === 1), ...pool]) {
    const made = seatAfter(bench, before, set, draft, mayLeaveFin);
    if (made && (!best || made.score > best.score + SAME_SCORE)) best = made;
  }
  if (!best && bench.effort.isThorough)
    best = evenedAfter(bench, before, [...sets.filter((s) => s.length === 1), ...pool], draft, mayLeaveFin);
  if (best) return best.made;
  for (const set of sets) {
    if (set.length === 1) continue;
    const made = seatAfter(bench, before, set, draft, mayLeaveFin);
    if (made) return made.made;
  }
  return null;
}

/** How many single cuts are followed by a shaving off the higher arris before a seat is given up. */
const MOST_EVENED = 12;

/** One cut that takes waste, then a shaving off the arris that still stands higher. */
function evenedAfter(
  bench: Bench,
  before: Region,
  singles: readonly (readonly PlaneDraft[])[],
  draft: PlaneDraft,
  mayLeaveFin: boolean,
): { made: TriedCut[]; score: number } | null {
  const first = singles
    .flatMap(([cut]) => (cut ? [tryCut(bench, before, cut)] : []))
    .filter(
      (tried) =>
        tried.refusals.length === 0 && tried.guide?.kind !== "batten" && tried.takesMm2 >= LEAST_TAKE_MM2,
    )
    .sort((a, b) => b.takesMm2 - a.takesMm2)
    .slice(0, MOST_EVENED);
  let best: { made: TriedCut[]; score: number } | null = null;
  for (const tried of first) {
    for (const shaving of evenedArrises(bench, tried.after, draft)) {
      const made = seatAfter(bench, before, [tried.draft as PlaneDraft, shaving], draft, mayLeaveFin);
      if (made && (!best || made.score > best.score + SAME_SCORE)) best = made;
    }
  }
  return best;
}

/** Makes a set of cuts and, if they may be made and the plane is held after them, how good that is. */
function seatAfter(
  bench: Bench,
  before: Region,
  set: readonly PlaneDraft[],
  draft: PlaneDraft,
  mayLeaveFin: boolean,
): { made: TriedCut[]; score: number } | null {
  const made: TriedCut[] = [];
  let wood = before;
  for (const cut of set) {
    const tried = tryCut(bench, wood, cut);
    if (tried.refusals.length > 0 || tried.guide?.kind === "batten") return null;
    if (tried.intoGroove || (tried.fin && !mayLeaveFin) || sinksAslant(bench, tried)) return null;
    if (tried.takesMm2 < LEAST_TAKE_MM2) continue;
    made.push(tried);
    wood = tried.after;
  }
  if (made.length === 0) return null;
  // The seat is told without making the cut, and most cuts give none.
  if (!seatedOn(bench, wood, draft)) return null;
  const tried = tryCut(bench, wood, draft);
  if (!tried.seat || tried.refusals.length > 0) return null;
  const held = Math.min(tried.seat.ratio, bench.limits.seatWellHeldRatio) / bench.limits.seatWellHeldRatio;
  // Waste that the helping cut takes is waste the curved plane need not: it counts for it, up to a point.
  const spared = Math.min(1, made.reduce((sum, cut) => sum + cut.takesMm2, 0) / 40);
  const slivers = made.filter((cut) => cut.takesMm2 < SLIVER_CUT_MM2).length;
  return { made, score: held * 2 + spared - firstLeanDegOfAll(made) / 90 - slivers * SLIVER_CUT_COST };
}

/** A helping cut that takes less than this is hardly one, mm²; what it weighs against in the score of a seat. */
const SLIVER_CUT_MM2 = 1;
const SLIVER_CUT_COST = 0.6;

function firstLeanDegOfAll(cuts: readonly TriedCut[]): number {
  return cuts.reduce(
    (most, cut) => (cut.draft.kind === "plane" ? Math.max(most, Math.abs(firstLeanDeg(cut.draft))) : most),
    0,
  );
}
