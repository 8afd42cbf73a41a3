import { expect, test } from "vitest";
import { readMade } from "./read-made.ts";

test("a bar is measured in millimetres, to a hundredth", () => {
  expect(readMade("99.4")).toEqual({ ok: true, value: 99.4 });
  expect(readMade(" 100.376 mm ")).toEqual({ ok: true, value: 100.38 });
  expect(readMade("3 15/16 in")).toEqual({ ok: true, value: 100.01 });
});

test("further out than a printer errs, and what is no length, is told with what to do", () => {
  const far = readMade("89");
  expect(far.ok).toBe(false);
  if (!far.ok) expect(far.says).toContain("89");
  const none = readMade("about a hundred");
  expect(none.ok).toBe(false);
  if (!none.ok) expect(none.says).toContain("about a hundred");
});
