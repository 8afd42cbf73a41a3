/** From a drawing's millimetres to the points of a PDF page: moves, turns, scales and stretches, and arcs as curves. */
import { toRad } from "mouldwright/measure";
import type { Group, PaperPoint, Path, Stretch } from "mouldwright/sheets";

/** PDF counts in points of 1/72 in. */
export const POINTS_PER_MM = 72 / 25.4;

/** x' = a x + c y + e, y' = b x + d y + f; both frames have y down, angles are as seen. */
export interface Placing {
  readonly a: number;
  readonly b: number;
  readonly c: number;
  readonly d: number;
  readonly e: number;
  readonly f: number;
}

/** The page's own frame: millimetres to points, stretched where a printer is corrected. */
export function pagePlacing({ acrossRatio, upRatio }: Stretch): Placing {
  return { a: POINTS_PER_MM * acrossRatio, b: 0, c: 0, d: POINTS_PER_MM * upRatio, e: 0, f: 0 };
}

/** The frame inside a group. */
export function groupPlacing(outer: Placing, { moveMm, turnDeg, scaleRatio }: Group): Placing {
  const cos = Math.cos(toRad(turnDeg)) * scaleRatio;
  const sin = Math.sin(toRad(turnDeg)) * scaleRatio;
  // Anticlockwise as seen, where y runs down: x' = x cos + y sin, y' = -x sin + y cos.
  return within(outer, { a: cos, b: -sin, c: sin, d: cos, e: moveMm[0], f: moveMm[1] });
}

function within(outer: Placing, inner: Placing): Placing {
  return {
    a: outer.a * inner.a + outer.c * inner.b,
    b: outer.b * inner.a + outer.d * inner.b,
    c: outer.a * inner.c + outer.c * inner.d,
    d: outer.b * inner.c + outer.d * inner.d,
    e: outer.a * inner.e + outer.c * inner.f + outer.e,
    f: outer.b * inner.e + outer.d * inner.f + outer.f,
  };
}

export function placed({ a, b, c, d, e, f }: Placing, [x, y]: PaperPoint): PaperPoint {
  return [a * x + c * y + e, b * x + d * y + f];
}

/** Points for one millimetre of line width or lettering: the mean of both directions. */
export function sizeRatio({ a, b, c, d }: Placing): number {
  return Math.sqrt(Math.abs(a * d - b * c));
}

/** One piece of a path on its way to the page. */
export type Stretched =
  | { readonly kind: "line"; readonly to: PaperPoint }
  | { readonly kind: "curve"; readonly by: readonly [PaperPoint, PaperPoint]; readonly to: PaperPoint };

/**
 * Most of an arc that one curve stands for, degrees: its error is then below 3 parts in a hundred million of the
 * radius. A whole quarter in one curve would be out by 0.014 mm at a radius of 50 mm.
 */
const MOST_CURVE_DEG = 22.5;

/** The steps of a path in millimetres, arcs as Bézier curves. */
export function stepsOf(path: Path): readonly Stretched[] {
  const pieces: Stretched[] = [];
  let from = path.start;
  for (const { to, bulge = 0 } of path.steps) {
    if (bulge === 0) pieces.push({ kind: "line", to });
    else pieces.push(...curvesOf(from, to, bulge));
    from = to;
  }
  return pieces;
}

/**
 * An arc as Bézier curves. Each handle is 4/3 tan(sweep / 4) of the radius long (the curve then meets the arc at both
 * ends and in the middle); source: elementary, e.g. the Adobe PDF reference's own circles.
 */
function curvesOf(from: PaperPoint, to: PaperPoint, bulge: number): readonly Stretched[] {
  const sweepRad = 4 * Math.atan(bulge);
  const count = Math.max(1, Math.ceil(Math.abs(sweepRad) / toRad(MOST_CURVE_DEG)));
  const chordX = to[0] - from[0];
  const chordY = to[1] - from[1];
  // The centre lies left of an anticlockwise chord; left of (dx, dy) is (dy, -dx) where y runs down.
  const toCentre = (1 - bulge * bulge) / (4 * bulge);
  const centreX = from[0] + chordX / 2 + chordY * toCentre;
  const centreY = from[1] + chordY / 2 - chordX * toCentre;
  const startX = from[0] - centreX;
  const startY = from[1] - centreY;
  const handle = (4 / 3) * Math.tan(sweepRad / count / 4);
  const armAt = (index: number): PaperPoint => {
    const turnedRad = (sweepRad * index) / count;
    const cos = Math.cos(turnedRad);
    const sin = Math.sin(turnedRad);
    return [startX * cos + startY * sin, startY * cos - startX * sin];
  };
  return Array.from({ length: count }, (_, index): Stretched => {
    const a = armAt(index);
    const b = armAt(index + 1);
    // Ahead of a radius (x, y) that turns anticlockwise as seen lies (y, -x).
    const first: PaperPoint = [centreX + a[0] + handle * a[1], centreY + a[1] - handle * a[0]];
    const second: PaperPoint = [centreX + b[0] - handle * b[1], centreY + b[1] + handle * b[0]];
    // The last end is the path's own point, not one computed again.
    const end: PaperPoint = index === count - 1 ? to : [centreX + b[0], centreY + b[1]];
    return { kind: "curve", by: [first, second], to: end };
  });
}
