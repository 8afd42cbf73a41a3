/** Reads the shelf file: what the maker wrote is checked, defaults are filled in and said, nothing is guessed silently. */
import { cataloguedTrouble, fine, isPrintable, type LengthUnit, quoted, refused } from "../measure/index.ts";
import { type FileUnit, SHELF_KEYS } from "./file-schema.ts";
import { MOST_TROUBLES, ownKeys, type PlaneRead, readPlaneEntry } from "./read-plane.ts";
import { SHELF_FORMAT, SHELF_VERSION } from "./shelf-format.ts";
import { type ShelfOutcome, type ShelfTrouble, unknownKey } from "./shelf-trouble.ts";
import type { Plane, Shelf } from "./types.ts";

/** A file larger than this is not a shelf, megabytes. */
const MOST_MEGABYTES = 5;
const BYTES_PER_MEGABYTE = 1_000_000;
/** More planes than the fullest shop holds; planning tries every one of them. */
const MOST_PLANES = 500;
/** No part of a shelf file is nested deeper; whatever is, the schema refuses as a wrong value. */
const DEEPEST = 8;

/** Keys that reach past the data into the language itself. */
const FORBIDDEN_KEYS: readonly string[] = ["__proto__", "constructor", "prototype"];

export interface ShelfReading {
  /** Where the shelf stands in a larger file, put before every place that a trouble names; empty unless given. */
  readonly at?: string;
  /** What the sentences in `assumed` are written in; mm unless given. */
  readonly tellIn?: LengthUnit;
}

/**
 * Reads a shelf from the text of its file, or from the same already parsed (as it stands in a job or a plan).
 *
 * Lengths come out in mm, rounded to the millionth, so that a shelf in inches and the same shelf in millimetres give
 * equal planes. Missing ids and names are made. What had to be assumed stands in `assumed`, in sentences; sizes that
 * are possible but unusual come as warnings. An empty shelf is read; it is the planning that refuses it
 * (`shelf-empty`). Refuses unknown keys, impossible sizes, ids given twice and files of a newer version, each with
 * its place. Never throws, for any text and any parsed JSON.
 */
export function readShelf(input: unknown, reading: ShelfReading = {}): ShelfOutcome<Shelf> {
  const at = reading.at ?? "";
  const tellIn = reading.tellIn ?? "mm";
  if (typeof input !== "string") return readParsed(input, at, tellIn);
  const parsed = parseText(input, at);
  return parsed.ok ? readParsed(parsed.value, at, tellIn) : parsed;
}

function parseText(text: string, at: string): ShelfOutcome<unknown> {
  if (text.length > MOST_MEGABYTES * BYTES_PER_MEGABYTE) {
    const sizeMegabytes = Math.round((text.length / BYTES_PER_MEGABYTE) * 10) / 10;
    return refused(
      cataloguedTrouble("shelf-too-large", at, { sizeMegabytes, mostMegabytes: MOST_MEGABYTES }),
    );
  }
  try {
    return fine(JSON.parse(text.replace(/^\uFEFF/, "")) as unknown);
  } catch (error) {
    return refused(cataloguedTrouble("shelf-not-json", at, placeOfError(text, error)));
  }
}

/** Where the text stops being JSON, as far as the engine says so; line 0 if it does not. */
function placeOfError(text: string, error: unknown): { line: number; column: number } {
  const position = /position (\d+)/.exec(String(error))?.[1];
  if (position === undefined) return { line: 0, column: 0 };
  const before = text.slice(0, Number(position)).split("\n");
  return { line: before.length, column: before[before.length - 1]!.length + 1 };
}

function readParsed(value: unknown, at: string, tellIn: LengthUnit): ShelfOutcome<Shelf> {
  const head = readHead(value, at);
  if (!head.ok) return head;
  const { unit, planes } = head.value;
  const troubles: ShelfTrouble[] = [];
  const reads: PlaneRead[] = [];
  for (const [index, entry] of planes.entries()) {
    if (troubles.length >= MOST_TROUBLES) break;
    const read = readPlaneEntry(entry, { unit, at: placeOf(at, index), tellIn });
    if (read.ok) reads.push(read.value);
    else troubles.push(read.trouble, ...(read.more ?? []));
  }
  const places = planes.map((_, index) => placeOf(at, index));
  if (troubles.length === 0) troubles.push(...duplicateIds(reads, places));
  if (troubles.length > 0) return refused(troubles[0]!, ...troubles.slice(1, MOST_TROUBLES));
  return fine(
    { planes: withIds(reads), assumed: reads.flatMap((read) => read.assumed) },
    reads.flatMap((read) => read.warnings),
  );
}

