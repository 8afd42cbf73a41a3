/** Lettering is text: it comes back from two readers as it was written, in fonts that travel with the file. */
import { beforeAll, describe, expect, test } from "vitest";
import type { Item, Page } from "../../packages/core/src/sheets/index.ts";
import { writePdf } from "../../packages/pdf/src/index.ts";
import { nodeFonts } from "../../packages/pdf/src/node-fonts.ts";
import { openPdf } from "./pdf-paths.ts";
import { examplePlan, pagesOf } from "./plans.ts";
import { readPdf } from "./tools.ts";

function wordsOf(items: readonly Item[]): readonly string[] {
  return items.flatMap((item): readonly string[] => {
    if (item.kind === "text") return item.text.trim() === "" ? [] : [item.text];
    return item.kind === "group" ? wordsOf(item.items) : [];
  });
}

/** Readers put blanks where they see gaps; what counts is every sign in its order. */
function closedUp(text: string): string {
  return text.replace(/\s+/g, "");
}

/** Signs of one line, whatever order a reader takes the lines in. */
function missingFrom(text: string, words: readonly string[]): readonly string[] {
  const whole = closedUp(text);
  return words.filter((line) => !whole.includes(closedUp(line)));
}

describe.each(["mm", "in"] as const)("the whole set of the glazing bar in %s", (unit) => {
  let pages: readonly Page[] = [];
  let pdf = new Uint8Array();
  beforeAll(async () => {
    pages = pagesOf(examplePlan("glazing-bar"), { unit, date: "Twelfth of March" });
    pdf = new Uint8Array(await writePdf(pages, { title: "Glazing bar & sash", fonts: await nodeFonts() }));
  });

  test("poppler gives back every line of every page", () => {
    pages.forEach((page, index) => {
      const number = String(index + 1);
      const text = readPdf("pdftotext", pdf, ["-f", number, "-l", number, "-raw", "-enc", "UTF-8"], ["-"]);
      expect(missingFrom(text.toString("utf8"), wordsOf(page.items))).toEqual([]);
    });
  });

  test("pdf.js opens it and gives back every line", async () => {
    const document = await openPdf(pdf);
    expect(document.numPages).toBe(pages.length);
    for (const [index, page] of pages.entries()) {
      const content = await (await document.getPage(index + 1)).getTextContent();
      const text = content.items.map((item) => ("str" in item ? item.str : "")).join("");
      expect(missingFrom(text, wordsOf(page.items))).toEqual([]);
    }
    const { info } = await document.getMetadata();
    expect(info).toMatchObject({ Title: "Glazing bar & sash" });
    expect(info).not.toHaveProperty("CreationDate");
    await document.destroy();
  });

  test("every font is embedded, letters used only", () => {
    const rows = readPdf("pdffonts", pdf, []).toString().trim().split("\n").slice(2);
    expect(rows.length).toBeGreaterThan(0);
    for (const row of rows)
      expect(row).toMatch(/^[A-Z]{6}\+DejaVuSansCondensed\S*\s+CID TrueType\s+Identity-H\s+yes yes yes/);
  });
});

test("fractions, composed ones among them, and degree signs are on the sheets that are read back", () => {
  const inches = pagesOf(examplePlan("glazing-bar"), { unit: "in" })
    .flatMap((page) => wordsOf(page.items))
    .join(" ");
  expect(inches).toMatch(/[¼½¾⅛⅜⅝⅞]″/);
  expect(inches).toMatch(/[⁰¹²³⁴⁵⁶⁷⁸⁹]+⁄[₀₁₂₃₄₅₆₇₈₉]+″/);
  expect(inches).toMatch(/\d°/);
});

test("a fraction that no font has as one sign comes back composed: forty-five sixty-fourths", async () => {
  const line = "⁴⁵⁄₆₄″ light at 22½°, 1³⁄₃₂″";
  const page = { ...(pagesOf(examplePlan("cavetto"), { unit: "in", kinds: ["story"] })[0] as Page) };
  const text = {
    kind: "text",
    at: [20, 60],
    text: line,
    sizeMm: 5,
    anchor: "start",
    turnDeg: 0,
    bold: false,
    colour: { name: "black", strengthRatio: 1 },
  } as const;
  const pdf = await writePdf([{ ...page, items: [text] }], { title: "Fractions", fonts: await nodeFonts() });
  expect(readPdf("pdftotext", pdf, ["-enc", "UTF-8"], ["-"]).toString("utf8").trim()).toBe(line);
});
