/** A plan's outlines for other programs: by layers named in the trade's words, in millimetres, x from the stick's left, y up. */
import {
  chainFromVertices,
  extentsOf,
  type Piece,
  type Ring,
  ringFromVertices,
  splitPiece,
  sweepRad,
  type Vertex,
} from "../curve/index.ts";
import type { Plan } from "../cutting/index.ts";
import { SAME_POINT_MM, toDeg } from "../measure/index.ts";
import { type DxfLayer, svgPathOfRing, writeDxfLayers } from "../section/index.ts";
import { escapedText } from "./escaped-text.ts";
import { axisOf } from "./plane-axis.ts";
import { mirroredVertex, negativeOf, PAPER_ALLOWANCE_MM } from "./template-outline.ts";

/** Colours by number of the DXF reference. */
const BLACK = 7;
const GREY = 8;
const RED = 1;
const BLUE = 5;
const GREEN = 3;

const BESIDE_MM = 20;
const LINE_OVER_MM = 10;

/**
 * The layers: stick, section, lines to scribe and centre lines in their places; the far end's template beside the
 * stick; profile and block over the section; the wood after each cut in the stick's place, one layer a cut.
 */
export function exportLayers(plan: Plan): readonly DxfLayer[] {
  const box = extentsOf(ringFromVertices(plan.stick));
  const besideMm = box.maxX - box.minX + BESIDE_MM;
  const farEnd = (ring: readonly Vertex[]): readonly Vertex[] =>
    anticlockwise(ring.map((vertex) => moved(mirroredVertex(vertex, box.minX, box.maxX), besideMm)));
  const layers: readonly DxfLayer[] = [
    { name: "STICK", colour: GREY, outlines: [closed(plan.stick)] },
    { name: "SECTION", colour: BLACK, outlines: [closed(plan.section)] },
    { name: "FAR END", colour: BLACK, outlines: [closed(farEnd(plan.stick)), closed(farEnd(plan.section))] },
    { name: "LINES", colour: RED, outlines: gaugeLines(plan).map(open) },
    { name: "DEPTHS", colour: RED, outlines: depthLines(plan).map(open) },
    { name: "CENTRE LINES", colour: GREEN, outlines: centreLines(plan).map(open) },
    { name: "CARD PROFILE", colour: BLUE, outlines: [closed(negativeOf(plan))] },
    { name: "SANDING BLOCK", colour: BLUE, outlines: [closed(negativeOf(plan, PAPER_ALLOWANCE_MM))] },
    ...plan.cuts.map(
      (cut): DxfLayer => ({
        name: `AFTER CUT ${String(cut.number).padStart(2, "0")}`,
        colour: GREY,
        outlines: cut.after.map(closed),
      }),
    ),
  ];
  return layers.filter((layer) => layer.outlines.length > 0);
}

function closed(vertices: readonly Vertex[]): DxfLayer["outlines"][number] {
  return { vertices, isClosed: true };
}

function open(vertices: readonly Vertex[]): DxfLayer["outlines"][number] {
  return { vertices, isClosed: false };
}

function moved([x, y, bulge]: Vertex, acrossMm: number): Vertex {
  return bulge === undefined ? [x + acrossMm, y] : [x + acrossMm, y, bulge];
}

/** A mirrored ring runs clockwise; travelled the other way it is anticlockwise again. */
function anticlockwise(ring: readonly Vertex[]): readonly Vertex[] {
  return [...ring].reverse().map(([x, y], index): Vertex => {
    const before = ring[(ring.length - 2 - index + ring.length) % ring.length];
    const bulge = before?.[2] ?? 0;
    return bulge === 0 ? [x, y] : [x, y, -bulge];
  });
}

function gaugeLines(plan: Plan): readonly (readonly Vertex[])[] {
  const box = extentsOf(ringFromVertices(plan.stick));
  const places = distinct(plan.marks.filter((mark) => mark.kind !== "depth").map((mark) => mark.at[0]));
  return places.map((x): readonly Vertex[] => [
    [x, box.minY - LINE_OVER_MM],
    [x, box.maxY + LINE_OVER_MM],
  ]);
}

function depthLines(plan: Plan): readonly (readonly Vertex[])[] {
  const box = extentsOf(ringFromVertices(plan.stick));
  const heights = distinct(plan.marks.filter((mark) => mark.kind === "depth").map((mark) => mark.at[1]));
  return heights.map((y): readonly Vertex[] => [
    [box.minX - LINE_OVER_MM, y],
    [box.maxX + LINE_OVER_MM, y],
  ]);
}

