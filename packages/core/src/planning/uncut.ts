/** What stays uncut: each place with the rule that kept the planes off it, why, and what would cure it. */
import {
  difference,
  type FlatRing,
  nearestOnPiece,
  pointAt,
  type Region,
  regionAreaMm2,
  splitPiece,
} from "../curve/index.ts";
import {
  deepestFrom,
  isFin,
  isFlatKind,
  type PlanUncut,
  type UncutRule,
  withoutFallen,
} from "../cutting/index.ts";
import { OVERCUT_MM, SAME_POINT_MM, SLIVER_MM2 } from "../measure/index.ts";
import type { Bench } from "./bench.ts";
import { tidy } from "./draft-cut.ts";
import type { Refused } from "./order.ts";
import { type Reach, reachAt } from "./reach.ts";
import { type BenchUnit, sayLength } from "./words.ts";
import type { WorkedPiece } from "./worked-piece.ts";

/**
 * Every place where more than the tolerance is left on the wanted section, in the order of the outline.
 *
 * Each piece of leftover wood is told on the stretches of the section that it touches, as high as it stands off each;
 * wood that touches none (a thread between two cuts) is told at the piece nearest to it. What is left is read on the
 * bench of the proof; what could reach it on the search's, whose arcs are coarser.
 */
export function uncutPlaces(
  bench: Bench,
  searched: Bench,
  wood: Region,
  refused: readonly Refused[],
  unit: BenchUnit,
): PlanUncut[] {
  const heavy = difference(withoutFallen(wood, bench.limits.shavingMm2), bench.plannedRegion).filter(
    (ring) =>
      regionAreaMm2([ring]) > SLIVER_MM2 &&
      depthOf(bench, [ring]) > bench.toleranceMm &&
      !isFin(bench.planned, ring),
  );
  const stretches = heavy.flatMap((ring) => {
    const touched = bench.worked.flatMap((piece) => touchedStretches(ring, piece));
    const tall = touched.filter((stretch) => stretch.leftMm > bench.toleranceMm);
    // What only just laps over onto a neighbour is told where it stands, not where it ends.
    const long = tall.filter(({ piece, from, to }) => (to - from) * piece.lengthMm >= LEAST_TOLD_MM);
    if (long.length > 0) return long;
    return tall.length > 0 ? tall : nearestStretch(bench, ring);
  });
  stretches.sort((a, b) => a.piece.index - b.piece.index || a.from - b.from);
  return stretches.map(({ piece, from, to, leftMm }) =>
    uncutPlace(searched, piece, from, to, leftMm, refused, unit),
  );
}

/** Shorter stretches are a lap over from the next one, mm. */
const LEAST_TOLD_MM = 0.3;

/** A stretch of a piece, as shares of its length, and how far the wood that touches it there stands off it. */
interface Stretch {
  readonly piece: WorkedPiece;
  readonly from: number;
  readonly to: number;
  readonly leftMm: number;
}

/** Where a ring of leftover wood lies along a piece: its boundary edges that run on the piece itself, joined up. */
function touchedStretches(ring: FlatRing, piece: WorkedPiece): Stretch[] {
  const spans: [number, number][] = [];
  const n = ring.xs.length;
  for (let i = 0; i < n; i++) {
    const a = { x: ring.xs[i], y: ring.ys[i] };
    const b = { x: ring.xs[(i + 1) % n], y: ring.ys[(i + 1) % n] };
    const middle = { x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 };
    const near = [a, middle, b].map((p) => nearestOnPiece(piece.piece, p));
    if (near.some((one) => one.distanceMm > TOUCHES_MM)) continue;
    const ts = near.map((one) => one.t);
    if ((Math.max(...ts) - Math.min(...ts)) * piece.lengthMm < TOUCHES_MM) continue;
    spans.push([Math.min(...ts), Math.max(...ts)]);
  }
  spans.sort((a, b) => a[0] - b[0]);
  const joined: [number, number][] = [];
  const gap = (2 * TOUCHES_MM) / piece.lengthMm;
  for (const span of spans) {
    const last = joined[joined.length - 1];
    if (last && span[0] <= last[1] + gap) last[1] = Math.max(last[1], span[1]);
    else joined.push([span[0], span[1]]);
  }
  return joined.map(([from, to]) => ({ piece, from, to, leftMm: heightOff(ring, piece, from, to) }));
}

/** An edge of leftover wood this near a piece lies on it, mm: above what flattening an arc leaves between the two. */
const TOUCHES_MM = 0.01;

