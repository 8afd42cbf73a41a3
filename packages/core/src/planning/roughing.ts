/**
 * Waste taken with flat planes before the curves: a few large steps from an edge, then chamfers over what is left,
 * to about one shaving above the arcs. They also leave the arrises that the curved planes ride on.
 */
import type { Point, Region } from "../curve/index.ts";
import { leanDeg, type Pose, type Run, restBesideWalls, restOn, turned, turnOf } from "../cutting/index.ts";
import { DRAWING_NOISE_MM, OVERCUT_MM, SAME_SCORE } from "../measure/index.ts";
import type { Bench, Tool } from "./bench.ts";
import { closedUp } from "./closed-up.ts";
import { type PlaneDraft, planeDraft, poseAt, tidy } from "./draft-cut.ts";
import { MOST_FREE_LEAN_DEG } from "./leans.ts";
import { isNeverGuided } from "./never-guided.ts";
import { sinksAslant, tryCut } from "./try-cut.ts";
import { cantFor, uprightTiltDeg } from "./turning.ts";
import type { WorkedPiece } from "./worked-piece.ts";

/** Least waste worth a setting of its own, mm²: below it a few more strokes of the curved plane are quicker. */
const LEAST_GAIN_MM2 = 5;
/** And least share of the waste that stands over the curves. */
const LEAST_GAIN_RATIO = 0.1;
/** What a leaning plane's setting weighs against an upright one's, mm² of waste. */
const LEAN_COST_MM2 = 2;
const MOST_WIDTHS = 4;

/**
 * Steps and chamfers over the arcs, in the order they are found best; `wood` already has its required flats cut.
 *
 * What a cut takes can only shrink as others are made before it, so a draft is tried again only where what it last
 * took could still make it the best one. Whoever lets them run into grooves already
 * cut has to move those.
 */
export function roughingCuts(
  bench: Bench,
  wood: Region,
  arcs: readonly WorkedPiece[],
  wasteMm2: number,
  mayRunIntoGrooves = false,
): PlaneDraft[] {
  const pool = roughingPool(bench, arcs).map(
    (draft, place): PoolEntry => ({
      draft,
      place,
      mostScore: Number.POSITIVE_INFINITY,
    }),
  );
  const chosen: PlaneDraft[] = [];
  const least = Math.max(LEAST_GAIN_MM2, wasteMm2 * LEAST_GAIN_RATIO);
  const known = new Set(pool.map(({ draft }) => draft.key));
  let before = wood;
  for (let round = 0; round < 2 * arcs.length + 1 && !bench.effort.isHasty; round++) {
    let best: { draft: PlaneDraft; place: number; score: number; after: Region } | null = null;
    pool.sort((a, b) => b.mostScore - a.mostScore || a.place - b.place);
    for (const entry of pool) {
      const { draft, place } = entry;
      // What was added in this round stands behind all others, unsorted: no break here.
      if (best && entry.mostScore < best.score - SAME_SCORE) continue;
      const tried = tryCut(bench, before, draft);
      entry.mostScore = roughingScore(bench, draft, tried.takesMm2, arcs);
      if (tried.takesMm2 < least || tried.refusals.length > 0 || isNeverGuided(bench, tried)) continue;
      if (tried.fin) for (const closed of closedUp(bench, draft, tried.fin)) add(closed);
      if (tried.fin || (tried.intoGroove && !mayRunIntoGrooves)) continue;
      if (sinksAslant(bench, tried) || leanOf(draft) > MOST_FREE_LEAN_DEG) continue;
      const score = entry.mostScore;
      const isBetter =
        !best || score > best.score + SAME_SCORE || (score > best.score - SAME_SCORE && place < best.place);
      if (isBetter) best = { draft, place, score, after: tried.after };
    }
    if (!best) break;
    chosen.push(best.draft);
    before = best.after;
  }
  return chosen;

  /** Looked at before the round is over, since an array's walk goes on to what is added behind it. */
  function add(draft: PlaneDraft): void {
    if (known.has(draft.key)) return;
    known.add(draft.key);
    pool.push({ draft, place: pool.length, mostScore: Number.POSITIVE_INFINITY });
  }
}

interface PoolEntry {
  readonly draft: PlaneDraft;
  readonly place: number;
  /** The most that the cut can still be worth. */
  mostScore: number;
}

