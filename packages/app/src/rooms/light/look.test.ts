import type { Job } from "mouldwright/job";
import { DRAWING_LAMP } from "mouldwright/light";
import { buildSection, type Section } from "mouldwright/section";
import { expect, test } from "vitest";
import {
  hangingFor,
  hangingOf,
  isPreset,
  LAMP_PRESETS,
  lampOf,
  springOf,
  withHanging,
  withLamp,
} from "./look.ts";
import { ambientWords, directionWords, heightWords } from "./look-words.ts";

const JOB: Job = {
  format: "mouldwright/job",
  version: 1,
  name: "Cornice",
  section: { parts: [{ kind: "fillet", widthMm: "rest" }] },
  stick: { widthMm: 68, thicknessMm: 22 },
};

function cornice(): Section {
  const built = buildSection({
    name: "Cornice",
    stick: { widthMm: 68, thicknessMm: 22 },
    parts: [{ kind: "fillet", widthMm: "rest" }],
    back: [
      { kind: "bevel", edge: "gauge", riseMm: 14, fromBackDeg: 52 },
      { kind: "bevel", edge: "far", riseMm: 6, fromBackDeg: 38 },
    ],
  });
  if (!built.ok) throw new Error(built.trouble.code);
  return built.value;
}

test("a job that says nothing stands in the drawing board's light, and hangs by its bevels", () => {
  expect(lampOf(JOB)).toEqual(DRAWING_LAMP);
  expect(hangingOf(JOB)).toBeNull();
  const hanging = hangingFor(cornice(), null);
  expect(hanging).toMatchObject({ run: "level", firstEdge: "gauge edge" });
  expect(hanging.springFromWallDeg).toBeCloseTo(38, 6);
  expect(springOf(cornice(), "far edge")).toBeCloseTo(52, 6);
});

test("lamp and hanging are kept beside each other, the usual ones as nothing said", () => {
  const lamp = { heightDeg: 20, directionDeg: 60, ambientRatio: 0.1 };
  const hanging = { run: "upright", firstEdge: "far edge", springFromWallDeg: 0 } as const;
  const both = withHanging(withLamp(JOB, lamp), hanging);
  expect(both.light).toEqual({ lamp, hanging });
  expect(withLamp(both, DRAWING_LAMP).light).toEqual({ hanging });
  expect(withHanging(both, null).light).toEqual({ lamp });
  // The drawing board's angles with another share of the room's light are not the usual lamp.
  expect(withLamp(JOB, { ...DRAWING_LAMP, ambientRatio: 0.5 }).light).toHaveProperty("lamp");
});

test("the first lamp to begin with is the drawing board's, 45° and 45°", () => {
  const [first, second] = LAMP_PRESETS;
  if (first === undefined || second === undefined) throw new Error("no presets");
  expect([first.heightDeg, first.directionDeg]).toEqual([45, 45]);
  expect(isPreset(DRAWING_LAMP, first)).toBe(true);
  expect(isPreset(DRAWING_LAMP, second)).toBe(false);
});

test("angles in words, on both sides of level and of straight in front", () => {
  expect([heightWords(45), heightWords(0), heightWords(-30)]).toEqual([
    "45° high",
    "level",
    "30° from below",
  ]);
  expect([directionWords(45), directionWords(0), directionWords(-10)]).toEqual([
    "45° from the left",
    "straight in front",
    "10° from the right",
  ]);
  expect(ambientWords(0.25)).toBe("25 %");
});
