import fc from "fast-check";
import { expect, test } from "vitest";
import { areaMm2, extentsOf } from "../../curve/index.ts";
import { buildSection, mirrorSection, type PartSpec, type Section } from "../../section/index.ts";
import { bestCant, grainAdvice, stickFor, turnSection } from "./index.ts";

const SEED = 20261124;

const part: fc.Arbitrary<PartSpec> = fc.oneof(
  fc.record({ kind: fc.constant("fillet" as const), widthMm: fc.integer({ min: 2, max: 15 }) }),
  fc.record({
    kind: fc.constantFrom("ovolo" as const, "cavetto" as const, "cyma recta" as const),
    acrossMm: fc.integer({ min: 5, max: 20 }),
    riseMm: fc.integer({ min: -6, max: -3 }),
  }),
  fc.record({ kind: fc.constant("step" as const), riseMm: fc.integer({ min: -5, max: -1 }) }),
);

const sections = fc.record({
  parts: fc.array(part, { minLength: 1, maxLength: 6 }),
  bevels: fc.option(
    fc.record({ gauge: fc.integer({ min: 30, max: 60 }), rise: fc.integer({ min: 3, max: 12 }) }),
  ),
});

function built({
  parts,
  bevels,
}: {
  parts: readonly PartSpec[];
  bevels: { gauge: number; rise: number } | null;
}) {
  const made = buildSection({
    name: "Any",
    stick: { widthMm: 120, thicknessMm: 40 },
    parts: [...parts, { kind: "fillet", widthMm: "rest" }],
    back:
      bevels === null
        ? []
        : [
            { kind: "bevel", edge: "gauge", riseMm: bevels.rise, fromBackDeg: bevels.gauge },
            { kind: "bevel", edge: "far", riseMm: 3, fromBackDeg: 90 - bevels.gauge },
          ],
  });
  return made.ok ? made.value : null;
}

/** Every number anywhere in an answer. */
function numbersIn(value: unknown): number[] {
  if (typeof value === "number") return [value];
  if (value === null || typeof value !== "object") return [];
  return Object.values(value).flatMap(numbersIn);
}

function forEachSection(numRuns: number, check: (section: Section) => void): void {
  let seen = 0;
  fc.assert(
    fc.property(sections, (spec) => {
      const section = built(spec);
      if (section === null) return;
      seen++;
      check(section);
    }),
    { seed: SEED, numRuns },
  );
  expect(seen).toBeGreaterThan(numRuns / 4);
}

test("every way gives finite numbers; bought is more than planed, planed more than the section", () => {
  forEachSection(100, (section) => {
    for (const way of ["flat", "bevelled first", "canted"] as const) {
      const given = stickFor({
        section,
        way,
        lengthMm: 1000,
        cantDeg: 10,
        grain: { risesDeg: 1, driftsDeg: -2 },
      });
      if (!given.ok) throw new Error(given.trouble.code);
      const { stock, holding, board, bevels } = given.value;
      expect(numbersIn(given.value).every(Number.isFinite)).toBe(true);
      expect(stock.buy.widthMm).toBeGreaterThan(stock.planed.widthMm);
      expect(stock.buy.lengthMm).toBeGreaterThan(stock.planed.lengthMm);
      expect(stock.wasteRatio).toBeGreaterThan(0);
      expect(holding.canBeHeld).toBe(holding.wideBoard === null);
      expect(bevels.wasteRatio).toBeLessThanOrEqual(stock.wasteRatio + 1e-9 + (way === "canted" ? 1 : 0));
      if (board.fence !== null) expect(board.fence.topMm).toBeLessThan(stock.planed.thicknessMm);
      if (board.stop !== null) expect(board.stop.topMm).toBeLessThan(stock.planed.thicknessMm);
    }
  });
});

test("no whole degree on either side of the line between the ends is better for the mean of the normals", () => {
  forEachSection(100, (section) => {
    const cant = bestCant(section);
    if (cant === null) return;
    const line = cant.candidates.find(({ reason }) => reason === "line between the ends of the curves");
    const cantDeg = line?.cantDeg ?? 0;
    // Upright part of the mean normal, from the curves' own leans and chords: greatest at the best cant.
    const upright = (turnDeg: number) =>
      cant.leans.reduce((sum, { leanDeg, chord }) => {
        const longMm = Math.hypot(chord!.to.x - chord!.from.x, chord!.to.y - chord!.from.y);
        return sum + longMm * Math.cos(((leanDeg + turnDeg) * Math.PI) / 180);
      }, 0);
    expect(upright(cantDeg)).toBeGreaterThanOrEqual(upright(cantDeg + 1));
    expect(upright(cantDeg)).toBeGreaterThanOrEqual(upright(cantDeg - 1));
  });
});

test("the mirrored section wants the mirrored cant and the mirrored drift", () => {
  const swapped = {
    "towards the gauge edge": "towards the far edge",
    "towards the far edge": "towards the gauge edge",
    straight: "straight",
  } as const;
  forEachSection(100, (section) => {
    const mirrored = mirrorSection(section);
    // Half degrees may be rounded either way, so the cants agree within one.
    const [one, other] = [bestCant(section), bestCant(mirrored)];
    expect(one === null).toBe(other === null);
    if (one !== null && other !== null) {
      expect(Math.abs(one.best.cantDeg + other.best.cantDeg)).toBeLessThanOrEqual(1);
      expect(one.gainDeg).toBeCloseTo(other.gainDeg, 0);
    }
    expect(grainAdvice(mirrored).drift).toBe(swapped[grainAdvice(section).drift]);
  });
});

test("turning keeps the section's area and fills its box", () => {
  fc.assert(
    fc.property(sections, fc.integer({ min: -60, max: 60 }), (spec, cantDeg) => {
      const section = built(spec);
      if (section === null) return;
      const turned = turnSection(section, cantDeg);
      expect(areaMm2(turned.outline)).toBeCloseTo(areaMm2(section.outline), 6);
      const [box, stick] = [extentsOf(turned.outline), extentsOf(turned.stick)];
      for (const key of ["minX", "minY", "maxX", "maxY"] as const)
        expect(box[key]).toBeCloseTo(stick[key], 9);
    }),
    { seed: SEED, numRuns: 100 },
  );
});
