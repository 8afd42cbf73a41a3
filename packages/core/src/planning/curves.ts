/**
 * Cuts that finish the arcs of a section with hollows and rounds.
 *
 * A plane of the arc's own radius lies on it at every lean for which nothing else of the section stands in its way;
 * rocking it about the arc's centre from the lowest to the highest of the leans needed covers the arc. A smaller
 * round or a larger hollow touches at one line only and leaves ridges of height c²/8 · (1/r − 1/R), c being the
 * spacing of these lines on the arc; it is set several times (common practice, no source).
 */
import type { Point } from "../curve/index.ts";
import {
  bearingRatio,
  leanDeg,
  type Pose,
  type Run,
  restBesideWalls,
  turned,
  turnOf,
} from "../cutting/index.ts";
import { BEARS_MM, OVERCUT_MM, SAME_LEAN_DEG, SEARCH_FLATTEN_MM, toDeg, toRad } from "../measure/index.ts";
import type { Bench, Tool } from "./bench.ts";
import { type PlaneDraft, planeDraft, tidy } from "./draft-cut.ts";
import { facetsOver } from "./facets.ts";
import { cantsFor } from "./turning.ts";
import type { WorkedPiece } from "./worked-piece.ts";

/** How an arc can be cut by one plane: drafts that together, or one by one, cover some of it. */
export interface CurveCover {
  readonly piece: WorkedPiece;
  /** All arcs of the curve, in the ring's order, where it covers more than `piece`. */
  readonly arcs?: readonly WorkedPiece[];
  readonly tool: Tool;
  readonly cantDeg: number;
  /** Ways to do it, the plainest first; each covers all of `covers`. */
  readonly drafts: readonly PlaneDraft[];
  /** Stretches of the arc it finishes, as tilts. */
  readonly covers: readonly Stretch[];
  /** Length of the arc left to others, mm. */
  readonly shortMm: number;
  /** Ridges between neighbouring settings, mm; 0 for a plane of the arc's own radius. */
  readonly ridgeMm: number;
}

export interface Stretch {
  readonly lowDeg: number;
  readonly highDeg: number;
}

const GRID_DEG = 1;
/** More settings than this for one arc is creeping, and the plan says what plane would do better. */
export const MOST_SETTINGS_FOR_ARC = 5;

type CoversByPiece = WeakMap<Bench, Map<number, readonly CurveCover[]>>;

const COVERS: CoversByPiece = new WeakMap();
const OTHERS: CoversByPiece = new WeakMap();

/**
 * Ways to cut an arc with the shelf's planes, best first. Planes of its own radius are tried alone as long as one of
 * them covers it; those of other radii, several settings each, come after them when none does.
 */
export function curveCovers(bench: Bench, piece: WorkedPiece): readonly CurveCover[] {
  return coversOnce(COVERS, bench, piece, newCovers);
}

/** Ways to cut an arc with planes of other radii than its own, or with flat ones facet by facet, best first. */
export function otherCovers(bench: Bench, piece: WorkedPiece): readonly CurveCover[] {
  return coversOnce(OTHERS, bench, piece, newOtherCovers);
}

/** Worked out once for a bench, when first asked for. */
function coversOnce(
  book: CoversByPiece,
  bench: Bench,
  piece: WorkedPiece,
  work: (bench: Bench, piece: WorkedPiece) => readonly CurveCover[],
): readonly CurveCover[] {
  const known = book.get(bench) ?? new Map<number, readonly CurveCover[]>();
  book.set(bench, known);
  const covers = known.get(piece.index) ?? work(bench, piece);
  known.set(piece.index, covers);
  return covers;
}

function newCovers(bench: Bench, piece: WorkedPiece): readonly CurveCover[] {
  const own = coversOf(bench, piece, (offMm) => offMm <= MATCHES_MM);
  const whole = own.some((cover) => cover.shortMm <= COVER_SLACK_MM);
  return whole ? own : [...own, ...otherCovers(bench, piece)].sort((a, b) => rankOf(a) - rankOf(b));
}

