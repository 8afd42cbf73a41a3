/** The second route has to be able to find fault: a plan that holds is spoiled in one way, and that is what is found. */
import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { LOW_BEAD_AND_COVE, planFileOf, sectionOf, shelfNamed } from "./classical.ts";
import type { CutJson, MarkJson, PlanJson, PoseXyt } from "./plan-json.ts";
import { examine, type Rule } from "./recut-by-polygons.ts";

const good = planFileOf({ section: sectionOf(LOW_BEAD_AND_COVE), shelf: shelfNamed("small") });

const numberOf = (is: (cut: CutJson) => boolean): number => {
  const found = good.cuts.find(is);
  if (found === undefined) throw new Error("the plan has no such cut any more");
  return found.number;
};
const HOLLOW = numberOf((cut) => cut.plane.kind === "hollow");
const ROUND = numberOf((cut) => cut.plane.kind === "round");
const FIRST_CURVE = Math.min(HOLLOW, ROUND);
const SNIPE = numberOf((cut) => cut.plane.kind === "snipe bill");

function withCut(number: number, change: (cut: CutJson) => Partial<CutJson>): PlanJson {
  return {
    ...good,
    cuts: good.cuts.map((cut) => (cut.number === number ? { ...cut, ...change(cut) } : cut)),
  };
}

function withPoses(number: number, change: (pose: PoseXyt, i: number) => PoseXyt): PlanJson {
  return withCut(number, (cut) => ({ runs: (cut.runs ?? []).map((run) => run.map(change)) }));
}

function withMark(change: (mark: MarkJson) => Partial<MarkJson>): PlanJson {
  return { ...good, marks: good.marks.map((mark, i) => (i === 0 ? { ...mark, ...change(mark) } : mark)) };
}

function rulesFound(plan: PlanJson): readonly Rule[] {
  return [...new Set(examine(plan).map(({ rule }) => rule))];
}

function ruleOfCut(plan: PlanJson, number: number): readonly Rule[] {
  return [...new Set(examine(plan).flatMap(({ rule, cut }) => (cut === number ? [rule] : [])))];
}

test("the plan that is spoiled below holds", () => {
  expect(examine(good)).toEqual([]);
});

test("a pose moved 0.3 mm down overcuts and takes more than it says", () => {
  const plan = withPoses(HOLLOW, ([x, y, t]) => [x, y - 0.3, t]);
  expect(ruleOfCut(plan, HOLLOW)).toEqual(expect.arrayContaining(["overcut", "takes", "after"]));
});

test("a pose moved up leaves wood that nobody told", () => {
  const plan = withPoses(ROUND, ([x, y, t]) => [x, y + 0.4, t]);
  expect(rulesFound(plan)).toEqual(expect.arrayContaining(["takes", "unlisted"]));
});

test("a dropped cut leaves the next ones more to take and other wood", () => {
  const cuts = good.cuts
    .filter((cut) => cut.number !== FIRST_CURVE)
    .map((cut, i) => ({ ...cut, number: i + 1 }));
  expect(rulesFound({ ...good, cuts })).toEqual(expect.arrayContaining(["after", "unlisted"]));
});

test("a line cut dropped lets a wall stand beside the hollow", () => {
  const cuts = good.cuts.filter((cut) => cut.number !== SNIPE).map((cut, i) => ({ ...cut, number: i + 1 }));
  expect(ruleOfCut({ ...good, cuts, marks: [] }, HOLLOW - 1)).toContain("wall");
});

test("takes that are off by 0.05 mm² are seen, by 0.01 are not", () => {
  expect(rulesFound(withCut(ROUND, ({ takes }) => ({ takes: takes + 0.05 })))).toEqual(["takes"]);
  expect(rulesFound(withCut(ROUND, ({ takes }) => ({ takes: takes + 0.01 })))).toEqual([]);
});

test("a plane held at 70° leans too far, and 60° is no fault of lean", () => {
  const leaning = (deg: number) => withPoses(SNIPE, ([x, y]) => [x, y, deg]);
  expect(ruleOfCut(leaning(70), SNIPE)).toContain("lean");
  expect(ruleOfCut(leaning(60), SNIPE)).not.toContain("lean");
});

test("the stick turned by 70° leans the plane as well", () => {
  expect(
    ruleOfCut(
      withCut(SNIPE, () => ({ cant: -70 })),
      SNIPE,
    ),
  ).toContain("lean");
});

test("a snipe bill without a line has nothing to run against", () => {
  expect(rulesFound(withCut(SNIPE, () => ({ runsAgainst: null })))).toEqual(["guide"]);
});

