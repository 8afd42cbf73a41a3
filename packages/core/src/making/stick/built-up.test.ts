import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  areaMm2,
  extentsOf,
  intersection,
  moveRing,
  regionAreaMm2,
  regionOf,
  union,
} from "../../curve/index.ts";
import { AREA_AGREEMENT_MM2, FLATTEN_MM } from "../../measure/index.ts";
import { buildSection, inspectSection, type PartSpec, type Section } from "../../section/index.ts";
import { readShelf } from "../../shelf/index.ts";
import { type BuiltUp, type BuiltUpQuestion, builtUp, planParts } from "./index.ts";

function section(widthMm: number, thicknessMm: number, parts: readonly PartSpec[]): Section {
  const built = buildSection({ name: "Test", stick: { widthMm, thicknessMm }, parts });
  if (!built.ok) throw new Error(`${built.trouble.code} ${JSON.stringify(built.trouble.facts)}`);
  return built.value;
}

function made(question: BuiltUpQuestion): BuiltUp {
  const given = builtUp(question);
  if (!given.ok) throw new Error(given.trouble.code);
  return given.value;
}

/** 30 wide at 40 high, then a step down to 15 high for the rest of 100. */
const step = section(100, 40, [
  { kind: "fillet", widthMm: 30 },
  { kind: "step", riseMm: -25 },
  { kind: "fillet", widthMm: "rest" },
]);

describe("one step, two ways to hide a joint in its corner", () => {
  const answer = made({ section: step, timber: { widthMm: 100, thicknessMm: 30 }, lengthMm: 900 });

  test("upright is least: 30 by 40 on its edge and 70 by 15, bought as 36 × 44 + 76 × 19", () => {
    expect(answer.best.woodMm2).toBeCloseTo(3028, 6);
    expect(answer.best.joints).toEqual([
      { from: { x: 30, y: 15 }, to: { x: 30, y: 0 }, hiddenBy: "step", runs: "upright" },
    ]);
    expect(answer.best.parts.map(({ planed, sawnLying, at }) => ({ planed, sawnLying, at }))).toEqual([
      {
        planed: { widthMm: 30, thicknessMm: 40, lengthMm: 1000 },
        sawnLying: "on its edge",
        at: { x: 0, y: 0 },
      },
      {
        planed: { widthMm: 70, thicknessMm: 15, lengthMm: 1000 },
        sawnLying: "on its back",
        at: { x: 30, y: 0 },
      },
    ]);
    expect(answer.standing).toBe("proven least");
  });

  test("the runner-up is level: 100 by 15 and 30 by 25, bought as 106 × 19 + 36 × 29", () => {
    expect(answer.runnerUp!.woodMm2).toBeCloseTo(3058, 6);
    expect(answer.runnerUp!.joints[0]!.runs).toBe("level");
  });

  test("the part with most of the back comes first, the other is glued on 15", () => {
    expect(answer.best.gluing).toEqual([
      { part: 2, onto: [], faceMm: 0, hold: "first" },
      { part: 1, onto: [2], faceMm: 15, hold: "glue and clamp" },
    ]);
  });

  test("with timber of 26 only level will do for two; the runner-up takes three, 36 × 29 + 36 × 19 + 76 × 19", () => {
    const question = { section: step, timber: { widthMm: 100, thicknessMm: 26 }, lengthMm: 900 };
    const thin = made(question);
    expect(thin.best.joints.map(({ runs }) => runs)).toEqual(["level"]);
    expect(thin.runnerUp!.woodMm2).toBeCloseTo(3172, 6);
    expect(made({ ...question, mostParts: 2 }).runnerUp).toBeNull();
  });

  test("a section that fits stays whole", () => {
    const whole = made({ section: step, timber: { widthMm: 100, thicknessMm: 40 }, lengthMm: 900 });
    expect(whole.best.parts).toHaveLength(1);
    expect(whole.best.joints).toEqual([]);
    expect(whole.runnerUp).toBeNull();
  });
});

test("a joint under a fillet's edge: the ogee below it keeps no feather", () => {
  // Level fillet 40 to 34 high, then a slope down from its lower edge: only the level joint at 34 leaves 30° and more.
  const cap = section(80, 40, [
    { kind: "fillet", widthMm: 20 },
    { kind: "step", riseMm: -6 },
    { kind: "bevel", acrossMm: 60, riseMm: -24 },
  ]);
  const answer = made({ section: cap, timber: { widthMm: 80, thicknessMm: 36 }, lengthMm: 900 });
  expect(answer.best.joints).toEqual([
    { from: { x: 20, y: 34 }, to: { x: 0, y: 34 }, hiddenBy: "step", runs: "level" },
  ]);
});

