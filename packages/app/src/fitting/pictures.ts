/** How pictures of fitting are drawn for the screen: alone, as wide as there is room. */
import type { Job } from "mouldwright/job";
import type { FitPictureOptions } from "mouldwright/sheets";

export function pictureOptions(job: Job, widthMm: number): FitPictureOptions {
  return { unit: job.unit ?? "mm", page: { widthMm, shows: "pictures" } };
}
