import { describe, expect, test } from "vitest";
import { chainFromVertices } from "../curve/index.ts";
import { DEFAULT_WALL_LIMITS, wallAllowanceMm } from "./limits.ts";
import type { Plane } from "./types.ts";

const named = { id: "p", name: "p" };
const curved = (kind: "hollow" | "round", widthMm: number): Plane => ({
  ...named,
  kind,
  widthMm,
  radiusMm: widthMm,
});

describe("wall beside a hollow or round", () => {
  // The shares are 6 % and 8 % of the width, between 0.25 and 0.4 mm and between 0.3 and 1 mm.
  test.each([
    ["hollow", 3, 0.25],
    ["hollow", 5, 0.3],
    ["hollow", 20, 0.4],
    ["round", 3, 0.3],
    ["round", 10, 0.8],
    ["round", 20, 1],
  ] as const)("%s %d mm wide: %d mm", (kind, widthMm, allowanceMm) => {
    for (const side of ["left", "right"] as const) {
      const allowance = wallAllowanceMm(curved(kind, widthMm), side);
      expect(allowance.kind).toBe("up to");
      if (allowance.kind === "up to") expect(allowance.allowanceMm).toBeCloseTo(allowanceMm, 12);
    }
  });

  test("its own measured wall goes before the default, even nought", () => {
    for (const wallMm of [0, 0.7]) {
      const plane = { ...curved("hollow", 10), wallMm } as Plane;
      expect(wallAllowanceMm(plane, "left")).toEqual({ kind: "up to", allowanceMm: wallMm });
    }
  });

  test("the maker's own limits", () => {
    const besideRound = { perWidthRatio: 0, leastMm: 0.2, mostMm: 2 };
    expect(wallAllowanceMm(curved("round", 10), "left", { ...DEFAULT_WALL_LIMITS, besideRound })).toEqual({
      kind: "up to",
      allowanceMm: 0.2,
    });
  });
});

test("flat planes that cut their walls are unlimited, a smoother clears none", () => {
  const flat: readonly Plane[] = [
    { ...named, kind: "rebate", widthMm: 12 },
    { ...named, kind: "moving fillister", widthMm: 38, fenceMm: 38, depthMm: 20 },
    { ...named, kind: "plough", widthsMm: [6], fenceMm: 100, depthMm: 20 },
  ];
  for (const plane of flat) {
    expect(wallAllowanceMm(plane, "left")).toEqual({ kind: "unlimited" });
    expect(wallAllowanceMm(plane, "right")).toEqual({ kind: "unlimited" });
  }
  const smoother: Plane = { ...named, kind: "smoother", widthMm: 50 };
  expect(wallAllowanceMm(smoother, "right")).toEqual({ kind: "up to", allowanceMm: 0 });
});

test("a snipe bill goes as deep as its beak reaches, on its upright side", () => {
  const bill = { ...named, kind: "snipe bill", widthMm: 6, noseMm: 0.4, slopeDeg: 60, reachMm: 4 } as const;
  for (const hand of ["left", "right"] as const) {
    const other = hand === "left" ? "right" : "left";
    expect(wallAllowanceMm({ ...bill, hand }, hand)).toEqual({ kind: "up to", allowanceMm: 4 });
    expect(wallAllowanceMm({ ...bill, hand }, other)).toEqual({ kind: "up to", allowanceMm: 0.25 });
  }
});

test("side planes, beads and shaped soles on the side they cut", () => {
  const sole = chainFromVertices([
    [-5, 0],
    [5, 0],
  ]);
  const left: readonly Plane[] = [
    { ...named, kind: "side rebate", hand: "left", widthMm: 3 },
    { ...named, kind: "bead", widthMm: 5, quirkMm: 1, hand: "left" },
    { ...named, kind: "shaped", sole, cutsWall: "left" },
  ];
  for (const plane of left) {
    expect(wallAllowanceMm(plane, "left")).toEqual({ kind: "unlimited" });
    expect(wallAllowanceMm(plane, "right").kind).toBe("up to");
  }
  const bead: Plane = { ...named, kind: "bead", widthMm: 5, quirkMm: 1 };
  expect(wallAllowanceMm(bead, "right")).toEqual({ kind: "unlimited" });
  const shaped: Plane = { ...named, kind: "shaped", sole, cutsWall: "none" };
  expect(wallAllowanceMm(shaped, "right")).toEqual({ kind: "up to", allowanceMm: 0.4 });
});
