import fc from "fast-check";
import { expect, test } from "vitest";
import { readPlan, writePlan } from "./plan-file.ts";
import { recutPlan } from "./recut.ts";
import type { Plan, PlanCut } from "./types.ts";

const RUNS = { seed: 20261124, numRuns: 300 };

const mm = fc
  .double({ min: -1000, max: 1000, noNaN: true, noDefaultInfinity: true })
  .map((value) => value + 0);
const size = fc.double({ min: 0, max: 1000, noNaN: true, noDefaultInfinity: true }).map((value) => value + 0);
const deg = fc
  .double({ min: -180, max: 180, noNaN: true, noDefaultInfinity: true })
  .map((value) => value + 0);
const words = fc.string({ unit: "binary", maxLength: 30 });
const place = fc.tuple(mm, mm);

/** A box, so that the outline is one whatever the numbers. */
const ring = fc
  .tuple(mm, mm, fc.double({ min: 0.5, max: 90, noNaN: true }), fc.double({ min: 0.01, max: 1, noNaN: true }))
  .map(([x, y, side, bulge]): Plan["stick"] => [
    [x, y],
    [x + side, y, bulge],
    [x + side, y + side],
    [x, y + side],
  ]);

const cut = (number: number): fc.Arbitrary<PlanCut> =>
  fc.record({
    number: fc.constant(number),
    purpose: fc.constantFrom("relief", "waste", "guide", "shape", "finish"),
    plane: fc.record({ id: words, kind: fc.constantFrom("round", "hollow"), radius: size, name: words }),
    cant: deg,
    sole: ring,
    runs: fc.array(fc.array(fc.tuple(mm, mm, deg), { minLength: 1, maxLength: 4 }), {
      minLength: 1,
      maxLength: 3,
    }),
    after: fc.array(ring, { maxLength: 2 }),
    takes: size,
    wall: fc.tuple(size, size),
    seat: fc.option(fc.record({ lift: mm, shift: mm })),
    runsAgainst: fc.option(words),
    setting: fc.nat({ max: 99 }),
    passes: fc.nat({ max: 99 }),
    shaving: size,
    minutes: size,
    says: words,
    doneWhen: words,
  });

const plan: fc.Arbitrary<Plan> = fc
  .tuple(fc.nat({ max: 3 }), fc.tuple(cut(1), cut(2), cut(3)), words, ring, fc.array(place, { maxLength: 3 }))
  .map(([count, cuts, name, outline, places]) => ({
    format: "mouldwright/plan",
    version: 1,
    unit: "mm",
    name,
    tolerance: 0.2,
    shelf: { format: "mouldwright/shelf", version: 1, unit: "mm", planes: [] },
    assumed: [name],
    warnings: [],
    way: "flat",
    ways: [],
    standing: "best found",
    stick: outline,
    section: outline,
    planned: outline,
    parts: places.map((at, i) => ({ id: `p${i}`, kind: "cove", name, from: at, to: at, madeBy: [] })),
    marks: [],
    cuts: cuts.slice(0, count),
    finish: { proud: 0, under: 0, rms: 0, joins: [] },
    uncut: [],
  }));

test("read(write(plan)) is the plan, number for number, and writing it again the same text", () => {
  fc.assert(
    fc.property(plan, (one) => {
      const text = writePlan(one);
      const outcome = readPlan(text);
      expect(outcome).toEqual({ ok: true, value: one, warnings: [] });
      if (outcome.ok) expect(writePlan(outcome.value)).toBe(text);
    }),
    RUNS,
  );
});

test("a plan's text with a stretch of it cut out or doubled is read or refused, never thrown over", () => {
  fc.assert(
    fc.property(plan, fc.nat(), fc.nat({ max: 60 }), fc.boolean(), (one, at, length, doubled) => {
      const text = writePlan(one);
      const index = at % text.length;
      const stretch = text.slice(index, index + length);
      const changed = text.slice(0, index) + (doubled ? stretch + stretch : "") + text.slice(index + length);
      const outcome = readPlan(changed);
      if (!outcome.ok) expect(outcome.trouble.code).toMatch(/^(file|plan)-/);
    }),
    RUNS,
  );
});

test("whatever a plan that can be read says, cutting it again gives a report, and never throws", () => {
  fc.assert(
    fc.property(plan, (one) => {
      const report = recutPlan(one);
      expect(report.holds).toBe(report.findings.length === 0);
      for (const cut of report.cuts) expect(Number.isFinite(cut.takesMm2)).toBe(true);
    }),
    { ...RUNS, numRuns: 60 },
  );
});
