/** Why something could not be kept, and how that is said. */

export type Failure =
  | { readonly kind: "full" }
  /** What came back from the store is not what was put in. */
  | { readonly kind: "came back otherwise" }
  | { readonly kind: "no store"; readonly detail: string }
  | { readonly kind: "newer program" }
  | { readonly kind: "other"; readonly detail: string };

/** What an error of the database means. */
export function failureOf(error: unknown): Failure {
  if (error instanceof Error && error.name === "QuotaExceededError") return { kind: "full" };
  if (error instanceof Error && error.name === "InvalidStateError") {
    return { kind: "no store", detail: error.message };
  }
  return { kind: "other", detail: error instanceof Error ? error.message : String(error) };
}

/** What happened, and what to do; "save to a file" stands beside it. */
export function failureWords(failure: Failure): string {
  switch (failure.kind) {
    case "full":
      return "This browser has no more room for jobs. Save the job to a file, then make room: delete jobs you no longer need, or free space on this machine.";
    case "came back otherwise":
      return "What this browser kept is not what it was given. The job as it was saved before is still there. Save the job to a file and try again.";
    case "no store":
      return `This browser keeps nothing for this page (“${failure.detail}”): private windows and strict settings do that. Save the job to a file before you close the page.`;
    case "newer program":
      return "A newer version of Mouldwright keeps the jobs in this browser now. Save the job to a file, then load this page again to go on with the newer version.";
    case "other":
      return `This browser could not keep the job (“${failure.detail}”). Save it to a file, then try again.`;
  }
}