test.each(["line m99", "wall of cut 99", "wall of cut 1", "far edge", "the moon"])(
  "a snipe bill does not run against %s here",
  (runsAgainst) => {
    expect(rulesFound(withCut(SNIPE + 1, () => ({ runsAgainst })))).toEqual(["guide"]);
  },
);

test("an edge cut down too far for a fence, one bevelled away, and one behind wood that no arms pass", () => {
  const rebate = { id: "r", kind: "rebate", width: 30, name: "r" };
  const flat = (width: number) => [
    [-width / 2, 0],
    [width / 2, 0],
  ];
  const on = (stick: readonly (readonly [number, number])[], more: object): PlanJson => ({
    ...good,
    marks: [],
    stick: stick as PlanJson["stick"],
    cuts: [{ ...good.cuts[0], number: 1, cant: 0, runsAgainst: "far edge", ...more } as unknown as CutJson],
  });
  const says = (plan: PlanJson) =>
    examine(plan)
      .filter(({ rule, cut }) => rule === "guide" && cut === 1)
      .map((found) => found.says);
  const step = { plane: rebate, sole: flat(30), runs: [[[55, 28, 0]]] };
  const lowered = (toMm: number) =>
    on(
      [
        [0, 0],
        [60, 0],
        [60, toMm],
        [50, toMm],
        [50, 30],
        [0, 30],
      ],
      step,
    );
  expect(says(lowered(18.1))).toEqual([]);
  expect(says(lowered(17.9))).toEqual([expect.stringContaining("below the sole")]);
  expect(
    says(
      on(
        [
          [0, 0],
          [50, 0],
          [60, 30],
          [0, 30],
        ],
        step,
      ),
    ),
  ).toEqual([expect.stringContaining("upright")]);
  const plough = { id: "plough", kind: "plough", widths: [6], width: 6, fence: 100, depth: 20 };
  const groove = (floorMm: number) =>
    on(
      [
        [0, 0],
        [60, 0],
        [60, 30],
        [30, 30],
        [30, 12],
        [0, 12],
      ],
      {
        plane: plough,
        sole: flat(6),
        runs: [[[20, floorMm, 0]]],
      },
    );
  expect(says(groove(8.1))).toEqual([]);
  expect(says(groove(7.9))).toEqual([expect.stringContaining("arms")]);
});

test("a width after the first that is said to run along a wall which is not beside it", () => {
  const file = new URL("../../gallery/plans/cornice-sixteen/plan.json", import.meta.url);
  const plan = JSON.parse(readFileSync(file, "utf8")) as PlanJson;
  const second = /the second along the wall of cut (\d+)/;
  const cut = plan.cuts.find(({ says }) => second.test(says));
  if (!cut) throw new Error("the plan has no such cut any more");
  const foundWith = (says: string) =>
    examine({ ...plan, cuts: plan.cuts.map((one) => (one === cut ? { ...cut, says } : one)) }).filter(
      (finding) => finding.rule === "guide" && finding.cut === cut.number,
    );
  expect(foundWith(cut.says)).toEqual([]);
  for (const [words, fault] of [
    ["the third along the wall of cut $1", "third width"],
    ["the ninth along the wall of cut $1", "no ninth width"],
    ["the second along the wall of cut 1", "that cut 1 left"],
    [`the second along the wall of cut ${cut.number}`, "not been made yet"],
  ] as const) {
    const says = expect.stringContaining(fault);
    expect(foundWith(cut.says.replace(second, words))).toEqual([{ rule: "guide", cut: cut.number, says }]);
  }
});

test("a round with neither seat nor guide, and a seat told where there is none", () => {
  expect(rulesFound(withCut(ROUND, () => ({ seat: null })))).toEqual(["guide"]);
  // The hollow comes before its second line: it has one arris only, and slides.
  const lines = good.cuts.filter((cut) => cut.plane.kind === "snipe bill" && cut.number < HOLLOW);
  const secondLine = Math.max(...lines.map((cut) => cut.number));
  const hollow = good.cuts.filter((cut) => cut.number === HOLLOW);
  const others = good.cuts.filter((cut) => cut.number !== HOLLOW);
  const cuts = [...others.slice(0, secondLine - 1), ...hollow, ...others.slice(secondLine - 1)];
  const plan = { ...good, marks: [], cuts: cuts.map((cut, i) => ({ ...cut, number: i + 1 })) };
  expect(ruleOfCut(plan, secondLine)).toContain("wall");
});

test("a lift told wrong", () => {
  const plan = withCut(ROUND, ({ seat }) => ({ seat: { lift: (seat?.lift ?? 0) + 0.1, shift: 0 } }));
  expect(rulesFound(plan)).toEqual(["seat said"]);
});

