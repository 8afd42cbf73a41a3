/** What can be taken hold of on the drawing: the ends of parts, the middle of a curve, the turn of an S, the start. */
import { type Piece, type Point, pointAt } from "mouldwright/curve";
import type { Job } from "mouldwright/job";
import type { PartSpec } from "mouldwright/section";
import { nameOfPart, partsOfJob } from "../chain/chain-edits.ts";
import type { PlacedPart } from "../chain/laid-chain.ts";

export interface Handle {
  /** The same for the same place of the same part while it is pulled. */
  readonly id: string;
  readonly kind: "start" | "end" | "curve" | "turn" | "vertex" | "bulge";
  /** The part's place in the chain; for a path the vertex's. −1 for the start. */
  readonly part: number;
  readonly at: Point;
  /** What it is, for who hears it: "End of the ogee". */
  readonly words: string;
}

export function handlesOf(job: Job, placed: readonly PlacedPart[]): readonly Handle[] {
  const parts = partsOfJob(job);
  const [first] = placed;
  if (first === undefined) return [];
  const start: Handle = {
    id: "start",
    kind: "start",
    part: -1,
    at: first.from,
    words: "Start on the gauge edge",
  };
  return [
    start,
    ...placed.flatMap((place) => {
      const part = parts[place.index];
      return part === undefined ? [] : handlesOfPart(part, place);
    }),
  ];
}

function handlesOfPart(part: PartSpec, place: PlacedPart): readonly Handle[] {
  const name = nameOfPart(part);
  const { index, pieces, to } = place;
  const end: Handle = { id: `end ${index}`, kind: "end", part: index, at: to, words: `End of the ${name}` };
  const bent = curvePiece(part, pieces);
  const turn = turnPoint(part, pieces);
  return [
    ...(bent === null
      ? []
      : [
          {
            id: `curve ${index}`,
            kind: "curve" as const,
            part: index,
            at: pointAt(bent, 0.5),
            words: `Curve of the ${name}`,
          },
        ]),
    ...(turn === null
      ? []
      : [
          {
            id: `turn ${index}`,
            kind: "turn" as const,
            part: index,
            at: turn,
            words: `Turn of the ${name}`,
          },
        ]),
    end,
  ];
}

/** The arc of a part whose radius may be pulled, its ends staying; null where its width alone decides it. */
export function curvePiece(part: PartSpec, pieces: readonly Piece[]): Extract<Piece, { kind: "arc" }> | null {
  const [first] = pieces;
  if (first?.kind !== "arc") return null;
  switch (part.kind) {
    case "ovolo":
    case "cavetto":
    case "arc":
    case "low bead":
    case "reeds":
    case "flutes":
      return first;
    case "swept arc":
      return pieces.length === 1 ? first : null;
    default:
      return null;
  }
}

function turnPoint(part: PartSpec, pieces: readonly Piece[]): Point | null {
  const isS = part.kind === "cyma recta" || part.kind === "cyma reversa" || part.kind === "scotia";
  return isS ? (pieces[0]?.to ?? null) : null;
}
