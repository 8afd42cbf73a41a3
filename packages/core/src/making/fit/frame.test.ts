import { describe, expect, test } from "vitest";
import { point } from "../../curve/index.ts";
import { findTimber } from "../../timber/index.ts";
import { type FrameQuestion, frame, mitreSeasons } from "./index.ts";
import { answer, refusal } from "./testing/generators.ts";

const cherry = answer(findTimber("black cherry"));

describe("frames", () => {
  const ask = (change: Partial<FrameQuestion>) =>
    frame({
      shape: { kind: "rectangle", acrossMm: 300, upMm: 400 },
      stated: "sight",
      widthMm: 30,
      ...change,
    });

  test("300 × 400 to be seen, 30 wide, rebate 8, allowance 2", () => {
    const made = answer(ask({ rebateMm: 8, allowanceMm: 2 }));
    expect(made.rails.map(({ outsideMm }) => outsideMm)).toEqual([360, 460, 360, 460]);
    expect(made.rails.map(({ rebateMm }) => rebateMm)).toEqual([316, 416, 316, 416]);
    const [corner] = made.outlines.glass!;
    expect(corner).toEqual({ x: -7, y: -7 });
    expect(made.stickMm).toBe(1640);
    for (const { start, end } of made.rails) expect([start.mitreDeg, end.mitreDeg]).toEqual([45, 45]);
  });

  test("the same frame whichever size is stated", () => {
    const sizes = { rebateMm: 8, allowanceMm: 2 };
    const stated = [
      ["sight", 300, 400],
      ["rebate", 316, 416],
      ["glass", 314, 414],
      ["outside", 360, 460],
    ] as const;
    for (const [size, acrossMm, upMm] of stated) {
      const made = answer(ask({ ...sizes, stated: size, shape: { kind: "rectangle", acrossMm, upMm } }));
      expect(made.rails[0]!.sightMm).toBeCloseTo(300, 10);
      expect(made.rails[1]!.outsideMm).toBeCloseTo(460, 10);
    }
  });

  test("sides of unlike widths: 30 beside 40 makes mitres of atan(40/30) and atan(30/40)", () => {
    const made = answer(ask({ widthMm: [30, 40, 30, 40] }));
    const degrees = (ratio: number) => (Math.atan(ratio) * 180) / Math.PI;
    expect(made.rails[0]!.outsideMm).toBeCloseTo(380, 10);
    expect(made.rails[1]!.outsideMm).toBeCloseTo(460, 10);
    expect(made.rails[0]!.start.mitreDeg).toBeCloseTo(degrees(40 / 30), 10);
    expect(made.rails[1]!.start.mitreDeg).toBeCloseTo(degrees(30 / 40), 10);
  });

  test("a hexagon 200 on the sight edge: 2 · 30 / √3 longer outside", () => {
    const made = answer(
      frame({ shape: { kind: "regular", sides: 6, sideMm: 200 }, stated: "sight", widthMm: 30 }),
    );
    for (const rail of made.rails) {
      expect(rail.outsideMm).toBeCloseTo(200 + 60 / Math.sqrt(3), 9);
      expect(rail.start.mitreDeg).toBeCloseTo(30, 9);
    }
  });

  test("a corner that points inward: the sight edge is the longer one there", () => {
    const corners = [
      point(0, 0),
      point(600, 0),
      point(600, 300),
      point(300, 300),
      point(300, 600),
      point(0, 600),
    ];
    const made = answer(frame({ shape: { kind: "polygon", corners }, stated: "outside", widthMm: 40 }));
    const inward = made.rails[2]!.end;
    expect(inward.cornerDeg).toBeCloseTo(270, 9);
    expect(inward.mitreDeg).toBeCloseTo(45, 9);
    expect(inward.longerAt).toBe("sight");
    // Outside 300, one end shorter inside by 40, the other longer by 40.
    expect(made.rails[2]!.sightMm).toBeCloseTo(300, 9);
    expect(made.rails[2]!.longMm).toBeCloseTo(340, 9);
  });

  test("corners given clockwise make the same frame", () => {
    const corners = [point(0, 0), point(500, 0), point(420, 300), point(-30, 260)];
    const there = answer(frame({ shape: { kind: "polygon", corners }, stated: "sight", widthMm: 25 }));
    const back = answer(
      frame({ shape: { kind: "polygon", corners: [...corners].reverse() }, stated: "sight", widthMm: 25 }),
    );
    expect(back.stickMm).toBeCloseTo(there.stickMm, 9);
  });

  test.each([
    [{ widthMm: -30 }, "fit-size"],
    [{ widthMm: [30, 30] }, "frame-widths"],
    [{ rebateMm: 30 }, "frame-rebate-too-wide"],
    [{ rebateMm: -1 }, "fit-size"],
    [{ rebateMm: 3, allowanceMm: 6 }, "frame-glass-falls-through"],
    [{ shape: { kind: "rectangle", acrossMm: 0, upMm: 400 } }, "fit-size"],
    [{ shape: { kind: "rectangle", acrossMm: Number.NaN, upMm: 400 } }, "fit-size"],
    [{ shape: { kind: "regular", sides: 2, sideMm: 100 } }, "polygon-sides"],
    [{ shape: { kind: "regular", sides: 5, sideMm: -100 } }, "fit-size"],
    [{ shape: { kind: "polygon", corners: [point(0, 0), point(100, 0)] } }, "polygon-sides"],
    [
      { shape: { kind: "polygon", corners: [point(0, 0), point(0, 0), point(100, 0)] } },
      "frame-corner-place",
    ],
    [
      { shape: { kind: "polygon", corners: [point(0, 0), point(100, 0), point(200, 1), point(100, 90)] } },
      "frame-corner-angle",
    ],
    [
      { shape: { kind: "polygon", corners: [point(0, 0), point(100, 100), point(100, 0), point(0, 100)] } },
      "frame-crosses-itself",
    ],
    [{ stated: "outside", shape: { kind: "rectangle", acrossMm: 50, upMm: 400 } }, "frame-nothing-left"],
  ] as const)("%j is refused", (change, code) => {
    expect(refusal(ask(change as Partial<FrameQuestion>))).toBe(code);
  });

  test("a small frame carries the caution about short pieces", () => {
    const cautions = answer(ask({ shape: { kind: "rectangle", acrossMm: 80, upMm: 120 } })).cautions;
    expect(cautions.map(({ code }) => code)).toContain("caution-short-piece");
    expect(answer(ask({})).cautions.map(({ code }) => code)).not.toContain("caution-short-piece");
  });
});

