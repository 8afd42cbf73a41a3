/**
 * `npm run long`: plans 5,000 random sections on random shelves and holds each plan to everything, one after another,
 * in one process that gives way to all others. A run is drawn from its number alone, so the work can be made in slices:
 *
 *     npm run long -- --from 1 --to 500        these runs, less those already in the tally
 *     npm run long -- --only 137 --again       one run, though it is in the tally
 *     npm run long -- --failed                 the failed ones again
 *     npm run long -- --told                   what the tally holds; nothing is planned
 *
 * Each failure is a line on the screen and a file in `out/long-run/failed/`, in the form that `tests/plans/found/` keeps.
 * The tally is `out/long-run/tally.jsonl`, or where `--tally FILE` says. Exit code 1 where a run of this slice failed.
 */
import { createHash } from "node:crypto";
import { appendFileSync, existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { constants, setPriority } from "node:os";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { parseArgs } from "node:util";
import { caseOf, drawnFor, type Ran, ran } from "../tests/plans/one-run.ts";
import { runsIn, tallyLines } from "../tests/plans/tally.ts";

const ROOT = fileURLToPath(new URL("..", import.meta.url));
const WHOLE_RUN = 5000;

const { values: asked } = parseArgs({
  options: {
    from: { type: "string", default: "1" },
    to: { type: "string", default: String(WHOLE_RUN) },
    only: { type: "string" },
    again: { type: "boolean", default: false },
    failed: { type: "boolean", default: false },
    told: { type: "boolean", default: false },
    tally: { type: "string", default: join(ROOT, "out", "long-run", "tally.jsonl") },
  },
});

const tally = asked.tally;
const failedCases = join(dirname(tally), "failed");
const runs = new Map(existsSync(tally) ? runsIn(readFileSync(tally, "utf8")) : []);
if (asked.told) {
  console.log(tallyLines(runs.values()).join("\n"));
  process.exit(0);
}
mkdirSync(failedCases, { recursive: true });
setPriority(constants.priority.PRIORITY_LOW);
const code = codeMark();
let hasFailed = false;
for (const run of askedRuns()) {
  const drawn = drawnFor(run);
  const result = ran(run, code, drawn);
  appendFileSync(tally, `${JSON.stringify(result)}\n`);
  runs.set(run, result);
  if (result.failures.length === 0) continue;
  hasFailed = true;
  writeFileSync(join(failedCases, `${run}.json`), `${JSON.stringify(caseOf(drawn))}\n`);
  console.log(failureLine(result));
}
console.log(tallyLines(runs.values()).join("\n"));
process.exitCode = hasFailed ? 1 : 0;

function* askedRuns(): Generator<number> {
  if (asked.failed) {
    yield* [...runs.values()].filter(({ failures }) => failures.length > 0).map(({ run }) => run);
    return;
  }
  const [from, to] = asked.only === undefined ? [asked.from, asked.to] : [asked.only, asked.only];
  for (let run = whole(from); run <= whole(to); run++) if (asked.again || !runs.has(run)) yield run;
}

function whole(text: string): number {
  const number = Number(text);
  if (Number.isInteger(number) && number > 0) return number;
  console.error(`A run is a whole number from 1 on; "${text}" is none.`);
  process.exit(2);
}

function failureLine({ run, pieces, planes, failures }: Ran): string {
  return `run ${run} (${pieces} lines and arcs, ${planes} planes): ${failures.join("; ")}`;
}

/** Tells one state of the planner from another: what its sources come to, in eight letters. */
function codeMark(): string {
  const hash = createHash("sha256");
  const folder = join(ROOT, "packages", "core", "src");
  const files = readdirSync(folder, { recursive: true, encoding: "utf8" });
  const sources = files.filter((file) => file.endsWith(".ts") && !/\.(test|prop)\./.test(file));
  for (const file of sources.sort()) hash.update(readFileSync(join(folder, file)));
  return hash.digest("hex").slice(0, 8);
}
