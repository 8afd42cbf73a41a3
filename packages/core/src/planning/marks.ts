/**
 * Lines that place the cuts: each from an edge, or from the foot of a finished curve, whichever gives the join the
 * smaller expected error. Errors are what a good hand holds, 95 %, added as independent ones (root of the sum of
 * squares); common practice, no source.
 */

import type { Point, Region } from "../curve/index.ts";
import { distanceMm, pointAt } from "../curve/index.ts";
import { type PlanMark, spansAlong, turnedBack, turnOf } from "../cutting/index.ts";
import { BESIDE_MM } from "../measure/index.ts";
import { type Bench, fromGaugeEdgeMm, sidesFromGauge } from "./bench.ts";
import { endsInPlace, firstLeanDeg, type PlaneDraft, tidy } from "./draft-cut.ts";
import { isCurved, type TriedCut } from "./try-cut.ts";

export interface HandAccuracy {
  readonly lineMm: number;
  readonly sidewaysMm: number;
  readonly depthMm: number;
}

export const GOOD_HAND: HandAccuracy = { lineMm: 0.1, sidewaysMm: 0.2, depthMm: 0.15 };

/** A mark with both ways of placing it, so that the maker sees what the choice was worth. */
export interface ReasonedMark extends PlanMark {
  /** Expected error of the join if the line is gauged from the edge, mm, 95 %. */
  readonly errorFromEdge: number;
  /** The same if it is taken from the foot of the neighbouring curve; absent where there is none yet. */
  readonly errorFromFoot?: number;
}

/** The lines to scribe before each cut, numbered through; `cuts` in order, cut numbers counted from 1. */
export function marksFor(
  bench: Bench,
  cuts: readonly TriedCut[],
  hand: HandAccuracy = GOOD_HAND,
): ReasonedMark[] {
  const marks: Omit<ReasonedMark, "id">[] = [];
  const feet: Foot[] = [];
  cuts.forEach((cut, i) => {
    const number = i + 1;
    if (cut.draft.kind === "plane") {
      if (isOnOpenedLine(cuts, i)) {
        if (isCurved(cut.draft)) feet.push(...feetOf(bench, cut.draft, number));
        return;
      }
      marks.push(...marksOf(bench, cut, cut.draft, number, feet, hand));
      if (isCurved(cut.draft)) feet.push(...feetOf(bench, cut.draft, number));
    } else {
      const ends = sawLineEnds(cut).sort((a, b) => fromGaugeEdgeMm(bench, a) - fromGaugeEdgeMm(bench, b));
      for (const p of ends) marks.push(edgeMark(bench, p, number, "place", hand.lineMm));
    }
  });
  return marks.map((mark, i) => ({ id: `m${i + 1}`, ...mark }));
}

/** Whether a cut runs on a line that an earlier cut has opened already: then no new line is scribed. */
function isOnOpenedLine(cuts: readonly TriedCut[], index: number): boolean {
  return openerOf(cuts, index) !== null;
}

/** The first earlier cut that opened this cut's line, by its place in the order, or null. */
export function openerOf(cuts: readonly TriedCut[], index: number): number | null {
  const draft = cuts[index].draft;
  if (draft.kind !== "plane") return null;
  const piece = draft.onLine ? draft.onLine.forPiece : isCurved(draft) ? draft.shapes[0] : undefined;
  if (piece === undefined) return null;
  const place = draft.onLine?.at ?? { x: draft.runs[0][0][0], y: draft.runs[0][0][1] };
  for (let i = 0; i < index; i++) {
    const earlier = cuts[i].draft;
    if (earlier.kind !== "plane" || earlier.onLine?.forPiece !== piece) continue;
    if (distanceMm(earlier.onLine.at, place) < SAME_LINE_MM) return i;
  }
  return null;
}

/** Lines nearer than this are scribed once, mm. */
const SAME_LINE_MM = 0.3;

interface Foot {
  readonly at: Point;
  readonly cut: number;
}

/** Ends of the arcs that a curved cut has finished: what the next line is measured from. */
function feetOf(bench: Bench, draft: PlaneDraft, cut: number): Foot[] {
  return draft.shapes.flatMap((index) => {
    const piece = bench.planned.pieces[index];
    return [pointAt(piece, 0), pointAt(piece, 1)].map((at) => ({ at, cut }));
  });
}

/** The foot must belong to a neighbour for a line to be taken from it. */
const NEIGHBOUR_MM = 0.5;