function leanOf(draft: PlaneDraft): number {
  return Math.abs(leanDeg(draft.runs[0][0][2], draft.cantDeg));
}

/** What taking this much waste with this cut is worth, mm² of waste. */
function roughingScore(
  bench: Bench,
  draft: PlaneDraft,
  takesMm2: number,
  arcs: readonly WorkedPiece[],
): number {
  const lean = leanOf(draft);
  return (
    takesMm2 * chamferShare(bench, draft, arcs) * (draft.work === "groove" ? TRENCH_SHARE : 1) -
    (lean > 1 ? LEAN_COST_MM2 + lean / 15 : 0) -
    (draft.runs.length - 1) * 3 -
    draft.tool.sole.widthMm / 1000
  );
}

/** A groove is a plough's slow work: it is taken where no step from an edge gets at the waste. */
const TRENCH_SHARE = 0.3;

/** A chamfer off the middle of its arc leaves two unlike arrises: it counts for less than one on it. */
const OFF_MIDDLE_SHARE = 0.75;
const MIDDLE_WITHIN_DEG = 3;

function chamferShare(bench: Bench, draft: PlaneDraft, arcs: readonly WorkedPiece[]): number {
  const tilt = draft.runs[0][0][2];
  if (Math.abs(leanDeg(tilt, draft.cantDeg)) < bench.limits.leaningFromDeg) return 1;
  const centred = arcs.some(
    ({ curve }) => curve && Math.abs((curve.lowTiltDeg + curve.highTiltDeg) / 2 - tilt) < MIDDLE_WITHIN_DEG,
  );
  return centred ? 1 : OFF_MIDDLE_SHARE;
}

/** Every step and chamfer worth trying over the arcs; what is worth trying over one arc is worked out once. */
export function roughingPool(bench: Bench, arcs: readonly WorkedPiece[]): PlaneDraft[] {
  const pool = new Map<string, PlaneDraft>();
  for (const piece of arcs) for (const draft of poolOver(bench, piece)) pool.set(draft.key, draft);
  return [...pool.values()];
}

const POOLS = new WeakMap<Bench, Map<number, readonly PlaneDraft[]>>();

function poolOver(bench: Bench, piece: WorkedPiece): readonly PlaneDraft[] {
  const known = POOLS.get(bench) ?? new Map<number, readonly PlaneDraft[]>();
  POOLS.set(bench, known);
  const before = known.get(piece.index);
  if (before) return before;
  const made = [...stepsOver(bench, piece), ...trenchesOver(bench, piece), ...chamfersOver(bench, piece)];
  known.set(piece.index, made);
  return made;
}

/** Places on an arc, as shares of its turn, at which a step's inner corner is tried. */
const CORNER_SHARES = [0, 1 / 8, 1 / 4, 3 / 8, 1 / 2, 5 / 8, 3 / 4, 7 / 8, 1];

function stepsOver(bench: Bench, piece: WorkedPiece): PlaneDraft[] {
  const curve = piece.curve;
  if (!curve) return [];
  const middle = (curve.lowTiltDeg + curve.highTiltDeg) / 2;
  const cant = cantFor(bench, middle);
  if (cant === null) return [];
  const tiltDeg = tidy(uprightTiltDeg(cant));
  const turn = turnOf(tiltDeg);
  const centre = turned(turn, curve.centre);
  const room = bench.shavings.ordinaryMm;
  const drafts: PlaneDraft[] = [];
  const placeOf = (share: number): number => {
    const tilt = curve.lowTiltDeg + (curve.highTiltDeg - curve.lowTiltDeg) * share;
    const angle = ((tilt - tiltDeg) * Math.PI) / 180;
    return centre.x - (curve.convex ? 1 : -1) * curve.radiusMm * Math.sin(angle);
  };
  // The wall stands a shaving clear of the curve where it rises beside the plane; at the end of a cove it may stand
  // right above that end, so that no fin is left there.
  const ends = curve.convex ? [] : [0, 1].map((share) => ({ x: placeOf(share), clearMm: 0 }));
  const places = [...CORNER_SHARES.map((share) => ({ x: placeOf(share), clearMm: room })), ...ends];
  for (const { x, clearMm } of places) {
    for (const side of [-1, 1] as const) {
      const wallAt = x + side * clearMm;
      const ways: PlaneDraft[] = [];
      for (const tool of bench.tools) {
        if (tool.plane.kind !== "rebate" && tool.plane.kind !== "moving fillister") continue;
        const draft = stepFrom(bench, tool, tiltDeg, cant, wallAt, side, room);
        if (draft) ways.push(draft);
      }
      // Fewest widths, then the narrowest plane: it is the lightest to push and its overhang finds the edge.
      ways.sort((a, b) => a.runs.length - b.runs.length || a.tool.sole.widthMm - b.tool.sole.widthMm);
      if (ways[0]) drafts.push(ways[0]);
    }
  }
  return drafts;
}

