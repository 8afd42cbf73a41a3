import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { gzipKilobytes, sizesInKilobytes } from "./support/built-sizes.ts";
import { APP_FOLDER, BUILT } from "./support/places.ts";

interface Budget {
  readonly shell: number;
  /** By the part's name: a source file that is loaded later, or the beginning of a worker's file. */
  readonly parts: Readonly<Record<string, number>>;
}

const budget = JSON.parse(readFileSync(join(APP_FOLDER, "size-budget.json"), "utf8")) as Budget;
const sizes = sizesInKilobytes();
const workers = Object.fromEntries(
  readdirSync(join(BUILT, "assets"))
    .map((file) => [/^(.+\.worker)-.+\.m?js$/.exec(file)?.[1], file] as const)
    .flatMap(([name, file]) =>
      name === undefined ? [] : [[name, gzipKilobytes(join("assets", file))] as const],
    ),
);
const parts: Readonly<Record<string, number>> = { ...sizes.parts, ...workers };

test("the shell is within its budget", () => {
  expect(sizes.shell).toBeGreaterThan(50);
  expect(sizes.shell).toBeLessThanOrEqual(budget.shell);
});

test.each(Object.entries(budget.parts))("%s is within %d kB", (part, mostKb) => {
  expect(Object.keys(parts)).toContain(part);
  expect(parts[part]).toBeLessThanOrEqual(mostKb);
});

test("every part has a budget", () => {
  expect(Object.keys(parts).filter((part) => budget.parts[part] === undefined)).toEqual([]);
});
