/** A closed outline of straight edges as a region, turned anticlockwise whichever way it was given. */
import type { Region } from "../curve/index.ts";

/**
 * `sources[i]` names the curve of the edge from point i to point i + 1. Outlines that are joined later must all run
 * the same way round: two of opposite sense would cancel where they overlap.
 */
export function regionOfOutline(
  xs: readonly number[],
  ys: readonly number[],
  sources: readonly number[],
): Region {
  const n = xs.length;
  let twice = 0;
  for (let i = 0, j = n - 1; i < n; j = i++) twice += xs[j] * ys[i] - xs[i] * ys[j];
  if (twice >= 0) {
    return [{ xs: Float64Array.from(xs), ys: Float64Array.from(ys), sources: Int32Array.from(sources) }];
  }
  // Reversed, the edge that left vertex i now arrives there: it leaves the vertex that was its end.
  return [
    {
      xs: Float64Array.from(xs).reverse(),
      ys: Float64Array.from(ys).reverse(),
      sources: Int32Array.from(xs, (_, k) => sources[(2 * n - 2 - k) % n]),
    },
  ];
}
