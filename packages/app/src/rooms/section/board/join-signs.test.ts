import { ringFromVertices } from "mouldwright/curve";
import { joinsOf } from "mouldwright/section";
import { expect, test } from "vitest";
import { kindsOfJoins, signOf } from "./join-signs.ts";

const STICK = ringFromVertices([
  [0, 0],
  [40, 0],
  [40, 20],
  [0, 20],
]);

/** Block with a step on the right and a vee cut into its top. */
const OUTLINE = ringFromVertices([
  [0, 0],
  [40, 0],
  [40, 10],
  [30, 10],
  [30, 20],
  [20, 20],
  [18, 12],
  [16, 20],
  [0, 20],
]);

const signAt = (x: number, y: number) => {
  const join = joinsOf(OUTLINE).find(({ at }) => at.x === x && at.y === y);
  return join === undefined ? undefined : signOf(join, OUTLINE, STICK);
};

test("an arris has a tick that stands off it, away from the wood", () => {
  // Up and to the right, on a screen whose y goes down.
  expect(signAt(30, 20)).toEqual({ kind: "arris", path: "M5.7 -5.7L11.3 -11.3" });
  expect(signAt(40, 10)).toEqual({ kind: "arris", path: "M5.7 -5.7L11.3 -11.3" });
});

test("a step has the corner of a square in the air before it", () => {
  expect(signAt(30, 10)).toEqual({ kind: "step", path: "M0 -11L11 -11L11 0" });
});

test("a quirk has a wedge that opens into the air", () => {
  const sign = signAt(18, 12);
  expect(sign?.kind).toBe("quirk");
  expect(sign?.path).toBe("M4.5 -9L0 0L-4.5 -9");
});

test("the stick’s own corners have none", () => {
  expect([signAt(0, 0), signAt(40, 0), signAt(0, 20)]).toEqual([null, null, null]);
});

test("the kinds there are, each once", () => {
  const signs = joinsOf(OUTLINE).map((join) => signOf(join, OUTLINE, STICK));
  expect(kindsOfJoins(signs)).toEqual(["arris", "quirk", "step"]);
});
