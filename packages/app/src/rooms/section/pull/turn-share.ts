/** Where an S or a scotia turns: how much of it the first curve takes. */
import { circleOf, type Point } from "mouldwright/curve";
import type { PartSpec } from "mouldwright/section";
import type { PlacedPart } from "../chain/laid-chain.ts";
import { tidyMm } from "../chain/refit-part.ts";
import { type Draw, type Settled, type SettleRule, settledNumber } from "./settle.ts";
import type { ShelfRadius } from "./soles.ts";

export interface TurnPull {
  readonly part: PartSpec;
  readonly place: PlacedPart;
  readonly to: Point;
  readonly radii: readonly ShelfRadius[];
  readonly rule: SettleRule | null;
}

/** Less than this of an S is no hollow (or round) any more. */
const LEAST_SHARE = 0.05;

/** The share of the first curve that the pulled point asks for, settled, 0 to 1. */
export function turnDraws({ part, place, to, radii, rule }: TurnPull): Settled<number> {
  const { from, to: end } = place;
  const [across, rise] = [end.x - from.x, end.y - from.y];
  const wholeMm = Math.hypot(across, rise);
  const asked = ((to.x - from.x) * across + (to.y - from.y) * rise) / wholeMm ** 2;
  const held = Math.max(LEAST_SHARE, Math.min(1 - LEAST_SHARE, asked));
  if (rule === null) return { value: held, says: "" };
  const strong: Draw<number>[] = [...shelfShares(part, place, radii)].filter(
    ({ value }) => value >= LEAST_SHARE && value <= 1 - LEAST_SHARE,
  );
  strong.push(
    part.kind === "scotia"
      ? { value: 1 / 3, says: "a third and two thirds" }
      : { value: 0.5, says: "hollow and round alike" },
  );
  const inShares: SettleRule = {
    withinMm: rule.withinMm / wholeMm,
    fineMm: 0.01,
    roundMm: 0.05,
  };
  const settled = settledNumber(held, strong, inShares);
  const value = Math.max(LEAST_SHARE, Math.min(1 - LEAST_SHARE, settled.value));
  return { value, says: settled.says };
}

/** Each curve's radius grows with its own share. */
function shelfShares(
  part: PartSpec,
  place: PlacedPart,
  radii: readonly ShelfRadius[],
): readonly Draw<number>[] {
  const [first, second] = place.pieces;
  if (first?.kind !== "arc" || second?.kind !== "arc") return [];
  const now = shareNow(part, place);
  return radii.flatMap(({ radiusMm, makes, plane }): readonly Draw<number>[] => {
    const says = `${plane} on the shelf`;
    const ownOf = (bulge: number): "round" | "hollow" => (bulge < 0 ? "round" : "hollow");
    const before = ownOf(first.bulge) === makes ? (radiusMm / circleOf(first).radiusMm) * now : null;
    const after =
      ownOf(second.bulge) === makes ? 1 - (radiusMm / circleOf(second).radiusMm) * (1 - now) : null;
    return [before, after].flatMap((value) => (value === null ? [] : [{ value, says }]));
  });
}

function shareNow(part: PartSpec, { pieces, from, to }: PlacedPart): number {
  const turn = pieces[0]?.to ?? from;
  if (part.kind === "scotia") return (turn.x - from.x) / (to.x - from.x);
  return Math.hypot(turn.x - from.x, turn.y - from.y) / Math.hypot(to.x - from.x, to.y - from.y);
}

/** The part with its first curve taking this share. */
export function sharedTo(part: PartSpec, { pieces }: PlacedPart, share: number): PartSpec {
  if (part.kind === "scotia") {
    const isSmallFirst = (part.small ?? "first") === "first";
    const smallShare = Math.min(0.5, isSmallFirst ? share : 1 - share);
    return { ...part, smallRadiusMm: tidyMm(part.acrossMm * smallShare) };
  }
  if (part.kind !== "cyma recta" && part.kind !== "cyma reversa") return part;
  const first = pieces[0];
  const isHollowFirst = first?.kind === "arc" && first.bulge > 0;
  const hollowRatio = Math.round((isHollowFirst ? share : 1 - share) * 1e6) / 1e6;
  if (hollowRatio !== 0.5) return { ...part, hollowRatio };
  const { hollowRatio: _, ...even } = part;
  return even;
}
