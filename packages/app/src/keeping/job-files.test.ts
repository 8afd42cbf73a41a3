import { readJob, sectionOfJob } from "mouldwright/job";
import { readSectionFile } from "mouldwright/section";
import { expect, test } from "vitest";
import { jobFile } from "./job-files.ts";
import { plinth } from "./testing/jobs.ts";

test("the whole job comes back from its file", () => {
  const file = jobFile(plinth(), "job");
  if (!file.ok) throw new Error(file.trouble.code);
  expect(file.value.fileName).toBe("Chart cabinet plinth.json");
  expect(readJob(file.value.text)).toMatchObject({ ok: true, value: plinth() });
});

test.each(["svg", "dxf"] as const)("the section comes back from its %s, vertex for vertex", (kind) => {
  const file = jobFile(plinth(), kind);
  const section = sectionOfJob(plinth());
  if (!file.ok || !section.ok) throw new Error("no file");
  const read = readSectionFile({ fileName: file.value.fileName, text: file.value.text });
  if (!read.ok) throw new Error(read.trouble.code);
  const ends = (pieces: typeof read.value.outline.pieces): string[] =>
    pieces.map(({ from }) => `${from.x.toFixed(4)} ${from.y.toFixed(4)}`).sort();
  expect(ends(read.value.outline.pieces)).toEqual(ends(section.value.outline.pieces));
});

test("a section that cannot be built gives no drawing but its trouble; the job can still be saved", () => {
  const broken = plinth({ section: { parts: [{ kind: "fillet", widthMm: 3 }] } });
  expect(jobFile(broken, "svg").ok).toBe(false);
  expect(jobFile(broken, "job").ok).toBe(true);
});
