import fc from "fast-check";
import { expect, test } from "vitest";
import { ringFromVertices } from "../curve/index.ts";
import type { Plan } from "../cutting/index.ts";
import { buildSection, type PartSpec } from "../section/index.ts";
import type { KeepSquare } from "./edges-to-keep.ts";
import { planOf } from "./testing/benches.ts";
import { sideOf } from "./testing/edges.ts";
import { hollow, rebate, round, SNIPE_BILLS, shelfOf } from "./testing/shelves.ts";

fc.configureGlobal({ seed: 20261127 });

const SHELF = shelfOf(hollow(6.35), round(6.35), ...SNIPE_BILLS, rebate(6), rebate(12), rebate(32));
const PLANS = 8;
const WIDTH_MM = 50;

const part: fc.Arbitrary<PartSpec> = fc.oneof(
  fc.record({ kind: fc.constant("fillet" as const), widthMm: fc.integer({ min: 2, max: 10 }) }),
  fc.record({ kind: fc.constant("step" as const), riseMm: fc.constantFrom(-3, -1, 1, 3) }),
  fc.constantFrom<PartSpec>(
    { kind: "ovolo", acrossMm: 6.35, riseMm: -6.35 },
    { kind: "ovolo", acrossMm: 6.35, riseMm: 6.35 },
    { kind: "cavetto", acrossMm: 6.35, riseMm: -6.35 },
    { kind: "bevel", acrossMm: 5, riseMm: -3 },
    { kind: "low bead", widthMm: 6.35 },
  ),
);

const sections = fc
  .array(part, { minLength: 1, maxLength: 4 })
  .filter(([first]) => first?.kind !== "step")
  .map((parts) =>
    buildSection({
      name: "made up",
      stick: { widthMm: WIDTH_MM, thicknessMm: 30 },
      startHeightMm: 22,
      parts: [...parts, { kind: "fillet", widthMm: "rest" }],
    }),
  );

/** What the plan says of the edge, held against its own cuts, lines and fences. */
function isTrue(plan: Plan, edge: "gauge edge" | "far edge"): void {
  const x = edge === "gauge edge" ? 0 : WIDTH_MM;
  const words = plan.warnings.find((one) => one.startsWith(`The ${edge} `)) ?? "";
  const wholeMm = sideOf(ringFromVertices(plan.stick), x);
  const standsMm = ({ after }: Plan["cuts"][number]) =>
    after.reduce((sum, ring) => sum + sideOf(ringFromVertices(ring), x), 0);
  const first = plan.cuts.find((cut) => standsMm(cut) < wholeMm - 0.06)?.number;
  if (first === undefined) {
    expect(words).toBe(`The ${edge} stays square and untouched to the end.`);
    return;
  }
  expect(words).toContain(`cut ${first}, which takes `);
  const later = plan.cuts
    .filter(
      ({ number, runsAgainst }) =>
        number > first &&
        (runsAgainst === edge || plan.marks.some((mark) => mark.before === number && mark.from === edge)),
    )
    .map(({ number }) => number);
  // No line from the edge and no fence on it comes after, or the plan names the cuts and says why.
  if (later.length === 0) expect(words).toContain("Nothing is measured from it and no fence runs on it");
  else expect(words).toMatch(/could not be kept untouched .*: if cut|After that only its own part is worked/);
  for (const number of words.includes("only its own part") ? later : []) {
    expect(words).toMatch(new RegExp(`\\b${number}\\b`));
  }
}

test("no cut before the last line from a kept edge touches it, or the plan says why", () => {
  const edges = fc.constantFrom<KeepSquare>("gauge", "far", "both");
  fc.assert(
    fc.property(sections, edges, (built, keepSquare) => {
      fc.pre(built.ok);
      if (!built.ok) return;
      const plan = planOf(built.value, SHELF, { keepSquare });
      if (keepSquare !== "far") isTrue(plan, "gauge edge");
      if (keepSquare !== "gauge") isTrue(plan, "far edge");
    }),
    { numRuns: PLANS },
  );
});
