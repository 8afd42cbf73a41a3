/**
 * The file of what was measured on a test piece or a half-done stick: planes as they really cut, and how far cuts came
 * out from their places. What is read is already held against the plan and the shelf that it belongs to.
 */
import {
  checkHeader,
  closedObject,
  type Plan,
  type PlanCut,
  pathText,
  readJsonText,
  troublesOf,
} from "../cutting/index.ts";
import {
  cataloguedTrouble,
  fine,
  type LengthUnit,
  type Outcome,
  readLength,
  refused,
  type Trouble,
  z,
} from "../measure/index.ts";
import { type Measured, measuredShelf } from "../planning/index.ts";
import { type Plane, readShelf, type Shelf, shelfFile } from "../shelf/index.ts";
import { planeUnknown } from "./left-out.ts";

export const MEASURED_FORMAT = "mouldwright/measured";
export const MEASURED_VERSION = 1;

export const MEASURED_LIMITS = {
  mostCharacters: 1_000_000,
  mostNoteCharacters: 20_000,
  /** A cut further out than this was another cut, mm. */
  farthestOffMm: 10,
} as const;

// Whether a length can be is `readLength`'s to say, with its own words.
const length = z
  .union([z.number(), z.string()])
  .describe("a number in the file's unit, or text such as 3/8 in");

export const measuredSchema = closedObject({
  format: z.literal(MEASURED_FORMAT),
  version: z.literal(MEASURED_VERSION),
  unit: z.enum(["mm", "in"]).optional().describe("of numbers without one of their own; mm if absent"),
  notes: z.string().max(MEASURED_LIMITS.mostNoteCharacters).optional(),
  planes: z
    .record(z.string(), closedObject({ width: length.optional(), radius: length.optional() }))
    .optional()
    .describe("by the plane's id on the shelf"),
  cuts: z
    .record(z.string(), closedObject({ across: length.optional(), deeper: length.optional() }))
    .optional()
    .describe(
      "by the cut's number: across to the right, deeper into the wood; less than nought the other way",
    ),
});

/** What the measurements are held against. */
export interface MeasuredPiece {
  readonly plan: Plan;
  readonly shelf: Shelf;
  /** Cuts that are made, counted from the first. */
  readonly after: number;
}

/**
 * The measurements of a file. Refuses what is no such file, keys it does not know (with the nearest it does), planes
 * that are not on the shelf, sizes a plane does not have or cannot have, cuts that are not made yet, sawn cuts, and
 * places out by more than `MEASURED_LIMITS.farthestOffMm`. Never throws.
 */
export function readMeasured(fileText: string, piece: MeasuredPiece): Outcome<Measured> {
  const json = readJsonText(fileText, MEASURED_LIMITS);
  if (!json.ok) return json;
  const otherFile = checkHeader(json.value, MEASURED_FORMAT, MEASURED_VERSION);
  if (otherFile !== null) return refused(otherFile);
  const parsed = measuredSchema.safeParse(json.value);
  if (!parsed.success) return refused(...troublesOf(parsed.error.issues, json.value));
  const { unit = "mm", planes = {}, cuts = {} } = parsed.data;
  const troubles: Trouble[] = [];
  for (const id of strayKeys(json.value, "planes", planes)) planeSizes(piece.shelf, id, {}, unit, troubles);
  for (const number of strayKeys(json.value, "cuts", cuts)) cutOff(piece, number, {}, unit, troubles);
  const measured: Measured = {
    planes: Object.fromEntries(
      Object.entries(planes).map(([id, sizes]) => [id, planeSizes(piece.shelf, id, sizes, unit, troubles)]),
    ),
    cuts: Object.fromEntries(
      Object.entries(cuts).map(([number, off]) => [number, cutOff(piece, number, off, unit, troubles)]),
    ),
  };
  const [first, ...more] = troubles;
  return first === undefined ? asPlanes(measured, piece.shelf) : refused(first, ...more);
}

/** Keys that a record passes over in silence, since they reach into the language itself. */
function strayKeys(file: unknown, group: "planes" | "cuts", read: object): readonly string[] {
  const raw = (file as Readonly<Record<string, unknown>>)[group];
  if (typeof raw !== "object" || raw === null) return [];
  return Object.keys(raw).filter((key) => !Object.hasOwn(read, key));
}

type Typed = number | string | undefined;

