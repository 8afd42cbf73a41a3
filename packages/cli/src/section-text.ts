/** A section in words: its sizes, its parts from the gauge edge on, and what stands between them. */
import { circleOf, extentsOf, type Piece, type Point, type Ring, sweepRad } from "mouldwright/curve";
import {
  formatDeg,
  type LengthUnit,
  SAME_POINT_MM,
  sameMm,
  toDeg,
  type Writer,
  writerFor,
} from "mouldwright/measure";
import { type Join, joinsOf, type Section, type WorkedFace, workedFaces } from "mouldwright/section";

/** What lies between two neighbouring joins of a face: one piece, or the run of short lines of one free curve. */
interface Stretch {
  readonly pieces: readonly Piece[];
  /** Index of the first piece round the ring. */
  readonly first: number;
  readonly isFree: boolean;
}

/** The description as lines; each may be wrapped. Lengths in the reader's unit. */
export function sectionLines(section: Section, unit: LengthUnit): readonly string[] {
  const write = writerFor(unit);
  const stick = extentsOf(section.stick);
  const box = extentsOf(section.outline);
  const { faces } = workedFaces(section);
  const joins = joinsOf(section.outline, section.freeSpans);
  return [
    `${write.text(section.name) || "Section"}: ${sizeText(box, write)}, in a stick of ${sizeText(stick, write)} (width × thickness).`,
    ...faces.flatMap((face) => ["", faceTitle(section, face), ...faceLines(section, face, joins, write)]),
  ];
}

function sizeText(
  box: { readonly minX: number; readonly maxX: number; readonly minY: number; readonly maxY: number },
  write: Writer,
): string {
  return `${write.length(box.maxX - box.minX)} × ${write.length(box.maxY - box.minY)}`;
}

/** Whether the face is read against the ring's order: from the gauge edge's side on, as a maker reads. */
function isReadBackwards(face: WorkedFace): boolean {
  // The ring runs anticlockwise, so a face on top comes from the far edge.
  return face.from.x > face.to.x;
}

function faceTitle(section: Section, face: WorkedFace): string {
  const [from, to] = [sideName(section.stick, face.fromSide), sideName(section.stick, face.toSide)];
  if (from === to) return `Worked in the ${from}, from the gauge edge's side on:`;
  return isReadBackwards(face)
    ? `Worked from the ${to} to the ${from}:`
    : `Worked from the ${from} to the ${to}:`;
}

/** What a maker calls a side of a stick that is a plain rectangle. */
function sideName(stick: Ring, index: number): string {
  const side = stick.pieces[index];
  const { minX, maxX, minY, maxY } = extentsOf(stick);
  if (side === undefined) return "stick";
  const lies = (value: "x" | "y", at: number): boolean =>
    sameMm(side.from[value], at) && sameMm(side.to[value], at);
  if (lies("x", minX)) return "gauge edge";
  if (lies("x", maxX)) return "far edge";
  if (lies("y", minY)) return "back";
  return lies("y", maxY) ? "face" : "slope of the stick";
}

function faceLines(
  section: Section,
  face: WorkedFace,
  joins: readonly Join[],
  write: Writer,
): readonly string[] {
  const total = section.outline.pieces.length;
  const fromGaugeEdge = isReadBackwards(face);
  const stretches = stretchesOf(section, face);
  const read = fromGaugeEdge ? [...stretches].reverse() : stretches;
  // A stretch's two ends in the ring's order; the one met first when read comes before it.
  const endsOf = (stretch: Stretch): readonly [Join | undefined, Join | undefined] => {
    const joinAt = (piece: number): Join | undefined => joins.find((join) => join.piece === piece);
    const ends = [joinAt(stretch.first), joinAt((stretch.first + stretch.pieces.length) % total)] as const;
    return fromGaugeEdge ? [ends[1], ends[0]] : ends;
  };
  const lines: string[] = [];
  for (const [i, stretch] of read.entries()) {
    const [before, after] = endsOf(stretch);
    const named = section.named.find((span) => (stretch.first - span.first + total) % total < span.count);
    const name = named === undefined ? "" : ` (${write.text(named.name || named.kind)})`;
    if (before !== undefined) lines.push(`      ${joinText(before)}`);
    lines.push(`  ${String(i + 1).padStart(2)}  ${stretchText(stretch, fromGaugeEdge, write)}${name}`);
    if (i === read.length - 1 && after !== undefined) lines.push(`      ${joinText(after)}`);
  }
  return lines;
}

