/**
 * The stick after some cuts of a plan, as they were meant or as they were measured on a test piece: what the rest is
 * planned anew from.
 */
import {
  areaMm2,
  chainFromVertices,
  difference,
  intersection,
  type Region,
  type Ring,
  regionOf,
  ringFromVertices,
  ringsOf,
} from "../curve/index.ts";
import {
  curveBook,
  cutAway,
  cutShape,
  deepestFrom,
  type Plan,
  type Pose,
  sawnAway,
  sweepReachMm,
  turnOf,
} from "../cutting/index.ts";
import { FLATTEN_MM, OVERCUT_MM } from "../measure/index.ts";
import { type Plane, type Shelf, soleOf } from "../shelf/index.ts";
import { sourced } from "./bench.ts";
import { tidy } from "./draft-cut.ts";

/** What came out differently from the plan. */
export interface Measured {
  /** Widths and radii as the planes really cut, by the plane's id on the shelf, mm. */
  readonly planes?: Readonly<Record<string, { readonly widthMm?: number; readonly radiusMm?: number }>>;
  /** How far cuts came out from their places, by number: across (away from the gauge edge) and deeper, mm. */
  readonly cuts?: Readonly<Record<string, { readonly acrossMm?: number; readonly deeperMm?: number }>>;
}

export interface StartedStick {
  /** The wood that stands, in the stick's frame: outer outline first. */
  readonly wood: readonly Ring[];
  /** The shelf with the planes as measured: the rest is planned with what they really are. */
  readonly shelf: Shelf;
}

/** The shelf with measured sizes in place of the written ones. */
export function measuredShelf(shelf: Shelf, measured: Measured): Shelf {
  return { ...shelf, planes: shelf.planes.map((plane) => measuredPlane(plane, measured)) };
}

function measuredPlane(plane: Plane, measured: Measured): Plane {
  const found = measured.planes?.[plane.id];
  if (!found) return plane;
  const widthMm = found.widthMm;
  switch (plane.kind) {
    case "hollow":
    case "round":
      return {
        ...plane,
        ...(widthMm === undefined ? {} : { widthMm }),
        ...(found.radiusMm === undefined ? {} : { radiusMm: found.radiusMm }),
      };
    case "plough":
    case "shaped":
      return plane;
    default:
      return widthMm === undefined ? plane : { ...plane, widthMm };
  }
}

/** The stick after the first `after` cuts of a plan, each made where and with what it was measured to have been. */
export function standingAfter(
  plan: Plan,
  shelf: Shelf,
  after: number,
  measured: Measured = {},
): StartedStick {
  const stick = ringFromVertices(plan.stick);
  const book = curveBook();
  const options = { reachMm: sweepReachMm(stick), chordTolMm: FLATTEN_MM, book };
  const real = measuredShelf(shelf, measured);
  let wood: Region = regionOf(stick, FLATTEN_MM);
  for (const cut of plan.cuts.slice(0, after)) {
    if (cut.line) {
      const [[ax, ay], [bx, by]] = cut.line;
      wood = cutAway(wood, sawnAway({ x: ax, y: ay }, { x: bx, y: by }, options.reachMm));
      continue;
    }
    const off = measured.cuts?.[String(cut.number)] ?? {};
    const runs = (cut.runs ?? []).map((run) =>
      run.map((pose) => moved(pose, off.acrossMm ?? 0, off.deeperMm ?? 0)),
    );
    const plane = real.planes.find((p) => p.id === cut.plane.id);
    const asMeasured = plane && measured.planes?.[plane.id] ? soleOf(plane).chain : null;
    const sole = asMeasured ?? chainFromVertices(cut.sole ?? []);
    wood = cutAway(wood, cutShape(sole, runs, cut.cant, options).sweep);
  }
  return { wood: ringsOf(wood, book.circles, FLATTEN_MM * 2), shelf: real };
}

/** What can still be had of a wanted section from wood that may have lost some of it: the part that is in both. */
export function stillThere(planned: Ring, wood: readonly Ring[]): Ring {
  const book = curveBook();
  const wanted = regionOf(sourced(planned, book), FLATTEN_MM);
  const standing = regionOf(
    wood.map((ring) => sourced(ring, book)),
    FLATTEN_MM,
  );
  // A scratch right across a face is a small area and yet none of it can be put back: what counts is how deep it is.
  if (deepestFrom(planned, difference(wanted, standing), OVERCUT_MM).depthMm <= OVERCUT_MM) return planned;
  const rings = ringsOf(intersection(wanted, standing), book.circles, FLATTEN_MM * 2);
  return rings.reduce((a, b) => (areaMm2(b) > areaMm2(a) ? b : a), rings[0] ?? planned);
}

function moved(pose: Pose, acrossMm: number, deeperMm: number): Pose {
  const turn = turnOf(pose[2]);
  return [tidy(pose[0] + acrossMm + turn.sin * deeperMm), tidy(pose[1] - turn.cos * deeperMm), pose[2]];
}
