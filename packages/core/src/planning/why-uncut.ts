/** Why a stretch of the section stays uncut: the rule that kept the planes off it, and the sentence a maker reads. */
import type { Region } from "../curve/index.ts";
import { isFlatKind } from "../cutting/index.ts";
import { OVERCUT_MM, SAME_POINT_MM } from "../measure/index.ts";
import type { Bench, Tool } from "./bench.ts";
import { curveCovers } from "./curves.ts";
import type { PlaneDraft } from "./draft-cut.ts";
import { floorCuts, wallCuts } from "./flats.ts";
import type { Refused } from "./order.ts";
import { type Reach, reachAt } from "./reach.ts";
import { BY_HAND, type Reason, refusalReason } from "./refusal-reason.ts";
import { LEAST_TAKE_MM2, tryCut } from "./try-cut.ts";
import type { LeftStretch } from "./uncut-stretches.ts";
import { isShutIn, type Stop, whatStops } from "./what-stops.ts";
import { type BenchUnit, sayLength } from "./words.ts";
import type { WorkedPiece } from "./worked-piece.ts";

/** What the reasons are looked for on: the search's bench, the wood at the end, and what was refused on the way. */
export interface Inquest {
  readonly bench: Bench;
  readonly wood: Region;
  readonly refused: readonly Refused[];
  readonly unit: BenchUnit;
}

/** The reason for one stretch. */
export function reasonFor(inquest: Inquest, stretch: LeftStretch): Reason {
  const { piece } = stretch;
  const reason = piece.curve ? curveReason(inquest, stretch) : flatReason(inquest, stretch);
  return { ...reason, cure: reason.cure.replace(BY_HAND, byHandOn(piece)) };
}

/** What is taken up where no plane goes, by what is to be shaped (common practice, no source). */
function byHandOn({ curve }: WorkedPiece): string {
  if (!curve) return "Pare it with a chisel, and finish with a scraper.";
  return curve.convex
    ? "Work it with a scratch stock filed to the curve, or a chisel and a scraper."
    : "Work it with a scratch stock filed to the curve, or a carving gouge and a curved scraper.";
}

// Curves

function curveReason(inquest: Inquest, stretch: LeftStretch): Reason {
  const { bench, unit } = inquest;
  const { piece } = stretch;
  const curve = piece.curve as NonNullable<WorkedPiece["curve"]>;
  const kind = curve.convex ? "hollow" : "round";
  const radius = sayLength(curve.radiusMm, unit);
  const same = bench.tools.filter((tool) => tool.plane.kind === kind && tool.sole.arc);
  const own = same.filter((tool) => offOf(tool, curve.radiusMm) <= OVERCUT_MM / 4);
  if (own.length === 0) {
    const cure = `A ${kind} of ${radius} radius would fit the curve. ${BY_HAND}`;
    const nearest = same.reduce<Tool | null>(
      (a, b) => (a === null || offOf(b, curve.radiusMm) < offOf(a, curve.radiusMm) ? b : a),
      null,
    );
    const refused = refusedOf(inquest, piece);
    const rule = refused
      ? refused.refusal.rule
      : reachOf(bench, stretch).reached
        ? "bearing"
        : "out of reach";
    if (!nearest)
      return { rule, why: `There is no ${kind} on the shelf for this curve of ${radius} radius.`, cure };
    const misses = curve.convex
      ? "lies on it with its corners or its middle only"
      : "cuts too deep or leaves ridges";
    return {
      rule,
      why: `No ${kind} on the shelf has the radius of this curve, ${radius}; the nearest, the ${nearest.plane.name}, ${misses}.`,
      cure,
    };
  }
  return (
    refusedReason(inquest, piece, own) ??
    stoppedReason(inquest, stretch, own) ??
    triedReason(inquest, coversOf(bench, piece, own)) ?? {
      rule: "guide",
      why: `The ${(own[0] as Tool).plane.name} fits this curve, but no order was found in which it has something to run on here.`,
      cure: `Clamp a batten on for it. ${BY_HAND}`,
    }
  );
}

function offOf(tool: Tool, radiusMm: number): number {
  return Math.abs((tool.sole.arc?.radiusMm ?? Number.POSITIVE_INFINITY) - radiusMm);
}

function coversOf(bench: Bench, piece: WorkedPiece, own: readonly Tool[]): PlaneDraft[] {
  return curveCovers(bench, piece).flatMap((cover) => (own.includes(cover.tool) ? cover.drafts : []));
}

function refusedOf({ refused }: Inquest, piece: WorkedPiece): Refused | undefined {
  return refused.find((one) => one.draft.shapes.includes(piece.index));
}

