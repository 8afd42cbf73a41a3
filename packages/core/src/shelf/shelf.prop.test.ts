import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { circleOf, nearestOnPiece, pointAt, verticesOf } from "../curve/index.ts";
import { ALL_CODES, INCH_MM, SAME_POINT_MM, sayTrouble } from "../measure/index.ts";
import { shelfFileSchema } from "./file-schema.ts";
import { type Bed, ironToSole, soleToIron } from "./iron.ts";
import { readShelf } from "./read-shelf.ts";
import { shelfFile } from "./shelf-entry.ts";
import { pairSizeMm, radiusFromSole } from "./sizing.ts";
import { soleDepthMm, soleOf, solesOf } from "./sole.ts";
import type { Plane, Shelf, SidePlane, SnipeBill } from "./types.ts";

const SEED = 20261124;

const real = (min: number, max: number) => fc.double({ min, max, noNaN: true, noDefaultInfinity: true });
const hand = fc.constantFrom("left", "right");
const maybe = <T>(arbitrary: fc.Arbitrary<T>) => fc.option(arbitrary, { nil: undefined, freq: 2 });
const named = {
  id: maybe(fc.constantFrom("a", "b", "c", "d")),
  name: maybe(fc.constantFrom("old", "½ in", "x y")),
  note: maybe(fc.constantFrom("boxed", "set “fine” for ½ in")),
};

/** Half the widths lie exactly on, or a hair beside, the arcs where formulas turn: 60°, the half circle. */
const curvedEntry = fc
  .record({
    ...named,
    kind: fc.constantFrom("hollow", "round"),
    radius: real(1, 200),
    share: fc.oneof(real(0.05, 2), fc.constantFrom(1, 2, 2 - 1e-9, 1 + 1e-12)),
    pitch: maybe(real(35, 65)),
    skew: maybe(real(-30, 30)),
    wall: maybe(real(0, 2)),
    shoulder: maybe(real(1, 30)),
  })
  .map(({ radius, share, shoulder, ...rest }) => {
    const width = radius * share;
    return { ...rest, radius, width, ...(shoulder && { shoulder: { width: width + 1, height: shoulder } }) };
  });

const flankX = fc.uniqueArray(fc.integer({ min: -20_000, max: 20_000 }), { minLength: 2, maxLength: 8 });
const shapedEntry = fc
  .record({ ...named, xs: flankX, ys: fc.array(real(-10, 10), { minLength: 8, maxLength: 8 }) })
  .map(({ xs, ys, ...rest }) => ({
    ...rest,
    kind: "shaped",
    cutsWall: "left",
    sole: [...xs].sort((a, b) => a - b).map((x, index) => [x / 1000, ys[index]!]),
  }));

const entry = fc.oneof(
  curvedEntry,
  fc.record({
    ...named,
    kind: fc.constant("snipe bill"),
    hand,
    width: maybe(real(3, 12)),
    slope: maybe(real(45, 75)),
  }),
  fc.record({ ...named, kind: fc.constantFrom("rebate", "smoother"), width: real(1, 80) }),
  fc.record({
    ...named,
    kind: fc.constant("moving fillister"),
    width: real(10, 60),
    fence: maybe(real(5, 60)),
  }),
  fc.record({
    ...named,
    kind: fc.constant("plough"),
    widths: fc.array(real(2, 20), { minLength: 1, maxLength: 8 }),
  }),
  fc.record({ ...named, kind: fc.constantFrom("side snipe", "side rebate"), hand, width: maybe(real(1, 9)) }),
  fc.record({
    ...named,
    kind: fc.constant("side round"),
    hand,
    width: real(1, 9),
    radius: maybe(real(9, 30)),
  }),
  fc.record({
    ...named,
    kind: fc.constant("bead"),
    width: real(2, 30),
    quirk: maybe(real(0.5, 3)),
    hand: maybe(hand),
  }),
  shapedEntry,
);

/** JSON drops what is undefined, as a file would. */
const asFile = (planes: readonly unknown[], unit: string) =>
  JSON.parse(JSON.stringify({ format: "mouldwright/shelf", version: 1, unit, planes })) as unknown;

function shelfFrom(planes: readonly { id?: string | undefined }[], unit = "mm"): Shelf {
  // Ids are drawn from a few letters; a second use is taken away instead of refused, so that both ways are met.
  const seen = new Set<string>();
  const apart = planes.map((plane) => {
    const isFirst = plane.id !== undefined && !seen.has(plane.id);
    if (isFirst) seen.add(plane.id!);
    return isFirst ? plane : { ...plane, id: undefined };
  });
  const read = readShelf(asFile(apart, unit));
  if (!read.ok) throw new Error(JSON.stringify(read.trouble));
  return read.value;
}

