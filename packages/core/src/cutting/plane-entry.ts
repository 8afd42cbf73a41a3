/** A plane read back from a plan's own entry, as far as the cutting model asks about it. */
import type { Chain } from "../curve/index.ts";
import { extentsOf } from "../curve/index.ts";
import type { Plane } from "../shelf/index.ts";
import type { PlaneEntry } from "./types.ts";

const FLAT_KINDS: ReadonlySet<string> = new Set(["rebate", "moving fillister", "smoother", "plough"]);

export function isFlatKind(kind: string): boolean {
  return FLAT_KINDS.has(kind);
}

/** The parts of a plane that walls and seats depend on; sizes it does not know it takes from the sole. */
export function planeOfEntry(entry: PlaneEntry, sole: Chain): Plane {
  const { minX, maxX } = extentsOf(sole);
  const number = (key: string, otherwise: number): number => {
    const value = entry[key];
    return typeof value === "number" && Number.isFinite(value) ? value : otherwise;
  };
  const base = { id: entry.id, name: entry.name ?? entry.id };
  const widthMm = number("width", maxX - minX);
  const hand = entry.hand === "right" ? "right" : "left";
  switch (entry.kind) {
    case "hollow":
    case "round": {
      const curved = { ...base, kind: entry.kind, radiusMm: number("radius", widthMm), widthMm } as const;
      return typeof entry.wall === "number" ? { ...curved, wallMm: entry.wall } : curved;
    }
    case "snipe bill":
      return {
        ...base,
        kind: "snipe bill",
        hand,
        widthMm,
        noseMm: number("nose", 0.4),
        slopeDeg: number("slope", 60),
        reachMm: number("reach", 5),
      };
    case "side round":
    case "side snipe":
    case "side rebate":
      return { ...base, kind: entry.kind, hand, widthMm };
    case "bead":
      return { ...base, kind: "bead", widthMm, quirkMm: number("quirk", 0) };
    case "plough":
      return {
        ...base,
        kind: "plough",
        widthsMm: [widthMm],
        fenceMm: number("fence", 0),
        depthMm: number("depth", 0),
      };
    case "moving fillister":
      return {
        ...base,
        kind: "moving fillister",
        widthMm,
        fenceMm: number("fence", 0),
        depthMm: number("depth", 0),
      };
    case "smoother":
      return { ...base, kind: "smoother", widthMm };
    case "shaped": {
      const cuts = entry.cutsWall;
      const cutsWall = cuts === "left" || cuts === "right" || cuts === "both" ? cuts : "none";
      return { ...base, kind: "shaped", sole, cutsWall };
    }
    default:
      return { ...base, kind: "rebate", widthMm };
  }
}
