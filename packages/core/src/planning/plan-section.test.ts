import { describe, expect, test } from "vitest";
import type { Vertex } from "../curve/index.ts";
import { recutPlan } from "../cutting/index.ts";
import { LEAST_TOLERANCE_MM, type Outcome } from "../measure/index.ts";
import { readSvgSection, type Section } from "../section/index.ts";
import { CHART_CABINET } from "../section/testing/chart-cabinet.ts";
import { readShelf } from "../shelf/index.ts";
import { GOOD_HAND } from "./accuracy.ts";
import { planSection, planSteps } from "./plan-section.ts";
import { drawnSection, held, planOf, sectionOf } from "./testing/benches.ts";
import { hollow, rebate, shelfOf, smoother, WHOLE_SHELF } from "./testing/shelves.ts";

const STEP: readonly Vertex[] = [
  [0, 0],
  [40, 0],
  [40, 14],
  [30, 14],
  [30, 20],
  [0, 20],
];

describe.each(CHART_CABINET)("the chart cabinet's $name", (spec) => {
  const request = { section: sectionOf(spec), shelf: WHOLE_SHELF };
  const plan = held(planSection(request));

  test("holds when it is cut again from its file alone", () => {
    expect(recutPlan(plan).findings).toEqual([]);
  });

  test("the same request gives the same bytes", () => {
    expect(JSON.stringify(held(planSection(request)))).toBe(JSON.stringify(plan));
  });

  test("through its file and back it is the same plan, every number a number", () => {
    expect(JSON.parse(JSON.stringify(plan))).toEqual(plan);
    expect(JSON.stringify(plan)).not.toMatch(/NaN|Infinity|-0[,\]}]/);
  });
});

describe("a quick plan", () => {
  test("holds as any other, claims no more than the best found, and costs no less than the whole search's", () => {
    for (const spec of CHART_CABINET) {
      const request = { section: sectionOf(spec), shelf: WHOLE_SHELF };
      const quick = held(planSection({ ...request, quick: true }));
      expect(recutPlan(quick).findings).toEqual([]);
      expect(quick.standing).toBe("best found");
      expect(quick.cuts.length).toBeGreaterThanOrEqual(held(planSection(request)).cuts.length);
    }
  });
});

describe("a plan of one step", () => {
  const plan = planOf(drawnSection(40, 20, STEP), shelfOf(rebate(12)));

  test("one cut at the wall, guided by the far edge, that takes 10 × 6 mm", () => {
    expect(plan.cuts).toHaveLength(1);
    const [cut] = plan.cuts;
    expect(cut?.runs).toEqual([[[36, 14, 0]]]);
    expect(cut?.runsAgainst).toBe("far edge");
    expect(cut?.fence).toBe(10);
    expect(cut?.takes).toBeCloseTo(60, 4);
    expect(cut?.wall).toEqual([6, 0]);
    // 3 to set, 1.4 of strokes, 0.42 on the test piece, and 27.3 m of 200 to the next sharpening of 10 minutes.
    expect([cut?.setting, cut?.passes, cut?.shaving, cut?.minutes]).toEqual([1, 21, 0.3, 6.2]);
    expect(plan.ways[0]).toMatchObject({ cuts: 1, settings: 1, minutes: 6.2, uncut: 0 });
    expect(plan.time).toMatchObject({ totalMinutes: 6.2, settingMinutes: 3, strokeMinutes: 1.4 });
    expect(plan.gaugeEdge).toBe("left");
    expect(plan.uncut).toEqual([]);
  });

  test("its floor and its wall are both made by it, and meet the drawing exactly", () => {
    expect(plan.parts.map((part) => [part.kind, part.madeBy])).toEqual([
      ["fillet", [1]],
      ["wall", [1]],
    ]);
    expect(plan.finish).toMatchObject({ proud: 0, under: 0, rms: 0 });
    // Where floor and wall meet there is a right angle and no gap.
    const foot = plan.finish.joins.find((join) => join.at[0] === 30 && join.at[1] === 14);
    expect(foot?.gap).toBe(0);
    expect(Math.abs(foot?.angle ?? 0)).toBeCloseTo(90, 1);
  });
});

