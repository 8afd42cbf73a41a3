/** Reads a section from a DXF drawing: the outline on layer SECTION, the stick on layer STICK. */
import { fine, type Outcome, refused, type TroubleCode } from "../measure/index.ts";
import { chainRuns } from "./dxf-chain.ts";
import { type DxfFile, readDxfFile } from "./dxf-tags.ts";
import { type DxfDrawing, dxfDrawing, type LayeredRun } from "./dxf-walk.ts";
import type { SettledPiece } from "./read-arcs.ts";
import type { DrawnCurve } from "./read-curves.ts";
import { MOST_NAMES, MOST_POINTS } from "./read-limits.ts";
import { type DrawingOptions, placeSection } from "./read-place.ts";
import { settle } from "./read-settle.ts";
import { sectionAndStick } from "./read-stick.ts";
import { isReadable } from "./read-text.ts";
import { newReading, type Reading, refuse, warn } from "./read-troubles.ts";
import type { Section } from "./types.ts";

/** $INSUNITS, mm for one unit. Source: the published DXF reference, header variables. */
const UNIT_MM: ReadonlyMap<number, number> = new Map([
  [1, 25.4],
  [2, 304.8],
  [4, 1],
  [5, 10],
  [6, 1000],
  [8, 25.4 / 1_000_000],
  [9, 25.4 / 1000],
  [10, 914.4],
  [13, 1 / 1000],
  [14, 100],
]);

const SECTION_LAYER = "SECTION";
const STICK_LAYER = "STICK";

/**
 * Reads a section (and stick) from the text of a DXF file. Millimetres, y up, the stick's lower left corner at
 * (0, 0). Never throws for what a file may hold: the refusal names the line or layer and what to change.
 */
export function readDxfSection(text: string, options: DrawingOptions): Outcome<Section, TroubleCode> {
  const reading = newReading(MOST_POINTS);
  const section = dxfSection(reading, text, options);
  if (reading.refusal !== null || section === null) return refused(reading.refusal!);
  return fine(section, reading.warnings);
}

function dxfSection(reading: Reading, text: string, options: DrawingOptions): Section | null {
  if (!isReadable(reading, text)) return null;
  const file = readDxfFile(reading, text);
  const unit = file === null ? null : unitOf(reading, file, options.numberMm);
  if (file === null || unit === null) return null;
  const drawing = dxfDrawing(reading, file, unit.unitMm);
  if (reading.refusal !== null) return null;
  const found = sectionCurves(reading, drawing);
  const named = options.stickMm === undefined ? stickCurves(reading, drawing) : null;
  if (found === null || reading.refusal !== null) return null;
  const stick = options.stickMm === undefined ? (named ?? found.stick) : null;
  if (named === null && stick !== null) {
    warn(reading, "drawn-stick-assumed", STICK_LAYER, { element: outlineName(stick, drawing.runs) });
  }
  const pieces = settledOutline(reading, "section", found.section);
  const stickPieces = stick === null ? null : settledOutline(reading, "stick", stick);
  if (reading.refusal !== null) return null;
  const doubt = unit.isAssumed ? "size-without-unit" : null;
  return placeSection(reading, { ...options, outline: pieces, stick: stickPieces, doubt });
}

/** A drawing without unit (0, or none at all) is taken as millimetres, and that is said. */
function unitOf(
  reading: Reading,
  file: DxfFile,
  numberMm: number | undefined,
): { unitMm: number; isAssumed: boolean } | null {
  if (numberMm !== undefined) return { unitMm: numberMm, isAssumed: false };
  const written = file.header.get("$INSUNITS") ?? "0";
  const number = Number(written);
  if (number === 0) return { unitMm: 1, isAssumed: true };
  const unitMm = UNIT_MM.get(number);
  if (unitMm === undefined) {
    refuse(reading, "dxf-unit-unknown", "$INSUNITS", { unit: written.slice(0, 20) });
    return null;
  }
  return { unitMm, isAssumed: false };
}

