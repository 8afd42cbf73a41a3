/** Reads a section from an SVG drawing: the path `section` and the stick `stick`, whatever units and transforms it has. */
import { parseXml, type XmlElement } from "@rgrove/parse-xml";
import { DRAWING_NOISE_MM, fine, type Outcome, refused, type TroubleCode } from "../measure/index.ts";
import type { SettledPiece } from "./read-arcs.ts";
import type { DrawnCurve } from "./read-curves.ts";
import { DEEPEST_NESTING, MOST_NAMES, MOST_POINTS } from "./read-limits.ts";
import { type DrawingOptions, placeSection } from "./read-place.ts";
import { settle } from "./read-settle.ts";
import { sectionAndStick } from "./read-stick.ts";
import { isReadable } from "./read-text.ts";
import { newReading, type Reading, refuse, warn } from "./read-troubles.ts";
import { pageScale, plainScale } from "./svg-page.ts";
import type { DrawnRun } from "./svg-path-data.ts";
import { localName, type SvgOutline, svgOutlines } from "./svg-walk.ts";
import type { Section } from "./types.ts";

/**
 * Reads a section (and stick) from the text of an SVG file. Millimetres, y up, the stick's lower left corner at
 * (0, 0). Never throws for what a file may hold: the refusal names the element and what to change.
 */
export function readSvgSection(text: string, options: DrawingOptions): Outcome<Section, TroubleCode> {
  const reading = newReading(MOST_POINTS);
  const section = svgSection(reading, text, options);
  if (reading.refusal !== null || section === null) return refused(reading.refusal!);
  return fine(section, reading.warnings);
}

function svgSection(reading: Reading, text: string, options: DrawingOptions): Section | null {
  const root = svgRoot(reading, text);
  if (root === null) return null;
  const scale =
    options.numberMm === undefined ? pageScale(reading, root.attributes) : plainScale(options.numberMm);
  if (scale === null) return null;
  const outlines = svgOutlines(reading, root, scale.toMm);
  if (reading.refusal !== null) return null;
  const named = options.stickMm === undefined ? called(reading, outlines, "stick") : null;
  if (reading.refusal !== null) return null;
  const found = sectionOutline(reading, outlines);
  if (found === null) return null;
  const outline = found.section;
  const stickOutline = options.stickMm === undefined ? (named ?? found.stick) : null;
  if (named === null && stickOutline !== null) {
    warn(reading, "drawn-stick-assumed", "stick", { element: stickOutline.name });
  }
  const pieces = closedPieces(reading, outline, "section", 1);
  const stick = stickOutline === null ? null : closedPieces(reading, stickOutline, "stick", 1);
  if (reading.refusal !== null) return null;
  return placeSection(reading, { ...options, outline: pieces, stick, doubt: scale.doubt });
}

function svgRoot(reading: Reading, text: string): XmlElement | null {
  if (!isReadable(reading, text)) return null;
  try {
    const { root, children } = parseXml(text, { preserveDocumentType: true });
    if (children.some((child) => child.type === "doctype")) refuse(reading, "svg-doctype", "", {});
    else if (root === null || localName(root.name) !== "svg") {
      refuse(reading, "svg-not-svg", "", { root: root?.name.slice(0, 40) ?? "" });
    } else return root;
  } catch (error) {
    refuseBroken(reading, text, error);
  }
  return null;
}

/** The parser throws an XmlError with its place, or runs out of stack on elements nested by the thousand. */
function refuseBroken(reading: Reading, text: string, error: unknown): void {
  if (error instanceof RangeError) refuse(reading, "drawing-too-deep", "", { deepest: DEEPEST_NESTING });
  else if (text.slice(0, 10_000).includes("<!DOCTYPE")) refuse(reading, "svg-doctype", "", {});
  else {
    const { line, column } = error as { line?: number; column?: number };
    refuse(reading, "svg-broken", "", { line: line ?? 0, column: column ?? 0 });
  }
}

