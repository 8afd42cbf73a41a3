/** Walks an SVG's elements and gathers the outlines drawn in it, each mapped to millimetres, y up. */
import type { XmlElement } from "@rgrove/parse-xml";
import { cataloguedTrouble, DRAWING_NOISE_MM, type Trouble, type TroubleCode } from "../measure/index.ts";
import { type Affine, after } from "./read-affine.ts";
import { type DrawnCurve, mapCurve } from "./read-curves.ts";
import { cleanName, DEEPEST_NESTING, MOST_POINTS } from "./read-limits.ts";
import { type Reading, refuse } from "./read-troubles.ts";
import { readStyle, readTransform } from "./svg-attributes.ts";
import { type DrawnRun, readPathData } from "./svg-path-data.ts";
import { shapeCurves } from "./svg-shapes.ts";

/** One drawn element, or one that should have been and could not be read. */
export interface SvgOutline {
  /** Its own id, else what it is and which: "path 3". */
  readonly name: string;
  /** Ids and labels of itself and of the groups it stands in, its own first. */
  readonly calledBy: readonly Called[];
  readonly runs: readonly DrawnRun[];
  /** By how much an arc had to grow to reach its ends, mm; 0 if none. */
  readonly grownMm: number;
  /** Refuses the drawing if this element is wanted. */
  readonly trouble: Trouble<TroubleCode> | null;
}

export interface Called {
  readonly id: string;
  readonly label: string;
}

/** What only holds other elements; everything not named here or drawn is left unread (defs, symbol, use, script …). */
const GROUPS: ReadonlySet<string> = new Set(["g", "switch"]);
const SHAPES: ReadonlySet<string> = new Set(["path", "rect", "circle", "ellipse", "polygon", "polyline"]);

interface Standing {
  readonly map: Affine;
  readonly calledBy: readonly Called[];
  readonly hidden: boolean;
  readonly depth: number;
}

export function svgOutlines(reading: Reading, root: XmlElement, pageToMm: Affine): SvgOutline[] {
  const outlines: SvgOutline[] = [];
  const counts = new Map<string, number>();
  let curveCount = 0;

  const visit = (element: XmlElement, above: Standing): void => {
    const kind = localName(element.name);
    if (!GROUPS.has(kind) && !SHAPES.has(kind)) return;
    if (above.depth >= DEEPEST_NESTING) {
      refuse(reading, "drawing-too-deep", "", { deepest: DEEPEST_NESTING });
      return;
    }
    const { attributes } = element;
    const style = readStyle(attributes.style);
    const display = style.get("display") ?? attributes.display?.trim();
    if (display === "none") return;
    const visibility = style.get("visibility") ?? attributes.visibility?.trim();
    const hidden =
      visibility === undefined || visibility === "inherit" ? above.hidden : visibility !== "visible";
    const number = (counts.get(kind) ?? 0) + 1;
    counts.set(kind, number);
    const own = { id: cleanName(attributes.id ?? ""), label: labelOf(attributes) };
    const name = own.id !== "" ? own.id : `${kind} ${number}`;
    const calledBy = own.id === "" && own.label === "" ? above.calledBy : [own, ...above.calledBy];
    const transform = readTransform(attributes.transform ?? "");
    const trouble = transformTrouble(name, transform, style, attributes);
    if (GROUPS.has(kind)) {
      if (trouble !== null) {
        reading.refusal ??= trouble;
        return;
      }
      const map = after(above.map, transform!);
      for (const child of elementsOf(element))
        visit(child, { map, calledBy, hidden, depth: above.depth + 1 });
      return;
    }
    if (hidden || reading.refusal !== null) return;
    if (trouble !== null) {
      outlines.push({ name, calledBy, runs: [], grownMm: 0, trouble });
      return;
    }
    const map = after(above.map, transform!);
    const outline =
      kind === "path"
        ? pathOutline(reading, name, attributes, map)
        : shapeOutline(kind, name, attributes, map);
    for (const run of outline.runs) curveCount += run.curves.length;
    if (curveCount > MOST_POINTS) {
      refuse(reading, "drawing-too-many-points", "", { most: MOST_POINTS });
      return;
    }
    if (outline.runs.length > 0 || outline.trouble !== null) outlines.push({ ...outline, calledBy });
  };

  const standing = { map: pageToMm, calledBy: [], hidden: false, depth: 0 };
  for (const child of elementsOf(root)) visit(child, standing);
  return outlines;
}

/** The name without its namespace prefix: some programs write svg:path. */
export function localName(name: string): string {
  return name.slice(name.indexOf(":") + 1);
}

function elementsOf(element: XmlElement): XmlElement[] {
  return element.children.filter((child): child is XmlElement => child.type === "element");
}

/** The name a person gave in the drawing program's list of objects; where that program keeps it beside the id. */
function labelOf(attributes: Readonly<Record<string, string>>): string {
  for (const [name, value] of Object.entries(attributes)) {
    if (name === "inkscape:label" || name === "serif:id" || name === "data-name") return cleanName(value);
  }
  return "";
}

function transformTrouble(
  name: string,
  transform: Affine | null,
  style: ReadonlyMap<string, string>,
  attributes: Readonly<Record<string, string>>,
): Trouble<TroubleCode> | null {
  if (transform === null) return cataloguedTrouble("svg-transform-broken", name, { element: name });
  const inStyle = style.get("transform");
  if ((inStyle !== undefined && inStyle !== "none") || attributes["transform-origin"] !== undefined) {
    return cataloguedTrouble("svg-style-transform", name, { element: name });
  }
  return null;
}

function pathOutline(
  reading: Reading,
  name: string,
  attributes: Readonly<Record<string, string>>,
  map: Affine,
): Omit<SvgOutline, "calledBy"> {
  const data = readPathData(attributes.d ?? "");
  if (data.tooMany) refuse(reading, "drawing-too-many-points", name, { most: MOST_POINTS });
  const trouble: Trouble<TroubleCode> | null =
    data.brokenAt === null
      ? null
      : cataloguedTrouble("svg-path-broken", name, { element: name, character: data.brokenAt + 1 });
  const runs = data.runs.map(({ curves, closed }) => ({ curves: mapped(curves, map), closed }));
  const grownMm = data.grownBy * Math.max(Math.hypot(map.a, map.b), Math.hypot(map.c, map.d));
  return { name, runs, grownMm: grownMm > DRAWING_NOISE_MM ? grownMm : 0, trouble };
}

function shapeOutline(
  kind: string,
  name: string,
  attributes: Readonly<Record<string, string>>,
  map: Affine,
): Omit<SvgOutline, "calledBy"> {
  const curves = shapeCurves(kind, attributes);
  if (curves === null)
    return {
      name,
      runs: [],
      grownMm: 0,
      trouble: cataloguedTrouble("svg-size-unreadable", name, {
        element: name,
        attribute: "size",
        value: "",
      }),
    };
  const runs = curves.length === 0 ? [] : [{ curves: mapped(curves, map), closed: kind !== "polyline" }];
  return { name, runs, grownMm: 0, trouble: null };
}

function mapped(curves: readonly DrawnCurve[], map: Affine): DrawnCurve[] {
  return curves.map((curve) => mapCurve(map, curve));
}
