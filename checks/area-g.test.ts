/** Area G as far as it concerns sheets: paper, printers and the bar that is measured. */
import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { PAPERS, type Page, stretchFor } from "../packages/core/src/sheets/index.ts";
import { textsOnPage } from "../tests/sheets/page-texts.ts";
import { EXAMPLE_NAMES, examplePlan, pagesOf } from "../tests/sheets/plans.ts";

interface Row {
  readonly id: string;
  readonly input: Readonly<Record<string, unknown>>;
  readonly expected: Readonly<Record<string, unknown>>;
}

const { rows } = JSON.parse(readFileSync(new URL("./area-g.json", import.meta.url), "utf8")) as {
  rows: readonly Row[];
};
const row = (id: string): Row => rows.find((one) => one.id === id) as Row;
const words = (page: Page): string =>
  textsOnPage(page)
    .map((text) => text.words)
    .join(" ");

describe("paper", () => {
  test("G-P02, G-P03: a Letter page fitted on A4, and an A4 page on Letter", () => {
    expect(PAPERS.a4.widthMm / PAPERS.letter.widthMm).toBeCloseTo(row("G-P02").expected.scale as number, 6);
    expect(PAPERS.letter.heightMm / PAPERS.a4.heightMm).toBeCloseTo(row("G-P03").expected.scale as number, 6);
  });

  test("such a page is still within what a correction cures, and is cured by the bar's own figure", () => {
    for (const id of ["G-P02", "G-P03"]) {
      const scale = row(id).expected.scale as number;
      const stretch = stretchFor({ acrossMm: 100 * scale, upMm: 100 * scale });
      if (!stretch.ok) throw new Error(stretch.trouble.code);
      expect(stretch.value.acrossRatio * scale).toBeCloseTo(1, 12);
    }
  });

  test("G-P01: templates say to fix them dry, and by how much wet paper stretches at most", () => {
    const [, most] = row("G-P01").expected.cross_direction_percent as readonly [number, number];
    const page = pagesOf(examplePlan("cornice"), { unit: "mm", kinds: ["ends"] })[0] as Page;
    expect(words(page)).toMatch(/Fix it dry/);
    expect(words(page)).toContain(`1 mm in ${100 / most}`);
  });
});

describe("the check bar", () => {
  test("G-P04: a bar of 100 mm that measures 97.3 mm tells a printer of 0.973", () => {
    const { nominal_mm: nominalMm, read_mm: readMm } = row("G-P04").input as Record<string, number>;
    const stretch = stretchFor({ acrossMm: readMm as number, upMm: nominalMm as number });
    if (!stretch.ok) throw new Error(stretch.trouble.code);
    expect(1 / stretch.value.acrossRatio).toBeCloseTo(row("G-P04").expected.scale as number, 12);
  });

  test("every full-size page has one in each direction, longer than 100 mm, which is read the surer", () => {
    for (const name of EXAMPLE_NAMES) {
      const pages = pagesOf(examplePlan(name), { unit: "mm", kinds: ["ends", "story", "planes"] });
      for (const page of pages) {
        expect(page.isFullSize).toBe(true);
        const said = textsOnPage(page).map((text) => text.words);
        expect(said.filter((text) => text === "100 mm")).toHaveLength(2);
        expect(said.filter((text) => text === "4 in")).toHaveLength(2);
        expect(said).toContain("200");
        expect(words(page)).toMatch(/print at 100 %, measure this bar/i);
      }
    }
  });
});