function newOtherCovers(bench: Bench, piece: WorkedPiece): readonly CurveCover[] {
  return [...coversOf(bench, piece, (offMm) => offMm > MATCHES_MM), ...facetCovers(bench, [piece])].sort(
    (a, b) => rankOf(a) - rankOf(b),
  );
}

/**
 * Ways to plane a convex curve in flats, each with one plane for all its arcs (given in the ring's order), best first:
 * one plane in the hand and ridges alike, where arc by arc there would be a plane and a few flats for each.
 */
export function facetCovers(bench: Bench, arcs: readonly WorkedPiece[]): readonly CurveCover[] {
  const covers: CurveCover[] = [];
  const [piece] = arcs;
  const curve = arcs[Math.floor(arcs.length / 2)]?.curve;
  if (!piece || !curve?.convex) return covers;
  for (const tool of bench.tools) {
    for (const cantDeg of cantsToTry(bench, curve)) {
      const facets = facetsOver(bench, arcs, tool, cantDeg);
      if (!facets) continue;
      covers.push({
        piece,
        ...(arcs.length > 1 ? { arcs } : {}),
        tool,
        cantDeg,
        drafts: [facets.draft],
        covers: [{ lowDeg: curve.lowTiltDeg, highDeg: curve.highTiltDeg }],
        shortMm: facets.shortMm,
        ridgeMm: facets.ridgeMm,
      });
      break;
    }
  }
  return covers.sort((a, b) => rankOf(a) - rankOf(b));
}

/** Radii nearer to one another than this are the same plane's, mm. */
const MATCHES_MM = OVERCUT_MM / 4;

function coversOf(bench: Bench, piece: WorkedPiece, wanted: (offMm: number) => boolean): CurveCover[] {
  const curve = piece.curve;
  if (!curve) return [];
  const covers: CurveCover[] = [];
  for (const tool of bench.tools) {
    const arcOfSole = tool.sole.arc;
    if (!arcOfSole || (tool.plane.kind !== "hollow" && tool.plane.kind !== "round")) continue;
    if (curve.convex !== arcOfSole.sign < 0) continue;
    if (!wanted(Math.abs(arcOfSole.radiusMm - curve.radiusMm))) continue;
    for (const cantDeg of cantsToTry(bench, curve)) {
      const found = coversWith(bench, piece, tool, cantDeg).flatMap((cover) => bearing(bench, cover));
      covers.push(...found);
      if (found.length > 0) break;
    }
  }
  return covers.sort((a, b) => rankOf(a) - rankOf(b));
}

function rankOf(cover: CurveCover): number {
  const creep = cover.ridgeMm > 0 ? 5 + (cover.drafts[0]?.runs.length ?? 0) * 3 : 0;
  const settings = (cover.drafts[0]?.runs.length ?? 1) - 1;
  // Facets want a scraper afterwards over the whole curve; of the flat planes one about as wide as the curve lies best.
  const faceted =
    cover.drafts[0]?.work === "facets" ? 8 + Math.abs(Math.log(cover.tool.sole.widthMm / chordMm(cover))) : 0;
  return cover.shortMm * 50 + creep + faceted + settings * 0.5 + Math.abs(cover.cantDeg) / 90;
}

function chordMm({ piece, arcs }: CurveCover): number {
  const [{ from }, { to }] = [piece.piece, (arcs?.[arcs.length - 1] ?? piece).piece];
  return Math.hypot(to.x - from.x, to.y - from.y);
}

/** Ways to lay the stick for an arc: by its middle, and by its ends, which a rock may have to reach. */
function cantsToTry(bench: Bench, curve: NonNullable<WorkedPiece["curve"]>): readonly number[] {
  const middle = (curve.lowTiltDeg + curve.highTiltDeg) / 2;
  return [...new Set([middle, curve.lowTiltDeg, curve.highTiltDeg].flatMap((tilt) => cantsFor(bench, tilt)))];
}

