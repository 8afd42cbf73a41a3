/**
 * Where the lines that place a cut stand on the wood as it then is, and what each can be measured from: an edge, the
 * face, or the foot of a neighbouring curve that is finished. Geometry only; errors are reckoned in marks.ts.
 */
import type { Point, Region } from "../curve/index.ts";
import { distanceMm, line, nearestOnPiece, pointAt } from "../curve/index.ts";
import { offBoundaryMm, type PlanMark, spansAlong, turnedBack, turnOf } from "../cutting/index.ts";
import { BESIDE_MM, FLATTEN_MM, SAME_POINT_MM } from "../measure/index.ts";
import { type Bench, fromGaugeEdgeMm, sidesFromGauge } from "./bench.ts";
import { endsInPlace, firstLeanDeg, isCurved, type PlaneDraft } from "./draft-cut.ts";
import type { TriedCut } from "./tried-cut.ts";

/** A line to scribe before a cut, and the ways it can be measured. */
export interface LinePlace {
  readonly kind: PlanMark["kind"];
  /** On the wood as it then stands. */
  readonly at: Point;
  /** A line that tells how deep a level floor goes, not where it stands across. */
  readonly isFloor?: true;
  /** Gauged from an edge, from the face or the back. */
  readonly gauged: { readonly from: string; readonly distanceMm: number };
  /** A finished foot that it can be taken from instead. */
  readonly foot?: FootBeside;
}

/** The end of a finished curve, and the end of what is to be cut that comes to meet it. */
export interface FootBeside {
  readonly foot: Foot;
  readonly distanceMm: number;
  /** Where the new curve ends beside the foot; null where the line is the end itself. */
  readonly meetsAt: Point | null;
}

