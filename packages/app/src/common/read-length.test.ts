import { formatFieldLength } from "mouldwright/measure";
import { expect, test } from "vitest";
import { readLengthTyped } from "./read-length.ts";

test("a bound may be typed as it is told, and is then the bound itself", () => {
  const leastMm = 12.34746;
  const low = readLengthTyped("12", "mm", { leastMm });
  expect(low).toEqual({ ok: false, says: "At least 12.347\u00a0mm here: type more." });
  expect(readLengthTyped("12.347", "mm", { leastMm })).toEqual({ ok: true, value: leastMm });
  expect(readLengthTyped("30.001", "mm", { mostMm: 30 })).toEqual({
    ok: false,
    says: "At most 30\u00a0mm here: type less.",
  });
});

test("in inches the bound is told in inches", () => {
  expect(readLengthTyped("20", "in", { mostMm: 304.8 })).toEqual({
    ok: false,
    says: "At most 12″ here: type less.",
  });
});

test("less than nought only where a size may go to the other side, and as it is written", () => {
  const written = formatFieldLength(-9.525, "in");
  expect(written).toBe("−⅜″");
  expect(readLengthTyped(written, "in", { isSigned: true })).toEqual({ ok: true, value: -9.525 });
  expect(readLengthTyped(written, "in", {}).ok).toBe(false);
});