/** The outline of that id; else, where no id fits, the one whose label or group has the name. Null if there is none. */
function called(
  reading: Reading,
  outlines: readonly SvgOutline[],
  name: "section" | "stick",
): SvgOutline | null {
  const ways: readonly ((outline: SvgOutline) => boolean)[] = [
    ({ calledBy, name: own }) => own === name && calledBy[0]?.id === name,
    ({ calledBy }) => calledBy.some(({ id, label }) => sameName(id, name) || sameName(label, name)),
  ];
  for (const way of ways) {
    const found = outlines.filter(way).filter(mayBeClosed);
    if (found.length === 1) return found[0]!;
    if (found.length > 1) {
      const code = name === "stick" ? "drawn-stick-several" : "outline-several";
      refuse(reading, code, name, namesOf(found));
      return null;
    }
  }
  return null;
}

function sameName(text: string, name: string): boolean {
  return text.trim().toLowerCase() === name;
}

interface Found {
  readonly section: SvgOutline;
  /** Told by its shape alone; null where the stick is named or not drawn. */
  readonly stick: SvgOutline | null;
}

function sectionOutline(reading: Reading, outlines: readonly SvgOutline[]): Found | null {
  const byName = called(reading, outlines, "section");
  if (reading.refusal !== null) return null;
  if (byName !== null) return { section: byName, stick: null };
  const open = outlines.find(({ calledBy }) => calledBy.some(({ id }) => sameName(id, "section")));
  if (open !== undefined) return { section: open, stick: null };
  const others = outlines.filter(
    ({ calledBy }) => !calledBy.some(({ id, label }) => sameName(id, "stick") || sameName(label, "stick")),
  );
  const closed = others.filter(mayBeClosed);
  const [first, second] = closed;
  if (first !== undefined && second !== undefined) {
    const found = closed.length === 2 ? sectionAndStick([first, second], curvesOf) : null;
    if (found === null) refuse(reading, "outline-several", "", namesOf(closed));
    return found;
  }
  const only = first ?? others[0];
  if (only === undefined) refuse(reading, "outline-missing", "", {});
  return only === undefined ? null : { section: only, stick: null };
}

function curvesOf({ runs, trouble }: SvgOutline): readonly DrawnCurve[] {
  return trouble === null && runs.length === 1 ? (runs[0]?.curves ?? []) : [];
}

function namesOf(outlines: readonly SvgOutline[]): { names: string[]; more: number } {
  const names = outlines.slice(0, MOST_NAMES).map(({ name }) => name);
  return { names, more: outlines.length - names.length };
}

/** Closed, or unreadable: then it must not be passed over in silence. */
function mayBeClosed(outline: SvgOutline): boolean {
  return outline.trouble !== null || outline.runs.some((run) => gapMm(run) <= DRAWING_NOISE_MM);
}

function gapMm(run: DrawnRun): number {
  if (run.closed) return 0;
  const from = run.curves[0]!.from;
  const to = run.curves[run.curves.length - 1]!.to;
  return Math.hypot(to.x - from.x, to.y - from.y);
}

function closedPieces(
  reading: Reading,
  outline: SvgOutline,
  where: string,
  firstFree: number,
): SettledPiece[] {
  if (outline.trouble !== null) {
    reading.refusal ??= outline.trouble;
    return [];
  }
  const settled = outline.runs
    .map((run) => ({ run, pieces: settle(reading, where, run.curves, firstFree) }))
    .filter(({ pieces }) => pieces.length > 0);
  if (reading.refusal !== null) return [];
  if (settled.length > 1) {
    refuse(reading, "outline-of-several-rings", outline.name, {
      element: outline.name,
      rings: settled.length,
    });
    return [];
  }
  const only = settled[0];
  if (only === undefined) {
    const code = where === "stick" ? "drawn-stick-broken" : "outline-flat";
    refuse(reading, code, outline.name, { element: outline.name });
    return [];
  }
  const gap = gapMm(only.run);
  if (gap > DRAWING_NOISE_MM) {
    refuse(reading, "outline-open", outline.name, { element: outline.name, gapMm: gap });
    return [];
  }
  if (outline.grownMm > 0)
    warn(reading, "arc-radius-grown", outline.name, { element: outline.name, grownMm: outline.grownMm });
  return only.pieces;
}
