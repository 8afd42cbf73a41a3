/** Random shelves: a few planes of the full one, planes of odd radii, all but one kind, none of the helpers. */

import { readFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import fc from "fast-check";
import { readShelf, type Shelf } from "../../packages/core/src/shelf/index.ts";

/** A shelf file's plane, as far as these tests change it. */
export type PlaneEntry = Readonly<Record<string, unknown>> & { readonly id: string; readonly kind: string };

const FULL_FILE = join(
  dirname(fileURLToPath(import.meta.url)),
  "..",
  "..",
  "examples",
  "shelves",
  "full.json",
);
const FULL: readonly PlaneEntry[] = (JSON.parse(readFileSync(FULL_FILE, "utf8")) as { planes: PlaneEntry[] })
  .planes;

const CURVED = FULL.filter(({ kind }) => kind === "hollow" || kind === "round");
const HELPERS = FULL.filter(({ kind }) => kind !== "hollow" && kind !== "round");

const oddPlanes: fc.Arbitrary<readonly PlaneEntry[]> = fc.array(
  fc
    .tuple(
      fc.constantFrom("hollow", "round"),
      fc.double({ min: 2, max: 30, noNaN: true }),
      fc.double({ min: 0.7, max: 1.3, noNaN: true }),
    )
    .map(([kind, radiusMm, share]): PlaneEntry => {
      const radius = Math.round(radiusMm * 100) / 100;
      const width = Math.round(radius * share * 100) / 100;
      return { id: `${kind}-${radius}-${width}`, kind, radius: `${radius} mm`, width: `${width} mm` };
    }),
  { minLength: 1, maxLength: 6 },
);

const withoutKind = fc
  .constantFrom("hollow", "round", "snipe bill", "rebate", "plough", "moving fillister")
  .map((kind) => FULL.filter((plane) => plane.kind !== kind && sizeOf(plane) % 2 === 0));

/** A number that splits the curved planes in two halves of all sizes, so that the search does not try all 40. */
function sizeOf(plane: PlaneEntry): number {
  return CURVED.indexOf(plane) < 0 ? 0 : Math.floor(CURVED.indexOf(plane) / 2);
}

export const anyPlanes: fc.Arbitrary<readonly PlaneEntry[]> = fc.oneof<fc.Arbitrary<readonly PlaneEntry[]>[]>(
  fc
    .tuple(
      fc.subarray([...CURVED], { minLength: 2, maxLength: 14 }),
      fc.subarray([...HELPERS], { minLength: 3 }),
    )
    .map(([curved, helpers]) => [...curved, ...helpers]),
  fc.subarray([...FULL], { minLength: 1, maxLength: 8 }),
  fc
    .tuple(oddPlanes, fc.subarray([...HELPERS], { minLength: 2 }))
    .map(([odd, helpers]) => [...new Map([...odd, ...helpers].map((plane) => [plane.id, plane])).values()]),
  withoutKind,
);

/** Names are given, so that they do not follow from the hand, which a mirror changes. */
export function shelfOf(planes: readonly PlaneEntry[]): Shelf {
  const named = planes.map((plane) => ({ name: plane.id, ...plane }));
  const read = readShelf({ format: "mouldwright/shelf", version: 1, unit: "in", planes: named });
  if (!read.ok) throw new Error(JSON.stringify(read.trouble));
  return read.value;
}

/** The same planes with the other hands. */
export function otherHands(planes: readonly PlaneEntry[]): readonly PlaneEntry[] {
  return planes.map((plane) =>
    plane.hand === undefined ? plane : { ...plane, hand: plane.hand === "left" ? "right" : "left" },
  );
}