/**
 * Steps from an edge whose wall stands right at the end of a curved cut, on the side away from the curve: where the
 * section falls away there they make the room that a line would, and take waste that has to go anyway.
 */
export function stepsBesideEnd(
  bench: Bench,
  draft: PlaneDraft,
  end: Point,
  side: "left" | "right",
): PlaneDraft[] {
  const tiltDeg = tidy(uprightTiltDeg(draft.cantDeg));
  const at = turned(turnOf(tiltDeg), end);
  const found: PlaneDraft[] = [];
  for (const tool of bench.tools) {
    if (tool.plane.kind !== "rebate" && tool.plane.kind !== "moving fillister") continue;
    const step = stepFrom(
      bench,
      tool,
      tiltDeg,
      draft.cantDeg,
      at.x,
      side === "right" ? 1 : -1,
      bench.shavings.ordinaryMm,
    );
    if (step) found.push(step);
  }
  return found.sort((a, b) => a.runs.length - b.runs.length || a.tool.sole.widthMm - b.tool.sole.widthMm);
}

/** A step with its wall at `wallAt`, the plane running to the side given (+1: to the right), in as many widths as reach the edge. */
function stepFrom(
  bench: Bench,
  tool: Tool,
  tiltDeg: number,
  cantDeg: number,
  wallAt: number,
  side: -1 | 1,
  roomMm: number,
): PlaneDraft | null {
  const profile = bench.profileOfPlanned(tiltDeg);
  const turn = turnOf(tiltDeg);
  const corners = [
    turned(turn, { x: bench.box.minX, y: bench.box.minY }).x,
    turned(turn, { x: bench.box.maxX, y: bench.box.maxY }).x,
  ];
  const edgeAt = side > 0 ? Math.max(...corners) : Math.min(...corners);
  const width = tool.sole.widthMm;
  const lap = width * 0.1;
  const shifts: number[] = [];
  for (let i = 0; i < MOST_WIDTHS; i++) {
    const near = wallAt + side * i * (width - lap);
    if (i > 0 && side * (edgeAt - near) <= lap) break;
    shifts.push(side > 0 ? near - tool.sole.leftMm : near - tool.sole.rightMm);
  }
  const lastNear = wallAt + side * (shifts.length - 1) * (width - lap);
  if (side * (edgeAt - lastNear) > width) return null;
  let height = Number.NEGATIVE_INFINITY;
  for (const shift of shifts) {
    const rest = restBesideWalls(profile, tool.shape, shift, {
      gapMm: OVERCUT_MM / 4,
      clearance: (source) => (source > 0 ? roomMm : 0),
    });
    if (rest) height = Math.max(height, rest.heightMm);
  }
  if (!Number.isFinite(height)) return null;
  // The first width overhangs the edge, so that the plane has something to run against.
  const runs: Run[] = [...shifts].reverse().map((shift) => [poseAt(tiltDeg, shift, height)]);
  return planeDraft(bench, { work: "step", purpose: "waste", cantDeg, shapes: [], tool, runs });
}

/** Places on an arc at which a trench's wall is tried, how wide it may be for the arc, and how many irons are tried. */
const TRENCH_SHARES = [0, 1 / 4, 1 / 2, 3 / 4, 1];
const WIDEST_TRENCH_SHARE = 0.75;
const MOST_IRONS = 2;