/** What the search itself was refused, where that was a plane of the curve's own radius. */
function refusedReason(inquest: Inquest, piece: WorkedPiece, own: readonly Tool[]): Reason | null {
  const refused = inquest.refused.find(
    ({ draft }) =>
      draft.shapes.includes(piece.index) && own.some((tool) => tool.plane.id === draft.tool.plane.id),
  );
  return refused ? refusalReason(inquest.unit, refused) : null;
}

/** Deeper than this a plane does not dig in: what it meets stands in its way, mm. */
const MOST_DUG_MM = 2;

/** Places along a stretch that are asked what stops the plane there. */
const PLACES_ASKED = [0.5, 0.1, 0.9];

function stoppedReason(inquest: Inquest, stretch: LeftStretch, own: readonly Tool[]): Reason | null {
  const { bench, unit } = inquest;
  const { piece, from, to } = stretch;
  const { lowTiltDeg, highTiltDeg, convex } = piece.curve as NonNullable<WorkedPiece["curve"]>;
  // A convex arc's tilts rise along it, a concave one's fall.
  const touchAt = (t: number) =>
    convex ? lowTiltDeg + (highTiltDeg - lowTiltDeg) * t : highTiltDeg - (highTiltDeg - lowTiltDeg) * t;
  for (const share of PLACES_ASKED) {
    const stops: { tool: Tool; stop: Stop }[] = [];
    for (const tool of own) {
      const stop = whatStops(bench, piece, tool, touchAt(from + (to - from) * share));
      if (stop) stops.push({ tool, stop });
    }
    const first = stops[0];
    if (stops.length < own.length || !first) continue;
    const { tool, stop } = first;
    const name = `The ${tool.plane.name} fits this curve, but`;
    if (stop.kind === "lean") {
      return {
        rule: "lean",
        why: `${name} it would have to lean ${Math.round(stop.leanDeg)}° here, and ${Math.round(bench.limits.leanDeg)}° is the most that is held true.`,
        cure: `Hold the stick in a jaw canted to meet it. ${BY_HAND}`,
        stop,
        tool,
      };
    }
    const chordMm = Math.hypot(piece.piece.to.x - piece.piece.from.x, piece.piece.to.y - piece.piece.from.y);
    const part = partWords(inquest, piece, stop.index, stop.at.x);
    const why = isShutIn(bench, piece, tool)
      ? `${name} its sole is ${sayLength(tool.sole.widthMm, unit)} wide and the curve only ${sayLength(chordMm, unit)} from end to end, with wood standing at both.`
      : stop.overcutMm > MOST_DUG_MM
        ? `${name} held so that it lies here, ${part}, stands in its way.`
        : `${name} lying here its ${stop.isCorner ? "corner" : "sole"} would cut ${sayLength(stop.overcutMm, unit)} into ${part}.`;
    return { rule: "out of reach", why, cure: BY_HAND, stop, tool };
  }
  return null;
}

/** What a part of the section is called in a sentence, and where it is. */
function partWords({ bench, unit }: Inquest, own: WorkedPiece, index: number, xMm: number): string {
  const piece = bench.planned.pieces[index];
  const fromEdge = bench.gaugeEdge === "left" ? xMm - bench.box.minX : bench.box.maxX - xMm;
  const where = `${sayLength(Math.max(0, fromEdge), unit)} from the gauge edge`;
  if (!piece || index === own.index) return `the curve itself, ${where}`;
  if (piece.kind === "arc") return `the curve beside it, ${where}`;
  const isUpright = Math.abs(piece.to.x - piece.from.x) < Math.abs(piece.to.y - piece.from.y);
  return `the ${isUpright ? "wall" : "flat"} beside it, ${where}`;
}

// Flats and walls

function flatReason(inquest: Inquest, stretch: LeftStretch): Reason {
  const { bench, unit } = inquest;
  const { piece } = stretch;
  const wall = isWall(piece);
  const narrow = wall ? null : narrowReason(inquest, piece);
  if (narrow) return narrow;
  const refused = refusedOf(inquest, piece);
  if (refused) return refusalReason(inquest.unit, refused);
  if (wall) {
    const floor = floorBeside(bench, piece);
    const because = floor && (narrowReason(inquest, floor) ?? refusalOfFloor(inquest, floor));
    if (because)
      return {
        ...because,
        why: "This wall comes out together with the flat at its foot, which stays uncut.",
      };
  }
  const reach = reachOf(bench, stretch);
  if (!reach.reached) {
    if (!reach.tool) {
      return {
        rule: "out of reach",
        why: "No straight way leads out of this place for any plane.",
        cure: `Open the section here. ${BY_HAND}`,
      };
    }
    return {
      rule: "out of reach",
      why: `Every plane that could lie here meets the section elsewhere first; the ${reach.tool.plane.name} comes nearest and would overcut by ${sayLength(reach.overcutMm, unit)}.`,
      cure: `Open the section beside this place. ${BY_HAND}`,
    };
  }
  const drafts = [...floorCuts(bench, piece), ...wallCuts(bench, piece)];
  return (
    triedReason(inquest, drafts) ?? {
      rule: "bearing",
      why: `A plane can touch this ${wall ? "wall" : "flat"} at an end or along a line only; none lies on it.`,
      cure: BY_HAND,
    }
  );
}

