/** Every job of the store in one file, each as its own job file inside, letter for letter; what cannot be read here too. */
import { strToU8, zipSync } from "fflate";
import { fileNameOf, saveFile } from "../../keeping/files.ts";
import { useKeeping } from "../../keeping/kept-jobs.ts";
import { type KeptJob, nameOf } from "../../keeping/record.ts";

export function saveAllJobs(): void {
  const jobs = useKeeping.getState().jobs.filter(({ deletedAtMs }) => deletedAtMs === undefined);
  const day = new Date().toISOString().slice(0, 10);
  saveFile(`mouldwright jobs ${day}.zip`, zipOf(jobs), "application/zip");
}

/** The packed file; jobs of one name get numbers. */
export function zipOf(jobs: readonly KeptJob[]): Uint8Array<ArrayBuffer> {
  const files: Record<string, Uint8Array> = {};
  for (const kept of jobs) {
    const name = nameOf(kept);
    let fileName = fileNameOf(name, "json");
    for (let number = 2; Object.hasOwn(files, fileName); number += 1) {
      fileName = fileNameOf(`${name.slice(0, 70)} ${number}`, "json");
    }
    files[fileName] = strToU8(kept.text);
  }
  return new Uint8Array(zipSync(files));
}
