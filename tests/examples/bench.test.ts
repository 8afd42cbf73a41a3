/** The bench's own arithmetic; nothing here is timed. */
import { describe, expect, test } from "vitest";
import { PART_COUNTS, sectionOfParts } from "../../bench/growing.ts";
import { movedSections } from "../../bench/moved.ts";
import { type BenchResult, compare } from "../../bench/results.ts";
import { timed } from "../../bench/timing.ts";
import { verticesOf } from "../../packages/core/src/curve/index.ts";
import { readExample } from "../../scripts/example-files.ts";

const resultOf = (figures: Readonly<Record<string, number>>): BenchResult => ({
  at: "",
  machine: "",
  node: "",
  yardstickMs: 1,
  figures: Object.entries(figures).map(([name, yardsticks]) => ({
    name,
    medianMs: 0,
    p95Ms: 0,
    runs: 1,
    yardsticks,
  })),
});

describe("two results compared", () => {
  test("a figure that has more than doubled is told, one that has just doubled is not", () => {
    const compared = compare(resultOf({ a: 1, b: 1, c: 4 }), resultOf({ a: 2, b: 2.01, c: 1 }));
    expect(compared.map(({ name, ratio, hasDoubled }) => [name, ratio, hasDoubled])).toEqual([
      ["a", 2, false],
      ["b", 2.01, true],
      ["c", 0.25, false],
    ]);
  });

  test("figures that only one of them has are left out", () => {
    expect(compare(resultOf({ old: 1 }), resultOf({ now: 9 }))).toEqual([]);
  });
});

describe("repeating", () => {
  test("warm-ups are not counted, and every run is told its number", () => {
    const numbers: number[] = [];
    const { runs } = timed((run) => numbers.push(run), { warmUps: 2, runs: 3, budgetMs: 60_000 });
    expect(runs).toBe(3);
    expect(numbers).toEqual([0, 1, 0, 1, 2]);
  });

  test("with nothing left to spend one run is made all the same", () => {
    expect(timed(() => {}, { warmUps: 0, runs: 5, budgetMs: 0 }).runs).toBe(1);
  });
});

test.each(PART_COUNTS)("the section of %i parts has as many arcs", (count) => {
  const arcs = sectionOfParts(count).outline.pieces.filter((piece) => piece.kind === "arc");
  expect(arcs.length).toBe(count);
});

test("a moved section differs from its own in one vertex by a tenth of a millimetre", () => {
  const { section } = readExample("low-bead-and-cove");
  const before = verticesOf(section.outline);
  const moved = movedSections(section, 20);
  expect(moved.length).toBe(20);
  for (const { outline } of moved) {
    const offs = verticesOf(outline).map(([x, y], i) => {
      const [x0, y0] = before[i] ?? [0, 0];
      return Math.hypot(x - x0, y - y0);
    });
    expect(offs.filter((off) => off > 0).length).toBe(1);
    expect(Math.max(...offs)).toBeCloseTo(0.1, 9);
  }
});
