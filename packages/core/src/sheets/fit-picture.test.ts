/** Every picture of fitting, over odd angles and sizes: nothing overlaps, nothing leaves the paper, no word is lost. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  askRakePoint,
  builtUp,
  cornerFromAngle,
  cornice,
  type FrameQuestion,
  frame,
  hip,
  hopper,
  mitre,
  mitreSeasons,
  rake,
  riseOf,
  scribe,
  shareOut,
  sideMoulding,
  springFrom,
  stickFor,
  unlikeMitre,
} from "../making/index.ts";
import type { Outcome } from "../measure/index.ts";
import { buildSection, type Section } from "../section/index.ts";
import { equilibriumMoisture, findTimber, movement } from "../timber/index.ts";
import { type Drawing, flatItems, type Text } from "./drawing.ts";
import {
  drawCornice,
  drawFrame,
  drawHip,
  drawHopper,
  drawMitre,
  drawMoisture,
  drawMovement,
  drawRake,
  drawRakePoint,
  drawRod,
  drawSawCut,
  drawScribes,
  drawSideMoulding,
  drawStick,
  drawTimber,
  drawUnlike,
} from "./fit-picture.ts";
import { boxesOverlap, textBox } from "./labels.ts";
import { writeSvg } from "./write-svg.ts";

const RUNS = { seed: 20261124, numRuns: 60 };

function taken<T>(outcome: Outcome<T>): T {
  if (!outcome.ok) throw new Error(outcome.trouble.code);
  return outcome.value;
}

function textsOf(drawing: Drawing): readonly Text[] {
  return flatItems(drawing.items).filter((item): item is Text => item.kind === "text");
}

/** Lettering on paper: pairs that overlap, and pieces that leave it. */
function faultsOf(drawing: Drawing): readonly string[] {
  const texts = textsOf(drawing).filter(({ text }) => text !== "");
  const boxes = texts.map(textBox);
  const outside = texts.flatMap(({ text }, index) => {
    const box = boxes[index]!;
    const isInside =
      box.minX >= 0 && box.minY >= 0 && box.maxX <= drawing.widthMm && box.maxY <= drawing.heightMm;
    return isInside ? [] : [`“${text}” leaves the paper`];
  });
  const over = texts.flatMap(({ text }, index) =>
    texts.slice(index + 1).flatMap((other, step) => {
      const meets = boxesOverlap(boxes[index]!, boxes[index + 1 + step]!);
      return meets ? [`“${text}” covers “${other.text}”`] : [];
    }),
  );
  return [...outside, ...over];
}

function wordsOf(drawing: Drawing): readonly string[] {
  return textsOf(drawing).map(({ text }) => text);
}

const CORNICE: Section = taken(
  buildSection({
    name: "Trial cornice",
    stick: { widthMm: 68, thicknessMm: 22 },
    parts: [
      { kind: "fillet", widthMm: 7 },
      { kind: "step", riseMm: -2.5 },
      { kind: "cyma recta", acrossMm: 30, riseMm: -8 },
      { kind: "fillet", widthMm: "rest" },
    ],
    back: [
      { kind: "bevel", edge: "gauge", riseMm: 10, fromBackDeg: 52 },
      { kind: "bevel", edge: "far", riseMm: 6, fromBackDeg: 38 },
    ],
  }),
);

test("the check sees lettering that covers other lettering or leaves the paper", () => {
  const spring = taken(springFrom("wall", 38));
  const drawing = drawMitre(taken(mitre({ spring, corner: taken(cornerFromAngle(90)) })), { unit: "mm" });
  const keep = textsOf(drawing).find(({ text }) => text === "KEEP")!;
  const spoilt = [keep, { ...keep, text: "away", at: [-3, 20] as const }];
  expect(faultsOf({ ...drawing, items: [...drawing.items, ...spoilt] })).toEqual([
    "“away” leaves the paper",
    "“KEEP” covers “KEEP”",
  ]);
});