function stretchesOf(section: Section, face: WorkedFace): readonly Stretch[] {
  const { pieces } = section.outline;
  const total = pieces.length;
  const freeSpanAt = (index: number): number =>
    section.freeSpans.findIndex((span) => (index - span.first + total) % total < span.count);
  const stretches: { pieces: Piece[]; first: number; isFree: boolean; span: number }[] = [];
  for (let k = 0; k < face.count; k += 1) {
    const index = (face.first + k) % total;
    const piece = pieces[index]!;
    const span = freeSpanAt(index);
    const last = stretches.at(-1);
    const before = last?.pieces.at(-1);
    const goesOn =
      last !== undefined &&
      before !== undefined &&
      ((span >= 0 && span === last.span) || (span < 0 && last.span < 0 && isSameArc(before, piece)));
    if (goesOn) last.pieces.push(piece);
    else stretches.push({ pieces: [piece], first: index, isFree: span >= 0, span });
  }
  return stretches;
}

/** Arcs past a half circle stand in the ring as two of the same circle. */
function isSameArc(a: Piece, b: Piece): boolean {
  if (a.kind !== "arc" || b.kind !== "arc" || a.bulge > 0 !== b.bulge > 0) return false;
  const [one, other] = [circleOf(a), circleOf(b)];
  return (
    Math.hypot(one.centre.x - other.centre.x, one.centre.y - other.centre.y) <= SAME_POINT_MM &&
    Math.abs(one.radiusMm - other.radiusMm) <= SAME_POINT_MM
  );
}

function stretchText(stretch: Stretch, turned: boolean, write: Writer): string {
  const first = stretch.pieces[0]!;
  const last = stretch.pieces.at(-1)!;
  const [from, to] = turned ? [last.to, first.from] : [first.from, last.to];
  const run = runText(from, to, write);
  if (stretch.isFree) return `free curve, ${run}`;
  if (first.kind === "line")
    return `${isUpright(from, to) ? "wall" : isLevel(from, to) ? "flat" : "slope"}, ${run}`;
  const sweepDeg = stretch.pieces.reduce(
    (sum, piece) => sum + (piece.kind === "arc" ? Math.abs(toDeg(sweepRad(piece))) : 0),
    0,
  );
  const shape = first.bulge > 0 ? "convex" : "concave";
  return `${shape} arc, radius ${write.length(circleOf(first).radiusMm)}, ${write.degrees(sweepDeg)}, ${run}`;
}

function runText(from: Point, to: Point, write: Writer): string {
  const across = to.x - from.x;
  const rise = to.y - from.y;
  const said: string[] = [];
  if (!isUpright(from, to)) said.push(`${write.length(Math.abs(across))} ${across < 0 ? "back" : "across"}`);
  if (!isLevel(from, to)) said.push(`${rise < 0 ? "down" : "up"} ${write.length(Math.abs(rise))}`);
  return said.join(", ") || "closed";
}

function isUpright(from: Point, to: Point): boolean {
  return Math.abs(to.x - from.x) <= SAME_POINT_MM;
}

function isLevel(from: Point, to: Point): boolean {
  return Math.abs(to.y - from.y) <= SAME_POINT_MM;
}

function joinText(join: Join): string {
  if (join.kind === "smooth") return "runs on smoothly";
  return `${join.kind} of ${formatDeg(join.angleDeg)}`;
}
