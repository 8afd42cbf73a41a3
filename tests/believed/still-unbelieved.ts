/**
 * What committed plans still hold that no woodworker would believe. Each stands as a test that fails until it is put
 * right; then its rule here goes.
 */
import type { BelievedRule } from "./rules.ts";

export const STILL_UNBELIEVED: Readonly<Record<string, readonly BelievedRule[]>> = {};
