/** What stays uncut: each place with the rule that kept the planes off it, why, and what would cure it. */
import { pointAt, type Region } from "../curve/index.ts";
import { isFlatKind, type PlanUncut, type UncutRule } from "../cutting/index.ts";
import type { Bench } from "./bench.ts";
import { tidy } from "./draft-cut.ts";
import type { Refused } from "./order.ts";
import { type Reach, reachAt } from "./reach.ts";
import { leftStretches } from "./uncut-stretches.ts";
import { type BenchUnit, sayLength } from "./words.ts";
import type { WorkedPiece } from "./worked-piece.ts";

/**
 * Every place where more than the tolerance is left on the wanted section, in the order of the outline. What is left is
 * read on the bench of the proof; what could reach it on the search's, whose arcs are coarser.
 */
export function uncutPlaces(
  bench: Bench,
  searched: Bench,
  wood: Region,
  refused: readonly Refused[],
  unit: BenchUnit,
): PlanUncut[] {
  return leftStretches(bench, wood).map(({ piece, from, to, leftMm }) =>
    uncutPlace(searched, piece, from, to, leftMm, refused, unit),
  );
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
