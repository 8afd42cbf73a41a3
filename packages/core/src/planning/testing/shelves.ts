/** Shelves that the tests of this folder plan with: the harbour joiner's whole one, and small ones made by hand. */
import { INCH_MM } from "../../measure/index.ts";
import type { CurvedPlane, FlatPlane, Plane, Plough, Shelf, SnipeBill } from "../../shelf/index.ts";

/** A shelf of exactly these planes. */
export function shelfOf(...planes: readonly Plane[]): Shelf {
  return { planes, assumed: [] };
}

/** Carries 60° unless a width is given: width and radius are one length. */
export function hollow(radiusMm: number, widthMm = radiusMm): CurvedPlane {
  const id = `hollow-${radiusMm}-${widthMm}`;
  return { id, name: `${radiusMm} mm hollow`, kind: "hollow", radiusMm, widthMm };
}

/** Carries 60° unless a width is given. */
export function round(radiusMm: number, widthMm = radiusMm): CurvedPlane {
  const id = `round-${radiusMm}-${widthMm}`;
  return { id, name: `${radiusMm} mm round`, kind: "round", radiusMm, widthMm };
}

export function rebate(widthMm: number): FlatPlane {
  return { id: `rebate-${widthMm}`, name: `${widthMm} mm rebate plane`, kind: "rebate", widthMm };
}

export function smoother(widthMm: number): FlatPlane {
  return { id: `smoother-${widthMm}`, name: `${widthMm} mm smoother`, kind: "smoother", widthMm };
}

export function plough(...widthsMm: readonly number[]): Plough {
  return { id: "plough", name: "Plough", kind: "plough", widthsMm, fenceMm: 100, depthMm: 20 };
}

/** The default beak: 6 mm wide, nose 0.4 mm, slope 60°, reach 5 mm. */
export function snipeBill(hand: "left" | "right"): SnipeBill {
  const name = `${hand === "left" ? "Left" : "Right"}-hand snipe bill`;
  return {
    id: `snipe-${hand}`,
    name,
    kind: "snipe bill",
    hand,
    widthMm: 6,
    noseMm: 0.4,
    slopeDeg: 60,
    reachMm: 5,
  };
}

export const SNIPE_BILLS: readonly Plane[] = [snipeBill("left"), snipeBill("right")];

/** Radii of the pairs on the joiner's shelf, sixteenths of an inch: by sixteenths when small, wider when large. */
const PAIRS_IN_SIXTEENTHS: readonly number[] = [2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 14, 16, 18, 20, 24];

/** A joiner's whole shelf in inches: sixteen pairs of hollows and rounds, both snipe bills, flat planes, plough. */
export const WHOLE_SHELF: Shelf = shelfOf(
  ...PAIRS_IN_SIXTEENTHS.flatMap((sixteenths) => {
    const radiusMm = (sixteenths * INCH_MM) / 16;
    return [hollow(radiusMm), round(radiusMm)];
  }),
  ...SNIPE_BILLS,
  rebate(6),
  rebate(12),
  rebate(18),
  rebate(32),
  smoother(50),
  plough(3, 6, 9, 12),
);

/** The same shelf without its snipe bills. */
export const WITHOUT_SNIPE_BILLS: Shelf = shelfOf(
  ...WHOLE_SHELF.planes.filter((plane) => plane.kind !== "snipe bill"),
);
