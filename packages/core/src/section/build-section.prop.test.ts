import fc from "fast-check";
import { expect, test } from "vitest";
import {
  areaMm2,
  extentsOf,
  insideRing,
  lengthMm,
  nearestOnRing,
  pointAt,
  samePoint,
} from "../curve/index.ts";
import { DRAWING_NOISE_MM } from "../measure/index.ts";
import { buildSection, joinsOf, mirrorSection, type PartSpec, workedFaces } from "./index.ts";

fc.configureGlobal({ seed: 20261124, numRuns: 300 });

const size = fc.double({ min: 0.5, max: 12, noNaN: true });
const rise = fc.oneof(
  fc.double({ min: 0.5, max: 6, noNaN: true }),
  fc.double({ min: -6, max: -0.5, noNaN: true }),
);
const turning = fc.record(
  { smooth: fc.constant(true), leanDeg: fc.double({ min: -60, max: 60, noNaN: true }) },
  { requiredKeys: [] },
);

const anyPart: fc.Arbitrary<PartSpec> = fc
  .tuple(
    fc.oneof<fc.Arbitrary<PartSpec>[]>(
      fc.record({ kind: fc.constant("fillet" as const), widthMm: size }),
      fc.record({ kind: fc.constant("step" as const), riseMm: rise }),
      fc.record({ kind: fc.constant("bevel" as const), acrossMm: size, riseMm: rise }),
      fc.record({ kind: fc.constant("chamfer" as const), acrossMm: size }),
      fc.record({
        kind: fc.constant("quirk" as const),
        widthMm: size,
        depthMm: size,
        walls: fc.constantFrom("both" as const, "first" as const, "last" as const),
      }),
      fc.record({
        kind: fc.constant("vee quirk" as const),
        widthMm: size,
        depthMm: size,
        upright: fc.constantFrom("first" as const, "last" as const, "neither" as const),
      }),
      fc.record({
        kind: fc.constantFrom("bead" as const, "astragal" as const, "torus" as const),
        widthMm: size,
      }),
      fc.record({ kind: fc.constant("low bead" as const), widthMm: size }),
      fc.record({
        kind: fc.constantFrom("reeds" as const, "flutes" as const),
        count: fc.integer({ min: 1, max: 5 }),
        widthMm: fc.double({ min: 0.5, max: 4, noNaN: true }),
        gapMm: fc.constantFrom(0, 0.5),
        sweepDeg: fc.constantFrom(60, 120, 180),
      }),
      fc.record({
        kind: fc.constantFrom("ovolo" as const, "cavetto" as const),
        acrossMm: size,
        riseMm: rise,
        construction: fc.constantFrom("tangent" as const, "longer side" as const),
      }),
      fc.record({
        kind: fc.constant("scotia" as const),
        acrossMm: size,
        small: fc.constantFrom("first" as const, "last" as const),
      }),
      fc.record({
        kind: fc.constantFrom("cyma recta" as const, "cyma reversa" as const),
        acrossMm: size,
        riseMm: rise,
        construction: fc.constantFrom("flat" as const, "thick" as const),
        hollowRatio: fc.double({ min: 0.2, max: 0.8, noNaN: true }),
      }),
      fc.record({
        kind: fc.constant("swept arc" as const),
        radiusMm: size,
        sweepDeg: fc.double({ min: 5, max: 200, noNaN: true }),
        bend: fc.constantFrom("round" as const, "hollow" as const),
      }),
      fc.record({ kind: fc.constant("running arc" as const), acrossMm: size, riseMm: rise }),
    ),
    turning,
  )
  .map(([part, turn]) => {
    if (part.kind === "running arc") return part;
    const { smooth, leanDeg } = turn;
    return { ...part, ...(smooth ? { smooth } : leanDeg === undefined ? {} : { leanDeg }) } as PartSpec;
  });

const chainOfParts = fc
  .array(anyPart, { minLength: 1, maxLength: 5 })
  .map((parts): readonly PartSpec[] => [
    { kind: "fillet", widthMm: 5 },
    { kind: "step", riseMm: -12 },
    ...parts,
    { kind: "fillet", widthMm: "rest" },
  ]);

const specOf = (parts: readonly PartSpec[]) => ({
  name: "trial",
  stick: { widthMm: 80, thicknessMm: 40 },
  parts,
});

