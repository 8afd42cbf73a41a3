import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { flatSettings, hip, hipSideFromJack, rakePoint, riseOf } from "../packages/core/src/making/index.ts";
import type { Outcome } from "../packages/core/src/measure/index.ts";

interface Row {
  readonly id: string;
  readonly input: Readonly<Record<string, number>>;
  readonly expected: Readonly<Record<string, number>>;
  readonly source: string;
}

const { rows } = JSON.parse(readFileSync(new URL("./area-d-rake.json", import.meta.url), "utf8")) as {
  rows: readonly Row[];
};
const rowOf = (id: string): Row => rows.find((row) => row.id === id) as Row;

function answerOf<T>(outcome: Outcome<T>): T {
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.trouble));
  return outcome.value;
}

function near(row: Row, actual: number, key: string, tolerance: number): void {
  expect(Math.abs(actual - row.expected[key]!), `${row.id} ${key}`).toBeLessThanOrEqual(tolerance);
}

const slopeDeg = (risePer12: number) => (Math.atan(risePer12 / 12) * 180) / Math.PI;

test("every row names its source", () => {
  expect(rows.filter(({ source }) => source === "")).toEqual([]);
  expect(rows).toHaveLength(20);
});

const points = rows.filter(({ id }) => id.startsWith("D-R"));
test.each(points.map((row) => [row.id, row] as const))(
  "%s: there and back from each of the three",
  (_, row) => {
    const rise = answerOf(riseOf(row.input.slope_deg!));
    const { p, h } = row.input;
    const level = rakePoint(p!, h!, "level", rise);
    near(row, level.rakeHeightMm, "rake_height_square_to_slope", 1e-6);
    near(row, level.upperReturnHeightMm, "upper_return_height", 1e-6);
    expect(level.projectionMm).toBe(row.expected.projection);
    const fromRake = rakePoint(p!, row.expected.rake_height_square_to_slope!, "rake", rise);
    const fromUpper = rakePoint(p!, row.expected.upper_return_height!, "upper return", rise);
    // The printed heights are rounded to six places; steep slopes make that a little more.
    for (const back of [fromRake, fromUpper])
      expect(Math.abs(back.levelHeightMm - h!)).toBeLessThanOrEqual(2e-6);
  },
);

test.each(["D-H01", "D-H05"])("%s: hip over a square plan", (id) => {
  const row = rowOf(id);
  const mainDeg = slopeDeg(row.input.rise_per_12!);
  const roof = answerOf(hip({ mainDeg }));
  near(row, mainDeg, "common_deg", 2e-5);
  near(row, roof.hipDeg, "hip_deg", 2e-5);
  near(row, roof.main.backingDeg, "backing_deg", 2e-5);
  near(row, roof.main.jackSideCutDeg, "jack_side_cut_deg", 2e-5);
  near(row, roof.lengthPerRun * 12, "hip_length_per_12_run", 5e-4);
  // Like slopes on a square plan: both sides alike.
  for (const key of ["planDeg", "backingDeg", "jackSideCutDeg"] as const) {
    expect(roof.adjacent[key]).toBeCloseTo(roof.main[key], 10);
  }
});

test("D-H05 and a 45° crown at a square corner share their numbers", () => {
  const roof = answerOf(hip({ mainDeg: 45 }));
  const crown = flatSettings(45, 45);
  expect(roof.hipDeg).toBeCloseTo(crown.mitreDeg, 10);
  expect(roof.main.backingDeg).toBeCloseTo(crown.bevelDeg, 10);
});

test("D-H10: unequal pitches", () => {
  const row = rowOf("D-H10");
  const roof = answerOf(
    hip({ mainDeg: slopeDeg(8), adjacentDeg: slopeDeg(6), cornerDeg: row.input.plan_deg! }),
  );
  near(row, roof.main.planDeg, "plan_main", 1e-5);
  near(row, roof.adjacent.planDeg, "plan_adjacent", 1e-5);
  near(row, roof.hipDeg, "hip_deg", 1e-5);
  near(row, roof.main.backingDeg, "backing_main", 1e-5);
  near(row, roof.adjacent.backingDeg, "backing_adjacent", 1e-5);
  near(row, roof.main.jackSideCutDeg, "jack_main", 1e-5);
  near(row, roof.adjacent.jackSideCutDeg, "jack_adjacent", 1e-5);
});

test("D-H11: from the boards' side cut back to the plan", () => {
  const row = rowOf("D-H11");
  const mainDeg = slopeDeg(10);
  expect(Math.abs(90 - mainDeg - row.input.complement_of_pitch!)).toBeLessThanOrEqual(1e-5);
  const side = answerOf(hipSideFromJack(mainDeg, row.input.jack_side_cut!));
  near(row, side.planDeg, "plan_deg", 1e-5);
  near(row, side.backingDeg, "backing_deg", 1e-5);
});
