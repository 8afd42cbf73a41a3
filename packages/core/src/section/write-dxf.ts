/** Writes outlines as a DXF drawing, in millimetres, by layers; of a section the layers SECTION and STICK. */
import {
  chainFromVertices,
  type Extents,
  extentsOf,
  ringFromVertices,
  type Vertex,
  verticesOf,
} from "../curve/index.ts";
import { cleanName } from "./read-limits.ts";
import type { Section } from "./types.ts";
import { numberText } from "./write-path.ts";

/** Decimals of coordinates (the grid of 1e-6 mm) and of bulges (as fine on the largest section). */
const COORDINATE_DECIMALS = 6;
const BULGE_DECIMALS = 12;

/** Colours by number of the DXF reference: white or black for the section, grey for the stick. */
const SECTION_COLOUR = 7;
const STICK_COLOUR = 8;

/** Outlines of one sort: closed, or open lines. */
export interface DxfLayer {
  /** Letters, digits, blanks and dashes of ASCII. */
  readonly name: string;
  /** By number of the DXF reference. */
  readonly colour: number;
  readonly outlines: readonly DxfOutline[];
}

export interface DxfOutline {
  readonly vertices: readonly Vertex[];
  readonly isClosed: boolean;
}

/**
 * DXF of release 2000 (AC1015), the oldest with light polylines, so that old and new programs read it. Lines and arcs
 * are exact (bulges); a free curve is written as the short lines it is held in. Source: the published DXF reference;
 * written by hand because of the few records needed, each of which stands below.
 */
export function writeDxfSection(section: Section): string {
  const layer = (name: string, colour: number, vertices: readonly Vertex[]): DxfLayer => ({
    name,
    colour,
    outlines: [{ vertices, isClosed: true }],
  });
  return dxfText(
    section.name,
    [
      layer("SECTION", SECTION_COLOUR, verticesOf(section.outline)),
      layer("STICK", STICK_COLOUR, verticesOf(section.stick)),
    ],
    ["STICK", "SECTION"],
  );
}

/** Any outlines by layers, as `writeDxfSection` writes a section; at least one outline. */
export function writeDxfLayers(name: string, layers: readonly DxfLayer[]): string {
  return dxfText(
    name,
    layers,
    layers.map((layer) => layer.name),
  );
}

/** `order` is that of the outlines in the file, by their layers. */
function dxfText(name: string, layers: readonly DxfLayer[], order: readonly string[]): string {
  const box = boxOfAll(layers);
  const handles = handleCounter();
  const drawn = order.flatMap((wanted) =>
    layers
      .filter((layer) => layer.name === wanted)
      .flatMap((layer) => layer.outlines.map((outline) => ({ outline, layer: layer.name }))),
  );
  const groups: (string | number)[] = [
    ...[999, oneLine(name)],
    ...[0, "SECTION", 2, "HEADER"],
    ...[9, "$ACADVER", 1, "AC1015"],
    ...[9, "$HANDSEED", 5, "FFFF"],
    ...[9, "$INSUNITS", 70, 4],
    ...[9, "$MEASUREMENT", 70, 1],
    ...[9, "$EXTMIN", 10, coordinate(box.minX), 20, coordinate(box.minY), 30, "0"],
    ...[9, "$EXTMAX", 10, coordinate(box.maxX), 20, coordinate(box.maxY), 30, "0"],
    ...[0, "ENDSEC"],
    ...tables(layers, handles),
    ...blocks(handles),
    ...[0, "SECTION", 2, "ENTITIES"],
    ...drawn.flatMap(({ outline, layer }) => polyline(outline, layer, handles)),
    ...[0, "ENDSEC"],
    ...objects(handles),
    ...[0, "EOF"],
  ];
  let text = "";
  for (let i = 0; i < groups.length; i += 2) text += `${String(groups[i]).padStart(3)}\n${groups[i + 1]}\n`;
  return text;
}

function boxOfAll(layers: readonly DxfLayer[]): Extents {
  const boxes = layers.flatMap((layer) =>
    layer.outlines.map(({ vertices, isClosed }) =>
      extentsOf(isClosed ? ringFromVertices(vertices) : chainFromVertices(vertices)),
    ),
  );
  return {
    minX: Math.min(...boxes.map((box) => box.minX)),
    minY: Math.min(...boxes.map((box) => box.minY)),
    maxX: Math.max(...boxes.map((box) => box.maxX)),
    maxY: Math.max(...boxes.map((box) => box.maxY)),
  };
}

type Groups = readonly (string | number)[];
type Handles = () => string;

/** Handle of the one model space record, which the entities belong to. */
const MODEL_SPACE = "1F";
const PAPER_SPACE = "1E";

