import { describe, expect, test } from "vitest";
import { circlePath, flatItems, openPath, type PaperPoint, stroke } from "./drawing.ts";
import { clipPolygon, clipRun, flatPoints, isInside } from "./flat-path.ts";
import { clipItems, growthRings, wasteLines } from "./hatch.ts";
import { labelPlacer } from "./labels.ts";
import { arcMiddles, spread, turningPoints } from "./section-dimensions.ts";
import { commonScale, enlargedScale, scaleWords, toPaper } from "./stick-view.ts";
import { shortened, textWidthMm, wrapText, wrapTextTo } from "./text-width.ts";

const SQUARE: readonly PaperPoint[] = [
  [0, 0],
  [10, 0],
  [10, 10],
  [0, 10],
];

function areaOf(points: readonly PaperPoint[]): number {
  return Math.abs(
    points.reduce((sum, p, i) => {
      const q = points[(i + 1) % points.length] as PaperPoint;
      return sum + (p[0] * q[1] - q[0] * p[1]) / 2;
    }, 0),
  );
}

describe("paths as short runs", () => {
  test("an arc's points lie on its circle, over the side that the bulge says", () => {
    const over = flatPoints({ start: [10, 5], steps: [{ to: [0, 5], bulge: 1 }], closed: false });
    for (const [x, y] of over) {
      expect(Math.hypot(x - 5, y - 5)).toBeCloseTo(5, 9);
      expect(y).toBeLessThanOrEqual(5 + 1e-9);
    }
    const under = flatPoints({ start: [10, 5], steps: [{ to: [0, 5], bulge: -1 }], closed: false });
    expect(Math.max(...under.map((point) => point[1]))).toBeCloseTo(10, 1);
  });

  test("a circle's area comes out within its flattening", () => {
    expect(areaOf(flatPoints(circlePath([3, 4], 10)))).toBeCloseTo(Math.PI * 100, 0);
  });

  test("a run is cut off at the rim, and falls into two where it leaves and comes back", () => {
    const disc = { centre: [0, 0] as const, radiusMm: 5 };
    expect(
      clipRun(
        [
          [-10, 3],
          [10, 3],
        ],
        disc,
      ),
    ).toEqual([
      [
        [-4, 3],
        [4, 3],
      ],
    ]);
    expect(
      clipRun(
        [
          [-10, 6],
          [10, 6],
        ],
        disc,
      ),
    ).toEqual([]);
    expect(
      clipRun(
        [
          [0, 0],
          [20, 0],
          [20, 1],
          [0, 1],
        ],
        disc,
      ),
    ).toHaveLength(2);
  });

  test("half a disc is left of a half plane", () => {
    const half = clipPolygon(
      [
        [0, -50],
        [50, -50],
        [50, 50],
        [0, 50],
      ],
      { centre: [0, 0], radiusMm: 10 },
    );
    expect(areaOf(half)).toBeCloseTo(Math.PI * 50, 0);
  });

  test("inside by even and odd: a hole is outside", () => {
    const hole: readonly PaperPoint[] = [
      [4, 4],
      [6, 4],
      [6, 6],
      [4, 6],
    ];
    expect(isInside([SQUARE, hole], [2, 2])).toBe(true);
    expect(isInside([SQUARE, hole], [5, 5])).toBe(false);
    expect(isInside([SQUARE], [11, 5])).toBe(false);
  });
});

describe("hatches", () => {
  const wood: readonly PaperPoint[] = [
    [0, 0],
    [40, 0],
    [40, 20],
    [20, 20],
    [20, 10],
    [0, 10],
  ];

  test("growth rings stay inside the wood and are there at all", () => {
    const rings = flatItems(growthRings([wood], [25, 60]));
    expect(rings.length).toBeGreaterThan(4);
    for (const item of rings) {
      if (item.kind !== "stroke") continue;
      const points = flatPoints(item.path);
      for (const point of points.slice(1, -1)) expect(isInside([wood], point)).toBe(true);
      for (const [x, y] of points) {
        expect(Math.hypot(x - 25, y - 60)).toBeCloseTo(
          Math.hypot((points[0]?.[0] ?? 0) - 25, (points[0]?.[1] ?? 0) - 60),
          6,
        );
      }
    }
  });

  test("waste lines lie in what goes only", () => {
    const lines = flatItems(
      wasteLines(
        [SQUARE],
        [
          [
            [0, 5],
            [10, 5],
            [10, 10],
            [0, 10],
          ],
        ],
      ),
    );
    expect(lines.length).toBeGreaterThan(3);
    for (const item of lines) {
      if (item.kind !== "stroke") continue;
      for (const [, y] of flatPoints(item.path)) expect(y).toBeLessThanOrEqual(5 + 1e-9);
    }
  });

  test("nothing goes, nothing is hatched", () => {
    expect(wasteLines([SQUARE], [SQUARE])).toEqual([]);
    expect(wasteLines([], [])).toEqual([]);
  });

  test("lettering is left out of a circle of enlargement", () => {
    const inside = clipItems(
      [
        stroke(
          openPath([
            [-9, 0],
            [9, 0],
          ]),
        ),
      ],
      { centre: [0, 0], radiusMm: 2 },
    );
    expect(inside).toHaveLength(1);
  });
});

