/** Reads one plane of a shelf file: keys, then lengths, then what the sizes mean together. */
import {
  cataloguedTrouble,
  cleanText,
  fine,
  INCH_MM,
  isPrintable,
  type LengthUnit,
  quoted,
  readLength,
  refused,
} from "../measure/index.ts";
import { buildPlane } from "./build-plane.ts";
import {
  type FilePlane,
  type FileUnit,
  MOST_IRONS,
  MOST_POINTS,
  PLANE_KINDS,
  planeSchemas,
} from "./file-schema.ts";
import { nearestWord } from "./nearest-word.ts";
import { LARGEST_SIZE_MM } from "./plane-defaults.ts";
import { madeId, madeName, NOUNS, type Size, type Sizes } from "./plane-name.ts";
import { type ShelfOutcome, type ShelfTrouble, unknownKey } from "./shelf-trouble.ts";
import { snappedMm } from "./snapped.ts";
import type { Plane } from "./types.ts";

/** A plane as read; its id is still to be set apart from the others' where none was given. */
export interface PlaneRead {
  readonly plane: Plane;
  readonly givenId: string | undefined;
  readonly assumed: readonly string[];
  readonly warnings: readonly ShelfTrouble[];
}

export interface PlaneReading {
  readonly unit: FileUnit;
  /** The entry's place in its file. */
  readonly at: string;
  /** What assumptions are told in. */
  readonly tellIn: LengthUnit;
}

/** Troubles told at once; more would bury the first. */
export const MOST_TROUBLES = 20;

const LONGEST_ID = 60;
const LONGEST_NAME = 80;
const LONGEST_NOTE = 500;
const ID = /^[\p{L}\p{N}][\p{L}\p{M}\p{N} ._/+⁄-]*$/u;

/** Keys whose value is a length; those in `MAY_BE_NOUGHT` may be 0. */
const LENGTH_KEYS = ["radius", "width", "wall", "nose", "reach", "fence", "depth", "quirk"] as const;
const MAY_BE_NOUGHT: readonly string[] = ["wall", "nose"];

const SHOULDER_KEYS: readonly string[] = ["width", "height"];

/** What is wanted in a key, for people. */
const WANTED: Readonly<Record<string, string>> = {
  id: "a text",
  name: "a text",
  note: "a text",
  hand: "“left” or “right”",
  cutsWall: "“left”, “right”, “both” or “none”",
  pitch: "an angle in degrees, as a number",
  skew: "an angle in degrees, as a number",
  slope: "an angle in degrees, as a number",
  shoulder: "a width and a height",
  widths: `a list of 1 to ${MOST_IRONS} lengths`,
  sole: `a list of 2 to ${MOST_POINTS} points, each [x, y] or [x, y, bulge]`,
};
const WANTED_LENGTH = "a length, such as 12.7 or “1/2 in”";

/** The keys that an object holds itself, or `undefined` for anything that is not a plain group of keys. */
export function ownKeys(value: unknown): readonly string[] | undefined {
  return typeof value === "object" && value !== null && !Array.isArray(value)
    ? Object.keys(value)
    : undefined;
}

/** Reads one plane's entry; every trouble found in it is told. */
export function readPlaneEntry(entry: unknown, reading: PlaneReading): ShelfOutcome<PlaneRead> {
  const shaped = readShape(entry, reading.at);
  if (!shaped.ok) return shaped;
  const file = shaped.value;
  const sizes = readSizes(file, reading);
  if (!sizes.ok) return sizes;
  const identity = readIdentity(file, sizes.value, reading.at);
  if (!identity.ok) return identity;
  const { id, givenId, name } = identity.value;
  const note = readNote(file, reading.at);
  if (!note.ok) return note;
  const built = buildPlane(file, sizes.value, {
    id,
    name,
    at: reading.at,
    unit: reading.unit,
    tellIn: reading.tellIn,
  });
  if (!built.ok) return built;
  const { assumed } = built.value;
  const plane = note.value === "" ? built.value.plane : { ...built.value.plane, note: note.value };
  const warnings = [...sizes.warnings, ...identity.warnings, ...built.warnings];
  return fine({ plane, givenId, assumed, warnings });
}

