/**
 * Ten thousand hands work a plan from its file alone: each sets its gauges, scribes its lines, runs its planes a little
 * off and measures what came out. The planner's formula is not used: the chain is walked, the spread is counted.
 */
import { describe, expect, test } from "vitest";
import type { Plan, PlanCut, PlanMark } from "../cutting/index.ts";
import { GOOD_HAND, type HandAccuracy } from "./accuracy.ts";
import { planOf, sectionOf } from "./testing/benches.ts";
import { hollow, rebate, round, SNIPE_BILLS, shelfOf, WHOLE_SHELF } from "./testing/shelves.ts";

const HANDS = 10_000;
/** A figure of 95 in 100 is this many standard deviations of a normal error. */
const AT_95 = 1.96;
/**
 * The standard deviation counted over n hands strays from the true one by 1 / √(2n) of itself, 0.71 %. Four and a half
 * times that is met once in 150,000 counts by chance; rounding a figure to a thousandth is added.
 */
const BOUND_RATIO = 4.5 / Math.sqrt(2 * HANDS);
const ROUNDING_MM = 0.0006;
/** Places of one file that are one, mm. */
const SAME_PLACE_MM = 0.0001;

/** Uniform numbers from 0 to 1, always the same for a seed (a linear congruence and a scramble of its high bits). */
function seeded(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = state;
    t = Math.imul(t ^ (t >>> 15), t | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

/** Normal errors that keep within the given figure 95 times in 100. */
function errorsFrom(uniform: () => number): (within95Mm: number) => number {
  return (within95Mm) => {
    const radius = Math.sqrt(-2 * Math.log(1 - uniform()));
    return (within95Mm / AT_95) * radius * Math.cos(2 * Math.PI * uniform());
  };
}

type Way = "as planned" | "from the edge" | "from the foot";

/** One hand at work: where its lines and planes really came to lie, by how much they are out across. */
class Hand {
  readonly #plan: Plan;
  readonly #hand: HandAccuracy;
  readonly #error: (within95Mm: number) => number;
  readonly #settings: { readonly from: string; readonly distanceMm: number; readonly out: number }[] = [];
  readonly #widths = new Map<string, number>();
  readonly #lines = new Map<string, number>();
  readonly #knives = new Map<string, number>();
  readonly #follows = new Map<number, number>();
  readonly #cuts = new Map<number, number>();

  constructor(plan: Plan, hand: HandAccuracy, error: (within95Mm: number) => number) {
    this.#plan = plan;
    this.#hand = hand;
    this.#error = error;
    for (const cut of plan.cuts) {
      for (const mark of plan.marks.filter((one) => one.before === cut.number)) {
        this.#lines.set(mark.id, this.line(mark, "as planned"));
      }
      this.#cuts.set(cut.number, this.cut(cut, "as planned"));
    }
  }

  /** How far a line is out, the way it was really taken or another. */
  line(mark: PlanMark, way: Way): number {
    const knife = once(this.#knives, mark.id, () => this.#error(this.#hand.lineMm));
    const footCut = /^foot of cut (\d+)$/.exec(mark.from);
    const isFromFoot = way === "as planned" ? footCut !== null : way === "from the foot";
    if (!isFromFoot) {
      const from = footCut ? "gauge edge" : mark.from;
      const distance = footCut ? mark.fromGaugeEdge : mark.distance;
      return this.#setting(from, distance) + knife;
    }
    const foot = nearestFoot(this.#plan, mark);
    const distance = Math.abs(mark.at[0] - foot.x);
    const setting = distance < 0.05 ? 0 : this.#setting("foot", distance);
    return this.foot(foot.cut, foot.x) + setting + knife;
  }

  /** How far a cut is out, with its own line taken the given way. */
  cut(cut: PlanCut, way: Way): number {
    const wall = /^wall of cut (\d+)$/.exec(cut.runsAgainst ?? "");
    if (wall) return this.#cuts.get(Number(wall[1])) ?? Number.NaN;
    const follow = once(this.#follows, cut.number, () => this.#error(this.#followsWithinMm(cut)));
    const mark = guidingLine(this.#plan, cut);
    if (mark === null) return follow;
    const line = way === "as planned" ? (this.#lines.get(mark.id) ?? Number.NaN) : this.line(mark, way);
    return line + follow;
  }

  /** How far the end of a finished curve is out: its plane's place, and its sole a little wider or narrower. */
  foot(cutNumber: number, xMm: number, way: Way = "as planned"): number {
    const cut = cutOf(this.#plan, cutNumber);
    const place = way === "as planned" ? (this.#cuts.get(cutNumber) ?? Number.NaN) : this.cut(cut, way);
    if (!isCurved(cut)) return place;
    const middleX = cut.runs?.[0]?.[0]?.[0] ?? Number.NaN;
    const widthMm = soleWidthMm(cut);
    const wider = once(this.#widths, cut.plane.id, () => this.#error(this.#hand.widthMm));
    return place + ((xMm - middleX) * (widthMm + wider)) / widthMm - (xMm - middleX);
  }

  depth(): number {
    const { gaugeMm, lineMm, depthMm } = this.#hand;
    return this.#error(gaugeMm) + this.#error(lineMm) + this.#error(depthMm);
  }

  /** A gauge once set to a distance stays so; a fiftieth of a millimetre is no other setting. */
  #setting(from: string, distanceMm: number): number {
    const known = this.#settings.find(
      (one) => one.from === from && Math.abs(one.distanceMm - distanceMm) < 0.02,
    );
    if (known) return known.out;
    const out = this.#error(this.#hand.gaugeMm);
    this.#settings.push({ from, distanceMm, out });
    return out;
  }

  #followsWithinMm(cut: PlanCut): number {
    if (cut.line) return this.#hand.sawMm;
    const isFence = cut.runsAgainst === "gauge edge" || cut.runsAgainst === "far edge";
    return isFence && !isCurved(cut) ? this.#hand.fenceMm : this.#hand.sidewaysMm;
  }
}

function once<Key>(kept: Map<Key, number>, key: Key, draw: () => number): number {
  const known = kept.get(key);
  if (known !== undefined) return known;
  const drawn = draw();
  kept.set(key, drawn);
  return drawn;
}

function isCurved(cut: PlanCut): boolean {
  return cut.plane.kind === "hollow" || cut.plane.kind === "round";
}

function soleWidthMm(cut: PlanCut): number {
  const xs = (cut.sole ?? []).map(([x]) => x);
  return Math.max(...xs) - Math.min(...xs);
}

function cutOf(plan: Plan, number: number): PlanCut {
  const cut = plan.cuts.find((one) => one.number === number);
  if (!cut) throw new Error(`no cut ${number}`);
  return cut;
}

/** The line a cut is set to: its own, or the one that an earlier cut has opened for it. Looked up once. */
function guidingLine(plan: Plan, cut: PlanCut): PlanMark | null {
  const known = GUIDING.get(cut);
  if (known !== undefined) return known;
  const found = lookedUpLine(plan, cut);
  GUIDING.set(cut, found);
  return found;
}

const GUIDING = new WeakMap<PlanCut, PlanMark | null>();
const FEET = new WeakMap<PlanMark, FootOfPlan>();

function lookedUpLine(plan: Plan, cut: PlanCut): PlanMark | null {
  const own = plan.marks.find((mark) => mark.before === cut.number && !isFloor(plan, mark));
  if (own) return own;
  const x = cut.runs?.[0]?.[0]?.[0];
  if (x === undefined || !isCurved(cut)) return null;
  return plan.marks.find((mark) => mark.before < cut.number && Math.abs(mark.at[0] - x) < 0.3) ?? null;
}

/** A depth line of a plane held upright tells a floor, not a place across. */
function isFloor(plan: Plan, mark: PlanMark): boolean {
  const cut = cutOf(plan, mark.before);
  const tilt = cut.runs?.[0]?.[0]?.[2];
  return mark.kind === "depth" && tilt !== undefined && Math.abs(tilt + cut.cant) < 0.5;
}

interface FootOfPlan {
  readonly cut: number;
  readonly x: number;
}

/** Ends of all curves that are finished before a cut. */
function feetBefore(plan: Plan, number: number): FootOfPlan[] {
  return plan.parts.flatMap((part) => {
    const makers = part.madeBy.filter((by) => isCurved(cutOf(plan, by)));
    const maker = makers[makers.length - 1];
    if (maker === undefined || maker >= number) return [];
    return [part.from[0], part.to[0]].map((x) => ({ cut: maker, x }));
  });
}

/** The finished foot that a line is taken from: the nearest end of its cut's curve, or of any. */
function nearestFoot(plan: Plan, mark: PlanMark): FootOfPlan {
  const found = FEET.get(mark) ?? lookedUpFoot(plan, mark);
  FEET.set(mark, found);
  return found;
}

function lookedUpFoot(plan: Plan, mark: PlanMark): FootOfPlan {
  const named = /^foot of cut (\d+)$/.exec(mark.from);
  const feet = feetBefore(plan, mark.before).filter(({ cut }) => !named || cut === Number(named[1]));
  const away = ({ x }: FootOfPlan) =>
    named ? Math.abs(Math.abs(mark.at[0] - x) - mark.distance) : Math.abs(mark.at[0] - x);
  return feet.reduce((a, b) => (away(b) < away(a) ? b : a));
}

/** The error of what a line serves: its own place, or how it stands to the neighbour it is to meet. */
function servedError(hand: Hand, plan: Plan, mark: PlanMark, way: Way): number {
  if (isFloor(plan, mark)) return hand.depth();
  const cut = cutOf(plan, mark.before);
  const place = guidingLine(plan, cut)?.id === mark.id ? hand.cut(cut, way) : null;
  if (place === null) throw new Error(`${mark.id} guides no cut`);
  if (mark.errorFromFoot === undefined) return place;
  const foot = nearestFoot(plan, mark);
  const stands = hand.foot(foot.cut, foot.x);
  // A curve comes to meet the foot with its own end; a line beside it is held against the foot itself.
  const own = isCurved(cut) ? hand.foot(cut.number, foot.x, way) : place;
  return own - stands;
}

interface Tally {
  readonly what: string;
  readonly expectedMm: number;
  readonly out: number[];
}

/** Everything a plan claims of its errors, and what each hand got. */
function tallied(plan: Plan, hand: HandAccuracy, seed: number): Tally[] {
  const error = errorsFrom(seeded(seed));
  const tallies: Tally[] = [];
  const claims: { readonly tally: Tally; readonly measured: (one: Hand) => number }[] = [];
  const claim = (what: string, expectedMm: number | undefined, measured: (one: Hand) => number) => {
    if (expectedMm === undefined) return;
    const tally: Tally = { what, expectedMm, out: [] };
    tallies.push(tally);
    claims.push({ tally, measured });
  };
  for (const mark of plan.marks.filter((one) => isFloor(plan, one) || isGuiding(plan, one))) {
    const served = (way: Way) => (one: Hand) => servedError(one, plan, mark, way);
    claim(`${mark.id} as planned`, mark.error, served("as planned"));
    claim(`${mark.id} from the edge`, mark.errorFromEdge, served("from the edge"));
    claim(`${mark.id} from the foot`, mark.errorFromFoot, served("from the foot"));
  }
  for (const join of plan.finish.joins) {
    const [late, early] = cutsAtJoin(plan, join.at);
    if (late === undefined) continue;
    const x = join.at[0];
    const apart = (way: Way) => (one: Hand) =>
      one.foot(late, x, way) - (early === undefined ? 0 : one.foot(early, x));
    claim(`join at ${join.at[0]} as planned`, join.error, apart("as planned"));
    claim(`join at ${join.at[0]} from the edge`, join.errorFromEdge, apart("from the edge"));
    claim(`join at ${join.at[0]} from the foot`, join.errorFromFoot, apart("from the foot"));
  }
  for (const band of plan.bands ?? []) {
    const at = (x: number) => curvesAt(plan, x)[0];
    const [left, right] = [band.from[0], band.to[0]];
    claim(
      `width of ${band.name}`,
      band.error,
      (one) => one.foot(at(right), right) - one.foot(at(left), left),
    );
  }
  for (let i = 0; i < HANDS; i++) {
    const one = new Hand(plan, hand, error);
    for (const { tally, measured } of claims) tally.out.push(measured(one));
  }
  return tallies;
}

function isGuiding(plan: Plan, mark: PlanMark): boolean {
  return guidingLine(plan, cutOf(plan, mark.before))?.id === mark.id;
}

/** Cuts of the curves that end at a place across, in the order they are made. */
function curvesAt(plan: Plan, x: number): number[] {
  const cuts = feetBefore(plan, Number.POSITIVE_INFINITY)
    .filter((foot) => Math.abs(foot.x - x) < SAME_PLACE_MM)
    .map(({ cut }) => cut);
  return [...new Set(cuts)].sort((a, b) => a - b);
}

/** The cuts that place the parts on both sides of a join, the later first; none for a level flat or untouched wood. */
function cutsAtJoin(plan: Plan, at: readonly [number, number]): number[] {
  const meets = (end: readonly [number, number]) =>
    Math.hypot(end[0] - at[0], end[1] - at[1]) < SAME_PLACE_MM;
  const cuts = plan.parts
    .filter((part) => part.kind !== "fillet" && (meets(part.from) || meets(part.to)))
    .flatMap((part) => {
      const curved = part.madeBy.filter((by) => isCurved(cutOf(plan, by)));
      return part.kind === "wall" || part.kind === "bevel" ? part.madeBy.slice(0, 1) : curved.slice(-1);
    });
  return [...new Set(cuts)].sort((a, b) => b - a);
}

function checked(tallies: readonly Tally[]): number {
  for (const { what, expectedMm, out } of tallies) {
    const mean = out.reduce((sum, value) => sum + value, 0) / out.length;
    const variance = out.reduce((sum, value) => sum + (value - mean) ** 2, 0) / (out.length - 1);
    const countedMm = AT_95 * Math.sqrt(variance);
    expect(
      Math.abs(countedMm - expectedMm),
      `${what}: ${expectedMm} planned, ${countedMm.toFixed(4)} counted`,
    ).toBeLessThan(expectedMm * BOUND_RATIO + ROUNDING_MM);
    // And 95 in 100 of the hands keep within the figure: the share of n hands strays by √(0.95 × 0.05 / n).
    const within = out.filter((value) => Math.abs(value) <= expectedMm).length / out.length;
    const roundedShare = 0.25 * (ROUNDING_MM / expectedMm);
    expect(Math.abs(within - 0.95), `${what}: ${within} of the hands keep within it`).toBeLessThan(
      4.5 * Math.sqrt((0.95 * 0.05) / HANDS) + roundedShare,
    );
  }
  return tallies.length;
}

const REEDED = shelfOf(hollow(6.35), ...SNIPE_BILLS);
const SAG = 6.35 * (1 - Math.cos(Math.PI / 6));

function reeds(kind: "reeds" | "band", count: number) {
  return sectionOf({
    name: "pilaster",
    stick: { widthMm: 60, thicknessMm: 20 },
    parts: [
      { kind: "fillet", widthMm: 8 },
      { kind: "step", riseMm: -SAG },
      kind === "reeds"
        ? { kind: "reeds", count, widthMm: 6.35 }
        : { kind: "band", of: "reeds", widthMm: count * 6.35, count },
      { kind: "step", riseMm: SAG },
      { kind: "fillet", widthMm: "rest" },
    ],
  });
}

describe("ten thousand hands", () => {
  test("five reeds, chained foot to foot: every line and every join comes out as planned", () => {
    const plan = planOf(reeds("reeds", 5), REEDED);
    expect(plan.marks.filter((mark) => mark.from.startsWith("foot")).length).toBeGreaterThan(3);
    expect(checked(tallied(plan, GOOD_HAND, 20260111))).toBeGreaterThan(30);
  });

  test("a band of five: its width comes out as planned", () => {
    const plan = planOf(reeds("band", 5), REEDED);
    expect(plan.bands).toHaveLength(1);
    checked(tallied(plan, GOOD_HAND, 20260112));
  });

  test("what a band would be if it were chained is what the same row of plain reeds is", () => {
    const chained = planOf(reeds("reeds", 5), REEDED);
    const claimed = planOf(reeds("band", 5), REEDED).bands?.[0]?.errorFromFoot ?? Number.NaN;
    const error = errorsFrom(seeded(20260116));
    const [left, right] = [8, 8 + 5 * 6.35];
    const out = Array.from({ length: HANDS }, () => {
      const one = new Hand(chained, GOOD_HAND, error);
      const foot = (x: number) => one.foot(curvesAt(chained, x)[0] ?? Number.NaN, x);
      return foot(right) - foot(left);
    });
    checked([{ what: "width, chained", expectedMm: claimed, out }]);
  });

  test("a hand of other figures, and a band of three", () => {
    const hand: HandAccuracy = {
      gaugeMm: 0.3,
      lineMm: 0.15,
      sidewaysMm: 0.1,
      fenceMm: 0.05,
      sawMm: 0.5,
      depthMm: 0.3,
      widthMm: 0.02,
    };
    const plan = planOf(reeds("band", 3), REEDED, { hand });
    checked(tallied(plan, hand, 20260113));
  });

  test("an ogee on a flat, with its steps and chamfers", () => {
    const section = sectionOf({
      name: "ogee",
      stick: { widthMm: 45, thicknessMm: 22 },
      parts: [
        { kind: "fillet", widthMm: 6 },
        { kind: "cyma reversa", acrossMm: 22, riseMm: -12 },
        { kind: "fillet", widthMm: "rest" },
      ],
    });
    const plan = planOf(section, WHOLE_SHELF);
    expect(checked(tallied(plan, GOOD_HAND, 20260114))).toBeGreaterThan(5);
  });

  test("a step from the edge: its wall by the fence, its floor by the stop", () => {
    const section = sectionOf({
      name: "step",
      stick: { widthMm: 40, thicknessMm: 20 },
      parts: [
        { kind: "fillet", widthMm: 30 },
        { kind: "step", riseMm: -6 },
        { kind: "fillet", widthMm: "rest" },
      ],
    });
    const plan = planOf(section, shelfOf(rebate(12), round(12)));
    // Two lines and two joins, each as planned and from the edge.
    expect(checked(tallied(plan, GOOD_HAND, 20260115))).toBe(8);
  });
});
