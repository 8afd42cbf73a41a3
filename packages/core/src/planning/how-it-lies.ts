/**
 * What a stick stands on for each cut, where earlier cuts have left it little: a narrow foot, the crown of a curve, a few
 * edges of what is moulded, or a thin tongue with nothing under it that the plane presses on. Common practice, no source.
 */
import type { Region } from "../curve/index.ts";
import { spansAlong, turned, turnedBack, turnOf } from "../cutting/index.ts";
import type { Bench } from "./bench.ts";
import { endsInPlace, type PlaneDraft } from "./draft-cut.ts";
import type { BenchWriting } from "./plan-cuts.ts";
import type { TriedCut } from "./try-cut.ts";
import { sayLength } from "./words.ts";

/** Wood this near to the bench stands on it, mm. */
const TOUCHES_MM = 0.05;
/** A foot is narrow where it is less than this share of the whole stick's width, and less than the stick is high. */
const NARROW_SHARE = 0.5;
/** What it stands on spread over a foot that is wide enough, but less of it than this share, can rock and be bruised. */
const LITTLE_SHARE = 1 / 3;
/** A narrower foot is the crown of a curve or an arris: no packing beside it makes a foot of it, mm. */
const CROWN_MM = 3;
/** Wood this thin or thinner springs under a plane where it reaches further out than it is thick, mm. */
const TONGUE_MM = 6;
/** How far apart places under the sole are looked at, mm. */
const APART_MM = 0.5;
/** Undersides that differ by less lie at one height to the hand, mm. */
const LEVEL_MM = 0.3;

/** A warning for each way in which the stick stands badly, naming its cuts; none where it stands as it came. */
export function lyingWords(bench: Bench, cuts: readonly TriedCut[], writing: BenchWriting): string[] {
  const say = (mm: number) => sayLength(mm, writing.unit, writing.inchStep);
  const told = new Map<string, number[]>();
  cuts.forEach((cut, i) => {
    const words = lyingOf(bench, cut, say);
    if (words !== null) told.set(words, [...(told.get(words) ?? []), i + 1]);
  });
  return [...told].map(([words, numbers]) => `For ${cutsWords(numbers)} ${words}`);
}

function lyingOf(bench: Bench, cut: TriedCut, say: (mm: number) => string): string | null {
  const { draft, before } = cut;
  // A saw has a table of its own, and in a canted jaw nothing stands on a foot.
  if (draft.kind !== "plane" || draft.cantDeg % 90 !== 0) return null;
  const lie = lieOf(before, draft.cantDeg);
  const footMm = lie.toMm - lie.fromMm;
  const whole = extentOf(bench.startRegion, draft.cantDeg);
  const isNarrow = footMm < NARROW_SHARE * (whole.right - whole.left) && footMm < lie.heightMm;
  if (isNarrow && footMm < CROWN_MM)
    return "the stick lies on the crown of what is moulded already: bed it in a strip shaped to it, so that it cannot rock.";
  if (isNarrow) {
    const packMm = levelBeside(before, draft.cantDeg, lie);
    const pack =
      packMm === null ? "pack what overhangs beside it" : `lay ${say(packMm)} of packing beside it`;
    return `the stick stands on a foot ${say(footMm)} wide: ${pack}, so that it cannot tip.`;
  }
  const tongue = tongueUnder(cut, draft, lie);
  if (tongue)
    return `the plane presses on a tongue ${say(tongue.thickMm)} thick with nothing under it: lay ${say(tongue.gapMm)} of packing there, so that it cannot spring.`;
  return lie.bearingMm < LITTLE_SHARE * footMm
    ? "the stick lies on what is moulded already: pack it so that it cannot rock."
    : null;
}

/** How some wood stands on the bench when it is turned: where across, how much of that bears, how high it reaches. */
interface Lie {
  readonly levelMm: number;
  readonly fromMm: number;
  readonly toMm: number;
  readonly bearingMm: number;
  readonly heightMm: number;
  readonly stretches: readonly (readonly [number, number])[];
}

