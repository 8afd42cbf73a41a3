/**
 * Reads a face that was measured off an old moulding, point by point: with a profile gauge, a depth gauge, or off a
 * tracing. The format is our own and stands in docs/files.md.
 */
import { arc, distanceMm, line, type Piece, type Point, reversePiece } from "../curve/index.ts";
import {
  DEFAULT_TOLERANCE_MM,
  fine,
  type LengthUnit,
  type Outcome,
  parseLength,
  refused,
  SAME_POINT_MM,
  type TroubleCode,
} from "../measure/index.ts";
import { fitFace } from "./fit-points.ts";
import type { SettledPiece } from "./read-arcs.ts";
import { cleanName } from "./read-limits.ts";
import { type DrawingOptions, placeSection } from "./read-place.ts";
import { isReadable } from "./read-text.ts";
import { newReading, type Reading, refuse, warn } from "./read-troubles.ts";
import type { Section } from "./types.ts";

export interface PointsOptions extends DrawingOptions {
  /** What numbers without a unit are in, unless the list says so itself; millimetres unless given. */
  readonly unit?: LengthUnit | undefined;
}

/** Nobody measures more by hand, and a section takes no more. */
const MOST_MEASURED = 5000;
const LEAST_MEASURED = 3;

/**
 * The section whose face passes the points of a list within what their measuring may err, as lines and arcs. Points run
 * from the gauge edge to the far edge; the first one's place across is the gauge edge. Never throws for what a list may
 * hold.
 */
export function readPointsSection(text: string, options: PointsOptions): Outcome<Section, TroubleCode> {
  const reading = newReading(MOST_MEASURED);
  const section = pointsSection(reading, text, options);
  if (reading.refusal !== null || section === null) return refused(reading.refusal!);
  return fine(section, reading.warnings);
}

/** Whether a text is a list of points: told by its first line that says something. */
export function isPointsList(text: string): boolean {
  for (const line of text.slice(0, LOOKED_AT).split(/\r\n|\n|\r/)) {
    const fields = fieldsOf(line);
    if (fields === null) continue;
    return (
      fields.length === 2 && (isWord(fields[0]) || fields.every((field) => /^[.\d½⅓⅔¼¾⅛⅜⅝⅞]/.test(field)))
    );
  }
  return false;
}

const LOOKED_AT = 5000;
const WORDS = ["across", "unit", "within"];
const isWord = (field: string | undefined) => WORDS.includes((field ?? "").toLowerCase());

/** The two fields of a line; null where it is empty or a remark. */
function fieldsOf(line: string): readonly string[] | null {
  const said = line.trim();
  if (said === "" || said.startsWith("#")) return null;
  // A semicolon or a tab leaves the comma to be a decimal comma.
  const separator = [";", "\t", ","].find((sign) => said.includes(sign));
  const fields = separator === undefined ? said.split(/\s+/) : said.split(separator);
  return fields.map((field) => field.trim());
}

interface MeasuredList {
  readonly points: readonly Point[];
  readonly isDepth: boolean;
  readonly withinMm: number;
}

function pointsSection(reading: Reading, text: string, options: PointsOptions): Section | null {
  if (!isReadable(reading, text)) return null;
  const list = measuredList(reading, text, options.unit ?? "mm");
  if (list === null) return null;
  const thicknessMm = options.stickMm?.thicknessMm;
  if (list.isDepth && thicknessMm === undefined) {
    refuse(reading, "points-depths-need-a-stick", "", {});
    return null;
  }
  const points = list.points.map(({ x, y }) => ({ x, y: list.isDepth ? (thicknessMm ?? 0) - y : y }));
  if ((points[points.length - 1] as Point).x <= (points[0] as Point).x) {
    refuse(reading, "points-run-backwards", "", {});
    return null;
  }
  const under = points.findIndex(({ y }) => y < 0);
  if (under >= 0) {
    const depthMm = list.points[under]?.y ?? 0;
    refuse(reading, "points-under-the-stick", "", {
      place: under + 1,
      depthMm,
      thicknessMm: thicknessMm ?? 0,
    });
    return null;
  }
  const { chain, offMm } = fitFace(points, list.withinMm);
  const arcs = chain.pieces.filter(({ kind }) => kind === "arc").length;
  warn(reading, "points-taken-as-parts", "", {
    points: points.length,
    flats: chain.pieces.length - arcs,
    arcs,
    offMm,
  });
  const face = endedAtEdge(chain.pieces, options.stickMm?.widthMm, list.withinMm);
  return placeSection(reading, { ...options, outline: outlineUnder(face), stick: null, doubt: null });
}

