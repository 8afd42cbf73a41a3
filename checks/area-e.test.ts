import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { point } from "../packages/core/src/curve/index.ts";
import { INCH_MM } from "../packages/core/src/measure/index.ts";
import {
  clearanceDeg,
  curvedIron,
  cuttingPitchDeg,
  GROUND_BEVEL_DEG,
  ironToSole,
  NAMED_PITCHES_DEG,
  pairSizeMm,
  pitchAlongPlaneDeg,
  readShelf,
  SHAVING_MM,
  soleAngleDeg,
  soleToIron,
  stretchRatio,
  strokesToDepth,
  widthForArcMm,
} from "../packages/core/src/shelf/index.ts";

interface Row {
  readonly id: string;
  readonly area: string;
  readonly input: Readonly<Record<string, number | string>>;
  readonly expected: Readonly<Record<string, unknown>>;
  readonly tolerance: string;
  readonly source: string;
  readonly status: string;
}

const { rows } = JSON.parse(readFileSync(new URL("./area-e.json", import.meta.url), "utf8")) as {
  rows: readonly Row[];
};

/** The rows whose id begins with the letter of their group. */
const group = (letter: string) => rows.filter((row) => row.id.startsWith(`E-${letter}`));
const given = (row: Row, key: string) => row.input[key] as number;
const wanted = (row: Row, key: string) => row.expected[key] as number;

function near(actual: number, expected: number, tolerance: number): void {
  expect(Math.abs(actual - expected)).toBeLessThanOrEqual(tolerance);
}

const GROUPS = ["P", "A", "S", "I", "K", "X", "C", "T"];

describe("Area E: planes", () => {
  test("every row belongs to a group that is run, and names its source", () => {
    expect(GROUPS.flatMap(group)).toHaveLength(rows.length);
    expect(rows).toHaveLength(56);
    for (const row of rows) expect(row.source, row.id).not.toBe("");
  });

  test.each(group("P"))("$id: bed pitches by name", (row) => {
    const name = row.input.name as keyof typeof NAMED_PITCHES_DEG;
    expect(NAMED_PITCHES_DEG[name]).toBe(wanted(row, "deg"));
  });

  test("E-A01: a sole of the commonest arc is as wide as its radius", () => {
    const [row] = group("A");
    for (const radiusMm of [1, 9.525, 38.1]) {
      near(widthForArcMm(radiusMm, wanted(row!, "arc_deg")) / radiusMm, 1, 1e-12);
      near(soleAngleDeg({ radiusMm, widthMm: radiusMm }), wanted(row!, "arc_deg"), 1e-9);
    }
  });

  test("E-A02: the arcs that old makers used are read without a warning", () => {
    const row = group("A")[1]!;
    const arcs = [...(row.expected.arc_deg_generally as number[]), wanted(row, "arc_deg_sometimes")];
    for (const arcDeg of arcs) {
      const planes = [{ kind: "round", radius: 20, width: widthForArcMm(20, arcDeg) }];
      const read = readShelf({ format: "mouldwright/shelf", version: 1, unit: "mm", planes });
      expect(read.ok && read.warnings, `${arcDeg}°`).toEqual([]);
    }
  });

  test.each(group("S"))("$id: size of a numbered pair", (row) => {
    const sizeMm = pairSizeMm(given(row, "number"));
    near(sizeMm! / INCH_MM, wanted(row, "width_in"), 1e-12);
    near(sizeMm! / INCH_MM, wanted(row, "radius_in"), 1e-12);
  });

  test.each(group("I"))("$id: the iron of a 60° sole of radius 1", (row) => {
    const tolerance = Number(row.tolerance);
    const bedDeg = given(row, "bed_deg");
    const iron = curvedIron({ radiusMm: 1, widthMm: 1 }, bedDeg);
    near(stretchRatio(bedDeg), wanted(row, "stretch_along_blade"), tolerance);
    near(iron.depthMm, wanted(row, "iron_depth"), tolerance);
    near(iron.radiusAtMiddleMm, wanted(row, "ellipse_radius_at_middle"), tolerance);
    near(iron.plainArc!.radiusMm, wanted(row, "radius_of_arc_through_3_points"), tolerance);
    near(iron.plainArc!.errorMm, wanted(row, "max_error_of_that_arc"), tolerance);
  });

  test.each(group("K"))("$id: pitch of a skewed iron", (row) => {
    const bed = {
      pitchDeg: given(row, "pitch_deg"),
      skewDeg: given(row, "skew_deg"),
      pitchMeasured: "square to edge",
    } as const;
    const tolerance = Number.parseFloat(row.tolerance);
    if (row.id === "E-K50") {
      near(pitchAlongPlaneDeg(bed), wanted(row, "tan_rule_deg"), tolerance);
      near(cuttingPitchDeg(bed), wanted(row, "sin_rule_deg"), tolerance);
    } else {
      near(cuttingPitchDeg(bed), wanted(row, "effective_deg"), tolerance);
    }
  });

  test.each(group("X"))("$id: a point of the sole on a skewed iron, and back", (row) => {
    const bed = {
      pitchDeg: given(row, "pitch_square_to_edge_deg"),
      skewDeg: given(row, "skew_deg"),
      pitchMeasured: "square to edge",
    } as const;
    const soleAt = point(given(row, "sole_x"), given(row, "sole_z"));
    const ironAt = soleToIron(soleAt, bed);
    near(ironAt.x, wanted(row, "along_edge_u"), Number(row.tolerance));
    near(ironAt.y, wanted(row, "up_face_v"), Number(row.tolerance));
    const back = ironToSole(ironAt, bed);
    near(back.x, soleAt.x, 1e-9);
    near(back.y, soleAt.y, 1e-9);
  });

  test("E-C01: clearance is bed less bevel", () => {
    const [row] = group("C");
    expect(clearanceDeg(given(row!, "bed_deg"), given(row!, "honed_bevel_deg"))).toBe(
      wanted(row!, "clearance_deg"),
    );
  });

  test("E-C02: moulding irons are ground at about 25°", () => {
    expect(GROUND_BEVEL_DEG).toBe(wanted(group("C")[1]!, "bevel_deg"));
  });

  test("E-T01: every default shaving lies in the range", () => {
    const [leastMm, mostMm] = group("T")[0]!.expected.mm_range as readonly [number, number];
    for (const shavingMm of Object.values(SHAVING_MM)) {
      expect(shavingMm).toBeGreaterThanOrEqual(leastMm);
      expect(shavingMm).toBeLessThanOrEqual(mostMm);
    }
  });

  test("E-T02: strokes to a depth", () => {
    const row = group("T")[1]!;
    const depthMm = given(row, "depth_in") * INCH_MM;
    expect(strokesToDepth(depthMm, given(row, "shaving_in") * INCH_MM)).toBe(wanted(row, "strokes"));
  });
});