describe("on a narrow page, pictures alone", () => {
  const options = { unit: "mm", page: { widthMm: 94, shows: "pictures" } } as const;

  test("every picture stands below the one before, as wide as the page, without title or notes", () => {
    const question = { spring: taken(springFrom("wall", 38)), corner: taken(cornerFromAngle(90)) };
    const answer = taken(mitre(question));
    const drawing = drawMitre(answer, options);
    expect(drawing.widthMm).toBe(94);
    expect(faultsOf(drawing)).toEqual([]);
    expect(wordsOf(drawing).filter((word) => word === "KEEP")).toHaveLength(2);
    expect(wordsOf(drawing)).not.toContain(drawMitre(answer, { unit: "mm" }).title);
    const panels = drawing.items.filter((item) => item.kind === "group" && item.role === "panel");
    expect(panels).toHaveLength(7);
  });

  test("stick, frame and one cut at the saw are readable", () => {
    const stick = taken(stickFor({ section: CORNICE, way: "flat", lengthMm: 1200 }));
    expect(faultsOf(drawStick(stick, null, options))).toEqual([]);
    const shape = { kind: "rectangle", acrossMm: 300, upMm: 400 } as const;
    const sizes = { rebateMm: 8, allowanceMm: 2 };
    const made = taken(frame({ shape, stated: "sight", widthMm: 40, ...sizes }));
    expect(faultsOf(drawFrame(made, sizes, null, options))).toEqual([]);
    const { laidFlat } = taken(
      mitre({ spring: taken(springFrom("wall", 45)), corner: taken(cornerFromAngle(135, "outside")) }),
    );
    const drawing = drawSawCut("Left-hand piece", laidFlat.leftPiece, options);
    expect(faultsOf(drawing)).toEqual([]);
    expect(wordsOf(drawing)).toEqual(expect.arrayContaining(["long point", "short point", "KEEP"]));
  });
});

describe("mitres", () => {
  const anyMitre = fc.record({
    springDeg: fc.double({ min: 0, max: 90, noNaN: true }),
    cornerDeg: fc.double({ min: 30, max: 175, noNaN: true }),
    kind: fc.constantFrom("inside" as const, "outside" as const),
    bladeLeans: fc.constantFrom("left" as const, "right" as const),
  });

  test("of any spring and corner are readable, with every word that the saw needs", () => {
    fc.assert(
      fc.property(anyMitre, ({ springDeg, cornerDeg, kind, bladeLeans }) => {
        const spring = taken(springFrom("wall", springDeg));
        const corner = taken(cornerFromAngle(cornerDeg, kind));
        const drawing = drawMitre(taken(mitre({ spring, corner, bladeLeans })), { unit: "mm" });
        expect(faultsOf(drawing)).toEqual([]);
        const words = wordsOf(drawing);
        for (const [word, times] of [
          ["KEEP", 2],
          ["offcut", 2],
          ["fence", 3],
          ["you stand here", 2],
        ] as const) {
          expect(words.filter((one) => one === word)).toHaveLength(times);
        }
        expect(words.filter((one) => one.startsWith("handle"))).toHaveLength(2);
        expect(words.filter((one) => one.startsWith("blade "))).toHaveLength(2);
      }),
      RUNS,
    );
  });

  test("the long point lies where the kept piece is longest", () => {
    // 38° at 90° inside, left piece: handle to the right, keep left: the cut runs away from the piece towards you.
    const answer = taken(
      mitre({ spring: taken(springFrom("wall", 38)), corner: taken(cornerFromAngle(90)) }),
    );
    const texts = textsOf(drawMitre(answer, { unit: "mm" }));
    const [longLeft] = texts.filter(({ text }) => text === "long point");
    const [shortLeft] = texts.filter(({ text }) => text === "short point");
    expect(answer.laidFlat.leftPiece).toMatchObject({ turnHandleTo: "right", keep: "left" });
    expect(longLeft!.at[1]).toBeGreaterThan(shortLeft!.at[1]);
  });
});

