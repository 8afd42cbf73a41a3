import { describe, expect, test } from "vitest";
import { type BandLayout, bandLayout, bandOnShelf } from "./band-layout.ts";
import { buildSection } from "./build-section.ts";
import type { BandSpec } from "./part-spec.ts";

const band = (more: Partial<BandSpec>): BandSpec => ({ kind: "band", of: "reeds", widthMm: 40, ...more });

function laid(more: Partial<BandSpec>): BandLayout {
  const layout = bandLayout(band(more));
  if (!layout.ok) throw new Error(layout.trouble.code);
  return layout.value;
}

describe("a band laid out", () => {
  test("of a radius: as many as there is room for, the rest shared by both ends", () => {
    // 60° of a radius of 6 are 6 mm wide: six of them 36 mm, 4 mm left.
    const layout = laid({ radiusMm: 6 });
    expect(layout.count).toBe(6);
    expect(layout.partMm).toBeCloseTo(6, 9);
    expect(layout.endMm).toBeCloseTo(2, 9);
    expect(layout.startsMm.map((x) => Math.round(x * 1e6) / 1e6)).toEqual([2, 8, 14, 20, 26, 32]);
  });

  test("of a radius with fillets of 1 mm: 5 × 6 + 4 × 1 = 34 mm, one more would be 41", () => {
    const layout = laid({ radiusMm: 6, filletMm: 1 });
    expect([layout.count, layout.endMm]).toEqual([5, expect.closeTo(3, 9)]);
    expect(layout.startsMm[1]).toBeCloseTo(10, 9);
  });

  test("of a count: the widest that fill it, nothing left at the ends", () => {
    // (40 - 4 × 1) / 5 = 7.2 mm, and at 60° as much radius.
    const layout = laid({ count: 5, filletMm: 1 });
    expect(layout.partMm).toBeCloseTo(7.2, 9);
    expect(layout.radiusMm).toBeCloseTo(7.2, 9);
    expect(layout.endMm).toBe(0);
  });

  test("of a count with ends of 3 mm at least", () => {
    expect(laid({ count: 5, filletMm: 1, leastEndMm: 3 }).partMm).toBeCloseTo(6, 9);
    expect(laid({ count: 5, filletMm: 1, leastEndMm: 3 }).endMm).toBeCloseTo(3, 9);
  });

  test("half-rounds are twice their radius wide", () => {
    expect(laid({ radiusMm: 5, sweepDeg: 180 })).toMatchObject({ count: 4, endMm: 0 });
  });

  test.each<[string, Partial<BandSpec>, string]>([
    ["neither count nor radius", {}, "band-without-size"],
    ["a part wider than the band", { radiusMm: 41 }, "band-too-narrow"],
    ["more than there is room for", { radiusMm: 6, count: 7 }, "band-too-narrow"],
    ["fillets that leave no part", { count: 5, filletMm: 10 }, "band-too-narrow"],
    ["ends that leave no part", { radiusMm: 6, leastEndMm: 18 }, "band-too-narrow"],
    ["a hundred and more", { radiusMm: 0.1 }, "band-too-narrow"],
  ])("%s is refused", (_, more, code) => {
    const layout = bandLayout(band(more), "section.parts[2]");
    expect(layout.ok === false && [layout.trouble.code, layout.trouble.where]).toEqual([
      code,
      "section.parts[2]",
    ]);
  });
});

describe("a band made with the shelf", () => {
  const SOLES = [
    { radiusMm: 4.7625, widthMm: 4.7625 },
    { radiusMm: 6.35, widthMm: 6.35 },
    { radiusMm: 9.525, widthMm: 9 },
  ];
  const made = (more: Partial<BandSpec>): BandSpec => {
    const spec = bandOnShelf(band(more), SOLES);
    if (!spec.ok) throw new Error(spec.trouble.code);
    return spec.value;
  };

  test("a count gets the widest sole that there is room for", () => {
    // 40 / 5 = 8 mm: the sole of 9 is too wide, that of 6.35 is not; 40 - 31.75 = 8.25 is left.
    const spec = made({ count: 5 });
    expect(spec.radiusMm).toBe(6.35);
    expect(spec.sweepDeg).toBeCloseTo(60, 9);
    const layout = bandLayout(spec);
    expect(layout.ok && layout.value.endMm).toBeCloseTo(4.125, 9);
  });

  test("a sole that is not 60° wide makes parts as wide as it is", () => {
    const layout = bandLayout(made({ count: 4 }));
    expect(layout.ok && layout.value.partMm).toBeCloseTo(9, 9);
    expect(layout.ok && layout.value.radiusMm).toBe(9.525);
  });

  test("a radius stays; a sole that has it says how wide a part is", () => {
    expect(made({ radiusMm: 9.525 }).sweepDeg).toBeCloseTo((2 * Math.asin(4.5 / 9.525) * 180) / Math.PI, 9);
    expect(made({ radiusMm: 7 })).toEqual(band({ radiusMm: 7 }));
  });

  test("where every sole is too wide it is refused", () => {
    const spec = bandOnShelf(band({ count: 12 }), SOLES);
    expect(spec.ok === false && spec.trouble.code).toBe("band-no-sole");
  });
});

test("flutes are sunk, reeds stand; both end on the band's own width", () => {
  const built = (of: "reeds" | "flutes", thicknessMm: number, startHeightMm: number) => {
    const section = buildSection({
      name: "pilaster",
      stick: { widthMm: 60, thicknessMm },
      startHeightMm,
      parts: [
        { kind: "fillet", widthMm: 10 },
        { kind: "band", of, widthMm: 40, count: 5, filletMm: 1, leastEndMm: 3, name: "band" },
        { kind: "fillet", widthMm: "rest" },
      ],
    });
    if (!section.ok) throw new Error(section.trouble.code);
    return section.value;
  };
  const reeded = built("reeds", 20, 18);
  const fluted = built("flutes", 20, 20);
  const arcsOf = (section: typeof reeded) =>
    section.outline.pieces.filter((piece) => piece.kind === "arc").map((piece) => Math.sign(piece.bulge));
  expect(arcsOf(reeded)).toEqual([1, 1, 1, 1, 1]);
  expect(arcsOf(fluted)).toEqual([-1, -1, -1, -1, -1]);
  const [span] = fluted.named.filter((one) => one.kind === "band");
  // Five flutes, four fillets, two ends, walked from the far edge.
  expect(span?.count).toBe(11);
  const pieces = fluted.outline.pieces.slice(span?.first, (span?.first ?? 0) + 11);
  expect(pieces[0]?.from.x).toBeCloseTo(50, 9);
  expect(pieces[10]?.to.x).toBeCloseTo(10, 9);
});
