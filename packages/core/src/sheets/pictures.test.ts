import { readFileSync } from "node:fs";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Plan, PlanCut, PlanMark } from "../cutting/index.ts";
import { drawCut } from "./cut-picture.ts";
import { type Drawing, flatItems, type Item, type Text } from "./drawing.ts";
import { type Box, flatPoints } from "./flat-path.ts";
import { boxesOverlap, textBox } from "./labels.ts";
import { LEAST_LETTERING_MM } from "./lettering.ts";
import { drawSection } from "./section-picture.ts";
import { wasteExtent } from "./stick-end.ts";
import { viewOnBench } from "./stick-view.ts";
import { drawStrip } from "./strip.ts";
import { writeSvg } from "./write-svg.ts";

const GOLDEN = new URL("../../../../tests/golden/", import.meta.url);

function readPlan(name: string): Plan {
  return JSON.parse(readFileSync(new URL(`${name}.json`, GOLDEN), "utf8")) as Plan;
}

const BEAD = readPlan("low-bead-and-cove");
const PLINTH = readPlan("every-way-of-holding");

function textsOf(drawing: Drawing): readonly Text[] {
  return flatItems(drawing.items).filter((item): item is Text => item.kind === "text");
}

/** Every pair of texts that touch, and every one that leaves the page. */
function troublesOf(drawing: Drawing): readonly string[] {
  const boxed = textsOf(drawing).map((item) => ({ words: item.text, box: textBox(item) }));
  const outside = boxed.filter(({ box }) => !isOnPage(box, drawing)).map(({ words }) => `outside: ${words}`);
  const touching = boxed.flatMap((a, index) =>
    boxed
      .slice(index + 1)
      .filter((b) => boxesOverlap(a.box, b.box))
      .map((b) => `"${a.words}" touches "${b.words}"`),
  );
  return [...outside, ...touching];
}

function isOnPage(box: Box, drawing: Drawing): boolean {
  return box.minX >= 0 && box.minY >= 0 && box.maxX <= drawing.widthMm && box.maxY <= drawing.heightMm;
}

function everyPicture(plan: Plan, unit: "mm" | "in"): readonly Drawing[] {
  return [
    ...plan.cuts.map((cut) => drawCut(plan, cut.number, { unit })),
    drawStrip(plan, { unit }),
    drawSection(plan, { unit }),
  ];
}

function groupsOf(items: readonly Item[], role: string): readonly Item[] {
  return items.flatMap((item) => {
    if (item.kind !== "group") return [];
    return item.role === role ? [item] : groupsOf(item.items, role);
  });
}

describe("lettering on the pictures", () => {
  for (const plan of [BEAD, PLINTH]) {
    for (const unit of ["mm", "in"] as const) {
      test(`${plan.name}, ${unit}: no text touches another or leaves the page`, () => {
        expect(everyPicture(plan, unit).flatMap(troublesOf)).toEqual([]);
      });

      test(`${plan.name}, ${unit}: capitals are 2.5 mm or more (ISO 3098)`, () => {
        for (const item of everyPicture(plan, unit).flatMap(textsOf)) {
          expect(item.sizeMm).toBeGreaterThanOrEqual(LEAST_LETTERING_MM);
        }
        expect(LEAST_LETTERING_MM * 0.718).toBeGreaterThanOrEqual(2.5);
      });
    }
  }

  test("the check sees two texts on one another", () => {
    const drawing = drawCut(BEAD, 1, { unit: "mm" });
    const doubled: Drawing = { ...drawing, items: [...drawing.items, ...textsOf(drawing).slice(0, 1)] };
    expect(troublesOf(doubled)).toHaveLength(1);
  });

  test("crowded marks and long names: labels still keep apart", () => {
    const words = fc.stringMatching(/^[A-Za-z ,]{0,400}$/);
    const marks = fc.array(
      fc.record({
        x: fc.double({ min: 0, max: 60, noNaN: true }),
        distance: fc.double({ min: 0.1, max: 60, noNaN: true }),
        kind: fc.constantFrom("place", "depth", "end"),
        from: fc.constantFrom("gauge edge", "far edge", "foot of cut 1", "face", "wall of cut 2"),
      }),
      { maxLength: 6 },
    );
    fc.assert(
      fc.property(
        marks,
        words,
        words,
        fc.constantFrom<"mm" | "in">("mm", "in"),
        (drawn, name, says, unit) => {
          const plan: Plan = {
            ...PLINTH,
            name,
            marks: drawn.flatMap((mark, index): PlanMark[] => [
              {
                id: `m${index}`,
                before: 1 + (index % PLINTH.cuts.length),
                kind: mark.kind as PlanMark["kind"],
                at: [mark.x, 20],
                from: mark.from,
                distance: mark.distance,
                fromGaugeEdge: mark.x,
                error: 0.1,
              },
            ]),
            cuts: PLINTH.cuts.map((cut) => ({ ...cut, says, plane: { ...cut.plane, name } })),
          };
          for (const cut of plan.cuts) expect(troublesOf(drawCut(plan, cut.number, { unit }))).toEqual([]);
          expect(troublesOf(drawStrip(plan, { unit }))).toEqual([]);
        },
      ),
      { seed: 20261124, numRuns: 12 },
    );
  });
});

