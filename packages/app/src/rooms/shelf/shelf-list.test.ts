import type { Plan } from "mouldwright/cutting";
import { readShelf, type Shelf } from "mouldwright/shelf";
import { expect, test } from "vitest";
import { groupsOf, numbersInWords, usesOf } from "./shelf-list.ts";

function shelfOf(planes: readonly unknown[]): Shelf {
  const read = readShelf({ format: "mouldwright/shelf", version: 1, unit: "mm", planes });
  if (!read.ok) throw new Error(read.trouble.code);
  return read.value;
}

test("by kind, small before large, left before right", () => {
  const shelf = shelfOf([
    { id: "big", kind: "round", radius: 20, width: 20 },
    { id: "right", kind: "snipe bill", hand: "right" },
    { id: "small", kind: "round", radius: 5, width: 5 },
    { id: "hollow", kind: "hollow", radius: 5, width: 5 },
    { id: "left", kind: "snipe bill", hand: "left" },
  ]);
  expect(groupsOf(shelf).map(({ planes }) => planes.map(({ id }) => id))).toEqual([
    ["hollow"],
    ["small", "big"],
    ["left", "right"],
  ]);
});

test("what each plane does in a plan", () => {
  const plan = {
    cuts: [
      { number: 1, plane: { id: "rebate", kind: "rebate" } },
      { number: 2, plane: { id: "round", kind: "round" } },
      { number: 3, plane: { id: "rebate", kind: "rebate" } },
    ],
    parts: [
      { name: "ogee", madeBy: [2, 3] },
      { name: "fillet", madeBy: [1, 3] },
      { name: "", madeBy: [1] },
    ],
  } as unknown as Plan;
  const uses = usesOf(plan);
  expect(uses.get("rebate")).toEqual({ cuts: [1, 3], parts: ["fillet", "ogee"] });
  expect(uses.get("round")).toEqual({ cuts: [2], parts: ["ogee"] });
});

test.each([
  [[], ""],
  [[4], "4"],
  [[1, 2], "1 and 2"],
  [[9, 3, 4, 5, 1], "1, 3–5 and 9"],
  [[1, 2, 3, 4], "1–4"],
  [[2, 2, 7], "2 and 7"],
])("%j is said %j", (numbers, words) => {
  expect(numbersInWords(numbers)).toBe(words);
});
