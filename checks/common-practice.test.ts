import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import {
  type Arc,
  circleOf,
  distanceMm,
  nearestOnPiece,
  tangentRad,
} from "../packages/core/src/curve/index.ts";
import { type Pose, placedSole } from "../packages/core/src/cutting/index.ts";
import { INCH_MM, SMOOTH_JOIN_DEG, toDeg } from "../packages/core/src/measure/index.ts";
import {
  radiusFromSole,
  SHAVING_MM,
  soleAngleDeg,
  soleDepthMm,
  soleOf,
  widthForArcMm,
} from "../packages/core/src/shelf/index.ts";

interface Row {
  readonly id: string;
  readonly claim: string;
  readonly input: Readonly<Record<string, number>>;
  readonly expected: Readonly<Record<string, number | readonly number[]>>;
  readonly tolerance: number;
  readonly source: string;
}

const { rows } = JSON.parse(readFileSync(new URL("./common-practice.json", import.meta.url), "utf8")) as {
  rows: readonly Row[];
};
const RADII_MM = [3.175, 9.525, 12.7, 38.1];

/** The expected number of a row. */
function wanted(row: Row, key: string): number {
  const value = row.expected[key];
  if (typeof value !== "number") throw new Error(`${row.id} says no ${key}`);
  return value;
}

function near(row: Row, actual: number, key: string): void {
  expect(Math.abs(actual - wanted(row, key)), row.claim).toBeLessThanOrEqual(row.tolerance);
}

/** The one arc of a 60° sole, upright or leaning, in its place on the wood. */
function soleInPlace(kind: "hollow" | "round", radiusMm: number, pose: Pose): Arc {
  const plane = { id: kind, name: kind, kind, radiusMm, widthMm: radiusMm } as const;
  const [piece] = placedSole(soleOf(plane).chain, pose).pieces;
  if (piece?.kind !== "arc") throw new Error(`the sole of a ${kind} is one arc`);
  return piece;
}

const CHECKS: Readonly<Record<string, (row: Row) => void>> = {
  "CP-01": (row) => {
    for (const radiusMm of RADII_MM) {
      near(row, widthForArcMm(radiusMm, row.input.arcDeg!) / radiusMm, "widthRatio");
      expect(soleAngleDeg({ radiusMm, widthMm: radiusMm })).toBeCloseTo(row.input.arcDeg!, 10);
    }
  },
  "CP-02": (row) => {
    for (const radiusMm of RADII_MM) {
      near(row, soleDepthMm({ radiusMm, widthMm: radiusMm }) / radiusMm, "depthRatio");
    }
  },
  "CP-03": (row) => {
    for (const hollowMm of RADII_MM) {
      for (const roundMm of RADII_MM) {
        const hollow = { id: "h", name: "h", kind: "hollow", radiusMm: hollowMm, widthMm: hollowMm } as const;
        const round = { id: "r", name: "r", kind: "round", radiusMm: roundMm, widthMm: roundMm } as const;
        near(row, toDeg(tangentRad(soleOf(hollow).chain.pieces[0]!, 1)), "endTangentDeg");
        near(row, toDeg(tangentRad(soleOf(round).chain.pieces[0]!, 0)), "endTangentDeg");
      }
    }
  },
  "CP-04": (row) => {
    const widthMm = row.input.widthIn! * INCH_MM;
    // The depth of a sole as wide as its radius, by the sagitta's own textbook formula.
    const depthMm = widthMm - Math.sqrt(widthMm ** 2 - (widthMm / 2) ** 2);
    const slipped = radiusFromSole({ widthMm, depthMm: depthMm + row.input.readingMm! });
    expect(slipped.ok).toBe(true);
    if (slipped.ok) near(row, (100 * (widthMm - slipped.value.radiusMm)) / widthMm, "radiusPercent");
  },
  "CP-05": (row) => {
    near(row, SHAVING_MM.heavy, "heavyMm");
    near(row, SHAVING_MM.ordinary, "ordinaryMm");
    const [least, most] = row.expected.lastMm as readonly [number, number];
    expect(SHAVING_MM.last).toBeGreaterThanOrEqual(least);
    expect(SHAVING_MM.last).toBeLessThanOrEqual(most);
  },
  "CP-06": (row) => {
    const hollowMm = row.input.hollowIn! * INCH_MM;
    const roundMm = row.input.roundIn! * INCH_MM;
    const hollow = soleInPlace("hollow", hollowMm, [0, 0, 0]);
    near(row, toDeg(tangentRad(hollow, 1)), "footTangentDeg");
    // The round is set by its axis alone, so far across from the foot; let down, its own corner has to meet the foot.
    const acrossMm = wanted(row, "middleFromFootIn") * INCH_MM;
    const cornerMm = soleDepthMm({ radiusMm: roundMm, widthMm: roundMm });
    const round = soleInPlace("round", roundMm, [hollow.to.x + acrossMm, hollow.to.y - cornerMm, 0]);
    near(row, distanceMm(hollow.to, round.from), "gapMm");
    const turnDeg = toDeg(tangentRad(round, 0) - tangentRad(hollow, 1));
    near(row, turnDeg, "turnDeg");
    expect(Math.abs(turnDeg)).toBeLessThanOrEqual(SMOOTH_JOIN_DEG);
  },
  "CP-07": (row) => {
    const radiusMm = row.input.radiusMm!;
    const join = { x: 3, y: 7 };
    // Slope of the join and lean of the round, degrees: the join has to lie on the sole, within 30° of its middle.
    for (const [slopeDeg, leanDeg] of [
      [30, 0],
      [20, 0],
      [20, 9],
      [10, 19],
      [35, -10],
      [50, -25],
    ] as const) {
      const sine = (deg: number) => Math.sin((deg * Math.PI) / 180);
      const x = join.x + radiusMm * (sine(slopeDeg) + sine(leanDeg));
      // Let down at that place across until its circle passes through the join.
      const { centre } = circleOf(soleInPlace("round", radiusMm, [x, 0, leanDeg]));
      const y = join.y + Math.sqrt(radiusMm ** 2 - (centre.x - join.x) ** 2) - centre.y;
      const sole = soleInPlace("round", radiusMm, [x, y, leanDeg]);
      const met = nearestOnPiece(sole, join);
      near(row, met.distanceMm, "gapMm");
      near(row, toDeg(tangentRad(sole, met.t)) + slopeDeg, "turnDeg");
    }
  },
};

describe("Common practice", () => {
  test("every row is run, and every row names its source", () => {
    expect(rows.map((row) => row.id)).toEqual(Object.keys(CHECKS));
    for (const row of rows) expect(row.source).not.toBe("");
  });

  test.each(rows)("$id: $claim", (row) => {
    CHECKS[row.id]!(row);
  });
});
