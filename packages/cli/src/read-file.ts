import { type FileHandle, open, stat } from "node:fs/promises";
import {
  cataloguedTrouble,
  fine,
  type Outcome,
  refused,
  type TroubleCode,
  trouble,
} from "mouldwright/measure";

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
    // Asked before opening: opening a pipe waits for somebody to write to it.
    const state = await stat(path);
    if (state.isDirectory()) return refused(cataloguedTrouble("path-is-folder", path, {}));
    // A pipe or a device has no size to judge and may never end.
    if (!state.isFile()) return refused(cataloguedTrouble("path-not-a-file", path, {}));
    if (state.size > mostBytes) {
      return refused(
        cataloguedTrouble("file-too-large", path, {
          megabytes: state.size / 1e6,
          mostMegabytes: mostBytes / 1e6,
        }),
      );
    }
    file = await open(path, "r");
    const bytes = await file.readFile();
    return fine(new TextDecoder("utf-8", { fatal: true }).decode(bytes));
  } catch (error) {
    return refused(trouble(readingCode(error), path, reasonOf(error)));
  } finally {
    await file?.close();
  }
}

function readingCode(error: unknown): TroubleCode {
  switch (systemCode(error)) {
    case "ERR_ENCODING_INVALID_ENCODED_DATA":
      return "file-not-utf8";
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
