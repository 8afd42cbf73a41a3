/** Planes and shelves as they are written: the file form in mm, with every default filled in. */
import { verticesOf } from "../curve/index.ts";
import type { ShelfFile } from "./file-schema.ts";
import { SHELF_FORMAT, SHELF_VERSION } from "./shelf-format.ts";
import type { Plane, Shelf } from "./types.ts";

/** A plane as it stands in a shelf file or in a plan's cut, lengths in mm. */
export type ShelfEntry = Readonly<Record<string, unknown>> & {
  readonly id: string;
  readonly kind: Plane["kind"];
  readonly name: string;
};

/** The entry of a plane. Numbers are not rounded, so that reading it back gives the same plane. */
export function planeEntry(plane: Plane): ShelfEntry {
  const { id, name, kind } = plane;
  return { id, name, kind, ...sizesOf(plane) };
}

/**
 * The shelf as a file, in mm. Reading it back gives equal planes; `assumed` comes back empty, since what was
 * assumed now stands in the file as sizes, so whoever writes it keeps those sentences beside it.
 */
export function shelfFile(shelf: Shelf): ShelfFile {
  // The entries are the schema's own form, key for key; the property test in shelf.prop.test.ts holds that.
  const planes = shelf.planes.map(keptEntry) as unknown as ShelfFile["planes"];
  return { format: SHELF_FORMAT, version: SHELF_VERSION, unit: "mm", planes };
}

/** As it is kept on a shelf, with its note: a plan's cuts have no use for that. */
function keptEntry(plane: Plane): ShelfEntry {
  return plane.note === undefined ? planeEntry(plane) : { ...planeEntry(plane), note: plane.note };
}

function sizesOf(plane: Plane): Readonly<Record<string, unknown>> {
  switch (plane.kind) {
    case "hollow":
    case "round":
      return given({
        radius: plane.radiusMm,
        width: plane.widthMm,
        pitch: plane.pitchDeg,
        skew: plane.skewDeg,
        shoulder: plane.shoulder && { width: plane.shoulder.widthMm, height: plane.shoulder.heightMm },
        wall: plane.wallMm,
      });
    case "snipe bill":
      return {
        hand: plane.hand,
        width: plane.widthMm,
        nose: plane.noseMm,
        slope: plane.slopeDeg,
        reach: plane.reachMm,
      };
    case "rebate":
    case "smoother":
      return { width: plane.widthMm };
    case "moving fillister":
      return { width: plane.widthMm, fence: plane.fenceMm, depth: plane.depthMm };
    case "plough":
      return { widths: [...plane.widthsMm], fence: plane.fenceMm, depth: plane.depthMm };
    case "side round":
    case "side snipe":
    case "side rebate":
      return given({ hand: plane.hand, width: plane.widthMm, radius: plane.radiusMm });
    case "bead":
      return given({ width: plane.widthMm, quirk: plane.quirkMm, hand: plane.hand });
    case "shaped":
      return { sole: verticesOf(plane.sole), cutsWall: plane.cutsWall };
  }
}

/** The keys that have a value. */
function given(keys: Readonly<Record<string, unknown>>): Readonly<Record<string, unknown>> {
  return Object.fromEntries(Object.entries(keys).filter(([, value]) => value !== undefined));
}
