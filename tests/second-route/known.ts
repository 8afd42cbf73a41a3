/**
 * What the planner is known to get wrong, by the rule that finds it. Each stands as a case that fails in
 * tests/plans/found.test.ts or classical.test.ts until it is put right; then its line here goes.
 */
import type { Rule } from "./finding.ts";

export const KNOWN: Partial<Record<Rule, string>> = {
  mark: "where a curved sole's middle hangs over the wood, its line is put in the air, not where its axis meets the wood",
  "finish said":
    "beside wood left uncut the two routes part its slope differently into what is proud and what is uncut",
};
