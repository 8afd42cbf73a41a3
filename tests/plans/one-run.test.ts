import { expect, test } from "vitest";
import { drawnFor, ran } from "./one-run.ts";

test("a run is drawn from its number alone, and another number draws something else", () => {
  expect(drawnFor(7)).toEqual(drawnFor(7));
  expect(drawnFor(8)).toEqual(drawnFor(8));
  expect(drawnFor(9).section).not.toEqual(drawnFor(7).section);
});

test("a run tells what was planned and that it holds", () => {
  const result = ran(7, "mark", drawnFor(7));
  expect(result).toMatchObject({ run: 7, code: "mark", failures: [], known: [] });
  expect(result.cuts).toBeGreaterThan(0);
});

test("what the planner throws at is a failure of the run, not of the runner", () => {
  const drawn = drawnFor(7);
  const broken = { ...drawn, section: { ...drawn.section, stick: { pieces: [] } } };
  expect(ran(7, "mark", broken).failures.join()).toMatch(/^thrown: /);
});
