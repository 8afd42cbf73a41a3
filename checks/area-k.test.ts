/** Area K: the fewest arcs for a free curve, and circles through measured points. */
import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import {
  type CircleFitting,
  fitCircle,
  flattenPiece,
  type Piece,
  type Point,
  point,
} from "../packages/core/src/curve/index.ts";
import { FLATTEN_MM } from "../packages/core/src/measure/index.ts";
import { curvePoints, heightRange } from "../packages/core/src/section/fit-span.ts";
import { cyma } from "../packages/core/src/section/forms/cymas.ts";
import { quarter, scotia } from "../packages/core/src/section/forms/quarters.ts";
import { halfRound } from "../packages/core/src/section/forms/rounds.ts";
import { fitArcs } from "../packages/core/src/section/index.ts";

interface Row {
  readonly id: string;
  readonly input: Readonly<Record<string, unknown>>;
  readonly expected: Readonly<Record<string, unknown>>;
  readonly tolerance: string;
  readonly source: string;
  readonly status: string;
  /** How the program stands to a row that is no number. */
  readonly held?: string;
}

const { rows } = JSON.parse(readFileSync(new URL("./area-k.json", import.meta.url), "utf8")) as {
  readonly rows: readonly Row[];
};
const rowOf = (id: string): Row => rows.find((row) => row.id === id) as Row;
const numbers = (value: unknown): readonly number[] => value as readonly number[];

test("every row names its source, and those that are no numbers say how they are held", () => {
  expect(rows.map(({ id }) => id)).toEqual(
    ["01", "02", "03", "10", "11", "12", "13", "14", "15"].map((number) => `K-${number}`),
  );
  for (const row of rows) {
    expect(row.source, row.id).not.toBe("");
    if (row.tolerance === "text") expect(row.held, row.id).toBeTruthy();
  }
});

function fitted(points: readonly Point[], fitting: CircleFitting) {
  const fit = fitCircle(points, fitting);
  if (!fit.ok) throw new Error(fit.trouble.code);
  return fit.value;
}

function near(actual: number, expected: number, tolerance: number, what: string): void {
  expect(Math.abs(actual - expected), `${what}: ${actual}`).toBeLessThanOrEqual(tolerance);
}

/** Centre and radius as the rows list them. */
function nearCircle(row: Row, key: string, fitting: CircleFitting, points: readonly Point[]): void {
  const { centre, radiusMm } = fitted(points, fitting);
  const found = [centre.x, centre.y, radiusMm];
  numbers(row.expected[key]).forEach((value, i) => {
    near(found[i] as number, value, Number(row.tolerance), `${row.id} ${key} ${i}`);
  });
}

describe("circles through measured points", () => {
  const pointsOf = (row: Row) => {
    const ys = numbers(row.input.y);
    return numbers(row.input.x).map((x, i) => point(x, ys[i] as number));
  };

  test("K-10: the published benchmark, geometric and Taubin", () => {
    const row = rowOf("K-10");
    const points = pointsOf(row);
    nearCircle(row, "geometric", "geometric", points);
    nearCircle(row, "taubin", "taubin", points);
    near(fitted(points, "geometric").rmsMm, row.expected.rms as number, 1e-6, "rms");
    near(fitted(points, "taubin").rmsMm, row.expected.taubin_rms as number, 1e-6, "Taubin's rms");
  });

  test("K-11: the same points, Kåsa and Pratt", () => {
    const row = rowOf("K-11");
    nearCircle(row, "kasa", "kasa", pointsOf(row));
    nearCircle(row, "pratt", "pratt", pointsOf(row));
  });

  test("K-12: a short arc measured with noise, and how much too small Kåsa's radius is", () => {
    const row = rowOf("K-12");
    const radii = numbers(row.input.radii);
    const points = numbers(row.input.angles_deg).map((deg, i) => {
      const angle = (deg * Math.PI) / 180;
      return point((radii[i] as number) * Math.cos(angle), (radii[i] as number) * Math.sin(angle));
    });
    for (const fitting of ["kasa", "pratt", "taubin", "geometric"] as const) {
      near(fitted(points, fitting).radiusMm, row.expected[`${fitting}_r`] as number, 1e-6, fitting);
    }
  });

  test("K-15: in place of data sets, circles known beforehand, far off and short", () => {
    for (const [x, y, radius, sweepDeg] of [
      [0, 0, 10, 360],
      [1e4, -2e4, 25, 90],
      [300, 200, 40, 20],
      [-5, 8, 1000, 6],
    ] as const) {
      const points = Array.from({ length: 24 }, (_, i) => {
        const angle = (((sweepDeg * i) / 24 + 31) * Math.PI) / 180;
        return point(x + radius * Math.cos(angle), y + radius * Math.sin(angle));
      });
      // Sixteen digits of a coordinate of thousands leave eleven after the point, and a short arc costs some of them.
      near(fitted(points, "geometric").radiusMm, radius, 1e-6, `${sweepDeg}° of ${radius}`);
    }
  });
});

