/** Areas E and H on paper: the irons that sheets draw, and the cautions that they carry. */
import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { type Group, type Item, type Page, sheetPages } from "../packages/core/src/sheets/index.ts";
import { textsOnPage } from "../tests/sheets/page-texts.ts";
import { EXAMPLE_NAMES, examplePlan, pagesOf } from "../tests/sheets/plans.ts";

interface Row {
  readonly id: string;
  readonly input: Readonly<Record<string, number>>;
  readonly expected: Readonly<Record<string, number>>;
}

const { rows } = JSON.parse(readFileSync(new URL("./area-e.json", import.meta.url), "utf8")) as {
  rows: readonly Row[];
};

function groupsOf(items: readonly Item[], role: string): readonly Group[] {
  return items.flatMap((item): readonly Group[] => {
    if (item.kind !== "group") return [];
    return [...(item.role === role ? [item] : []), ...groupsOf(item.items, role)];
  });
}

/** How deep the drawn edge of a shape is, and how wide, mm on paper. */
function sizeOf(shape: Group): { readonly wideMm: number; readonly deepMm: number } {
  const edge = groupsOf(shape.items, "edge")[0]?.items[0];
  if (edge?.kind !== "stroke") throw new Error("no edge");
  const points = [edge.path.start, ...edge.path.steps.map((step) => step.to)];
  const xs = points.map(([x]) => x);
  const ys = points.map(([, y]) => y);
  return { wideMm: Math.max(...xs) - Math.min(...xs), deepMm: Math.max(...ys) - Math.min(...ys) };
}

describe("E-I01 on: the iron's edge on the plane sheet is as deep as its bed makes it", () => {
  test.each(rows.filter((row) => row.id.startsWith("E-I")))(
    "$id, bed $input.bed_deg°",
    ({ input, expected }) => {
      const plan = examplePlan("low-bead-and-cove");
      const radiusMm = 15.875;
      const cuts = plan.cuts
        .filter((cut) => cut.plane.kind === "round")
        .map((cut) => ({
          ...cut,
          plane: { ...cut.plane, radius: radiusMm, width: radiusMm, pitch: input.bed_deg },
        }));
      const pages = sheetPages({ ...plan, cuts }, { unit: "mm", kinds: ["planes"] });
      if (!pages.ok) throw new Error(pages.trouble.code);
      const shapes = pages.value.flatMap((page) => groupsOf(page.items, "iron's edge"));
      expect(shapes).toHaveLength(1);
      const { wideMm, deepMm } = sizeOf(shapes[0] as Group);
      expect(wideMm).toBeCloseTo(radiusMm, 3);
      expect(deepMm / radiusMm).toBeCloseTo(expected.iron_depth as number, 4);
    },
  );
});

describe("area H: cautions on the bench card", () => {
  const saidOn = (page: Page): string =>
    textsOnPage(page)
      .map((text) => text.words)
      .join(" ");

  test.each(EXAMPLE_NAMES)(
    "%s: edge tools, dust and fixing overhead, deferring to local codes and licensed practice",
    (name) => {
      const said = pagesOf(examplePlan(name), { unit: "mm", kinds: ["bench"] })
        .map(saidOn)
        .join(" ");
      expect(said).toContain("both hands behind the edge");
      expect(said).toMatch(/Dust harms the lungs .* local exposure limits apply/);
      expect(said).toContain("local codes and licensed practice decide");
    },
  );

  test("where a saw is used, guard, push stick and the machine's manual", () => {
    const said = pagesOf(examplePlan("cornice"), { unit: "mm", kinds: ["bench"] })
      .map(saidOn)
      .join(" ");
    expect(said).toMatch(/guard and push stick in use.*follow the machine's manual/);
  });
});
