import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import type { Plan } from "../cutting/index.ts";
import { waysTable } from "./ways-words.ts";

const GOLDEN = new URL("../../../../tests/golden/low-bead-and-cove.json", import.meta.url);
const STICK: Plan["stick"] = [
  [0, 0],
  [40, 0],
  [40, 20],
  [0, 20],
];
const FLAT = { way: "flat", cuts: 9, settings: 8, minutes: 44.4, uncut: 0, why: "Plain." };
const CANTED = {
  way: "canted",
  cuts: 10,
  settings: 9,
  minutes: 51.5,
  uncut: 2,
  why: "A jaw has to be made.",
};

function tableOf(ways: Plan["ways"]): Record<string, readonly string[]> {
  const plan = { ...(JSON.parse(readFileSync(GOLDEN, "utf8")) as Plan), stick: STICK, ways };
  return Object.fromEntries(waysTable(plan).map(({ what, figures }) => [what, figures]));
}

test("every figure of the ways stands side by side, areas as shares of the stick", () => {
  const more = { curved: 3, seats: 2, lines: 12, linesAtFirst: 7, planed: 264, sawn: 100 };
  expect(
    tableOf([
      { ...FLAT, ...more },
      { ...CANTED, ...more, seats: 3, sawn: 0 },
    ]),
  ).toEqual({
    Cuts: ["9", "10"],
    Settings: ["8", "9"],
    Minutes: ["44", "52"],
    "Seats found": ["2 of 3", "3 of 3"],
    "Lines before cut 1": ["7 of 12", "7 of 12"],
    "Stick to shavings": ["33\u00a0%", "33\u00a0%"],
    "Stick to the saw": ["13\u00a0%", "0\u00a0%"],
    "Left uncut": ["0", "2"],
  });
});

test("what an older file knows nothing of has no row", () => {
  expect(Object.keys(tableOf([FLAT, CANTED]))).toEqual(["Cuts", "Settings", "Minutes", "Left uncut"]);
  const { uncut: _, ...bare } = FLAT;
  expect(Object.keys(tableOf([bare, CANTED]))).toEqual(["Cuts", "Settings", "Minutes"]);
});