/**
 * The cover with those of its ways left in which the plane, at the last, lies on the section with enough of its sole;
 * with too little it hangs by a corner, and that is no way to cut an arc.
 */
function bearing(bench: Bench, cover: CurveCover): CurveCover[] {
  const withinMm = Math.max(BEARS_MM, bench.toleranceMm / 2);
  const drafts = cover.drafts.filter(
    (draft) => bearingRatio(bench.planned, draft.cut, withinMm) >= bench.limits.bearingRatio,
  );
  return drafts.length > 0 ? [{ ...cover, drafts }] : [];
}

function coversWith(bench: Bench, piece: WorkedPiece, tool: Tool, cantDeg: number): CurveCover[] {
  const curve = piece.curve as NonNullable<WorkedPiece["curve"]>;
  const own = (tool.sole.arc as NonNullable<typeof tool.sole.arc>).radiusMm;
  const offMm = Math.abs(own - curve.radiusMm);
  const matches = offMm <= MATCHES_MM;
  // A larger round or a smaller hollow cannot lie in or on the arc without overcut.
  if (!matches && (curve.convex ? own < curve.radiusMm : own > curve.radiusMm)) return [];
  const halfDeg = toDeg(Math.asin(Math.min(1, tool.sole.widthMm / (2 * own))));
  const found = matches
    ? [ownRadius(bench, piece, tool, cantDeg, halfDeg)]
    : END_TOUCH_SHARES.map((share) => otherRadius(bench, piece, tool, cantDeg, own, share));
  return found.filter((cover) => cover !== null);
}

/** Pose in which the middle of the sole lies on the arc with the plane at this tilt. */
export function poseOnArc(centre: Point, radiusMm: number, convex: boolean, tiltDeg: number): Pose {
  const angle = toRad(tiltDeg);
  const side = convex ? 1 : -1;
  return [
    tidy(centre.x - side * radiusMm * Math.sin(angle)),
    tidy(centre.y + side * radiusMm * Math.cos(angle)),
    tidy(tiltDeg),
  ];
}

function isLegal(bench: Bench, tool: Tool, pose: Pose): boolean {
  const at = turned(turnOf(pose[2]), { x: pose[0], y: pose[1] });
  const rest = restBesideWalls(bench.profileOfPlanned(pose[2]), tool.shape, at.x, { gapMm: OVERCUT_MM / 2 });
  return rest === null || rest.heightMm <= at.y + OVERCUT_MM / 2;
}

/** Legal leans between two tilts, as intervals; ends found by halving to a hundredth of a degree. */
function legalTilts(
  bench: Bench,
  tool: Tool,
  pose: (tiltDeg: number) => Pose,
  fromDeg: number,
  toDeg_: number,
  critical: readonly number[],
): Stretch[] {
  if (toDeg_ < fromDeg) return [];
  const stops = new Set<number>([tidy(fromDeg), tidy(toDeg_)]);
  // Between two walls a sole may fit at one lean only: the leans that put its ends at the arc's are always looked at.
  for (const t of critical) if (t >= fromDeg && t <= toDeg_) stops.add(tidy(t));
  for (let t = Math.ceil(fromDeg / GRID_DEG) * GRID_DEG; t < toDeg_; t += GRID_DEG) stops.add(tidy(t));
  const tilts = [...stops].sort((a, b) => a - b);
  const legal = (t: number) => isLegal(bench, tool, pose(t));
  const found: Stretch[] = [];
  let low: number | null = null;
  let before: number | null = null;
  for (const t of tilts) {
    const ok = legal(t);
    if (ok && low === null) low = before === null ? t : halve(t, before);
    if (!ok && low !== null) {
      found.push({ lowDeg: low, highDeg: halve(before as number, t) });
      low = null;
    }
    before = t;
  }
  if (low !== null) found.push({ lowDeg: low, highDeg: before as number });
  return found;

  function halve(inside: number, outside: number): number {
    let a = inside;
    let b = outside;
    for (let i = 0; i < 8; i++) {
      const middle = (a + b) / 2;
      if (legal(middle)) a = middle;
      else b = middle;
    }
    return tidy(a);
  }
}