const planesOf = fc.array(entry, { maxLength: 12 });

describe("the file", () => {
  test("read(write(shelf)) = shelf, twice over, and the written file is the schema's", () => {
    fc.assert(
      fc.property(planesOf, (planes) => {
        const shelf = shelfFrom(planes);
        const written = JSON.stringify(shelfFile(shelf));
        expect(shelfFileSchema.safeParse(JSON.parse(written)).error).toBeUndefined();
        const again = readShelf(written);
        expect(again.ok && again.value.planes).toEqual(shelf.planes);
        expect(again.ok && again.value.assumed).toEqual([]);
        expect(again.ok && JSON.stringify(shelfFile(again.value))).toBe(written);
      }),
      { seed: SEED, numRuns: 300 },
    );
  });

  test("ids are unique", () => {
    fc.assert(
      fc.property(planesOf, (planes) => {
        const ids = shelfFrom(planes).planes.map(({ id }) => id.toLowerCase());
        expect(new Set(ids).size).toBe(ids.length);
      }),
      { seed: SEED, numRuns: 200 },
    );
  });

  test("a size in 64ths of an inch is the same in an inch file, as text, and in a millimetre file", () => {
    fc.assert(
      fc.property(fc.integer({ min: 4, max: 400 }), (sixtyFourths) => {
        const inch = shelfFrom([{ kind: "rebate", width: sixtyFourths / 64 } as never], "in");
        const text = shelfFrom([{ kind: "rebate", width: `${sixtyFourths}/64 in` } as never], "mm");
        const mm = shelfFrom([{ kind: "rebate", width: (sixtyFourths * 25.4) / 64 } as never], "mm");
        const widthMm = (shelf: Shelf) => (shelf.planes[0] as { widthMm: number }).widthMm;
        expect(widthMm(text)).toBe(widthMm(inch));
        expect(widthMm(mm)).toBe(widthMm(inch));
        expect(Math.abs(widthMm(inch) - (sixtyFourths / 64) * INCH_MM)).toBeLessThanOrEqual(
          SAME_POINT_MM / 2,
        );
      }),
      { seed: SEED, numRuns: 300 },
    );
  });

  test("whatever it is given, the reader answers, in sentences that hold nothing unseen", () => {
    const key = fc.oneof(
      fc.constantFrom(
        "kind",
        "radius",
        "width",
        "id",
        "name",
        "sole",
        "shoulder",
        "widths",
        "__proto__",
        "hand",
      ),
      fc.string(),
    );
    const value = fc.oneof(
      fc.anything({ maxDepth: 2 }),
      fc.constantFrom(
        "hollow",
        "shaped",
        "plough",
        "left",
        -1,
        1e308,
        Number.NaN,
        "3/0 in",
        "\u001b[2J\u202e",
      ),
    );
    const anyPlane = fc.dictionary(key, value).map((keys) => ({ kind: "hollow", ...keys }));
    const anyFile = fc.record({
      format: fc.constant("mouldwright/shelf"),
      version: fc.constant(1),
      unit: fc.constantFrom("mm", "in"),
      planes: fc.array(fc.oneof(anyPlane, value), { maxLength: 4 }),
    });
    fc.assert(
      fc.property(fc.oneof(anyFile, fc.anything(), fc.string(), fc.json()), (input) => {
        const read = readShelf(input);
        const troubles = read.ok ? read.warnings : [read.trouble, ...(read.more ?? [])];
        for (const trouble of troubles) {
          expect(ALL_CODES).toContain(trouble.code);
          const said = sayTrouble(trouble, { unit: "mm" });
          for (const text of [said.sentence, said.hint, said.where])
            expect(text).not.toMatch(/[\p{Cc}\u202e]/u);
        }
      }),
      { seed: SEED, numRuns: 1500 },
    );
  });
});

