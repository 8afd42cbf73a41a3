import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { frame, mitreOpening, mitreSeasons, polygonMitre } from "../packages/core/src/making/index.ts";
import { INCH_MM, type Outcome } from "../packages/core/src/measure/index.ts";
import { coefficientsOf, findTimber } from "../packages/core/src/timber/index.ts";

interface Row {
  readonly id: string;
  readonly input: Readonly<Record<string, number | string | readonly number[]>>;
  readonly expected: Readonly<Record<string, number | string | readonly number[]>>;
  readonly source: string;
}

const { rows } = JSON.parse(readFileSync(new URL("./area-f.json", import.meta.url), "utf8")) as {
  rows: readonly Row[];
};
const rowOf = (id: string): Row => rows.find((row) => row.id === id) as Row;
const given = (row: Row, key: string) => row.input[key] as number;
const wanted = (row: Row, key: string) => row.expected[key] as number;

function answerOf<T>(outcome: Outcome<T>): T {
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.trouble));
  return outcome.value;
}

test("every row names its source", () => {
  expect(rows.filter(({ source }) => source === "")).toEqual([]);
  expect(rows).toHaveLength(14);
});

const polygons = rows.filter(({ id }) => id.startsWith("F-P"));
test.each(polygons.map((row) => [row.id, row] as const))(
  "%s: polygon, and the frame of that many sides",
  (_, row) => {
    const sides = given(row, "sides");
    const polygon = answerOf(polygonMitre(sides));
    expect(Math.abs(polygon.mitreDeg - wanted(row, "mitre_deg"))).toBeLessThanOrEqual(1e-6);
    expect(Math.abs(polygon.cornerDeg - wanted(row, "corner_deg"))).toBeLessThanOrEqual(1e-6);
    const made = answerOf(
      frame({ shape: { kind: "regular", sides, sideMm: 200 }, stated: "sight", widthMm: 30 }),
    );
    for (const rail of made.rails) {
      expect(Math.abs(rail.start.mitreDeg - wanted(row, "mitre_deg"))).toBeLessThanOrEqual(1e-6);
      expect(Math.abs(rail.end.cornerDeg - wanted(row, "corner_deg"))).toBeLessThanOrEqual(1e-6);
    }
  },
);

test("F-E01: the saw's error stands sixteen times in an octagon", () => {
  const row = rowOf("F-E01");
  expect(answerOf(polygonMitre(given(row, "sides"))).errorTimes).toBe(wanted(row, "multiplier"));
});

describe("frame lengths", () => {
  test("F-F01: a picture 8 in, moulding 2 in, rebate 1/8 in", () => {
    const row = rowOf("F-F01");
    const side = given(row, "picture") * INCH_MM;
    const made = answerOf(
      frame({
        shape: { kind: "rectangle", acrossMm: side, upMm: side },
        stated: "glass",
        widthMm: given(row, "width") * INCH_MM,
        rebateMm: given(row, "rebate") * INCH_MM,
        allowanceMm: given(row, "allowance") * INCH_MM,
      }),
    );
    for (const { outsideMm } of made.rails)
      expect(outsideMm / INCH_MM).toBeCloseTo(wanted(row, "outside"), 9);
  });

  test("F-F03: three ways of stating the size", () => {
    const { expected } = rowOf("F-F03");
    const [d, w, r, a] = [300, 40, 8, 2];
    const rail = (stated: "glass" | "sight" | "outside") =>
      answerOf(
        frame({
          shape: { kind: "rectangle", acrossMm: d, upMm: 500 },
          stated,
          widthMm: w,
          rebateMm: r,
          allowanceMm: a,
        }),
      ).rails[0]!.outsideMm;
    // The row's rules, worked out by the letters that it writes them in.
    expect(expected.rail_from_frame_size).toBe("D + A + 2(W-R)");
    expect(rail("glass")).toBeCloseTo(d + a + 2 * (w - r), 9);
    expect(expected.rail_from_sight_size).toBe("D + 2W");
    expect(rail("sight")).toBeCloseTo(d + 2 * w, 9);
    expect(expected.rail_from_outside_size).toBe("D");
    expect(rail("outside")).toBeCloseTo(d, 9);
  });

  test("F-F04: 16 × 20 in", () => {
    const row = rowOf("F-F04");
    const [across, up] = row.input.frame_size as unknown as [number, number];
    const made = answerOf(
      frame({
        shape: { kind: "rectangle", acrossMm: across * INCH_MM, upMm: up * INCH_MM },
        stated: "glass",
        widthMm: given(row, "W") * INCH_MM,
        rebateMm: given(row, "R") * INCH_MM,
        allowanceMm: given(row, "A") * INCH_MM,
      }),
    );
    const [first, second] = made.rails;
    for (const [key, size] of [
      ["rails", "outsideMm"],
      ["sight", "sightMm"],
      ["rebate_size", "rebateMm"],
    ] as const) {
      const [x, y] = row.expected[key] as readonly [number, number];
      expect(first![size]! / INCH_MM).toBeCloseTo(x, 9);
      expect(second![size]! / INCH_MM).toBeCloseTo(y, 9);
    }
  });

  test.each([0, 1])("F-F05: a usual allowance (%d) is taken without a word", (index) => {
    const allowanceMm = (rowOf("F-F05").expected.allowance_in as readonly number[])[index]! * INCH_MM;
    const shape = { kind: "rectangle", acrossMm: 300, upMm: 400 } as const;
    const made = frame({ shape, stated: "glass", widthMm: 30, rebateMm: 8, allowanceMm });
    expect(made.ok && made.warnings).toEqual([]);
    expect(answerOf(made).rails[0]?.rebateMm).toBeCloseTo(300 + allowanceMm, 9);
  });
});

const moving = rows.filter(({ id }) => id.startsWith("F-M"));
test.each(moving.map((row) => [row.id, row] as const))("%s: a mitre through the seasons", (_, row) => {
  const widthMm = given(row, "width_mm");
  const strain = given(row, "CT") * given(row, "delta_MC");
  expect(Math.abs(strain - wanted(row, "strain"))).toBeLessThanOrEqual(1e-9);
  const timber = answerOf(findTimber(row.input.species as string));
  // The pine's coefficient in the row is rounded to five places from its shrinkage.
  expect(Math.abs(coefficientsOf(timber)!.tangentialPerPercent - given(row, "CT"))).toBeLessThanOrEqual(5e-6);
  const opening = mitreOpening(widthMm, 90, strain);
  expect(Math.abs(opening.cutFaceDeg - wanted(row, "cut_face_angle_deg"))).toBeLessThanOrEqual(1e-4);
  expect(Math.abs(opening.openingDeg - wanted(row, "joint_opening_deg"))).toBeLessThanOrEqual(1e-4);
  expect(Math.abs(opening.gapMm - wanted(row, "gap_mm"))).toBeLessThanOrEqual(1e-4);
  expect(opening.opensAt).toBe(row.expected.opens_at);
  const fromPercent = given(row, "delta_MC") < 0 ? 12 : 8;
  const toPercent = fromPercent + given(row, "delta_MC");
  const seasons = answerOf(mitreSeasons({ timber, widthMm, fromPercent, toPercent, sawn: "flat" }));
  expect(seasons.opensAt).toBe(row.expected.opens_at);
  // With the table's own coefficient: the row's gap but for the rounding of that coefficient.
  expect(Math.abs(seasons.gapMm - wanted(row, "gap_mm"))).toBeLessThanOrEqual(2e-3);
});
