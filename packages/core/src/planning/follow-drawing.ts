/**
 * The plan of a drawing that has moved a little under the hand: the order of the plan before first. Its cuts stay, those of
 * the parts that moved are laid on their parts anew, and all of them are made again on the wood and held to every rule.
 * Where that does not hold, the cuts of the parts that did not move stay and what they leave is planned; where that does not
 * hold either, the search begins from the beginning.
 */
import { distanceMm, type Piece, type Point, type Region, type Ring } from "../curve/index.ts";
import { type Plan, type Pose, type Run, restOn, turned, turnOf } from "../cutting/index.ts";
import { OVERCUT_MM, SAME_POINT_MM } from "../measure/index.ts";
import type { Bench } from "./bench.ts";
import { cutsForRest, drawnOf, overcutMm } from "./cure-proof.ts";
import { curveCovers, otherCovers } from "./curves.ts";
import { type Draft, type PlaneDraft, planeDraft, poseAt, sawDraft } from "./draft-cut.ts";
import { floorCuts, wallCuts } from "./flats.ts";
import type { PlanRequest } from "./request.ts";
import type { BenchMaker, Found } from "./search.ts";
import { makeAll, redrawn, type Sequence } from "./sequence.ts";
import { layForSaw, wasteOverCurves } from "./strategy.ts";
import { isClumsy, LEAST_TAKE_MM2, type TriedCut, tryCut } from "./try-cut.ts";
import { leftStretches } from "./uncut-stretches.ts";
import { askedWay } from "./ways.ts";

const FOUND = new WeakMap<Plan, Found>();

/** Keeps in mind how a plan was found, for as long as the plan itself is kept. */
export function rememberFound(plan: Plan, found: Found): void {
  FOUND.set(plan, found);
}

/** Where more pieces moved than this and the order does not hold as it was, too little of it is left to plan the rest around. */
const MOST_MOVED = 6;

/** A request that names the plan before. */
export type Following = PlanRequest & { readonly like: Plan };

/** An order on the way from one drawing to the next. */
interface Moving {
  readonly before: Found;
  readonly bench: Bench;
  readonly wood: Region;
  /** Its cuts as they lie on the drawing now; null for those that have no like there. */
  readonly laid: readonly (Draft | null)[];
  /** Places in the planned ring of what moved. */
  readonly moved: ReadonlySet<number>;
  /** Whether no rule refuses a cut, nothing is taken too deep, and no place is left that was not left before. */
  readonly isWhole: (made: Sequence) => boolean;
}

/** The way of an earlier plan with its cuts laid on the section as it now is; null where that does not hold together. */
export function followed(request: Following, makeBench: BenchMaker): Found | null {
  const { like } = request;
  const before = FOUND.get(like);
  const asked = askedWay(request.ways);
  if (!before || (asked !== null && asked !== before.way)) return null;
  const bench = makeBench({ cantsDeg: before.bench.cantsDeg });
  const moved = isSameWork(before.bench, bench) ? movedPieces(before.bench.planned, bench.planned) : null;
  if (moved === null || liesOnMoved(before, moved)) return null;
  const moving: Moving = {
    before,
    bench,
    wood: makeBench({}).startRegion,
    laid: before.sequence.cuts.map(({ draft }) => laidAnew(before.bench, bench, draft, moved)),
    moved,
    isWhole: ({ wood, allowed }) => {
      if (!allowed || overcutMm(bench, wood) > OVERCUT_MM) return false;
      const left = leftStretches(bench, wood, drawnOf(request));
      // What was left may be cut now, if it is of a part that moved.
      return left.length <= like.uncut.length && !left.some(({ piece }) => moved.has(piece.index));
    },
  };
  const sequence = inPlace(moving) ?? (moved.size > MOST_MOVED ? null : withRestPlanned(moving));
  if (!sequence) return null;
  return { ...before, bench, sequence, isLeast: false, cutsMm2Left: wasteOverCurves(bench, sequence.wood) };
}

/** Whether the stick lies on a bevel that moved: it then lies otherwise. */
function liesOnMoved({ way, sequence }: Found, moved: ReadonlySet<number>): boolean {
  if (way !== "bevelled") return false;
  return sequence.cuts.some(
    ({ draft }) => draft.kind === "saw" && draft.shapes.some((index) => moved.has(index)),
  );
}

