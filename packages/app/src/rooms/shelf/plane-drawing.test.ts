import { type Plane, readShelf } from "mouldwright/shelf";
import { describe, expect, test } from "vitest";
import { arcDrawing, planeDrawing, planeExtent } from "./plane-drawing.ts";

function planeOf(entry: unknown): Plane {
  const read = readShelf({ format: "mouldwright/shelf", version: 1, unit: "mm", planes: [entry] });
  const plane = read.ok ? read.value.planes[0] : undefined;
  if (plane === undefined) throw new Error("no plane");
  return plane;
}

const SIDES_MM = 2;

describe("a plane on its end", () => {
  test("is as wide as its sole, times the scale", () => {
    const hollow = planeOf({ kind: "hollow", radius: 12, width: 10 });
    const drawing = planeDrawing(hollow, { scaleRatio: 3, bodyMm: 8, title: "" });
    expect(drawing.widthMm).toBeCloseTo(3 * 10 + SIDES_MM);
    // By hand: 12 − √(144 − 25) = 1.0913.
    expect(planeExtent(hollow).heightMm).toBeCloseTo(1.0913, 4);
  });

  test("a wider body counts, and so do all irons of a plough", () => {
    const shouldered = planeOf({ kind: "round", radius: 3, width: 3, shoulder: { width: 9, height: 5 } });
    expect(planeExtent(shouldered)).toEqual({ widthMm: 9, heightMm: 5 });
    expect(planeExtent(planeOf({ kind: "plough", widths: [3, 6] })).widthMm).toBe(9);
  });

  test("a round hangs below its sides, a hollow stands above its corners", () => {
    const sagOf = (kind: string): number => {
      const { items } = planeDrawing(planeOf({ kind, radius: 12, width: 12 }), {
        scaleRatio: 1,
        bodyMm: 8,
        title: "",
      });
      const sole = items.find((item) => item.kind === "stroke" && item.weight === "wide");
      return sole?.kind === "stroke" ? (sole.path.steps[0]?.bulge ?? 0) : 0;
    };
    // From left to right an arc that sags turns anticlockwise as seen.
    expect(sagOf("round")).toBeGreaterThan(0);
    expect(sagOf("hollow")).toBeLessThan(0);
  });
});

test("an arc to compare is drawn at full size", () => {
  // By hand: 2 · 20 · sin 36° = 23.511.
  expect(arcDrawing(20, "round", "").widthMm - SIDES_MM).toBeCloseTo(23.511, 3);
});