describe("frames", () => {
  const sizes = { rebateMm: 8, allowanceMm: 2 };
  const asked: readonly (readonly [string, FrameQuestion])[] = [
    [
      "a rectangle",
      { shape: { kind: "rectangle", acrossMm: 300, upMm: 400 }, stated: "sight", widthMm: 30, ...sizes },
    ],
    [
      "a slit",
      { shape: { kind: "rectangle", acrossMm: 20, upMm: 900 }, stated: "sight", widthMm: 40, ...sizes },
    ],
    ["a triangle", { shape: { kind: "regular", sides: 3, sideMm: 300 }, stated: "sight", widthMm: 30 }],
    ["twelve sides", { shape: { kind: "regular", sides: 12, sideMm: 100 }, stated: "outside", widthMm: 20 }],
    [
      "four unlike corners",
      {
        shape: {
          kind: "polygon",
          corners: [
            { x: 0, y: 0 },
            { x: 400, y: 0 },
            { x: 360, y: 300 },
            { x: 60, y: 260 },
          ],
        },
        stated: "sight",
        widthMm: [30, 40, 30, 40],
      },
    ],
  ];
  test.each(asked)("%s", (_, question) => {
    const answer = taken(frame(question));
    const drawing = drawFrame(answer, sizes, null, { unit: "in" });
    expect(faultsOf(drawing)).toEqual([]);
    expect(wordsOf(drawing)).toEqual(
      expect.arrayContaining(answer.rails.map(({ number }) => String(number))),
    );
  });

  test.each([
    [12, 6],
    [6, 12],
    [8, 8],
  ])("the mitre's seasons from %d to %d", (fromPercent, toPercent) => {
    const timber = taken(findTimber("black cherry"));
    const seasons = taken(mitreSeasons({ timber, widthMm: 60, fromPercent, toPercent, sawn: "flat" }));
    const answer = taken(frame(asked[0]![1]));
    expect(faultsOf(drawFrame(answer, sizes, seasons, { unit: "mm" }))).toEqual([]);
  });
});

describe("rakes", () => {
  test.each([0, 5, 22.5, 45, 75])("a section on a slope of %d°", (slopeDeg) => {
    const placing = { springFromWallDeg: 38, wallEdge: "far edge" } as const;
    const answer = taken(rake({ section: CORNICE, given: "level", placing, slopeDeg }));
    const drawing = drawRake(answer, placing, { unit: "in" });
    expect(faultsOf(drawing)).toEqual([]);
    expect(wordsOf(drawing).filter((one) => one === "KEEP")).toHaveLength(5);
  });

  test.each([
    [25, 25, 22.5],
    [0, 40, 10],
    [60, 0, 60],
  ])("a point %d out and %d up on %d°", (projectionMm, heightMm, slopeDeg) => {
    const rise = riseOf(slopeDeg);
    const point = taken(askRakePoint({ projectionMm, heightMm }, rise));
    expect(faultsOf(drawRakePoint(point, taken(rise), { unit: "mm" }))).toEqual([]);
  });
});

test("cornices with every kind of corner and end", () => {
  const spring = taken(springFrom("wall", 38));
  const corner = (angleDeg: number, kind: "inside" | "outside") => ({
    corner: taken(cornerFromAngle(angleDeg, kind)),
  });
  const answer = taken(
    cornice({
      spring,
      projectionMm: 50,
      heightMm: 60,
      wallsMm: [1800, 2400, 420, 1300, 900],
      corners: [corner(91, "inside"), corner(90, "inside"), corner(90, "outside"), corner(135, "outside")],
      start: "return",
      end: "return",
    }),
  );
  const drawing = drawCornice(answer, { name: "Trial run", projectionMm: 50, scribes: [] }, { unit: "mm" });
  expect(faultsOf(drawing)).toEqual([]);
  const words = wordsOf(drawing);
  expect(words).toEqual(expect.arrayContaining(answer.pieces.map(({ number }) => String(number))));
});

