import { readFileSync } from "node:fs";
import { type Job, readJob } from "mouldwright/job";
import { expect, test } from "vitest";
import { withFit, withStock } from "./fit-choices.ts";
import { fitDrawingsOf } from "./fit-drawings.ts";

function jobOf(name: string): Job {
  const url = new URL(`../../../../examples/${name}.json`, import.meta.url);
  const read = readJob(readFileSync(url, "utf8"));
  if (!read.ok) throw new Error(read.trouble.code);
  const { fit: _, ...job } = read.value;
  return job;
}

const titles = (job: Job) => fitDrawingsOf(job).drawings.pictures.map(({ title }) => title);

test("a job that says nothing of fitting has nothing of it on the sheet", () => {
  expect(fitDrawingsOf(jobOf("cornice"))).toEqual({ drawings: { pictures: [], fullSize: [] }, troubles: [] });
});

test("a run of cornice brings its picture and its rod, and scribed ends at full size", () => {
  const run = withFit(jobOf("plinth"), "run", {
    wallsMm: [400, 1200],
    corners: [{ cornerDeg: 90, kind: "inside", joint: "scribe left" }],
  });
  const { drawings, troubles } = fitDrawingsOf(run);
  expect(troubles).toEqual([]);
  expect(drawings.pictures).toHaveLength(2);
  expect(drawings.pictures[1]?.title).toMatch(/stick/);
  expect(drawings.fullSize).toHaveLength(1);
});

test("a frame brings its picture and its rod", () => {
  const frame = withFit(jobOf("barometer-frame"), "frame", { acrossMm: 200, upMm: 700 });
  expect(titles(frame)).toHaveLength(2);
});

test("pieces that find no room on the sticks are told, and the rest is drawn all the same", () => {
  const run = withFit(jobOf("cornice"), "stick", { pieces: "cornice" });
  const { drawings, troubles } = fitDrawingsOf(withStock(run, [{ lengthMm: 600, count: 1 }]));
  expect(drawings.pictures).toHaveLength(1);
  expect(troubles[0]?.code).toMatch(/^lengths-/);
});
