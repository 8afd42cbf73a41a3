import type { Job } from "mouldwright/job";

/** The chart cabinet's plinth in short: enough of a job to be kept. */
export function plinth(change: Partial<Job> = {}): Job {
  return {
    format: "mouldwright/job",
    version: 1,
    name: "Chart cabinet: plinth",
    section: {
      parts: [
        { kind: "fillet", widthMm: 8 },
        { kind: "ovolo", acrossMm: 12, riseMm: -12 },
        { kind: "fillet", widthMm: "rest" },
      ],
    },
    stick: { widthMm: 40, thicknessMm: 22 },
    ...change,
  };
}
