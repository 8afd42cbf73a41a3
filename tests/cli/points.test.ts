/** A list of points measured off an old moulding, as it is typed and read. */
import { afterEach, beforeEach, expect, test } from "vitest";
import { type Bench, newBench, runHere } from "./run.ts";

let bench: Bench;
beforeEach(async () => {
  bench = await newBench();
});
afterEach(() => bench.clear());

/** A cove of 10 mm between a flat of 6 and one of 4: its centre stands 16 across and 20 up. */
const COVE = Array.from({ length: 19 }, (_, i) => {
  const angle = Math.PI + (Math.PI / 2) * (i / 18);
  return `${(16 + 10 * Math.cos(angle)).toFixed(2)}; ${(20 + 10 * Math.sin(angle)).toFixed(2)}`;
});
const LIST = ["# cove of the old frame", "0; 20", "3; 20", ...COVE, "18; 10", "20; 10"].join("\n");

test("a list is described as the flats and arcs it was", async () => {
  await bench.put("old-frame.csv", LIST);
  const { code, out, err } = await runHere(["section", "describe", bench.path("old-frame.csv")]);
  expect(code).toBe(0);
  expect(out).toMatch(/^old-frame: 20\smm × 20\smm/);
  expect(out).toMatch(/radius 10\smm/);
  expect(err).toContain("23 measured points are taken as 2 flats and one arc");
});

test("it is converted to a drawing, which is read back as the same section", async () => {
  await bench.put("old-frame.csv", LIST);
  const made = ["section", "convert", bench.path("old-frame.csv"), "--out", bench.path("old-frame.svg")];
  expect((await runHere(made)).code).toBe(0);
  const { code, out } = await runHere(["section", "describe", bench.path("old-frame.svg")]);
  expect(code).toBe(0);
  expect(out).toMatch(/radius 10\smm/);
});

test("inches are asked for with --unit", async () => {
  await bench.put("old-bar.csv", "0, 3/4\n1/4, 3/4\n1/4, 1/2\n1, 1/2\n");
  const { code, out } = await runHere(["section", "describe", bench.path("old-bar.csv"), "--unit", "in"]);
  expect(code).toBe(0);
  expect(out).toContain("1″ × ¾″");
});

test("a line that makes no sense is told by its number", async () => {
  await bench.put("old-frame.csv", "0; 20\n3; 20; 4\n9; 12\n");
  const { code, err } = await runHere(["section", "check", bench.path("old-frame.csv")]);
  expect(code).toBe(2);
  expect(err).toContain("Line 2 of the list");
});