function ownRadius(
  bench: Bench,
  piece: WorkedPiece,
  tool: Tool,
  cantDeg: number,
  halfDeg: number,
): CurveCover | null {
  const curve = piece.curve as NonNullable<WorkedPiece["curve"]>;
  const { lowTiltDeg: lowDeg, highTiltDeg: highDeg, centre, radiusMm, convex } = curve;
  const own = (tool.sole.arc as { radiusMm: number }).radiusMm;
  const pose = (tilt: number) => poseOnArc(centre, own, convex, tilt);
  const within = heldBetween(bench, cantDeg, lowDeg - halfDeg, highDeg + halfDeg);
  if (!within) return null;
  const free = legalTilts(
    bench,
    tool,
    pose,
    Math.max(within.lowDeg, lowDeg - halfDeg * 0.95),
    Math.min(within.highDeg, highDeg + halfDeg * 0.95),
    [lowDeg + halfDeg, highDeg - halfDeg, (lowDeg + highDeg) / 2],
  );
  if (free.length === 0) return null;
  const needLow = lowDeg + halfDeg;
  const needHigh = highDeg - halfDeg;
  const slackDeg = toDeg(COVER_SLACK_MM / radiusMm);
  const single = needLow >= needHigh;
  const rocks: Stretch[] = [];
  const covered: Stretch[] = [];
  const wanted = [...free].sort((a, b) => coverOf(b) - coverOf(a));
  for (const stretch of wanted) {
    const gain = coverOf(stretch);
    if (gain <= slackDeg * 4 || !addsTo(covered, stretch)) continue;
    if (single && stretch.lowDeg <= needLow && stretch.highDeg >= needHigh) {
      covered.push({ lowDeg, highDeg });
      const from = Math.max(stretch.lowDeg, needHigh);
      const to = Math.min(stretch.highDeg, needLow);
      return cover(
        [chosenTilts(from, to, cantDeg).map((t): Stretch => ({ lowDeg: t, highDeg: t }))].flat(),
        true,
      );
    }
    const low = clamp(Math.min(needLow, needHigh), stretch.lowDeg, stretch.highDeg);
    const high = clamp(Math.max(needLow, needHigh), stretch.lowDeg, stretch.highDeg);
    rocks.push(single ? nearestPoint(stretch, needLow, needHigh) : { lowDeg: low, highDeg: high });
    covered.push({ lowDeg: Math.max(lowDeg, low - halfDeg), highDeg: Math.min(highDeg, high + halfDeg) });
    if (leftOver(covered) <= slackDeg) break;
  }
  if (rocks.length === 0) return null;
  return cover(rocks, false);

  function coverOf(stretch: Stretch): number {
    return Math.min(highDeg, stretch.highDeg + halfDeg) - Math.max(lowDeg, stretch.lowDeg - halfDeg);
  }

  function addsTo(done: readonly Stretch[], stretch: Stretch): boolean {
    const more = [
      ...done,
      {
        lowDeg: Math.max(lowDeg, stretch.lowDeg - halfDeg),
        highDeg: Math.min(highDeg, stretch.highDeg + halfDeg),
      },
    ];
    return leftOver(done) - leftOver(more) > slackDeg;
  }

  function leftOver(done: readonly Stretch[]): number {
    const sorted = [...done].sort((a, b) => a.lowDeg - b.lowDeg);
    let at = lowDeg;
    let open = 0;
    for (const s of sorted) {
      if (s.lowDeg > at) open += s.lowDeg - at;
      at = Math.max(at, s.highDeg);
    }
    return open + Math.max(0, highDeg - at);
  }

  function cover(list: readonly Stretch[], alternatives: boolean): CurveCover {
    const drafts = alternatives ? list.map((s) => draftOf([s])) : [draftOf(list)];
    return {
      piece,
      tool,
      cantDeg,
      drafts,
      covers: covered,
      shortMm: toRad(leftOver(covered)) * radiusMm,
      ridgeMm: 0,
    };
  }

  function draftOf(list: readonly Stretch[]): PlaneDraft {
    const only = list.length === 1 ? list[0] : undefined;
    return planeDraft(bench, {
      work: "curve",
      purpose: "shape",
      cantDeg,
      shapes: [piece.index],
      tool,
      runs: list.map((s) => rockRun(pose, s.lowDeg, s.highDeg, own)),
      ...(only && only.highDeg - only.lowDeg > LEAST_ROCK_DEG
        ? { rock: { lowDeg: only.lowDeg, highDeg: only.highDeg, centre } }
        : {}),
    });
  }
}