function lieOf(wood: Region, cantDeg: number): Lie {
  const { bottom: levelMm, top } = extentOf(wood, cantDeg);
  const turn = turnOf(-cantDeg);
  const stretches: [number, number][] = [];
  for (const { xs, ys } of wood) {
    const points = Array.from(xs, (x, i) => turned(turn, { x, y: ys[i] ?? 0 }));
    points.forEach((b, i) => {
      const a = points[(i + points.length - 1) % points.length] ?? b;
      if (b.y - levelMm > TOUCHES_MM) return;
      const from = a.y - levelMm > TOUCHES_MM ? b.x : a.x;
      stretches.push([Math.min(from, b.x), Math.max(from, b.x)]);
    });
  }
  return {
    levelMm,
    fromMm: Math.min(...stretches.map(([from]) => from)),
    toMm: Math.max(...stretches.map(([, to]) => to)),
    bearingMm: stretches.reduce((sum, [from, to]) => sum + to - from, 0),
    heightMm: top - levelMm,
    stretches,
  };
}

function extentOf(wood: Region, cantDeg: number) {
  const turn = turnOf(-cantDeg);
  const points = wood.flatMap(({ xs, ys }) => Array.from(xs, (x, i) => turned(turn, { x, y: ys[i] ?? 0 })));
  const xs = points.map(({ x }) => x);
  const ys = points.map(({ y }) => y);
  return { left: Math.min(...xs), right: Math.max(...xs), bottom: Math.min(...ys), top: Math.max(...ys) };
}

/** The wood over a place across, as heights over the bench, lowest first. */
function woodOver(
  wood: Region,
  cantDeg: number,
  xMm: number,
  levelMm: number,
): readonly (readonly [number, number])[] {
  const turn = turnOf(-cantDeg);
  const start = turnedBack(turn, { x: xMm, y: levelMm - 1 });
  return spansAlong(wood, start, turnedBack(turn, { x: 0, y: 1 })).map(([from, to]) => [from - 1, to - 1]);
}

/** How high the wood hangs on either side of a foot, where it is one height and level; null where not. */
function levelBeside(wood: Region, cantDeg: number, lie: Lie): number | null {
  const { left, right } = extentOf(wood, cantDeg);
  const heights: number[] = [];
  const look = (fromMm: number, toMm: number): void => {
    for (let x = fromMm + APART_MM; x < toMm; x += APART_MM) {
      const under = woodOver(wood, cantDeg, x, lie.levelMm)[0];
      if (under) heights.push(under[0]);
    }
  };
  look(left, lie.fromMm);
  look(lie.toMm, right);
  const [low, high] = [Math.min(...heights), Math.max(...heights)];
  return heights.length > 0 && high - low < LEVEL_MM && low > LEVEL_MM ? low : null;
}

/** The thinnest place that the sole comes to over nothing, if it is a tongue; with how high it hangs over the bench. */
function tongueUnder(
  { after }: TriedCut,
  draft: PlaneDraft,
  lie: Lie,
): { readonly thickMm: number; readonly gapMm: number } | null {
  const turn = turnOf(-draft.cantDeg);
  let found: { thickMm: number; gapMm: number } | null = null;
  for (const run of draft.runs) {
    const ends = endsInPlace(draft, run[0]);
    const [a, b] = [turned(turn, ends.left), turned(turn, ends.right)];
    const soleMm = Math.max(a.y, b.y) - lie.levelMm;
    for (let x = Math.min(a.x, b.x) + APART_MM / 2; x < Math.max(a.x, b.x); x += APART_MM) {
      const under = woodOver(after, draft.cantDeg, x, lie.levelMm).find(([from]) => from < soleMm);
      if (!under || under[0] <= LEVEL_MM) continue;
      const thickMm = under[1] - under[0];
      if (
        thickMm <= TONGUE_MM &&
        reachMm(lie, x) > thickMm &&
        thickMm < (found?.thickMm ?? Number.POSITIVE_INFINITY)
      )
        found = { thickMm, gapMm: under[0] };
    }
  }
  return found;
}

/** How far a place across lies from the nearest that stands on the bench, mm. */
function reachMm({ stretches }: Lie, xMm: number): number {
  return Math.min(...stretches.map(([from, to]) => Math.max(0, from - xMm, xMm - to)));
}

/** "cut 4", "cuts 4 and 6", "cuts 3 to 8". */
function cutsWords(numbers: readonly number[]): string {
  const [first = 0] = numbers;
  const last = numbers[numbers.length - 1] ?? first;
  if (numbers.length === 1) return `cut ${first}`;
  if (numbers.length > 2 && last - first === numbers.length - 1) return `cuts ${first} to ${last}`;
  return `cuts ${numbers.slice(0, -1).join(", ")} and ${last}`;
}
