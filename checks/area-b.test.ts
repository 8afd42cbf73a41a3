import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import {
  cornerFromAngle,
  flatSettings,
  hopper,
  mitre,
  springFrom,
  springFromLegs,
} from "../packages/core/src/making/index.ts";
import type { Outcome } from "../packages/core/src/measure/index.ts";

interface Row {
  readonly id: string;
  readonly input: Readonly<Record<string, number>>;
  readonly expected: Readonly<Record<string, number>>;
  readonly tolerance: string;
  readonly source: string;
  readonly disagreement?: { readonly printedMitreDeg: number; readonly trueMitreDeg: number };
}

const { rows } = JSON.parse(readFileSync(new URL("./area-b.json", import.meta.url), "utf8")) as {
  rows: readonly Row[];
};
const rowOf = (id: string): Row => rows.find((row) => row.id === id) as Row;

function answerOf<T>(outcome: Outcome<T>): T {
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.trouble));
  expect(outcome.warnings).toEqual([]);
  return outcome.value;
}

/** The number that a row's tolerance begins with. */
const toleranceOf = (row: Row) => Number.parseFloat(row.tolerance);

function near(row: Row, actual: number, key: string): void {
  expect(Math.abs(actual - (row.expected[key] as number)), `${row.id} ${key}`).toBeLessThanOrEqual(
    toleranceOf(row),
  );
}

function flat(springDeg: number, cornerDeg: number) {
  const spring = answerOf(springFrom("wall", springDeg));
  return answerOf(mitre({ spring, corner: answerOf(cornerFromAngle(cornerDeg)) })).laidFlat;
}

test("every row names its source", () => {
  expect(rows.filter(({ source }) => source === "")).toEqual([]);
  expect(rows).toHaveLength(117);
});

const crown = rows.filter(({ id }) => /^B-(00[1-6]|D)/.test(id));
test.each(crown.map((row) => [row.id, row.source, row] as const))("%s: crown mitre, %s", (_, __, row) => {
  const settings = flat(row.input.spring_from_wall_deg!, row.input.corner_deg!);
  near(row, settings.mitreDeg, "mitre_deg");
  near(row, settings.bevelDeg, "bevel_deg");
});

const table = rows.filter(({ id, disagreement }) => id.startsWith("B-T") && disagreement === undefined);
test.each(table.map((row) => [row.id, row] as const))(
  "%s: the printed table, as hopper and as crown",
  (_, row) => {
    const { sides, side_pitch_from_flat_deg, spring_from_wall_deg } = row.input;
    const box = answerOf(hopper({ sides: sides!, slope: { fromLevelDeg: side_pitch_from_flat_deg! } }));
    near(row, box.mitreDeg, "mitre_deg");
    near(row, box.bevelDeg, "bevel_deg");
    const settings = flat(spring_from_wall_deg!, 180 - 360 / sides!);
    near(row, settings.mitreDeg, "mitre_deg");
    near(row, settings.bevelDeg, "bevel_deg");
  },
);

test("B-T039: the misprint is a disagreement, and the formula is not bent to it", () => {
  const row = rowOf("B-T039");
  const { printedMitreDeg, trueMitreDeg } = row.disagreement!;
  expect(row.expected.mitre_deg).toBe(printedMitreDeg);
  const box = answerOf(hopper({ sides: 7, slope: { fromLevelDeg: 25 } }));
  expect(Math.abs(box.mitreDeg - trueMitreDeg)).toBeLessThanOrEqual(5e-5);
  // Every other row of that table agrees within half a unit of its last digit and a little.
  expect(Math.abs(box.mitreDeg - printedMitreDeg)).toBeGreaterThan(0.0075);
  expect(Math.abs(box.bevelDeg - row.expected.bevel_deg!)).toBeLessThanOrEqual(0.0075);
});

