import fc from "fast-check";
import { expect, test } from "vitest";
import type { Plan, PlanCut } from "../cutting/index.ts";
import { readShelf } from "../shelf/index.ts";
import { readMeasured } from "./index.ts";

const SHELF = (() => {
  const read = readShelf({
    format: "mouldwright/shelf",
    version: 1,
    unit: "in",
    planes: [
      { id: "round", kind: "round", radius: "3/8 in", width: "3/8 in" },
      { id: "plough", kind: "plough", widths: ["1/8 in"] },
    ],
  });
  if (!read.ok) throw new Error(read.trouble.code);
  return read.value;
})();

/** Only numbers and lines of the cuts are looked at: the first is sawn, the others planed. */
const PLAN = {
  cuts: [
    {
      number: 1,
      line: [
        [0, 0],
        [1, 1],
      ],
    },
    { number: 2 },
    { number: 3 },
  ] as unknown as readonly PlanCut[],
} as Plan;

const read = (content: object, after = 3) =>
  readMeasured(JSON.stringify({ format: "mouldwright/measured", version: 1, ...content }), {
    plan: PLAN,
    shelf: SHELF,
    after,
  });

const refusal = (content: object, after = 3): readonly [string, string] => {
  const outcome = read(content, after);
  if (outcome.ok) throw new Error("read, but should have been refused");
  return [outcome.trouble.code, outcome.trouble.where];
};

test("lengths in the file's unit or their own, places out to either side", () => {
  const outcome = read({
    unit: "in",
    planes: { round: { width: "9.6 mm", radius: 0.5 } },
    cuts: { "2": { across: "-1/32", deeper: 0.125 }, "3": { across: "−2 mm" } },
  });
  expect(outcome.ok && outcome.value).toEqual({
    planes: { round: { widthMm: 9.6, radiusMm: 12.7 } },
    cuts: { "2": { acrossMm: -25.4 / 32, deeperMm: 25.4 / 8 }, "3": { acrossMm: -2 } },
  });
});

test("nothing measured: everything came out as planned", () => {
  expect(read({})).toMatchObject({ ok: true, value: { planes: {}, cuts: {} }, warnings: [] });
});

test.each<[string, object, number, readonly [string, string]]>([
  ["a sawn cut", { cuts: { "1": { across: 1 } } }, 3, ["measured-cut-sawn", 'cuts["1"]']],
  ["a cut not made yet", { cuts: { "3": { across: 1 } } }, 2, ["measured-cut-unknown", 'cuts["3"]']],
  ["a cut before any is made", { cuts: { "1": { across: 1 } } }, 0, ["measured-cut-unknown", 'cuts["1"]']],
  ["a plane that is not there", { planes: { rond: { width: 1 } } }, 3, ["plane-unknown", "planes.rond"]],
  [
    "a plough's width",
    { planes: { plough: { width: 3 } } },
    3,
    ["measured-size-other", "planes.plough.width"],
  ],
  [
    "a width of nought",
    { planes: { round: { width: 0 } } },
    3,
    ["shelf-size-not-positive", "planes.round.width"],
  ],
  ["a place 11 mm out", { cuts: { "2": { deeper: 11 } } }, 3, ["measured-cut-far-off", 'cuts["2"].deeper']],
])("refused: %s", (_, content, after, wanted) => {
  expect(refusal(content, after)).toEqual(wanted);
});

test("never throws, whatever stands in the file", () => {
  fc.assert(
    fc.property(fc.json(), fc.json(), (planes, cuts) => {
      const text = `{"format":"mouldwright/measured","version":1,"planes":${planes},"cuts":${cuts}}`;
      const outcome = readMeasured(text, { plan: PLAN, shelf: SHELF, after: 3 });
      expect(typeof outcome.ok).toBe("boolean");
    }),
    { seed: 20261124, numRuns: 300 },
  );
});
