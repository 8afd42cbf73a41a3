import type { Plane, Shelf } from "./types.ts";

/** What was assumed of those planes alone; sentences that are about no plane of the shelf stay as they are. */
export function assumedOf(shelf: Shelf, bears: (plane: Plane) => boolean): string[] {
  const isAbout = (sentence: string) => (plane: Plane) => sentence.startsWith(`${plane.name}: `);
  return shelf.assumed.filter((sentence) => {
    const meant = shelf.planes.filter(isAbout(sentence));
    return meant.length === 0 || meant.some(bears);
  });
}
