import { strFromU8, unzipSync } from "fflate";
import { writeJob } from "mouldwright/job";
import { expect, test } from "vitest";
import { readRecord } from "../../keeping/record.ts";
import { plinth } from "../../keeping/testing/jobs.ts";
import { zipOf } from "./save-all.ts";

const kept = (jobId: string, text: string) =>
  readRecord({ jobId, revision: 1, recordVersion: 1, savedAtMs: 1, text });

test("every job is in the file letter for letter, those of one name numbered, and what cannot be read too", () => {
  const one = writeJob(plinth());
  const two = writeJob(plinth({ notes: "another of this name" }));
  const newer = one.replace('"version": 1', '"version": 9');
  const files = unzipSync(zipOf([kept("a", one), kept("b", two), kept("c", "{"), kept("d", newer)]));
  expect(Object.fromEntries(Object.entries(files).map(([name, bytes]) => [name, strFromU8(bytes)]))).toEqual({
    "Chart cabinet plinth.json": one,
    "Chart cabinet plinth 2.json": two,
    "job.json": "{",
    "Chart cabinet plinth 3.json": newer,
  });
});
