import type { Job } from "mouldwright/job";
import { expect, test } from "vitest";
import { isSameWork } from "./same-work.ts";

const SHELF: NonNullable<Job["shelf"]> = {
  format: "mouldwright/shelf",
  version: 1,
  unit: "mm",
  planes: [{ id: "round-1", kind: "round", radius: 9.525, width: 9.525 }],
};
const JOB: Job = {
  format: "mouldwright/job",
  version: 1,
  name: "Plinth",
  section: { parts: [{ kind: "fillet", widthMm: "rest" }] },
  stick: { widthMm: 20, thicknessMm: 20 },
  shelf: SHELF,
};
const withPlane = (more: object): Job => ({
  ...JOB,
  shelf: { ...SHELF, planes: SHELF.planes.map((plane) => ({ ...plane, ...more })) },
});

test("notes, ticks and light ask for no other plan", () => {
  expect(isSameWork(JOB, { ...JOB, notes: "for the harbour office", light: {} })).toBe(true);
});

test("a note on a plane asks for no other plan, whether it comes, changes or goes", () => {
  const noted = withPlane({ note: "reground" });
  expect(isSameWork(JOB, noted)).toBe(true);
  expect(isSameWork(noted, withPlane({ note: "reground at 30°" }))).toBe(true);
  expect(isSameWork(noted, JOB)).toBe(true);
});

test("anything else of a plane does, its name too: the plan says it", () => {
  expect(isSameWork(JOB, withPlane({ width: 9 }))).toBe(false);
  expect(isSameWork(JOB, withPlane({ name: "grandfather’s" }))).toBe(false);
  const { shelf: _, ...bare } = JOB;
  expect(isSameWork(JOB, bare)).toBe(false);
});

test("section, stick, unit and way do", () => {
  expect(isSameWork(JOB, { ...JOB, stick: { widthMm: 21, thicknessMm: 20 } })).toBe(false);
  expect(isSameWork(JOB, { ...JOB, unit: "in" })).toBe(false);
  expect(isSameWork(JOB, { ...JOB, way: { toleranceMm: 0.1 } })).toBe(false);
});