function measuredList(reading: Reading, text: string, asked: LengthUnit): MeasuredList | null {
  let unit = asked;
  let withinMm = DEFAULT_TOLERANCE_MM;
  let isDepth = false;
  const points: Point[] = [];
  for (const [index, line] of text.split(/\r\n|\n|\r/).entries()) {
    const fields = fieldsOf(line);
    if (fields === null) continue;
    const where = `line ${index + 1}`;
    const [first = "", second = ""] = fields;
    const word = first.toLowerCase();
    const isHeading = word === "across" && ["height", "depth"].includes(second.toLowerCase());
    const isUnit = word === "unit" && ["mm", "in"].includes(second.toLowerCase());
    if (fields.length !== 2 || (isWord(first) && word !== "within" && !isHeading && !isUnit)) {
      refuse(reading, "points-line-unreadable", where, { line: index + 1, text: cleanName(line) });
      return null;
    }
    if (isHeading) isDepth = second.toLowerCase() === "depth";
    else if (isUnit) unit = second.toLowerCase() === "in" ? "in" : "mm";
    else {
      const lengths = (word === "within" ? [second] : fields).map((typed) =>
        lengthMm(reading, typed, unit, where),
      );
      if (reading.refusal !== null) return null;
      if (word === "within") withinMm = Math.max(lengths[0] ?? 0, LEAST_WITHIN_MM);
      else addPoint(points, { x: lengths[0] ?? 0, y: lengths[1] ?? 0 });
    }
    if (points.length > MOST_MEASURED) {
      refuse(reading, "drawing-too-many-points", where, { most: MOST_MEASURED });
      return null;
    }
  }
  if (points.length < LEAST_MEASURED) {
    refuse(reading, "points-too-few", "", { count: points.length, least: LEAST_MEASURED });
    return null;
  }
  return { points, isDepth, withinMm };
}

/** No hand measures more truly, mm. */
const LEAST_WITHIN_MM = 0.01;

function lengthMm(reading: Reading, typed: string, unit: LengthUnit, where: string): number {
  const length = parseLength(typed, { unit, where });
  if (length.ok) return length.value.mm;
  reading.refusal ??= length.trouble;
  return 0;
}

/** A point measured twice is one. */
function addPoint(points: Point[], point: Point): void {
  const last = points[points.length - 1];
  if (last === undefined || distanceMm(last, point) > SAME_POINT_MM) points.push(point);
}

/** Where the measured width is the stick's but for what measuring may err, the face ends on the stick's far edge. */
function endedAtEdge(
  face: readonly Piece[],
  widthMm: number | undefined,
  withinMm: number,
): readonly Piece[] {
  const first = face[0] as Piece;
  const last = face[face.length - 1] as Piece;
  if (widthMm === undefined || Math.abs(last.to.x - first.from.x - widthMm) > 2 * withinMm) return face;
  const to = { x: first.from.x + widthMm, y: last.to.y };
  return [...face.slice(0, -1), last.kind === "line" ? line(last.from, to) : arc(last.from, to, last.bulge)];
}

/** The outline anticlockwise: along the back, up the far edge, back over the face, down the gauge edge. */
function outlineUnder(face: readonly Piece[]): readonly SettledPiece[] {
  const from = (face[0] as Piece).from;
  const to = (face[face.length - 1] as Piece).to;
  const corners: readonly Point[] = [from, { x: from.x, y: 0 }, { x: to.x, y: 0 }, to];
  const around = corners
    .slice(1)
    .map((end, i) => ({ from: corners[i] as Point, to: end, bulge: 0, free: 0 }));
  const over = [...face].reverse().map((piece) => {
    const turned = reversePiece(piece);
    return { from: turned.from, to: turned.to, bulge: turned.kind === "arc" ? turned.bulge : 0, free: 0 };
  });
  return [...around, ...over].filter((piece) => distanceMm(piece.from, piece.to) > SAME_POINT_MM);
}
