/**
 * What committed plans still hold that no woodworker would believe. Each stands as a test that fails until it is put
 * right; then its rule here goes.
 */
import type { BelievedRule } from "./rules.ts";

export const STILL_UNBELIEVED: Readonly<Record<string, readonly BelievedRule[]>> = {
  "gallery/architrave": ["overlapping grooves"],
  "gallery/attic-base": ["overlapping grooves"],
  "gallery/cornice-sixteen": ["overlapping grooves"],
  "gallery/cornice-ten": ["overlapping grooves"],
  "gallery/cornice-fourteen": ["overlapping grooves"],
};
