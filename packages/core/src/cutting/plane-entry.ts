/** A plane read back from a plan's own entry, by the rules of the shelf file. */
import { type Chain, nearestOnPiece, type Piece, pointAt } from "../curve/index.ts";
import { SOLE_AGREEMENT_MM } from "../measure/index.ts";
import { type Plane, readShelf, SHELF_FORMAT, SHELF_VERSION, solesOf } from "../shelf/index.ts";
import type { PlaneEntry } from "./types.ts";

const FLAT_KINDS: ReadonlySet<string> = new Set(["rebate", "moving fillister", "smoother", "plough"]);

/** Whether a plane of this kind has a flat sole, so that nothing but a guide holds it sideways. */
export function isFlatKind(kind: string): boolean {
  return FLAT_KINDS.has(kind);
}

/** Keys of a shelf's planes. Whatever else stands in a plan's entry is another program's and is not looked at. */
const KEYS: readonly string[] = [
  ...[
    "id",
    "name",
    "kind",
    "hand",
    "width",
    "radius",
    "pitch",
    "skew",
    "shoulder",
    "wall",
    "nose",
    "slope",
    "reach",
  ],
  ...["widths", "fence", "depth", "quirk", "sole", "cutsWall"],
];

/**
 * The plane an entry names, or null where a shelf with that entry would be refused. A plough's entry tells in `width`
 * which of its irons is in; that is the sole's business, see `isSoleOf`.
 */
export function planeOfEntry(entry: PlaneEntry): Plane | null {
  const keys = KEYS.filter(
    (key) => Object.hasOwn(entry, key) && !(entry.kind === "plough" && key === "width"),
  );
  const plane = Object.fromEntries(keys.map((key) => [key, entry[key]]));
  const read = readShelf({ format: SHELF_FORMAT, version: SHELF_VERSION, unit: "mm", planes: [plane] });
  return read.ok ? (read.value.planes[0] ?? null) : null;
}

/** Whether a chain is one of the plane's own soles, in place and shape. */
export function isSoleOf(plane: Plane, sole: Chain): boolean {
  return solesOf(plane).some((own) => liesAlong(own.chain, sole) && liesAlong(sole, own.chain));
}

const PLACES: readonly number[] = [0, 0.25, 0.5, 0.75, 1];

function liesAlong(one: Chain, other: Chain): boolean {
  return one.pieces.every((piece) =>
    PLACES.every((t) => nearestMm(other.pieces, pointAt(piece, t)) <= SOLE_AGREEMENT_MM),
  );
}

function nearestMm(pieces: readonly Piece[], p: { readonly x: number; readonly y: number }): number {
  let least = Number.POSITIVE_INFINITY;
  for (const piece of pieces) least = Math.min(least, nearestOnPiece(piece, p).distanceMm);
  return least;
}