/** The same plane on the same arc, rocked between two other leans. */
export function rockedWithin(bench: Bench, draft: PlaneDraft, lowDeg: number, highDeg: number): PlaneDraft {
  const rock = draft.rock;
  const arc = draft.tool.sole.arc;
  if (!rock || !arc) return draft;
  const pose = (tilt: number): Pose => poseOnArc(rock.centre, arc.radiusMm, arc.sign < 0, tilt);
  return planeDraft(bench, {
    work: draft.work,
    purpose: draft.purpose,
    cantDeg: draft.cantDeg,
    shapes: draft.shapes,
    tool: draft.tool,
    runs: [rockRun(pose, lowDeg, highDeg, arc.radiusMm)],
    rock: { lowDeg, highDeg, centre: rock.centre },
  });
}

/** Length of an arc that may stay uncovered at its ends before it counts, mm: less than a hand can see. */
const COVER_SLACK_MM = 0.05;

/** Tilts within a free range worth trying for a single pose: upright first, then the middle, then the ends. */
function chosenTilts(fromDeg: number, to: number, cantDeg: number): number[] {
  const upright = clamp(tidy(-cantDeg > 180 ? -cantDeg + 360 : -cantDeg), fromDeg, to);
  const tilts = [upright, (fromDeg + to) / 2, fromDeg, to].map(tidy);
  return tilts.filter((t, i) => tilts.findIndex((u) => Math.abs(u - t) < 0.25) === i);
}

function nearestPoint(stretch: Stretch, a: number, b: number): Stretch {
  const t = clamp((a + b) / 2, stretch.lowDeg, stretch.highDeg);
  return { lowDeg: t, highDeg: t };
}

/** Poses of a rock from one lean to another about the arc's centre, at most 1° and 0.2 mm apart. */
export function rockRun(pose: (tiltDeg: number) => Pose, fromDeg: number, to: number, radiusMm: number): Run {
  const span = Math.abs(to - fromDeg);
  if (span <= LEAST_ROCK_DEG) return [pose((fromDeg + to) / 2)];
  const stepDeg = Math.min(1, toDeg(STEP_MM / radiusMm));
  const count = Math.max(2, Math.ceil(span / stepDeg));
  return Array.from({ length: count + 1 }, (_, i) => pose(fromDeg + ((to - fromDeg) * i) / count));
}

/** Less than this is no rock: a hand cannot hold a lean so finely, degrees. */
const LEAST_ROCK_DEG = 0.05;

/** Poses of one movement stand no further apart than this, mm (the plan file's rule is 0.2). */
const STEP_MM = 0.19;

