/** A job as files: the job itself, or its section as a drawing. */
import { type Job, sectionOfJob, writeJob } from "mouldwright/job";
import type { Outcome } from "mouldwright/measure";
import { fine } from "mouldwright/measure";
import { writeDxfSection, writeSvgSection } from "mouldwright/section";
import { fileNameOf, saveFile } from "./files.ts";

export type JobFileKind = "job" | "svg" | "dxf";

export interface JobFile {
  readonly fileName: string;
  readonly text: string;
  readonly type: string;
}

/** The file's text; a drawing is refused where the parts make no section. */
export function jobFile(job: Job, kind: JobFileKind): Outcome<JobFile> {
  if (kind === "job") {
    return fine({ fileName: fileNameOf(job.name, "json"), text: writeJob(job), type: "application/json" });
  }
  const section = sectionOfJob(job);
  if (!section.ok) return section;
  return kind === "svg"
    ? fine({
        fileName: fileNameOf(job.name, "svg"),
        text: writeSvgSection(section.value, { unit: job.unit ?? "mm" }),
        type: "image/svg+xml",
      })
    : fine({
        fileName: fileNameOf(job.name, "dxf"),
        text: writeDxfSection(section.value),
        type: "application/dxf",
      });
}

export function saveJobFile(job: Job): void {
  const file = jobFile(job, "job");
  if (file.ok) saveFile(file.value.fileName, file.value.text, file.value.type);
}
