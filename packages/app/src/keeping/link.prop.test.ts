import fc from "fast-check";
import type { Job } from "mouldwright/job";
import { expect, test } from "vitest";
import { packJob, unpackJob } from "./link.ts";
import { plinth } from "./testing/jobs.ts";

const sizeMm = fc.double({ min: 0.5, max: 900, noNaN: true });
const words = fc.string({ unit: "grapheme", maxLength: 60 });

const part: fc.Arbitrary<NonNullable<Job["section"]["parts"]>[number]> = fc.oneof(
  fc.record({ kind: fc.constant("fillet" as const), widthMm: sizeMm }),
  fc.record({
    kind: fc.constant("ovolo" as const),
    acrossMm: sizeMm,
    riseMm: sizeMm.map((mm) => -mm),
    name: words,
  }),
  fc.record({
    kind: fc.constant("reeds" as const),
    count: fc.integer({ min: 1, max: 100 }),
    widthMm: sizeMm,
  }),
);

const job: fc.Arbitrary<Job> = fc
  .record({
    name: words,
    notes: words,
    parts: fc.array(part, { minLength: 1, maxLength: 12 }),
    widthMm: sizeMm,
  })
  .map(({ name, notes, parts, widthMm }) =>
    plinth({ name, notes, section: { parts }, stick: { widthMm, thicknessMm: 20 } }),
  );

test("what goes into a link comes out of it, number for number and letter for letter", () => {
  fc.assert(
    fc.property(job, (given) => {
      const packed = packJob(given);
      if (packed.kind !== "link") return;
      expect(unpackJob(packed.fragment)).toEqual({ kind: "job", job: given, warnings: [] });
    }),
    { seed: 20240506, numRuns: 100 },
  );
});

test("whatever letters a stranger writes, the answer is a job or a trouble, never an error", () => {
  const letters = fc.string({ unit: fc.constantFrom(..."ABCDwxyz0189-_=%<"), maxLength: 400 });
  fc.assert(
    fc.property(letters, (text) => {
      expect(unpackJob(`#job=${text}`).kind).toBe("trouble");
    }),
    { seed: 20240507, numRuns: 500 },
  );
});

test("a link with one letter changed never throws", () => {
  const packed = packJob(plinth());
  if (packed.kind !== "link") throw new Error(packed.kind);
  const { fragment } = packed;
  fc.assert(
    fc.property(
      fc.integer({ min: 5, max: fragment.length - 1 }),
      fc.constantFrom(..."Aa0_-z"),
      (at, letter) => {
        const changed = fragment.slice(0, at) + letter + fragment.slice(at + 1);
        expect(["job", "trouble"]).toContain(unpackJob(changed).kind);
      },
    ),
    { seed: 20240508, numRuns: 100 },
  );
});
