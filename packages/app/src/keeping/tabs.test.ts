import { expect, test } from "vitest";
import { tabWordOf } from "./tabs.ts";

test("what another window says is understood, or passed over", () => {
  expect(tabWordOf({ kind: "kept", jobId: "a", revision: 3, more: 1 })).toEqual({
    kind: "kept",
    jobId: "a",
    revision: 3,
  });
  expect(tabWordOf({ kind: "gone", jobId: "a" })).toEqual({ kind: "gone", jobId: "a" });
  for (const other of [
    null,
    3,
    "kept",
    {},
    { kind: "kept", jobId: "a" },
    { kind: "x", jobId: "a" },
    { kind: "gone" },
  ]) {
    expect(tabWordOf(other)).toBeNull();
  }
});