/** Greatest distance of a ring's boundary from a stretch of a piece, mm. */
function heightOff(ring: FlatRing, piece: WorkedPiece, from: number, to: number): number {
  const stretch = from > 0 ? splitPiece(piece.piece, from)[1] : piece.piece;
  const share = from < 1 ? (to - from) / (1 - from) : 1;
  const only = share > 0 && share < 1 ? splitPiece(stretch, share)[0] : stretch;
  let height = 0;
  const n = ring.xs.length;
  for (let i = 0; i < n; i++) {
    const j = (i + 1) % n;
    for (const k of [0, 0.25, 0.5, 0.75]) {
      const p = {
        x: ring.xs[i] + (ring.xs[j] - ring.xs[i]) * k,
        y: ring.ys[i] + (ring.ys[j] - ring.ys[i]) * k,
      };
      height = Math.max(height, nearestOnPiece(only, p).distanceMm);
    }
  }
  return height;
}

/** For wood that touches no piece: a short stretch of the piece nearest to it. */
function nearestStretch(bench: Bench, ring: FlatRing): Stretch[] {
  const { at, depthMm } = deepestFrom(bench.planned, [ring], OVERCUT_MM);
  const place = at ?? { x: ring.xs[0], y: ring.ys[0] };
  let best: { piece: WorkedPiece; t: number; mm: number } | undefined;
  for (const piece of bench.worked) {
    const near = nearestOnPiece(piece.piece, place);
    if (!best || near.distanceMm < best.mm - SAME_POINT_MM) best = { piece, t: near.t, mm: near.distanceMm };
  }
  if (!best) return [];
  const { piece, t } = best;
  return [{ piece, from: Math.max(0, t - NEAR_SPAN), to: Math.min(1, t + NEAR_SPAN), leftMm: depthMm }];
}

/** How much of its piece, to either side, such wood is said to take up, as a share of the piece's length. */
const NEAR_SPAN = 0.1;

/** Greatest distance of any leftover wood from the wanted section, mm. */
function depthOf(bench: Bench, wood: Region): number {
  return deepestFrom(bench.planned, wood, OVERCUT_MM).depthMm;
}

function uncutPlace(
  bench: Bench,
  piece: WorkedPiece,
  from: number,
  to: number,
  leftMm: number,
  refused: readonly Refused[],
  unit: BenchUnit,
): PlanUncut {
  const a = pointAt(piece.piece, Math.max(0, from));
  const b = pointAt(piece.piece, Math.min(1, to));
  const own = refused.find((r) => r.draft.shapes.includes(piece.index));
  const reach = worstReach(bench, piece, Math.max(0, from), Math.min(1, to));
  const rule: UncutRule = !reach.reached ? "out of reach" : own ? own.refusal.rule : "bearing";
  const words = reach.reached
    ? refusedWords(bench, piece, own, unit)
    : outOfReachWords(bench, piece, reach, unit);
  return {
    from: [tidy(a.x), tidy(a.y)],
    to: [tidy(b.x), tidy(b.y)],
    left: Math.round(leftMm * 1000) / 1000,
    rule,
    why: words.why,
    try: words.cure,
  };
}

const REACH_PLACES = 5;

function worstReach(bench: Bench, piece: WorkedPiece, from: number, to: number): Reach {
  let worst: Reach = { reached: true, tool: null, overcutMm: 0, meets: null };
  for (let i = 0; i < REACH_PLACES; i++) {
    const reach = reachAt(
      bench,
      piece,
      from + ((to - from) * (i + 0.5)) / REACH_PLACES,
      bench.toleranceMm / 2,
    );
    if (!reach.reached && (worst.reached || reach.overcutMm > worst.overcutMm)) worst = reach;
  }
  return worst;
}

interface Words {
  readonly why: string;
  readonly cure: string;
}

function outOfReachWords(bench: Bench, piece: WorkedPiece, reach: Reach, unit: BenchUnit): Words {
  const curve = piece.curve;
  const length = (mm: number) => sayLength(mm, unit);
  if (curve) {
    const kind = curve.convex ? "hollow" : "round";
    const same = bench.tools.filter((t) => t.plane.kind === kind);
    const near = same.some(
      (t) => t.sole.arc && Math.abs(t.sole.arc.radiusMm - curve.radiusMm) < 0.05 * curve.radiusMm,
    );
    if (same.length === 0) {
      return {
        why: `There is no ${kind} on the shelf for this curve of ${length(curve.radiusMm)} radius.`,
        cure: `Borrow or buy a ${kind} of ${length(curve.radiusMm)} radius.`,
      };
    }
    if (!near) {
      const nearest = same.reduce((a, b) => (offOf(b, curve.radiusMm) < offOf(a, curve.radiusMm) ? b : a));
      return {
        why: `No ${kind} on the shelf fits this curve of ${length(curve.radiusMm)} radius; the nearest, the ${nearest.plane.name}, ${
          curve.convex ? "would dig its corners in or leave flats" : "would cut too deep or leave ridges"
        }.`,
        cure: `Borrow or buy a ${kind} of ${length(curve.radiusMm)} radius, or draw the curve with ${length(nearest.sole.arc?.radiusMm ?? curve.radiusMm)} radius.`,
      };
    }
  }
  if (!reach.tool) {
    return {
      why: "No straight way leads out of this place for any plane.",
      cure: "Open the section here, or work the place with a carving tool or a scratch stock.",
    };
  }
  const narrow = curve || isWall(piece) ? null : narrowWords(bench, piece, unit);
  if (narrow) return narrow;
  return {
    why: `Every plane that could lie here meets the section elsewhere first; the ${reach.tool.plane.name} comes nearest and would overcut by ${length(reach.overcutMm)}.`,
    cure: "Open the section beside this place, or work it with a scratch stock, a scraper or a carving tool.",
  };
}

