/** From a settled outline and stick to a section in its stick's frame, checked closed, simple and inside. */
import {
  arc,
  areaMm2,
  extentsOf,
  insideRing,
  line,
  type Piece,
  type Point,
  type Ring,
  ring,
  ringFromVertices,
  selfCrossings,
} from "../curve/index.ts";
import { DRAWING_NOISE_MM, SAME_POINT_MM } from "../measure/index.ts";
import type { SettledPiece } from "./read-curves.ts";
import { LARGEST_SECTION_MM, SMALLEST_SECTION_MM } from "./read-limits.ts";
import {
  type Box,
  joinNearEnds,
  type OutlineVertex,
  type Settling,
  type Side,
  settleCrowns,
  settleOnSides,
  snapMm,
  verticesOfPieces,
} from "./read-noise.ts";
import { type DrawingTroubleCode, type Reading, refuse, warn } from "./read-troubles.ts";
import type { FreeSpan, Section } from "./types.ts";

export interface StickSize {
  readonly widthMm: number;
  readonly thicknessMm: number;
}

export interface DrawnSection {
  readonly name: string;
  /** Closed, millimetres, y up, anywhere on the page. */
  readonly outline: readonly SettledPiece[];
  /** The drawn stick, in the same frame, or null if there is none. */
  readonly stick: readonly SettledPiece[] | null;
  /** A stick to take instead. */
  readonly stickMm?: StickSize | undefined;
  /** Where the lower left corner of the section's box goes in the stick. */
  readonly atMm?: Point | undefined;
}

/** The section with the stick's lower left corner at (0, 0); null after a refusal. */
export function placeSection(reading: Reading, drawn: DrawnSection): Section | null {
  const outlineBox = boxOf(drawn.outline);
  if (!sizeIsSane(reading, outlineBox)) return null;
  const frame = stickFrame(reading, drawn, outlineBox);
  if (frame === null) return null;

  let vertices: readonly OutlineVertex[] = verticesOfPieces(drawn.outline, frame.move);
  const settle = (code: DrawingTroubleCode, found: Settling): void => {
    vertices = found.vertices;
    if (found.places > 0) warn(reading, code, "", { places: found.places, farthestMm: found.farthestMm });
  };
  settle("noise-ends", joinNearEnds(vertices));
  const onSides = settleOnSides(vertices, frame.sides);
  const again = joinNearEnds(onSides.vertices);
  const crowns = frame.box === null ? null : settleCrowns(again.vertices, frame.box);
  settle("noise-sides", {
    vertices: crowns?.vertices ?? again.vertices,
    places: onSides.places + (crowns?.places ?? 0),
    farthestMm: Math.max(onSides.farthestMm, crowns?.farthestMm ?? 0),
  });
  return checkedSection(reading, drawn.name, vertices, frame.stick);
}

interface StickFrame {
  readonly stick: Ring;
  readonly sides: readonly Side[];
  /** Set where the stick is a rectangle square to the page. */
  readonly box: Box | null;
  /** From the page to the stick's frame. */
  readonly move: Point;
}

function stickFrame(reading: Reading, drawn: DrawnSection, outlineBox: Box): StickFrame | null {
  const { stickMm, atMm } = drawn;
  const height = outlineBox.maxY - outlineBox.minY;
  if (stickMm !== undefined) {
    const at = atMm ?? { x: 0, y: stickMm.thicknessMm - height };
    const move = { x: at.x - outlineBox.minX, y: at.y - outlineBox.minY };
    return rectangleFrame(stickMm.widthMm, stickMm.thicknessMm, move);
  }
  if (drawn.stick === null) {
    const move = { x: -outlineBox.minX, y: -outlineBox.minY };
    return rectangleFrame(outlineBox.maxX - outlineBox.minX, height, move);
  }
  const stickBox = boxOf(drawn.stick);
  if (!sizeIsSane(reading, stickBox)) return null;
  const stickMove = { x: -stickBox.minX, y: -stickBox.minY };
  const move = atMm === undefined ? stickMove : { x: atMm.x - outlineBox.minX, y: atMm.y - outlineBox.minY };
  const width = stickBox.maxX - stickBox.minX;
  const thickness = stickBox.maxY - stickBox.minY;
  if (isSquareToPage(drawn.stick, stickBox)) return rectangleFrame(width, thickness, move);
  const vertices = anticlockwise(joinNearEnds(verticesOfPieces(drawn.stick, stickMove)).vertices);
  const stick = vertices === null ? null : ringOf(vertices);
  if (stick === null || selfCrossings(stick, SAME_POINT_MM).length > 0) {
    refuse(reading, "stick-broken", "stick");
    return null;
  }
  const sides = stick.pieces.filter((piece) => piece.kind === "line");
  return { stick, sides, box: null, move };
}

function rectangleFrame(widthMm: number, thicknessMm: number, move: Point): StickFrame {
  const width = snapMm(widthMm);
  const thickness = snapMm(thicknessMm);
  const stick = ringFromVertices([
    [0, 0],
    [width, 0],
    [width, thickness],
    [0, thickness],
  ]);
  return { stick, sides: stick.pieces, box: { minX: 0, minY: 0, maxX: width, maxY: thickness }, move };
}