test("three parts where two do not", () => {
  const stairs = section(90, 60, [
    { kind: "fillet", widthMm: 30 },
    { kind: "step", riseMm: -20 },
    { kind: "fillet", widthMm: 30 },
    { kind: "step", riseMm: -20 },
    { kind: "fillet", widthMm: "rest" },
  ]);
  const timber = { widthMm: 90, thicknessMm: 20 };
  const answer = made({ section: stairs, timber, lengthMm: 900 });
  // Level boards of 90, 60 and 30 by 20: (96 + 66 + 36) × 24.
  expect(answer.best.parts.map(({ planed }) => [planed.widthMm, planed.thicknessMm])).toEqual([
    [90, 20],
    [60, 20],
    [30, 20],
  ]);
  expect(answer.best.woodMm2).toBeCloseTo(4752, 6);
  expect(answer.best.gluing.map(({ part, onto }) => [part, onto])).toEqual([
    [1, []],
    [2, [1]],
    [3, [2]],
  ]);
  const two = builtUp({ section: stairs, timber, lengthMm: 900, mostParts: 2 });
  if (two.ok) throw new Error("not refused");
  expect(two.trouble.code).toBe("built-up-no-way");
});

test.each([
  ["built-up-no-way", { timber: { widthMm: 20, thicknessMm: 10 } }],
  ["built-up-timber", { timber: { widthMm: -20, thicknessMm: 10 } }],
  ["built-up-timber", { timber: { widthMm: 20, thicknessMm: Number.NaN } }],
  ["built-up-parts", { mostParts: 0 }],
  ["built-up-parts", { mostParts: 7 }],
  ["stick-length", { lengthMm: 0 }],
] satisfies [string, Partial<BuiltUpQuestion>][])("%s is refused", (code, wrong) => {
  const timber = { widthMm: 100, thicknessMm: 30 };
  const given = builtUp({ section: step, timber, lengthMm: 900, ...wrong });
  if (given.ok) throw new Error("not refused");
  expect(given.trouble.code).toBe(code);
});

test("every part is planned like any section", () => {
  const shelf = readShelf({
    format: "mouldwright/shelf",
    version: 1,
    unit: "mm",
    planes: [
      { kind: "rebate", width: 30 },
      { kind: "smoother", width: 50 },
      { kind: "moving fillister", width: 38 },
    ],
  });
  if (!shelf.ok) throw new Error(shelf.trouble.code);
  const rebated = section(60, 40, [
    { kind: "fillet", widthMm: 20 },
    { kind: "step", riseMm: -25 },
    { kind: "fillet", widthMm: 30 },
    { kind: "step", riseMm: -5 },
    { kind: "fillet", widthMm: "rest" },
  ]);
  const { best } = made({ section: rebated, timber: { widthMm: 60, thicknessMm: 25 }, lengthMm: 900 });
  const steps = planParts(best, { shelf: shelf.value });
  let step = steps.next();
  while (!step.done) step = steps.next();
  expect(step.value).toHaveLength(best.parts.length);
  // The square part has nothing to cut; the one with the step is cut whole.
  const uncut = step.value.map(({ plan }) =>
    plan === null ? "square" : plan.ok ? plan.value.uncut.length : plan,
  );
  expect([...uncut].sort()).toEqual([0, "square"]);
});

test("two parts of random stairs: as little wood as trying every corner both ways", () => {
  const stairs = fc.record({
    treads: fc.array(
      fc.record({ across: fc.integer({ min: 7, max: 40 }), down: fc.integer({ min: 7, max: 20 }) }),
      {
        minLength: 1,
        maxLength: 4,
      },
    ),
    base: fc.integer({ min: 7, max: 20 }),
    last: fc.integer({ min: 7, max: 40 }),
    timber: fc.record({
      widthMm: fc.integer({ min: 40, max: 120 }),
      thicknessMm: fc.integer({ min: 20, max: 60 }),
    }),
  });
  let parted = 0;
  fc.assert(
    fc.property(stairs, ({ treads, base, last, timber }) => {
      const width = treads.reduce((sum, tread) => sum + tread.across, last);
      const height = treads.reduce((sum, tread) => sum + tread.down, base);
      const parts = treads.flatMap(({ across, down }): PartSpec[] => [
        { kind: "fillet", widthMm: across },
        { kind: "step", riseMm: -down },
      ]);
      const fits = (w: number, t: number) =>
        (w <= timber.widthMm && t <= timber.thicknessMm) || (t <= timber.widthMm && w <= timber.thicknessMm);
      if (fits(width, height)) return;
      const woods: number[] = [];
      let [x, y] = [0, height];
      for (const { across, down } of treads) {
        x += across;
        y -= down;
        const ways = [
          [x, height, width - x, y],
          [width, y, x, height - y],
        ] as const;
        for (const [w1, t1, w2, t2] of ways) {
          if (fits(w1, t1) && fits(w2, t2)) woods.push((w1 + 6) * (t1 + 4) + (w2 + 6) * (t2 + 4));
        }
      }
      const whole = section(width, height, [...parts, { kind: "fillet", widthMm: "rest" }]);
      const given = builtUp({ section: whole, timber, lengthMm: 900, mostParts: 2 });
      if (woods.length === 0) {
        expect(given.ok).toBe(false);
        return;
      }
      if (!given.ok) throw new Error(given.trouble.code);
      woods.sort((a, b) => a - b);
      expect(given.value.best.woodMm2).toBeCloseTo(woods[0]!, 6);
      expect(given.value.runnerUp === null ? undefined : Math.round(given.value.runnerUp.woodMm2)).toBe(
        woods[1],
      );
      parted++;
    }),
    { seed: 20261124, numRuns: 200 },
  );
  expect(parted).toBeGreaterThan(40);
});

