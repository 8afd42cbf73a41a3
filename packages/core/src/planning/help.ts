/**
 * A curved cut with what must go before it: relief where a wall would stand beside it, and a seat where the wood as
 * it stands holds it nowhere.
 */
import { extentsOf, type Region } from "../curve/index.ts";
import { SEARCH_FLATTEN_MM } from "../measure/index.ts";
import type { Bench } from "./bench.ts";
import { clearedFor } from "./clearing.ts";
import { rockedWithin } from "./curves.ts";
import { isCurved, type PlaneDraft } from "./draft-cut.ts";
import { makeSeat } from "./make-seat.ts";
import { isNeverGuided, lostItsEdge } from "./never-guided.ts";
import { reliefEnd, reliefsAt } from "./relief.ts";
import { stepsBesideEnd } from "./roughing.ts";
import { isClumsy, LEAST_TAKE_MM2, type Refusal, type TriedCut, tryCut } from "./try-cut.ts";

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
    const isFromEdge = tried.guide?.kind === "edge" || lostItsEdge(bench, tried);
    if (tried.takesMm2 < LEAST_STEP_MM2 || !isFromEdge || isNeverGuided(bench, tried)) continue;
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
