import fc from "fast-check";
import { expect, test } from "vitest";
import { CheapestFirst } from "./cheapest-first.ts";

interface Entry {
  readonly cost: number;
  readonly rank: number;
}

const queue = () =>
  new CheapestFirst<Entry>(
    ({ cost }) => cost,
    (a, b) => a.rank - b.rank,
  );

test("entries come out by cost, of several that cost the same the lowest rank first", () => {
  const entries = fc.array(fc.record({ cost: fc.integer({ min: 0, max: 5 }), rank: fc.nat(1000) }));
  fc.assert(
    fc.property(entries, (list) => {
      const waiting = queue();
      for (const entry of list) waiting.add(entry);
      const out = list.map(() => waiting.take());
      expect(out).toEqual([...list].sort((a, b) => a.cost - b.cost || a.rank - b.rank));
      expect(waiting.take()).toBeUndefined();
    }),
    { seed: 7 },
  );
});

test("what is added later takes its place among the rest", () => {
  const waiting = queue();
  waiting.add({ cost: 3, rank: 0 });
  waiting.add({ cost: 1, rank: 0 });
  expect(waiting.take()?.cost).toBe(1);
  waiting.add({ cost: 2, rank: 0 });
  expect(waiting.take()?.cost).toBe(2);
  expect(waiting.take()?.cost).toBe(3);
});
