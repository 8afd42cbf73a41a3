import { expect, test } from "vitest";
import { fileNameOf } from "./files.ts";

test.each([
  ["Chart cabinet: cornice", "Chart cabinet cornice.json"],
  ["../../etc/passwd", "etc passwd.json"],
  ["  .hidden. ", "hidden.json"],
  ["a\u202Egnp\u0000", "a gnp.json"],
  ["", "job.json"],
  ["CON", "job.json"],
  ["lpt1.txt", "job.json"],
  ["x".repeat(300), `${"x".repeat(80)}.json`],
  ["Åse 船 ⅜″", "Åse 船 ⅜″.json"],
])("%j is saved as %j", (name, fileName) => {
  expect(fileNameOf(name, "json")).toBe(fileName);
});
