/** What makes a frame impossible before anything is computed. */
import { intersect, line, type Point, samePoint } from "../../curve/index.ts";
import { cataloguedTrouble, SAME_POINT_DEG, SAME_POINT_MM, toDeg } from "../../measure/index.ts";
import { firstTrouble, LARGEST_ACROSS_MM, LONGEST_MM, sizeTrouble } from "./checks.ts";
import { LEAST_CORNER_DEG, MOST_CORNER_DEG } from "./corner.ts";
import type { FrameShape } from "./frame-types.ts";
import type { FitTrouble } from "./types.ts";

export interface FrameChecked {
  readonly shape: FrameShape;
  readonly corners: readonly Point[];
  readonly widths: readonly number[];
  readonly rebateMm: number;
  readonly allowanceMm: number;
}

const MOST_CORNERS = 72;

/** The first thing that is wrong with a frame's figures, or null. */
export function frameTroubles(asked: FrameChecked): FitTrouble | null {
  const { shape, corners, widths, rebateMm, allowanceMm } = asked;
  return (
    shapeTrouble(shape) ??
    cornersTrouble(corners) ??
    (widths.length === corners.length
      ? null
      : cataloguedTrouble("frame-widths", "width", { given: widths.length, sides: corners.length })) ??
    firstTrouble(
      widths.map((widthMm) =>
        sizeTrouble("width of the moulding", "width", widthMm, {
          mostMm: LARGEST_ACROSS_MM,
          zero: "refused",
        }),
      ),
    ) ??
    sizeTrouble("rebate", "rebate", rebateMm, { mostMm: LARGEST_ACROSS_MM, zero: "allowed" }) ??
    sizeTrouble("allowance", "allowance", allowanceMm, { mostMm: LARGEST_ACROSS_MM, zero: "allowed" }) ??
    rebateTrouble(asked)
  );
}

function shapeTrouble(shape: FrameShape): FitTrouble | null {
  const limits = { mostMm: LONGEST_MM, zero: "refused" } as const;
  if (shape.kind === "rectangle") {
    return firstTrouble([
      sizeTrouble("size across", "across", shape.acrossMm, limits),
      sizeTrouble("size up", "up", shape.upMm, limits),
    ]);
  }
  if (shape.kind === "regular") {
    if (!Number.isInteger(shape.sides) || shape.sides < 3 || shape.sides > MOST_CORNERS) {
      return cataloguedTrouble("polygon-sides", "sides", {
        sides: shape.sides,
        fewest: 3,
        most: MOST_CORNERS,
      });
    }
    return sizeTrouble("length of a side", "side", shape.sideMm, limits);
  }
  const count = shape.corners.length;
  if (count < 3 || count > MOST_CORNERS) {
    return cataloguedTrouble("polygon-sides", "corners", { sides: count, fewest: 3, most: MOST_CORNERS });
  }
  const wild = shape.corners.findIndex(
    ({ x, y }) => !(Math.abs(x) <= LONGEST_MM) || !(Math.abs(y) <= LONGEST_MM),
  );
  return wild < 0 ? null : cataloguedTrouble("frame-corner-place", "corners", { corner: wild + 1 });
}

function cornersTrouble(corners: readonly Point[]): FitTrouble | null {
  const total = corners.length;
  for (const [index, at] of corners.entries()) {
    const before = corners[(index + total - 1) % total] as Point;
    const after = corners[(index + 1) % total] as Point;
    if (samePoint(at, after))
      return cataloguedTrouble("frame-corner-place", "corners", { corner: index + 1 });
    const toAfter = { x: after.x - at.x, y: after.y - at.y };
    const toBefore = { x: before.x - at.x, y: before.y - at.y };
    const cornerDeg = Math.abs(
      toDeg(
        Math.atan2(
          toAfter.x * toBefore.y - toAfter.y * toBefore.x,
          toAfter.x * toBefore.x + toAfter.y * toBefore.y,
        ),
      ),
    );
    // Corners are computed here, so a limit met exactly comes out a last digit to either side of it.
    if (cornerDeg < LEAST_CORNER_DEG - SAME_POINT_DEG || cornerDeg > MOST_CORNER_DEG + SAME_POINT_DEG) {
      const facts = { corner: index + 1, cornerDeg, leastDeg: LEAST_CORNER_DEG, mostDeg: MOST_CORNER_DEG };
      return cataloguedTrouble("frame-corner-angle", "corners", facts);
    }
  }
  return sidesCross(corners) ? cataloguedTrouble("frame-crosses-itself", "corners", {}) : null;
}

/** Do two sides that are no neighbours touch or cross? Every pair is looked at: frames have few sides. */
export function sidesCross(corners: readonly Point[]): boolean {
  const sides = corners.map((from, index) => line(from, corners[(index + 1) % corners.length] as Point));
  return sides.some((side, index) =>
    sides
      .slice(index + 2, index === 0 ? sides.length - 1 : sides.length)
      .some((other) => intersect(side, other, SAME_POINT_MM).kind !== "none"),
  );
}

function rebateTrouble({ widths, rebateMm, allowanceMm }: FrameChecked): FitTrouble | null {
  const narrowestMm = Math.min(...widths);
  if (rebateMm >= narrowestMm) {
    return cataloguedTrouble("frame-rebate-too-wide", "rebate", { rebateMm, widthMm: narrowestMm });
  }
  // Without a rebate nothing holds the glass, and the allowance is only room round a picture.
  if (rebateMm > 0 && allowanceMm >= 2 * rebateMm) {
    return cataloguedTrouble("frame-glass-falls-through", "allowance", { rebateMm, allowanceMm });
  }
  return null;
}