describe("by property", () => {
  const part = fc.oneof(
    fc.record({ kind: fc.constant("fillet" as const), widthMm: fc.integer({ min: 5, max: 30 }) }),
    fc.record({
      kind: fc.constant("ovolo" as const),
      acrossMm: fc.integer({ min: 6, max: 20 }),
      riseMm: fc.integer({ min: -10, max: -5 }),
    }),
    fc.record({
      kind: fc.constant("cavetto" as const),
      acrossMm: fc.integer({ min: 6, max: 20 }),
      riseMm: fc.integer({ min: -10, max: -5 }),
    }),
    fc.record({ kind: fc.constant("step" as const), riseMm: fc.integer({ min: -15, max: -4 }) }),
  );

  test("parts fill the section, do not overlap, fit the timber, and can each be worked", () => {
    let parted = 0;
    fc.assert(
      fc.property(
        fc.array(part, { minLength: 3, maxLength: 7 }),
        fc.integer({ min: 15, max: 40 }),
        fc.integer({ min: 40, max: 130 }),
        (parts, thicknessMm, widthMm) => {
          const built = buildSection({
            name: "Any",
            stick: { widthMm: 130, thicknessMm: 42 },
            parts: [...parts, { kind: "fillet", widthMm: "rest" }],
          });
          if (!built.ok) return;
          const given = builtUp({ section: built.value, timber: { widthMm, thicknessMm }, lengthMm: 500 });
          if (!given.ok) return;
          for (const way of [given.value.best, given.value.runnerUp]) {
            if (way === null) continue;
            if (way.parts.length > 1) parted++;
            expectWhole(built.value, way.parts, { widthMm, thicknessMm });
            expect(way.gluing.map(({ part: number }) => number).sort()).toEqual(
              way.parts.map(({ number }) => number),
            );
            for (const step of way.gluing.slice(1)) expect(step.onto.length).toBeGreaterThan(0);
          }
          if (given.value.runnerUp !== null) {
            expect(given.value.runnerUp.woodMm2).toBeGreaterThanOrEqual(given.value.best.woodMm2 - 1e-6);
            expect(given.value.runnerUp.joints).not.toEqual(given.value.best.joints);
          }
        },
      ),
      { seed: 20261124, numRuns: 150 },
    );
    expect(parted).toBeGreaterThan(20);
  });
});

function expectWhole(
  whole: Section,
  parts: BuiltUp["best"]["parts"],
  timber: { readonly widthMm: number; readonly thicknessMm: number },
): void {
  const placed = parts.map(({ section: own, at }) => moveRing(own.outline, at.x, at.y));
  const total = placed.reduce((sum, ring) => sum + areaMm2(ring), 0);
  expect(total).toBeCloseTo(areaMm2(whole.outline), 6);
  const regions = placed.map((ring) => regionOf(ring, FLATTEN_MM));
  const together = regionAreaMm2(intersection(union(...regions), regionOf(whole.outline, FLATTEN_MM)));
  expect(Math.abs(together - areaMm2(whole.outline))).toBeLessThan(AREA_AGREEMENT_MM2);
  for (const { section: own, work } of parts) {
    const { maxX, maxY, minX, minY } = extentsOf(own.outline);
    expect([minX, minY]).toEqual([expect.closeTo(0, 9), expect.closeTo(0, 9)]);
    const lies = maxX <= timber.widthMm + 1e-6 && maxY <= timber.thicknessMm + 1e-6;
    const stands = maxY <= timber.widthMm + 1e-6 && maxX <= timber.thicknessMm + 1e-6;
    expect(parts.length === 1 || lies || stands).toBe(true);
    const refusals = inspectSection(own).refusals.map(({ code }) => code);
    expect(refusals).toEqual(work === "square" ? ["section-not-worked"] : []);
  }
}