/** Format, version, unit and the bare list of planes. */
function readHead(
  value: unknown,
  at: string,
): ShelfOutcome<{ readonly unit: FileUnit; readonly planes: readonly unknown[] }> {
  const keys = ownKeys(value);
  if (keys === undefined)
    return refused(cataloguedTrouble("shelf-wrong-format", at, { found: quoted(value) }));
  const file = value as Readonly<Record<string, unknown>>;
  const forbidden = forbiddenKey(value, at);
  if (forbidden !== undefined) return refused(forbidden);
  if (file.format !== SHELF_FORMAT) {
    const found = file.format === undefined ? "no format" : `“${quoted(file.format)}” as its format`;
    return refused(cataloguedTrouble("shelf-wrong-format", under(at, "format"), { found }));
  }
  const version = versionTrouble(file.version, under(at, "version"));
  if (version !== undefined) return refused(version);
  if (file.unit !== "mm" && file.unit !== "in") {
    return refused(cataloguedTrouble("shelf-unit-unknown", under(at, "unit"), { found: quoted(file.unit) }));
  }
  const unknown = keys.filter((key) => !SHELF_KEYS.includes(key));
  if (unknown.length > 0) {
    const [first, ...rest] = unknown
      .slice(0, MOST_TROUBLES)
      .map((key) => unknownKey(key, "shelf", SHELF_KEYS, under(at, quoted(key))));
    return refused(first!, ...rest);
  }
  if (file.planes === undefined) {
    return refused(cataloguedTrouble("shelf-missing-key", at, { key: "planes", of: "shelf" }));
  }
  if (!Array.isArray(file.planes)) {
    const facts = { key: "planes", wanted: "a list of planes", found: quoted(file.planes) };
    return refused(cataloguedTrouble("shelf-wrong-value", under(at, "planes"), facts));
  }
  if (file.planes.length > MOST_PLANES) {
    const facts = { planes: file.planes.length, most: MOST_PLANES };
    return refused(cataloguedTrouble("shelf-too-many-planes", under(at, "planes"), facts));
  }
  return fine({ unit: file.unit, planes: file.planes as readonly unknown[] });
}

function versionTrouble(version: unknown, where: string): ShelfTrouble | undefined {
  if (version === SHELF_VERSION) return undefined;
  const facts = { found: quoted(version), known: SHELF_VERSION };
  const isNewer = typeof version === "number" && Number.isFinite(version) && version > SHELF_VERSION;
  return cataloguedTrouble(isNewer ? "shelf-version-newer" : "shelf-version-unknown", where, facts);
}

function forbiddenKey(root: unknown, at: string): ShelfTrouble | undefined {
  let level: { readonly value: unknown; readonly where: string }[] = [{ value: root, where: at }];
  // What was parsed by somebody else may refer back to itself.
  const seen = new Set<unknown>();
  for (let depth = 0; depth < DEEPEST && level.length > 0; depth++) {
    const next: typeof level = [];
    for (const { value, where } of level) {
      if (seen.has(value)) continue;
      seen.add(value);
      if (Array.isArray(value)) {
        // Points of a drawn sole hold numbers alone, and there may be many: only what holds keys is followed.
        value.forEach((item, index) => {
          if (typeof item === "object" && item !== null)
            next.push({ value: item, where: `${where}[${index}]` });
        });
        continue;
      }
      for (const key of ownKeys(value) ?? []) {
        if (FORBIDDEN_KEYS.includes(key)) {
          return cataloguedTrouble("shelf-forbidden-key", under(where, key), { key });
        }
        const inner = (value as Readonly<Record<string, unknown>>)[key];
        if (typeof inner === "object" && inner !== null) {
          next.push({ value: inner, where: under(where, isPrintable(key) ? key : quoted(key)) });
        }
      }
    }
    level = next;
  }
  return undefined;
}

function duplicateIds(reads: readonly PlaneRead[], places: readonly string[]): readonly ShelfTrouble[] {
  const firstAt = new Map<string, string>();
  const troubles: ShelfTrouble[] = [];
  reads.forEach((read, index) => {
    if (read.givenId === undefined) return;
    const same = sameId(read.givenId);
    const first = firstAt.get(same);
    if (first === undefined) {
      firstAt.set(same, places[index]!);
    } else {
      const facts = { id: read.givenId, firstAt: first };
      troubles.push(cataloguedTrouble("shelf-duplicate-id", under(places[index]!, "id"), facts));
    }
  });
  return troubles;
}

/** Given ids stay; made ones give way to them, and the second of two alike gets a number. */
function withIds(reads: readonly PlaneRead[]): readonly Plane[] {
  const taken = new Set(reads.flatMap((read) => (read.givenId === undefined ? [] : [sameId(read.givenId)])));
  return reads.map((read): Plane => {
    if (read.givenId !== undefined) return read.plane;
    let id = read.plane.id;
    for (let number = 2; taken.has(sameId(id)); number++) id = `${read.plane.id}-${number}`;
    taken.add(sameId(id));
    return { ...read.plane, id };
  });
}

/** Ids that a reader would take for the same are the same. */
function sameId(id: string): string {
  return id.normalize("NFC").toLowerCase();
}

function placeOf(at: string, index: number): string {
  return under(at, `planes[${index}]`);
}

function under(at: string, key: string): string {
  return at === "" ? key : `${at}.${key}`;
}
