import fc from "fast-check";
import { expect, test } from "vitest";
import { LEAST_PIECE_MM, SAME_POINT_MM } from "../measure/index.ts";
import { type BandLayout, bandLayout, bandOnShelf } from "./band-layout.ts";
import { band as bandPieces } from "./forms/band.ts";
import type { BandSpec } from "./part-spec.ts";

const RUNS = { seed: 20260120, numRuns: 2000 };

const mm = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const spec: fc.Arbitrary<BandSpec> = fc
  .record({
    widthMm: mm(1, 300),
    count: fc.option(fc.integer({ min: 1, max: 40 }), { nil: undefined }),
    radiusMm: fc.option(mm(0.5, 40), { nil: undefined }),
    sweepDeg: fc.option(mm(5, 180), { nil: undefined }),
    filletMm: fc.option(fc.oneof(fc.constant(0), mm(0.1, 8)), { nil: undefined }),
    leastEndMm: fc.option(mm(0, 20), { nil: undefined }),
    of: fc.constantFrom("reeds" as const, "flutes" as const),
  })
  .map((sizes) => ({ kind: "band" as const, ...sizes }));

function wholeMm(layout: BandLayout): number {
  return layout.count * layout.partMm + (layout.count - 1) * layout.filletMm + 2 * layout.endMm;
}

test("parts, fillets and both ends make up the width to the last bit of a millionth", () => {
  let laidOut = 0;
  fc.assert(
    fc.property(spec, (one) => {
      const layout = bandLayout(one);
      if (!layout.ok) return;
      laidOut += 1;
      expect(Math.abs(wholeMm(layout.value) - one.widthMm)).toBeLessThan(SAME_POINT_MM);
      // No end narrower than asked for, and none too narrow to be a flat.
      const { endMm } = layout.value;
      expect(endMm).toBeGreaterThanOrEqual(
        Math.max(0, (one.leastEndMm ?? 0) - SAME_POINT_MM - LEAST_PIECE_MM),
      );
      expect(endMm === 0 || endMm >= LEAST_PIECE_MM).toBe(true);
    }),
    RUNS,
  );
  expect(laidOut).toBeGreaterThan(400);
});

test("the ends are even and the row is its own mirror image", () => {
  fc.assert(
    fc.property(spec, (one) => {
      const layout = bandLayout(one);
      if (!layout.ok) return;
      const { startsMm, partMm, count } = layout.value;
      startsMm.forEach((startMm, i) => {
        const mirrored = one.widthMm - (startsMm[count - 1 - i] ?? Number.NaN) - partMm;
        expect(Math.abs(startMm - mirrored)).toBeLessThan(SAME_POINT_MM);
      });
    }),
    RUNS,
  );
});

test("of a radius there is never room for one more", () => {
  fc.assert(
    fc.property(spec, (one) => {
      if (one.radiusMm === undefined) return;
      const layout = bandLayout({ ...one, count: undefined });
      if (!layout.ok) return;
      const more = bandLayout({ ...one, count: layout.value.count + 1 });
      expect(more.ok).toBe(false);
    }),
    RUNS,
  );
});

test("drawn, it is one run of pieces from end to end, each arc of the layout's radius", () => {
  fc.assert(
    fc.property(spec, (one) => {
      const layout = bandLayout(one);
      if (!layout.ok) return;
      const pieces = bandPieces(layout.value, one.widthMm, one.of === "reeds" ? "round" : "hollow");
      expect(pieces[0]?.from).toEqual({ x: 0, y: 0 });
      expect(pieces.at(-1)?.to).toEqual({ x: one.widthMm, y: 0 });
      pieces.slice(1).forEach((piece, i) => {
        expect(piece.from).toEqual(pieces[i]?.to);
      });
      expect(pieces.filter((piece) => piece.kind === "arc")).toHaveLength(layout.value.count);
      expect(pieces.every((piece) => piece.to.x > piece.from.x)).toBe(true);
    }),
    RUNS,
  );
});

test("made with the shelf it has a sole of the shelf, and no wider one would do", () => {
  const soles = fc
    .array(mm(1, 30), { minLength: 1, maxLength: 8 })
    .map((radii) => radii.map((radiusMm) => ({ radiusMm, widthMm: radiusMm * 0.9 })));
  fc.assert(
    fc.property(spec, soles, (one, shelf) => {
      if (one.count === undefined) return;
      const counted: BandSpec = { ...one, radiusMm: undefined, sweepDeg: undefined };
      const made = bandOnShelf(counted, shelf);
      if (!made.ok) return;
      const { radiusMm } = made.value;
      expect(shelf.some((sole) => sole.radiusMm === radiusMm)).toBe(true);
      const layout = bandLayout(made.value);
      expect(layout.ok).toBe(true);
      for (const sole of shelf.filter((other) => other.radiusMm > (radiusMm ?? 0) + SAME_POINT_MM)) {
        const wider = bandLayout({ ...made.value, radiusMm: sole.radiusMm });
        expect(wider.ok).toBe(false);
      }
    }),
    RUNS,
  );
});
