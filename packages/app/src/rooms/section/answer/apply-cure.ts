/** A cure that the planner found, done to the job: a change of the section to its parts, or a plane put on the shelf. */
import { distanceMm, type Piece, type Ring, reversePiece } from "mouldwright/curve";
import type { PlanCure, PlanCureChange } from "mouldwright/cutting";
import type { ComputedJob, Job } from "mouldwright/job";
import { withLineMoved } from "mouldwright/planning";
import { snapArc } from "mouldwright/section";
import { readShelf, shelfFile } from "mouldwright/shelf";
import { partsOfJob, withParts } from "../chain/chain-edits.ts";
import { chainCounts, partOfPiece } from "../chain/laid-chain.ts";
import { verticesOfPieces } from "../chain/path-edits.ts";
import { refitted } from "../chain/refit-part.ts";

/** The job with the cure; null where the change cannot be done to its parts or its path. */
export function withCure(job: Job, computed: ComputedJob, cure: PlanCure): Job | null {
  return cure.kind === "plane"
    ? withPlanes(job, cure.planes ?? [])
    : cure.change === undefined
      ? null
      : withChange(job, computed, cure.change);
}

function withPlanes(job: Job, planes: readonly unknown[]): Job | null {
  const { shelf } = job;
  if (shelf === undefined || "file" in shelf) return null;
  const own = readShelf(shelf, { at: "shelf", tellIn: job.unit ?? "mm" });
  const wanted = readShelf({ format: "mouldwright/shelf", version: 1, unit: "mm", planes });
  if (!own.ok || !wanted.ok) return null;
  const ids = new Set(own.value.planes.map(({ id }) => id));
  const fresh = wanted.value.planes.filter(({ id }) => !ids.has(id));
  return { ...job, shelf: shelfFile({ planes: [...own.value.planes, ...fresh], assumed: [] }) };
}

function withChange(job: Job, { section }: ComputedJob, change: PlanCureChange): Job | null {
  const { pieces } = section.outline;
  const index = pieceOfChange(section.outline, change);
  const changed = changedPieces(pieces, index, change);
  if (changed === null) return null;
  if (job.section.path !== undefined) {
    return { ...job, section: { ...job.section, path: verticesOfPieces(changed) } };
  }
  const counts = chainCounts(job);
  const owners = partOfPiece(section, counts);
  const parts = partsOfJob(job).flatMap((part, place) => {
    const own = pieces.flatMap((_, piece) => (owners[piece] === place ? [piece] : []));
    const walked = (all: readonly Piece[]): readonly Piece[] =>
      own.map((piece) => reversePiece(all[piece] as Piece)).reverse();
    return refitted(part, walked(pieces), walked(changed));
  });
  return withParts(job, parts);
}

/** The drawn piece that a change means: the planned one may lie a hair beside it. */
function pieceOfChange(outline: Ring, { from, to }: PlanCureChange): number {
  const away = outline.pieces.map((piece) => {
    const start = distanceMm(piece.from, { x: from[0], y: from[1] });
    const end = distanceMm(piece.to, { x: to[0], y: to[1] });
    return start + end;
  });
  const least = Math.min(...away);
  return away.indexOf(least);
}

function changedPieces(
  pieces: readonly Piece[],
  index: number,
  change: PlanCureChange,
): readonly Piece[] | null {
  const piece = pieces[index];
  if (piece === undefined) return null;
  switch (change.what) {
    case "radius": {
      const bent = piece.kind === "arc" && change.toMm !== undefined ? snapArc(piece, change.toMm) : null;
      return bent === null ? null : pieces.with(index, bent);
    }
    case "width":
      return change.toMm === undefined ? null : widened(pieces, index, change.toMm);
    case "flat":
    case "wall":
      return change.byMm === undefined ? null : flatMoved(pieces, index, change.byMm);
  }
}

/** By moving the wall further from the gauge edge, or the other one where that leads nowhere. */
function widened(pieces: readonly Piece[], index: number, toMm: number): readonly Piece[] | null {
  const flat = pieces[index] as Piece;
  const count = pieces.length;
  const walls = [(index + count - 1) % count, (index + 1) % count];
  const byDistance = walls.sort((a, b) => (pieces[b] as Piece).from.x - (pieces[a] as Piece).from.x);
  for (const wall of byDistance) {
    const moved = withLineMoved(pieces, wall, distanceMm(flat.from, flat.to) - toMm);
    if (moved !== null) return moved;
  }
  return null;
}

/** A groove's floor is raised, the flat beside a curve lowered: whichever way leaves the floor between its walls. */
function flatMoved(pieces: readonly Piece[], index: number, byMm: number): readonly Piece[] | null {
  return withLineMoved(pieces, index, isFloor(pieces, index) ? byMm : -byMm);
}

/** Whether wood stands on both sides of a flat. */
function isFloor(pieces: readonly Piece[], index: number): boolean {
  const count = pieces.length;
  const flat = pieces[index] as Piece;
  const out = { x: flat.to.y - flat.from.y, y: -(flat.to.x - flat.from.x) };
  const stands = (piece: Piece, end: "from" | "to"): boolean => {
    const far = piece[end];
    const near = end === "from" ? piece.to : piece.from;
    return (far.x - near.x) * out.x + (far.y - near.y) * out.y > 0;
  };
  return (
    stands(pieces[(index + count - 1) % count] as Piece, "from") &&
    stands(pieces[(index + 1) % count] as Piece, "to")
  );
}