interface Found {
  readonly section: readonly DrawnCurve[];
  /** Told by its shape alone; null where the stick has its layer or is not drawn. */
  readonly stick: readonly DrawnCurve[] | null;
}

/** The only closed outline on layer SECTION, or, where nothing is drawn on it, of all other layers but STICK. */
function sectionCurves(reading: Reading, drawing: DxfDrawing): Found | null {
  const onLayer = drawing.runs.filter(({ layer }) => layer === SECTION_LAYER);
  const hasLayer = onLayer.length > 0;
  const runs = hasLayer ? onLayer : drawing.runs.filter(({ layer }) => layer !== STICK_LAYER);
  if (runs.length === 0) {
    refuse(reading, "outline-missing", "", {});
    return null;
  }
  const { closed, open, branch } = chainRuns(runs);
  const [first, second] = closed;
  if (first !== undefined && second !== undefined) {
    const found = closed.length === 2 ? sectionAndStick([first, second], (curves) => curves) : null;
    if (found !== null) return found;
    const names = closed.slice(0, MOST_NAMES).map((curves) => outlineName(curves, runs));
    refuse(reading, "outline-several", "", { names, more: closed.length - names.length });
    return null;
  }
  if (first !== undefined) {
    if (hasLayer) warnLeftOut(reading, drawing, open.length);
    return { section: first, stick: null };
  }
  if (branch !== null) {
    const { at, ends } = branch;
    refuse(reading, "outline-branches", "", { xMm: at.x, yMm: at.y, ends });
    return null;
  }
  const longest = open[0]!;
  const element = hasLayer ? SECTION_LAYER : outlineName(longest.curves, runs);
  refuse(reading, "outline-open", element, { element, gapMm: longest.gapMm });
  return null;
}

/** Where an outline lies and on which layer: entities of a DXF have no names. */
function outlineName(curves: readonly DrawnCurve[], runs: readonly LayeredRun[]): string {
  const layer = runs.find((run) => run.curves.includes(curves[0]!))?.layer;
  return layer === undefined
    ? `outline of ${curves.length} pieces`
    : `outline of ${curves.length} pieces on layer ${layer}`;
}

function warnLeftOut(reading: Reading, drawing: DxfDrawing, openCount: number): void {
  const left = drawing.leftOut.filter(({ layer }) => layer === SECTION_LAYER);
  const kinds = [...new Set(left.map(({ type }) => type))].slice(0, MOST_NAMES);
  if (openCount > 0) kinds.push("open lines");
  const count = left.length + openCount;
  if (count > 0) warn(reading, "dxf-entities-left-out", SECTION_LAYER, { kinds, count });
}

/** The only closed outline on layer STICK; null where nothing is drawn on it. */
function stickCurves(reading: Reading, drawing: DxfDrawing): readonly DrawnCurve[] | null {
  const runs = drawing.runs.filter(({ layer }) => layer === STICK_LAYER);
  if (runs.length === 0) return null;
  const { closed } = chainRuns(runs);
  if (closed.length > 1) {
    const names = closed.slice(0, MOST_NAMES).map((curves) => outlineName(curves, runs));
    refuse(reading, "drawn-stick-several", STICK_LAYER, { names, more: closed.length - names.length });
    return null;
  }
  if (closed.length === 0) refuse(reading, "drawn-stick-broken", STICK_LAYER, { element: STICK_LAYER });
  return closed[0] ?? null;
}

function settledOutline(
  reading: Reading,
  what: "section" | "stick",
  curves: readonly DrawnCurve[],
): SettledPiece[] {
  const pieces = settle(reading, what, curves, 1);
  if (pieces.length > 0 || reading.refusal !== null) return pieces;
  refuse(reading, what === "stick" ? "drawn-stick-broken" : "outline-flat", what, { element: what });
  return [];
}