describe("soles", () => {
  test("every sole runs from left to right over its whole width, its ends where it says", () => {
    fc.assert(
      fc.property(planesOf, (planes) => {
        for (const sole of shelfFrom(planes).planes.flatMap(solesOf)) {
          const pieces = sole.chain.pieces;
          expect(pieces[0]!.from.x).toBe(sole.leftMm);
          expect(pieces[pieces.length - 1]!.to.x).toBe(sole.rightMm);
          expect(sole.widthMm).toBeGreaterThan(0);
          for (const piece of pieces) {
            for (let step = 0; step < 8; step++) {
              const forwardMm = pointAt(piece, (step + 1) / 8).x - pointAt(piece, step / 8).x;
              expect(forwardMm).toBeGreaterThanOrEqual(-SAME_POINT_MM);
            }
          }
        }
      }),
      { seed: SEED, numRuns: 200 },
    );
  });

  test("the origin lies on a hollow's or round's sole, in the middle of an arc of its own radius", () => {
    fc.assert(
      fc.property(curvedEntry, (curved) => {
        const plane = shelfFrom([curved]).planes[0]!;
        const [arc] = soleOf(plane).chain.pieces;
        if (arc?.kind !== "arc" || !("radiusMm" in plane)) throw new Error("a curved sole is one arc");
        expect(nearestOnPiece(arc, { x: 0, y: 0 }).distanceMm).toBeLessThan(SAME_POINT_MM);
        expect(circleOf(arc).radiusMm).toBeCloseTo(plane.radiusMm!, 5);
      }),
      { seed: SEED, numRuns: 500 },
    );
  });

  test("the other hand's sole is the mirrored one", () => {
    const handed = fc.oneof(
      fc.record({ ...named, kind: fc.constant("snipe bill"), width: real(3, 12), slope: real(45, 75) }),
      fc.record({ ...named, kind: fc.constant("side round"), width: real(1, 9), radius: real(9, 30) }),
      fc.record({ ...named, kind: fc.constant("bead"), width: real(2, 30), quirk: real(0.5, 3) }),
    );
    fc.assert(
      fc.property(handed, (plane) => {
        const read = shelfFrom([plane].map((one) => ({ ...one, hand: "left" }))).planes[0]! as
          | SnipeBill
          | SidePlane;
        const [left, right] = [soleOf(read), soleOf({ ...read, hand: "right" } as Plane)];
        const points = (sole: typeof left, sign: number) =>
          verticesOf(sole.chain).map(([x, y]) => [sign * x + 0, y]);
        expect(points(right, -1).reverse()).toEqual(points(left, 1));
        // The middle of each arc as well, since mirrored vertices say nothing of their bulges.
        const middles = (sole: typeof left, sign: number) =>
          sole.chain.pieces.map((piece) => pointAt(piece, 0.5)).map(({ x, y }) => [sign * x, y]);
        middles(right, -1)
          .reverse()
          .forEach(([x, y], index) => {
            const [leftX, leftY] = middles(left, 1)[index]!;
            expect(Math.hypot(x! - leftX!, y! - leftY!)).toBeLessThan(SAME_POINT_MM);
          });
        expect(right.cutsWall).toEqual({ left: left.cutsWall.right, right: left.cutsWall.left });
      }),
      { seed: SEED, numRuns: 300 },
    );
  });

  test("radius from width and depth gives the radius back", () => {
    fc.assert(
      fc.property(real(1, 200), real(0.05, 2), (radiusMm, share) => {
        const widthMm = radiusMm * share;
        const read = radiusFromSole({ widthMm, depthMm: soleDepthMm({ radiusMm, widthMm }) });
        if (!read.ok) throw new Error(read.trouble.code);
        expect(Math.abs(read.value.radiusMm / radiusMm - 1)).toBeLessThan(1e-12);
        expect(read.value.leastMm).toBeLessThanOrEqual(radiusMm * (1 + 1e-12));
        if (read.value.mostMm !== undefined) expect(read.value.mostMm).toBeGreaterThan(radiusMm);
      }),
      { seed: SEED, numRuns: 500 },
    );
  });
});

test("a point of the sole comes back from any iron", () => {
  const bed: fc.Arbitrary<Bed> = fc.record({
    pitchDeg: real(20, 90),
    skewDeg: real(-60, 60),
    pitchMeasured: fc.constantFrom("square to edge", "along plane"),
  });
  fc.assert(
    fc.property(bed, real(-50, 50), real(-20, 20), (iron, x, y) => {
      const back = ironToSole(soleToIron({ x, y }, iron), iron);
      expect(Math.abs(back.x - x)).toBeLessThan(1e-9);
      expect(Math.abs(back.y - y)).toBeLessThan(1e-9);
    }),
    { seed: SEED, numRuns: 500 },
  );
});

test("pair sizes grow with their numbers", () => {
  for (let number = 2; number <= 18; number++) {
    expect(pairSizeMm(number)!).toBeGreaterThan(pairSizeMm(number - 1)!);
  }
});
