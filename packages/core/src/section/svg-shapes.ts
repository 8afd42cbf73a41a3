/** The closed shapes of SVG besides paths, as runs of drawn curves in their own units, y down. */
import type { Point } from "../curve/index.ts";
import { type DrawnCurve, drawnCircle } from "./read-curves.ts";
import { PIXEL_MM, readLength, readNumberList } from "./svg-attributes.ts";

/** Attributes of one element. */
export type Attributes = Readonly<Record<string, string>>;

/** The shape's outline; [] where it draws nothing, null where an attribute cannot be read. */
export function shapeCurves(name: string, attributes: Attributes): DrawnCurve[] | null {
  switch (name) {
    case "rect":
      return rectCurves(attributes);
    case "circle": {
      const [cx, cy, r] = userLengths(attributes, ["cx", "cy", "r"]);
      if (cx === undefined || cy === undefined || r === undefined) return null;
      return r > 0 ? [drawnCircle({ x: cx, y: cy }, r)] : [];
    }
    case "ellipse": {
      const [cx, cy, rx, ry] = userLengths(attributes, ["cx", "cy", "rx", "ry"]);
      if (cx === undefined || cy === undefined || rx === undefined || ry === undefined) return null;
      if (rx <= 0 || ry <= 0) return [];
      return [{ ...drawnCircle({ x: cx, y: cy }, rx), v: { x: 0, y: ry } }];
    }
    case "polygon":
    case "polyline": {
      const numbers = readNumberList(attributes.points ?? "");
      if (numbers === null || numbers.length % 2 === 1) return null;
      const points: Point[] = [];
      for (let i = 0; i < numbers.length; i += 2) points.push({ x: numbers[i]!, y: numbers[i + 1]! });
      if (points.length < 2) return [];
      const curves = points.slice(1).map((to, i): DrawnCurve => ({ kind: "line", from: points[i]!, to }));
      if (name === "polygon") curves.push({ kind: "line", from: points[points.length - 1]!, to: points[0]! });
      return curves;
    }
    default:
      return [];
  }
}

function rectCurves(attributes: Attributes): DrawnCurve[] | null {
  const [x, y, width, height] = userLengths(attributes, ["x", "y", "width", "height"]);
  if (x === undefined || y === undefined || width === undefined || height === undefined) return null;
  if (width <= 0 || height <= 0) return [];
  const radii = cornerRadii(attributes, width, height);
  if (radii === null) return null;
  const { rx, ry } = radii;
  const right = x + width;
  const bottom = y + height;
  const corners: readonly { from: Point; to: Point; centre: Point; startRad: number }[] = [
    corner(right - rx, y + ry, 0, -1, 1, 0),
    corner(right - rx, bottom - ry, 1, 0, 0, 1),
    corner(x + rx, bottom - ry, 0, 1, -1, 0),
    corner(x + rx, y + ry, -1, 0, 0, -1),
  ];
  function corner(cx: number, cy: number, fromX: number, fromY: number, toX: number, toY: number) {
    return {
      from: { x: cx + fromX * rx, y: cy + fromY * ry },
      to: { x: cx + toX * rx, y: cy + toY * ry },
      centre: { x: cx, y: cy },
      startRad: Math.atan2(fromY, fromX),
    };
  }
  const curves: DrawnCurve[] = [];
  corners.forEach((here, i) => {
    const before = corners[(i + 3) % 4]!;
    curves.push({ kind: "line", from: before.to, to: here.from });
    if (rx > 0) {
      const { from, to, centre, startRad } = here;
      const quarter = { startRad, sweepRad: Math.PI / 2, u: { x: rx, y: 0 }, v: { x: 0, y: ry } };
      curves.push({ kind: "ellipse", from, to, centre, ...quarter });
    }
  });
  return curves;
}

/** A missing one of rx and ry takes the other's value; neither passes half the side. Source: SVG 1.1, section 9.2. */
function cornerRadii(
  attributes: Attributes,
  width: number,
  height: number,
): { rx: number; ry: number } | null {
  const given = (name: string): number | null | undefined => {
    const text = attributes[name];
    return text === undefined || text.trim() === "auto" ? null : userLength(text);
  };
  const x = given("rx");
  const y = given("ry");
  if (x === undefined || y === undefined) return null;
  const rx = Math.min(Math.max(x ?? y ?? 0, 0), width / 2);
  const ry = Math.min(Math.max(y ?? x ?? 0, 0), height / 2);
  return rx === 0 || ry === 0 ? { rx: 0, ry: 0 } : { rx, ry };
}

/** Lengths in user units (a user unit is a pixel); a missing one is 0, an unreadable one undefined. */
function userLengths(attributes: Attributes, names: readonly string[]): (number | undefined)[] {
  return names.map((name) => userLength(attributes[name] ?? "0"));
}

function userLength(text: string): number | undefined {
  const length = readLength(text);
  if (length === null || length === "relative") return undefined;
  return length.unitMm === null ? length.number : (length.number * length.unitMm) / PIXEL_MM;
}
