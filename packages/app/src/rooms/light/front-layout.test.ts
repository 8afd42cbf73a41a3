import { DRAWING_LAMP, type Hanging, sectionInLight } from "mouldwright/light";
import { buildSection } from "mouldwright/section";
import { describe, expect, test } from "vitest";
import { frontLayout, namedBands, pathOf, seenBands } from "./front-layout.ts";

const LEVEL: Hanging = { run: "level", firstEdge: "gauge edge", springFromWallDeg: 0 };

function lit(widthMm: number, hanging: Hanging = LEVEL) {
  const built = buildSection({
    name: "Stepped",
    stick: { widthMm, thicknessMm: 20 },
    parts: [
      { kind: "fillet", widthMm: 10 },
      { kind: "step", riseMm: -5 },
      { kind: "fillet", widthMm: "rest" },
    ],
  });
  if (!built.ok) throw new Error(built.trouble.code);
  const answer = sectionInLight(built.value, DRAWING_LAMP, hanging);
  if (!answer.ok) throw new Error(answer.trouble.code);
  return answer.value;
}

describe.each([320, 480, 900])("in a room %i px wide", (widthPx) => {
  const room = { widthPx, mostHeightPx: 400, hasLabels: widthPx > 500 };

  test("a level run stands left of its strip, both inside the room and at one height", () => {
    const moulding = lit(40);
    const layout = frontLayout([moulding], room);
    const [right, bottom] = layout.at(moulding.projectionMm, moulding.widthMm);
    expect(right).toBeLessThan(layout.stripFromPx);
    expect(layout.stripToPx).toBeLessThanOrEqual(widthPx);
    expect(layout.stripToPx - layout.stripFromPx).toBeGreaterThan(60);
    expect(bottom).toBeLessThanOrEqual(layout.heightPx);
    expect(layout.pxPerMm).toBeGreaterThan(0);
  });

  test("an upright run stands over its strip, in the middle", () => {
    const moulding = lit(40, { ...LEVEL, run: "upright" });
    const layout = frontLayout([moulding], room);
    const [left, top] = layout.at(0, 0);
    const [right, foot] = layout.at(moulding.projectionMm, moulding.widthMm);
    expect(left + right).toBeCloseTo(widthPx, 6);
    expect(top).toBeGreaterThan(0);
    expect(foot).toBeLessThan(layout.stripFromPx);
    expect(layout.heightPx).toBeGreaterThanOrEqual(layout.stripToPx);
  });
});

test("two that are compared have one scale: that of the larger", () => {
  const room = { widthPx: 400, mostHeightPx: 400, hasLabels: false };
  const both = frontLayout([lit(40), lit(80)], room);
  expect(both.pxPerMm).toBe(frontLayout([lit(80)], room).pxPerMm);
});

test("the step under a lamp drawn at 45° throws a shadow as wide as it is high", () => {
  const bands = seenBands(lit(40));
  expect(bands.map(({ state }) => state)).toEqual(["light", "shadow", "light"]);
  const [, shadow] = bands;
  expect((shadow?.endMm ?? 0) - (shadow?.startMm ?? 0)).toBeCloseTo(5, 6);
});

test("a narrow band gives way to a wide one that lies too near to be named beside it", () => {
  const bands = [
    { state: "light", startMm: 0, endMm: 10 },
    { state: "shade", startMm: 10, endMm: 10.5 },
    { state: "shadow", startMm: 10.5, endMm: 14 },
    { state: "light", startMm: 14, endMm: 30 },
  ] as const;
  const named = namedBands(bands, 4, 18);
  expect(named.map(({ startMm }) => startMm)).toEqual([0, 10.5, 14]);
  expect(namedBands(bands, 40, 18)).toHaveLength(4);
});

test("an outline's path has numbers only", () => {
  const moulding = lit(40);
  const layout = frontLayout([moulding], { widthPx: 320, mostHeightPx: 300, hasLabels: false });
  expect(pathOf(layout, moulding, moulding.outline)).toMatch(/^M[\d.-]+ [\d.-]+(L[\d.-]+ [\d.-]+)+$/);
});