/** A spiral's points: direction turns by k s² / 2 along its length s, from its straight start; `scale` times as large. */
function spiral(lengthMm: number, k: number, scale: number, steps = 2000): readonly Point[] {
  const points: Point[] = [point(0, 0)];
  let [x, y] = [0, 0];
  const step = lengthMm / steps;
  for (let i = 0; i < steps; i++) {
    // Simpson's rule over each step.
    for (const [at, weight] of [
      [0, 1],
      [0.5, 4],
      [1, 1],
    ] as const) {
      const angle = (k * ((i + at) * step) ** 2) / 2;
      x += (weight * step * Math.cos(angle)) / 6;
      y += (weight * step * Math.sin(angle)) / 6;
    }
    points.push(point(x * scale, y * scale));
  }
  return points;
}

describe("arcs for free curves", () => {
  test("K-13: what one arc misses of a piece of a spiral, its ends held", () => {
    const row = rowOf("K-13");
    const { L, k } = row.input as { readonly L: number; readonly k: number };
    // A thousand times as large, so that the misses stand well over the grid: they grow alike.
    const points = spiral(L, k, 1000);
    const curve = curvePoints(points);
    let [low, high] = [0, 0.1];
    while (high - low > 1e-7) {
      const middle = (low + high) / 2;
      if (heightRange(curve, 0, points.length - 1, middle) === null) low = middle;
      else high = middle;
    }
    const expected = (row.expected.error_ends_fixed as number) * 1000;
    near(high, expected, expected * 0.002, "ends held");
    expect(fitArcs(points, { tolMm: expected * 1.05 }).chain.pieces).toHaveLength(1);
    expect(fitArcs(points, { tolMm: expected * 0.95 }).chain.pieces).toHaveLength(2);
  });

  test("K-13: the least that any circle misses, found from the geometric fit on", () => {
    const row = rowOf("K-13");
    const { L, k } = row.input as { readonly L: number; readonly k: number };
    const points = spiral(L, k, 1000, 400);
    const { centre, radiusMm } = fitted(points, "geometric");
    const middle = points[(points.length - 1) / 2] as Point;
    const [toX, toY] = [(centre.x - middle.x) / radiusMm, (centre.y - middle.y) / radiusMm];
    // Every circle near by: its centre so far from the middle of the curve, and so far to the side.
    const missAbout = (away: number, aside: number) => {
      const [x, y] = [middle.x + toX * away - toY * aside, middle.y + toY * away + toX * aside];
      const distances = points.map((p) => Math.hypot(p.x - x, p.y - y));
      return (Math.max(...distances) - Math.min(...distances)) / 2;
    };
    const least = (of: (value: number) => number, from: number, to: number) => {
      let [low, high] = [from, to];
      for (let i = 0; i < 60; i++) {
        const third = (high - low) / 3;
        if (of(low + third) < of(high - third)) high -= third;
        else low += third;
      }
      return of((low + high) / 2);
    };
    const aroundMm = radiusMm / 100;
    const miss = least(
      (away) => least((aside) => missAbout(away, aside), -aroundMm, aroundMm),
      radiusMm * 0.9,
      radiusMm * 1.1,
    );
    const expected = (row.expected.error_free as number) * 1000;
    near(miss, expected, expected * 0.002, "free");
  });

  const run = (pieces: readonly Piece[]) =>
    pieces.flatMap((piece, i) => flattenPiece(piece, FLATTEN_MM).slice(i === 0 ? 0 : 1));
  const PROFILES: Readonly<Record<string, readonly Piece[]>> = {
    torus: halfRound({ kind: "torus", widthMm: 20 }),
    ovolo: quarter({ kind: "ovolo", acrossMm: 20, riseMm: -20 }),
    cavetto: quarter({ kind: "cavetto", acrossMm: 20, riseMm: -20 }),
    scotia: scotia({ kind: "scotia", acrossMm: 20 }),
    "cyma 60": cyma({ kind: "cyma recta", acrossMm: 20, riseMm: 20 }),
    "cyma quadrant": cyma({ kind: "cyma reversa", acrossMm: 20, riseMm: -20, construction: "thick" }),
  };
  const counts = rowOf("K-14");
  const names = counts.input.profiles as readonly string[];

  test.each(names)(
    "K-14: %s comes back as its arcs, at any tolerance below a hundredth of its height",
    (name) => {
      const points = run(PROFILES[name] as readonly Piece[]);
      const heightMm = Math.max(...points.map(({ y }) => y)) - Math.min(...points.map(({ y }) => y));
      for (const share of [0.00025, 0.001, 0.004, 0.0095]) {
        const { chain } = fitArcs(points, { tolMm: share * heightMm });
        expect(chain.pieces.map(({ kind }) => kind)).toEqual(
          Array.from({ length: numbers(counts.expected.arcs)[names.indexOf(name)] as number }, () => "arc"),
        );
      }
    },
  );

  test("K-01: arcs break at original points only", () => {
    const points = spiral(0.4, 20, 100);
    const { chain, breaks } = fitArcs(points, { tolMm: 0.02 });
    expect(chain.pieces.length).toBeGreaterThan(1);
    expect(chain.pieces.map(({ from }) => from)).toEqual(breaks.slice(0, -1).map((at) => points[at]));
  });
});