/** The end of an arc that a curved cut has finished: what the next line may be measured from. */
export interface Foot {
  readonly at: Point;
  readonly cut: number;
  /** The plane that made it, as it stood. */
  readonly draft: PlaneDraft;
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

/** Ends of the arcs that a curved cut has finished, as far as it came to them: what the next line is measured from. */
export function feetOf(bench: Bench, made: TriedCut, cut: number): Foot[] {
  const { draft, after } = made;
  if (draft.kind !== "plane") return [];
  return draft.shapes.flatMap((index) => {
    const piece = bench.planned.pieces[index];
    return [pointAt(piece, 0), pointAt(piece, 1)]
      .filter((at) => offBoundaryMm(after, at) <= FOOT_CUT_MM)
      .map((at) => ({ at, cut, draft }));
  });
}

/** An end over which more wood than this still stands is no foot yet, mm. */
const FOOT_CUT_MM = 0.1;

/** The foot must belong to a neighbour for a line to be taken from it. */
const NEIGHBOUR_MM = 0.5;

/** The lines to scribe before a cut that runs on no line opened already, each on the wood as it stands. */
export function linesOf(bench: Bench, cut: TriedCut, feet: readonly Foot[]): LinePlace[] {
  return placesOf(bench, cut, feet).map((line) => laidOn(bench, cut.before, line));
}

/**
 * A line whose place hangs off the wood, laid where a gauge can scribe it: on the surface over or under it, as far across as
 * it was; on the arris or wall that it misses by less than a hand can tell; or, off the wood altogether, on what is nearest.
 */
function laidOn(bench: Bench, before: Region, scribed: LinePlace): LinePlace {
  if (scribed.kind !== "place") return scribed;
  const nearest = nearestOnWood(before, scribed.at);
  const offMm = distanceMm(nearest, scribed.at);
  if (offMm <= ON_WOOD_MM) return scribed;
  const from = { x: scribed.at.x, y: bench.box.minY - THROUGH_MM };
  const surfaces = spansAlong(before, from, { x: 0, y: 1 }).map(([, to]) => from.y + to);
  const off = (y: number) => Math.abs(y - scribed.at.y);
  const [first, ...others] = surfaces;
  const y = first === undefined ? null : others.reduce((a, b) => (off(b) < off(a) ? b : a), first);
  const isBeside = offMm <= AS_ONE_MM && (y === null || off(y) > AS_ONE_MM);
  return lineBeside(bench, y === null || isBeside ? nearest : { x: scribed.at.x, y }, scribed.foot ?? null);
}

/** A line this near the surface lies on it, mm. */
const ON_WOOD_MM = 0.01;

/** No hand tells a line this near an arris from the arris, mm. */
const AS_ONE_MM = 0.05;

function nearestOnWood(before: Region, p: Point): Point {
  let best = p;
  let leastMm = Number.POSITIVE_INFINITY;
  for (const { xs, ys } of before) {
    for (let i = 0, j = xs.length - 1; i < xs.length; j = i++) {
      const edge = line({ x: xs[j], y: ys[j] }, { x: xs[i], y: ys[i] });
      const near = nearestOnPiece(edge, p);
      if (near.distanceMm >= leastMm) continue;
      leastMm = near.distanceMm;
      best = pointAt(edge, near.t);
    }
  }
  return best;
}

function placesOf(bench: Bench, cut: TriedCut, feet: readonly Foot[]): LinePlace[] {
  const { draft } = cut;
  if (draft.kind === "saw") {
    const byEdge = (a: Point, b: Point) => fromGaugeEdgeMm(bench, a) - fromGaugeEdgeMm(bench, b);
    return sawLineEnds(cut)
      .sort(byEdge)
      .map((end) => lineAt(bench, end));
  }
  const pose = draft.runs[0][0];
  const up = turnedBack(turnOf(pose[2]), { x: 0, y: 1 });
  if (isCurved(draft) || draft.onLine) return axisLine(bench, cut, draft, up, feet);
  if (draft.tool.plane.kind === "snipe bill" || draft.work === "snipe line")
    return [snipeLine(bench, cut, draft, up, feet)];
  if (draft.work === "facets") return firstFlatLines(bench, cut, draft);
  const facet = facetEnds(bench, cut, draft);
  if (Math.abs(firstLeanDeg(draft)) >= bench.limits.leaningFromDeg) {
    const ends = facet.length > 1 ? [facet[0], facet[facet.length - 1]] : facet;
    return ends.map((end) => lineAt(bench, end.at));
  }
  return [...wallLines(bench, cut, draft, up), ...floorLines(bench, draft, facet)];
}

/**
 * Where the floor runs out at a side of the wood the depth line is scribed there; a groove's depth is the stop's. Where it
 * runs out into the face itself no gauge is set so fine: that end is a line across, and the depth is told at another.
 */
function floorLines(bench: Bench, draft: PlaneDraft, facet: readonly FacetEnd[]): LinePlace[] {
  const open = facet
    .filter(({ inWood }) => !inWood)
    .map((end) => ({ end, depth: depthLine(bench, draft, end) }));
  const deep = open.find(({ depth }) => depth.gauged.distanceMm > AS_ONE_MM);
  const [first] = open;
  if (!first || first === deep) return deep ? [deep.depth] : [];
  return [lineAt(bench, first.end.at), ...(deep ? [deep.depth] : [])];
}

/** Lines at both ends of the first flat of a curve that is planed in flats, on the wood as it stands. */
function firstFlatLines(bench: Bench, cut: TriedCut, draft: PlaneDraft): LinePlace[] {
  const ends = facetEnds(bench, cut, { ...draft, runs: draft.runs.slice(0, 1) });
  const outer = ends.length > 1 ? [ends[0], ends[ends.length - 1]] : ends;
  return outer.flatMap((end) => (end ? [lineAt(bench, end.at)] : []));
}

/**
 * The line where the plane's middle goes, on the surface above or under it. Where the middle hangs beside the wood there
 * is nothing to scribe it on: none if the wood itself holds the plane, else where the middle first comes over the wood.
 */
function axisLine(
  bench: Bench,
  cut: TriedCut,
  draft: PlaneDraft,
  up: Point,
  feet: readonly Foot[],
): LinePlace[] {
  const aim = aimOf(draft);
  const index = draft.onLine?.forPiece ?? draft.shapes[0];
  const own = index === undefined ? null : bench.planned.pieces[index];
  // Right through the wood: the crown of a hollow may stand well off it.
  const surface = surfaceAlong(cut.before, aim, up, THROUGH_MM);
  if (!surface && cut.seat) return [];
  const beside = own ? nearestFoot(bench, feet, [pointAt(own, 0), pointAt(own, 1)]) : null;
  return [lineBeside(bench, surface ?? firstOverWood(cut.before, draft) ?? aim, beside)];
}

/** Under the plane's middle, on the wood, in the first of its poses that has the middle over any. */
function firstOverWood(before: Region, draft: PlaneDraft): Point | null {
  for (const [x, y, tiltDeg] of draft.runs.flat()) {
    const up = turnedBack(turnOf(tiltDeg), { x: 0, y: 1 });
    const surface = surfaceAlong(before, { x, y }, up, THROUGH_MM);
    if (surface) return surface;
  }
  return null;
}

/** Where the plane's middle meets the line it is set to. */
export function aimOf(draft: PlaneDraft): Point {
  const [x, y] = draft.runs[0][0];
  return draft.onLine?.at ?? { x, y };
}

function snipeLine(
  bench: Bench,
  cut: TriedCut,
  draft: PlaneDraft,
  up: Point,
  feet: readonly Foot[],
): LinePlace {
  const { plane } = draft.tool;
  const ends = endsInPlace(draft, draft.runs[0][0]);
  const end = plane.kind === "snipe bill" && plane.hand === "right" ? ends.right : ends.left;
  const surface = surfaceBeside(cut.before, end, end === ends.left ? ends.right : ends.left, up);
  // A line at the far end of the curve to come is taken from where that curve begins, if a foot stands there.
  const curve = draft.roomFor === undefined ? null : bench.planned.pieces[draft.roomFor];
  const beside = nearestFoot(bench, feet, curve ? [end, pointAt(curve, 0), pointAt(curve, 1)] : [end]);
  return lineBeside(bench, surface, beside && { ...beside, meetsAt: null });
}

/** A line for each wall the cut leaves that is high enough to be one. */
function wallLines(bench: Bench, cut: TriedCut, draft: PlaneDraft, up: Point): LinePlace[] {
  const lines: LinePlace[] = [];
  for (const side of sidesFromGauge(bench)) {
    const wall = side === "left" ? cut.wallMm[0] : cut.wallMm[1];
    if (wall < bench.limits.guideWallMm) continue;
    const all = draft.runs.map((run) => endsInPlace(draft, run[0]));
    const outer = all.reduce((a, b) =>
      (side === "left" ? b.left.x < a.left.x : b.right.x > a.right.x) ? b : a,
    );
    const surface = surfaceBeside(cut.before, outer[side], side === "left" ? outer.right : outer.left, up);
    lines.push(lineAt(bench, surface));
  }
  return lines;
}

/** The finished foot nearest to where the new part ends; of two as near, the one nearer to the gauge edge. */
function nearestFoot(
  bench: Bench,
  feet: readonly Foot[],
  to: readonly Point[],
): { readonly foot: Foot; readonly meetsAt: Point } | null {
  const near = feet.flatMap((foot) =>
    to
      .map((meetsAt) => ({ foot, meetsAt, mm: distanceMm(foot.at, meetsAt) }))
      .filter(({ mm }) => mm <= NEIGHBOUR_MM),
  );
  const [first, ...others] = near;
  if (!first) return null;
  return others.reduce((best, one) => {
    if (Math.abs(one.mm - best.mm) > SAME_POINT_MM) return one.mm < best.mm ? one : best;
    return fromGaugeEdgeMm(bench, one.foot.at) < fromGaugeEdgeMm(bench, best.foot.at) ? one : best;
  }, first);
}

/** Where a line up from a place leaves the wood as it stands, the wood looked for from so far under the place. */
function surfaceAlong(before: Region, from: Point, up: Point, underMm: number): Point | null {
  const start = { x: from.x - up.x * underMm, y: from.y - up.y * underMm };
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
  const at = surfaceAlong(before, { x: end.x + off.x, y: end.y + off.y }, up, BELOW_MM);
  return at ? { x: at.x - off.x, y: at.y - off.y } : end;
}

/** How far below a sole's end the wood is looked for, mm: what lies deeper is not what the end meets. */
const BELOW_MM = 1;

/** More than any stick is wide, mm. */
const THROUGH_MM = 1e4;

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
      // What hardly reaches under the sole is the wall that its end was set to.
      if (Math.min(to, length) - from < FLATTEN_MM) continue;
      for (const along of [from, Math.min(to, length)]) {
        const end = { x: ends.left.x + dir.x * along, y: ends.left.y + dir.y * along };
        // Where the sole itself ends in the wood the line is scribed on the surface above that end.
        const inWood = along === 0 || along === length;
        const at = inWood ? (surfaceAlong(cut.before, end, up, BELOW_MM) ?? end) : end;
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

/** A line at a place: gauged from the gauge edge, or on an edge's own side from the face. */
function lineAt(bench: Bench, at: Point): LinePlace {
  const offSidesMm = [at.x - bench.box.minX, bench.box.maxX - at.x].map(Math.abs);
  const onSide = Math.min(...offSidesMm) < ON_SIDE_MM;
  return onSide
    ? { kind: "depth", at, gauged: { from: "face", distanceMm: bench.box.maxY - at.y } }
    : { kind: "place", at, gauged: { from: "gauge edge", distanceMm: fromGaugeEdgeMm(bench, at) } };
}

/** Nearer to a side of the stick than this a line stands on the side itself, mm. */
const ON_SIDE_MM = 0.01;

function lineBeside(
  bench: Bench,
  at: Point,
  beside: { readonly foot: Foot; readonly meetsAt: Point | null } | null,
): LinePlace {
  const line = lineAt(bench, at);
  if (!beside) return line;
  return { ...line, foot: { ...beside, distanceMm: Math.abs(at.x - beside.foot.at.x) } };
}

function depthLine(bench: Bench, draft: PlaneDraft, { floor }: FacetEnd): LinePlace {
  return { kind: "depth", isFloor: true, at: floor, gauged: depthGauged(bench, draft, floor) };
}

function depthGauged(bench: Bench, draft: PlaneDraft, floor: Point): LinePlace["gauged"] {
  const { minX, maxX, minY, maxY } = bench.box;
  switch (draft.cantDeg) {
    case 180:
      return { from: "back", distanceMm: floor.y - minY };
    case 90:
    case -90: {
      // Stood on one edge, the depth is gauged from the edge that then looks up.
      const fromGaugeMm = fromGaugeEdgeMm(bench, floor);
      const gaugeUp = (draft.cantDeg === -90) === (bench.gaugeEdge === "left");
      return gaugeUp
        ? { from: "gauge edge", distanceMm: fromGaugeMm }
        : { from: "far edge", distanceMm: maxX - minX - fromGaugeMm };
    }
    default:
      return { from: "face", distanceMm: maxY - floor.y };
  }
}
