/** The face as stretches of one state, from the first edge to the last, with how wide they show and how bright they are. */
import { circleOf, lengthMm, type Piece, type Point, reversePiece, samePoint } from "../curve/index.ts";
import { SAME_POINT_MM, sameMm } from "../measure/index.ts";
import type { Section } from "../section/index.ts";
import { brightnessAt, leastAndMost } from "./brightness.ts";
import { frontOf } from "./front.ts";
import type { HungOutline } from "./hang.ts";
import type { SectionRay } from "./lamp.ts";
import { type Part, placeOn } from "./parts.ts";
import type { Reached, Span } from "./shadows.ts";
import type { Lamp, LightState, Stretch } from "./types.ts";

/** A length of one piece in which nothing changes. */
interface Bit {
  readonly piece: number;
  readonly fromT: number;
  readonly toT: number;
  readonly state: LightState;
  readonly isSeen: boolean;
}

export interface FaceInLight {
  readonly section: Section;
  readonly hung: HungOutline;
  readonly light: Reached;
  readonly sight: Reached;
  readonly ray: SectionRay;
  readonly lamp: Lamp;
}

/** The stretches of the face, first edge to last. */
export function stretchesOf(face: FaceInLight): readonly Stretch[] {
  const bits = frontOf(face.sight.parts).flatMap((part) => bitsOf(part, face));
  const runs: Bit[][] = [];
  for (const bit of bits) {
    const run = runs.at(-1);
    const before = run?.at(-1);
    if (run !== undefined && before !== undefined && goesOn(before, bit, face)) run.push(bit);
    else runs.push([bit]);
  }
  return runs.map((run) => stretchOf(run, face)).reverse();
}

function bitsOf(part: Part, { hung, light, sight }: FaceInLight): readonly Bit[] {
  const piece = hung.pieces[part.piece];
  const lit = light.spans[part.piece] ?? [];
  const seen = sight.spans[part.piece] ?? [];
  const slackT = piece === undefined ? 0 : SAME_POINT_MM / lengthMm(piece);
  const ends = [part.fromT];
  for (const t of [...lit, ...seen].map(({ toT }) => toT).sort((a, b) => a - b)) {
    if (t > (ends.at(-1) ?? 0) + slackT && t < part.toT - slackT) ends.push(t);
  }
  ends.push(part.toT);
  return ends.slice(1).map((toT, index): Bit => {
    const fromT = ends[index] ?? 0;
    const middle = (fromT + toT) / 2;
    return {
      piece: part.piece,
      fromT,
      toT,
      state: stateAt(lit, middle),
      isSeen: stateAt(seen, middle) === "light",
    };
  });
}

function stateAt(spans: readonly Span[], t: number): LightState {
  return spans.find((span) => t <= span.toT)?.state ?? "shade";
}

/** One stretch holds what is in one state and of one curve: a piece, the arcs of one circle, a free curve's lines. */
function goesOn(before: Bit, bit: Bit, { section, hung }: FaceInLight): boolean {
  if (before.state !== bit.state || before.isSeen !== bit.isSeen) return false;
  if (before.piece === bit.piece) return true;
  const [one, other] = [hung.pieces[before.piece], hung.pieces[bit.piece]];
  const free = freeSpanOf(section, hung.origins[bit.piece]);
  if (free >= 0) return free === freeSpanOf(section, hung.origins[before.piece]);
  return one !== undefined && other !== undefined && isOneCircle(one, other);
}

function freeSpanOf(section: Section, origin: number | undefined): number {
  return indexOfSpan(section.freeSpans, section.outline.pieces.length, origin);
}

function indexOfSpan(
  spans: readonly { readonly first: number; readonly count: number }[],
  total: number,
  origin: number | undefined,
): number {
  if (origin === undefined) return -1;
  return spans.findIndex(({ first, count }) => (origin - first + total) % total < count);
}

function isOneCircle(one: Piece, other: Piece): boolean {
  if (one.kind !== "arc" || other.kind !== "arc" || one.bulge > 0 !== other.bulge > 0) return false;
  const [a, b] = [circleOf(one), circleOf(other)];
  return samePoint(a.centre, b.centre) && sameMm(a.radiusMm, b.radiusMm);
}

function stretchOf(run: readonly Bit[], face: FaceInLight): Stretch {
  const { section, hung, ray, lamp } = face;
  const pieces = run.flatMap((bit): readonly Piece[] => {
    const piece = hung.pieces[bit.piece];
    return piece === undefined ? [] : [pieceBetween(piece, bit.fromT, bit.toT)];
  });
  const first = run[0];
  const { state = "shade", isSeen = false } = first ?? {};
  const to: Point = pieces[0]?.from ?? { x: 0, y: 0 };
  const from: Point = pieces.at(-1)?.to ?? to;
  const named = indexOfSpan(
    section.named,
    section.outline.pieces.length,
    first === undefined ? undefined : hung.origins[first.piece],
  );
  const part = section.named[named];
  const bright = (piece: Piece | undefined, t: 0 | 1): number =>
    piece === undefined ? 0 : brightnessAt(piece, t, state, ray, lamp);
  return {
    state,
    isSeen,
    pieces: pieces.map((piece) => reversePiece(piece)).reverse(),
    from,
    to,
    fromOnStick: hung.onStick(from),
    toOnStick: hung.onStick(to),
    startMm: hung.widthMm - from.y,
    endMm: hung.widthMm - to.y,
    showsMm: isSeen ? from.y - to.y : 0,
    brightness: {
      from: bright(pieces.at(-1), 1),
      to: bright(pieces[0], 0),
      ...leastAndMost(pieces, state, ray, lamp),
    },
    partName: part === undefined ? "" : part.name || part.kind,
  };
}

/** The same curve between two ratios of its length. */
export function pieceBetween(piece: Piece, fromT: number, toT: number): Piece {
  const ends = { from: placeOn(piece, fromT), to: placeOn(piece, toT) };
  if (piece.kind === "line" || (fromT === 0 && toT === 1)) return { ...piece, ...ends };
  return { ...piece, ...ends, bulge: Math.tan(Math.atan(piece.bulge) * (toT - fromT)) };
}
