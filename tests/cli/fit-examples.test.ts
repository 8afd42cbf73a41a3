/** The commands of examples/fit/README.md do what stands there, and their pictures are those beside it. */
import { readdirSync, readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { type Bench, newBench, runHere } from "./run.ts";

const EXAMPLES = new URL("../../examples/", import.meta.url);
const README = readFileSync(new URL("fit/README.md", EXAMPLES), "utf8");

/** The words of a command line, quotes taken off. */
function wordsOf(line: string): readonly string[] {
  return [...line.matchAll(/"([^"]*)"|(\S+)/g)].map(([, quoted, plain]) => quoted ?? plain ?? "");
}

const COMMANDS = [...README.matchAll(/^ {4}mouldwright (.+)$/gm)].map(([, line]) => line ?? "");
const isWritten = (word: string): boolean => word.startsWith("fit/") && word.endsWith(".svg");

let bench: Bench;
beforeAll(async () => {
  bench = await newBench();
});
afterAll(() => bench.clear());

describe.each(COMMANDS)("mouldwright %s", (line) => {
  test("ends well and draws what stands beside it", async () => {
    const words = wordsOf(line);
    const pictures = words.filter(isWritten);
    expect(pictures.length).toBeGreaterThan(0);
    const placed = words.map((word) => {
      if (isWritten(word)) return bench.path(word.replace("fit/", ""));
      return word.endsWith(".json") ? fileURLToPath(new URL(word, EXAMPLES)) : word;
    });
    expect((await runHere(placed)).code).toBe(0);
    for (const picture of pictures) {
      expect(await bench.read(picture.replace("fit/", "")), picture).toBe(
        readFileSync(new URL(picture, EXAMPLES), "utf8"),
      );
    }
  });
});

test("no picture lies there that no command draws, and no file that none reads", () => {
  const named = new Set(COMMANDS.flatMap(wordsOf).filter((word) => word.startsWith("fit/")));
  const there = readdirSync(new URL("fit/", EXAMPLES)).filter((name) => name !== "README.md");
  expect(there.filter((name) => !named.has(`fit/${name}`))).toEqual([]);
});