test("a seat on a bare flat: a round set on the stick's face wanders", () => {
  const round = good.cuts.find((cut) => cut.number === ROUND) as CutJson;
  const plan = { ...good, marks: [], cuts: [{ ...round, number: 1 }] };
  expect(ruleOfCut(plan, 1)).toContain("seat");
});

test("poses too far apart", () => {
  const plan = withCut(ROUND, ({ runs = [] }) => ({ runs: runs.map((run) => [run[0], ...run.slice(2)]) }));
  expect(rulesFound(plan)).toContain("poses");
});

test("a wall told wrong", () => {
  expect(rulesFound(withCut(HOLLOW, () => ({ wall: [0, 0] })))).toEqual(["wall said"]);
});

test("a snipe bill sunk deeper than its beak reaches", () => {
  const plan = withPoses(SNIPE, ([x, y, t]) => [x, y - 4.5, t]);
  expect(ruleOfCut(plan, SNIPE)).toEqual(expect.arrayContaining(["wall", "overcut"]));
});

test("a sole that is not the plane's", () => {
  const plan = withCut(HOLLOW, ({ sole = [] }) => ({
    sole: sole.map(([x, y, b]) => (b === undefined ? [x, y] : [x, y, b * 1.02])),
  }));
  expect(rulesFound(plan)).toContain("sole");
  expect(rulesFound(withCut(HOLLOW, ({ plane }) => ({ plane: { ...plane, radius: 9 } })))).toContain("sole");
});

test("a sole run into the bench", () => {
  const plan = withPoses(SNIPE, ([x, , t]) => [x, -1, t]);
  expect(ruleOfCut(plan, SNIPE)).toContain("bench");
});

test("a body wider than its sole that runs into the wood beside it", () => {
  // Wood stands to the face's level on both sides of the bead; the body begins lower than that.
  const wide = withCut(HOLLOW, ({ plane }) => ({
    plane: { ...plane, shoulder: { width: 14, height: 0.5 } },
  }));
  expect(ruleOfCut(wide, HOLLOW)).toContain("body");
});

test("a saw cut is fine to part a piece off, a plane is not", () => {
  // A slot right through the stick from its face: two snipe bills' widths of wood stand loose on its right.
  const plough = { id: "plough", kind: "plough", widths: [3], width: 3, fence: 100, depth: 20 };
  const cut = {
    ...good.cuts[0],
    number: 1,
    plane: plough,
    sole: [
      [-1.5, 0],
      [1.5, 0],
    ],
    runs: [[[37, 0, 0]]],
  } as unknown as CutJson;
  expect(ruleOfCut({ ...good, marks: [], cuts: [cut] }, 1)).toContain("loose wood");
});

test("a mark off the wood, a distance told wrong, a cut that is not there", () => {
  expect(rulesFound(withMark(({ at }) => ({ at: [at[0], at[1] - 0.1] })))).toEqual(["mark"]);
  expect(rulesFound(withMark(({ distance }) => ({ distance: distance + 0.01 })))).toEqual(["mark"]);
  expect(rulesFound(withMark(({ fromGaugeEdge }) => ({ fromGaugeEdge: fromGaugeEdge + 0.01 })))).toEqual([
    "mark",
  ]);
  expect(rulesFound(withMark(() => ({ before: 40 })))).toContain("mark");
  expect(rulesFound(withMark(() => ({ from: "foot of cut 1" })))).toEqual(["mark"]);
});

test("a planned face off the drawing, a finish told wrong, an uncut place that is cut", () => {
  const bent = good.planned.map(
    ([x, y, b]) => (b === undefined ? [x, y] : [x, y, b * 1.15]) as [number, number],
  );
  expect(rulesFound({ ...good, planned: bent })).toContain("planned");
  expect(rulesFound({ ...good, finish: { ...good.finish, under: 0.15 } })).toEqual(["finish said"]);
  const uncut = { from: [6, 17] as const, to: [12, 18] as const, left: 0.8, rule: "wall", why: "", try: "" };
  expect(rulesFound({ ...good, uncut: [uncut] })).toEqual(["uncut said"]);
});

test("what is left is told, but another place stands", () => {
  const uncut = { from: [0, 18] as const, to: [2, 18] as const, left: 0.8, rule: "wall", why: "", try: "" };
  const cuts = good.cuts.slice(0, FIRST_CURVE - 1);
  expect(rulesFound({ ...good, cuts, uncut: [uncut] })).toContain("unlisted");
});

test("keys that are missing and numbers that are none", () => {
  expect(rulesFound(withCut(1, () => ({ takes: Number.NaN })))).toEqual(["file"]);
  const { uncut: _, ...rest } = good;
  expect(examine(rest)[0]?.rule).toBe("file");
  expect(examine(null)[0]?.rule).toBe("file");
});
