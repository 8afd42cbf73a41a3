/**
 * A part made anew from pieces that have been moved or bent: its own sizes where its kind still draws them, else the flats
 * and curves it has become, one after the other.
 */
import { circleOf, distanceMm, type Piece } from "mouldwright/curve";
import { SAME_POINT_MM, toDeg } from "mouldwright/measure";
import type { ArcSpec, PartSpec } from "mouldwright/section";

/** Drawings and plans are given to a millionth of a millimetre; what is asked to be level or alike is so within this. */
const ALIKE_MM = 100 * SAME_POINT_MM;

/** `pieces`: walked from the gauge edge, as the part is to stand now; `was`: as it stood. */
export function refitted(
  part: PartSpec,
  was: readonly Piece[],
  pieces: readonly Piece[],
): readonly PartSpec[] {
  if (was.length === pieces.length && was.every((piece, i) => isSamePiece(piece, pieces[i] as Piece))) {
    return [part];
  }
  const own = ownSizes(part, was, pieces);
  return own === null ? named(part, plainParts(pieces)) : [own];
}

/** Flats and curves, each by its end: what any run of lines and arcs can be held as. */
export function plainParts(pieces: readonly Piece[]): readonly PartSpec[] {
  return pieces.map((piece): PartSpec => {
    const acrossMm = tidyMm(piece.to.x - piece.from.x);
    const riseMm = tidyMm(piece.to.y - piece.from.y);
    if (piece.kind === "arc") return arcPart(piece, acrossMm, riseMm);
    if (Math.abs(riseMm) <= ALIKE_MM && acrossMm > 0) return { kind: "fillet", widthMm: acrossMm };
    if (Math.abs(acrossMm) <= ALIKE_MM) return { kind: "step", riseMm };
    // A flat that runs back towards the gauge edge is no bevel: it is a fillet turned round.
    return acrossMm > 0
      ? { kind: "bevel", acrossMm, riseMm }
      : {
          kind: "fillet",
          widthMm: tidyMm(Math.hypot(acrossMm, riseMm)),
          leanDeg: toDeg(Math.atan2(riseMm, acrossMm)),
        };
  });
}

function arcPart(piece: Extract<Piece, { kind: "arc" }>, acrossMm: number, riseMm: number): ArcSpec {
  const leastMm = Math.hypot(acrossMm, riseMm) / 2;
  const radiusMm = Math.max(leastMm, tidyMm(circleOf(piece).radiusMm));
  return { kind: "arc", acrossMm, riseMm, radiusMm, bend: piece.bulge < 0 ? "round" : "hollow" };
}

/** The first carries the name; the others say what they are. */
function named(part: PartSpec, parts: readonly PartSpec[]): readonly PartSpec[] {
  return part.name === undefined ? parts : parts.map((one) => ({ ...one, name: part.name }));
}

function ownSizes(part: PartSpec, was: readonly Piece[], pieces: readonly Piece[]): PartSpec | null {
  if (was.length !== pieces.length) return null;
  const [first, last] = [pieces[0], pieces.at(-1)];
  if (first === undefined || last === undefined) return null;
  const acrossMm = tidyMm(last.to.x - first.from.x);
  const riseMm = tidyMm(last.to.y - first.from.y);
  const isTurned = part.kind !== "running arc" && (part.smooth === true || (part.leanDeg ?? 0) !== 0);
  if (isTurned && part.kind !== "swept arc") return null;
  switch (part.kind) {
    case "fillet":
      if (part.widthMm === "rest" && Math.abs(riseMm) <= ALIKE_MM) return part;
      return Math.abs(riseMm) <= ALIKE_MM && acrossMm > 0 ? { ...part, widthMm: acrossMm } : null;
    case "step":
      return Math.abs(acrossMm) <= ALIKE_MM ? { ...part, riseMm } : null;
    case "bevel":
      return acrossMm > 0 ? { ...part, acrossMm, riseMm } : null;
    case "chamfer":
      return acrossMm > 0 ? { ...part, acrossMm, riseMm } : null;
    case "quirk":
      return (part.walls ?? "both") === "both" ? quirkOf(part, pieces) : null;
    case "ovolo":
    case "cavetto":
      return quarterOf(part, pieces, acrossMm, riseMm);
    case "arc":
      return first.kind === "arc" ? { ...part, ...arcPart(first, acrossMm, riseMm) } : null;
    case "low bead":
      return lowBeadOf(part, first, acrossMm, riseMm);
    case "swept arc":
      return sweptOf(part, pieces);
    default:
      return null;
  }
}

