import { expect, test } from "vitest";
import type { Ran } from "./one-run.ts";
import { runsIn, tallyLines } from "./tally.ts";

const RAN: Ran = {
  run: 1,
  code: "0123abcd",
  pieces: 8,
  planes: 5,
  cuts: 3,
  uncut: 0,
  planMs: 400,
  failures: [],
  known: [],
};
const line = (ran: Partial<Ran>): string => JSON.stringify({ ...RAN, ...ran });

test("each line is a run, a later line stands for an earlier one of the same run", () => {
  const runs = runsIn([line({}), line({ run: 2 }), line({ planMs: 500 }), ""].join("\n"));
  expect([...runs.keys()]).toEqual([1, 2]);
  expect(runs.get(1)?.planMs).toBe(500);
});

test("a line cut short and a line of something else are passed over", () => {
  const runs = runsIn([line({}), line({ run: 2 }).slice(0, 40), '{"at":3}', "null"].join("\n"));
  expect([...runs.keys()]).toEqual([1]);
});

test("failures are counted by what failed and by the rule, one run once; the slowest are told first", () => {
  const runs = [
    { ...RAN },
    { ...RAN, run: 2, uncut: 1, planMs: 12_000, failures: ["slow: 12000 ms"] },
    { ...RAN, run: 3, failures: ["second route, wall: cut 2: a", "second route, wall: cut 4: b"] },
    { ...RAN, run: 4, failures: ["second route, wall: cut 1: c"], known: ["second route, mark: d"] },
    { ...RAN, run: 5, cuts: null, uncut: null, planMs: 1 },
  ];
  expect(tallyLines(runs)).toEqual([
    "5 runs, 4 plans, 3 of them with nothing left uncut; 3 failed",
    "  failed: second route, wall (2 runs)",
    "  failed: slow (1 run)",
    "  known: second route, mark (1 run)",
    "processor time of a plan: half took no more than 400 ms, 95 in 100 12000 ms, 99 in 100 12000 ms; 1 over 10 s",
    "  run 2: 12000 ms, 8 lines and arcs, 5 planes, 3 cuts",
    "  run 4: 400 ms, 8 lines and arcs, 5 planes, 3 cuts",
    "  run 3: 400 ms, 8 lines and arcs, 5 planes, 3 cuts",
    "  run 1: 400 ms, 8 lines and arcs, 5 planes, 3 cuts",
    "  run 5: 1 ms, 8 lines and arcs, 5 planes, no cuts",
  ]);
  expect(tallyLines([])).toEqual(["no runs"]);
});