function centreLines(plan: Plan): readonly (readonly Vertex[])[] {
  const box = extentsOf(ringFromVertices(plan.stick));
  const lengthMm = box.maxY - box.minY + 2 * LINE_OVER_MM;
  return plan.cuts.flatMap((cut): readonly (readonly Vertex[])[] => {
    const axis = axisOf(cut);
    if (axis === null) return [];
    const [x, y] = axis.at;
    const at = (mm: number): Vertex => [x + axis.up[0] * mm, y + axis.up[1] * mm];
    return [[at(-LINE_OVER_MM), at(lengthMm)]];
  });
}

function distinct(values: readonly number[]): readonly number[] {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted.filter((value, index) => index === 0 || value - (sorted[index - 1] ?? 0) > SAME_POINT_MM);
}

/** The layers as a DXF drawing, units set to millimetres. */
export function exportDxf(plan: Plan): string {
  return writeDxfLayers(plan.name, exportLayers(plan));
}

const DECIMALS = 6;
const LINE_WIDTH_MM = 0.1;
/** The layers' colours, as a screen shows them on white. */
const SHOWN: Readonly<Record<number, string>> = {
  [BLACK]: "#000000",
  [GREY]: "#808080",
  [RED]: "#d55e00",
  [BLUE]: "#0072b2",
  [GREEN]: "#009e73",
};

/**
 * The layers as an SVG drawing in millimetres: one group a layer, its name as id and title; arcs stay arcs. y is turned
 * over by one transform of all layers, so that the numbers in the file are those of the plan.
 */
export function exportSvg(plan: Plan): string {
  const layers = exportLayers(plan);
  const boxes = layers.flatMap((layer) =>
    layer.outlines.map(({ vertices, isClosed }) =>
      extentsOf(isClosed ? ringFromVertices(vertices) : chainFromVertices(vertices)),
    ),
  );
  const minX = Math.min(...boxes.map((box) => box.minX)) - 1;
  const minY = Math.min(...boxes.map((box) => box.minY)) - 1;
  const maxX = Math.max(...boxes.map((box) => box.maxX)) + 1;
  const maxY = Math.max(...boxes.map((box) => box.maxY)) + 1;
  const widthMm = decimal(maxX - minX);
  const heightMm = decimal(maxY - minY);
  return [
    '<?xml version="1.0" encoding="UTF-8"?>',
    `<svg xmlns="http://www.w3.org/2000/svg" width="${widthMm}mm" height="${heightMm}mm" viewBox="${decimal(minX)} ${decimal(-maxY)} ${widthMm} ${heightMm}">`,
    `<title>${escapedText(plan.name).trim()}</title>`,
    `<g fill="none" stroke-width="${LINE_WIDTH_MM}" transform="scale(1 -1)">`,
    ...layers.flatMap((layer) => [
      `<g id="${layer.name.toLowerCase().replaceAll(" ", "-")}" stroke="${SHOWN[layer.colour] ?? "#000000"}">`,
      `<title>${layer.name.charAt(0)}${layer.name.slice(1).toLowerCase()}</title>`,
      ...layer.outlines.map(({ vertices, isClosed }) => `<path d="${pathOf(vertices, isClosed)}"/>`),
      "</g>",
    ]),
    "</g>",
    "</svg>",
    "",
  ].join("\n");
}

/** Most of an arc that one step of a path draws, degrees. */
const MOST_ARC_DEG = 45;

/**
 * Arcs are written in steps of 45° or less: programs that turn them into curves, a quarter at a time, would be out by
 * thousandths of a millimetre else.
 */
function inSteps(ring: Ring): Ring {
  return {
    pieces: ring.pieces.flatMap((piece): readonly Piece[] => {
      if (piece.kind === "line") return [piece];
      const count = Math.ceil(Math.abs(toDeg(sweepRad(piece))) / MOST_ARC_DEG);
      const pieces: Piece[] = [];
      let rest: Piece = piece;
      for (let left = count; left > 1; left--) {
        const [first, second] = splitPiece(rest, 1 / left);
        pieces.push(first);
        rest = second;
      }
      return [...pieces, rest];
    }),
  };
}

function pathOf(vertices: readonly Vertex[], isClosed: boolean): string {
  if (isClosed) return svgPathOfRing(inSteps(ringFromVertices(vertices)), DECIMALS);
  return vertices.map(([x, y], index) => `${index === 0 ? "M" : "L"}${decimal(x)} ${decimal(y)}`).join("");
}

function decimal(value: number): string {
  const text = value.toFixed(DECIMALS).replace(/\.?0+$/, "");
  return text === "-0" ? "0" : text;
}
