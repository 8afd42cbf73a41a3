/** Planes that are on the shelf but are not to be used. */
import { cataloguedTrouble, fine, type Outcome, refused, type Trouble } from "../measure/index.ts";
import { nearestWord, type Plane, type Shelf } from "../shelf/index.ts";

/**
 * The ids of the planes that some words mean: each an id or a name of the shelf, capitals or not. A name that several
 * planes share means them all. `where` says where a word stands. Troubles: `plane-unknown` with the nearest known
 * word, `planes-all-left-out`.
 */
export function planesMeant(
  shelf: Shelf,
  words: readonly string[],
  where: (index: number) => string,
): Outcome<readonly string[]> {
  const troubles: Trouble[] = [];
  const meant = new Set<string>();
  for (const [index, word] of words.entries()) {
    const planes = planesCalled(shelf, word);
    if (planes.length === 0) troubles.push(planeUnknown(shelf, word, where(index)));
    for (const plane of planes) meant.add(plane.id);
  }
  const [first, ...more] = troubles;
  if (first !== undefined) return refused(first, ...more);
  if (shelf.planes.length > 0 && meant.size === shelf.planes.length) {
    return refused(cataloguedTrouble("planes-all-left-out", where(0), { planes: meant.size }));
  }
  return fine(shelf.planes.flatMap(({ id }) => (meant.has(id) ? [id] : [])));
}

/** The refusal of a word that no plane of the shelf goes by. */
export function planeUnknown(shelf: Shelf, word: string, where: string): Trouble {
  const ids = shelf.planes.map(({ id }) => id);
  const names = shelf.planes.map(({ name }) => name);
  return cataloguedTrouble("plane-unknown", where, {
    word,
    nearest: nearestWord(word, [...ids, ...names]) ?? "",
    known: ids,
  });
}

function planesCalled(shelf: Shelf, word: string): readonly Plane[] {
  const same = (written: string): boolean => alike(written) === alike(word);
  const byId = shelf.planes.filter(({ id }) => same(id));
  return byId.length > 0 ? byId : shelf.planes.filter(({ name }) => same(name));
}

/** As a reader sees it: composed letters, one case, no blanks around. */
function alike(word: string): string {
  return word.normalize("NFC").trim().toLowerCase();
}
