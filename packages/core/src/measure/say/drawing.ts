/** Sentences about drawings read from SVG and DXF. The pattern of an entry stands in `catalogue.ts`. */
import { WRITTEN_MM } from "../tolerance.ts";
import { catalogue } from "./catalogue.ts";
import type { Writer } from "./writer.ts";

export const drawingTroubles = catalogue({
  // The file as a whole.
  "drawing-empty": {
    example: {},
    sentence: () => "There is nothing in the file.",
    hint: () => "Save the drawing again from the program that made it, as SVG or DXF.",
  },
  "drawing-too-long": {
    example: { megabytes: 31.5, mostMegabytes: 20 },
    sentence: (facts) =>
      `The drawing is ${facts.megabytes} MB long; ${facts.mostMegabytes} MB are taken at most.`,
    hint: () => "Save the section alone: without pictures, hatching or the rest of the sheet it is small.",
  },
  "drawing-kind-unknown": {
    example: { file: "cornice.dwg" },
    sentence: (facts, write) =>
      `${facts.file === "" ? "The file" : `“${write.text(facts.file)}”`} is neither an SVG nor a DXF drawing, nor a list of points.`,
    hint: () => "Save the section from the drawing program as plain SVG or as DXF (text, not binary).",
  },
  "drawing-too-many-points": {
    example: { most: 100000 },
    sentence: (facts) => `The drawing has more than ${facts.most} points, which no section needs.`,
    hint: () => "Save the section alone, and redraw it with lines and arcs if it was traced from a picture.",
  },
  "drawing-too-deep": {
    example: { deepest: 64 },
    sentence: (facts) =>
      `Groups or blocks stand inside each other more than ${facts.deepest} deep in this drawing.`,
    hint: () => "Ungroup or explode the section in the drawing program and save it again.",
  },
  "drawing-number-absurd": {
    example: { farthestMm: 100000 },
    sentence: (facts, write) =>
      `A coordinate in the drawing is no number, or lies further off than ${write.length(facts.farthestMm)}.`,
    hint: () => "Look for a slip in the drawing's scale or for a stray point far away, and save it again.",
  },

  // SVG.
  "svg-broken": {
    example: { line: 12, column: 3 },
    sentence: (facts) =>
      facts.line > 0
        ? `The SVG cannot be read from line ${facts.line}, column ${facts.column} on; it may be cut short.`
        : "The SVG cannot be read; it may be cut short.",
    hint: () => "Save the drawing again as plain SVG.",
  },
  "svg-not-svg": {
    example: { root: "html" },
    sentence: (facts, write) => `The file is a “${write.text(facts.root)}” document, not an SVG drawing.`,
    hint: () => "Save the section from the drawing program as plain SVG.",
  },
  "svg-doctype": {
    example: {},
    sentence: () =>
      "The SVG begins with a document type (DOCTYPE), which can reach outside the file and is not followed.",
    hint: () =>
      "Save it again as plain SVG, or take the lines from “<!DOCTYPE” to the next “>” out with a text editor.",
  },
  "svg-size-unreadable": {
    example: { element: "svg", attribute: "width", value: "12em" },
    sentence: (facts, write) =>
      `The ${write.text(facts.attribute)} of “${write.text(facts.element)}” cannot be read: “${write.text(facts.value)}”.`,
    hint: () => "Give it in mm, cm or in, for example 42mm; a viewBox is four numbers.",
  },
  "svg-path-broken": {
    example: { element: "section", character: 37 },
    sentence: (facts, write) =>
      `The path “${write.text(facts.element)}” makes no sense from character ${facts.character} on.`,
    hint: () => "Save the drawing again as plain SVG, or draw that path anew.",
  },
  "svg-transform-broken": {
    example: { element: "layer1" },
    sentence: (facts, write) => `The transform of “${write.text(facts.element)}” cannot be read.`,
    hint: () => "Ungroup it in the drawing program, so that its transform is worked into its points.",
  },
  "svg-style-transform": {
    example: { element: "layer1" },
    sentence: (facts, write) =>
      `“${write.text(facts.element)}” is moved or turned by its style or about an origin of its own, which is not read.`,
    hint: () => "Ungroup it in the drawing program, or write the move as a transform attribute.",
  },

  // DXF.
  "dxf-binary": {
    example: {},
    sentence: () => "This is a binary DXF; only DXF in text is read.",
    hint: () => "Save the drawing again as ASCII DXF.",
  },
  "dxf-broken": {
    example: { line: 211 },
    sentence: (facts) => `The DXF makes no sense from line ${facts.line} on.`,
    hint: () => "Save the drawing again as ASCII DXF.",
  },
  "dxf-cut-short": {
    example: { line: 4012 },
    sentence: (facts) => `The DXF stops at line ${facts.line} without its end mark: a part may be missing.`,
    hint: () => "Copy the file again in full, or save the drawing anew.",
  },
  "dxf-unit-unknown": {
    example: { unit: "3" },
    sentence: (facts, write) =>
      `The DXF's unit ($INSUNITS ${write.text(facts.unit)}) is none a moulding is drawn in.`,
    hint: () => "Set the drawing's unit to millimetres or inches and save it again.",
  },
  "dxf-entity-broken": {
    example: { entity: "SPLINE", layer: "SECTION", line: 320 },
    sentence: (facts, write) =>
      `The ${write.text(facts.entity)} at line ${facts.line} (layer ${write.text(facts.layer)}) is incomplete or holds no proper numbers.`,
    hint: () => "Draw it again, or explode it to lines and arcs in the drawing program.",
  },
  "dxf-block-missing": {
    example: { block: "OVOLO", line: 320 },
    sentence: (facts, write) =>
      `The block “${write.text(facts.block)}”, inserted at line ${facts.line}, is not in the file.`,
    hint: () => "Explode the block in the drawing program, or bind it into the file, and save it again.",
  },
  "dxf-out-of-plane": {
    example: { entity: "ARC", line: 320 },
    sentence: (facts, write) =>
      `The ${write.text(facts.entity)} at line ${facts.line} does not lie flat in the drawing's plane.`,
    hint: () => "Flatten the section into the plan view and save it again.",
  },

  // What is drawn.
  "outline-missing": {
    example: {},
    sentence: () => "No outline is drawn in the file.",
    hint: () =>
      "Draw the finished section as one closed outline: a path called “section” in an SVG, the layer SECTION in a DXF.",
  },
  "outline-several": {
    example: { names: ["path 1", "rim"], more: 0 },
    sentence: (facts, write) =>
      `Several closed outlines could be the section: ${write.list(facts.names)}${facts.more > 0 ? ` and ${facts.more} more` : ""}.`,
    hint: () =>
      "Call the finished section “section” and the stick “stick”: by id in an SVG, by layer in a DXF.",
  },
  "outline-open": {
    example: { element: "section", gapMm: 1.4 },
    sentence: (facts, write) =>
      `The outline “${write.text(facts.element)}” is not closed: its ends are ${write.length(facts.gapMm)} apart.`,
    hint: () => "Join the two ends in the drawing program and save it again.",
  },
  "outline-branches": {
    example: { xMm: 12, yMm: 6, ends: 3 },
    sentence: (facts, write) =>
      `${facts.ends} ends meet at one place of the drawing (x ${write.length(facts.xMm)}, y ${write.length(facts.yMm)}), so that no single outline goes on from there.`,
    hint: () =>
      "Take out lines drawn twice, and put dimensions and help lines on another layer than SECTION.",
  },
  "outline-of-several-rings": {
    example: { element: "section", rings: 2 },
    sentence: (facts, write) =>
      `“${write.text(facts.element)}” is made of ${facts.rings} separate runs; a section is one outline without holes.`,
    hint: () => "Break it apart in the drawing program and keep the outer outline as “section”.",
  },
  "outline-flat": {
    example: { element: "section" },
    sentence: (facts, write) => `“${write.text(facts.element)}” goes round no wood at all.`,
    hint: () => "Draw the finished section as one closed outline.",
  },
  "drawn-stick-several": {
    example: { names: ["stick", "rect 2"], more: 0 },
    sentence: (facts, write) =>
      `More than one outline is called the stick: ${write.list(facts.names)}${facts.more > 0 ? ` and ${facts.more} more` : ""}.`,
    hint: () => "Keep one of them as “stick”.",
  },
  "drawn-stick-assumed": {
    example: { element: "rect 2" },
    sentence: (facts, write) =>
      `The rectangle “${write.text(facts.element)}” around the outline is taken as the stick.`,
    hint: () =>
      "If it is something else, call the finished section “section” in the drawing: it alone is read then.",
  },
  "drawn-stick-broken": {
    example: { element: "stick" },
    sentence: (facts, write) => `The stick “${write.text(facts.element)}” is not one plain closed outline.`,
    hint: () => "Draw the stick as a rectangle, or leave it out and give its size.",
  },

  // Points measured off an old moulding.
  "points-too-few": {
    example: { count: 2, least: 3 },
    sentence: (facts) =>
      `${facts.count === 1 ? "Only one point is" : `Only ${facts.count} points are`} given; ${facts.least} are needed at least.`,
    hint: () => "Measure more points along the face, closer together where it is round.",
  },
  "points-line-unreadable": {
    example: { line: 7, text: "12, 9, 4" },
    sentence: (facts, write) =>
      `Line ${facts.line} of the list, “${write.text(facts.text)}”, does not hold two lengths.`,
    hint: () =>
      "Write one point a line: how far across from the gauge edge, then how high above the back, for example 12.5; 9.",
  },
  "points-depths-need-a-stick": {
    example: {},
    sentence: () => "The list gives depths below the face of a stick whose thickness is not said.",
    hint: () => "Say the stick with --stick, width x thickness, or measure heights above the back instead.",
  },
  "points-under-the-stick": {
    example: { place: 9, depthMm: 21, thicknessMm: 18 },
    sentence: (facts, write) =>
      `Point ${facts.place} lies ${write.length(facts.depthMm)} deep in a stick of ${write.length(facts.thicknessMm)}.`,
    hint: () => "Measure that point again, or take a thicker stick.",
  },
  "points-run-backwards": {
    example: {},
    sentence: () => "The list ends no further from the gauge edge than it begins.",
    hint: () => "Write the points in order, from the gauge edge across to the far edge.",
  },
  "points-in-line": {
    example: { count: 5 },
    sentence: (facts) =>
      `The ${facts.count} points lie in one straight line: no round part goes through them.`,
    hint: () => "Take them as a flat, or measure further round.",
  },
  "point-not-a-place": {
    example: { place: 4 },
    sentence: (facts) => `Point ${facts.place} is no place: a number is missing or beyond all measure.`,
    hint: () => "Measure that point again, or take it out of the list.",
  },

  // Warnings.
  "size-without-unit": {
    example: { widthMm: 42, heightMm: 18 },
    sentence: (facts, write) =>
      `The drawing has no unit; its numbers are taken as millimetres, so that the section is ${write.length(facts.widthMm)} by ${write.length(facts.heightMm)}.`,
    hint: () => "If that is wrong, give the drawing's width and height in mm or in, or set its unit.",
  },
  "size-in-pixels-assumed": {
    example: { widthMm: 42, heightMm: 18 },
    sentence: (facts, write) =>
      `The drawing's size is given without a unit and taken as pixels, 96 to the inch, so that the section is ${write.length(facts.widthMm)} by ${write.length(facts.heightMm)}.`,
    hint: () => "If that is wrong, give the drawing's width and height in mm or in.",
  },
  "noise-sides": {
    example: { places: 3, farthestMm: 0.004 },
    sentence: (facts, write) =>
      `${placesWord(facts.places)} off the stick's sides by ${hair(facts.farthestMm, write)} at most ${facts.places === 1 ? "is" : "are"} taken to lie on them.`,
    hint: () => "Nothing needs doing, unless a sliver that thin was meant.",
  },
  "noise-ends": {
    example: { places: 2, farthestMm: 0.006 },
    sentence: (facts, write) =>
      `${placesWord(facts.places)} where ends lie apart by ${hair(facts.farthestMm, write)} at most ${facts.places === 1 ? "is" : "are"} taken as joined.`,
    hint: () => "Nothing needs doing, unless a piece that short was meant.",
  },
  "noise-tangency": {
    example: { places: 4, farthestMm: 0.003 },
    sentence: (facts, write) =>
      `${placesWord(facts.places)} where a curve misses running on smoothly by a hair ${facts.places === 1 ? "is" : "are"} taken as smooth, moved by ${hair(facts.farthestMm, write)} at most.`,
    hint: () => "Nothing needs doing, unless an arris that faint was meant.",
  },
  "points-taken-as-parts": {
    example: { points: 61, flats: 4, arcs: 3, offMm: 0.14 },
    sentence: (facts, write) =>
      `${facts.points} measured points are taken as ${facts.flats === 1 ? "one flat" : `${facts.flats} flats`} and ${facts.arcs === 1 ? "one arc" : `${facts.arcs} arcs`}; none lies further off than ${write.length(facts.offMm)}.`,
    hint: () =>
      "Lay the section as read over the old moulding. If it follows slips of the gauge, give a line “within; 0.4 mm”; if it misses an arris, measure closer there.",
  },
  "chords-taken-as-arcs": {
    example: { lines: 96, arcs: 3, farthestMm: 0.002 },
    sentence: (facts, write) =>
      `${facts.lines} short lines in a row are taken as ${facts.arcs === 1 ? "one arc" : `${facts.arcs} arcs`}, whose corners they keep to within ${write.length(facts.farthestMm)}.`,
    hint: () => "Nothing needs doing, unless facets that fine were meant.",
  },
  "chords-taken-as-curves": {
    example: { lines: 140, curves: 1 },
    sentence: (facts) =>
      `${facts.lines} short lines in a row are taken as ${facts.curves === 1 ? "one free curve" : `${facts.curves} free curves`}.`,
    hint: () => "Nothing needs doing, unless facets that fine were meant.",
  },
  "arc-radius-grown": {
    example: { element: "section", grownMm: 0.4 },
    sentence: (facts, write) =>
      `An arc of “${write.text(facts.element)}” has too small a radius to reach both its ends; it was enlarged by ${write.length(facts.grownMm)}, as the standard of SVG wants it.`,
    hint: () => "Look at the section as read; correct the arc's radius if it is not what you drew.",
  },
  "dxf-entities-left-out": {
    example: { kinds: ["HATCH", "TEXT"], count: 7 },
    sentence: (facts, write) =>
      `${facts.count === 1 ? "One thing" : `${facts.count} things`} on the section's layer ${facts.count === 1 ? "is" : "are"} no part of its outline and left out: ${write.list(facts.kinds)}.`,
    hint: () => "Look at the section as read; if something is missing, explode it to lines and arcs.",
  },
});

/** The most that something is off, which may be less than is ever written: never told as nothing at all. */
function hair(farthestMm: number, write: Writer): string {
  return write.length(Math.max(farthestMm, 2 * WRITTEN_MM));
}

function placesWord(places: number): string {
  return places === 1 ? "One place" : `${places} places`;
}