function quirkOf(part: Extract<PartSpec, { kind: "quirk" }>, pieces: readonly Piece[]): PartSpec | null {
  const [down, floor, up] = pieces;
  if (!down || !floor || !up) return null;
  const depthMm = tidyMm(down.from.y - down.to.y);
  const isSquare =
    Math.abs(down.to.x - down.from.x) <= ALIKE_MM && Math.abs(up.to.y - down.from.y) <= ALIKE_MM;
  return isSquare && depthMm > 0 ? { ...part, widthMm: tidyMm(floor.to.x - floor.from.x), depthMm } : null;
}

function quarterOf(
  part: Extract<PartSpec, { kind: "ovolo" | "cavetto" }>,
  [piece]: readonly Piece[],
  acrossMm: number,
  riseMm: number,
): PartSpec | null {
  if (piece?.kind !== "arc" || !(acrossMm > 0) || Math.abs(riseMm) <= ALIKE_MM) return null;
  const { radiusMm } = arcPart(piece, acrossMm, riseMm);
  return { ...part, acrossMm, riseMm, radiusMm };
}

function lowBeadOf(
  part: Extract<PartSpec, { kind: "low bead" }>,
  piece: Piece,
  acrossMm: number,
  riseMm: number,
): PartSpec | null {
  if (piece.kind !== "arc" || Math.abs(riseMm) > ALIKE_MM || piece.bulge > 0) return null;
  const sweepDeg = tidyDeg(toDeg(4 * Math.atan(Math.abs(piece.bulge))));
  return { ...part, widthMm: acrossMm, sweepDeg };
}

/** Two arcs of one circle, past a half circle, stay a swept arc only if they still are of one circle. */
function sweptOf(part: Extract<PartSpec, { kind: "swept arc" }>, pieces: readonly Piece[]): PartSpec | null {
  const arcs = pieces.flatMap((piece) => (piece.kind === "arc" ? [piece] : []));
  const [first] = arcs;
  if (first === undefined || arcs.length !== pieces.length) return null;
  const { centre, radiusMm } = circleOf(first);
  const isOne = arcs.every((one) => {
    const other = circleOf(one);
    return distanceMm(other.centre, centre) <= ALIKE_MM && Math.abs(other.radiusMm - radiusMm) <= ALIKE_MM;
  });
  if (!isOne) return null;
  const sweepDeg = tidyDeg(arcs.reduce((sum, one) => sum + toDeg(4 * Math.atan(Math.abs(one.bulge))), 0));
  const chordRad = Math.atan2(first.to.y - first.from.y, first.to.x - first.from.x);
  const leanDeg = tidyDeg(normalDeg(toDeg(chordRad - 2 * Math.atan(first.bulge))));
  const { smooth: _, ...rest } = part;
  return { ...rest, radiusMm: tidyMm(radiusMm), sweepDeg, leanDeg };
}

function isSamePiece(one: Piece, other: Piece): boolean {
  if (one.kind !== other.kind) return false;
  const isBent = one.kind === "arc" && other.kind === "arc" && one.bulge !== other.bulge;
  return (
    !isBent &&
    Math.abs(one.to.x - one.from.x - (other.to.x - other.from.x)) <= SAME_POINT_MM &&
    Math.abs(one.to.y - one.from.y - (other.to.y - other.from.y)) <= SAME_POINT_MM
  );
}

/** To a ten-thousandth: below what anyone draws, above the last digits of reckoning. */
export function tidyMm(valueMm: number): number {
  return Math.round(valueMm * 10_000) / 10_000 + 0;
}

export function tidyDeg(valueDeg: number): number {
  return Math.round(valueDeg * 10_000) / 10_000 + 0;
}

function normalDeg(angleDeg: number): number {
  return ((((angleDeg + 180) % 360) + 360) % 360) - 180;
}
