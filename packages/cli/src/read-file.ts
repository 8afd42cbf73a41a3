import { type FileHandle, open } from "node:fs/promises";
import { fine, type Outcome, refused, trouble } from "mouldwright/measure";

/** Bytes of a section or shelf file; a moulding's drawing has thousands, not millions. */
export const MOST_INPUT_BYTES = 5_000_000;
/** Bytes of a plan file, which holds the section after every cut. */
export const MOST_PLAN_BYTES = 20_000_000;

/**
 * The text of a file of at most `mostBytes` bytes, which is checked before a byte of it is read.
 * Troubles: `path-missing`, `path-is-folder`, `path-not-a-file`, `path-unreadable`, `file-too-large`,
 * `file-not-utf8`; `where` is the path as the maker gave it.
 */
export async function readTextFile(path: string, mostBytes: number): Promise<Outcome<string>> {
  let file: FileHandle | undefined;
  try {
    file = await open(path, "r");
    const state = await file.stat();
    if (state.isDirectory()) return refused(trouble("path-is-folder", path));
    // A pipe or a device has no size to judge and may never end.
    if (!state.isFile()) return refused(trouble("path-not-a-file", path));
    if (state.size > mostBytes) {
      return refused(
        trouble("file-too-large", path, { megabytes: state.size / 1e6, mostMegabytes: mostBytes / 1e6 }),
      );
    }
    const bytes = await file.readFile();
    return fine(new TextDecoder("utf-8", { fatal: true }).decode(bytes));
  } catch (error) {
    return refused(trouble(readingCode(error), path, reasonOf(error)));
  } finally {
    await file?.close();
  }
}

function readingCode(error: unknown): string {
  if (error instanceof TypeError) return "file-not-utf8";
  switch (systemCode(error)) {
    case "ENOENT":
    case "ENOTDIR":
      return "path-missing";
    case "EISDIR":
      return "path-is-folder";
    default:
      return "path-unreadable";
  }
}

/** The operating system's own code (`ENOSPC`), empty if the fault is not one of its. */
export function systemCode(error: unknown): string {
  return error instanceof Error && "code" in error ? String(error.code) : "";
}

/** The operating system's reason as facts of a trouble. */
export function reasonOf(error: unknown): { readonly reason: string } {
  return { reason: systemCode(error) || (error instanceof Error ? error.name : "unknown") };
}