describe("what a request may ask", () => {
  test("the steps of planning hand control back, counting up, before the plan comes", () => {
    const steps = planSteps({ section: drawnSection(40, 20, STEP), shelf: shelfOf(rebate(12)) });
    const done: number[] = [];
    let step = steps.next();
    while (!step.done) {
      done.push(step.value.done);
      expect(step.value.of).toBeGreaterThan(step.value.done);
      expect(step.value.says).not.toBe("");
      step = steps.next();
    }
    expect(done.length).toBeGreaterThan(3);
    for (let i = 1; i < done.length; i++) expect(done[i]).toBeGreaterThanOrEqual(done[i - 1] as number);
    expect(step.value.ok).toBe(true);
  });

  test("a name of its own, else the section's", () => {
    expect(planOf(drawnSection(40, 20, STEP), shelfOf(rebate(12))).name).toBe("drawn");
    expect(planOf(drawnSection(40, 20, STEP), shelfOf(rebate(12)), { name: "sill" }).name).toBe("sill");
  });

  test("the maker's own shavings and pace go into strokes, minutes and what is assumed", () => {
    const plan = planOf(drawnSection(40, 20, STEP), shelfOf(rebate(12)), {
      shavings: { heavyMm: 0.5, ordinaryMm: 0.2, lastMm: 0.1 },
      working: { setMinutes: 2, secondsPerMetre: 6, lengthM: 1, testPieceM: 0, sharpenMinutes: 0 },
    });
    // 6 mm in shavings of half a millimetre: 12 strokes and a fine one, 6 s each: 2 + 1.3 minutes.
    expect(plan.cuts[0]).toMatchObject({ passes: 13, shaving: 0.5, minutes: 3.3 });
    expect(plan.assumed.join(" ")).toContain("0.5\u00a0mm");
    expect(plan.time?.reckonedWith).toMatchObject({ setMinutes: 2, testPieceM: 0 });
  });

  test("a plan for inches says in inches what it takes as given", () => {
    const section = drawnSection(40, 20, STEP);
    const plan = planOf(section, shelfOf(rebate(12)), { unit: "in", hand: { ...GOOD_HAND, gaugeMm: 0.254 } });
    const assumed = plan.assumed.join(" ");
    expect(assumed).toContain("Shavings of 12\u00a0thou for waste and 6\u00a0thou for shaping.");
    expect(assumed).toContain("gauge set within 10\u00a0thou");
    expect(assumed).not.toMatch(/mm\b/);
  });

  test("a finer rule is told in sixty-fourths", () => {
    const section = drawnSection(40, 20, STEP);
    const says = (inchStep: 32 | 64) =>
      planOf(section, shelfOf(rebate(12)), { unit: "in", inchStep }).cuts[0]?.says ?? "";
    // The step is 6 mm deep: 7.56 thirty-seconds, 15.12 sixty-fourths.
    expect(says(32)).toContain("¼″ light deep");
    expect(says(64)).toContain("¹⁵⁄₆₄″ deep");
  });
});

describe("one drawing in inches and in millimetres", () => {
  const svg = (unit: string, scale: number) => {
    const points = (
      [
        [0, 0],
        [2, 0],
        [2, 0.5],
        [1.5, 0.5],
      ] as const
    ).map(([x, y]) => `${x * scale} ${y * scale}`);
    const size = `width="${2 * scale}${unit}" height="${scale}${unit}" viewBox="0 0 ${2 * scale} ${scale}"`;
    const r = 0.5 * scale;
    // y runs down in the drawing: the stick's face is at 0, a quarter ovolo of half an inch falls to the right.
    const path = `M 0 ${scale} L ${points[1]?.replace(/ 0$/, ` ${scale}`)} L ${points[2]} L ${points[3]} A ${r} ${r} 0 0 0 ${scale} 0 L 0 0 Z`;
    return `<svg xmlns="http://www.w3.org/2000/svg" ${size}><path id="section" d="${path}"/></svg>`;
  };
  const shelf = (unit: string, scale: number) => ({
    format: "mouldwright/shelf",
    version: 1,
    unit,
    planes: [
      { id: "hollow", kind: "hollow", radius: 0.5 * scale, width: 0.5 * scale },
      { id: "rebate", kind: "rebate", width: 0.75 * scale },
    ],
  });

  test("give plans that agree to a millionth of a millimetre", () => {
    const [inches, millimetres] = (
      [
        ["in", 1],
        ["mm", 25.4],
      ] as const
    ).map(([unit, scale]) =>
      planOf(
        held(readSvgSection(svg(unit, scale), { name: "corner" })),
        held(readShelf(shelf(unit, scale)) as Outcome<never>),
      ),
    );
    expect(inches?.cuts.length).toBeGreaterThan(1);
    expect(inches?.uncut).toEqual([]);
    expect(flatNumbers(inches)).toHaveLength(flatNumbers(millimetres).length);
    flatNumbers(inches).forEach((value, i) => {
      expect(Math.abs(value - (flatNumbers(millimetres)[i] as number))).toBeLessThanOrEqual(1e-6);
    });
  });
});