test("scribes of several corners and both hands, at full size and in small", () => {
  const placing = { springFromWallDeg: 38, wallEdge: "far edge" as const };
  const of = (cornerDeg: number, end: "left" | "right", pieces: readonly number[]) => ({
    scribe: taken(scribe({ section: CORNICE, placing, corner: taken(cornerFromAngle(cornerDeg)) })),
    end,
    pieces,
  });
  const scribes = [of(91, "left", [2, 4]), of(88.5, "right", [3]), of(135, "left", [5])];
  const drawing = drawScribes(scribes, "Trial run", { unit: "mm" });
  expect(faultsOf(drawing)).toEqual([]);
  const outlines = drawing.items.filter((item) => item.kind === "group" && item.role === "scribe");
  expect(outlines).toHaveLength(scribes.length);
  const spring = taken(springFrom("wall", 38));
  const corners = [91, 88.5].map((deg) => ({ corner: taken(cornerFromAngle(deg)) }));
  const sizes = { spring, projectionMm: 50, heightMm: 60, wallsMm: [900, 900, 900], corners };
  const run = drawCornice(taken(cornice(sizes)), { name: "Run", projectionMm: 50, scribes }, { unit: "in" });
  expect(faultsOf(run)).toEqual([]);
});

describe("hoppers", () => {
  test("of any number of sides and any slope are readable", () => {
    const asked = fc.record({
      sides: fc.integer({ min: 3, max: 12 }),
      fromLevelDeg: fc.double({ min: 0, max: 90, noNaN: true }),
      hasSizes: fc.boolean(),
    });
    fc.assert(
      fc.property(asked, ({ sides, fromLevelDeg, hasSizes }) => {
        const sizes = hasSizes ? { widthMm: 120, narrowEdgeMm: 200 } : {};
        const drawing = drawHopper(taken(hopper({ sides, slope: { fromLevelDeg }, ...sizes })), {
          unit: "mm",
        });
        expect(faultsOf(drawing)).toEqual([]);
        expect(wordsOf(drawing).filter((word) => word === "narrow edge").length).toBeGreaterThanOrEqual(3);
      }),
      RUNS,
    );
  });
});

describe("unlike mouldings", () => {
  test("of any projections and corners are readable, curved ones with numbered points", () => {
    const asked = fc.record({
      firstMm: fc.double({ min: 10, max: 120, noNaN: true }),
      secondMm: fc.double({ min: 10, max: 120, noNaN: true }),
      cornerDeg: fc.double({ min: 60, max: 150, noNaN: true }),
      kind: fc.constantFrom("inside" as const, "outside" as const),
      isCurved: fc.boolean(),
      // A sheet, and the screen of a phone.
      page: fc.constantFrom(undefined, { widthMm: 94, shows: "pictures" as const }),
    });
    fc.assert(
      fc.property(asked, ({ firstMm, secondMm, cornerDeg, kind, isCurved, page }) => {
        const spring = taken(springFrom("wall", 38));
        const sizes = { heightMm: 60, spring };
        const face = [
          { x: 0, y: 0 },
          { x: firstMm * 0.7, y: 20 },
          { x: firstMm, y: 60 },
        ];
        const answer = unlikeMitre({
          corner: taken(cornerFromAngle(cornerDeg, kind)),
          first: { projectionMm: firstMm, ...sizes, ...(isCurved ? { face } : {}) },
          second: { projectionMm: secondMm, ...sizes },
        });
        if (!answer.ok) return;
        const drawing = drawUnlike(answer.value, { firstMm, secondMm }, { unit: "mm", page });
        expect(faultsOf(drawing)).toEqual([]);
        const words = wordsOf(drawing);
        expect(words).toEqual(expect.arrayContaining(["first", "second", "you stand here"]));
        if (answer.value.line === "curved") {
          for (const [index] of answer.value.points.entries()) {
            expect(words.filter((word) => word === String(index + 1)).length).toBeGreaterThanOrEqual(2);
          }
        }
      }),
      RUNS,
    );
  });
});

