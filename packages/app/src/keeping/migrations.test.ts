import { expect, test } from "vitest";
import { MIGRATIONS, type Migration, migrate } from "./migrations.ts";
import { RECORD_VERSION } from "./record.ts";

const made: readonly Migration[] = [
  { from: 1, step: (record) => ({ ...record, text: `${String(record.title)}!` }) },
  { from: 2, step: ({ title: _gone, ...rest }) => rest },
];

test("an older record goes through every step in order and ends as the newest", () => {
  const old = Object.freeze({ jobId: "a", recordVersion: 1, title: "plinth" });
  expect(migrate(old, 3, made)).toEqual({ jobId: "a", recordVersion: 3, text: "plinth!" });
  expect(old).toEqual({ jobId: "a", recordVersion: 1, title: "plinth" });
});

test("a record that is there already, or newer, or without a version, stays as it is", () => {
  for (const record of [{ recordVersion: 3 }, { recordVersion: 9 }, {}, { recordVersion: "1" }]) {
    expect(migrate(record, 3, made)).toBe(record);
  }
});

test("a record for which a step is missing stays as it is, half migrated nowhere", () => {
  const record = { recordVersion: 1, title: "plinth" };
  expect(migrate(record, 4, made)).toBe(record);
});

test("the steps that have gone out are numbered from 1 without gaps, up to today's version", () => {
  expect(MIGRATIONS.map(({ from }) => from)).toEqual(
    Array.from({ length: RECORD_VERSION - 1 }, (_, index) => index + 1),
  );
});