/** Every number of a plan's cuts and marks, in order. */
function flatNumbers(plan: unknown): number[] {
  if (typeof plan === "number") return [plan];
  if (typeof plan !== "object" || plan === null) return [];
  return Object.entries(plan).flatMap(([key, value]) => (key === "shelf" ? [] : flatNumbers(value)));
}

describe("requests that cannot be planned are refused, none throws", () => {
  const codeOf = (section: Section, more: Partial<Parameters<typeof planSection>[0]> = {}) => {
    const outcome = planSection({ section, shelf: shelfOf(rebate(12)), ...more });
    return outcome.ok ? "planned" : outcome.trouble.code;
  };
  const step = drawnSection(40, 20, STEP);

  test("an empty shelf", () => {
    expect(codeOf(step, { shelf: shelfOf() })).toBe("shelf-empty");
  });

  test("a section that is the stick", () => {
    const whole = drawnSection(40, 20, [
      [0, 0],
      [40, 0],
      [40, 20],
      [0, 20],
    ]);
    expect(codeOf(whole)).toBe("section-nothing-to-cut");
  });

  test.each([0.0199, 0, -1, Number.NaN])("a tolerance of %d mm", (toleranceMm) => {
    expect(codeOf(step, { toleranceMm })).toBe("plan-tolerance-too-small");
  });

  test.each([LEAST_TOLERANCE_MM, 0.2, 1, 50])("a tolerance of %d mm is planned", (toleranceMm) => {
    expect(codeOf(step, { toleranceMm })).toBe("planned");
  });
});

describe("odd but lawful requests give a plan that holds", () => {
  const cases: readonly (readonly [string, Section])[] = [
    [
      "one bevel across the whole stick",
      drawnSection(40, 20, [
        [0, 0],
        [40, 0],
        [0, 20],
      ]),
    ],
    [
      "a sliver along the back",
      drawnSection(40, 20, [
        [0, 0],
        [40, 0],
        [40, 0.5],
        [0, 0.5],
      ]),
    ],
  ];

  test.each(cases)("%s", (_name, section) => {
    for (const shelf of [shelfOf(smoother(50)), shelfOf(hollow(12.7)), WHOLE_SHELF]) {
      const plan = planOf(section, shelf);
      expect(recutPlan(plan).findings).toEqual([]);
      expect(JSON.stringify(plan)).not.toMatch(/NaN|Infinity/);
    }
  });

  // At both ends and in its middle the arc lies on the stick, and nowhere else.
  test("a half-round nosing that fills its stick, its crown just touching the face", () => {
    const nosing = drawnSection(20, 10, [
      [0, 0],
      [20, 0, 1],
    ]);
    // The crown is worked, not taken for the stick's own side; what no plane can do of it is listed.
    const plan = planOf(nosing, WHOLE_SHELF);
    expect(plan.parts.length).toBeGreaterThan(0);
    expect(plan.cuts.length + plan.uncut.length).toBeGreaterThan(0);
    expect(recutPlan(plan).findings).toEqual([]);
  });

  test("a face lowered by 0.05 mm, with no plane to lower it", () => {
    const lowered = drawnSection(40, 20, [
      [0, 0],
      [40, 0],
      [40, 19.95],
      [0, 19.95],
    ]);
    expect(recutPlan(planOf(lowered, shelfOf(hollow(12.7)))).findings).toEqual([]);
  });

  test("a section that touches no side of its stick, with a smoother alone", () => {
    const inside = drawnSection(40, 20, [
      [10, 5],
      [30, 5],
      [30, 15],
      [10, 15],
    ]);
    expect(recutPlan(planOf(inside, shelfOf(smoother(50)))).findings).toEqual([]);
  });
});