describe("the view of the stick", () => {
  const plan = {
    stick: [
      [0, 0],
      [42, 0],
      [42, 18],
      [0, 18],
    ],
    cuts: [],
  } as unknown as Parameters<typeof commonScale>[0];

  test("a stick turned by 90° anticlockwise has its far edge up", () => {
    const view = { scaleRatio: 2, cantDeg: 90, origin: [50, 100] as const };
    const [x, y] = toPaper(view, [10, 0]);
    expect(x).toBeCloseTo(50, 9);
    expect(y).toBeCloseTo(80, 9);
  });

  test("scales fill the room and are told in round figures", () => {
    // 42 × 18 mm: 105 × 45 at 2.5 : 1 fits in 106 × 55, 126 × 54 at 3 : 1 does not.
    expect(commonScale(plan, { widthMm: 106, flatMm: 55, turnedMm: 60 })).toBe(2.5);
    expect(commonScale(plan, { widthMm: 60, flatMm: 55, turnedMm: 60 })).toBe(1);
    expect(commonScale(plan, { widthMm: 20, flatMm: 55, turnedMm: 60 })).toBe(0.4);
    expect(scaleWords(2)).toBe("2 : 1");
    expect(scaleWords(2 / 3)).toBe("1 : 1.5");
    expect(scaleWords(0.2)).toBe("1 : 5");
  });

  test("an enlargement is the largest that still shows the detail whole", () => {
    // 1.5 mm at 10 : 1 is 15 mm of 30; 20 : 1 would be more than five times the picture's 2 : 1.
    expect(enlargedScale(2, 1.5, 30)).toBe(10);
    expect(enlargedScale(2, 5, 30)).toBe(5);
    expect(enlargedScale(1, 20, 30)).toBe(2);
  });
});

describe("running dimensions", () => {
  test("values too close together are spread about their middle", () => {
    expect(spread([0, 1, 2], [2, 2, 2])).toEqual([-1, 1, 3]);
    expect(spread([0, 10, 20], [2, 2, 2])).toEqual([0, 10, 20]);
    expect(spread([5, 5], [4, 2])).toEqual([3.5, 6.5]);
    expect(spread([], [])).toEqual([]);
  });

  const r = 9.525;
  // A 60° bead on a flat: crest r(1 - cos 30°) above its feet.
  const bead = [
    [r, 0, Math.tan(Math.PI / 12)],
    [0, 0],
    [0, -5],
    [r, -5],
  ] as const;

  test("crests count among the places where a section turns", () => {
    const points = turningPoints(bead);
    expect(points).toHaveLength(5);
    expect(points[1]?.[0]).toBeCloseTo(r / 2, 9);
    expect(points[1]?.[1]).toBeCloseTo(r * (1 - Math.cos(Math.PI / 6)), 9);
  });

  test("an arc has one radius and one middle", () => {
    const [arc, ...others] = arcMiddles(bead);
    expect(others).toEqual([]);
    expect(arc?.radiusMm).toBeCloseTo(r, 9);
    expect(arc?.middle[1]).toBeCloseTo(r * (1 - Math.cos(Math.PI / 6)), 1);
  });
});

describe("lettering", () => {
  test("wrapped lines fit and no word is lost", () => {
    const words = "Five-eighths round, upright, in the V whose line is 26.5 mm from the gauge edge";
    const lines = wrapText(words, 3.8, 60);
    expect(lines.join(" ")).toBe(words);
    for (const line of lines) expect(textWidthMm(line, 3.8)).toBeLessThanOrEqual(60);
  });

  test("a line too long ends with an ellipsis and fits", () => {
    expect(shortened("short", 4, 60)).toBe("short");
    const cut = shortened("a name that goes on and on and on", 4, 30);
    expect(cut.endsWith("…")).toBe(true);
    expect(textWidthMm(cut, 4)).toBeLessThanOrEqual(30);
    expect(wrapTextTo(2, "one two three four five six seven eight nine ten", 4, 20)).toHaveLength(2);
  });

  test("a label takes the next spot when the first is taken, and none when the picture is full", () => {
    const spots = [
      { at: [10, 10], anchor: "start" },
      { at: [10, 20], anchor: "start" },
    ] as const;
    const placer = labelPlacer({ minX: 0, minY: 0, maxX: 60, maxY: 40 });
    const wish = { words: "label", look: { sizeMm: 4 }, spots };
    expect(placer.place(wish)?.box.maxY).toBeCloseTo(10.96, 9);
    expect(placer.place(wish)?.box.maxY).toBeCloseTo(20.96, 9);
    const full = labelPlacer({ minX: 0, minY: 0, maxX: 60, maxY: 40 });
    full.keepFree({ minX: 0, minY: 0, maxX: 60, maxY: 40 });
    expect(full.place(wish)).toBeNull();
  });

  test("a label steps off a line, and stands on a patch of paper where it cannot", () => {
    const spots = [{ at: [10, 10], anchor: "start" }] as const;
    const wish = { words: "label", look: { sizeMm: 4 }, spots };
    const line = [
      stroke(
        openPath([
          [0, 9],
          [60, 9],
        ]),
      ),
    ];
    const roomy = labelPlacer({ minX: 0, minY: 0, maxX: 60, maxY: 40 });
    roomy.avoidLines(line);
    const aside = roomy.place(wish);
    expect(aside?.items).toHaveLength(1);
    expect((aside?.box.minY ?? 0) > 9 || (aside?.box.maxY ?? 99) < 9).toBe(true);
    const narrow = labelPlacer({ minX: 0, minY: 6, maxX: 60, maxY: 12 });
    narrow.avoidLines(line);
    expect(narrow.place(wish)?.items.map((item) => item.kind)).toEqual(["fill", "text"]);
  });
});
