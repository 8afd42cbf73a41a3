/** Pieces marked along real sticks. */
export { COMMON_LENGTHS_ALLOWANCES, LENGTHS_SEARCH } from "./defaults.ts";
export { shareOut } from "./share-out.ts";
export * from "./types.ts";
