/** From a settled outline and stick to a section in its stick's frame, checked closed, simple and inside. */
import {
  arc,
  areaMm2,
  extentsOf,
  line,
  type Piece,
  type Point,
  type Ring,
  ring,
  ringFromVertices,
  selfCrossings,
} from "../curve/index.ts";
import { DRAWING_NOISE_MM, SAME_POINT_MM } from "../measure/index.ts";
import { type ChordsTaken, chordsAsCurves } from "./fit-chords.ts";
import { inspectSection } from "./inspect.ts";
import type { SettledPiece } from "./read-arcs.ts";
import {
  type Box,
  joinNearEnds,
  type OutlineVertex,
  type Side,
  settleCrowns,
  settleOnSides,
  snapMm,
  verticesOfPieces,
  withoutStraightJoints,
} from "./read-noise.ts";
import { settleTangency } from "./read-tangency.ts";
import { type Reading, refuse, warn } from "./read-troubles.ts";
import { LARGEST_SECTION_MM } from "./sizes.ts";
import type { SizeDoubt } from "./svg-page.ts";
import type { FreeSpan, Section } from "./types.ts";

export interface StickSize {
  readonly widthMm: number;
  readonly thicknessMm: number;
}

export interface DrawingOptions {
  /** What the section is called; a file's name without its ending. */
  readonly name: string;
  /** A stick to take instead of the one drawn: the section's box is set against its gauge edge and top face. */
  readonly stickMm?: StickSize | undefined;
  /** Where in the stick the lower left corner of the section's box goes instead, mm. */
  readonly atMm?: Point | undefined;
  /** How much a number of the drawing is, mm, where the maker knows better than the drawing says. */
  readonly numberMm?: number | undefined;
}

export interface DrawnSection extends DrawingOptions {
  /** Closed, millimetres, y up, anywhere on the page. */
  readonly outline: readonly SettledPiece[];
  /** The drawn stick, in the same frame, or null if there is none. */
  readonly stick: readonly SettledPiece[] | null;
  /** What had to be assumed about the drawing's unit, if anything. */
  readonly doubt: SizeDoubt | null;
}

/** The section with the stick's lower left corner at (0, 0); null after a refusal. */
export function placeSection(reading: Reading, drawn: DrawnSection): Section | null {
  const outlineBox = boxOf(drawn.outline);
  const size = { widthMm: outlineBox.maxX - outlineBox.minX, heightMm: outlineBox.maxY - outlineBox.minY };
  if (drawn.doubt !== null) warn(reading, drawn.doubt, "", size);
  if (Math.min(size.widthMm, size.heightMm) <= DRAWING_NOISE_MM) {
    refuse(reading, "outline-flat", "section", { element: "section" });
    return null;
  }
  const frame = stickFrame(reading, drawn, outlineBox);
  if (frame === null) return null;

  const joined = joinNearEnds(verticesOfPieces(drawn.outline, frame.move));
  warnNoise(reading, "noise-ends", joined);
  const onSides = settleOnSides(joined.vertices, frame.sides);
  const chords = chordsAsCurves(joinNearEnds({ ...onSides, places: 0 }).vertices);
  warnChords(reading, chords);
  const crowns = settleCrowns(chords.vertices, frame.box);
  const places = onSides.places + crowns.places;
  const farthestMm = Math.max(onSides.farthestMm, crowns.farthestMm);
  warnNoise(reading, "noise-sides", { places, farthestMm });
  const smooth = settleTangency(crowns.vertices, frame.sides);
  warnNoise(reading, "noise-tangency", smooth);
  return inspected(reading, drawn.name, withoutStraightJoints(smooth.vertices), frame.stick);
}

function warnNoise(
  reading: Reading,
  code: "noise-ends" | "noise-sides" | "noise-tangency",
  found: { readonly places: number; readonly farthestMm: number },
): void {
  const { places, farthestMm } = found;
  if (places > 0) warn(reading, code, "", { places, farthestMm });
}

function warnChords(
  reading: Reading,
  { arcLines, arcs, freeLines, freeCurves, farthestMm }: ChordsTaken,
): void {
  if (arcs > 0) warn(reading, "chords-taken-as-arcs", "", { lines: arcLines, arcs, farthestMm });
  if (freeCurves > 0) warn(reading, "chords-taken-as-curves", "", { lines: freeLines, curves: freeCurves });
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
  if (stickMm !== undefined && !stickIsSane(reading, stickMm.widthMm, stickMm.thicknessMm)) return null;
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
  if (!stickIsSane(reading, stickBox.maxX - stickBox.minX, stickBox.maxY - stickBox.minY)) return null;
  const stickMove = { x: -stickBox.minX, y: -stickBox.minY };
  const move = atMm === undefined ? stickMove : { x: atMm.x - outlineBox.minX, y: atMm.y - outlineBox.minY };
  const width = stickBox.maxX - stickBox.minX;
  const thickness = stickBox.maxY - stickBox.minY;
  if (isSquareToPage(drawn.stick, stickBox)) return rectangleFrame(width, thickness, move);
  const vertices = anticlockwise(joinNearEnds(verticesOfPieces(drawn.stick, stickMove)).vertices);
  const stick = vertices === null ? null : ringOf(vertices);
  if (stick === null || selfCrossings(stick, SAME_POINT_MM).length > 0) {
    refuse(reading, "drawn-stick-broken", "stick", { element: "stick" });
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

/** The section as a ring, with everything that `inspectSection` has to say about it. */
function inspected(
  reading: Reading,
  name: string,
  drawnVertices: readonly OutlineVertex[],
  stick: Ring,
): Section | null {
  const vertices = anticlockwise(drawnVertices);
  if (vertices === null) {
    refuse(reading, "outline-flat", "section", { element: "section" });
    return null;
  }
  const section = { name, stick, outline: ringOf(vertices), freeSpans: freeSpansOf(vertices), named: [] };
  const { refusals, warnings } = inspectSection(section);
  reading.refusal ??= refusals[0] ?? null;
  reading.warnings.push(...warnings);
  return section;
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

function stickIsSane(reading: Reading, widthMm: number, thicknessMm: number): boolean {
  for (const [side, valueMm] of [
    ["width", widthMm],
    ["thickness", thicknessMm],
  ] as const) {
    if (valueMm > SAME_POINT_MM && valueMm <= LARGEST_SECTION_MM) continue;
    refuse(reading, "stick-size", "stick", { side, valueMm, mostMm: LARGEST_SECTION_MM });
    return false;
  }
  return true;
}