/** The entry with the keys and kinds of value that its kind of plane has. */
function readShape(entry: unknown, at: string): ShelfOutcome<FilePlane> {
  if (ownKeys(entry) === undefined) {
    const facts = {
      key: "plane",
      wanted: "a group of keys such as “kind” and “width”",
      found: quoted(entry),
    };
    return refused(cataloguedTrouble("shelf-wrong-value", at, facts));
  }
  const keyed = entry as Readonly<Record<string, unknown>>;
  const kind = PLANE_KINDS.find((known) => known === keyed.kind);
  if (kind === undefined) return refused(kindTrouble(keyed.kind, at));
  // Both are asked before the schema is, which takes seconds over a million strange keys or items.
  const known = Object.keys(planeSchemas[kind].shape);
  const strange = Object.keys(keyed).filter((key) => !known.includes(key));
  if (strange.length > MOST_TROUBLES) {
    const [first, ...rest] = strange
      .slice(0, MOST_TROUBLES)
      .map((key) => unknownKey(key, NOUNS[kind], known, `${at}.${quoted(key)}`));
    return refused(first!, ...rest);
  }
  const longList = Object.keys(keyed).find(
    (key) => Array.isArray(keyed[key]) && keyed[key].length > MOST_POINTS,
  );
  if (longList !== undefined) return refused(valueTrouble(entry, [longList], NOUNS[kind], at));
  const parsed = planeSchemas[kind].safeParse(entry);
  if (parsed.success) return fine(parsed.data as FilePlane);
  const unknown: ShelfTrouble[] = [];
  const others: ShelfTrouble[] = [];
  for (const issue of parsed.error.issues) {
    const path = issue.path.map((key) => (typeof key === "number" ? key : String(key)));
    if (issue.code === "unrecognized_keys") {
      const where = placeUnder(at, path);
      const inner = path[0] === "shoulder" ? SHOULDER_KEYS : known;
      unknown.push(
        ...issue.keys.map((key) => unknownKey(key, NOUNS[kind], inner, `${where}.${quoted(key)}`)),
      );
    } else {
      others.push(valueTrouble(entry, path, NOUNS[kind], at));
    }
  }
  const [first, ...rest] = [...unknown, ...others.filter((other) => !isExplainedBy(other, unknown))];
  return refused(first!, ...rest);
}

/** A key is not missing besides, if one that nobody knows is a slip of it. */
function isExplainedBy(other: ShelfTrouble, unknown: readonly ShelfTrouble[]): boolean {
  return other.code === "shelf-missing-key" && unknown.some(({ facts }) => facts.nearest === other.facts.key);
}

function kindTrouble(kind: unknown, at: string): ShelfTrouble {
  if (kind === undefined) return cataloguedTrouble("shelf-missing-key", at, { key: "kind", of: "plane" });
  const nearest = typeof kind === "string" ? (nearestWord(kind, PLANE_KINDS) ?? "") : "";
  const facts = { found: quoted(kind), nearest, known: [...PLANE_KINDS] };
  return cataloguedTrouble("shelf-unknown-kind", `${at}.kind`, facts);
}

function valueTrouble(
  entry: unknown,
  path: readonly (string | number)[],
  of: string,
  at: string,
): ShelfTrouble {
  let value: unknown = entry;
  for (const key of path) value = (value as Readonly<Record<string, unknown>>)[key];
  const where = placeUnder(at, path);
  const key = placeUnder("", path);
  if (value === undefined) return cataloguedTrouble("shelf-missing-key", where, { key, of });
  const isInList = path.length > 1 && path[0] === "widths";
  const wanted = (isInList ? undefined : WANTED[String(path[0])]) ?? WANTED_LENGTH;
  return cataloguedTrouble("shelf-wrong-value", where, { key, wanted, found: quoted(value) });
}

/** A place within an entry: `planes[2].shoulder.width`, `planes[2].widths[0]`. */
function placeUnder(at: string, path: readonly (string | number)[]): string {
  return path.reduce<string>(
    (place, key) => (typeof key === "number" ? `${place}[${key}]` : place === "" ? key : `${place}.${key}`),
    at,
  );
}