function marksOf(
  bench: Bench,
  cut: TriedCut,
  draft: PlaneDraft,
  number: number,
  feet: readonly Foot[],
  hand: HandAccuracy,
): Omit<ReasonedMark, "id">[] {
  const pose = draft.runs[0][0];
  const up = turnedBack(turnOf(pose[2]), { x: 0, y: 1 });
  if (isCurved(draft) || draft.onLine) {
    const aim = draft.onLine?.at ?? { x: pose[0], y: pose[1] };
    const surface = surfaceAlong(cut.before, aim, up) ?? aim;
    const index = draft.onLine?.forPiece ?? draft.shapes[0];
    const own = index === undefined ? null : bench.planned.pieces[index];
    const foot = own ? nearestFoot(feet, [pointAt(own, 0), pointAt(own, 1)]) : null;
    return [placeMark(bench, surface, number, foot, hand)];
  }
  const ends = endsInPlace(draft, pose);
  if (draft.tool.plane.kind === "snipe bill" || draft.work === "snipe line") {
    const plane = draft.tool.plane;
    const end = plane.kind === "snipe bill" && plane.hand === "right" ? ends.right : ends.left;
    const surface = surfaceBeside(cut.before, end, end === ends.left ? ends.right : ends.left, up);
    // A line at the far end of the curve to come is taken from where that curve begins, if a foot stands there.
    const curve = draft.roomFor === undefined ? null : bench.planned.pieces[draft.roomFor];
    const foot = nearestFoot(feet, curve ? [end, pointAt(curve, 0), pointAt(curve, 1)] : [end]);
    return [placeMark(bench, surface, number, foot, hand)];
  }
  const leaning = Math.abs(firstLeanDeg(draft)) >= bench.limits.leaningFromDeg;
  const marks: Omit<ReasonedMark, "id">[] = [];
  const facet = facetEnds(bench, cut, draft);
  if (leaning) {
    const ends = facet.length > 1 ? [facet[0], facet[facet.length - 1]] : facet;
    for (const end of ends) marks.push(edgeMark(bench, end.at, number, "place", hand.lineMm));
    return marks;
  }
  for (const side of sidesFromGauge(bench)) {
    const wall = side === "left" ? cut.wallMm[0] : cut.wallMm[1];
    if (wall < bench.limits.guideWallMm) continue;
    const all = draft.runs.map((run) => endsInPlace(draft, run[0]));
    const outer = all.reduce((a, b) =>
      (side === "left" ? b.left.x < a.left.x : b.right.x > a.right.x) ? b : a,
    );
    const surface = surfaceBeside(cut.before, outer[side], side === "left" ? outer.right : outer.left, up);
    marks.push(edgeMark(bench, surface, number, "place", hand.lineMm));
  }
  // Where the floor runs out at a side of the wood the depth line is scribed there; a groove's depth is the stop's.
  const end = facet.find((one) => !one.inWood);
  if (end) marks.push(depthMark(bench, draft, end, number, hand));
  return marks;
}

function nearestFoot(feet: readonly Foot[], to: readonly Point[]): Foot | null {
  let best: Foot | null = null;
  let bestMm = NEIGHBOUR_MM;
  for (const foot of feet)
    for (const p of to) {
      const mm = distanceMm(foot.at, p);
      if (mm <= bestMm) {
        best = foot;
        bestMm = mm;
      }
    }
  return best;
}

/** Where a line up from the sole leaves the wood as it stands: the place a line can be scribed at. */
function surfaceAlong(before: Region, from: Point, up: Point): Point | null {
  // From well below, so that the surface is found on whichever side of the sole it lies: a hollow of another radius
  // stands with its crown a little off the wood.
  const start = { x: from.x - up.x * BELOW_MM, y: from.y - up.y * BELOW_MM };
  const spans = spansAlong(before, start, up);
  const last = spans[spans.length - 1];
  return last ? { x: start.x + up.x * last[1], y: start.y + up.y * last[1] } : null;
}

/**
 * The surface above a sole's end, looked at a hair on the waste's side of the line: where a wall already stands along
 * the line its two sides differ.
 */
function surfaceBeside(before: Region, end: Point, otherEnd: Point, up: Point): Point {
  const share = BESIDE_MM / distanceMm(end, otherEnd);
  const off = { x: (otherEnd.x - end.x) * share, y: (otherEnd.y - end.y) * share };
  const at = surfaceAlong(before, { x: end.x + off.x, y: end.y + off.y }, up);
  return at ? { x: at.x - off.x, y: at.y - off.y } : end;
}

/** How far below a sole the wood is looked for, mm: more than any gap under a crown, less than any stick. */
const BELOW_MM = 1;

/** Where the flat a cut leaves begins and ends on the wood: the ends of the newly cut stretch of its sole's line. */
function facetEnds(bench: Bench, cut: TriedCut, draft: PlaneDraft): FacetEnd[] {
  const found: FacetEnd[] = [];
  for (const run of draft.runs) {
    const ends = endsInPlace(draft, run[0]);
    const length = distanceMm(ends.left, ends.right);
    const dir = { x: (ends.right.x - ends.left.x) / length, y: (ends.right.y - ends.left.y) / length };
    const up = turnedBack(turnOf(run[0][2]), { x: 0, y: 1 });
    const start = { x: ends.left.x + up.x * BESIDE_MM, y: ends.left.y + up.y * BESIDE_MM };
    for (const [from, to] of spansAlong(cut.before, start, dir)) {
      if (from > length) continue;
      for (const along of [from, Math.min(to, length)]) {
        const end = { x: ends.left.x + dir.x * along, y: ends.left.y + dir.y * along };
        // Where the sole itself ends in the wood the line is scribed on the surface above that end.
        const inWood = along === 0 || along === length;
        const at = inWood ? (surfaceAlong(cut.before, end, up) ?? end) : end;
        found.push({ at, inWood, floor: end });
      }
    }
  }
  return found.sort((a, b) => fromGaugeEdgeMm(bench, a.at) - fromGaugeEdgeMm(bench, b.at));
}

