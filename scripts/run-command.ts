/** Runs the launcher as a maker would, in a folder of its own that holds the examples. */
import { spawnSync } from "node:child_process";
import { cpSync, mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { EXAMPLES } from "./example-files.ts";
import type { RunCommand } from "./readme-outputs.ts";

const LAUNCHER = fileURLToPath(new URL("../packages/cli/bin/mouldwright.js", import.meta.url));
const LONGEST_MS = 60_000;

/** Gives `work` a runner whose commands share one folder, which is gone afterwards. */
export function withExamplesFolder<T>(work: (run: RunCommand) => T): T {
  const folder = mkdtempSync(join(tmpdir(), "mouldwright-readme-"));
  try {
    cpSync(fileURLToPath(EXAMPLES), join(folder, "examples"), { recursive: true });
    return work((words) => {
      const ran = spawnSync(process.execPath, [LAUNCHER, ...words], {
        cwd: folder,
        encoding: "utf8",
        stdio: ["ignore", "pipe", "pipe"],
        timeout: LONGEST_MS,
      });
      return { code: ran.status, out: ran.stdout };
    });
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
