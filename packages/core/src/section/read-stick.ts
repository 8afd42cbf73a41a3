/** The stick in a drawing that does not name it: the rectangle that the section's outline fills down to its back. */
import { DRAWING_NOISE_MM } from "../measure/index.ts";
import type { DrawnCurve } from "./read-curves.ts";

interface Box {
  readonly minX: number;
  readonly minY: number;
  readonly maxX: number;
  readonly maxY: number;
}

/**
 * Of two closed outlines (millimetres, y up), the one that is the section and the one that is its stick: a rectangle
 * square to the page whose back and whose one edge at least the section shares, and which holds all of it. Null where
 * neither is the other's stick, or each could be. A border around the page shares no edge, and is none.
 */
export function sectionAndStick<Outline>(
  outlines: readonly [Outline, Outline],
  curvesOf: (outline: Outline) => readonly DrawnCurve[],
): { readonly section: Outline; readonly stick: Outline } | null {
  const [one, other] = outlines;
  const isOne = isStickOf(curvesOf(one), curvesOf(other));
  const isOther = isStickOf(curvesOf(other), curvesOf(one));
  if (isOne === isOther) return null;
  return isOne ? { section: other, stick: one } : { section: one, stick: other };
}

function isStickOf(stick: readonly DrawnCurve[], section: readonly DrawnCurve[]): boolean {
  const box = rectangleOf(stick);
  if (box === null || section.length === 0) return false;
  const inner = boxOf(section);
  const isInside =
    inner.minX >= box.minX - DRAWING_NOISE_MM &&
    inner.maxX <= box.maxX + DRAWING_NOISE_MM &&
    inner.minY >= box.minY - DRAWING_NOISE_MM &&
    inner.maxY <= box.maxY + DRAWING_NOISE_MM;
  const isOnBack = Math.abs(inner.minY - box.minY) <= DRAWING_NOISE_MM;
  const isOnEdge =
    Math.abs(inner.minX - box.minX) <= DRAWING_NOISE_MM ||
    Math.abs(inner.maxX - box.maxX) <= DRAWING_NOISE_MM;
  return isInside && isOnBack && isOnEdge;
}

/** The box of an outline that is nothing but that box. */
function rectangleOf(curves: readonly DrawnCurve[]): Box | null {
  if (curves.length < 3) return null;
  const isSquare = curves.every(
    ({ kind, from, to }) =>
      kind === "line" &&
      (Math.abs(from.x - to.x) <= DRAWING_NOISE_MM || Math.abs(from.y - to.y) <= DRAWING_NOISE_MM),
  );
  if (!isSquare) return null;
  const box = boxOf(curves);
  const doubledMm2 = curves.reduce((sum, { from, to }) => sum + from.x * to.y - to.x * from.y, 0);
  const boxMm2 = (box.maxX - box.minX) * (box.maxY - box.minY);
  const slackMm2 = DRAWING_NOISE_MM * (box.maxX - box.minX + box.maxY - box.minY);
  return Math.abs(Math.abs(doubledMm2) / 2 - boxMm2) <= slackMm2 ? box : null;
}

/** By the ends of the curves: enough to see which of two outlines holds the other. */
function boxOf(curves: readonly DrawnCurve[]): Box {
  const ends = curves.flatMap(({ from, to }) => [from, to]);
  return {
    minX: Math.min(...ends.map(({ x }) => x)),
    minY: Math.min(...ends.map(({ y }) => y)),
    maxX: Math.max(...ends.map(({ x }) => x)),
    maxY: Math.max(...ends.map(({ y }) => y)),
  };
}