/** An end of the flat that a cut leaves: where it can be marked on the wood as it stands, and the flat's own end. */
interface FacetEnd {
  readonly at: Point;
  readonly inWood: boolean;
  readonly floor: Point;
}

function sawLineEnds(cut: TriedCut): Point[] {
  if (cut.draft.kind !== "saw") return [];
  const { from, to } = cut.draft;
  const length = distanceMm(from, to);
  const dir = { x: (to.x - from.x) / length, y: (to.y - from.y) / length };
  const back = 1e3;
  // Read a little to the right of the line, in the waste.
  const start = {
    x: from.x - dir.x * back + dir.y * BESIDE_MM,
    y: from.y - dir.y * back - dir.x * BESIDE_MM,
  };
  const spans = spansAlong(cut.before, start, dir);
  const first = spans[0];
  const last = spans[spans.length - 1];
  if (!first || !last) return [from, to];
  return [first[0], last[1]].map((at) => ({ x: start.x + dir.x * at, y: start.y + dir.y * at }));
}

function placeMark(
  bench: Bench,
  at: Point,
  number: number,
  foot: Foot | null,
  hand: HandAccuracy,
): Omit<ReasonedMark, "id"> {
  // From the edge both neighbours are off on their own; from the foot only this line and this plane are.
  const own = Math.hypot(hand.lineMm, hand.sidewaysMm);
  const fromEdge = foot ? Math.hypot(own, own) : own;
  const mark = edgeMark(bench, at, number, "place", fromEdge);
  if (!foot) return mark;
  return {
    ...mark,
    from: `foot of cut ${foot.cut}`,
    distance: tidy(Math.abs(at.x - foot.at.x)),
    error: round3(own),
    errorFromEdge: round3(fromEdge),
    errorFromFoot: round3(own),
  };
}

function edgeMark(
  bench: Bench,
  at: Point,
  number: number,
  kind: PlanMark["kind"],
  errorMm: number,
): Omit<ReasonedMark, "id"> {
  const fromGauge = fromGaugeEdgeMm(bench, at);
  const onSide = Math.min(at.x - bench.box.minX, bench.box.maxX - at.x) < 0.01;
  const error = round3(errorMm);
  if (onSide) {
    // On an edge's own side the line is gauged from the face.
    return {
      before: number,
      kind: "depth",
      at: [tidy(at.x), tidy(at.y)],
      from: "face",
      distance: tidy(bench.box.maxY - at.y),
      fromGaugeEdge: tidy(fromGauge),
      error,
      errorFromEdge: error,
    };
  }
  return {
    before: number,
    kind,
    at: [tidy(at.x), tidy(at.y)],
    from: "gauge edge",
    distance: tidy(fromGauge),
    fromGaugeEdge: tidy(fromGauge),
    error,
    errorFromEdge: error,
  };
}

function depthMark(
  bench: Bench,
  draft: PlaneDraft,
  end: FacetEnd,
  number: number,
  hand: HandAccuracy,
): Omit<ReasonedMark, "id"> {
  const { floor } = end;
  const error = round3(Math.hypot(hand.lineMm, hand.depthMm));
  const base = {
    before: number,
    kind: "depth" as const,
    at: [tidy(floor.x), tidy(floor.y)] as const,
    fromGaugeEdge: tidy(fromGaugeEdgeMm(bench, floor)),
    error,
    errorFromEdge: error,
  };
  switch (draft.cantDeg) {
    case 180:
      return { ...base, from: "back", distance: tidy(floor.y - bench.box.minY) };
    case 90:
    case -90: {
      // Stood on one edge, the depth is gauged from the edge that then looks up.
      const fromGauge = fromGaugeEdgeMm(bench, floor);
      const gaugeUp = (draft.cantDeg === -90) === (bench.gaugeEdge === "left");
      return gaugeUp
        ? { ...base, from: "gauge edge", distance: tidy(fromGauge) }
        : { ...base, from: "far edge", distance: tidy(bench.box.maxX - bench.box.minX - fromGauge) };
    }
    default:
      return { ...base, from: "face", distance: tidy(bench.box.maxY - floor.y) };
  }
}

function round3(value: number): number {
  return Math.round(value * 1000) / 1000;
}
