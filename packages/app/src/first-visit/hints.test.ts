import { expect, test } from "vitest";
import { FRESH_HINTS, HINT_IDS, HINTS, hintStateOf, NO_HINTS, nextHint, withDone } from "./hints.ts";

test("the hints come in the order of the work, and there is one of each", () => {
  expect(HINTS.map(({ id }) => id)).toEqual([...HINT_IDS]);
});

test("each that is done gives way to the next, until none is left", () => {
  let state = FRESH_HINTS;
  for (const id of HINT_IDS) {
    expect(nextHint(state)?.id).toBe(id);
    state = withDone(state, id);
  }
  expect(nextHint(state)).toBeNull();
});

test("what is done out of turn is not asked again", () => {
  const state = withDone(withDone(FRESH_HINTS, "cuts"), "size");
  expect(nextHint(state)?.id).toBe("answer");
  expect(nextHint(withDone(state, "answer"))?.id).toBe("sheet");
});

test("hints that were put away never come back", () => {
  const away = { ...withDone(FRESH_HINTS, "size"), isClosed: true };
  expect(nextHint(away)).toBeNull();
  expect(withDone(away, "cuts")).toBe(away);
  expect(nextHint(NO_HINTS)).toBeNull();
});

test("what is remembered is read back; anything else is no memory", () => {
  const state = withDone(withDone(FRESH_HINTS, "size"), "cuts");
  expect(hintStateOf(structuredClone(state))).toEqual({ done: ["size", "cuts"], isClosed: false });
  expect(hintStateOf({ done: ["tomorrow’s", "cuts"], isClosed: true })).toEqual({
    done: ["cuts"],
    isClosed: true,
  });
  for (const other of [undefined, null, 3, "x", {}, { done: 1, isClosed: true }, { done: [] }]) {
    expect(hintStateOf(other)).toBeNull();
  }
});