function planeSizes(
  shelf: Shelf,
  id: string,
  sizes: { readonly width?: Typed; readonly radius?: Typed },
  unit: LengthUnit,
  troubles: Trouble[],
): { readonly widthMm?: number; readonly radiusMm?: number } {
  const where = pathText(["planes", id]);
  const plane = shelf.planes.find((one) => one.id === id);
  if (plane === undefined) {
    troubles.push(planeUnknown(shelf, id, where));
    return {};
  }
  const known = sizesOf(plane);
  for (const key of ["width", "radius"] as const) {
    if (sizes[key] !== undefined && !known.includes(key)) {
      troubles.push(
        cataloguedTrouble("measured-size-other", `${where}.${key}`, { kind: plane.kind, size: key }),
      );
    }
  }
  const lengthOf = (key: "width" | "radius"): number | undefined => {
    const typed = sizes[key];
    if (typed === undefined) return undefined;
    const read = readLength(typed, { unit, where: `${where}.${key}` });
    if (read.ok) return read.value.mm;
    troubles.push(read.trouble);
    return undefined;
  };
  const widthMm = lengthOf("width");
  const radiusMm = lengthOf("radius");
  return {
    ...(widthMm === undefined ? {} : { widthMm }),
    ...(radiusMm === undefined ? {} : { radiusMm }),
  };
}

/** The sizes a rule or a gauge finds on a plane of this kind. */
function sizesOf(plane: Plane): readonly ("width" | "radius")[] {
  switch (plane.kind) {
    case "hollow":
    case "round":
      return ["width", "radius"];
    case "plough":
    case "shaped":
      return [];
    default:
      return ["width"];
  }
}

function cutOff(
  { plan, after }: MeasuredPiece,
  number: string,
  off: { readonly across?: Typed; readonly deeper?: Typed },
  unit: LengthUnit,
  troubles: Trouble[],
): { readonly acrossMm?: number; readonly deeperMm?: number } {
  const where = pathText(["cuts", number]);
  const made = plan.cuts.slice(0, after);
  const cut = made.find((one) => String(one.number) === number);
  if (cut === undefined) {
    troubles.push(cataloguedTrouble("measured-cut-unknown", where, { number, ...nearestCut(made, number) }));
    return {};
  }
  if (cut.line !== undefined) {
    troubles.push(cataloguedTrouble("measured-cut-sawn", where, { number: cut.number }));
    return {};
  }
  const lengthOf = (key: "across" | "deeper"): number | undefined => {
    const typed = off[key];
    if (typed === undefined) return undefined;
    const read = readSigned(typed, unit, `${where}.${key}`);
    if (read.ok) return read.value;
    troubles.push(read.trouble);
    return undefined;
  };
  const acrossMm = lengthOf("across");
  const deeperMm = lengthOf("deeper");
  return {
    ...(acrossMm === undefined ? {} : { acrossMm }),
    ...(deeperMm === undefined ? {} : { deeperMm }),
  };
}

/** The made cut whose number is nearest, and how many are made; 0 where none is. */
function nearestCut(made: readonly PlanCut[], number: string): { nearest: number; made: number } {
  const last = made.at(-1)?.number ?? 0;
  const wanted = Number(number);
  if (!Number.isFinite(wanted) || last === 0) return { nearest: last, made: last };
  const nearest = made.reduce(
    (best, cut) => (Math.abs(cut.number - wanted) < Math.abs(best - wanted) ? cut.number : best),
    last,
  );
  return { nearest, made: last };
}

/** A length that may be less than nought, mm. */
function readSigned(typed: number | string, unit: LengthUnit, where: string): Outcome<number> {
  const text = typeof typed === "string" ? typed.trim().replace(/^\u2212/, "-") : typed;
  const isBelow = typeof text === "string" ? text.startsWith("-") : text < 0;
  const size = typeof text === "string" ? text.replace(/^[-+]/, "") : Math.abs(text);
  const read = readLength(size, { unit, where });
  if (!read.ok) return read;
  const { mm } = read.value;
  if (mm > MEASURED_LIMITS.farthestOffMm) {
    const mostMm = MEASURED_LIMITS.farthestOffMm;
    return refused(cataloguedTrouble("measured-cut-far-off", where, { offMm: mm, mostMm }));
  }
  return fine(isBelow && mm !== 0 ? -mm : mm);
}

/** Whether the planes can have the measured sizes, judged by the reader of shelves. */
function asPlanes(measured: Measured, shelf: Shelf): Outcome<Measured> {
  const read = readShelf(shelfFile(measuredShelf(shelf, measured)));
  const there = (trouble: Trouble): Trouble => ({ ...trouble, where: whereMeasured(trouble.where, shelf) });
  if (!read.ok) return refused(there(read.trouble), ...(read.more ?? []).map(there));
  const said = read.warnings.filter(({ where }) => {
    const plane = shelf.planes[indexIn(where)];
    return plane !== undefined && Object.hasOwn(measured.planes ?? {}, plane.id);
  });
  return fine(measured, said.map(there));
}

/** `planes[3].radius` of the shelf's reader, as it stands in the measured file. */
function whereMeasured(where: string, shelf: Shelf): string {
  const plane = shelf.planes[indexIn(where)];
  return plane === undefined ? where : where.replace(/^planes\[\d+\]/, pathText(["planes", plane.id]));
}

function indexIn(where: string): number {
  return Number(/^planes\[(\d+)\]/.exec(where)?.[1] ?? -1);
}
