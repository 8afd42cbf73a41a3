import fc from "fast-check";
import { expect, test } from "vitest";
import { readJob, sectionOfJob, writeJob } from "./index.ts";

const RUNS = { seed: 20261124, numRuns: 400 };

/** Sizes that only malice or a slip gives. */
const wild = fc.oneof(
  fc.double({ min: -1000, max: 1000, noNaN: true }),
  fc.constantFrom(0, -0, 1e-7, 5e-324, 1000, 1e308),
);
/** Sizes as people give them, now and then a wild one. */
const sizeMm = fc.oneof(
  { weight: 30, arbitrary: fc.integer({ min: 1, max: 60 }).map((halves) => halves / 2) },
  { weight: 1, arbitrary: wild },
);
const mm = fc.oneof(
  { weight: 30, arbitrary: fc.integer({ min: -20, max: 60 }).map((halves) => halves / 2) },
  { weight: 1, arbitrary: wild },
);
const sizes = {
  widthMm: sizeMm,
  acrossMm: mm,
  riseMm: mm,
  depthMm: sizeMm,
  radiusMm: sizeMm,
  sweepDeg: sizeMm,
};
const kinds = [
  "fillet",
  "step",
  "bevel",
  "chamfer",
  "quirk",
  "vee quirk",
  "bead",
  "astragal",
  "torus",
  "low bead",
  "reeds",
  "flutes",
  "ovolo",
  "cavetto",
  "scotia",
  "cyma recta",
  "cyma reversa",
  "arc",
  "swept arc",
  "running arc",
];

/** A part with more keys than any kind has: those the schema refuses are taken out, one after the other. */
const part = fc.record({
  kind: fc.constantFrom(...kinds),
  smooth: fc.boolean(),
  count: fc.integer({ min: 1, max: 5 }),
  bend: fc.constantFrom("round", "hollow"),
  ...sizes,
});

const vertex = fc.oneof(
  fc.tuple(mm, mm),
  fc.tuple(mm, mm, fc.double({ min: -12, max: 12, noNaN: true })),
  fc.tuple(fc.integer({ min: 0, max: 6 }), fc.integer({ min: 0, max: 4 })),
);

const section = fc.oneof(
  fc.record({ path: fc.array(vertex, { minLength: 2, maxLength: 9 }) }),
  // The last fillet takes what is left, so that chains have a chance to end on the far edge.
  fc.record({
    parts: fc
      .array(part, { minLength: 1, maxLength: 3 })
      .map((parts) => [...parts, { kind: "fillet", widthMm: "rest" }]),
  }),
);

const job = fc.record({
  format: fc.constant("mouldwright/job"),
  version: fc.constant(1),
  name: fc.string(),
  section,
  stick: fc.record({ widthMm: sizeMm.map((one) => one * 4), thicknessMm: sizeMm.map((one) => one * 2) }),
});

test("whatever the sizes, a job gives a section or a refusal with its place, and never throws", () => {
  let sections = 0;
  let refusedLater = 0;
  fc.assert(
    fc.property(job, (one) => {
      let value: Record<string, unknown> = structuredClone(one);
      let outcome = readJob(JSON.stringify(value));
      // Keys of another kind of part go, so that the numbers behind them are reached.
      for (
        let tries = 0;
        !outcome.ok && outcome.trouble.code === "file-key-unknown" && tries < 60;
        tries += 1
      ) {
        value = withoutKey(value, outcome.trouble.where);
        outcome = readJob(JSON.stringify(value));
      }
      if (!outcome.ok) {
        expect(outcome.trouble.where).not.toBe("");
        return;
      }
      const made = sectionOfJob(outcome.value);
      if (made.ok) sections += 1;
      else refusedLater += 1;
      expect(readJob(writeJob(outcome.value))).toEqual(outcome);
    }),
    RUNS,
  );
  // The property says nothing if nothing gets so far.
  expect(sections).toBeGreaterThan(5);
  expect(refusedLater).toBeGreaterThan(100);
});

/** The value without the key at a path such as `section.parts[2].widthMm`. */
function withoutKey(value: Record<string, unknown>, path: string): Record<string, unknown> {
  const steps = path.split(/[.[\]]+/).filter((step) => step !== "");
  const last = steps.pop()!;
  let inner: Record<string, unknown> = value;
  for (const step of steps) inner = inner[step] as Record<string, unknown>;
  delete inner[last];
  return value;
}
