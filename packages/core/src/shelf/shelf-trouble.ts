/** The troubles that reading a shelf, or asking something of a plane, can end in. Their sentences stand in measure/say/shelf.ts. */
import { cataloguedTrouble, type Outcome, quoted, type Trouble, type TroubleCode } from "../measure/index.ts";
import { nearestWord } from "./nearest-word.ts";

/** A shelf's own codes (`shelf-…`, `sole-…`) and those of the lengths written in it. */
export type ShelfTroubleCode = TroubleCode;

export type ShelfTrouble = Trouble<ShelfTroubleCode>;
export type ShelfOutcome<T> = Outcome<T, ShelfTroubleCode>;

/** A trouble for a key nobody knows, with the nearest one that is known. */
export function unknownKey(key: string, of: string, known: readonly string[], where: string): ShelfTrouble {
  const nearest = nearestWord(key, known) ?? "";
  return cataloguedTrouble("shelf-unknown-key", where, { key: quoted(key), of, nearest, known: [...known] });
}
