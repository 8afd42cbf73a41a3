// `npm test`: every gate in order, all of them even when one fails, so that one run tells everything.
// Ends with a line "N passed, N failed" over the gates and the single tests; its exit code is 1 if anything failed.
import { spawn, spawnSync } from "node:child_process";
import { existsSync, mkdtempSync, readFileSync, rmSync } from "node:fs";
import { availableParallelism, tmpdir } from "node:os";
import { delimiter, dirname, join } from "node:path";
import { fileURLToPath } from "node:url";

const ROOT = join(dirname(fileURLToPath(import.meta.url)), "..");
const QUICK_GATE_MS = 3 * 60_000;
const TESTS_MS = 13 * 60_000;
const INSTALL_MS = 5 * 60_000;

/**
 * The script behind a package's command, so that no shell and no search path decide which one runs. Read from the
 * folder itself: some packages do not export their own manifest.
 */
function commandOf(packageName, command) {
  const folder = join(ROOT, "node_modules", packageName);
  const { bin } = JSON.parse(readFileSync(join(folder, "package.json"), "utf8"));
  return join(folder, typeof bin === "string" ? bin : bin[command]);
}

/** Runs one command with nothing to read and tells whether it ended well in time. */
function run([packageName, command, ...args], timeoutMs) {
  const script = commandOf(packageName, command);
  const ended = spawnSync(process.execPath, [script, ...args], {
    cwd: ROOT,
    stdio: ["ignore", "inherit", "inherit"],
    timeout: timeoutMs,
    killSignal: "SIGKILL",
  });
  if (ended.error) console.log(`${command}: ${ended.error.message}`);
  return ended.status === 0;
}

/** Runs one command as `run` does, beside others: what it prints is kept until it ends, so that none talks into another's. */
function runBeside([packageName, command, ...args], timeoutMs) {
  const script = commandOf(packageName, command);
  return new Promise((resolve) => {
    const printed = [];
    const child = spawn(process.execPath, [script, ...args], {
      cwd: ROOT,
      stdio: ["ignore", "pipe", "pipe"],
      timeout: timeoutMs,
      killSignal: "SIGKILL",
    });
    for (const stream of [child.stdout, child.stderr]) stream.on("data", (chunk) => printed.push(chunk));
    const ended = (isPassed) => resolve({ isPassed, text: Buffer.concat(printed).toString("utf8") });
    child.on("error", (error) => {
      printed.push(Buffer.from(`${command}: ${error.message}\n`));
      ended(false);
    });
    child.on("close", (code) => ended(code === 0));
  });
}

function heading(title) {
  console.log(`\n== ${title} ==`);
}

function timed(title, work) {
  heading(title);
  const startMs = performance.now();
  const result = work();
  console.log(`-- ${title}: ${((performance.now() - startMs) / 1000).toFixed(1)} s`);
  return result;
}

/** Programs of the system that tests read our sheets with: any one of the names, and the Debian package that has it. */
const READERS = [
  { names: ["pdftoppm"], packageName: "poppler-utils" },
  {
    names: ["chromium", "chromium-browser", "google-chrome", "google-chrome-stable"],
    packageName: "chromium",
  },
];

function isOnPath(name) {
  return (process.env.PATH ?? "")
    .split(delimiter)
    .some((folder) => folder !== "" && existsSync(join(folder, name)));
}

function missingReaders() {
  return READERS.filter(({ names }) => !names.some(isOnPath));
}

/**
 * Poppler and a browser, which read back the sheets. On a new machine they are installed where that is allowed; where
 * it is not, this says what to install, and the tests that need them fail: none is left out in silence.
 */
function haveReaders() {
  const missing = missingReaders().map(({ packageName }) => packageName);
  if (missing.length === 0) {
    console.log("poppler and Chromium are there");
    return true;
  }
  console.log(`${missing.join(" and ")} missing: trying to install`);
  const options = {
    stdio: ["ignore", "ignore", "inherit"],
    env: { ...process.env, DEBIAN_FRONTEND: "noninteractive" },
    timeout: INSTALL_MS,
  };
  spawnSync("apt-get", ["update", "-q"], options);
  const install = ["install", "-q", "-y", "--no-install-recommends", ...missing];
  const ended = spawnSync("apt-get", install, options);
  const still = missingReaders().map(({ packageName }) => packageName);
  if (still.length === 0) return true;
  console.log(
    `${still.join(" and ")} could not be installed (${ended.error?.message ?? `apt-get ended with ${ended.status}`}).`,
  );
  console.log(`Install ${still.join(" and ")} by hand; until then the tests of the sheets fail.`);
  return false;
}