/** Grooves down into a cove that no step reaches from an edge: a plough's, each wall a shaving clear of the arc. */
function trenchesOver(bench: Bench, piece: WorkedPiece): PlaneDraft[] {
  const curve = piece.curve;
  if (!curve || curve.convex) return [];
  const middle = (curve.lowTiltDeg + curve.highTiltDeg) / 2;
  const cant = cantFor(bench, middle);
  if (cant === null) return [];
  const tiltDeg = tidy(uprightTiltDeg(cant));
  const centre = turned(turnOf(tiltDeg), curve.centre);
  const room = bench.shavings.ordinaryMm;
  const drafts: PlaneDraft[] = [];
  const across = (tilt: number) => centre.x + curve.radiusMm * Math.sin(((tilt - tiltDeg) * Math.PI) / 180);
  const chordMm = Math.abs(across(curve.highTiltDeg) - across(curve.lowTiltDeg));
  const irons = bench.tools
    .filter((tool) => tool.plane.kind === "plough" && tool.sole.widthMm < chordMm * WIDEST_TRENCH_SHARE)
    .sort((a, b) => b.sole.widthMm - a.sole.widthMm)
    .slice(0, MOST_IRONS);
  for (const share of TRENCH_SHARES) {
    const x = across(curve.lowTiltDeg + (curve.highTiltDeg - curve.lowTiltDeg) * share);
    for (const tool of irons) {
      for (const side of [-1, 1] as const) {
        const near = x + side * room;
        const shift = side > 0 ? near - tool.sole.leftMm : near - tool.sole.rightMm;
        const rest = restBesideWalls(bench.profileOfPlanned(tiltDeg), tool.shape, shift, {
          gapMm: OVERCUT_MM / 4,
          clearance: (source) => (source > 0 ? room : 0),
        });
        if (!rest) continue;
        const runs: Run[] = [[poseAt(tiltDeg, shift, rest.heightMm)]];
        drafts.push(
          planeDraft(bench, { work: "groove", purpose: "waste", cantDeg: cant, shapes: [], tool, runs }),
        );
      }
    }
  }
  return drafts;
}

function chamfersOver(bench: Bench, piece: WorkedPiece): PlaneDraft[] {
  const curve = piece.curve;
  if (!curve) return [];
  const { lowTiltDeg: low, highTiltDeg: high } = curve;
  const middle = (low + high) / 2;
  const ownCant = cantFor(bench, middle);
  const tilts = high - low > 50 ? [middle, low + (high - low) / 4, high - (high - low) / 4] : [middle];
  const drafts: PlaneDraft[] = [];
  for (const tilt of tilts) {
    const tiltDeg = tidy(tilt);
    const cant = cantFor(bench, tiltDeg);
    // The stick is not turned over for a chamfer that the curve itself does not ask it for.
    if (cant === null || cant !== ownCant) continue;
    if (Math.abs(leanDeg(tiltDeg, cant)) < bench.limits.leaningFromDeg) continue;
    for (const tool of bench.tools) {
      if (tool.plane.kind !== "rebate" && tool.plane.kind !== "smoother") continue;
      const draft = chamferAt(bench, piece, tool, tiltDeg, cant);
      if (draft) drafts.push(draft);
    }
  }
  return drafts;
}

/** A leaning flat over an arc, a shaving clear of whatever stands highest under it. */
function chamferAt(
  bench: Bench,
  piece: WorkedPiece,
  tool: Tool,
  tiltDeg: number,
  cantDeg: number,
): PlaneDraft | null {
  const curve = piece.curve as NonNullable<WorkedPiece["curve"]>;
  const turn = turnOf(tiltDeg);
  const a = turned(turn, piece.piece.from);
  const b = turned(turn, piece.piece.to);
  const touch = curve.convex ? turned(turn, curve.centre).x : (a.x + b.x) / 2;
  const shift = touch - (tool.sole.leftMm + tool.sole.rightMm) / 2;
  const rest = restOn(bench.profileOfPlanned(tiltDeg), tool.shape, shift, {
    clearance: (source) => (source > 0 ? bench.shavings.ordinaryMm : DRAWING_NOISE_MM),
  });
  if (!rest) return null;
  const pose: Pose = poseAt(tiltDeg, shift, rest.heightMm);
  return planeDraft(bench, { work: "chamfer", purpose: "waste", cantDeg, shapes: [], tool, runs: [[pose]] });
}
