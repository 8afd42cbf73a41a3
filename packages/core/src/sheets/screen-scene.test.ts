import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import type { Plan } from "../cutting/index.ts";
import { type Drawing, flatItems, type Item, type PaperPoint, type Text } from "./drawing.ts";
import { boxOf, flatPoints } from "./flat-path.ts";
import { boxesOverlap, textBox } from "./labels.ts";
import { LEAST_LETTERING_MM } from "./lettering.ts";
import { drawCutScene, drawSmallScene } from "./screen-scene.ts";

const FOLDERS = {
  golden: new URL("../../../../tests/golden/", import.meta.url),
  examples: new URL("../../../../examples/", import.meta.url),
} as const;

function planIn(folder: keyof typeof FOLDERS, file: string): Plan {
  return JSON.parse(readFileSync(new URL(file, FOLDERS[folder]), "utf8")) as Plan;
}

const PLANS = [
  planIn("golden", "low-bead-and-cove.json"),
  planIn("golden", "every-way-of-holding.json"),
  planIn("examples", "cornice/plan.json"),
  planIn("examples", "pilaster/plan.json"),
];
const CORNICE = PLANS[2] as Plan;
/** A phone, a tablet, a laptop, and a tablet two metres away. */
const SIZES = [
  { widthMm: 96, heightMm: 80 },
  { widthMm: 150, heightMm: 110 },
  { widthMm: 220, heightMm: 130 },
  { widthMm: 112, heightMm: 70 },
] as const;

function textsOf(drawing: Drawing): readonly Text[] {
  return flatItems(drawing.items).filter((item): item is Text => item.kind === "text");
}

function groupsOf(items: readonly Item[], role: string): readonly Item[] {
  return items.flatMap((item) => {
    if (item.kind !== "group") return [];
    return item.role === role ? [item] : groupsOf(item.items, role);
  });
}

/** The stick's own outline, not an enlargement's. */
function isOutline(item: Item): boolean {
  return item.kind === "group" && item.role === "outline";
}

function pointsOf(items: readonly Item[]): readonly PaperPoint[] {
  return flatItems(items).flatMap((item): readonly PaperPoint[] => {
    if (item.kind === "text") return [item.at];
    return (item.kind === "stroke" ? [item.path] : item.paths).flatMap(flatPoints);
  });
}

describe("a cut in the room that the screen has", () => {
  for (const plan of PLANS)
    for (const size of SIZES)
      for (const unit of ["mm", "in"] as const)
        test(`${plan.name}, ${size.widthMm} mm wide, ${unit}: lettering is whole, apart and large enough`, () => {
          for (const { number } of plan.cuts) {
            const drawing = drawCutScene(plan, number, size, { unit });
            const boxes = textsOf(drawing).map((item) => ({ words: item.text, box: textBox(item) }));
            for (const { sizeMm } of textsOf(drawing))
              expect(sizeMm).toBeGreaterThanOrEqual(LEAST_LETTERING_MM);
            for (const [index, { words, box }] of boxes.entries()) {
              const isInside =
                box.minX >= 0 && box.minY >= 0 && box.maxX <= drawing.widthMm && box.maxY <= drawing.heightMm;
              expect(isInside, `cut ${number}: "${words}" leaves the picture`).toBe(true);
              const touched = boxes.slice(index + 1).filter((other) => boxesOverlap(box, other.box));
              expect(touched.map((other) => `cut ${number}: "${words}" touches "${other.words}"`)).toEqual(
                [],
              );
            }
          }
        });

  test("every page of a plan is of one size, and the stick stands on it at one place and scale", () => {
    for (const size of SIZES) {
      const flat = CORNICE.cuts.filter(({ cant }) => cant === 0);
      const drawings = flat.map(({ number }) => drawCutScene(CORNICE, number, size, { unit: "mm" }));
      expect(new Set(drawings.map(({ heightMm }) => heightMm)).size).toBe(1);
      // The far end of the back stays until it is sawn: the bottom right corner of the wood.
      const outlines = drawings.map(({ items }) => items.filter(isOutline));
      const corners = outlines.map((items) => boxOf(pointsOf(items)));
      const first = corners[0];
      for (const { minX, maxY } of corners.slice(0, -1)) {
        expect(minX).toBeCloseTo(first?.minX ?? Number.NaN, 6);
        expect(maxY).toBeCloseTo(first?.maxY ?? Number.NaN, 6);
      }
    }
  });

  test("the picture is no higher than its room and no higher than its highest stick needs", () => {
    const low = drawCutScene(CORNICE, 1, { widthMm: 96, heightMm: 60 }, { unit: "mm" });
    const high = drawCutScene(CORNICE, 1, { widthMm: 96, heightMm: 400 }, { unit: "mm" });
    expect(low.heightMm).toBeLessThanOrEqual(60);
    expect(high.heightMm).toBeLessThan(200);
  });

  test("the enlargement lies in an upper corner, and no line of the plane enters it", () => {
    const seen = new Set<"left" | "right">();
    for (const plan of PLANS)
      for (const { number } of plan.cuts) {
        const { items } = drawCutScene(plan, number, { widthMm: 110, heightMm: 90 }, { unit: "mm" });
        const enlargement = groupsOf(items, "enlargement");
        if (enlargement.length === 0) continue;
        const disc = boxOf(pointsOf(enlargement));
        seen.add(disc.minX < 55 ? "left" : "right");
        const plane = items.filter((item) => item.kind === "group" && item.role.startsWith("plane"));
        const inside = pointsOf(plane).filter(
          ([x, y]) => x > disc.minX && x < disc.maxX && y > disc.minY && y < disc.maxY,
        );
        expect(inside, `${plan.name}, cut ${number}`).toEqual([]);
      }
    expect(seen).toEqual(new Set(["left", "right"]));
  });

  test("the title tells a reader who sees no picture which cut it is, and how the plane is held", () => {
    const { title } = drawCutScene(CORNICE, 8, SIZES[0], { unit: "mm" });
    expect(title).toContain("cut 8");
    expect(title).toContain("⅝ in hollow, 15° right");
  });
});

describe("a cut among the others", () => {
  test("it fits its room and has no lettering", () => {
    for (const plan of PLANS)
      for (const { number } of plan.cuts) {
        const drawing = drawSmallScene(plan, number, { widthMm: 44, heightMm: 34 }, { unit: "mm" });
        expect(textsOf(drawing)).toEqual([]);
        const { scaleRatio, items } = drawing.items[0] as Extract<Item, { kind: "group" }>;
        const box = boxOf(pointsOf(groupsOf(items, "outline")));
        expect(box.minX * scaleRatio).toBeGreaterThanOrEqual(0);
        expect(box.maxX * scaleRatio).toBeLessThanOrEqual(drawing.widthMm);
        expect(box.minY * scaleRatio).toBeGreaterThanOrEqual(0);
        expect(box.maxY * scaleRatio).toBeLessThanOrEqual(drawing.heightMm);
      }
  });
});
