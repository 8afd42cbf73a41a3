import type { Plan } from "mouldwright/cutting";
import type { Job } from "mouldwright/job";
import { readShelf } from "mouldwright/shelf";
import { expect, test } from "vitest";
import type { KeptJob } from "../../keeping/record.ts";
import { gathered, keyOf, othersOf, usesByLikeness } from "./other-jobs.ts";

const JOB: Job = {
  format: "mouldwright/job",
  version: 1,
  name: "Plinth",
  section: { parts: [{ kind: "fillet", widthMm: "rest" }] },
  stick: { widthMm: 20, thicknessMm: 20 },
};

const kept = (jobId: string, more: object = {}): KeptJob => ({
  kind: "job",
  jobId,
  revision: 3,
  savedAtMs: 0,
  job: JOB,
  text: "",
  ...more,
});

test("neither the job on the bench nor one that was thrown away counts", () => {
  const jobs: readonly KeptJob[] = [
    kept("here"),
    kept("other"),
    kept("gone", { deletedAtMs: 5 }),
    { kind: "newer", jobId: "newer", revision: 1, savedAtMs: 0, name: "", text: "" },
  ];
  expect(othersOf(jobs, "here").map(({ jobId }) => jobId)).toEqual(["other"]);
});

function usesWith(id: string, unit: "mm" | "in", radius: number) {
  const shelf = readShelf({
    format: "mouldwright/shelf",
    version: 1,
    unit,
    planes: [{ id, name: `my ${id}`, kind: "hollow", radius, width: radius }],
  });
  if (!shelf.ok) throw new Error(shelf.trouble.code);
  const plan = { cuts: [{ number: 2, plane: { id, kind: "hollow" } }], parts: [] } as unknown as Plan;
  return usesByLikeness({ plan, shelf: shelf.value });
}

test("a plane is the same on every shelf, whatever it is called and in which unit it is written", () => {
  const [one] = usesWith("a", "in", 0.375);
  const [same] = usesWith("b", "mm", 9.525);
  const [other] = usesWith("a", "mm", 9);
  expect(same?.[0]).toBe(one?.[0]);
  expect(other?.[0]).not.toBe(one?.[0]);
  expect(one?.[1]).toEqual([2]);
});

test("jobs are gathered by plane, as they stand now", () => {
  const [one] = othersOf([kept("other")], "here");
  if (one === undefined) throw new Error("no job");
  const uses = usesWith("a", "mm", 9.525);
  const [like = ""] = [...uses.keys()];
  expect(gathered([one], new Map([[keyOf(one), uses]])).get(like)).toEqual([
    { jobId: "other", name: "Plinth", cuts: [2] },
  ]);
  expect(gathered([{ ...one, revision: 4 }], new Map([[keyOf(one), uses]])).size).toBe(0);
});
