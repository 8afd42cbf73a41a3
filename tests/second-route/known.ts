/**
 * What the planner is known to get wrong, by the rule that finds it. Each stands as a case that fails in
 * tests/plans/found.test.ts or classical.test.ts until it is put right; then its line here goes.
 */
import type { Rule } from "./finding.ts";

export const KNOWN: Partial<Record<Rule, string>> = {};
