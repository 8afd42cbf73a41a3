/** Pieces marked along real sticks. */

export { corniceRun } from "./cornice-run.ts";
export { COMMON_LENGTHS_ALLOWANCES, LENGTHS_SEARCH } from "./defaults.ts";
export { shareOut } from "./share-out.ts";
export * from "./types.ts";
