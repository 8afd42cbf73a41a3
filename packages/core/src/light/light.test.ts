/** Single cases that can be drawn by hand. */
import { describe, expect, test } from "vitest";
import { ringFromVertices, type Vertex } from "../curve/index.ts";
import { buildSection, type PartSpec, type Section } from "../section/index.ts";
import {
  DRAWING_LAMP,
  type Hanging,
  type Lamp,
  type SectionInLight,
  sectionInLight,
  tonesOf,
} from "./index.ts";

const LEVEL: Hanging = { run: "level", firstEdge: "gauge edge", springFromWallDeg: 0 };
const UPRIGHT: Hanging = { run: "upright", firstEdge: "gauge edge", springFromWallDeg: 0 };

/** Parts from the gauge edge on, on a back 60 wide. */
function built(parts: readonly PartSpec[], startHeightMm = 20): Section {
  const answer = buildSection({
    name: "case",
    stick: { widthMm: 60, thicknessMm: 40 },
    startHeightMm,
    parts: [...parts],
  });
  if (!answer.ok) throw new Error(answer.trouble.code);
  return answer.value;
}

function drawn(vertices: readonly Vertex[]): Section {
  const outline = ringFromVertices(vertices);
  return { name: "drawn", stick: outline, outline, freeSpans: [], named: [] };
}

function lit(section: Section, lamp: Partial<Lamp> = {}, hanging: Hanging = LEVEL): SectionInLight {
  const answer = sectionInLight(section, { ...DRAWING_LAMP, ...lamp }, hanging);
  if (!answer.ok) throw new Error(answer.trouble.code);
  return answer.value;
}

const STEP_DOWN = built([
  { kind: "fillet", widthMm: 20 },
  { kind: "step", riseMm: -8 },
  { kind: "fillet", widthMm: "rest" },
]);

const seen = (answer: SectionInLight) =>
  answer.stretches
    .filter(({ showsMm }) => showsMm > 0)
    .map(({ state, startMm, endMm }) => [state, Number(startMm.toFixed(6)), Number(endMm.toFixed(6))]);

describe("a step of 8 mm", () => {
  test.each([
    // Gwilt, Encyclopaedia of Architecture, art. 2460: at 45° the shadow is as deep as the step stands out.
    [45, 8],
    [60, 8 * Math.tan(Math.PI / 3)],
    [20, 8 * Math.tan(Math.PI / 9)],
  ])("light %d° down drops a shadow of %d mm, whatever the lamp's direction", (heightDeg, shadowMm) => {
    for (const directionDeg of [-70, 0, 45]) {
      expect(seen(lit(STEP_DOWN, { heightDeg, directionDeg }))).toEqual([
        ["light", 0, 20],
        ["shadow", 20, Number((20 + shadowMm).toFixed(6))],
        ["light", Number((20 + shadowMm).toFixed(6)), 60],
      ]);
    }
  });

  test("from straight in front, or from below, there is none", () => {
    for (const heightDeg of [0, -45]) expect(lit(STEP_DOWN, { heightDeg }).shares.shadow).toBe(0);
  });

  test("its underside is turned from the light and shows nothing", () => {
    const under = lit(STEP_DOWN).stretches[1];
    expect(under).toMatchObject({ state: "shade", isSeen: false, showsMm: 0 });
    expect(under?.fromOnStick).toEqual({ x: 20, y: 20 });
    expect(under?.toOnStick).toEqual({ x: 20, y: 12 });
  });

  test("hung the other way up it rises, and casts on the wall alone", () => {
    const turned = lit(STEP_DOWN, {}, { ...LEVEL, firstEdge: "far edge" });
    expect(seen(turned)).toEqual([
      ["light", 0, 40],
      ["light", 40, 60],
    ]);
    expect(turned.onWall.beyondLastMm).toBeCloseTo(20, 9);
    expect(turned.onWall.beyondFirstMm).toBe(0);
  });

  test("along an upright run the direction counts, and the height only dims", () => {
    for (const heightDeg of [0, 45, -60]) {
      const answer = lit(STEP_DOWN, { heightDeg, directionDeg: 60 }, UPRIGHT);
      expect(answer.shares.shadow).toBeCloseTo(8 * Math.tan(Math.PI / 3), 9);
    }
    expect(lit(STEP_DOWN, { directionDeg: -45 }, UPRIGHT).shares.shadow).toBe(0);
  });
});

