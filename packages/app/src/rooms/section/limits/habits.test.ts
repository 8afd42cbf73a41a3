import { type Job, jobSchema, readJob, writeJob } from "mouldwright/job";
import { expect, test } from "vitest";
import { HAND_FIELDS, WORKING_FIELDS, withHand, withInchStep, withWorkingSaid } from "./habits.ts";

const JOB: Job = {
  format: "mouldwright/job",
  version: 1,
  name: "Plinth",
  section: { parts: [{ kind: "fillet", widthMm: "rest" }] },
  stick: { widthMm: 20, thicknessMm: 20 },
};

test("every figure of hand and minutes that a job can hold has its field", () => {
  const { hand, working } = jobSchema.shape;
  const keysOf = (schema: typeof hand | typeof working) => Object.keys(schema.unwrap().shape).sort();
  expect(HAND_FIELDS.map(({ key }) => key).sort()).toEqual(keysOf(hand));
  const elsewhere = ["lengthMm", "sticks"];
  expect([...WORKING_FIELDS.map(({ key }) => key), ...elsewhere].sort()).toEqual(keysOf(working));
});

test("bounds are those of the job file, and what is common lies within them", () => {
  for (const { key, least, most, common } of WORKING_FIELDS) {
    for (const value of [least, most, common]) {
      expect([key, readJob(writeJob(withWorkingSaid(JOB, key, value))).ok]).toEqual([key, true]);
    }
    expect([key, readJob(writeJob(withWorkingSaid(JOB, key, most + 1))).ok]).toEqual([key, false]);
  }
  for (const { key, commonMm } of HAND_FIELDS) {
    expect([key, readJob(writeJob(withHand(JOB, key, commonMm))).ok]).toEqual([key, true]);
  }
});

test("what is taken back leaves no trace", () => {
  expect(withHand(withHand(JOB, "gaugeMm", 0.3), "gaugeMm", undefined)).toEqual(JOB);
  expect(withWorkingSaid(withWorkingSaid(JOB, "setMinutes", 5), "setMinutes", undefined)).toEqual(JOB);
  expect(withInchStep(withInchStep(JOB, 64), 32)).toEqual(JOB);
  expect(withInchStep(JOB, 16).inchStep).toBe(16);
});