describe("mitres through the seasons", () => {
  test("what keeps the gap under a wish does keep it, and a little wider does not", () => {
    const question = {
      timber: cherry,
      widthMm: 60,
      fromPercent: 12,
      toPercent: 6,
      sawn: "flat",
      wishedGapMm: 0.8,
    } as const;
    const made = answer(mitreSeasons(question));
    expect(made.gapMm).toBeGreaterThan(0.8);
    const gapAt = (widthMm: number) => answer(mitreSeasons({ ...question, widthMm })).gapMm;
    expect(gapAt(made.widestMm!)).toBeCloseTo(0.8, 10);
    const names = made.timbersUnder.map(({ timber, sawn }) => `${timber}, ${sawn}`);
    expect(names).toContain("Cherry, black, quarter");
    expect(names).not.toContain("Cherry, black, flat");
    for (const { gapMm, widestMm } of made.timbersUnder) {
      expect(gapMm).toBeLessThanOrEqual(0.8);
      expect(widestMm).toBeGreaterThanOrEqual(60);
    }
  });

  test("no change of moisture: it opens nowhere", () => {
    const still = answer(
      mitreSeasons({
        timber: cherry,
        widthMm: 60,
        fromPercent: 8,
        toPercent: 8,
        sawn: "flat",
        wishedGapMm: 0.1,
      }),
    );
    expect(still).toMatchObject({ opensAt: "nowhere", gapMm: 0, openingDeg: 0, widestMm: null });
  });

  test("humid air and corners beyond the range are refused", () => {
    const base = { timber: cherry, widthMm: 60, fromPercent: 12, toPercent: 6, sawn: "flat" } as const;
    expect(refusal(mitreSeasons({ ...base, toPercent: 31 }))).toBe("movement-above-saturation");
    expect(refusal(mitreSeasons({ ...base, cornerDeg: 180 }))).toBe("corner-angle");
    expect(refusal(mitreSeasons({ ...base, wishedGapMm: 0 }))).toBe("fit-size");
  });
});
