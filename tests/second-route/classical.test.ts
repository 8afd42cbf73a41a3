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
import { examine, type Finding, type Rule } from "./recut-by-polygons.ts";

interface Expected {
  readonly section: Case;
  /** Most cuts that a maker would believe; common practice, no source. */
  readonly mostCuts?: number;
  /** What the planner is known to get wrong here: each a test that fails until it does not. */
  readonly known?: Partial<Record<Rule | "batten", string>>;
}

const DEPTH_INSIDE =
  "depth lines are set at a step's inner corner, inside the wood, not on the side they can be gauged on";

const cyma = (name: string): Case => {
  const found = CHECKED_CYMAS.find((section) => section.name === name);
  if (found === undefined) throw new Error(name);
  return found;
};

const CASES: readonly Expected[] = [
  { section: LOW_BEAD_AND_COVE, mostCuts: 8 },
  { section: FIVE_REEDS, mostCuts: 15 },
  { section: QUARTER_OVOLO, mostCuts: 4, known: { mark: DEPTH_INSIDE } },
  { section: CAVETTO, mostCuts: 6, known: { mark: DEPTH_INSIDE } },
  { section: CYMA_RECTA_45, mostCuts: 9, known: { mark: DEPTH_INSIDE } },
  { section: cyma("cyma recta, flat"), known: { mark: DEPTH_INSIDE } },
  { section: cyma("cyma recta, thick"), known: { mark: DEPTH_INSIDE } },
  {
    section: cyma("cyma reversa, flat"),
    known: { mark: DEPTH_INSIDE, batten: "the round finds no seat on the slope that is left for it" },
  },
  {
    section: cyma("cyma reversa, thick"),
    known: {
      mark: DEPTH_INSIDE,
      seat: "the resting place lies past the farthest allowed from the aim and is taken at the limit instead",
    },
  },
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

describe.each(CASES)("$section.name", ({ section, mostCuts, known = {} }) => {
  test("the second route finds nothing against it, known failures apart", () => {
    const found = findingsOf(section).filter(({ rule }) => !(rule in known));
    expect(found).toEqual([]);
  });

  for (const [rule, reason] of Object.entries(known)) {
    if (rule === "batten") continue;
    test.fails(`${rule}: ${reason}`, () => {
      expect(findingsOf(section).filter((finding) => finding.rule === rule)).toEqual([]);
    });
  }

  test("everything is cut", () => {
    expect(planOf(section).uncut).toEqual([]);
  });

  const noBatten = () => {
    const battens = planOf(section).cuts.filter((cut) => cut.runsAgainst === "batten");
    expect(battens.map((cut) => cut.number)).toEqual([]);
  };
  if (known.batten === undefined) test("no batten has to be clamped on", noBatten);
  else test.fails(`batten: ${known.batten}`, noBatten);

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
