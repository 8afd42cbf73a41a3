import { describe, expect, it } from "vitest";
import type { OutlineVertex } from "./read-noise.ts";
import { solveSymmetric } from "./read-solve.ts";
import { settleTangency } from "./read-tangency.ts";

const QUARTER = Math.SQRT2 - 1;

/** A block 42 by 18 whose upper right corner is rounded at 8 mm: line, quarter, line. */
function rounded(move: Partial<Record<number, readonly [number, number, number]>> = {}): OutlineVertex[] {
  const drawn = [
    [0, 0, 0],
    [42, 0, 0],
    [42, 10, QUARTER],
    [34, 18, 0],
    [0, 18, 0],
  ] as const;
  return drawn.map(([x, y, bulge], i) => {
    const [dx, dy, db] = move[i] ?? [0, 0, 0];
    return { x: x + dx, y: y + dy, bulge: bulge + db, free: 0 };
  });
}

/** Angle between the end of the piece before a vertex and the start of the one after, radians. */
function missRad(vertices: readonly OutlineVertex[], at: number): number {
  const chord = (i: number): number => {
    const [a, b] = [vertices[i]!, vertices[(i + 1) % vertices.length]!];
    return Math.atan2(b.y - a.y, b.x - a.x);
  };
  const before = at - 1;
  return (
    chord(at) - 2 * Math.atan(vertices[at]!.bulge) - chord(before) - 2 * Math.atan(vertices[before]!.bulge)
  );
}

describe("joins a hair off tangency", () => {
  it("an arc's bulge and ends a little off: both joins smooth, nothing moved by more than the noise", () => {
    const noisy = rounded({ 2: [0, 0.003, 0.0004], 3: [-0.002, 0, 0] });
    expect(Math.abs(missRad(noisy, 2)) + Math.abs(missRad(noisy, 3))).toBeGreaterThan(5e-4);
    const { vertices, places, farthestMm } = settleTangency(noisy, []);
    expect(places).toBe(2);
    expect(farthestMm).toBeLessThanOrEqual(0.01);
    expect(missRad(vertices, 2)).toBeCloseTo(0, 9);
    expect(missRad(vertices, 3)).toBeCloseTo(0, 9);
    // Upright and level lines stay so.
    expect(vertices[2]!.x).toBe(vertices[1]!.x);
    expect(vertices[3]!.y).toBe(vertices[4]!.y);
  });

  it("vertices on the stick's sides stay on them", () => {
    const side = { from: { x: 42, y: 0 }, to: { x: 42, y: 18 } };
    const { vertices } = settleTangency(rounded({ 2: [0, 0.003, 0.0004] }), [side]);
    expect(vertices[2]!.x).toBe(42);
    expect(missRad(vertices, 2)).toBeCloseTo(0, 9);
  });

  it("what is tangent stays as it is, and so does what is plainly not", () => {
    const clean = rounded();
    expect(settleTangency(clean, [])).toEqual({ vertices: clean, places: 0, farthestMm: 0 });
    // A twentieth of a millimetre of crown is an arris.
    const kinked = rounded({ 2: [0, 0, 0.05 / 5.657] });
    expect(settleTangency(kinked, []).places).toBe(0);
  });

  it("free curves are not touched", () => {
    const noisy = rounded({ 2: [0, 0.003, 0.0004] }).map((vertex, i) =>
      i === 1 || i === 3 ? { ...vertex, free: 1 } : vertex,
    );
    expect(settleTangency(noisy, []).vertices).toBe(noisy);
  });
});

describe("small systems", () => {
  it("two equations", () => {
    // 2 x + y = 5, x + 3 y = 10: x = 1, y = 3.
    const [x, y] = solveSymmetric(
      [
        [2, 1],
        [1, 3],
      ],
      [5, 10],
    );
    expect(x).toBeCloseTo(1, 12);
    expect(y).toBeCloseTo(3, 12);
  });

  it("one equation twice: one of its solutions", () => {
    const [x, y] = solveSymmetric(
      [
        [1, 1],
        [1, 1],
      ],
      [4, 4],
    );
    expect(x! + y!).toBeCloseTo(4, 12);
  });

  it("nothing", () => {
    expect(solveSymmetric([[0]], [1])).toEqual([0]);
    expect(solveSymmetric([], [])).toEqual([]);
  });
});
