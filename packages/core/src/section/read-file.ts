/** Reads a section from the text of a drawing or a list of points, whatever of the kinds known here it is. */
import type { Point } from "../curve/index.ts";
import { type LengthUnit, type Outcome, refused, type TroubleCode } from "../measure/index.ts";
import { readDxfSection } from "./dxf-read.ts";
import { cleanName, MOST_POINTS } from "./read-limits.ts";
import type { StickSize } from "./read-place.ts";
import { isPointsList, readPointsSection } from "./read-points.ts";
import { isReadable } from "./read-text.ts";
import { newReading, refuse } from "./read-troubles.ts";
import { readSvgSection } from "./svg-read.ts";
import type { Section } from "./types.ts";

/** A drawing, or a list of points measured off a moulding. */
export interface DrawingFile {
  readonly fileName: string;
  readonly text: string;
  /** A stick to take instead of the one drawn: the section's box is set against its gauge edge and top face. */
  readonly stickMm?: StickSize | undefined;
  /** Where in the stick the lower left corner of the section's box goes instead, mm. */
  readonly atMm?: Point | undefined;
  /** How much a number of the drawing is, mm, where the maker knows better than the drawing says. */
  readonly numberMm?: number | undefined;
  /** What a list of points is in, unless it says so itself; millimetres unless given. Drawings have their own unit. */
  readonly unit?: LengthUnit | undefined;
}

/**
 * Reads a drawing, choosing by what the text holds and not by the file's ending. The section is called by the file's
 * name without its ending. Never throws for what a file may hold.
 */
export function readSectionFile(file: DrawingFile): Outcome<Section, TroubleCode> {
  const reading = newReading(MOST_POINTS);
  const text = file.text.startsWith("\uFEFF") ? file.text.slice(1) : file.text;
  if (!isReadable(reading, text)) return refused(reading.refusal!);
  const { stickMm, atMm, numberMm } = file;
  const options = { name: sectionName(file.fileName), stickMm, atMm, numberMm };
  switch (drawingKind(text)) {
    case "svg":
      return readSvgSection(text, options);
    case "dxf":
      return readDxfSection(text, options);
    case "points":
      return readPointsSection(text, { ...options, unit: file.unit });
    case null:
      refuse(reading, "drawing-kind-unknown", "", { file: cleanName(baseName(file.fileName)) });
      return refused(reading.refusal!);
  }
}

/**
 * By its first signs: XML begins with "<", a DXF with a group code alone on its line, a list of points with two lengths
 * or one of its own words.
 */
export function drawingKind(text: string): "svg" | "dxf" | "points" | null {
  const start = text.slice(0, 2000).trimStart();
  if (start.startsWith("<")) return "svg";
  if (start.startsWith("AutoCAD Binary DXF")) return "dxf";
  if (/^(?:0|999)[ \t]*\r?\n/.test(start)) return "dxf";
  return isPointsList(text) ? "points" : null;
}

function baseName(fileName: string): string {
  return fileName.slice(Math.max(fileName.lastIndexOf("/"), fileName.lastIndexOf("\\")) + 1);
}

function sectionName(fileName: string): string {
  const base = baseName(fileName);
  const dot = base.lastIndexOf(".");
  const name = cleanName(dot > 0 ? base.slice(0, dot) : base);
  return name === "" ? "section" : name;
}
