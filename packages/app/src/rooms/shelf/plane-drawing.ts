/** A plane seen on its end: its sole drawn true, the body above it cut off with a break line. */
import { type Vertex, verticesOf } from "mouldwright/curve";
import {
  colour,
  type Drawing,
  fill,
  type Item,
  openPath,
  type PaperPoint,
  type Path,
  stroke,
} from "mouldwright/sheets";
import { type Plane, type Sole, solesOf } from "mouldwright/shelf";

export interface PlaneDrawingWish {
  /** Millimetres on paper for one of the plane. */
  readonly scaleRatio: number;
  /** Body drawn above the highest point of the sole, mm on paper. */
  readonly bodyMm: number;
  readonly title: string;
}

const MARGIN_MM = 1;
const BREAK_MM = 1.2;
/** Between the irons of a plough, mm on paper. */
const IRON_GAP_MM = 2;

interface Outline {
  readonly vertices: readonly Vertex[];
  readonly leftMm: number;
  readonly rightMm: number;
  readonly lowMm: number;
  readonly highMm: number;
}

/** Soles of a plough stand beside each other, its irons' widths in their order. */
export function planeDrawing(plane: Plane, { scaleRatio, bodyMm, title }: PlaneDrawingWish): Drawing {
  const outlines = solesOf(plane).map((sole) => outlineOf(plane, sole));
  const low = Math.min(...outlines.map(({ lowMm }) => lowMm));
  const high = Math.max(...outlines.map(({ highMm }) => highMm));
  const heightMm = (high - low) * scaleRatio + bodyMm + 2 * MARGIN_MM;
  const items: Item[] = [];
  let x = MARGIN_MM;
  for (const { vertices, leftMm, rightMm } of outlines) {
    const left = x;
    const place = ([across, up]: readonly [number, number, ...unknown[]]): PaperPoint => [
      left + (across - leftMm) * scaleRatio,
      heightMm - MARGIN_MM - (up - low) * scaleRatio,
    ];
    items.push(...bodyItems(plane, vertices, place, { left, right: left + (rightMm - leftMm) * scaleRatio }));
    x = left + (rightMm - leftMm) * scaleRatio + IRON_GAP_MM;
  }
  return { widthMm: x - IRON_GAP_MM + MARGIN_MM, heightMm, title, description: "", items };
}

/** How wide a plane is with all its soles, and how high its sole, mm. */
export function planeExtent(plane: Plane): { readonly widthMm: number; readonly heightMm: number } {
  const outlines = solesOf(plane).map((sole) => outlineOf(plane, sole));
  return {
    widthMm: outlines.reduce((sum, { leftMm, rightMm }) => sum + rightMm - leftMm, 0),
    heightMm: Math.max(...outlines.map(({ lowMm, highMm }) => highMm - lowMm)),
  };
}

function outlineOf(plane: Plane, sole: Sole): Outline {
  const vertices = verticesOf(sole.chain);
  const shoulder = "shoulder" in plane ? plane.shoulder : undefined;
  const halfShoulder = (shoulder?.widthMm ?? 0) / 2;
  const heights = sole.chain.pieces.flatMap((piece) => [piece.from.y, piece.to.y]);
  // The middle of a hollow's or round's arc is the origin, and so is what a bead's half circle rises to.
  const middle = sole.arc !== undefined || plane.kind === "bead" ? [0] : [];
  return {
    vertices,
    leftMm: Math.min(sole.leftMm, -halfShoulder),
    rightMm: Math.max(sole.rightMm, halfShoulder),
    lowMm: Math.min(...heights, ...middle),
    highMm: Math.max(...heights, ...middle, shoulder?.heightMm ?? 0),
  };
}

type Place = (point: readonly [number, number, ...unknown[]]) => PaperPoint;