/** Tilts that the hand can hold with the stick turned by this cant, within two others; null if none. */
function heldBetween(bench: Bench, cantDeg: number, lowDeg: number, highDeg: number): Stretch | null {
  // The arc's tilts run on past a half turn without a jump; the hand's range is moved to meet them.
  for (const turn of [0, 360, -360]) {
    const low = Math.max(lowDeg, -bench.limits.leanDeg - cantDeg + turn);
    const high = Math.min(highDeg, bench.limits.leanDeg - cantDeg + turn);
    if (high >= low) return { lowDeg: low, highDeg: high };
  }
  return null;
}

function otherRadius(
  bench: Bench,
  piece: WorkedPiece,
  tool: Tool,
  cantDeg: number,
  own: number,
  endTouchShare: number,
): CurveCover | null {
  const curve = piece.curve as NonNullable<WorkedPiece["curve"]>;
  const { lowTiltDeg: lowDeg, highTiltDeg: highDeg, radiusMm } = curve;
  const bend = Math.abs(1 / own - 1 / radiusMm);
  const spacingMm = Math.min(tool.sole.widthMm, Math.sqrt((8 * RIDGE_SHARE * bench.toleranceMm) / bend));
  const endDeg = toDeg(spacingMm / 2 / radiusMm);
  const halfDeg = toDeg(Math.asin(Math.min(1, tool.sole.widthMm / (2 * own))));
  // The outermost settings touch near the arc's ends: what a sole leaves there cannot be reached from the next one.
  const marginDeg = endDeg * endTouchShare;
  const spanDeg = Math.max(0, highDeg - lowDeg - 2 * marginDeg);
  const least = Math.max(1, Math.ceil(spanDeg / (2 * endDeg) - SAME_LEAN_DEG) + 1);
  let best: { settings: readonly Setting[]; shortDeg: number } | null = null;
  for (let count = least; count <= MOST_SETTINGS_FOR_ARC; count++) {
    const settings = Array.from({ length: count }, (_, i) =>
      count === 1 ? (lowDeg + highDeg) / 2 : lowDeg + marginDeg + (spanDeg * i) / (count - 1),
    ).flatMap((touchDeg): Setting[] => {
      const pose = poseTouching(bench, curve, tool, cantDeg, own, touchDeg);
      return pose ? [{ touchDeg, pose }] : [];
    });
    if (settings.length === 0) continue;
    const shortDeg = uncovered(settings, lowDeg, highDeg, endDeg, halfDeg);
    if (!best || shortDeg < best.shortDeg - endDeg / 4) best = { settings, shortDeg };
    if (best.shortDeg <= toDeg(COVER_SLACK_MM / radiusMm)) break;
  }
  if (!best) return null;
  const touches = best.settings.map((s) => s.touchDeg);
  const apartDeg =
    touches.length === 1 ? highDeg - lowDeg : Math.max(...touches.slice(1).map((t, i) => t - touches[i]));
  const apartMm = Math.min(spacingMm, toRad(apartDeg) * radiusMm);
  const ridgeMm = Math.max(SEARCH_FLATTEN_MM, (apartMm * apartMm * bend) / 8);
  const draftOf = (list: readonly Run[]): PlaneDraft =>
    planeDraft(bench, {
      work: "ridges",
      purpose: "shape",
      cantDeg,
      shapes: [piece.index],
      tool,
      runs: list,
      ridgeMm,
    });
  return {
    piece,
    tool,
    cantDeg,
    drafts: ordersOf(best.settings).map((order) => draftOf(order.map((s): Run => [s.pose]))),
    covers: [{ lowDeg, highDeg }],
    shortMm: toRad(best.shortDeg) * radiusMm,
    ridgeMm,
  };
}

/** Share of the tolerance that ridges between settings may stand; the rest is left to the hand. */
const RIDGE_SHARE = 0.35;

/**
 * How near its end an arc is touched by the outermost setting, as shares of half a spacing: a little way in, which
 * takes fewest settings, or at the very end, where a wall beside it lets the sole reach no further.
 */
const END_TOUCH_SHARES = [0.3, 0];

