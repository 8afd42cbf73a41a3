/**
 * The pictures of two hand-written plans, and sheets of one of them, held against the stored ones. Where they differ, the new one is left beside
 * the old as `.changed.svg`; look at it, and rename it over the old one if it is better. Numbers may differ by one in
 * the third decimal: engines may round sines differently in the last bit.
 */
import { existsSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import type { Plan } from "../../packages/core/src/cutting/index.ts";
import {
  drawCut,
  drawSection,
  drawStrip,
  type Page,
  PRINT_PAPER_RGB,
  SHEET_KINDS,
  sheetPages,
  writeSvg,
} from "../../packages/core/src/sheets/index.ts";

const FOLDER = new URL("./", import.meta.url);

function readPlan(name: string): Plan {
  return JSON.parse(readFileSync(new URL(`${name}.json`, FOLDER), "utf8")) as Plan;
}

interface Picture {
  readonly name: string;
  readonly svg: () => string;
}

function picturesOf(name: string): readonly Picture[] {
  const plan = readPlan(name);
  const options = { unit: "mm" } as const;
  return [
    ...plan.cuts.map((cut) => ({
      name: `${name}.cut-${cut.number}`,
      svg: () => writeSvg(drawCut(plan, cut.number, options)),
    })),
    { name: `${name}.strip`, svg: () => writeSvg(drawStrip(plan, options)) },
    { name: `${name}.section`, svg: () => writeSvg(drawSection(plan, options)) },
  ];
}

/** The first page of every kind of sheet, and the first page of cuts. */
function sheetsOf(name: string): readonly Picture[] {
  const page = (found: (pages: readonly Page[]) => Page | undefined): (() => string) => {
    return () => {
      const pages = sheetPages(readPlan(name), { unit: "mm" });
      const wanted = pages.ok ? found(pages.value) : undefined;
      return wanted === undefined ? "" : writeSvg(wanted, { paper: PRINT_PAPER_RGB });
    };
  };
  return [
    ...SHEET_KINDS.map((kind) => ({
      name: `${name}.sheet-${kind}`,
      svg: page((pages) => pages.find(({ sheet }) => sheet === kind)),
    })),
    {
      name: `${name}.sheet-cuts`,
      svg: page((pages) => pages.find(({ title }) => title.includes("cuts"))),
    },
  ];
}

const inches = readPlan("low-bead-and-cove");
const PICTURES: readonly Picture[] = [
  ...picturesOf("low-bead-and-cove"),
  ...picturesOf("every-way-of-holding"),
  ...sheetsOf("low-bead-and-cove"),
  { name: "low-bead-and-cove.inches", svg: () => writeSvg(drawCut(inches, 4, { unit: "in" })) },
];

describe("golden drawings", () => {
  test.each(PICTURES.map((picture) => [picture.name, picture] as const))("%s", (name, picture) => {
    const stored = new URL(`${name}.svg`, FOLDER);
    const changed = new URL(`${name}.changed.svg`, FOLDER);
    const drawn = picture.svg();
    const problem = existsSync(stored)
      ? firstDifference(readFileSync(stored, "utf8"), drawn)
      : "there is no stored drawing";
    if (problem === null) {
      rmSync(changed, { force: true });
      return;
    }
    writeFileSync(changed, drawn);
    expect.fail(`${name}.changed.svg: ${problem}`);
  });

  test("no stored drawing is left over from a picture that is no longer made", () => {
    const names = new Set(PICTURES.map((picture) => `${picture.name}.svg`));
    const stored = readdirSync(FOLDER).filter(
      (file) => file.endsWith(".svg") && !file.endsWith(".changed.svg"),
    );
    expect(stored.filter((file) => !names.has(file))).toEqual([]);
  });

  test("the comparison itself sees a moved line and forgives the last decimal", () => {
    expect(firstDifference("M1.234 5", "M1.235 5")).toBeNull();
    expect(firstDifference("M1.234 5", "M1.244 5")).not.toBeNull();
    expect(firstDifference("M1 5", "L1 5")).not.toBeNull();
    expect(firstDifference("M1 5", "M1 5 6")).not.toBeNull();
  });
});

const NUMBER = /-?\d+(?:\.\d+)?/g;
const LAST_DECIMAL = 0.0011;

/** Where two drawings first differ, or null. */
function firstDifference(stored: string, drawn: string): string | null {
  const storedLines = stored.split("\n");
  const drawnLines = drawn.split("\n");
  for (let index = 0; index < Math.max(storedLines.length, drawnLines.length); index++) {
    const before = storedLines[index] ?? "";
    const after = drawnLines[index] ?? "";
    const isSameShape = before.replace(NUMBER, "#") === after.replace(NUMBER, "#");
    const numbersBefore = before.match(NUMBER) ?? [];
    const numbersAfter = after.match(NUMBER) ?? [];
    const isSame =
      isSameShape &&
      numbersBefore.every((value, at) => Math.abs(Number(value) - Number(numbersAfter[at])) < LAST_DECIMAL);
    if (!isSame) return `line ${index + 1}: ${before} became ${after}`;
  }
  return null;
}