describe("one cut", () => {
  test("the stick stands on one bench line at one scale on every page", () => {
    const corners = BEAD.cuts.map((cut) => {
      const page = drawCut(BEAD, cut.number, { unit: "mm" }).items;
      const picture = page.filter((item) => item.kind === "group" && item.role !== "enlargement");
      const outline = groupsOf(picture, "outline").flatMap((item) =>
        item.kind === "group" ? flatItems(item.items) : [],
      );
      const points = outline.flatMap((item) => (item.kind === "stroke" ? flatPoints(item.path) : []));
      return [
        Math.min(...points.map((p) => p[0])),
        Math.max(...points.map((p) => p[0])),
        Math.max(...points.map((p) => p[1])),
      ];
    });
    for (const corner of corners) {
      corner.forEach((value, index) => {
        expect(value).toBeCloseTo(corners[0]?.[index] ?? Number.NaN, 9);
      });
    }
    // 42 mm at 2.5 : 1.
    expect((corners[0]?.[1] ?? 0) - (corners[0]?.[0] ?? 0)).toBeCloseTo(105, 9);
  });

  test("a rocked cut shows both leans and an arrow; a straight one neither", () => {
    const rocked = drawCut(BEAD, 6, { unit: "mm" });
    const words = textsOf(rocked).map((item) => item.text);
    expect(words).toContain("from upright");
    expect(words).toContain("to 8° left");
    expect(groupsOf(rocked.items, "plane, last pose")).toHaveLength(1);
    const straight = drawCut(BEAD, 3, { unit: "mm" });
    expect(textsOf(straight).map((item) => item.text)).toContain("upright");
    expect(groupsOf(straight.items, "plane, last pose")).toHaveLength(0);
  });

  test("a gauge line says its distance and where it is measured from", () => {
    const words = textsOf(drawCut(BEAD, 4, { unit: "mm" })).map((item) => item.text);
    expect(words).toContain("7.9\u00a0mm from the foot of cut 3");
    const inches = textsOf(drawCut(BEAD, 1, { unit: "in" })).map((item) => item.text);
    // 5 mm is 0.19685 in: 3/16 in full by 0.24 mm, just under a third of 1/32 in (0.265 mm).
    expect(inches).toContain("³⁄₁₆″ from the gauge edge");
  });

  test("a cut of about 1 mm is enlarged, one of 10 by 9 mm is not", () => {
    expect(groupsOf(drawCut(BEAD, 1, { unit: "mm" }).items, "enlargement")).toHaveLength(1);
    expect(groupsOf(drawCut(PLINTH, 6, { unit: "mm" }).items, "enlargement")).toHaveLength(0);
  });

  test("an enlargement stays in its circle", () => {
    const [close] = groupsOf(drawCut(BEAD, 2, { unit: "mm" }).items, "enlargement");
    const strokes = close?.kind === "group" ? flatItems(close.items) : [];
    for (const item of strokes) {
      if (item.kind === "text") continue;
      const paths = item.kind === "stroke" ? [item.path] : item.paths;
      for (const [x, y] of paths.flatMap(flatPoints)) {
        // A polygon of 72 sides stands out of its circle by a thousandth of the radius.
        expect(Math.hypot(x - 161, y - 65)).toBeLessThan(20.03);
      }
    }
  });

  test("the saw is said to a quarter of a degree", () => {
    // atan(8 / 14) = 29.74°.
    expect(textsOf(drawCut(PLINTH, 8, { unit: "mm" })).map((item) => item.text)).toContain(
      "blade 29¾° right",
    );
  });

  test("fence, batten and chamfer are named", () => {
    expect(textsOf(drawCut(PLINTH, 4, { unit: "mm" })).map((item) => item.text)).toContain(
      "fence 20\u00a0mm",
    );
    expect(textsOf(drawCut(PLINTH, 5, { unit: "mm" })).map((item) => item.text)).toContain("batten");
    expect(textsOf(drawCut(PLINTH, 3, { unit: "mm" })).map((item) => item.text)).toContain(
      "Chamfer between two lines",
    );
  });

  test("a cut that the plan does not hold is our own mistake", () => {
    expect(() => drawCut(BEAD, 7, { unit: "mm" })).toThrow("no such cut");
  });
});

