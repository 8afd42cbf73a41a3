/** How large the built files are as they are sent, by what needs them. */
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { gzipSync } from "node:zlib";
import { BUILT } from "./places.ts";

interface BuiltFile {
  readonly file: string;
  readonly imports?: readonly string[];
  readonly dynamicImports?: readonly string[];
  readonly css?: readonly string[];
}

type BuiltFiles = Readonly<Record<string, BuiltFile>>;

function builtFiles(): BuiltFiles {
  return JSON.parse(readFileSync(join(BUILT, "built-files.json"), "utf8")) as BuiltFiles;
}

/** All files that an entry of the list needs at once: itself, what it imports, their style sheets. */
function filesOf(entry: string, all: BuiltFiles, seen = new Set<string>()): readonly string[] {
  const built = all[entry];
  if (built === undefined) throw new Error(`${entry} is not among the built files`);
  if (seen.has(entry)) return [];
  seen.add(entry);
  return [
    built.file,
    ...(built.css ?? []),
    ...(built.imports ?? []).flatMap((imported) => filesOf(imported, all, seen)),
  ];
}

const KILOBYTE = 1000;

export function gzipKilobytes(file: string): number {
  return gzipSync(readFileSync(join(BUILT, file)), { level: 9 }).length / KILOBYTE;
}

function sum(files: Iterable<string>): number {
  return [...new Set(files)].reduce((total, file) => total + gzipKilobytes(file), 0);
}

const SHELL = "index.html";

/** Kilobytes of the shell, and of every part that is loaded later, beside what the shell has already. */
export function sizesInKilobytes(): {
  readonly shell: number;
  readonly parts: Readonly<Record<string, number>>;
} {
  const all = builtFiles();
  const shellFiles = new Set([SHELL, ...filesOf(SHELL, all)]);
  const later = Object.entries(all).filter(([, { file }]) => !shellFiles.has(file));
  const parts = later
    .filter(([entry]) => Object.values(all).some(({ dynamicImports }) => dynamicImports?.includes(entry)))
    .map(([entry]) => [entry, sum(filesOf(entry, all).filter((file) => !shellFiles.has(file)))] as const);
  return { shell: sum(shellFiles), parts: Object.fromEntries(parts) };
}