/** Every length of the entry, in mm, with the unit it was written in; by key, lists as `widths[0]` and so on. */
function readSizes(file: FilePlane, { unit, at }: Omit<PlaneReading, "tellIn">): ShelfOutcome<Sizes> {
  const keyed = file as Readonly<Record<string, unknown>>;
  const written: [string, unknown][] = LENGTH_KEYS.map((key) => [key, keyed[key]]);
  if (file.kind === "plough") {
    written.push(...file.widths.map((width, index): [string, unknown] => [`widths[${index}]`, width]));
  }
  if (file.kind === "shaped") {
    const widthMm = file.sole[file.sole.length - 1]![0] - file.sole[0]![0];
    // A sole without width is refused where it is built, with its own sentence.
    if (widthMm > 0) written.push(["width", widthMm]);
  }
  if ("shoulder" in file && file.shoulder !== undefined) {
    written.push(["shoulder.width", file.shoulder.width], ["shoulder.height", file.shoulder.height]);
  }
  const sizes = new Map<string, Size>();
  const troubles: ShelfTrouble[] = [];
  const warnings: ShelfTrouble[] = [];
  for (const [key, value] of written) {
    if (value === undefined) continue;
    const read = readSize(key, value as number | string, { unit, at: `${at}.${key}` });
    if (!read.ok) {
      troubles.push(read.trouble);
      continue;
    }
    sizes.set(key, read.value);
    warnings.push(...read.warnings);
  }
  return troubles.length > 0 ? refused(troubles[0]!, ...troubles.slice(1)) : fine(sizes, warnings);
}

function readSize(
  key: string,
  value: number | string,
  { unit, at }: Omit<PlaneReading, "tellIn">,
): ShelfOutcome<Size> {
  if (typeof value === "number" && value < 0) {
    const valueMm = snappedMm(unit === "in" ? value * INCH_MM : value);
    return refused(cataloguedTrouble("shelf-size-not-positive", at, { key, valueMm }));
  }
  const read = readLength(value, { unit, where: at });
  if (!read.ok) return read;
  const mm = snappedMm(read.value.mm);
  if (mm <= 0 && !MAY_BE_NOUGHT.includes(key)) {
    return refused(cataloguedTrouble("shelf-size-not-positive", at, { key, valueMm: mm }));
  }
  if (mm > LARGEST_SIZE_MM) {
    return refused(cataloguedTrouble("shelf-size-too-large", at, { key, mostMm: LARGEST_SIZE_MM }));
  }
  const size: Size = { mm, unit: read.value.unit === "in" ? "in" : "mm" };
  return fine(size, read.warnings);
}

interface Identity {
  readonly id: string;
  readonly givenId: string | undefined;
  readonly name: string;
}

function readIdentity(file: FilePlane, sizes: Sizes, at: string): ShelfOutcome<Identity> {
  const givenId = file.id?.trim();
  if (givenId !== undefined && !isUsableId(givenId)) {
    return refused(cataloguedTrouble("shelf-bad-id", `${at}.id`, { found: quoted(file.id) }));
  }
  const given = file.name === undefined ? "" : cleanText(file.name);
  if (given.length > LONGEST_NAME) {
    const facts = {
      key: "name",
      wanted: `a name of at most ${LONGEST_NAME} characters`,
      found: quoted(given),
    };
    return refused(cataloguedTrouble("shelf-wrong-value", `${at}.name`, facts));
  }
  const name = given === "" ? madeName(file, sizes) : given;
  const isCleaned = file.name !== undefined && !isPrintable(file.name.trim());
  const warnings = isCleaned ? [cataloguedTrouble("shelf-name-cleaned", `${at}.name`, { name })] : [];
  return fine({ id: givenId ?? madeId(file, sizes), givenId, name }, warnings);
}

/** The note without what cannot be printed; its lines run on. Empty where there is none. */
function readNote({ note = "" }: FilePlane, at: string): ShelfOutcome<string> {
  const cleaned = cleanText(note);
  if (cleaned.length <= LONGEST_NOTE) return fine(cleaned);
  const facts = {
    key: "note",
    wanted: `a note of at most ${LONGEST_NOTE} characters`,
    found: quoted(cleaned),
  };
  return refused(cataloguedTrouble("shelf-wrong-value", `${at}.note`, facts));
}

/** Words the language itself knows are kept out, since other programs may use ids as keys. */
function isUsableId(id: string): boolean {
  return id.length <= LONGEST_ID && ID.test(id) && !(id in {});
}