function refusalOfFloor(inquest: Inquest, floor: WorkedPiece): Reason | null {
  const refused = refusedOf(inquest, floor);
  return refused ? refusalReason(inquest.unit, refused) : null;
}

/** The flat at the foot of a wall: the straight neighbour that lies lower, if it is a worked one. */
function floorBeside(bench: Bench, wall: WorkedPiece): WorkedPiece | undefined {
  const { from, to } = wall.piece;
  const foot = from.y < to.y ? from : to;
  return bench.worked.find(
    (other) =>
      !other.curve &&
      other.index !== wall.index &&
      !isWall(other) &&
      [other.piece.from, other.piece.to].some((p) => Math.hypot(p.x - foot.x, p.y - foot.y) <= SAME_POINT_MM),
  );
}

/** Whether a straight piece stands upright: then its length is a depth, and no plane is too wide for it. */
export function isWall(piece: WorkedPiece): boolean {
  return !piece.curve && Math.abs(Math.abs(piece.startTiltDeg) - 90) < UPRIGHT_WITHIN_DEG;
}

const UPRIGHT_WITHIN_DEG = 30;

/** A flat between standing wood that is narrower than every flat plane on the shelf; null if it is not. */
function narrowReason({ bench, unit }: Inquest, piece: WorkedPiece): Reason | null {
  if (!isBetweenWalls(bench, piece)) return null;
  const widths = flatWidthsMm(bench);
  if (widths.length === 0) {
    return {
      rule: "out of reach",
      why: "There is no rebate plane or plough on the shelf for this flat.",
      cure: `A rebate plane no wider than ${sayLength(piece.lengthMm, unit)} would go in. ${BY_HAND}`,
    };
  }
  const narrowest = Math.min(...widths);
  if (piece.lengthMm >= narrowest - SAME_POINT_MM) return null;
  return {
    rule: "out of reach",
    why: `This flat is ${sayLength(piece.lengthMm, unit)} wide between standing wood, and the narrowest flat plane is ${sayLength(narrowest, unit)}.`,
    cure: BY_HAND,
  };
}

/** Widths of the planes that cut a flat between walls, mm. */
export function flatWidthsMm(bench: Bench): number[] {
  return bench.tools.flatMap((tool) =>
    isFlatKind(tool.plane.kind) && tool.plane.kind !== "smoother" ? [tool.sole.widthMm] : [],
  );
}

/** Whether the section turns up at both ends of a straight piece. */
export function isBetweenWalls(bench: Bench, piece: WorkedPiece): boolean {
  const { pieces } = bench.planned;
  const before = pieces[(piece.index + pieces.length - 1) % pieces.length];
  const after = pieces[(piece.index + 1) % pieces.length];
  if (!before || !after) return false;
  const { from, to } = piece.piece;
  // Anticlockwise: a neighbour turns up where its far end lies out of the wood, to the right of the piece.
  const isOver = (p: { readonly x: number; readonly y: number }) =>
    (to.x - from.x) * (p.y - from.y) - (to.y - from.y) * (p.x - from.x) < -SAME_POINT_MM;
  return isOver(before.from) && isOver(after.to);
}

// Refusals

/** What forbids these cuts on the wood as it stands at the end; null where nothing does, or they would take nothing. */
function triedReason(inquest: Inquest, drafts: readonly PlaneDraft[]): Reason | null {
  for (const draft of drafts) {
    const tried = tryCut(inquest.bench, inquest.wood, draft);
    const refusal = tried.refusals[0];
    if (refusal && tried.takesMm2 >= LEAST_TAKE_MM2) return refusalReason(inquest.unit, { draft, refusal });
  }
  return null;
}

// Reach

/** Places of a stretch that are looked at, the middle first: the first that no plane reaches is told. */
const REACH_SHARES = [0.5, 0.1, 0.9, 0.3, 0.7];

function reachOf(bench: Bench, { piece, from, to }: LeftStretch): Reach {
  let reach: Reach = { reached: true, tool: null, overcutMm: 0, meets: null };
  for (const share of REACH_SHARES) {
    reach = reachAt(bench, piece, from + (to - from) * share, bench.toleranceMm / 2);
    if (!reach.reached) return reach;
  }
  return reach;
}