test("whatever is built is closed, in its stick, finite, and its names cover the face without a gap", () => {
  let builtCount = 0;
  let total = 0;
  fc.assert(
    fc.property(chainOfParts, (parts) => {
      total++;
      const outcome = buildSection(specOf(parts));
      if (!outcome.ok) {
        // Refused with a code and a place, never thrown.
        expect(outcome.trouble.where).toMatch(/^section/);
        return;
      }
      builtCount++;
      const { outline, stick, named } = outcome.value;
      const { pieces } = outline;
      for (const [index, piece] of pieces.entries()) {
        expect(piece.from).toEqual((pieces.at(index - 1) as typeof piece).to);
        expect(Number.isFinite(lengthMm(piece))).toBe(true);
        for (let k = 0; k <= 8; k++) {
          const p = pointAt(piece, k / 8);
          const isIn =
            insideRing(stick, p) !== "out" || nearestOnRing(stick, p).distanceMm <= DRAWING_NOISE_MM;
          expect(isIn).toBe(true);
        }
      }
      expect(areaMm2(outline)).toBeGreaterThan(0);
      expect(named.map((span) => span.kind)).toEqual([...parts].reverse().map((part) => part.kind));
      const faceCount = named.reduce((sum, span) => sum + span.count, 0);
      expect((named[0]?.first ?? 0) + faceCount).toBeLessThanOrEqual(pieces.length);
      for (const [index, span] of named.slice(1).entries()) {
        expect(span.first).toBe((named[index]?.first ?? 0) + (named[index]?.count ?? 0));
      }
    }),
  );
  // Most chains fit, so the property says something.
  expect(builtCount / total).toBeGreaterThan(0.3);
});

test("parts that are to run on smoothly do", () => {
  fc.assert(
    fc.property(chainOfParts, (parts) => {
      const outcome = buildSection(specOf(parts));
      if (!outcome.ok) return;
      const joins = joinsOf(outcome.value.outline);
      for (const [index, span] of outcome.value.named.entries()) {
        const part = parts[parts.length - 1 - index] as PartSpec;
        if (part.kind !== "running arc" && part.smooth !== true) continue;
        // The part's start is where its last piece, walked backwards, ends.
        const join = joins[(span.first + span.count) % joins.length];
        expect(join?.kind).toBe("smooth");
      }
    }),
  );
});

test("mirrored twice is the same section, mirrored once has the same area, joins and worked faces", () => {
  fc.assert(
    fc.property(chainOfParts, (parts) => {
      const outcome = buildSection(specOf(parts));
      if (!outcome.ok) return;
      const section = outcome.value;
      const once = mirrorSection(section);
      const twice = mirrorSection(once);
      expect(twice.named).toEqual(section.named);
      for (const [index, piece] of twice.outline.pieces.entries()) {
        expect(samePoint(piece.from, (section.outline.pieces[index] as typeof piece).from)).toBe(true);
      }
      expect(areaMm2(once.outline)).toBeCloseTo(areaMm2(section.outline), 6);
      const kinds = (one: typeof section) =>
        joinsOf(one.outline)
          .map((join) => join.kind)
          .sort();
      expect(kinds(once)).toEqual(kinds(section));
      const lengths = (one: typeof section) =>
        workedFaces(one)
          .faces.map((face) => face.count)
          .sort();
      expect(lengths(once)).toEqual(lengths(section));
      expect(extentsOf(once.outline).maxY).toBeCloseTo(extentsOf(section.outline).maxY, 9);
    }),
  );
});

test("no number of any part makes it throw", () => {
  const wild = fc.oneof(
    fc.double(),
    fc.constantFrom(0, -0, Number.NaN, Number.POSITIVE_INFINITY, 1e-9, 1e9, -1, 1e-320),
  );
  fc.assert(
    fc.property(anyPart, fc.array(wild, { minLength: 8, maxLength: 8 }), (part, numbers) => {
      let next = 0;
      const spoilt = Object.fromEntries(
        Object.entries(part).map(([key, value]) =>
          typeof value === "number" ? [key, numbers[next++ % numbers.length]] : [key, value],
        ),
      ) as unknown as PartSpec;
      const outcome = buildSection(
        specOf([{ kind: "fillet", widthMm: 5 }, spoilt, { kind: "fillet", widthMm: "rest" }]),
      );
      if (outcome.ok) {
        for (const piece of outcome.value.outline.pieces) expect(Number.isFinite(lengthMm(piece))).toBe(true);
      }
    }),
  );
});
