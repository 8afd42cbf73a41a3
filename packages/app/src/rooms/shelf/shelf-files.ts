/** A shelf as a file: written as the core writes it, read as the core reads it. */
import type { Job } from "mouldwright/job";
import { type Outcome, refused } from "mouldwright/measure";
import { readShelf, type Shelf, shelfFile } from "mouldwright/shelf";

export const SHELF_FILE_NAME = "shelf.json";

export function shelfText(shelf: Shelf): string {
  return `${JSON.stringify(shelfFile(shelf), null, 2)}\n`;
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

/** Hands a text to the browser as a file to keep. */
export function saveText(name: string, text: string): void {
  const address = URL.createObjectURL(new Blob([text], { type: "application/json" }));
  const link = document.createElement("a");
  link.href = address;
  link.download = name;
  link.click();
  // The browser has taken the text by the next turn.
  setTimeout(() => URL.revokeObjectURL(address), 0);
}
