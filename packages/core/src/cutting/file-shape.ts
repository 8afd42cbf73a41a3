/** What a schema found wrong in a file, as troubles: the words of the schema library never reach a maker. */
import { cataloguedTrouble, harmlessText, type Trouble, z } from "../measure/index.ts";
import { nearestWord } from "../shelf/index.ts";
import { shown } from "./json-text.ts";

// Without this the library builds functions from text, which a page with a strict content policy forbids.
z.config({ jitless: true });

/** Troubles reported of one file; the rest would only bury the first. */
const MOST_REPORTED = 20;

/** Marks the message that carries an object's known keys from the schema to `troublesOf`. */
const KNOWN_KEYS = "known keys: ";

/** An object that refuses keys it does not know; `troublesOf` then names the nearest one it does. */
export function closedObject<Shape extends z.core.$ZodLooseShape>(shape: Shape) {
  return z.strictObject(shape, {
    error: (issue) =>
      issue.code === "unrecognized_keys" ? KNOWN_KEYS + Object.keys(shape).join(" ") : undefined,
  });
}

/** A path as people write it: `cuts[3].runs[0][2]`. */
export function pathText(path: readonly PropertyKey[]): string {
  let text = "";
  for (const step of path) {
    if (typeof step === "number") text += `[${step}]`;
    else if (/^[A-Za-z][A-Za-z0-9]*$/.test(String(step)))
      text += text === "" ? String(step) : `.${String(step)}`;
    else text += `["${harmlessText(String(step))}"]`;
  }
  return text;
}

/**
 * The troubles of a failed parse of `input`, the first first: `file-key-missing`, `file-key-unknown`,
 * `file-number-not-finite`, `file-value-out-of-range`, `file-too-many`, `file-too-few`, `file-value-wrong`.
 */
export function troublesOf(
  issues: readonly z.core.$ZodIssue[],
  input: unknown,
): readonly [Trouble, ...Trouble[]] {
  const troubles = issues
    .slice(0, MOST_REPORTED)
    .flatMap((issue) => troublesOfIssue(issue, input, []))
    .slice(0, MOST_REPORTED);
  return [
    troubles[0] ??
      cataloguedTrouble("file-value-wrong", "", { found: shown(input), wanted: "another value" }),
    ...troubles.slice(1),
  ];
}

function troublesOfIssue(
  issue: z.core.$ZodIssue,
  input: unknown,
  above: readonly PropertyKey[],
): readonly Trouble[] {
  const path = [...above, ...issue.path];
  const where = pathText(path);
  const value = valueAt(input, path);
  switch (issue.code) {
    case "unrecognized_keys": {
      const known = issue.message.startsWith(KNOWN_KEYS)
        ? issue.message.slice(KNOWN_KEYS.length).split(" ")
        : [];
      return issue.keys.map((key) => {
        return cataloguedTrouble("file-key-unknown", pathText([...path, key]), {
          key: harmlessText(key),
          known,
          nearest: nearestWord(key, known) ?? "",
        });
      });
    }
    case "invalid_type":
      if (value === undefined)
        return [cataloguedTrouble("file-key-missing", where, { key: String(path.at(-1) ?? "") })];
      if (typeof value === "number" && !Number.isFinite(value))
        return [cataloguedTrouble("file-number-not-finite", where, { found: String(value) })];
      return [wrong(where, value, WANTED[issue.expected] ?? issue.expected)];
    case "invalid_value":
      if (value === undefined)
        return [cataloguedTrouble("file-key-missing", where, { key: String(path.at(-1) ?? "") })];
      return [wrong(where, value, issue.values.map((one) => shown(one)).join(" or "))];
    case "invalid_union": {
      if (value === undefined)
        return [cataloguedTrouble("file-key-missing", where, { key: String(path.at(-1) ?? "") })];
      // The branch that got furthest knows best what is wrong inside it.
      const deepest = issue.errors
        .map((errors) => errors.flatMap((inner) => troublesOfIssue(inner, input, path)))
        .filter((troubles) => troubles.some((one) => one.where !== where))
        .at(0);
      if (deepest !== undefined) return deepest;
      const wanted = issue.errors.flatMap((errors) =>
        errors.map((inner) =>
          inner.code === "invalid_type" ? (WANTED[inner.expected] ?? inner.expected) : "",
        ),
      );
      return [
        wrong(where, value, [...new Set(wanted.filter((one) => one !== ""))].join(" or ") || "another value"),
      ];
    }
    case "too_big":
      if (issue.origin === "array" || issue.origin === "string")
        return [
          cataloguedTrouble("file-too-many", where, {
            most: Number(issue.maximum),
            what: COUNTED[issue.origin] ?? "entries",
          }),
        ];
      return [outOfRange(where, value, `${issue.maximum} or less`)];
    case "too_small":
      if (issue.origin === "array" || issue.origin === "string")
        return [
          cataloguedTrouble("file-too-few", where, {
            least: Number(issue.minimum),
            what: COUNTED[issue.origin] ?? "entries",
          }),
        ];
      return [
        outOfRange(
          where,
          value,
          issue.inclusive === false ? `more than ${issue.minimum}` : `${issue.minimum} or more`,
        ),
      ];
    default:
      return [wrong(where, value, issue.message)];
  }
}

const COUNTED: Readonly<Record<string, string>> = { array: "entries", string: "characters" };

const WANTED: Readonly<Record<string, string>> = {
  number: "a number",
  int: "a whole number",
  string: 'a text in "…"',
  boolean: "true or false",
  array: "a list [ … ]",
  tuple: "a list [ … ]",
  object: "a group of keys { … }",
  record: "a group of keys { … }",
  null: "null",
};

function wrong(where: string, found: unknown, wanted: string): Trouble {
  return cataloguedTrouble("file-value-wrong", where, { found: shown(found), wanted });
}

function outOfRange(where: string, found: unknown, allowed: string): Trouble {
  return cataloguedTrouble("file-value-out-of-range", where, { found: shown(found), allowed });
}

function valueAt(input: unknown, path: readonly PropertyKey[]): unknown {
  let value = input;
  for (const step of path) {
    if (typeof value !== "object" || value === null || !Object.hasOwn(value, step)) return undefined;
    value = (value as Readonly<Record<PropertyKey, unknown>>)[step];
  }
  return value;
}
