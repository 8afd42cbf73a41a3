/** `npm run readme`: runs the commands that README.md shows, and puts what they print and what was measured into it. */
import { readFileSync, writeFileSync } from "node:fs";
import { BASELINE, readResult } from "../bench/results.ts";
import { withMeasured } from "./readme-figures.ts";
import { renewed } from "./readme-outputs.ts";
import { withExamplesFolder } from "./run-command.ts";

const README = new URL("../README.md", import.meta.url);
const before = readFileSync(README, "utf8");
const after = withMeasured(
  withExamplesFolder((run) => renewed(before, run)),
  readResult(BASELINE),
);
if (after !== before) writeFileSync(README, after);
console.log(after === before ? "README.md stands as it is" : "README.md is renewed");