function bodyItems(
  plane: Plane,
  vertices: readonly Vertex[],
  place: Place,
  sides: { readonly left: number; readonly right: number },
): readonly Item[] {
  const first = vertices[0];
  const last = vertices[vertices.length - 1];
  if (first === undefined || last === undefined) return [];
  const sole = soleCurve(vertices, place);
  const soleEnd = place(last);
  const shoulder = "shoulder" in plane ? plane.shoulder : undefined;
  const top = MARGIN_MM + BREAK_MM;
  const shoulderY = shoulder === undefined ? null : place([0, shoulder.heightMm])[1];
  const side = (end: PaperPoint, outerX: number): readonly PaperPoint[] =>
    shoulderY === null
      ? [end, [end[0], top]]
      : [end, [end[0], shoulderY], [outerX, shoulderY], [outerX, top]];
  const right = side(soleEnd, sides.right);
  const left = side(sole.start, sides.left);
  const topRight = right[right.length - 1] ?? soleEnd;
  const topLeft = left[left.length - 1] ?? sole.start;
  const body: Path = {
    start: sole.start,
    steps: [...sole.steps, ...[...right.slice(1), ...[...left].reverse()].map((to) => ({ to }))],
    closed: true,
  };
  return [
    fill([body], colour("orange", 0.2)),
    stroke(openPath(right)),
    stroke(openPath(left)),
    stroke(breakLine(topLeft, topRight)),
    stroke(sole, { weight: "wide" }),
  ];
}

/** ISO 128: a break line with one zigzag in its middle. */
function breakLine(from: PaperPoint, to: PaperPoint): Path {
  const middle = (from[0] + to[0]) / 2;
  const half = Math.min(1, (to[0] - from[0]) / 6);
  return openPath([
    [from[0] - 0.6, from[1]],
    [middle - half, from[1]],
    [middle - half / 2, from[1] - BREAK_MM],
    [middle + half / 2, from[1] + BREAK_MM],
    [middle + half, from[1]],
    [to[0] + 0.6, to[1]],
  ]);
}

function soleCurve(vertices: readonly Vertex[], place: Place): Path {
  const [first = [0, 0] as const] = vertices;
  return {
    start: place(first),
    // A bulge stands at the vertex that its piece starts from. Seen on paper it turns the same way.
    steps: vertices.slice(1).map((vertex, index) => {
      const bulge = vertices[index]?.[2] ?? 0;
      return { to: place(vertex), ...(bulge === 0 ? {} : { bulge }) };
    }),
    closed: false,
  };
}

/** How much of the circle an arc to compare with shows: a little more than the sixth that most soles carry, degrees. */
export const COMPARED_DEG = 72;
const WOOD_MM = 6;

/** An arc to hold a sole against, at full size: a hollow closes on it from above, a round lies in it. */
export function arcDrawing(radiusMm: number, kind: "hollow" | "round", title: string): Drawing {
  const halfRad = (COMPARED_DEG * Math.PI) / 360;
  const halfMm = radiusMm * Math.sin(halfRad);
  const deepMm = radiusMm * (1 - Math.cos(halfRad));
  const isRound = kind === "round";
  const left: PaperPoint = [MARGIN_MM, MARGIN_MM + (isRound ? 0 : deepMm)];
  const right: PaperPoint = [left[0] + 2 * halfMm, left[1]];
  const bulge = Math.tan(halfRad / 2) * (isRound ? 1 : -1);
  const bottom = MARGIN_MM + deepMm + WOOD_MM;
  const arc: Path = { start: left, steps: [{ to: right, bulge }], closed: false };
  const wood: Path = {
    start: left,
    steps: [...arc.steps, { to: [right[0], bottom] }, { to: [left[0], bottom] }],
    closed: true,
  };
  return {
    widthMm: 2 * halfMm + 2 * MARGIN_MM,
    heightMm: bottom + MARGIN_MM,
    title,
    description: "",
    items: [fill([wood], colour("orange", 0.2)), stroke(arc, { weight: "wide" })],
  };
}
