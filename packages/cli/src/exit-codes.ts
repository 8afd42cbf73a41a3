/** What the process ends with; other programs go by these. */
export const EXIT = {
  /** A whole plan; or: the plan holds, the section can be used. */
  whole: 0,
  /** Something stays uncut; or: a plan does not hold. */
  partly: 1,
  refused: 2,
  notWritten: 3,
  /** The program's own fault, beside the fixed codes so that nobody takes it for a refusal (EX_SOFTWARE of sysexits). */
  programFault: 70,
  interrupted: 130,
} as const;