test("B-007: a chart's reading for sides pitched 26°", () => {
  const row = rowOf("B-007");
  const box = answerOf(hopper({ sides: 4, slope: { fromLevelDeg: row.input.side_pitch_from_flat_deg! } }));
  near(row, box.mitreDeg, "mitre_deg");
  near(row, box.bevelDeg, "bevel_deg");
});

test("B-008: sides 5° off plumb, read on a mitre gauge", () => {
  const row = rowOf("B-008");
  const box = answerOf(
    hopper({ sides: 4, slope: { fromPlumbDeg: row.input.side_slope_from_vertical_deg! } }),
  );
  near(row, box.gaugeFromBladeDeg, "mitre_gauge_deg_from_blade");
  near(row, box.bevelDeg, "tilt_deg");
});

test("B-N01: the bevel is an arc sine, not the arc tangent that goes round", () => {
  const row = rowOf("B-N01");
  const { bevelDeg } = flat(45, 90);
  expect(Math.abs(bevelDeg - row.expected.right_bevel_deg!)).toBeLessThanOrEqual(5e-5);
  expect(Math.abs(bevelDeg - row.expected.wrong_bevel_deg!)).toBeGreaterThan(3);
});

test("B-N02: 38 from the wall is 52 from the ceiling, and the swapped convention shows", () => {
  const row = rowOf("B-N02");
  const { same_as, if_conventions_swapped } = row.expected as unknown as {
    same_as: { angle_from_ceiling_deg: number };
    if_conventions_swapped: { mitre_deg: number; bevel_deg: number };
  };
  const fromWall = answerOf(springFrom("wall", row.input.spring_from_wall_deg!));
  const fromCeiling = answerOf(springFrom("ceiling", same_as.angle_from_ceiling_deg));
  expect(fromCeiling.fromWallDeg).toBe(fromWall.fromWallDeg);
  const swapped = answerOf(springFrom("ceiling", row.input.spring_from_wall_deg!));
  const wrong = flat(swapped.fromWallDeg, 90);
  expect(Math.abs(wrong.mitreDeg - if_conventions_swapped.mitre_deg)).toBeLessThanOrEqual(5e-5);
  expect(Math.abs(wrong.bevelDeg - if_conventions_swapped.bevel_deg)).toBeLessThanOrEqual(5e-5);
  const right = flat(fromWall.fromWallDeg, 90);
  expect(Math.abs(right.mitreDeg - wrong.mitreDeg)).toBeGreaterThan(6);
});

test("B-C01: with the wall's leg longer it is 38, with the ceiling's 52", () => {
  const row = rowOf("B-C01");
  const longer = 80;
  const shorter = longer * Math.tan((38 * Math.PI) / 180);
  const drop = answerOf(springFromLegs(shorter, longer));
  expect(drop.fromWallDeg).toBeCloseTo(row.expected.spring_from_wall_deg!, 9);
  expect(answerOf(springFromLegs(longer, shorter)).fromWallDeg).toBeCloseTo(52, 9);
  expect(answerOf(springFromLegs(longer, longer)).fromWallDeg).toBeCloseTo(45, 9);
});

describe("limits (common practice, no source)", () => {
  test.each([30, 60, 90, 135, 175])("corner %d: flat on the wall, and flat on the ceiling", (cornerDeg) => {
    const onWall = flatSettings(0, cornerDeg / 2);
    expect(onWall.mitreDeg).toBe(0);
    expect(onWall.bevelDeg).toBeCloseTo(90 - cornerDeg / 2, 10);
    const onCeiling = flatSettings(90, cornerDeg / 2);
    expect(onCeiling.mitreDeg).toBeCloseTo(90 - cornerDeg / 2, 10);
    expect(onCeiling.bevelDeg).toBe(0);
  });

  test("no corner at all: a square cut", () => {
    for (const springDeg of [0, 38, 90]) {
      expect(flatSettings(springDeg, 90).mitreDeg).toBeCloseTo(0, 10);
      expect(flatSettings(springDeg, 90).bevelDeg).toBeCloseTo(0, 10);
    }
  });
});
