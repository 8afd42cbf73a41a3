/** Cautions that rest on a published figure, and that say nothing which a place or a year would make wrong. */
import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { SHORT_AT_THE_SAW_MM } from "../packages/core/src/making/index.ts";
import { type Outcome, sayTrouble } from "../packages/core/src/measure/index.ts";
import { dustCautionsOf, findTimber, TIMBERS } from "../packages/core/src/timber/index.ts";

interface Row {
  readonly id: string;
  readonly expected: Readonly<Record<string, number>>;
  readonly source: string;
}

const { rows } = JSON.parse(readFileSync(new URL("./area-h.json", import.meta.url), "utf8")) as {
  rows: readonly Row[];
};
const rowOf = (id: string): Row => rows.find((row) => row.id === id) as Row;

function answerOf<T>(outcome: Outcome<T>): T {
  if (!outcome.ok) throw new Error(outcome.trouble.code);
  return outcome.value;
}

test("every row names its source", () => {
  expect(rows.filter(({ source }) => source === "")).toEqual([]);
});

test("H-13: a piece is short at the saw where hands would come nearer to the blade than is allowed", () => {
  expect(SHORT_AT_THE_SAW_MM).toBe(rowOf("H-13").expected.hand_to_blade_mm_min);
});

test("H-06: the timber with the strictest limit carries the strongest caution, others their own or none", () => {
  const { western_red_cedar_mg_m3: cedar = 0, other_mg_m3: other = 0 } = rowOf("H-06").expected;
  expect(cedar).toBeLessThan(other);
  const said = (name: string): string =>
    dustCautionsOf(answerOf(findTimber(name)))
      .map((caution) => sayTrouble(caution, { unit: "mm" }).sentence)
      .join(" ");
  expect(said("western red cedar")).toContain("asthma");
  expect(said("northern red oak")).toContain("allergic");
  expect(said("black cherry")).toBe("");
});

test("no caution prints a limit of exposure: those are for local rules to say", () => {
  for (const timber of TIMBERS) {
    for (const caution of dustCautionsOf(timber)) {
      const { sentence, hint } = sayTrouble(caution, { unit: "mm" });
      expect(`${sentence} ${hint}`).not.toMatch(/mg|\d/);
      expect(hint).toContain("local exposure limits");
    }
  }
});
