/** Light and shadow by the drawing board's convention, held to published constructions. */
import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { ringFromVertices, type Vertex } from "../packages/core/src/curve/index.ts";
import {
  DRAWING_LAMP,
  type Hanging,
  type Lamp,
  type SectionInLight,
  type Stretch,
  sectionInLight,
} from "../packages/core/src/light/index.ts";
import { toDeg, toRad } from "../packages/core/src/measure/index.ts";

interface Row {
  readonly id: string;
  readonly input: Readonly<Record<string, number>>;
  readonly expected: Readonly<Record<string, unknown>>;
  readonly source: string;
}

const { rows } = JSON.parse(readFileSync(new URL("./area-i.json", import.meta.url), "utf8")) as {
  rows: readonly Row[];
};
const rowOf = (id: string): Row => rows.find((row) => row.id === id) as Row;

/** Upright against the wall, the gauge edge up: x of a section runs down the wall, y comes out of it. */
const UPRIGHT_BACK: Hanging = { run: "level", firstEdge: "gauge edge", springFromWallDeg: 0 };

/** A face over a back at y = 0, from the gauge edge (x = 0) to the far edge, in the light. */
function inLight(face: readonly Vertex[], lamp: Lamp = DRAWING_LAMP): SectionInLight {
  const [first] = face;
  const last = face.at(-1);
  if (first === undefined || last === undefined) throw new Error("a face has ends");
  // Walked from the gauge edge the ring runs clockwise; `ring` turns it.
  const outline = ringFromVertices([[0, 0], ...face, [last[0], 0]]);
  const section = { name: "check", stick: outline, outline, freeSpans: [], named: [] };
  const answer = sectionInLight(section, lamp, UPRIGHT_BACK);
  if (!answer.ok) throw new Error(answer.trouble.code);
  return answer.value;
}

const ofState = (lit: SectionInLight, state: Stretch["state"]): readonly Stretch[] =>
  lit.stretches.filter((stretch) => stretch.state === state && stretch.showsMm > 0);

function only<T>(list: readonly T[]): T {
  expect(list).toHaveLength(1);
  return list[0] as T;
}

/** A fillet of `projectionMm` over a flat: 5 mm of fillet, 45 of flat, on a back 10 thick. */
const fillet = (projectionMm: number): readonly Vertex[] => [
  [0, 10 + projectionMm],
  [5, 10 + projectionMm],
  [5, 10],
  [50, 10],
];

test("every row names its source", () => {
  expect(rows.length).toBeGreaterThan(0);
  expect(rows.filter(({ source }) => source === "")).toEqual([]);
});

describe("Area I", () => {
  test("I-01: drawn at 45 and 45 the light runs along a cube's diagonal", () => {
    const { elevation_deg, angle_to_wall_normal_deg, direction } = rowOf("I-01").expected;
    const lit = inLight(fillet(10));
    expect(lit.trueHeightDeg).toBeCloseTo(elevation_deg as number, 7);
    expect(toDeg(Math.acos(-lit.direction.out))).toBeCloseTo(angle_to_wall_normal_deg as number, 7);
    const { right, up, out } = lit.direction;
    for (const [index, value] of [right, up, out].entries()) {
      expect(value).toBeCloseTo((direction as number[])[index] as number, 9);
    }
  });

  test("I-02: a fillet's shadow is as deep as the fillet stands out", () => {
    const { input, expected } = rowOf("I-02");
    const lit = inLight(fillet(input.projection as number));
    expect(only(ofState(lit, "shadow")).showsMm).toBeCloseTo(expected.shadow_depth as number, 9);
    expect(only(lit.shadowEnds).rayMm).toBeCloseTo(expected.ray_length as number, 6);
  });

  test("I-03: on a splay coming forward below, the shadow is shorter", () => {
    const { input, expected } = rowOf("I-03");
    const { projection = 0, splay_from_vertical_deg = 0 } = input;
    const forward = 45 * Math.tan(toRad(splay_from_vertical_deg));
    const lit = inLight([
      [0, 10 + projection],
      [5, 10 + projection],
      [5, 10],
      [50, 10 + forward],
    ]);
    expect(only(ofState(lit, "shadow")).showsMm).toBeCloseTo(expected.shadow_depth_vertical as number, 6);
  });

  test("I-04: a half-round astragal on the wall", () => {
    const { input, expected } = rowOf("I-04");
    const { radius = 0 } = input;
    const centreMm = 20;
    const lit = inLight([
      [0, 10],
      // Walked from the gauge edge a swelling turns clockwise.
      [centreMm - radius, 10, -1],
      [centreMm + radius, 10],
      [60, 10],
    ]);
    expect(only(ofState(lit, "shade")).startMm - centreMm).toBeCloseTo(
      expected.shade_line_below_centre as number,
      6,
    );
    const end = only(ofState(lit, "shadow"));
    expect(end.endMm - centreMm).toBeCloseTo(expected.shadow_ends_below_centre as number, 6);
    expect(end.endMm - centreMm - radius).toBeCloseTo(expected.below_bottom_edge as number, 6);
  });

  test("I-05: a quarter-round cavetto under a sharp edge lies in shadow to its lower arris exactly", () => {
    const { radius = 0 } = rowOf("I-05").input;
    const lit = inLight([
      [0, 10 + 2 * radius],
      // The hollow's centre stands in front of its lower arris: the curve leaves the edge level and ends plumb.
      [5, 10 + 2 * radius, Math.tan(Math.PI / 8)],
      [5 + radius, 10 + radius],
      [5 + radius, 10 + radius - 2],
      [50, 10 + radius - 2],
    ]);
    const hollow = lit.stretches.filter(({ pieces }) => pieces.some(({ kind }) => kind === "arc"));
    // Its upper half is turned from the light, its lower half stands behind the edge.
    expect(hollow.map(({ state }) => state)).toEqual(["shade", "shadow"]);
    const last = hollow.at(-1) as Stretch;
    expect(last.to).toEqual({ x: 10 + radius, y: lit.widthMm - 5 - radius });
    const after = lit.stretches[lit.stretches.indexOf(last) + 1];
    expect(after?.state).not.toBe("shadow");
  });

  test("I-07: light at 26° 34′ drops half as far as it goes", () => {
    const { deg } = rowOf("I-07").expected;
    const lit = inLight(fillet(10), { ...DRAWING_LAMP, heightDeg: deg as number });
    expect(only(ofState(lit, "shadow")).showsMm).toBeCloseTo(10 / 2, 4);
  });
});
