/** Plans that no example has: tiny and huge sticks, long and foreign words. Their sheets hold all the same. */
import { describe, expect, test } from "vitest";
import type { Vertex } from "../../packages/core/src/curve/index.ts";
import type { Plan } from "../../packages/core/src/cutting/index.ts";
import { writePdf } from "../../packages/pdf/src/index.ts";
import { nodeFonts } from "../../packages/pdf/src/node-fonts.ts";
import { troublesOn } from "./page-texts.ts";
import { examplePlan, pagesOf } from "./plans.ts";

/** The same plan, everything so many times as large; its sentences stay as they are. */
function scaled(plan: Plan, ratio: number): Plan {
  const ring = (vertices: readonly Vertex[]): readonly Vertex[] =>
    vertices.map(([x, y, bulge]) =>
      bulge === undefined ? [x * ratio, y * ratio] : [x * ratio, y * ratio, bulge],
    );
  return {
    ...plan,
    stick: ring(plan.stick),
    section: ring(plan.section),
    planned: ring(plan.planned),
    parts: plan.parts.map((part) => ({
      ...part,
      from: [part.from[0] * ratio, part.from[1] * ratio],
      to: [part.to[0] * ratio, part.to[1] * ratio],
    })),
    marks: plan.marks.map((mark) => ({
      ...mark,
      at: [mark.at[0] * ratio, mark.at[1] * ratio],
      distance: mark.distance * ratio,
      fromGaugeEdge: mark.fromGaugeEdge * ratio,
    })),
    cuts: plan.cuts.map((cut) => ({
      ...cut,
      after: cut.after.map(ring),
      ...(cut.sole === undefined ? {} : { sole: ring(cut.sole) }),
      ...(cut.fence === undefined ? {} : { fence: cut.fence * ratio }),
      ...(cut.line === undefined
        ? {}
        : {
            line: [
              [cut.line[0][0] * ratio, cut.line[0][1] * ratio],
              [cut.line[1][0] * ratio, cut.line[1][1] * ratio],
            ] as const,
          }),
      ...(cut.runs === undefined
        ? {}
        : { runs: cut.runs.map((run) => run.map(([x, y, tilt]) => [x * ratio, y * ratio, tilt] as const)) }),
    })),
    finish: {
      ...plan.finish,
      joins: plan.finish.joins.map((join) => ({ ...join, at: [join.at[0] * ratio, join.at[1] * ratio] })),
    },
  };
}

async function holds(plan: Plan): Promise<void> {
  for (const [unit, paper] of [
    ["mm", "a4"],
    ["in", "letter"],
  ] as const) {
    const pages = pagesOf(plan, { unit, paper });
    expect(pages.flatMap(troublesOn)).toEqual([]);
    const bytes = await writePdf(pages, { title: plan.name, fonts: await nodeFonts() });
    expect(bytes.length).toBeGreaterThan(1000);
  }
}

describe("sizes", () => {
  test.each([0.12, 0.4, 3, 6])(
    "the cornice %s times as large",
    (ratio) => holds(scaled(examplePlan("cornice"), ratio)),
    60_000,
  );
  test.each([0.15, 5])(
    "the barometer frame %s times as large",
    (ratio) => holds(scaled(examplePlan("barometer-frame"), ratio)),
    60_000,
  );
});

describe("words", () => {
  const plan = examplePlan("cavetto");

  test("names and sentences as long as a file may hold them", async () => {
    const long = "Harbour office, chart cabinet, the upper cornice on the north wall ".repeat(8);
    await holds({
      ...plan,
      name: long,
      assumed: [...plan.assumed, long],
      warnings: [long],
      cuts: plan.cuts.map((cut) => ({
        ...cut,
        says: `${cut.says} ${long}`,
        plane: { ...cut.plane, name: long },
      })),
    });
  });

  test("one word without a blank, control signs, other scripts, signs that no font has", async () => {
    await holds({
      ...plan,
      name: `${"Kranzgesims".repeat(30)}\u0007\u202e`,
      assumed: ["Карниз · κυμάτιον · 蛇腹 · 🪵", "<b>&amp;\"'"],
      cuts: plan.cuts.map((cut) => ({ ...cut, doneWhen: "蛇腹".repeat(120) })),
    });
  });
});
