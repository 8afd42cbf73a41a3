import { circleMeetsCircle, lineMeetsCircle, lineMeetsLine, type Meets } from "./meets.ts";
import { circleOf, nearestOnPiece, pointAt, reversePiece, riseMm, straightIfFlat } from "./piece.ts";
import { distanceMm, samePoint } from "./point.ts";
import type { Arc, Piece, Point } from "./types.ts";

/** One point that two pieces share. */
export interface Hit {
  readonly point: Point;
  /** Place along each piece, 0 to 1; exactly 0 or 1 at an end. */
  readonly tA: number;
  readonly tB: number;
  /** They touch here, or go on into one another, without crossing; at an end: their carriers do. */
  readonly tangent: boolean;
}

/** What two pieces share: nothing, single points in the order of the first piece, or a whole stretch. */
export type Crossing =
  | { readonly kind: "none" }
  | { readonly kind: "points"; readonly hits: readonly Hit[] }
  | { readonly kind: "overlap"; readonly from: Point; readonly to: Point };

/**
 * What two pieces have in common within `tolMm`.
 *
 * - `none`: nowhere nearer than the tolerance.
 * - `points`: one hit for each place of contact, however long it stays within the tolerance (arcs that touch do so
 *   for a while). An end within the tolerance of the other piece is a hit, and gives its stored point.
 * - `overlap`: a stretch between two ends along which they are one; `from` is the end with the smaller x (then y).
 *   Of two such stretches, or a stretch and points apart from it (two arcs round a circle), only the longest is given.
 *
 * The same answer, to the last bit, for either order and either direction of the pieces, places along them apart.
 * A tolerance of 0 finds crossings and exactly shared ends, not touching. Arcs flat within `FLAT_SAGITTA_MM` count
 * as lines. Accuracy of a crossing: about 2^-50 of the larger radius, divided by the sine of the angle between.
 */
export function intersect(a: Piece, b: Piece, tolMm: number): Crossing {
  if (areBoxesApart(a, b, tolMm)) return { kind: "none" };
  // Always the same way round inside, so that order and direction cannot change the answer.
  const isTurnedA = isAfter(a.from, a.to);
  const isTurnedB = isAfter(b.from, b.to);
  const canonicalA = isTurnedA ? reversePiece(a) : a;
  const canonicalB = isTurnedB ? reversePiece(b) : b;
  const isSwapped = comparePieces(canonicalA, canonicalB) > 0;
  const [first, second] = isSwapped ? [canonicalB, canonicalA] : [canonicalA, canonicalB];
  const answer = solve(first, second, tolMm);
  if (answer.kind !== "points") return answer;
  const hits = answer.hits.map((hit): Hit => {
    const tA = isSwapped ? hit.tB : hit.tA;
    const tB = isSwapped ? hit.tA : hit.tB;
    return { ...hit, tA: isTurnedA ? 1 - tA : tA, tB: isTurnedB ? 1 - tB : tB };
  });
  hits.sort((one, other) => one.tA - other.tA || one.tB - other.tB);
  return { kind: "points", hits };
}

/** A cheap refusal: the boxes of the chords, grown by the arcs' heights over them. */
function areBoxesApart(a: Piece, b: Piece, tolMm: number): boolean {
  const slackMm = tolMm + riseMm(a) + riseMm(b);
  return (
    Math.max(a.from.x, a.to.x) + slackMm < Math.min(b.from.x, b.to.x) ||
    Math.max(b.from.x, b.to.x) + slackMm < Math.min(a.from.x, a.to.x) ||
    Math.max(a.from.y, a.to.y) + slackMm < Math.min(b.from.y, b.to.y) ||
    Math.max(b.from.y, b.to.y) + slackMm < Math.min(a.from.y, a.to.y)
  );
}

function isAfter(p: Point, q: Point): boolean {
  return p.x > q.x || (p.x === q.x && p.y > q.y);
}

function comparePieces(a: Piece, b: Piece): number {
  if (a.kind !== b.kind) return a.kind === "line" ? -1 : 1;
  const bulgeOf = (piece: Piece) => (piece.kind === "arc" ? piece.bulge : 0);
  return (
    a.from.x - b.from.x ||
    a.from.y - b.from.y ||
    a.to.x - b.to.x ||
    a.to.y - b.to.y ||
    bulgeOf(a) - bulgeOf(b)
  );
}

/** A place where both pieces are within the tolerance of one another. */
interface Contact {
  readonly point: Point;
  readonly tA: number;
  readonly tB: number;
  /** Of how many of the two pieces it is an end. */
  readonly ends: number;
}

function solve(a: Piece, b: Piece, tolMm: number): Crossing {
  const meets = carriersMeet(a, b, tolMm);
  const contacts = [...endContacts(a, b, tolMm), ...meetContacts(meets, a, b, tolMm)];
  if (contacts.length === 0) return { kind: "none" };
  contacts.sort((one, other) => one.tA - other.tA || one.tB - other.tB);
  const groups = grouped(contacts, a, b, tolMm);
  const stretch = longestStretch(groups, tolMm);
  if (stretch !== undefined) return stretch;
  const hits = groups.map((group): Hit => {
    const { point, tA, tB } = mostTelling(group);
    return { point, tA, tB, tangent: meets.isTangent };
  });
  return { kind: "points", hits };
}

