import { readdirSync, readFileSync } from "node:fs";
import * as fc from "fast-check";
import { expect, it } from "vitest";
import { PROPERTY } from "../curve/testing/generators.ts";
import { ALL_CODES } from "../measure/index.ts";
import { readSectionFile } from "./read-file.ts";

const FOLDER = new URL("../../../../tests/fixtures/drawings/", import.meta.url);
const FIXTURES = readdirSync(FOLDER)
  .filter((name) => /\.(svg|dxf)$/.test(name))
  .map((name) => readFileSync(new URL(name, FOLDER), "utf8"));

/** Whatever the text: a section of finite numbers, or a trouble with a sentence; never an exception. */
function isAnswered(text: string): void {
  const outcome = readSectionFile({ fileName: "x", text });
  if (!outcome.ok) {
    expect(ALL_CODES).toContain(outcome.trouble.code);
    return;
  }
  for (const { from, to } of outcome.value.outline.pieces) {
    expect([from.x, from.y, to.x, to.y].every(Number.isFinite)).toBe(true);
  }
}

it("there are fixtures to spoil", () => {
  expect(FIXTURES.length).toBeGreaterThanOrEqual(8);
});

it("random text, also where a drawing seems to begin", () => {
  const start = fc.constantFrom(
    "",
    "<",
    "<svg>",
    '<svg width="4mm"><path d="',
    "0\nSECTION\n2\nENTITIES\n0\n",
    "999\n",
  );
  const junk = fc.oneof(fc.string({ unit: "binary", maxLength: 200 }), fc.string({ maxLength: 200 }));
  fc.assert(
    fc.property(start, junk, (begin, rest) => isAnswered(begin + rest)),
    { ...PROPERTY, numRuns: 1000 },
  );
});

it("random path data", () => {
  const number = fc.oneof(
    fc.integer({ min: -50, max: 50 }),
    fc.double({ noNaN: true, noDefaultInfinity: true }),
    fc.constantFrom(0, 1, 1e-9, 1e9, 1e308),
  );
  const command = fc.tuple(
    fc.constantFrom(..."MmLlHhVvCcSsQqTtAaZz"),
    fc.array(number, { maxLength: 7 }).map((numbers) => numbers.join(" ")),
  );
  const data = fc
    .array(command, { maxLength: 12 })
    .map((all) => `M0 0${all.map((one) => one.join("")).join("")}z`);
  fc.assert(
    fc.property(data, (d) =>
      isAnswered(`<svg width="42mm" height="18mm" viewBox="0 0 42 18"><path d="${d}"/></svg>`),
    ),
    { ...PROPERTY, numRuns: 1000 },
  );
});

it("drawings of real programs, spoilt: pieces cut out, doubled, swapped, numbers changed", () => {
  const spoil = fc.tuple(
    fc.constantFrom("cut", "double", "junk", "digit", "huge"),
    fc.double({ min: 0, max: 1, noNaN: true }),
    fc.integer({ min: 1, max: 400 }),
    fc.string({ maxLength: 4 }),
  );
  fc.assert(
    fc.property(
      fc.constantFrom(...FIXTURES),
      fc.array(spoil, { minLength: 1, maxLength: 4 }),
      (text, spoils) => {
        let spoilt = text;
        for (const [how, at, length, junk] of spoils) {
          const start = Math.floor(at * spoilt.length);
          const [head, tail] = [spoilt.slice(0, start), spoilt.slice(start)];
          if (how === "cut") spoilt = head + tail.slice(length);
          if (how === "double") spoilt = head + tail.slice(0, length) + tail;
          if (how === "junk") spoilt = head + junk + tail;
          if (how === "digit") spoilt = head + tail.replace(/\d/, String(length % 10));
          if (how === "huge") spoilt = head + tail.replace(/\d+(\.\d+)?/, "1e30");
        }
        isAnswered(spoilt);
      },
    ),
    { ...PROPERTY, numRuns: 600 },
  );
});