describe("all cuts", () => {
  test("one card a cut, in order, each with number, plane and lean", () => {
    const words = textsOf(drawStrip(BEAD, { unit: "mm" })).map((item) => item.text);
    for (const expected of ["1", "6", "3/8 in hollow"]) expect(words).toContain(expected);
    // A lean too long for one line goes on in the next: how a cut is begun is never left out.
    for (const expected of ["begun upright, laid over to 20° right", "begun upright, laid over to 8° left"]) {
      expect(words.join(" ")).toContain(expected);
    }
    expect(groupsOf(drawStrip(BEAD, { unit: "mm" }).items, "card")).toHaveLength(6);
  });

  test("work too shallow to be seen on a card is shown once more, larger, with its scale", () => {
    const strip = drawStrip(BEAD, { unit: "mm" });
    // Two snipe lines 1 mm deep and the hollow's two thin corners; Vs and round are large enough.
    expect(groupsOf(strip.items, "enlargement")).toHaveLength(3);
    expect(textsOf(strip).filter((item) => item.text === "detail 5 : 1")).toHaveLength(3);
  });

  test("a plane so wide that it rises far over the stick runs over no words", () => {
    const cut = {
      ...BEAD.cuts[0],
      sole: [
        [-30, 0],
        [30, 0],
      ],
      runs: [[[25, 16, -45]]],
    } as unknown as PlanCut;
    const strip = drawStrip({ ...BEAD, cuts: [cut] }, { unit: "mm" });
    const plane = flatItems(strip.items).flatMap((item) =>
      item.kind === "stroke" && item.line === "long-dashed double-dotted" ? flatPoints(item.path) : [],
    );
    const lowestWords = Math.max(...textsOf(strip).map((item) => textBox(item).maxY));
    expect(plane.length).toBeGreaterThan(0);
    expect(Math.min(...plane.map(([, y]) => y))).toBeGreaterThan(lowestWords);
  });

  test("a shallow rebate is enlarged at the corner it leaves, not at the stick's own", () => {
    const rebate = {
      ...BEAD.cuts[0],
      after: [
        [
          [0, 0],
          [42, 0],
          [42, 18],
          [19, 18],
          [19, 17],
          [0, 17],
        ],
      ],
    };
    const plan: Plan = { ...BEAD, cuts: [rebate as unknown as PlanCut] };
    const view = viewOnBench(plan.stick, 0, 1, { centreX: 21, lineY: 100 });
    const waste = wasteExtent(plan, plan.cuts[0] as PlanCut, view, [0, -1]);
    expect(waste?.atWall.bottom[0]).toBeCloseTo(19, 1);
    expect(waste?.atWall.bottom[1]).toBeCloseTo(83, 6);
  });

  test.each([
    [[], "No cuts: the stick is the section already."],
    [readPlan("../../examples/impossible/plan").uncut, "the planes of the shelf do not get there"],
  ] as const)("a plan without cuts says so, and shows the stick with the section in it", (uncut, said) => {
    const strip = drawStrip({ ...BEAD, cuts: [], uncut }, { unit: "mm" });
    expect(
      textsOf(strip)
        .map((item) => item.text)
        .join(" "),
    ).toContain(said);
    expect(strip.description).toContain(said);
    const dashed = flatItems(strip.items).filter((item) => item.kind === "stroke" && item.line === "dashed");
    expect(dashed).toHaveLength(1);
  });
});

describe("the finished section", () => {
  test("dimensions come from the drawing: fillet, foot, axis of the cove, crest and bottom", () => {
    const words = textsOf(drawSection(BEAD, { unit: "mm" })).map((item) => item.text);
    // Foot 18 - 9.525 (1 - cos 30°) = 16.72; bottom 16.72 - 15.875 (1 - cos 30°) = 14.60; axis 14.525 + 7.9375 = 22.46.
    for (const expected of ["5", "14.5", "22.5", "32.3", "42", "16.7", "14.6", "18", "R 9.5", "R 15.9"]) {
      expect(words).toContain(expected);
    }
  });
});

test("a row of like joins is said once, with its number", () => {
  const join = { kind: "quirk", angle: 120, gap: 0, error: 0.1 } as const;
  const joins = [5, 10, 15, 20].map((x) => ({ ...join, at: [x, 18] as const }));
  const plan: Plan = { ...BEAD, finish: { ...BEAD.finish, joins } };
  const words = textsOf(drawSection(plan, { unit: "mm" })).map((item) => item.text);
  expect(words.filter((word) => word.includes("quirk"))).toEqual(["4 × quirk"]);
});

describe("odd sticks and names", () => {
  test("tiny and huge sticks keep to the page", () => {
    for (const factor of [0.05, 0.3, 3, 20]) {
      const scaled = (vertices: Plan["stick"]): Plan["stick"] =>
        vertices.map((v) => [v[0] * factor, v[1] * factor, v[2] ?? 0]);
      const plan: Plan = {
        ...BEAD,
        stick: scaled(BEAD.stick),
        section: scaled(BEAD.section),
        marks: [],
        cuts: BEAD.cuts.map((cut) => ({
          ...cut,
          after: cut.after.map(scaled),
          sole: scaled(cut.sole ?? []),
          runs: (cut.runs ?? []).map((run) =>
            run.map((pose) => [pose[0] * factor, pose[1] * factor, pose[2]]),
          ),
        })),
      };
      for (const drawing of everyPicture(plan, "mm")) {
        expect(troublesOf(drawing)).toEqual([]);
        expect(writeSvg(drawing)).not.toContain("NaN");
      }
    }
  });
});
