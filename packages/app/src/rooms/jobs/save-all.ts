/** Every job of the store in one file, each as its own job file inside, letter for letter; what cannot be read here too. */
import { fileNameOf, saveFile } from "../../keeping/files.ts";
import { allSaved } from "../../keeping/job-actions.ts";
import { tell, useKeeping } from "../../keeping/kept-jobs.ts";
import { type PlainFile, pack } from "../../keeping/packed-files.ts";
import { type KeptJob, nameOf } from "../../keeping/record.ts";

/** Saves them, after what is being written is in the store. Says how many there are, or which did not come through whole. */
export async function saveAllJobs(): Promise<void> {
  await allSaved();
  const jobs = useKeeping.getState().jobs.filter(({ deletedAtMs }) => deletedAtMs === undefined);
  const packed = pack(filesOf(jobs));
  if (!packed.ok) {
    tell({ kind: "not all saved", names: packed.lost });
    return;
  }
  const fileName = `mouldwright jobs ${new Date().toISOString().slice(0, 10)}.zip`;
  saveFile(fileName, packed.bytes, "application/zip");
  tell({ kind: "all saved", count: jobs.length, fileName });
}

/** A file for each job; jobs of one name get numbers. */
export function filesOf(jobs: readonly KeptJob[]): readonly PlainFile[] {
  const files = new Map<string, string>();
  // Some systems take names apart from their capitals alone for one.
  const taken = new Set<string>();
  for (const kept of jobs) {
    const name = nameOf(kept);
    let fileName = fileNameOf(name, "json");
    for (let number = 2; taken.has(fileName.toLowerCase()); number += 1) {
      fileName = fileNameOf(`${name.slice(0, 70)} ${number}`, "json");
    }
    taken.add(fileName.toLowerCase());
    files.set(fileName, kept.text);
  }
  return [...files].map(([name, text]) => ({ name, text }));
}