/** Whether a straight piece stands upright: then its length is a depth, and no plane is too wide for it. */
function isWall(piece: WorkedPiece): boolean {
  return !piece.curve && Math.abs(Math.abs(piece.startTiltDeg) - 90) < UPRIGHT_WITHIN_DEG;
}

const UPRIGHT_WITHIN_DEG = 30;

/** A flat between standing wood that is narrower than every flat plane on the shelf, or null if it is not. */
function narrowWords(bench: Bench, piece: WorkedPiece, unit: BenchUnit): Words | null {
  const flats = bench.tools.filter((t) => isFlatKind(t.plane.kind) && t.plane.kind !== "smoother");
  if (flats.length === 0) {
    return {
      why: "There is no rebate plane or plough on the shelf for this flat.",
      cure: `Borrow or buy a rebate plane no wider than ${sayLength(piece.lengthMm, unit)}.`,
    };
  }
  const narrowest = Math.min(...flats.map((t) => t.sole.widthMm));
  if (piece.lengthMm >= narrowest) return null;
  return {
    why: `This flat is ${sayLength(piece.lengthMm, unit)} wide between standing wood, and the narrowest flat plane is ${sayLength(narrowest, unit)}.`,
    cure: `Make the flat ${sayLength(narrowest, unit)} wide, take a narrower rebate plane, or work it with a scratch stock.`,
  };
}

function offOf(
  tool: { readonly sole: { readonly arc?: { readonly radiusMm: number } } },
  radiusMm: number,
): number {
  return Math.abs((tool.sole.arc?.radiusMm ?? 0) - radiusMm);
}

function refusedWords(
  bench: Bench,
  piece: WorkedPiece,
  refused: Refused | undefined,
  unit: BenchUnit,
): Words {
  const length = (mm: number) => sayLength(mm, unit);
  const curve = piece.curve;
  const hasSnipes = bench.tools.some((t) => t.plane.kind === "snipe bill");
  if (!refused) {
    if (curve) {
      const kind = curve.convex ? "hollow" : "round";
      return {
        why: `A plane can touch this curve of ${length(curve.radiusMm)} radius here and there, but none on the shelf lies on it over a width that would guide it.`,
        cure: `Borrow or buy a ${kind} of ${length(curve.radiusMm)} radius, or finish with a scratch stock or scraper.`,
      };
    }
    const narrow = isWall(piece) ? null : narrowWords(bench, piece, unit);
    if (narrow) return narrow;
    return {
      why: "A plane can touch this flat at an end or along a line only; none lies on it.",
      cure: "Widen the flat, lean it less, or finish it with a scratch stock or a scraper.",
    };
  }
  const name = refused.draft.tool.plane.name;
  const { rule, side, foundMm, limitMm } = refused.refusal;
  switch (rule) {
    case "wall":
      return {
        why: `Beside the ${name} ${foundMm === undefined ? "" : `${length(foundMm)} of `}wood would stand${side ? ` on the ${side}` : ""}, and its ${
          isFlatKind(refused.draft.tool.plane.kind) ? "sole" : "iron's corner"
        } clears ${limitMm === undefined ? "less" : `only ${length(limitMm)}`}.`,
        cure: hasSnipes
          ? "Leave room beside the curve for a line or a rebate, or use a narrower plane."
          : "A pair of snipe bills would cut the line that gives it room.",
      };
    case "bench":
      return {
        why: `The ${name} would run into the bench under the stick.`,
        cure: "Take a thicker stick and saw the spare off afterwards.",
      };
    case "body":
      return {
        why: `The body of the ${name} is wider than its sole and meets standing wood beside it.`,
        cure: "Use a plane without shoulders, or lower the neighbouring part.",
      };
    case "loose wood":
      return {
        why: `The cut of the ${name} would part off a piece of the stick.`,
        cure: "Take the waste off from an edge first, or saw the piece off.",
      };
    default:
      return {
        why: `The ${name} finds no place to run here.`,
        cure: "Clamp a batten on, or finish with a scratch stock.",
      };
  }
}
