/** What a maker says of planes to add, and the entries that come of it: a pair gives two, both hands give two. */
import { planeEntry, readShelf, SHELF_FORMAT, SHELF_VERSION } from "mouldwright/shelf";
import { beginningOf, filledOf } from "./plane-fields.ts";
import type { Entry, FileKind } from "./shelf-edits.ts";

export interface NewPlanes {
  readonly kind: FileKind;
  /** A hollow and a round of one size at once. */
  readonly isPair: boolean;
  readonly entry: Entry;
}

export function newPlanesOf(kind: FileKind): NewPlanes {
  return { kind, isPair: kind === "hollow" || kind === "round", entry: beginningOf(kind) };
}

/** A radius that was told some other way; the sole carries a sixth of its circle unless a width is said. */
export function withRadius(planes: NewPlanes, radiusMm: number, widthMm: number = radiusMm): NewPlanes {
  return { ...planes, entry: { ...planes.entry, radius: radiusMm, width: widthMm } };
}

/** The entries to add. A radius that is changed takes along a width that was the same. */
export function entriesToAdd({ kind, isPair, entry }: NewPlanes): readonly Entry[] {
  if (isPair && (kind === "hollow" || kind === "round")) {
    return [
      { ...entry, kind: "hollow" },
      { ...entry, kind: "round" },
    ];
  }
  if (entry.hand === "both") {
    return [
      { ...entry, hand: "left" },
      { ...entry, hand: "right" },
    ];
  }
  return [entry];
}

/** One size changed. Width follows the radius as long as the two were one, as on most hollows and rounds. */
export function withSize(planes: NewPlanes, key: string, value: unknown): NewPlanes {
  const { entry } = planes;
  const follows = key === "radius" && entry.radius === entry.width;
  return { ...planes, entry: { ...entry, [key]: value, ...(follows ? { width: value } : {}) } };
}

/** The first of the entries with everything filled in that is not said; as it stands where it cannot be a plane. */
export function filledEntry(planes: NewPlanes): Entry {
  const [entry] = entriesToAdd(planes);
  const read = readShelf({ format: SHELF_FORMAT, version: SHELF_VERSION, unit: "mm", planes: [entry] });
  const plane = read.ok ? read.value.planes[0] : undefined;
  return plane === undefined ? planes.entry : filledOf(plane, planeEntry(plane));
}
