/** The radius of a part pulled between its two ends: on the shelf, smooth with a neighbour, or a round size. */
import { type Arc, circleOf, distanceMm, type Point, tangentRad } from "mouldwright/curve";
import { normaliseRad } from "mouldwright/measure";
import { type PartSpec, snapArc } from "mouldwright/section";
import type { PlacedPart } from "../chain/laid-chain.ts";
import { refitted, tidyDeg, tidyMm } from "../chain/refit-part.ts";
import { type Draw, type Settled, type SettleRule, settledNumber } from "./settle.ts";
import type { ShelfRadius } from "./soles.ts";

/** Flatter than this a curve is not pulled, mm. */
const LARGEST_RADIUS_MM = 1000;

export function radiusThrough(arc: Arc): number {
  return circleOf(arc).radiusMm;
}

export interface CurvePull {
  readonly drawn: Arc;
  readonly to: Point;
  /** Where it stands among its neighbours, that it may run on from them; null where that is not asked for. */
  readonly beside: { readonly index: number; readonly placed: readonly PlacedPart[] } | null;
  readonly radii: readonly ShelfRadius[];
  readonly rule: SettleRule | null;
}

/** The radius that the pulled point asks for, settled, mm. */
export function curveDraws(pull: CurvePull): Settled<number> {
  const { drawn, to, rule } = pull;
  const chordMm = distanceMm(drawn.from, drawn.to);
  const asked = radiusOfHeight(chordMm, heightOver(drawn, to));
  if (rule === null) return { value: tidyMm(asked), says: "" };
  const heightGap = (one: number, other: number): number =>
    Math.abs(heightOfRadius(chordMm, one) - heightOfRadius(chordMm, other));
  const leastMm = chordMm / 2;
  const strong = [...shelfDraws(pull), ...smoothDraws(pull)].filter(({ value }) => value >= leastMm);
  const settled = settledNumber(asked, strong, rule, heightGap);
  return { value: Math.max(leastMm, settled.value), says: settled.says };
}

/** How far the point stands from the chord on the side the curve bends to, mm; never less than a hair. */
function heightOver({ from, to, bulge }: Arc, point: Point): number {
  const chordMm = Math.hypot(to.x - from.x, to.y - from.y);
  const leftMm = ((to.x - from.x) * (point.y - from.y) - (to.y - from.y) * (point.x - from.x)) / chordMm;
  // An anticlockwise arc runs on the right of its chord.
  return Math.max(chordMm / 400, Math.min(chordMm / 2, bulge > 0 ? -leftMm : leftMm));
}

function radiusOfHeight(chordMm: number, heightMm: number): number {
  return Math.min(LARGEST_RADIUS_MM, (chordMm * chordMm) / 4 / (2 * heightMm) + heightMm / 2);
}

function heightOfRadius(chordMm: number, radiusMm: number): number {
  const halfMm = chordMm / 2;
  return radiusMm <= halfMm ? halfMm : radiusMm - Math.sqrt(radiusMm ** 2 - halfMm ** 2);
}

function shelfDraws({ drawn, radii }: CurvePull): readonly Draw<number>[] {
  const makes = drawn.bulge < 0 ? "round" : "hollow";
  return radii
    .filter((one) => one.makes === makes)
    .map(({ radiusMm, plane }) => ({ value: radiusMm, says: `${plane} on the shelf` }));
}

/** Radii with which the curve runs on from the part before, or into the one after, without an arris. */
function smoothDraws({ drawn, beside }: CurvePull): readonly Draw<number>[] {
  if (beside === null) return [];
  const before = beside.placed[beside.index - 1]?.pieces.at(-1);
  const after = beside.placed[beside.index + 1]?.pieces[0];
  const chordRad = Math.atan2(drawn.to.y - drawn.from.y, drawn.to.x - drawn.from.x);
  const sweepOf = (awayRad: number): number => -2 * normaliseRad(awayRad);
  const wanted: Draw<number>[] = [];
  const add = (sweepRad: number, says: string): void => {
    const isSameWay = Math.sign(sweepRad) === Math.sign(drawn.bulge);
    if (!isSameWay || Math.abs(sweepRad) < 0.02 || Math.abs(sweepRad) > Math.PI) return;
    const radiusMm = distanceMm(drawn.from, drawn.to) / 2 / Math.sin(Math.abs(sweepRad) / 2);
    wanted.push({ value: tidyMm(radiusMm), says });
  };
  if (before) add(sweepOf(tangentRad(before, 1) - chordRad), "smooth with the part before");
  if (after) add(sweepOf(chordRad - tangentRad(after, 0)), "smooth with the part after");
  return wanted;
}

/** The part with this radius between the same ends. */
export function bentTo(part: PartSpec, place: PlacedPart, drawn: Arc, radiusMm: number): PartSpec {
  const leastMm = distanceMm(drawn.from, drawn.to) / 2;
  const wanted = Math.max(radiusMm, Math.ceil(leastMm * 10_000) / 10_000);
  switch (part.kind) {
    case "ovolo":
    case "cavetto":
    case "arc":
      return { ...part, radiusMm: wanted };
    case "low bead":
    case "reeds":
    case "flutes":
      return { ...part, sweepDeg: tidyDeg(sweepOfRadiusDeg(leastMm, wanted)) };
    case "swept arc": {
      const bent = snapArc(drawn, wanted);
      const [first, ...more] = bent === null ? [] : refitted(part, place.pieces, [bent]);
      return first === undefined || more.length > 0 ? part : first;
    }
    default:
      return part;
  }
}

function sweepOfRadiusDeg(halfMm: number, radiusMm: number): number {
  return (2 * Math.asin(Math.min(1, halfMm / radiusMm)) * 180) / Math.PI;
}
