/**
 * The text of a DXF as pairs of group code and value, and its sections as entities.
 *
 * Read here line by line in one pass and not by a general library: one bad record must be refused with its line, not
 * waited for without end. Source of codes and sections: the published DXF reference (AutoCAD 2012 edition).
 */
import { type Reading, refuse } from "./read-troubles.ts";

export interface DxfGroup {
  readonly code: number;
  readonly value: string;
}

/** One record that starts with group 0: an entity, a block, a table's entry. */
export interface DxfRecord {
  readonly type: string;
  readonly groups: readonly DxfGroup[];
  /** Line of the file on which it starts. */
  readonly line: number;
}

export interface DxfFile {
  readonly header: ReadonlyMap<string, string>;
  readonly layers: readonly DxfRecord[];
  readonly blocks: readonly DxfRecord[];
  readonly entities: readonly DxfRecord[];
}

/** Groups of one file: past this it is no section of a moulding. */
const MOST_GROUPS = 3_000_000;

const BINARY_SENTINEL = "AutoCAD Binary DXF";

export function readDxfFile(reading: Reading, text: string): DxfFile | null {
  if (text.startsWith(BINARY_SENTINEL)) {
    refuse(reading, "dxf-binary", "", {});
    return null;
  }
  const sections = new Map<string, DxfRecord[]>();
  const header = new Map<string, string>();
  let section: string | null = null;
  let variable = "";
  let groups: DxfGroup[] = [];
  let records: DxfRecord[] = [];
  let ended = false;
  let count = 0;
  const lines = lineReader(text);

  while (!ended) {
    const codeText = lines.next();
    const value = lines.next();
    if (codeText === null || value === null) break;
    if (count++ > MOST_GROUPS) {
      refuse(reading, "drawing-too-many-points", "", { most: MOST_GROUPS });
      return null;
    }
    const code = Number(codeText);
    if (codeText === "" || !Number.isInteger(code)) {
      refuse(reading, "dxf-broken", "", { line: lines.number() - 1 });
      return null;
    }
    if (code !== 0) {
      if (section === null || section === "") {
        // The name of the section follows its start; comments (999) may stand before.
        if (section === "" && code === 2) {
          section = value;
          records = [];
          sections.set(section, records);
        }
      } else if (section === "HEADER") {
        if (code === 9) variable = value;
        else if (!header.has(variable)) header.set(variable, value);
      } else groups.push({ code, value });
    } else if (value === "EOF") ended = true;
    else if (value === "SECTION") section = "";
    else if (value === "ENDSEC") section = null;
    else if (section !== null && KEPT_SECTIONS.has(section)) {
      groups = [];
      records.push({ type: value, groups, line: lines.number() - 1 });
    } else groups = [];
  }
  if (sections.size === 0) {
    refuse(reading, "dxf-broken", "", { line: 1 });
    return null;
  }
  if (!ended) {
    refuse(reading, "dxf-cut-short", "", { line: lines.number() });
    return null;
  }
  return {
    header,
    layers: (sections.get("TABLES") ?? []).filter(({ type }) => type === "LAYER"),
    blocks: sections.get("BLOCKS") ?? [],
    entities: sections.get("ENTITIES") ?? [],
  };
}

const KEPT_SECTIONS: ReadonlySet<string> = new Set(["TABLES", "BLOCKS", "ENTITIES"]);

function lineReader(text: string): { next(): string | null; number(): number } {
  let at = 0;
  let number = 0;
  return {
    next() {
      if (at >= text.length) return null;
      const end = text.indexOf("\n", at);
      const line = text.slice(at, end < 0 ? text.length : end);
      at = end < 0 ? text.length : end + 1;
      number++;
      return line.trim();
    },
    number: () => number,
  };
}

/** The first value of a code in a record. */
export function textOf(record: DxfRecord, code: number): string | undefined {
  for (const group of record.groups) if (group.code === code) return group.value;
  return undefined;
}

/** A number of a record; `missing` where it is not given, NaN where it cannot be read. */
export function numberOf(record: DxfRecord, code: number, missing: number): number {
  const value = textOf(record, code);
  return value === undefined ? missing : readDxfNumber(value);
}

export function readDxfNumber(value: string): number {
  return value === "" ? Number.NaN : Number(value);
}
