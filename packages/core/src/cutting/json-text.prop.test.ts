import fc from "fast-check";
import { expect, test } from "vitest";
import { readJsonText } from "./json-text.ts";

const RUNS = { seed: 20261124, numRuns: 2000 };
const LIMITS = { mostCharacters: 1_000_000 };

/** The engine's own parser is the second opinion on what is JSON. */
function engineReads(text: string): unknown {
  try {
    return { value: JSON.parse(text) as unknown };
  } catch {
    return "refused";
  }
}

function weRead(text: string): unknown {
  const outcome = readJsonText(text, LIMITS);
  return outcome.ok ? { value: outcome.value } : "refused";
}

test("any value the engine writes is read, and as the same value", () => {
  fc.assert(
    fc.property(fc.json({ maxDepth: 6 }), (text) => {
      expect(weRead(text)).toEqual(engineReads(text));
    }),
    RUNS,
  );
});

test("one character changed, added or left out: read or refused as the engine does", () => {
  const signs = fc.constantFrom(...'{}[],:"\\truefalsn0123456789.eE+-/* \t\n\u0000\u001f\u007fué\ufeff');
  fc.assert(
    fc.property(fc.json({ maxDepth: 3 }), fc.nat(), fc.nat({ max: 2 }), signs, (text, at, leftOut, sign) => {
      const index = at % (text.length + 1);
      const changed =
        text.slice(0, index) + (leftOut === 2 ? "" : sign) + text.slice(index + Math.min(1, leftOut));
      // A byte order mark at the start is passed over here and refused by the engine.
      fc.pre(!changed.startsWith("\ufeff"));
      expect(weRead(changed)).toEqual(engineReads(changed));
    }),
    RUNS,
  );
});

test("strings of nothing but JSON's own signs: as the engine does, and a fault lies within the text", () => {
  const text = fc.string({ unit: fc.constantFrom(...'{}[],:"\\u0123-.eE tn'), maxLength: 12 });
  fc.assert(
    fc.property(text, (one) => {
      expect(weRead(one)).toEqual(engineReads(one));
      const outcome = readJsonText(one, LIMITS);
      if (outcome.ok || outcome.trouble.code !== "file-not-json") return;
      expect(outcome.trouble.facts.column).toBeGreaterThanOrEqual(1);
      expect(outcome.trouble.facts.column).toBeLessThanOrEqual(one.length + 1);
    }),
    RUNS,
  );
});
