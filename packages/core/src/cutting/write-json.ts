/** Values as JSON text that is always the same for the same value, and that a person can read. */
import { bug } from "../measure/index.ts";

/** Keys that come first in entries whose keys this file does not know, the rest by the alphabet. */
const FIRST_KEYS: readonly string[] = ["format", "version", "unit", "id", "name", "kind"];

/**
 * The value with the keys of every group inside it in one order, whatever order they were made in.
 */
export function inStableOrder(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(inStableOrder);
  if (typeof value !== "object" || value === null) return value;
  const rank = (key: string): number => {
    const at = FIRST_KEYS.indexOf(key);
    return at < 0 ? FIRST_KEYS.length : at;
  };
  return Object.fromEntries(
    Object.entries(value)
      .sort(([a], [b]) => rank(a) - rank(b) || (a < b ? -1 : 1))
      .map(([key, inner]) => [key, inStableOrder(inner)]),
  );
}

/** Widest line that points are filled to, characters. */
const LINE_CHARACTERS = 110;

/**
 * A value as JSON: two spaces of indent, lists of numbers on one line, lists of points filled to the line's
 * width. No -0 (JSON would keep it and readers differ), keys whose value is undefined left out, Bug on a number
 * that is not finite.
 */
export function jsonText(value: unknown, indent = ""): string {
  if (typeof value === "number") {
    if (!Number.isFinite(value)) bug("a number to be written is not finite", { value: String(value) });
    return String(value === 0 ? 0 : value);
  }
  if (typeof value !== "object" || value === null) return literal(value);
  const inner = `${indent}  `;
  if (Array.isArray(value)) {
    if (value.length === 0) return "[]";
    if (value.every((one) => typeof one === "number"))
      return `[${value.map((one) => jsonText(one)).join(", ")}]`;
    const texts = value.map((one) => jsonText(one, inner));
    const flat = value.every((one) => Array.isArray(one) && one.every((n) => typeof n === "number"));
    return `[\n${inner}${flat ? filled(texts, inner) : texts.join(`,\n${inner}`)}\n${indent}]`;
  }
  const entries = Object.entries(value).filter(([, one]) => one !== undefined);
  if (entries.length === 0) return "{}";
  return `{\n${entries.map(([key, one]) => `${inner}${literal(key)}: ${jsonText(one, inner)}`).join(",\n")}\n${indent}}`;
}

/** A text, true, false or null as JSON; characters that steer a terminal are written as `\\u…`, which reads back the same. */
function literal(value: unknown): string {
  return JSON.stringify(value).replace(
    /[\u007f-\u009f\u200b-\u200f\u2028-\u202e\u2060-\u206f\ufeff]/g,
    (character) => `\\u${character.charCodeAt(0).toString(16).padStart(4, "0")}`,
  );
}

function filled(texts: readonly string[], indent: string): string {
  const lines: string[] = [];
  for (const one of texts) {
    const last = lines.at(-1);
    if (last !== undefined && indent.length + last.length + one.length + 3 <= LINE_CHARACTERS) {
      lines[lines.length - 1] = `${last}, ${one}`;
    } else lines.push(one);
  }
  return lines.join(`,\n${indent}`);
}
