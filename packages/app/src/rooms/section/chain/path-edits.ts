/** A section held as a path: its vertices moved, its curves bent, the whole read as parts where it can be. */
import { type Piece, reversePiece, ringFromVertices, type Vertex } from "mouldwright/curve";
import type { Job } from "mouldwright/job";
import { SAME_POINT_MM } from "mouldwright/measure";
import type { PartSpec, Section } from "mouldwright/section";
import { withParts } from "./chain-edits.ts";
import { plainParts } from "./refit-part.ts";

type JobPath = NonNullable<Job["section"]["path"]>;

export function pathOfJob(job: Job): readonly (readonly number[])[] {
  return job.section.path ?? [];
}

export function verticesOfPieces(pieces: readonly Piece[]): JobPath {
  return pieces.map((piece) =>
    piece.kind === "arc" ? [piece.from.x, piece.from.y, piece.bulge] : [piece.from.x, piece.from.y],
  );
}

/** One vertex elsewhere; its curves keep how far round they go. */
export function withVertex(job: Job, index: number, x: number, y: number): Job {
  const path = pathOfJob(job);
  const old = path[index];
  if (old === undefined || (old[0] === x && old[1] === y)) return job;
  return { ...job, section: { ...job.section, path: path.with(index, [x, y, ...old.slice(2)]) as JobPath } };
}

/** The piece after a vertex bent otherwise: `bulge` = tan(sweep / 4), 0 for a flat. */
export function withBulge(job: Job, index: number, bulge: number): Job {
  const path = pathOfJob(job);
  const old = path[index];
  if (old === undefined || (old[2] ?? 0) === bulge) return job;
  const [x = 0, y = 0] = old;
  const vertex = bulge === 0 ? [x, y] : [x, y, bulge];
  return { ...job, section: { ...job.section, path: path.with(index, vertex) as JobPath } };
}

export function piecesOfPath(job: Job): readonly Piece[] {
  return ringFromVertices(pathOfJob(job) as readonly Vertex[]).pieces;
}

/**
 * The same section as parts of a chain; null where what lies between the far edge and the gauge edge is not all of it (the
 * back is worked too, or an edge is gone), or has more pieces than anyone would name.
 */
export function asParts(job: Job, section: Section): Job | null {
  const { pieces } = section.outline;
  const { widthMm, thicknessMm } = job.stick;
  const count = pieces.length;
  const isOn = (piece: Piece, x: number): boolean =>
    piece.kind === "line" &&
    Math.abs(piece.from.x - x) <= SAME_POINT_MM &&
    Math.abs(piece.to.x - x) <= SAME_POINT_MM;
  const isBack = (piece: Piece): boolean =>
    piece.kind === "line" && Math.abs(piece.from.y) <= SAME_POINT_MM && Math.abs(piece.to.y) <= SAME_POINT_MM;
  const back = pieces.findIndex(isBack);
  const at = (step: number): Piece => pieces[(((back + step) % count) + count) % count] as Piece;
  if (back < 0 || !isOn(at(1), widthMm) || !isOn(at(-1), 0)) return null;
  const chain = Array.from({ length: count - 3 }, (_, step) => reversePiece(at(count - 2 - step)));
  const first = chain[0];
  if (first === undefined || chain.length > MOST_PARTS) return null;
  const { path: _, startHeightMm: __, ...rest } = job.section;
  const isAtFace = Math.abs(first.from.y - thicknessMm) <= SAME_POINT_MM;
  const from = isAtFace ? rest : { ...rest, startHeightMm: first.from.y };
  return withParts({ ...job, section: from }, withRest(plainParts(chain)));
}

/** More lines and arcs than this are no parts any more. */
const MOST_PARTS = 60;

/** The last level fillet takes the rest, so that rounding leaves no gap at the far edge. */
function withRest(parts: readonly PartSpec[]): readonly PartSpec[] {
  const index = parts.findLastIndex((part) => part.kind === "fillet" && part.leanDeg === undefined);
  return index < 0 ? parts : parts.with(index, { kind: "fillet", widthMm: "rest" });
}
