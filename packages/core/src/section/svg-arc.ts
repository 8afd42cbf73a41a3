/** The elliptical arc of SVG path data, from its ends to its centre. */
import type { Point } from "../curve/index.ts";
import type { DrawnCurve } from "./read-curves.ts";

export interface SvgArc {
  readonly from: Point;
  readonly to: Point;
  readonly radiusX: number;
  readonly radiusY: number;
  readonly turnDeg: number;
  readonly largeArc: boolean;
  readonly sweepFlag: boolean;
}

/**
 * The arc with its centre, and by how much its longer radius had to grow to reach both ends.
 *
 * Radii too small for the ends grow evenly until they reach; a radius of 0 makes a line; equal ends make nothing (a
 * line of no length here). Source: W3C, Scalable Vector Graphics 1.1 (second edition), appendix F.6.5 and F.6.6.
 */
export function svgArc(arc: SvgArc): { curve: DrawnCurve; grownBy: number } {
  const { from, to } = arc;
  let rx = Math.abs(arc.radiusX);
  let ry = Math.abs(arc.radiusY);
  if (rx === 0 || ry === 0 || (from.x === to.x && from.y === to.y)) {
    return { curve: { kind: "line", from, to }, grownBy: 0 };
  }
  const turnRad = (arc.turnDeg * Math.PI) / 180;
  const cos = Math.cos(turnRad);
  const sin = Math.sin(turnRad);
  // Half the chord, in the ellipse's own frame.
  const halfX = (cos * (from.x - to.x) + sin * (from.y - to.y)) / 2;
  const halfY = (-sin * (from.x - to.x) + cos * (from.y - to.y)) / 2;
  const reach = Math.hypot(halfX / rx, halfY / ry);
  let grownBy = 0;
  if (reach >= 1) {
    grownBy = (reach - 1) * Math.max(rx, ry);
    rx *= reach;
    ry *= reach;
  }
  // On the unit circle: the centre lies square to the chord, at sqrt(1/reach² - 1) half chords from its middle.
  const off = reach >= 1 ? 0 : Math.sqrt((1 - reach) * (1 + reach)) / reach;
  const side = arc.largeArc === arc.sweepFlag ? -1 : 1;
  const ownX = (side * off * rx * halfY) / ry;
  const ownY = (-side * off * ry * halfX) / rx;
  const centre = {
    x: cos * ownX - sin * ownY + (from.x + to.x) / 2,
    y: sin * ownX + cos * ownY + (from.y + to.y) / 2,
  };
  const startRad = Math.atan2((halfY - ownY) / ry, (halfX - ownX) / rx);
  const endRad = Math.atan2((-halfY - ownY) / ry, (-halfX - ownX) / rx);
  let sweepRad = endRad - startRad;
  if (arc.sweepFlag && sweepRad < 0) sweepRad += 2 * Math.PI;
  if (!arc.sweepFlag && sweepRad > 0) sweepRad -= 2 * Math.PI;
  const curve: DrawnCurve = {
    kind: "ellipse",
    from,
    to,
    centre,
    u: { x: rx * cos, y: rx * sin },
    v: { x: -ry * sin, y: ry * cos },
    startRad,
    sweepRad,
  };
  return { curve, grownBy };
}
