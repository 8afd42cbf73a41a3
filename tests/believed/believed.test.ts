/** No committed plan holds what a woodworker would not believe; what is known of it fails here until it is put right. */
import { describe, expect, test } from "vitest";
import { COMMITTED_PLANS } from "./plans.ts";
import { type BelievedRule, unbelievedIn } from "./rules.ts";
import { STILL_UNBELIEVED } from "./still-unbelieved.ts";

test("plans are there to be asked, and known failures name some of them", () => {
  const names = COMMITTED_PLANS.map(({ name }) => name);
  expect(names).toContain("examples/cornice");
  expect(names).toContain("gallery/chart-cornice");
  expect(Object.keys(STILL_UNBELIEVED).filter((name) => !names.includes(name))).toEqual([]);
});

describe.each(COMMITTED_PLANS)("$name", ({ name, read }) => {
  const still: readonly BelievedRule[] = STILL_UNBELIEVED[name] ?? [];

  test("is believed, known failures apart", () => {
    expect(unbelievedIn(read()).filter(({ rule }) => !still.includes(rule))).toEqual([]);
  });

  for (const rule of still)
    test.fails(`still not believed: ${rule}`, () => {
      expect(unbelievedIn(read()).filter((found) => found.rule === rule)).toEqual([]);
    });
});