/** One setting of a plane of another radius: the place it touches, as the tilt of a plane square on it, and its pose. */
interface Setting {
  readonly touchDeg: number;
  readonly pose: Pose;
}

/**
 * Orders to work the settings in: from either end, or with the one last that stands squarest on the arc, since it is
 * in the last of them that the plane must bear well.
 */
function ordersOf(settings: readonly Setting[]): readonly (readonly Setting[])[] {
  if (settings.length < 2) return [settings];
  const askew = (s: Setting) => Math.abs(((s.pose[2] - s.touchDeg + 540) % 360) - 180);
  const squarest = settings.reduce((a, b) => (askew(b) < askew(a) - SAME_LEAN_DEG ? b : a));
  const orders = [settings, [...settings].reverse()];
  const isAtAnEnd = squarest === settings[0] || squarest === settings[settings.length - 1];
  return isAtAnEnd ? orders : [...orders, [...settings.filter((s) => s !== squarest), squarest]];
}

/** How much of an arc lies under no setting: each covers half a spacing to either side, as far as its sole reaches. */
function uncovered(
  settings: readonly Setting[],
  lowDeg: number,
  highDeg: number,
  endDeg: number,
  halfDeg: number,
): number {
  let at = lowDeg;
  let open = 0;
  for (const { touchDeg, pose } of settings) {
    // A tilt is kept within a half turn; the arc's own run on without a jump.
    const tilt = touchDeg + (((pose[2] - touchDeg + 540) % 360) - 180);
    const from = Math.max(touchDeg - endDeg, tilt - halfDeg);
    const to = Math.min(touchDeg + endDeg, tilt + halfDeg);
    if (from > at) open += from - at;
    at = Math.max(at, to);
  }
  return open + Math.max(0, highDeg - at);
}

/** Leans tried away from square on the place of touch, degrees; the sole's middle bears best, its ends not at all. */
const LEAN_OFFS_DEG = [5, -5, 10, -10, 15, -15, 20, -20, 25, -25];

/**
 * A legal pose in which a plane of another radius touches the arc where a plane standing square on it would have the
 * given tilt. Its own centre lies on the line through the arc's and that place; its lean is free within the sole.
 */
function poseTouching(
  bench: Bench,
  curve: NonNullable<WorkedPiece["curve"]>,
  tool: Tool,
  cantDeg: number,
  own: number,
  touchDeg: number,
): Pose | null {
  const side = curve.convex ? 1 : -1;
  const angle = toRad(touchDeg);
  const outX = -Math.sin(angle);
  const outY = Math.cos(angle);
  // Seen along the outward normal the touched place lies `radius` out of a convex arc's centre, as far in of a concave one's.
  const centre = {
    x: curve.centre.x + side * (curve.radiusMm - own) * outX,
    y: curve.centre.y + side * (curve.radiusMm - own) * outY,
  };
  const halfDeg = toDeg(Math.asin(Math.min(1, tool.sole.widthMm / (2 * own))));
  const held = heldBetween(bench, cantDeg, touchDeg - halfDeg, touchDeg + halfDeg);
  if (!held) return null;
  const nearest = clamp(touchDeg, held.lowDeg, held.highDeg);
  // At the last the sole's very end touches: beside a wall nothing else may fit.
  for (const tilt of [
    nearest,
    ...LEAN_OFFS_DEG.map((off) => touchDeg + off),
    touchDeg + halfDeg,
    touchDeg - halfDeg,
  ]) {
    if (Math.abs(tilt - touchDeg) > halfDeg + SAME_LEAN_DEG) continue;
    if (Math.abs(leanDeg(tilt, cantDeg)) > bench.limits.leanDeg) continue;
    const pose = poseOnArc(centre, own, curve.convex, tilt);
    if (isLegal(bench, tool, pose)) return pose;
  }
  return null;
}

function clamp(x: number, low: number, high: number): number {
  return Math.max(low, Math.min(high, x));
}
