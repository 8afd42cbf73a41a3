/**
 * JSON from a file, read with bounds and with a place for every fault.
 *
 * `JSON.parse` alone says where a fault lies in the words of whichever engine runs it, or not at all, and it
 * reads any depth; so the text is walked once by our own scanner first, and only then parsed.
 */
import {
  cataloguedTrouble,
  fine,
  harmlessText,
  type Outcome,
  refused,
  type Trouble,
} from "../measure/index.ts";

/** Levels of nesting a file may have. Ours need 7; far deeper ones only serve to exhaust a stack. */
const MOST_LEVELS = 64;

/** Characters of a wrong value that are repeated in a sentence. */
const SHOWN_CHARACTERS = 40;

export interface JsonLimits {
  /** Characters the text may have. */
  readonly mostCharacters: number;
}

/**
 * The value a JSON text holds.
 *
 * Troubles: `file-empty`, `file-too-large`, `file-not-json` (with line and column, both from 1, and what was
 * expected there), `file-too-deep`. A byte order mark at the start is passed over. Never throws.
 */
export function readJsonText(text: string, limits: JsonLimits): Outcome<unknown> {
  if (text.length > limits.mostCharacters) {
    return refused(
      cataloguedTrouble("file-too-large", "", {
        megabytes: text.length / 1e6,
        mostMegabytes: limits.mostCharacters / 1e6,
      }),
    );
  }
  const body = text.charCodeAt(0) === 0xfeff ? text.slice(1) : text;
  if (body.trim() === "") return refused(cataloguedTrouble("file-empty", "", {}));
  const fault = findFault(body);
  if (fault !== null) return refused(fault);
  try {
    return fine(JSON.parse(body) as unknown);
  } catch {
    // The scanner is as strict as the grammar; should the two ever differ, the engine has the last word.
    return refused(cataloguedTrouble("file-not-json", "", { line: 1, column: 1, wanted: "JSON", found: "" }));
  }
}

/** A value as it may be repeated in a sentence: one line, printable, short. */
export function shown(value: unknown): string {
  if (typeof value === "string") return `“${shortened(value)}”`;
  if (value === undefined) return "nothing";
  if (Array.isArray(value)) return `a list of ${value.length}`;
  return typeof value === "object" && value !== null ? "a group of keys" : String(value);
}

function shortened(text: string): string {
  const characters = [...harmlessText(text)];
  return characters.length <= SHOWN_CHARACTERS
    ? characters.join("")
    : `${characters.slice(0, SHOWN_CHARACTERS - 1).join("")}…`;
}

const NUMBER = /-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?/y;
const WORD = /true|false|null/y;
const SPACE = /[ \t\r\n]*/y;

/**
 * Index after the string that starts at `at`, -1 if none does or it never ends. By hand, not by a pattern: one
 * that repeats a choice keeps a trail as long as the string, and strings here may have megabytes.
 */
function endOfString(text: string, at: number): number {
  if (text[at] !== '"') return -1;
  for (let i = at + 1; i < text.length; i += 1) {
    const code = text.charCodeAt(i);
    if (code === 0x22) return i + 1;
    if (code < 0x20) return -1;
    if (code === 0x5c) {
      i += 1;
      const escaped = text[i] ?? "";
      if (escaped === "u") {
        if (!/^[0-9a-fA-F]{4}$/.test(text.slice(i + 1, i + 5))) return -1;
        i += 4;
      } else if (escaped === "" || !'"\\/bfnrt'.includes(escaped)) return -1;
    }
  }
  return -1;
}

/** What must come next. */
type Awaits = "value" | "value or ]" | "key" | "key or }" | ":" | "after a value";

/** First fault against the JSON grammar (RFC 8259) or against the depth allowed, null if there is none. */
function findFault(text: string): Trouble | null {
  const open: ("[" | "{")[] = [];
  let at = 0;
  let awaits: Awaits = "value";
  const passes = (pattern: RegExp): boolean => {
    pattern.lastIndex = at;
    const found = pattern.test(text);
    if (found) at = pattern.lastIndex;
    return found;
  };
  const passesString = (): boolean => {
    const end = endOfString(text, at);
    if (end >= 0) at = end;
    return end >= 0;
  };
  for (;;) {
    passes(SPACE);
    const next = text[at];
    const innermost = open.at(-1);
    const closing = innermost === "[" ? "]" : "}";
    if (awaits === "after a value") {
      if (innermost === undefined)
        return next === undefined ? null : faultAt(text, at, "the end of the file");
      if (next === ",") awaits = innermost === "[" ? "value" : "key";
      else if (next === closing) open.pop();
      else return faultAt(text, at, `, or ${closing}`);
      at += 1;
    } else if (awaits === ":") {
      if (next !== ":") return faultAt(text, at, ":");
      awaits = "value";
      at += 1;
    } else if ((awaits === "value or ]" || awaits === "key or }") && next === closing) {
      open.pop();
      awaits = "after a value";
      at += 1;
    } else if (awaits === "key" || awaits === "key or }") {
      if (!passesString()) return faultAt(text, at, 'a key in "…"');
      awaits = ":";
    } else if (next === "[" || next === "{") {
      if (open.length >= MOST_LEVELS) {
        return cataloguedTrouble("file-too-deep", "", {
          ...lineAndColumn(text, at),
          mostLevels: MOST_LEVELS,
        });
      }
      open.push(next);
      awaits = next === "[" ? "value or ]" : "key or }";
      at += 1;
    } else {
      if (!(passesString() || passes(NUMBER) || passes(WORD))) return faultAt(text, at, "a value");
      awaits = "after a value";
    }
  }
}

function faultAt(text: string, at: number, wanted: string): Trouble {
  // The word or the sign that stands there; a string or a list that starts there would say too much.
  const word = /^(?:[\p{L}\p{N}_.+-]{1,12}|.)/su.exec(text.slice(at, at + 24))?.[0] ?? "";
  const found = at >= text.length ? "" : shown(word);
  return cataloguedTrouble("file-not-json", "", { ...lineAndColumn(text, at), wanted, found });
}

function lineAndColumn(text: string, at: number): { readonly line: number; readonly column: number } {
  const before = text.slice(0, at);
  return {
    line: before.split("\n").length,
    column: at - before.lastIndexOf("\n"),
  };
}