/** The same cuts in the same order; null where one cannot be laid or is not as good as it was. */
function inPlace({ before, bench, wood, laid, isWhole }: Moving): Sequence | null {
  if (!laid.every((draft) => draft !== null)) return null;
  const sequence = makeAll(bench, wood, laid);
  const isAsBefore = sequence.cuts.every((cut, i) => isAsGood(cut, before.sequence.cuts[i] as TriedCut));
  return isAsBefore && isWhole(sequence) ? sequence : null;
}

/** The cuts of the parts that did not move, those left out that are no longer as good as they were, then what they leave. */
function withRestPlanned({ before, bench, wood, laid, moved, isWhole }: Moving): Sequence | null {
  const { cuts } = before.sequence;
  const planed = cuts.reduce((last, { draft }, i) => (draft.kind === "plane" ? i + 1 : last), 0);
  const sawn = laid.slice(planed);
  if (!sawn.every((draft) => draft !== null)) return null;
  const kept: Draft[] = [];
  let at = wood;
  for (const [i, draft] of laid.slice(0, planed).entries()) {
    if (!draft || draft.shapes.some((index) => moved.has(index))) continue;
    const cut = tryCut(bench, at, draft);
    if (cut.refusals.length > 0 || !isAsGood(cut, cuts[i] as TriedCut)) continue;
    kept.push(cut.draft);
    at = cut.after;
  }
  const sequence = makeAll(bench, wood, [...kept, ...cutsForRest(bench, at), ...sawn]);
  // One more each time would be many more in the course of a drag.
  const isLonger = sequence.cuts.length > cuts.length;
  return !isLonger && battens(sequence) <= battens(before.sequence) && isWhole(sequence) ? sequence : null;
}

function battens({ cuts }: Sequence): number {
  return cuts.filter(({ guide }) => guide?.kind === "batten").length;
}

/** Whether both are for the same planes and limits, and for a stick of the same size. */
function isSameWork(before: Bench, bench: Bench): boolean {
  return termsOf(before) === termsOf(bench) && isSameRing(before.stick, bench.stick);
}

function termsOf({ tools, limits, shavings, weights, toleranceMm, keptEdges, gaugeEdge }: Bench): string {
  const planes = tools.map(({ plane }) => plane);
  return JSON.stringify([planes, limits, shavings, weights, toleranceMm, keptEdges, gaugeEdge]);
}

function isSameRing(one: Ring, other: Ring): boolean {
  return movedPieces(one, other)?.size === 0;
}

/** Places in the ring at which a piece is not what it was; null where the rings are not of the same lines and arcs. */
function movedPieces(before: Ring, now: Ring): ReadonlySet<number> | null {
  if (before.pieces.length !== now.pieces.length) return null;
  const moved = new Set<number>();
  for (const [i, piece] of before.pieces.entries()) {
    const other = now.pieces[i] as Piece;
    if (piece.kind !== other.kind) return null;
    if (!isSamePiece(piece, other)) moved.add(i);
  }
  return moved;
}

function isSamePiece(one: Piece, other: Piece): boolean {
  return (
    distanceMm(one.from, other.from) <= SAME_POINT_MM &&
    distanceMm(one.to, other.to) <= SAME_POINT_MM &&
    (one.kind === "line" || other.kind === "line" || Math.abs(one.bulge - other.bulge) <= SAME_POINT_MM)
  );
}

function laidAnew(before: Bench, bench: Bench, draft: Draft, moved: ReadonlySet<number>): Draft | null {
  const hasMoved = draft.shapes.some((index) => moved.has(index));
  if (draft.kind === "saw") return hasMoved ? bevelSawnAnew(bench, draft) : redrawn(bench, draft);
  if (hasMoved) return sameCutOf(bench, draft);
  return draft.shapes.length > 0 ? sameDraft(bench, draft) : letDownAgain(before, bench, draft);
}

/** The saw along the bevel as it now lies. */
function bevelSawnAnew(bench: Bench, { shapes }: Draft): Draft | null {
  const piece = shapes.length === 1 ? bench.planned.pieces[shapes[0] as number] : undefined;
  return piece ? sawDraft(bench, piece.from, piece.to, layForSaw(piece.from, piece.to), shapes) : null;
}

