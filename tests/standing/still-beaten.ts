/**
 * Small plans that another order still beats, and what that order does better. Each is a test that is expected to
 * fail; once it holds, its line here goes.
 */
export const STILL_BEATEN: Readonly<Record<string, string>> = {
  "example cavetto": "the steps over the hollow fall elsewhere, so that the round rides well held",
  "example cyma-recta":
    "steps instead of the large chamfer, then the round before the hollow: no snipe line, no step beside it",
  "ovolo-small": "a third step by the plane in the hand instead of a chamfer by another",
  "ovolo-large": "the groove by the plough before its step: fewer changes of plane",
  "ovolo-flat": "the step with the plane that also takes the chamfer",
  "cavetto-small": "two steps instead of four: the round takes the rest without complaint",
  "cavetto-large": "the steps in the order of the planes",
  "cyma-recta-flat-small": "as the example's cyma recta",
  "cyma-reversa-flat": "steps before the chamfer, then the hollow before the round: no snipe line",
  "fielded-panel": "the groove and the rebate by one plane",
  "low-bead-on-bevel": "the same plane twice in a row",
  "half-round-between-fillets": "both snipe lines before the steps: the hollow then rides on their arrises",
};