/** Whether every corner of a drawn stick is, within the noise, one of its box's four and every piece a side. */
function isSquareToPage(pieces: readonly SettledPiece[], box: Box): boolean {
  const near = (a: number, b: number): boolean => Math.abs(a - b) <= DRAWING_NOISE_MM;
  return pieces.every(({ from, to, bulge }) => {
    if (bulge !== 0) return false;
    const upright = [box.minX, box.maxX].some((x) => near(from.x, x) && near(to.x, x));
    const level = [box.minY, box.maxY].some((y) => near(from.y, y) && near(to.y, y));
    return upright || level;
  });
}

function checkedSection(
  reading: Reading,
  name: string,
  drawnVertices: readonly OutlineVertex[],
  stick: Ring,
): Section | null {
  const vertices = anticlockwise(drawnVertices);
  const outline = vertices === null ? null : ringOf(vertices);
  if (vertices === null || outline === null) {
    refuse(reading, "outline-without-area", "section");
    return null;
  }
  const crossing = selfCrossings(outline, SAME_POINT_MM)[0];
  if (crossing !== undefined) {
    refuse(reading, "outline-crosses-itself", "section", { xMm: crossing.x, yMm: crossing.y });
    return null;
  }
  const outside = placeOutside(outline, stick);
  if (outside !== null) {
    const { maxX, maxY } = extentsOf(stick);
    const facts = { xMm: outside.x, yMm: outside.y, stickWidthMm: maxX, stickThicknessMm: maxY };
    refuse(reading, "outline-outside-stick", "section", facts);
    return null;
  }
  return { name, stick, outline, freeSpans: freeSpansOf(vertices), named: [] };
}

/** A vertex or crown of the outline that stands out of the stick by more than noise. */
function placeOutside(outline: Ring, stick: Ring): Point | null {
  const box = extentsOf(stick);
  const square = stick.pieces.every((p) => p.kind === "line" && (p.from.x === p.to.x || p.from.y === p.to.y));
  for (const piece of outline.pieces) {
    const own = extentsOf(piece);
    const x = own.minX < box.minX - DRAWING_NOISE_MM ? own.minX : own.maxX;
    const y = own.minY < box.minY - DRAWING_NOISE_MM ? own.minY : own.maxY;
    if (x < box.minX - DRAWING_NOISE_MM || x > box.maxX + DRAWING_NOISE_MM) return { x, y: piece.from.y };
    if (y < box.minY - DRAWING_NOISE_MM || y > box.maxY + DRAWING_NOISE_MM) return { x: piece.from.x, y };
    if (!(square && stick.pieces.length === 4) && insideRing(stick, piece.from) === "out") return piece.from;
  }
  return null;
}

function freeSpansOf(vertices: readonly OutlineVertex[]): FreeSpan[] {
  const spans: FreeSpan[] = [];
  vertices.forEach((vertex, i) => {
    if (vertex.free === 0) return;
    const last = spans[spans.length - 1];
    const goesOn = i > 0 && vertices[i - 1]!.free === vertex.free;
    if (goesOn && last !== undefined) spans[spans.length - 1] = { ...last, count: last.count + 1 };
    else spans.push({ first: i, count: 1 });
  });
  return spans;
}

/** The vertices turned anticlockwise; null if they enclose nothing. */
function anticlockwise(vertices: readonly OutlineVertex[]): readonly OutlineVertex[] | null {
  if (vertices.length < 2) return null;
  const area = areaMm2({ pieces: piecesOf(vertices) });
  if (!(Math.abs(area) > DRAWING_NOISE_MM * DRAWING_NOISE_MM)) return null;
  if (area > 0) return vertices;
  const count = vertices.length;
  return vertices.map((_, i) => {
    const start = vertices[(count - i) % count]!;
    const end = vertices[count - 1 - i]!;
    return { x: start.x, y: start.y, bulge: -end.bulge + 0, free: end.free };
  });
}

function ringOf(vertices: readonly OutlineVertex[]): Ring {
  return ring(piecesOf(vertices));
}

function piecesOf(vertices: readonly OutlineVertex[]): Piece[] {
  const points = vertices.map(({ x, y }): Point => ({ x, y }));
  return vertices.map(({ bulge }, i) => {
    const from = points[i]!;
    const to = points[(i + 1) % points.length]!;
    return bulge === 0 ? line(from, to) : arc(from, to, bulge);
  });
}

function boxOf(pieces: readonly SettledPiece[]): Box {
  const box = { minX: Infinity, minY: Infinity, maxX: -Infinity, maxY: -Infinity };
  for (const { from, to, bulge } of pieces) {
    const apart = from.x !== to.x || from.y !== to.y;
    const own = extentsOf(bulge !== 0 && apart ? arc(from, to, bulge) : line(from, to));
    box.minX = Math.min(box.minX, own.minX);
    box.minY = Math.min(box.minY, own.minY);
    box.maxX = Math.max(box.maxX, own.maxX);
    box.maxY = Math.max(box.maxY, own.maxY);
  }
  return box;
}

function sizeIsSane(reading: Reading, box: Box): boolean {
  const widthMm = box.maxX - box.minX;
  const heightMm = box.maxY - box.minY;
  if (!(widthMm <= LARGEST_SECTION_MM && heightMm <= LARGEST_SECTION_MM)) {
    refuse(reading, "outline-too-large", "section", { widthMm, heightMm, largestMm: LARGEST_SECTION_MM });
    return false;
  }
  if (widthMm < SMALLEST_SECTION_MM && heightMm < SMALLEST_SECTION_MM) {
    refuse(reading, "outline-too-small", "section", { widthMm, heightMm, smallestMm: SMALLEST_SECTION_MM });
    return false;
  }
  return true;
}
