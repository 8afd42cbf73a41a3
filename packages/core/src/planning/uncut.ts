/** What stays uncut: each place with the rule that kept the planes off it, why, and what would cure it. */
import {
  difference,
  type FlatRing,
  nearestOnPiece,
  pointAt,
  type Region,
  regionAreaMm2,
} from "../curve/index.ts";
import { deepestFrom, faceFigures, isFlatKind, type PlanUncut, type UncutRule } from "../cutting/index.ts";
import { OVERCUT_MM, SLIVER_MM2 } from "../measure/index.ts";
import type { Bench } from "./bench.ts";
import { tidy } from "./draft-cut.ts";
import type { Refused } from "./order.ts";
import { type Reach, reachAt } from "./reach.ts";
import { type Standing, standingOver } from "./standing.ts";
import { type BenchUnit, sayLength } from "./words.ts";
import type { WorkedPiece } from "./worked-piece.ts";

const PLACES = 40;
/** Wood that begins this near a piece stands on it, mm. */
const STANDS_OFF_MM = 0.03;

/**
 * Every place where more than the tolerance is left on the wanted section, in the order of the outline.
 * What is left is read on the bench of the proof; what could reach it on the search's, whose arcs are coarser.
 */
export function uncutPlaces(
  bench: Bench,
  searched: Bench,
  wood: Region,
  refused: readonly Refused[],
  unit: BenchUnit,
): PlanUncut[] {
  const proud = difference(wood, bench.plannedRegion);
  const heavy = proud.filter(
    (ring) => regionAreaMm2([ring]) > SLIVER_MM2 && depthOf(bench, [ring]) > bench.toleranceMm,
  );
  if (heavy.length === 0) return [];
  const places: PlanUncut[] = [];
  const named = new Set<FlatRing>();
  for (const piece of bench.worked) {
    const standing = standingOver(heavy, piece, PLACES, STANDS_OFF_MM);
    const tall = standing.filter((s) => s.heightMm > bench.toleranceMm);
    if (tall.length === 0) continue;
    for (const ring of heavy) {
      if (standingOver([ring], piece, PLACES, STANDS_OFF_MM).some((s) => s.heightMm > bench.toleranceMm))
        named.add(ring);
    }
    for (const run of stretches(standing, bench.toleranceMm)) {
      const left = Math.max(...run.map((s) => s.heightMm));
      const from = (run[0] as Standing).t - 0.5 / PLACES;
      const to = (run[run.length - 1] as Standing).t + 0.5 / PLACES;
      places.push(uncutPlace(searched, piece, from, to, left, refused, unit));
    }
  }
  for (const ring of heavy) {
    if (named.has(ring)) continue;
    const piece = nearestPiece(bench, ring);
    if (piece) places.push(uncutPlace(searched, piece, 0, 1, depthOf(bench, [ring]), refused, unit));
  }
  return [...places, ...untold(bench, searched, wood, places, refused, unit)];
}

/** How much of its piece, to either side, such a place is said to take up, as a share of the piece's length. */
const UNTOLD_SPAN = 0.05;

/** Most places that are added because no listed one tells of the wood there. */
const MOST_UNTOLD = 12;

/**
 * Wood that none of the places tells of, by the proof's own reading: what hangs over a neighbour of the piece it
 * stands on, or stands in a corner. It is named at the piece nearest to its highest place.
 */
function untold(
  bench: Bench,
  searched: Bench,
  wood: Region,
  told: readonly PlanUncut[],
  refused: readonly Refused[],
  unit: BenchUnit,
): PlanUncut[] {
  const more: PlanUncut[] = [];
  for (let i = 0; i < MOST_UNTOLD; i++) {
    const { unlisted } = faceFigures(bench.planned, wood, bench.toleranceMm - OVERCUT_MM, [...told, ...more]);
    if (!unlisted.at || unlisted.depthMm <= bench.toleranceMm) break;
    const at = unlisted.at;
    const piece = bench.worked.reduce((a, b) =>
      nearestOnPiece(b.piece, at).distanceMm < nearestOnPiece(a.piece, at).distanceMm ? b : a,
    );
    const { t } = nearestOnPiece(piece.piece, at);
    more.push(uncutPlace(searched, piece, t - UNTOLD_SPAN, t + UNTOLD_SPAN, unlisted.depthMm, refused, unit));
  }
  return more;
}

/** Neighbouring places with more than `leastMm` of wood on them, run by run. */
function stretches(standing: readonly Standing[], leastMm: number): Standing[][] {
  const runs: Standing[][] = [];
  let open = false;
  for (const place of standing) {
    if (place.heightMm <= leastMm) {
      open = false;
      continue;
    }
    if (!open) runs.push([]);
    open = true;
    (runs[runs.length - 1] as Standing[]).push(place);
  }
  return runs;
}

/** Wood left in a corner between two pieces stands squarely on neither: it is named at the one nearest to it. */
function nearestPiece(bench: Bench, ring: FlatRing): WorkedPiece | undefined {
  let best: { piece: WorkedPiece; distanceMm: number } | undefined;
  for (const piece of bench.worked) {
    for (let i = 0; i < ring.xs.length; i++) {
      const { distanceMm } = nearestOnPiece(piece.piece, { x: ring.xs[i], y: ring.ys[i] });
      if (!best || distanceMm < best.distanceMm) best = { piece, distanceMm };
    }
  }
  return best?.piece;
}

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