function handleCounter(): Handles {
  let next = 0x100;
  return () => (next++).toString(16).toUpperCase();
}

function polyline({ vertices, isClosed }: DxfOutline, layer: string, handles: Handles): Groups {
  return [
    ...[0, "LWPOLYLINE", 5, handles(), 330, MODEL_SPACE, 100, "AcDbEntity", 8, layer],
    ...[100, "AcDbPolyline", 90, vertices.length, 70, isClosed ? 1 : 0, 43, "0"],
    ...vertices.flatMap(([x, y, bulge = 0]) => {
      const place = [10, coordinate(x), 20, coordinate(y)];
      return bulge === 0 ? place : [...place, 42, numberText(bulge, BULGE_DECIMALS)];
    }),
  ];
}

function tables(layers: readonly DxfLayer[], handles: Handles): Groups {
  const table = (name: string, count: number, entries: Groups): Groups => {
    const head = [0, "TABLE", 2, name, 5, handles(), 330, "0", 100, "AcDbSymbolTable", 70, count];
    return [...head, ...entries, 0, "ENDTAB"];
  };
  const record = (kind: string, handle: string, subclass: string, name: string, rest: Groups): Groups => [
    ...[0, kind, kind === "DIMSTYLE" ? 105 : 5, handle, 330, "0", 100, "AcDbSymbolTableRecord"],
    ...[100, subclass, 2, name],
    ...rest,
  ];
  const lineType = (name: string): Groups =>
    record("LTYPE", handles(), "AcDbLinetypeTableRecord", name, [70, 0, 3, "", 72, 65, 73, 0, 40, "0"]);
  const layer = (name: string, colour: number): Groups =>
    record("LAYER", handles(), "AcDbLayerTableRecord", name, [70, 0, 62, colour, 6, "CONTINUOUS"]);
  return [
    ...[0, "SECTION", 2, "TABLES"],
    ...table("VPORT", 0, []),
    ...table("LTYPE", 3, [...lineType("BYBLOCK"), ...lineType("BYLAYER"), ...lineType("CONTINUOUS")]),
    ...table("LAYER", layers.length + 1, [
      ...layer("0", SECTION_COLOUR),
      ...layers.flatMap(({ name, colour }) => layer(name, colour)),
    ]),
    ...table("STYLE", 0, []),
    ...table("VIEW", 0, []),
    ...table("UCS", 0, []),
    ...table("APPID", 1, record("APPID", handles(), "AcDbRegAppTableRecord", "ACAD", [70, 0])),
    ...table("DIMSTYLE", 0, []),
    ...table("BLOCK_RECORD", 2, [
      ...record("BLOCK_RECORD", MODEL_SPACE, "AcDbBlockTableRecord", "*Model_Space", []),
      ...record("BLOCK_RECORD", PAPER_SPACE, "AcDbBlockTableRecord", "*Paper_Space", []),
    ]),
    ...[0, "ENDSEC"],
  ];
}

function blocks(handles: Handles): Groups {
  const block = (name: string, owner: string): Groups => [
    ...[0, "BLOCK", 5, handles(), 330, owner, 100, "AcDbEntity", 8, "0"],
    ...[100, "AcDbBlockBegin", 2, name, 70, 0, 10, "0", 20, "0", 30, "0", 3, name, 1, ""],
    ...[0, "ENDBLK", 5, handles(), 330, owner, 100, "AcDbEntity", 8, "0", 100, "AcDbBlockEnd"],
  ];
  return [
    ...[0, "SECTION", 2, "BLOCKS"],
    ...block("*Model_Space", MODEL_SPACE),
    ...block("*Paper_Space", PAPER_SPACE),
    ...[0, "ENDSEC"],
  ];
}

/** The root dictionary, without which strict programs refuse the file. */
function objects(handles: Handles): Groups {
  const root = handles();
  const groups = handles();
  return [
    ...[0, "SECTION", 2, "OBJECTS"],
    ...[0, "DICTIONARY", 5, root, 330, "0", 100, "AcDbDictionary", 281, 1, 3, "ACAD_GROUP", 350, groups],
    ...[0, "DICTIONARY", 5, groups, 330, root, 100, "AcDbDictionary", 281, 1],
    ...[0, "ENDSEC"],
  ];
}

function coordinate(valueMm: number): string {
  return numberText(valueMm, COORDINATE_DECIMALS);
}

/** A name on one line, letters beyond ASCII by their numbers, as files of this release want them. */
function oneLine(text: string): string {
  return cleanName(text).replace(
    /[^ -~]/g,
    (sign) => `\\U+${sign.charCodeAt(0).toString(16).toUpperCase().padStart(4, "0")}`,
  );
}