test("hips and valleys, like and unlike", () => {
  for (const [mainDeg, adjacentDeg, cornerDeg] of [
    [30, 30, 90],
    [35, 50, 90],
    [12, 70, 135],
    [60, 20, 60],
  ] as const) {
    for (const name of ["hip", "valley"] as const) {
      const answer = taken(hip({ mainDeg, adjacentDeg, cornerDeg }));
      expect(faultsOf(drawHip(answer, { runMm: 300, name }, { unit: "in" }))).toEqual([]);
      expect(faultsOf(drawHip(answer, { runMm: null, name }, { unit: "mm" }))).toEqual([]);
    }
  }
});

test("mouldings along a solid side, with no screws, few and many", () => {
  const timber = taken(findTimber("black cherry"));
  const season = { sawn: "flat", fittedPercent: 9, driestPercent: 6, wettestPercent: 12 } as const;
  for (const screwsMm of [[], [120, 240, 350], [0, 20, 40, 60, 80, 100, 380]]) {
    const answer = taken(sideMoulding({ timber, ...season, depthMm: 380, screwsMm }));
    for (const unit of ["mm", "in"] as const)
      expect(faultsOf(drawSideMoulding(answer, { unit }))).toEqual([]);
  }
  expect(faultsOf(drawTimber(timber, { unit: "mm" }))).toEqual([]);
});

test("a section built up of parts, with its runner-up", () => {
  const stick = taken(stickFor({ section: CORNICE, way: "flat", lengthMm: 900 }));
  const built = taken(builtUp({ section: CORNICE, timber: { widthMm: 50, thicknessMm: 18 }, lengthMm: 900 }));
  expect(built.runnerUp).not.toBeNull();
  const drawing = drawStick(stick, built, { unit: "mm" });
  expect(faultsOf(drawing)).toEqual([]);
  expect(wordsOf(drawing).join(" ")).toContain("runner-up");
});

test("sections on the stick, each way of working", () => {
  for (const way of ["flat", "bevelled first", "canted"] as const) {
    const answer = taken(stickFor({ section: CORNICE, way, lengthMm: 900 }));
    expect(faultsOf(drawStick(answer, null, { unit: "in" }))).toEqual([]);
  }
});

test("boards and airs", () => {
  const timber = taken(findTimber("black cherry"));
  for (const [fromPercent, toPercent] of [
    [12, 6],
    [0, 30],
    [9, 9],
  ] as const) {
    for (const sawn of ["flat", "quarter"] as const) {
      const answer = taken(movement({ timber, widthMm: 60, thicknessMm: 22, fromPercent, toPercent, sawn }));
      expect(faultsOf(drawMovement(answer, { sawn, fromPercent, toPercent }, { unit: "mm" }))).toEqual([]);
    }
  }
  for (const [celsius, humidity] of [
    [21, 50],
    [-30, 0],
    [120, 100],
    [0, 97],
  ] as const) {
    const drawing = drawMoisture(taken(equilibriumMoisture({ celsius }, humidity)), { unit: "mm" });
    expect(faultsOf(drawing)).toEqual([]);
  }
});

test("rods with many short pieces stay readable", () => {
  fc.assert(
    fc.property(fc.array(fc.integer({ min: 20, max: 700 }), { minLength: 1, maxLength: 12 }), (lengths) => {
      const answer = taken(
        shareOut({
          runs: [{ name: "Piece", ends: "closed", pieces: lengths.map((lengthMm) => ({ lengthMm })) }],
          sticks: [{ lengthMm: 2400, count: 12, badPlaces: [{ fromMm: 900, toMm: 960, why: "knot" }] }],
          search: { packingSteps: 2000, neighbourSteps: 2000 },
        }),
      );
      expect(faultsOf(drawRod(answer, "Trial", { unit: "mm" }))).toEqual([]);
    }),
    { ...RUNS, numRuns: 30 },
  );
});

test("the same answer gives the same picture, byte for byte", () => {
  const answer = taken(mitre({ spring: taken(springFrom("wall", 38)), corner: taken(cornerFromAngle(90)) }));
  expect(writeSvg(drawMitre(answer, { unit: "mm" }))).toBe(writeSvg(drawMitre(answer, { unit: "mm" })));
});
