import type { Job } from "mouldwright/job";
import { SHEET_KINDS } from "mouldwright/sheets";
import { expect, test } from "vitest";
import type { PageTold } from "./messages.ts";
import {
  changeSaid,
  kindsOf,
  kindsSaid,
  madeOf,
  pagesSaid,
  SHEETS,
  sheetOptionsOf,
  withKinds,
  withMade,
  withPaper,
} from "./sheet-choices.ts";

const JOB: Job = {
  format: "mouldwright/job",
  version: 1,
  name: "Plinth",
  section: { parts: [{ kind: "fillet", widthMm: "rest" }] },
  stick: { widthMm: 20, thicknessMm: 20 },
};

test("every kind of sheet has its words, in the order of printing", () => {
  expect(SHEETS.map(({ kind }) => kind)).toEqual(SHEET_KINDS);
});

test("a job that says nothing asks for all sheets on A4, uncorrected", () => {
  expect(sheetOptionsOf(JOB)).toEqual({ unit: "mm", inchStep: undefined, paper: "a4", kinds: SHEET_KINDS });
});

test("choices are kept beside each other", () => {
  const job = withMade(withKinds(withPaper(JOB, "letter"), ["lesson", "bench"]), {
    acrossMm: 99.5,
    upMm: 100,
  });
  expect(job.sheets).toEqual({
    paper: "letter",
    kinds: ["bench", "lesson"],
    made: { acrossMm: 99.5, upMm: 100 },
  });
  expect(sheetOptionsOf(job)).toMatchObject({ made: { acrossMm: 99.5, upMm: 100 } });
});

test("the fit sheet reckons the stick for the length that is worked", () => {
  expect(sheetOptionsOf({ ...JOB, working: { lengthMm: 1400 } })).toMatchObject({ fit: { lengthMm: 1400 } });
});

test("all sheets, and a true printer, are kept as nothing said", () => {
  const some = withMade(withKinds(JOB, ["bench"]), { acrossMm: 99.5, upMm: 100 });
  const job = withMade(withKinds(some, [...SHEET_KINDS].reverse()), { acrossMm: 100, upMm: 100 });
  expect(job.sheets).toEqual({});
  expect(madeOf(job)).toEqual({ acrossMm: 100, upMm: 100 });
});

test("none is a choice too, and is not taken for all", () => {
  expect(kindsOf(withKinds(JOB, []))).toEqual([]);
});

test("pages and sheets in words", () => {
  const page = (isFullSize: boolean): PageTold => ({
    number: 1,
    sheet: "bench",
    title: "",
    isFullSize,
    widthMm: 210,
    heightMm: 297,
  });
  expect(pagesSaid([page(false)], "a4")).toBe("1 page on A4");
  expect(pagesSaid([page(true), page(true)], "tabloid")).toBe("2 pages on Tabloid, full size");
  expect(pagesSaid([page(false), page(true)], "a3")).toBe("2 pages on A3, 1 of them full size");
  expect(changeSaid(["bench"], ["bench", "lesson"])).toBe("Lesson printed");
  expect(changeSaid(["bench", "lesson"], ["lesson"])).toBe("Bench card not printed");
  expect(kindsSaid(SHEET_KINDS)).toBe("all sheets");
  expect(kindsSaid([])).toBe("no sheet");
  expect(kindsSaid(["lesson", "ends"])).toBe("End templates, Lesson");
});
