/** Free curves written as Béziers and read back: curves again, where they were. */
import { describe, expect, test } from "vitest";
import { type Point, ringFromVertices } from "../curve/index.ts";
import { FLATTEN_MM } from "../measure/index.ts";
import { type Cubic, cubicsThrough } from "./free-curve.ts";
import { readSectionFile } from "./read-file.ts";
import type { Section } from "./types.ts";
import { writeSvgSection } from "./write-svg.ts";

const TOL_MM = 10 * FLATTEN_MM;

/** A quarter of an ellipse, as fine chords. */
function quarter(longMm: number, shortMm: number, count: number): readonly Point[] {
  return Array.from({ length: count + 1 }, (_, index) => {
    const t = (index / count) * (Math.PI / 2);
    return { x: longMm * Math.sin(t), y: shortMm * Math.cos(t) };
  });
}

function along({ from, handleFrom, handleTo, to }: Cubic): readonly Point[] {
  return Array.from({ length: 201 }, (_, index) => {
    const t = index / 200;
    const s = 1 - t;
    const at = (axis: "x" | "y"): number =>
      s ** 3 * from[axis] +
      3 * s * s * t * handleFrom[axis] +
      3 * s * t * t * handleTo[axis] +
      t ** 3 * to[axis];
    return { x: at("x"), y: at("y") };
  });
}

describe("cubics through a run of points", () => {
  test.each([
    [30, 30],
    [30, 12],
    [80, 5],
  ])("a quarter of an ellipse of %d × %d takes few, all on the ellipse", (longMm, shortMm) => {
    const cubics = cubicsThrough(quarter(longMm, shortMm, 400), TOL_MM);
    expect(cubics.length).toBeLessThanOrEqual(6);
    for (const [index, cubic] of cubics.entries()) {
      if (index > 0) expect(cubic.from).toEqual(cubics[index - 1]?.to);
      for (const { x, y } of along(cubic)) {
        // How far off the ellipse: its equation over the steepness of its equation.
        const radius = Math.hypot(x / longMm, y / shortMm);
        const off = (Math.abs(radius - 1) * radius) / Math.hypot(x / longMm ** 2, y / shortMm ** 2);
        expect(off).toBeLessThan(2 * TOL_MM);
      }
    }
  });

  test("two points are joined straight, a single one by nothing", () => {
    const [one, ...more] = cubicsThrough(
      [
        { x: 0, y: 0 },
        { x: 3, y: 6 },
      ],
      TOL_MM,
    );
    expect(more).toEqual([]);
    expect(one?.handleFrom.x).toBeCloseTo(1, 12);
    expect(one?.handleTo.y).toBeCloseTo(4, 12);
    expect(cubicsThrough([{ x: 1, y: 1 }], TOL_MM)).toEqual([]);
  });

  test("a zigzag is followed through every corner", () => {
    const run = Array.from({ length: 9 }, (_, index) => ({ x: index, y: index % 2 }));
    const places = cubicsThrough(run, TOL_MM).flatMap(along);
    for (const { x, y } of run) {
      expect(Math.min(...places.map((place) => Math.hypot(place.x - x, place.y - y)))).toBeLessThan(0.02);
    }
  });
});

test("a section with free curves comes back from its drawing with curves in the same places", () => {
  const curve = quarter(20, 9, 300).map(({ x, y }): readonly [number, number] => [5 + x, 6 + y]);
  const corners: readonly (readonly [number, number])[] = [
    [0, 0],
    [30, 0],
    [30, 6],
  ];
  const vertices = [...corners, ...[...curve].reverse(), [0, 15] as const];
  const section: Section = {
    name: "free",
    stick: ringFromVertices([
      [0, 0],
      [30, 0],
      [30, 15],
      [0, 15],
    ]),
    outline: ringFromVertices(vertices),
    freeSpans: [{ first: 3, count: 300 }],
    named: [],
  };
  for (const unit of ["mm", "in"] as const) {
    const back = readSectionFile({ fileName: "free.svg", text: writeSvgSection(section, { unit }) });
    if (!back.ok) throw new Error(back.trouble.code);
    const { outline, freeSpans } = back.value;
    expect(freeSpans.length).toBeGreaterThanOrEqual(1);
    expect(freeSpans.length).toBeLessThanOrEqual(3);
    const free = freeSpans.flatMap(({ first, count }) =>
      Array.from({ length: count }, (_, place) => outline.pieces[(first + place) % outline.pieces.length]),
    );
    for (const piece of free) {
      const { x, y } = piece?.to ?? { x: 0, y: 0 };
      expect(Math.abs(Math.hypot((x - 5) / 20, (y - 6) / 9) - 1) * 22).toBeLessThan(3 * TOL_MM);
    }
  }
});
