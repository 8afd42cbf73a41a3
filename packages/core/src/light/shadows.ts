/** Which lengths of an outline a ray reaches: shade by which way they face, shadow by what stands before them. */
import { lengthMm, type Piece, type Point } from "../curve/index.ts";
import { SAME_POINT_MM } from "../measure/index.ts";
import type { SectionRay } from "./lamp.ts";
import { acrossMm, metAt, nearnessMm, type Part, partsOf, placeOn } from "./parts.ts";
import { type RayIndex, rayIndex } from "./ray-index.ts";
import type { LightState } from "./types.ts";

/** A length of a piece between two ratios of it, in one state. */
export interface Span {
  readonly fromT: number;
  readonly toT: number;
  readonly state: LightState;
}

/** A ray past something that stands out, and the first face behind it. */
export interface Grazed {
  readonly caster: Point;
  readonly end: Point;
}

export interface Reached {
  readonly parts: readonly Part[];
  /** For each piece its spans, end to end. */
  readonly spans: readonly (readonly Span[])[];
  readonly grazed: readonly Grazed[];
}

/**
 * The state of every place of a closed outline (anticlockwise) under parallel light. A state changes only at the
 * outline's own joints, where it turns past the light, and where a ray past such a turn first meets a face: all of
 * these are found in closed form, and between two of them one place stands for all.
 */
export function reached(pieces: readonly Piece[], ray: SectionRay): Reached {
  const parts = partsOf(pieces, ray);
  const facing = rayIndex(parts.filter((part) => part.facing === "towards"));
  const cuts = new Map<Part, number[]>();
  const grazed: Grazed[] = [];
  for (const caster of turningPlaces(parts)) {
    const hit = firstBehind(caster, facing, pieces, ray);
    if (hit === null) continue;
    cuts.set(hit.part, [...(cuts.get(hit.part) ?? []), hit.t]);
    grazed.push({ caster, end: hit.place });
  }
  const spans: Span[][] = pieces.map(() => []);
  for (const part of parts) {
    const piece = pieces[part.piece];
    const list = spans[part.piece];
    if (piece === undefined || list === undefined) continue;
    for (const span of spansOf(part, piece, cuts.get(part) ?? [], facing, pieces, ray)) append(list, span);
  }
  return { parts, spans, grazed };
}

/** Where the outline changes from facing the light to facing away, or to lying along it. */
function turningPlaces(parts: readonly Part[]): readonly Point[] {
  return parts.flatMap((part, index) => {
    const before = parts[(index + parts.length - 1) % parts.length];
    return before !== undefined && before.facing !== part.facing ? [part.from] : [];
  });
}

interface Hit {
  readonly part: Part;
  readonly t: number;
  readonly place: Point;
}

function firstBehind(caster: Point, facing: RayIndex, pieces: readonly Piece[], ray: SectionRay): Hit | null {
  const atMm = acrossMm(ray, caster);
  const casterMm = nearnessMm(ray, caster);
  let first: (Hit & { readonly nearMm: number }) | null = null;
  for (const part of facing(atMm)) {
    const piece = pieces[part.piece];
    // A ray that only just misses a joint meets it: both ends are taken in.
    const heldMm = held(atMm, part);
    const t = piece === undefined || heldMm === null ? null : metAt(part, piece, ray, heldMm);
    if (piece === undefined || t === null) continue;
    const place = placeOn(piece, t);
    const nearMm = nearnessMm(ray, place);
    if (nearMm >= casterMm - SAME_POINT_MM || (first !== null && first.nearMm >= nearMm)) continue;
    first = { part, t, place, nearMm };
  }
  return first;
}

function held(atMm: number, { fromAcrossMm, toAcrossMm }: Part): number | null {
  if (atMm > fromAcrossMm + SAME_POINT_MM || atMm < toAcrossMm - SAME_POINT_MM) return null;
  return Math.max(toAcrossMm, Math.min(fromAcrossMm, atMm));
}

function spansOf(
  part: Part,
  piece: Piece,
  cuts: readonly number[],
  facing: RayIndex,
  pieces: readonly Piece[],
  ray: SectionRay,
): readonly Span[] {
  const { fromT, toT } = part;
  if (part.facing !== "towards") return [{ fromT, toT, state: "shade" }];
  const slackT = SAME_POINT_MM / lengthMm(piece);
  const ends: number[] = [fromT];
  for (const t of [...cuts].sort((a, b) => a - b)) {
    if (t > (ends.at(-1) ?? fromT) + slackT && t < toT - slackT) ends.push(t);
  }
  ends.push(toT);
  return ends.slice(1).map((end, index): Span => {
    const start = ends[index] ?? fromT;
    const middle = placeOn(piece, (start + end) / 2);
    const isBehind = standsBehind(middle, part, facing, pieces, ray);
    return { fromT: start, toT: end, state: isBehind ? "shadow" : "light" };
  });
}

/** Whether another face stands between a place and the lamp: whatever hides it turns some face towards the lamp. */
function standsBehind(
  place: Point,
  own: Part,
  facing: RayIndex,
  pieces: readonly Piece[],
  ray: SectionRay,
): boolean {
  const atMm = acrossMm(ray, place);
  const nearMm = nearnessMm(ray, place);
  return facing(atMm).some((part) => {
    const piece = pieces[part.piece];
    if (part === own || piece === undefined) return false;
    const t = metAt(part, piece, ray, atMm);
    return t !== null && nearnessMm(ray, placeOn(piece, t)) > nearMm + SAME_POINT_MM;
  });
}

/** Neighbours of one state are one span. */
function append(spans: Span[], span: Span): void {
  const last = spans.at(-1);
  if (last?.state === span.state) spans[spans.length - 1] = { ...last, toT: span.toT };
  else spans.push(span);
}
