import { expect, test } from "vitest";
import type { FlatRing } from "../curve/index.ts";
import { flatRingAreaMm2 } from "../curve/index.ts";
import { apartAtFilms } from "./film.ts";

const ringOf = (...points: readonly (readonly [number, number])[]): FlatRing => ({
  xs: Float64Array.from(points, ([x]) => x),
  ys: Float64Array.from(points, ([, y]) => y),
  sources: Int32Array.from(points, (_, i) => i + 1),
});

/** A square of 2 mm and one of 1 mm, 3 mm apart, joined by a film of this thickness with a bend in it. */
const joined = (filmMm: number): FlatRing =>
  ringOf(
    [0, 0],
    [2, 0],
    [3, 0.5],
    [5, 0],
    [6, 0],
    [6, 1],
    [5, 1],
    [5, filmMm],
    [3, 0.5 + filmMm],
    [2, filmMm],
    [2, 2],
    [0, 2],
  );

test("two pieces that only the rounding of poses joins are two, and what joins them is none", () => {
  const areasMm2 = apartAtFilms(joined(0.0000004)).map(flatRingAreaMm2);
  expect(areasMm2).toHaveLength(2);
  expect(areasMm2[0]).toBeCloseTo(1, 5);
  expect(areasMm2[1]).toBeCloseTo(4, 5);
});

test("each edge of a part keeps the curve that it came from", () => {
  const [small, large] = apartAtFilms(joined(0));
  expect(Array.from(small?.sources ?? [])).toEqual([4, 5, 6, 7]);
  expect(Array.from(large?.sources ?? [])).toEqual([1, 10, 11, 12]);
});

test("wood that is joined by as little as a hair is one piece", () => {
  const ring = joined(0.001);
  expect(apartAtFilms(ring)).toEqual([ring]);
});

test("a film that ends on an edge parts the wood too: two pieces either side of a fillet that is cut clean", () => {
  const film = 0.0000004;
  const parts = apartAtFilms(
    ringOf([0, -1], [3, 0], [6, 0], [9, -1], [9, 3], [8, 3], [8, film], [1, film], [1, 3], [0, 3]),
  );
  const areasMm2 = parts.map(flatRingAreaMm2).sort((a, b) => a - b);
  // Each 1 × 3 mm over the level of the fillet, and under it a triangle of 3 × 1 mm.
  expect(areasMm2).toHaveLength(2);
  for (const areaMm2 of areasMm2) expect(areaMm2).toBeCloseTo(4.5, 5);
});
