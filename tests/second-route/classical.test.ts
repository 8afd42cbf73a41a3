import { describe, expect, test } from "vitest";
import {
  CAVETTO,
  type Case,
  CHECKED_CYMAS,
  CYMA_RECTA_45,
  FIVE_REEDS,
  LOW_BEAD_AND_COVE,
  planFileOf,
  QUARTER_OVOLO,
  sectionOf,
  shelfNamed,
} from "./classical.ts";
import type { CutJson, PlanJson } from "./plan-json.ts";
import { examine, type Finding } from "./recut-by-polygons.ts";

interface Expected {
  readonly section: Case;
  /** Most cuts that a maker would believe; common practice, no source. */
  readonly mostCuts?: number;
}

const CASES: readonly Expected[] = [
  { section: LOW_BEAD_AND_COVE, mostCuts: 8 },
  { section: FIVE_REEDS, mostCuts: 15 },
  { section: QUARTER_OVOLO, mostCuts: 4 },
  { section: CAVETTO, mostCuts: 6 },
  { section: CYMA_RECTA_45, mostCuts: 9 },
  ...CHECKED_CYMAS.map((section) => ({ section })),
];

const plans = new Map<string, PlanJson>();

function planOf(section: Case): PlanJson {
  const known = plans.get(section.name);
  if (known) return known;
  const plan = planFileOf({ section: sectionOf(section), shelf: shelfNamed(section.shelf) });
  plans.set(section.name, plan);
  return plan;
}

const findings = new Map<string, readonly Finding[]>();

function findingsOf(section: Case): readonly Finding[] {
  const known = findings.get(section.name);
  if (known) return known;
  const found = examine(planOf(section));
  findings.set(section.name, found);
  return found;
}

/** A groove: a flat plane's cut with new wall on both sides. */
const GROOVE_WALL_MM = 0.25;

function grooves(plan: PlanJson): readonly (readonly [number, number])[] {
  const isGroove = (cut: CutJson) =>
    ["rebate", "moving fillister", "plough"].includes(cut.plane.kind) &&
    Math.min(...cut.wall) > GROOVE_WALL_MM;
  return plan.cuts.filter(isGroove).flatMap((cut) =>
    (cut.runs ?? []).map((run) => {
      const xs = (cut.sole ?? []).map((v) => run[0][0] + v[0] * Math.cos((run[0][2] * Math.PI) / 180));
      return [Math.min(...xs), Math.max(...xs)] as const;
    }),
  );
}

describe.each(CASES)("$section.name", ({ section, mostCuts }) => {
  test("the second route finds nothing against it", () => {
    expect(findingsOf(section)).toEqual([]);
  });

  test("everything is cut", () => {
    expect(planOf(section).uncut).toEqual([]);
  });

  test("no batten has to be clamped on", () => {
    const battens = planOf(section).cuts.filter((cut) => cut.runsAgainst === "batten");
    expect(battens.map((cut) => cut.number)).toEqual([]);
  });

  test("no groove runs into another", () => {
    const all = [...grooves(planOf(section))].sort((a, b) => a[0] - b[0]);
    const overlapping = all.filter((groove, i) => i > 0 && groove[0] < all[i - 1][1] - 0.1);
    expect(overlapping).toEqual([]);
  });

  if (mostCuts !== undefined)
    test(`no more than ${mostCuts} cuts`, () => {
      expect(planOf(section).cuts.length).toBeLessThanOrEqual(mostCuts);
    });
});
