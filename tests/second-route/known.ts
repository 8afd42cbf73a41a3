/**
 * What the planner is known to get wrong, by the rule that finds it. Each stands as a case that fails in
 * tests/plans/found.test.ts or classical.test.ts until it is put right; then its line here goes.
 */
import type { Rule } from "./finding.ts";

export const KNOWN: Partial<Record<Rule, string>> = {
  mark: "where a curved sole's middle hangs over the wood, its line is put in the air, not where its axis meets the wood",
  unlisted: "what stands beside a place is told on the wrong stretch, or lower than it stands",
  "uncut said": "a wall or flat that is cut clean is told as uncut for wood that stands across from it",
};