function carriersMeet(a: Piece, b: Piece, tolMm: number): Meets {
  const arcA = roundArc(a);
  const arcB = roundArc(b);
  if (arcA !== undefined && arcB !== undefined)
    return circleMeetsCircle(circleOf(arcA), circleOf(arcB), tolMm);
  if (arcA !== undefined) return lineMeetsCircle(b.from, b.to, circleOf(arcA), tolMm);
  if (arcB !== undefined) return lineMeetsCircle(a.from, a.to, circleOf(arcB), tolMm);
  // The longer one is the better ruler, whichever comes first.
  const isLongerFirst = distanceMm(a.from, a.to) >= distanceMm(b.from, b.to);
  return isLongerFirst
    ? lineMeetsLine(a.from, a.to, b.from, b.to, tolMm)
    : lineMeetsLine(b.from, b.to, a.from, a.to, tolMm);
}

/** The piece if it is an arc that can be told from a line. */
function roundArc(piece: Piece): Arc | undefined {
  const kept = straightIfFlat(piece);
  return kept.kind === "arc" ? kept : undefined;
}

function endContacts(a: Piece, b: Piece, tolMm: number): Contact[] {
  const contacts: Contact[] = [];
  for (const tA of [0, 1]) {
    const end = tA === 0 ? a.from : a.to;
    const near = nearestOnPiece(b, end);
    if (near.distanceMm > tolMm) continue;
    const tB = snapToEnd(b, end, near.t, tolMm);
    contacts.push({ point: end, tA, tB, ends: tB === 0 || tB === 1 ? 2 : 1 });
  }
  for (const tB of [0, 1]) {
    const end = tB === 0 ? b.from : b.to;
    const near = nearestOnPiece(a, end);
    if (near.distanceMm > tolMm) continue;
    const tA = snapToEnd(a, end, near.t, tolMm);
    // Where two ends meet, the first piece's has been taken.
    if (tA !== 0 && tA !== 1) contacts.push({ point: end, tA, tB, ends: 1 });
  }
  return contacts;
}

/** A place within the tolerance of an end is that end. */
function snapToEnd(piece: Piece, p: Point, t: number, tolMm: number): number {
  const [near, far] = t < 1 / 2 ? [0, 1] : [1, 0];
  if (samePoint(p, near === 0 ? piece.from : piece.to, tolMm)) return near;
  if (samePoint(p, far === 0 ? piece.from : piece.to, tolMm)) return far;
  return t;
}

function meetContacts(meets: Meets, a: Piece, b: Piece, tolMm: number): Contact[] {
  const contacts: Contact[] = [];
  for (const point of meets.points) {
    const onA = nearestOnPiece(a, point);
    const onB = nearestOnPiece(b, point);
    const slackMm = Math.max(tolMm, roundOffMm(a, b));
    if (onA.distanceMm > slackMm || onB.distanceMm > slackMm) continue;
    const tA = snapToEnd(a, point, onA.t, tolMm);
    const tB = snapToEnd(b, point, onB.t, tolMm);
    // An end within the tolerance has been found already, with its stored point.
    if (tA === 0 || tA === 1 || tB === 0 || tB === 1) continue;
    contacts.push({ point, tA, tB, ends: 0 });
  }
  return contacts;
}

/** How far a crossing computed in doubles may stray from both pieces: what a tolerance of 0 has to allow, mm. */
function roundOffMm(a: Piece, b: Piece): number {
  const sizeOf = (piece: Piece) => {
    const arc = roundArc(piece);
    const reach = Math.max(
      Math.abs(piece.from.x),
      Math.abs(piece.from.y),
      Math.abs(piece.to.x),
      Math.abs(piece.to.y),
    );
    return arc === undefined ? reach : reach + circleOf(arc).radiusMm;
  };
  return (sizeOf(a) + sizeOf(b)) * ROUND_OFF_RATIO;
}

/** Some eight roundings of one part in 2^53 each. */
const ROUND_OFF_RATIO = 2 ** -50;

/** Contacts between which the pieces never part are one place. */
function grouped(contacts: readonly Contact[], a: Piece, b: Piece, tolMm: number): Contact[][] {
  const groups: Contact[][] = [];
  for (const contact of contacts) {
    const group = groups[groups.length - 1];
    const last = group?.[group.length - 1];
    if (group !== undefined && last !== undefined && staysTogether(last, contact, a, b, tolMm))
      group.push(contact);
    else groups.push([contact]);
  }
  return groups;
}

function staysTogether(last: Contact, next: Contact, a: Piece, b: Piece, tolMm: number): boolean {
  if (samePoint(last.point, next.point, tolMm)) return true;
  // A lens between two crossings is widest about its middle; the quarters are for ends that lean one way.
  return [1 / 4, 1 / 2, 3 / 4].every((share) => {
    const between = pointAt(a, last.tA + (next.tA - last.tA) * share);
    return nearestOnPiece(b, between).distanceMm <= tolMm;
  });
}

/** A group is a stretch if it runs from one end to another that is not the same place. */
function longestStretch(groups: readonly (readonly Contact[])[], tolMm: number): Crossing | undefined {
  let best: { from: Point; to: Point; lengthMm: number } | undefined;
  for (const group of groups) {
    const ends = group.filter((contact) => contact.ends > 0);
    const first = ends[0];
    const last = ends[ends.length - 1];
    if (first === undefined || last === undefined) continue;
    const lengthMm = distanceMm(first.point, last.point);
    if (lengthMm <= 2 * tolMm || (best !== undefined && lengthMm <= best.lengthMm)) continue;
    const [from, to] = isAfter(first.point, last.point)
      ? [last.point, first.point]
      : [first.point, last.point];
    best = { from, to, lengthMm };
  }
  return best === undefined ? undefined : { kind: "overlap", from: best.from, to: best.to };
}

/** Of several contacts at one place: where two ends meet, else an end, else the middle one. */
function mostTelling(group: readonly Contact[]): Contact {
  const most = Math.max(...group.map((contact) => contact.ends));
  const best = group.filter((contact) => contact.ends === most);
  return best[Math.floor((best.length - 1) / 2)] as Contact;
}
