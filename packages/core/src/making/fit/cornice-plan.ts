/** The run of walls from above: where it goes, whether it closes, and its drawing. */
import { type Point, point } from "../../curve/index.ts";
import { toRad } from "../../measure/index.ts";
import type { RunCorner } from "./cornice-types.ts";
import type { DrawnAngle, DrawnShape, FitDrawing } from "./types.ts";

interface Turned {
  readonly at: Point;
  readonly headingDeg: number;
}

/** Where each wall begins and which way it runs; the room or the eye is on its right-hand side (seen from above). */
function walk(wallsMm: readonly number[], corners: readonly RunCorner[]): readonly Turned[] {
  const places: Turned[] = [{ at: point(0, 0), headingDeg: 0 }];
  for (const [index, lengthMm] of wallsMm.entries()) {
    const { at, headingDeg } = places[index] as Turned;
    const next = aside(at, lengthMm, headingDeg);
    places.push({ at: next, headingDeg: headingDeg + turnDeg(corners[index]) });
  }
  return places;
}

/** Inside corners turn the wall towards the eye, outside ones away from it. */
function turnDeg(corner: RunCorner | undefined): number {
  if (corner === undefined) return 0;
  const turn = 180 - corner.corner.cornerDeg;
  return corner.corner.kind === "inside" ? -turn : turn;
}

/** By how much the end of a closed run misses its start, mm. A run whose corners do not turn once round misses it too, when followed once more. */
export function closingGapMm(wallsMm: readonly number[], corners: readonly RunCorner[]): number {
  const { at, headingDeg } = walk(wallsMm, corners).at(-1) as Turned;
  const offDeg = Math.abs(Math.abs(headingDeg) - 360);
  const longestMm = Math.max(...wallsMm);
  return Math.max(Math.hypot(at.x, at.y), longestMm * Math.min(1, toRad(offDeg)));
}

/** Walls, the front of the moulding, mitres and corners, from above. */
export function corniceDrawing(
  wallsMm: readonly number[],
  corners: readonly RunCorner[],
  projectionMm: number,
): FitDrawing {
  const places = walk(wallsMm, corners);
  const isClosed = corners.length === wallsMm.length;
  const corner = (index: number) => corners[isClosed ? (index + corners.length) % corners.length : index];
  const front: DrawnShape[] = wallsMm.map((lengthMm, wall) => {
    const { at, headingDeg } = places[wall] as Turned;
    const past = (one: RunCorner | undefined) => {
      if (one === undefined) return 0;
      const ratio = projectionMm / Math.tan(toRad(one.corner.cornerDeg / 2));
      return one.corner.kind === "inside" ? -ratio : ratio;
    };
    const outFrom = (along: number) => aside(aside(at, along, headingDeg), projectionMm, headingDeg - 90);
    return {
      kind: "stick",
      name: `piece on wall ${wall + 1}`,
      run: "closed",
      points: [
        at,
        aside(at, lengthMm, headingDeg),
        outFrom(lengthMm + past(corner(wall))),
        outFrom(-past(wall === 0 && !isClosed ? undefined : corner(wall - 1))),
      ],
    };
  });
  const angles = corners.map((one, index): DrawnAngle => {
    const { at } = places[index + 1] as Turned;
    const before = places[index] as Turned;
    const isInside = one.corner.kind === "inside";
    return {
      name: `${one.corner.kind} corner ${index + 1}`,
      at,
      radiusMm: projectionMm * 2,
      fromDeg: before.headingDeg + 180,
      sweepDeg: isInside ? one.corner.cornerDeg : -one.corner.cornerDeg,
      valueDeg: one.corner.cornerDeg,
    };
  });
  return {
    views: [
      {
        title: "the run from above",
        shapes: [
          {
            kind: "wall",
            name: "walls",
            run: isClosed ? "closed" : "open",
            points: places.map(({ at }) => at),
          },
          ...front,
        ],
        angles,
        places: wallsMm.map((lengthMm, wall) => {
          const { at, headingDeg } = places[wall] as Turned;
          return { name: `wall ${wall + 1}`, at: aside(at, lengthMm / 2, headingDeg) };
        }),
      },
    ],
  };
}

function aside(from: Point, distanceMm: number, directionDeg: number): Point {
  const directionRad = toRad(directionDeg);
  return point(from.x + distanceMm * Math.cos(directionRad), from.y + distanceMm * Math.sin(directionRad));
}
