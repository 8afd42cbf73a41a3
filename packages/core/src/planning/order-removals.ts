/** What each candidate cut takes of the whole wood, as bits of a set, and which removals matter to which cut. */
import {
  difference,
  type Extents,
  intersection,
  type Region,
  regionAreaMm2,
  regionExtents,
} from "../curve/index.ts";
import { SLIVER_MM2 } from "../measure/index.ts";
import { endsInPlace, isCurved, type PlaneDraft, sweepOfDraft } from "./draft-cut.ts";

export interface Removals {
  /** For each candidate the bit of what it removes: planes of other widths that run the same step share one. */
  readonly bits: readonly bigint[];
  /** One candidate for each bit, in the bits' order. */
  readonly makers: readonly PlaneDraft[];
  /** For each candidate the bits of those removals that lie near enough to its own sole to matter to it. */
  readonly near: readonly bigint[];
}

export function removalsOf(start: Region, candidates: readonly PlaneDraft[]): Removals {
  const distinct: Removal[] = [];
  const own = candidates.map((maker) => {
    const region = intersection(start, sweepOfDraft(maker));
    const areaMm2 = regionAreaMm2(region);
    const same = distinct.find((other) => isSame({ region, areaMm2 }, other));
    if (same) return same;
    const made = { bit: 1n << BigInt(distinct.length), region, areaMm2, box: boxOf(region), maker };
    distinct.push(made);
    return made;
  });
  const whole = boxOf(start);
  return {
    bits: own.map(({ bit }) => bit),
    makers: distinct.map(({ maker }) => maker),
    near: own.map((taken, k) => {
      const draft = candidates[k] as PlaneDraft;
      const looked = lookedAt(taken.box, draft);
      const isNear = (box: Extents | null) => meets(looked, box) || bearsOnFence(whole, looked, box, draft);
      return distinct.reduce((bits, { bit, box }) => (isNear(box) ? bits | bit : bits), 0n);
    }),
  };
}

interface Removal {
  readonly bit: bigint;
  readonly region: Region;
  readonly areaMm2: number;
  readonly box: Extents | null;
  readonly maker: PlaneDraft;
}

/** Of two regions of one area neither can lack anything that the other has and hold nothing more. */
function isSame(a: Pick<Removal, "region" | "areaMm2">, b: Removal): boolean {
  if (Math.abs(a.areaMm2 - b.areaMm2) > SLIVER_MM2) return false;
  return regionAreaMm2(difference(a.region, b.region)) <= SLIVER_MM2;
}

function boxOf(region: Region): Extents | null {
  return region.length > 0 ? regionExtents(region) : null;
}

/** Walls, guides and seats are looked for right beside a sole, fins a little further, mm; a curved one is also shifted about, share of its width. */
const BESIDE_SOLE_MM = 1;
const BESIDE_FLAT_SOLE_MM = 3.2;
const SHIFTED_RATIO = 1 / 4;

/** Where the wood matters to a cut: what it takes, and what stands beside its sole and shoulders in every pose. */
function lookedAt(taken: Extents | null, draft: PlaneDraft): Extents {
  const ends = draft.runs.flat().flatMap((pose) => {
    const { left, right } = endsInPlace(draft, pose);
    return [left, right];
  });
  const { widthMm, shoulder } = draft.tool.sole;
  const asideMm = isCurved(draft) ? BESIDE_SOLE_MM + widthMm * SHIFTED_RATIO : BESIDE_FLAT_SOLE_MM;
  const reachMm = asideMm + (shoulder?.widthMm ?? 0);
  const xs = [...ends.map(({ x }) => x), ...(taken ? [taken.minX, taken.maxX] : [])];
  const ys = [...ends.map(({ y }) => y), ...(taken ? [taken.minY, taken.maxY] : [])];
  return {
    minX: Math.min(...xs) - reachMm,
    maxX: Math.max(...xs) + reachMm,
    minY: Math.min(...ys) - reachMm,
    maxY: Math.max(...ys) + reachMm,
  };
}

/** What takes wood this near to a side of the stick takes part of its edge, mm. */
const AT_THE_EDGE_MM = 0.2;

/**
 * Whether a removal may take the edge that a flat plane's fence or finger finds beside the stick, or the wood that the arms
 * of a plough's fence pass over on their way to one.
 */
function bearsOnFence(
  whole: Extents | null,
  looked: Extents,
  removed: Extents | null,
  draft: PlaneDraft,
): boolean {
  if (whole === null || removed === null || isCurved(draft)) return false;
  if (draft.tool.plane.kind === "plough") return true;
  const isOnEdge = draft.cantDeg === 90 || draft.cantDeg === -90;
  const [low, high] = isOnEdge ? (["minY", "maxY"] as const) : (["minX", "maxX"] as const);
  return (
    (looked[low] < whole[low] && removed[low] < whole[low] + AT_THE_EDGE_MM) ||
    (looked[high] > whole[high] && removed[high] > whole[high] - AT_THE_EDGE_MM)
  );
}

function meets(a: Extents, b: Extents | null): boolean {
  return b !== null && a.minX <= b.maxX && b.minX <= a.maxX && a.minY <= b.maxY && b.minY <= a.maxY;
}