const typeGate = (project) => ["typescript", "tsc", "--noEmit", "-p", project];
const QUICK_GATES = [
  ["format and lint", ["@biomejs/biome", "biome", "check", "--error-on-warnings", "."]],
  ["types of the core", typeGate("packages/core")],
  ["types of the tests", typeGate("packages/core/tsconfig.test.json")],
  ["types of the PDF writer", typeGate("packages/pdf")],
  ["types of the command line", typeGate("packages/cli")],
  ["types of the app", typeGate("packages/app")],
  ["types of the app's tests", typeGate("packages/app/tsconfig.test.json")],
  ["types of the app's workers", typeGate("packages/app/tsconfig.worker.json")],
  ["types of the app's build", typeGate("packages/app/tsconfig.build.json")],
  ["types of the browser tests", typeGate("tests/app")],
  [
    "floors",
    [
      "dependency-cruiser",
      "depcruise",
      "--config",
      ".dependency-cruiser.cjs",
      "packages/core/src",
      "packages/pdf/src",
      "packages/cli/src",
      "packages/app/src",
    ],
  ],
];

/**
 * Counts of single tests of one project of vitest.config.ts; a file that could not be loaded, or a run that broke off,
 * counts as one failure.
 */
function runTests(project) {
  const folder = mkdtempSync(join(tmpdir(), "mouldwright-tests-"));
  const report = join(folder, "report.json");
  const endedWell = run(
    [
      "vitest",
      "vitest",
      "run",
      "--project",
      project,
      "--reporter=dot",
      "--reporter=json",
      `--outputFile.json=${report}`,
    ],
    TESTS_MS,
  );
  const counts = existsSync(report)
    ? countsIn(JSON.parse(readFileSync(report, "utf8")))
    : { passed: 0, failed: 0, skipped: 0 };
  rmSync(folder, { recursive: true, force: true });
  return !endedWell && counts.failed === 0 ? { ...counts, failed: 1 } : counts;
}

function countsIn(report) {
  const unloaded = report.testResults.filter(
    (file) => file.status === "failed" && !file.assertionResults.some(({ status }) => status === "failed"),
  );
  return {
    passed: report.numPassedTests,
    failed: report.numFailedTests + unloaded.length,
    skipped: report.numPendingTests + report.numTodoTests,
  };
}

if (!existsSync(join(ROOT, "node_modules"))) {
  console.log("The packages are not installed: run `npm ci` first.");
  process.exit(1);
}

/** The quick gates, as many at once as there are cores; each is told in one piece when it ends. */
async function quickGates() {
  const passed = new Map();
  const waiting = [...QUICK_GATES];
  const worker = async () => {
    for (let next = waiting.shift(); next; next = waiting.shift()) {
      const [title, command] = next;
      const startMs = performance.now();
      const { isPassed, text } = await runBeside(command, QUICK_GATE_MS);
      heading(title);
      if (text.trim() !== "") console.log(text.trimEnd());
      console.log(`-- ${title}: ${((performance.now() - startMs) / 1000).toFixed(1)} s`);
      passed.set(title, isPassed);
    }
  };
  await Promise.all(Array.from({ length: Math.min(4, availableParallelism()) }, worker));
  return QUICK_GATES.map(([title]) => ({ title, isPassed: passed.get(title) === true }));
}

const gates = [
  ...(await quickGates()),
  { title: "readers of sheets", isPassed: timed("readers of sheets", haveReaders) },
];
const runs = [
  ["tests", "unit"],
  ["tests in the browser", "screen"],
].map(([title, project]) => ({ title, ...timed(title, () => runTests(project)) }));

heading("result");
for (const { title, isPassed } of gates) console.log(`${isPassed ? "passed" : "FAILED"}  ${title}`);
for (const { title, passed, failed, skipped } of runs) {
  console.log(
    `${failed === 0 ? "passed" : "FAILED"}  ${title}: ${passed} passed, ${failed} failed, ${skipped} left out`,
  );
}
const total = (key) => runs.reduce((sum, counts) => sum + counts[key], 0);
const passed = gates.filter(({ isPassed }) => isPassed).length + total("passed");
const failed = gates.filter(({ isPassed }) => !isPassed).length + total("failed");
console.log(`${passed} passed, ${failed} failed`);
process.exitCode = failed === 0 ? 0 : 1;
