/** Runs the command line for tests: in this process with everything it says caught, or as a process of its own. */
import { type ChildProcess, spawn } from "node:child_process";
import { mkdtemp, readdir, readFile, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { type Io, printableLines } from "../../packages/cli/src/io.ts";
import { main } from "../../packages/cli/src/main.ts";

export interface Ran {
  readonly code: number | null;
  readonly out: string;
  readonly err: string;
}

export interface Listening {
  readonly columns?: number;
  readonly isWatched?: boolean;
  readonly interrupted?: AbortSignal;
}

/** The command in this very process; what it prints passes the same filter as on its way to a terminal. */
export async function runHere(words: readonly string[], listening: Listening = {}): Promise<Ran> {
  let out = "";
  let err = "";
  const io: Io = {
    print: (text) => {
      out += printableLines(text);
    },
    complain: (text) => {
      err += printableLines(text, "\r");
    },
    columns: listening.columns ?? 80,
    complaintColumns: listening.columns ?? 80,
    isWatched: listening.isWatched ?? false,
    interrupted: listening.interrupted ?? new AbortController().signal,
    now: () => performance.now(),
    breathe: () => new Promise((go) => setImmediate(go)),
  };
  const code = await main(words, io);
  return { code, out, err };
}

const LAUNCHER = fileURLToPath(new URL("../../packages/cli/bin/mouldwright.js", import.meta.url));

/** The real launcher as a child process, and what came of it. */
export function launch(words: readonly string[]): {
  readonly child: ChildProcess;
  readonly ran: Promise<Ran>;
} {
  const child = spawn(process.execPath, [LAUNCHER, ...words], { stdio: ["ignore", "pipe", "pipe"] });
  let out = "";
  let err = "";
  child.stdout.setEncoding("utf8").on("data", (text: string) => {
    out += text;
  });
  child.stderr.setEncoding("utf8").on("data", (text: string) => {
    err += text;
  });
  const ran = new Promise<Ran>((done) => {
    child.on("close", (code) => done({ code, out, err }));
  });
  return { child, ran };
}

/** A folder of its own for one test file. */
export interface Bench {
  readonly folder: string;
  readonly path: (name: string) => string;
  readonly put: (name: string, content: string | Uint8Array) => Promise<string>;
  readonly read: (name: string) => Promise<string>;
  readonly names: () => Promise<readonly string[]>;
  readonly clear: () => Promise<void>;
}

export async function newBench(): Promise<Bench> {
  const folder = await mkdtemp(join(tmpdir(), "bench-"));
  const path = (name: string): string => join(folder, name);
  return {
    folder,
    path,
    put: async (name, content) => {
      await writeFile(path(name), content);
      return path(name);
    },
    read: (name) => readFile(path(name), "utf8"),
    names: async () => (await readdir(folder, { recursive: true })).sort(),
    clear: () => rm(folder, { recursive: true, force: true }),
  };
}

/** A 30 × 12 stick with a 10 × 4 step at the far edge: any rebate plane cuts it. */
export const STEP_SVG = `<svg xmlns="http://www.w3.org/2000/svg" width="30mm" height="12mm" viewBox="0 0 30 12">
  <rect id="stick" x="0" y="0" width="30" height="12"/>
  <path id="section" d="M0 12 H30 V4 H20 V0 H0 Z"/>
</svg>
`;

/** A cove of radius 12 across the middle: a round's work, out of reach for a rebate plane. */
export const COVE_SVG = `<svg xmlns="http://www.w3.org/2000/svg" width="40mm" height="20mm" viewBox="0 0 40 20">
  <path id="section" d="M0 20 H40 V0 H26 A12 12 0 0 1 14 0 H0 Z"/>
</svg>
`;

export const SHELF_JSON = JSON.stringify({
  format: "mouldwright/shelf",
  version: 1,
  unit: "mm",
  planes: [
    { kind: "rebate", width: 19 },
    { kind: "round", radius: 12, width: 12 },
    { kind: "hollow", radius: 12, width: 12 },
    { kind: "snipe bill", hand: "left" },
    { kind: "snipe bill", hand: "right" },
  ],
});