describe("brightness", () => {
  const flat = built([{ kind: "fillet", widthMm: "rest" }]);

  test("a face on the wall has the cosine of the lamp's angle to it, and the room's share", () => {
    const [only] = lit(flat, { ambientRatio: 0 }).stretches;
    // Light along a cube's diagonal meets each of its faces at 1/√3.
    expect(only?.brightness.from).toBeCloseTo(1 / Math.sqrt(3), 12);
    expect(lit(flat, { ambientRatio: 1 }).stretches[0]?.brightness.from).toBe(1);
    expect(lit(flat, { heightDeg: 0, directionDeg: 0 }).stretches[0]?.brightness.from).toBeCloseTo(1, 12);
  });

  test("a swelling is brightest where it is met square on", () => {
    const torus = built([
      { kind: "fillet", widthMm: 20 },
      { kind: "torus", widthMm: 20 },
      { kind: "fillet", widthMm: "rest" },
    ]);
    const answer = lit(torus, { ambientRatio: 0, directionDeg: 0 });
    const round = answer.stretches.find(({ partName, state }) => partName === "torus" && state === "light");
    expect(round?.brightness.most).toBeCloseTo(1, 12);
    expect(round?.brightness.to).toBeCloseTo(0, 9);
    const brightest = tonesOf(answer).reduce((a, b) => (a.brightnessRatio > b.brightnessRatio ? a : b));
    expect(Math.abs((brightest.startMm + brightest.endMm) / 2 - (30 - 10 * Math.SQRT1_2))).toBeLessThan(0.2);
  });
});

test("what stands under a lip is not seen, and is told as such", () => {
  // A groove 10 mm deep, one wall of it leaning in under a lip.
  const answer = lit(
    drawn([
      [0, 0],
      [60, 0],
      [60, 20],
      [40, 20],
      [30, 10],
      [20, 10],
      [26, 20],
      [0, 20],
    ]),
    { heightDeg: 0, directionDeg: 0 },
  );
  const hidden = answer.stretches.filter(({ isSeen }) => !isSeen);
  expect(hidden.length).toBeGreaterThan(0);
  // Light along the line of sight: what is seen is lit, what is hidden is not.
  for (const { isSeen, state } of answer.stretches) expect(state === "light").toBe(isSeen);
  expect(answer.shares.light).toBeCloseTo(60, 9);
});

describe("a spring of 38°", () => {
  const sprung: Hanging = { ...LEVEL, springFromWallDeg: 38 };

  test("the flat back leans so, the first edge forward", () => {
    const answer = lit(built([{ kind: "fillet", widthMm: "rest" }]), {}, sprung);
    const radians = (38 * Math.PI) / 180;
    expect(answer.widthMm).toBeCloseTo(60 * Math.cos(radians) + 20 * Math.sin(radians), 9);
    expect(answer.projectionMm).toBeCloseTo(60 * Math.sin(radians) + 20 * Math.cos(radians), 9);
    const [edge, face] = answer.stretches;
    expect(
      [edge?.fromOnStick, edge?.toOnStick].map((at) => [at?.x, at?.y].map((v) => Math.round(v ?? 9))),
    ).toEqual([
      [0, 0],
      [0, 20],
    ]);
    // The face looks 38° down: light 45° down meets it 83° off square on in the section.
    const share = Math.sqrt(2 / 3);
    const cosine = share * Math.cos((83 * Math.PI) / 180);
    expect(face?.state).toBe("light");
    expect(face?.brightness.from).toBeCloseTo(0.75 * cosine + (0.25 * (1 + Math.cos(radians))) / 2, 12);
  });

  test("leaning the other way the face looks up and is bright", () => {
    const face = built([{ kind: "fillet", widthMm: "rest" }]);
    const bright = (hanging: Hanging) =>
      Math.max(...lit(face, { ambientRatio: 0 }, hanging).stretches.map(({ brightness }) => brightness.most));
    expect(bright({ ...LEVEL, springFromWallDeg: -38 })).toBeGreaterThan(bright(LEVEL));
  });
});

describe("refused", () => {
  test.each([
    [{ heightDeg: 90 }, {}, "light-angle"],
    [{ directionDeg: -120 }, {}, "light-angle"],
    [{ heightDeg: Number.NaN }, {}, "light-angle"],
    [{ ambientRatio: 1.4 }, {}, "light-ambient"],
    [{ ambientRatio: Number.NaN }, {}, "light-ambient"],
    [{}, { springFromWallDeg: 91 }, "light-spring"],
    [{}, { springFromWallDeg: Number.NaN }, "light-spring"],
  ])("%j %j: %s", (lamp, hanging, code) => {
    const answer = sectionInLight(STEP_DOWN, { ...DRAWING_LAMP, ...lamp }, { ...LEVEL, ...hanging });
    expect(answer).toMatchObject({ ok: false, trouble: { code } });
  });
});
