import { writeJob } from "mouldwright/job";
import { expect, test } from "vitest";
import { pack, unpack } from "../../keeping/packed-files.ts";
import { readRecord } from "../../keeping/record.ts";
import { plinth } from "../../keeping/testing/jobs.ts";
import { filesOf } from "./save-all.ts";

const kept = (jobId: string, text: string) =>
  readRecord({ jobId, revision: 1, recordVersion: 1, savedAtMs: 1, text });

test("every job is in the file letter for letter, those of one name numbered, and what cannot be read too", () => {
  const one = writeJob(plinth());
  const two = writeJob(plinth({ notes: "another of this name" }));
  const newer = one.replace('"version": 1', '"version": 9');
  const packed = pack(filesOf([kept("a", one), kept("b", two), kept("c", "{"), kept("d", newer)]));
  if (!packed.ok) throw new Error(packed.lost.join());
  expect(unpack(packed.bytes)?.files).toEqual([
    { name: "Chart cabinet plinth.json", text: one },
    { name: "Chart cabinet plinth 2.json", text: two },
    { name: "job.json", text: "{" },
    { name: "Chart cabinet plinth 3.json", text: newer },
  ]);
});

test("names that differ in capitals alone are told apart: not every system does", () => {
  const text = (name: string) => writeJob(plinth({ name }));
  const files = filesOf([kept("a", text("Rail")), kept("b", text("rail"))]);
  expect(files.map(({ name }) => name)).toEqual(["Rail.json", "rail 2.json"]);
});