/** The draft as it was, with the rock that a redrawn one would lose. */
function sameDraft(bench: Bench, draft: PlaneDraft): PlaneDraft {
  const again = redrawn(bench, draft) as PlaneDraft;
  return draft.rock ? { ...again, rock: draft.rock } : again;
}

/** What the same plane, the stick lying the same way, would do on the parts as they now are. */
function sameCutOf(bench: Bench, draft: PlaneDraft): PlaneDraft | null {
  const ways = draft.shapes.flatMap((index): readonly PlaneDraft[] => {
    const piece = bench.worked.find((worked) => worked.index === index);
    if (!piece) return [];
    if (!piece.curve) return [...floorCuts(bench, piece), ...wallCuts(bench, piece)];
    const own = curveCovers(bench, piece).flatMap(({ drafts }) => drafts);
    return own.some((way) => isLike(way, draft))
      ? own
      : otherCovers(bench, piece).flatMap(({ drafts }) => drafts);
  });
  const alike = ways.filter((way) => isLike(way, draft));
  const offMm = (way: PlaneDraft) => apartMm(way.runs[0][0], draft.runs[0][0]);
  return alike.reduce<PlaneDraft | null>(
    (best, way) => (!best || offMm(way) < offMm(best) - SAME_POINT_MM ? way : best),
    null,
  );
}

function isLike(way: PlaneDraft, draft: PlaneDraft): boolean {
  return (
    way.tool.plane.id === draft.tool.plane.id &&
    way.tool.sole.widthMm === draft.tool.sole.widthMm &&
    way.cantDeg === draft.cantDeg &&
    way.work === draft.work &&
    // A rock is begun where it is held, and may so be two runs.
    (way.runs.length === draft.runs.length || (way.rock !== undefined && draft.rock !== undefined)) &&
    way.shapes.join() === draft.shapes.join()
  );
}

function apartMm([ax, ay]: Pose, [bx, by]: Pose): number {
  return Math.hypot(bx - ax, by - ay);
}

/** Waste, a line or a groove: as far from the nearest corner of the section as it was, and as far above the section. */
function letDownAgain(before: Bench, bench: Bench, draft: PlaneDraft): PlaneDraft {
  const runs = draft.runs.map(
    (run): Run => run.map((pose) => poseOver(before, bench, draft, pose)) as unknown as Run,
  );
  const isWhereItWas = runs.every((run, i) => run.every((pose, k) => pose === draft.runs[i]?.[k]));
  return isWhereItWas ? sameDraft(bench, draft) : planeDraft(bench, { ...draft, runs });
}

function poseOver(before: Bench, bench: Bench, draft: PlaneDraft, pose: Pose): Pose {
  const turn = turnOf(pose[2]);
  const at = turned(turn, { x: pose[0], y: pose[1] });
  const acrossMm = turned(turn, cornerMoved(before.planned, bench.planned, { x: pose[0], y: pose[1] })).x;
  const restMm = (on: Bench, x: number): number | undefined =>
    restOn(on.profileOfPlanned(pose[2]), draft.tool.shape, x, { narrowMm: OVERCUT_MM / 4 })?.heightMm;
  const [was, is] = [restMm(before, at.x), restMm(bench, at.x + acrossMm)];
  if (was === undefined || is === undefined) return pose;
  const isStill = Math.abs(acrossMm) <= SAME_POINT_MM && Math.abs(is - was) <= SAME_POINT_MM;
  return isStill ? pose : poseAt(pose[2], at.x + acrossMm, at.y + is - was);
}

/** How far, and where to, the corner of the section has moved that was nearest to a place. */
function cornerMoved(before: Ring, now: Ring, place: Point): Point {
  let nearest = 0;
  for (const [i, { from }] of before.pieces.entries()) {
    if (distanceMm(from, place) < distanceMm((before.pieces[nearest] as Piece).from, place)) nearest = i;
  }
  const [was, is] = [before.pieces[nearest] as Piece, now.pieces[nearest] as Piece];
  return { x: is.from.x - was.from.x, y: is.from.y - was.from.y };
}

/** Whether a cut takes something, and is guided and clean as it was. */
function isAsGood(cut: TriedCut, was: TriedCut): boolean {
  if (cut.takesMm2 < LEAST_TAKE_MM2) return false;
  if (cut.guide?.kind === "batten" && was.guide?.kind !== "batten") return false;
  return !isClumsy(cut) || isClumsy(was);
}
