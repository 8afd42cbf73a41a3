/**
 * The one place where a number is rounded to a step, and where the rule for ties stands: a value half-way between
 * two steps goes to the even one.
 * Source: IS 2-1960, rules 1 and 2 (NIST SP 811 and Handbook 44 say the same, from memory).
 */

/**
 * The whole number of steps nearest to `steps`; never -0.
 *
 * Values that come within `tieSlackSteps` of half-way count as ties: 1/32 in is 0.79375 mm, which no floating-point
 * number holds exactly, and it must not depend on its last bit where it goes.
 */
export function roundToEven(steps: number, tieSlackSteps: number): number {
  const below = Math.floor(steps);
  const rest = steps - below;
  const isTie = Math.abs(rest - 0.5) <= tieSlackSteps;
  const rounded = isTie ? below + Math.abs(below % 2) : rest < 0.5 ? below : below + 1;
  return rounded === 0 ? 0 : rounded;
}
