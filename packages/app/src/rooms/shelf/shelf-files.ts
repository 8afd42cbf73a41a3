/** A shelf as a file: written as the core writes it, read as the core reads it. */
import type { Job } from "mouldwright/job";
import { type Outcome, refused } from "mouldwright/measure";
import { readShelf, type Shelf, shelfFile } from "mouldwright/shelf";

export const SHELF_FILE_NAME = "shelf.json";

export function shelfBlob(shelf: Shelf): Blob {
  const text = `${JSON.stringify(shelfFile(shelf), null, 2)}\n`;
  return new Blob([text], { type: "application/json" });
}

/** The shelf in a chosen file; refused with every trouble that the reader tells. */
export async function readShelfFile(file: File, unit: "mm" | "in"): Promise<Outcome<Shelf>> {
  const read = readShelf(await file.text(), { tellIn: unit });
  return read.ok ? read : refused(read.trouble, ...(read.more ?? []));
}

/** The job with this shelf in place of its own; what it left out of the old one is forgotten. */
export function withShelfReplaced(job: Job, shelf: Shelf): Job {
  const { without: _, ...way } = job.way ?? {};
  return { ...job, shelf: shelfFile(shelf), ...(job.way === undefined ? {} : { way }) };
}
