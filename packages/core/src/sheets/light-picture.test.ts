/** Pictures of light: every word on the paper and none on another, in any light and whichever way it hangs. */
import fc from "fast-check";
import { expect, test } from "vitest";
import { type Hanging, type Lamp, sectionInLight } from "../light/index.ts";
import { buildSection, type PartSpec, type Section } from "../section/index.ts";
import { type Drawing, type Fill, flatItems, type Item, type Text } from "./drawing.ts";
import { boxOf } from "./flat-path.ts";
import { boxesOverlap, textBox } from "./labels.ts";
import { drawLight } from "./light-picture.ts";
import { writeSvg } from "./write-svg.ts";

const RUNS = { seed: 20261127, numRuns: 60 };

function sectionOf(name: string, widthMm: number, thicknessMm: number, parts: readonly PartSpec[]): Section {
  const answer = buildSection({ name, stick: { widthMm, thicknessMm }, parts: [...parts] });
  if (!answer.ok) throw new Error(answer.trouble.code);
  return answer.value;
}

const CORNICE = sectionOf("Trial cornice", 68, 22, [
  { kind: "fillet", widthMm: 7 },
  { kind: "step", riseMm: -2.5 },
  { kind: "cyma recta", acrossMm: 30, riseMm: -8 },
  { kind: "fillet", widthMm: "rest" },
]);
const REEDS = sectionOf("Trial pilaster", 70, 20, [
  { kind: "fillet", widthMm: 5 },
  { kind: "step", riseMm: -1 },
  { kind: "reeds", count: 12, widthMm: 5 },
  { kind: "step", riseMm: 1 },
  { kind: "fillet", widthMm: "rest" },
]);
const BEAD = sectionOf("Trial bead", 6, 6, [
  { kind: "fillet", widthMm: 2 },
  { kind: "quirk", widthMm: 0.8, depthMm: 1 },
  { kind: "fillet", widthMm: "rest" },
]);

const anyLamp: fc.Arbitrary<Lamp> = fc.record({
  heightDeg: fc.double({ min: -89, max: 89, noNaN: true }),
  directionDeg: fc.double({ min: -89, max: 89, noNaN: true }),
  ambientRatio: fc.double({ min: 0, max: 1, noNaN: true }),
});
const anyHanging: fc.Arbitrary<Hanging> = fc.record({
  run: fc.constantFrom("level" as const, "upright" as const),
  firstEdge: fc.constantFrom("gauge edge" as const, "far edge" as const),
  springFromWallDeg: fc.constantFrom(0, 38, -30),
});
const anySection = fc.constantFrom(CORNICE, REEDS, BEAD);

function version(section: Section, lamp: Lamp, hanging: Hanging) {
  const lit = sectionInLight(section, lamp, hanging);
  if (!lit.ok) throw new Error(lit.trouble.code);
  return { name: section.name, lit: lit.value };
}

function faultsOf(drawing: Drawing): readonly string[] {
  const texts = flatItems(drawing.items).filter(
    (item): item is Text => item.kind === "text" && item.text !== "",
  );
  const boxes = texts.map(textBox);
  return texts.flatMap(({ text }, index) => {
    const box = boxes[index]!;
    const isInside =
      box.minX >= 0 && box.minY >= 0 && box.maxX <= drawing.widthMm && box.maxY <= drawing.heightMm;
    const covered = texts
      .slice(index + 1)
      .filter((_, step) => boxesOverlap(box, boxes[index + 1 + step]!))
      .map((other) => `“${text}” covers “${other.text}”`);
    return isInside ? covered : [...covered, `“${text}” leaves the paper`];
  });
}

test("one or two, in any light, hung any way: all words can be read, all numbers are numbers", () => {
  fc.assert(
    fc.property(
      fc.array(anySection, { minLength: 1, maxLength: 2 }),
      anyLamp,
      anyHanging,
      fc.constantFrom("mm" as const, "in" as const),
      (sections, lamp, hanging, unit) => {
        const drawing = drawLight(
          sections.map((section) => version(section, lamp, hanging)),
          { unit },
        );
        expect(faultsOf(drawing)).toEqual([]);
        expect(writeSvg(drawing)).not.toContain("NaN");
      },
    ),
    RUNS,
  );
});

function groupOf(items: readonly Item[], role: string): readonly Item[] {
  return items.flatMap((item) => {
    if (item.kind !== "group") return [];
    return item.role === role ? item.items : groupOf(item.items, role);
  });
}

test("the strip is as long as the moulding shows, at the section's own scale and beside it", () => {
  fc.assert(
    fc.property(anySection, anyLamp, anyHanging, (section, lamp, hanging) => {
      const drawing = drawLight([version(section, lamp, { ...hanging, run: "level" })], { unit: "mm" });
      const [wood] = groupOf(drawing.items, "wood").filter((item): item is Fill => item.kind === "fill");
      const outline = groupOf(drawing.items, "strip")
        .filter((item) => item.kind === "stroke")
        .at(-1);
      if (wood === undefined || outline?.kind !== "stroke") throw new Error("wood and strip are drawn");
      const pathBox = (path: Fill["paths"][number]) => boxOf([path.start, ...path.steps.map(({ to }) => to)]);
      const [a, b] = [pathBox(wood.paths[0]!), pathBox(outline.path)];
      expect(b.minY).toBeCloseTo(a.minY, 2);
      expect(b.maxY).toBeCloseTo(a.maxY, 2);
      expect(b.minX).toBeGreaterThan(a.maxX);
    }),
    RUNS,
  );
});

test("how it hangs and where the lamp stands are said", () => {
  const lamp = { heightDeg: 30, directionDeg: -20, ambientRatio: 0.2 };
  const hanging = { run: "level", firstEdge: "far edge", springFromWallDeg: 38 } as const;
  const drawing = drawLight([version(CORNICE, lamp, hanging)], { unit: "mm" });
  const words = flatItems(drawing.items).map((item) => (item.kind === "text" ? item.text : ""));
  const said = words.join(" ");
  expect(said).toContain("far edge up, back 38° from the wall");
  expect(said).toContain("30° down");
  expect(said).toContain("20° from the right");
});
