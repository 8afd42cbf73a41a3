import { expect, test } from "vitest";
import { describeShelf } from "./describe.ts";
import { readShelf } from "./read-shelf.ts";

function shelfOf(planes: readonly unknown[]) {
  const read = readShelf({ format: "mouldwright/shelf", version: 1, unit: "mm", planes });
  if (!read.ok) throw new Error(read.trouble.code);
  return read.value;
}

test("one line a plane, set out in columns", () => {
  const shelf = shelfOf([
    { id: "h", kind: "hollow", radius: 10, width: 10 },
    { id: "left-bill", kind: "snipe bill", hand: "left" },
    { kind: "plough", widths: [3, 6], fence: 80, depth: 15 },
  ]);
  expect(describeShelf(shelf, { unit: "mm", form: "plain" })).toEqual([
    "h          10 mm hollow     radius and width 10 mm, arc 60 deg, depth 1.34 mm; rounds over to its radius; clears 0.4 mm of standing wood beside it",
    "left-bill  left snipe bill  6 mm wide, nose 0.4 mm, flank 60 deg from level; opens and sharpens a quirk, its wall on the left, up to 5 mm deep",
    "plough     plough           irons 3 mm and 6 mm; cuts a groove up to 80 mm from an edge and 15 mm deep",
  ]);
});

test("inches for those who read inches", () => {
  const [line] = describeShelf(shelfOf([{ kind: "rebate", width: "1/2 in" }]), { unit: "in" });
  expect(line).toContain("½\u00a0in wide");
  const [other] = describeShelf(shelfOf([{ kind: "round", radius: 9.525, width: 9.5 }]), { unit: "in" });
  // 9.5 mm is 0.37402 in; the depth of its arc, 9.525 - sqrt(9.525² - 4.75²) = 1.26889 mm, is 0.04996 in.
  expect(other).toContain("radius ⅜\u00a0in, width 0.374\u00a0in, arc 60°, depth 0.05\u00a0in");
});

test("every kind is described without jargon or a missing number", () => {
  const shelf = shelfOf([
    { kind: "round", radius: 10, width: 10 },
    { kind: "smoother", width: 50 },
    { kind: "moving fillister", width: 38 },
    { kind: "side round", hand: "left" },
    { kind: "side snipe", hand: "right" },
    { kind: "side rebate", hand: "right" },
    { kind: "bead", width: 6 },
    {
      kind: "shaped",
      sole: [
        [0, 0],
        [4, 1],
      ],
      cutsWall: "both",
    },
  ]);
  const lines = describeShelf(shelf, { unit: "mm" });
  expect(lines).toHaveLength(8);
  for (const line of lines) expect(line).not.toMatch(/undefined|NaN|\?|convex|concave|gouge/);
});

test("an empty shelf says so", () => {
  expect(describeShelf({ planes: [], assumed: [] }, { unit: "mm" })).toEqual([
    "There is no plane on the shelf.",
  ]);
});
