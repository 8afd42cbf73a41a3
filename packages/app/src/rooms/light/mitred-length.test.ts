import { ringFromVertices } from "mouldwright/curve";
import { DRAWING_LAMP, type Hanging, sectionInLight } from "mouldwright/light";
import { describe, expect, test } from "vitest";
import { mitredLength } from "./mitred-length.ts";

const LEVEL: Hanging = { run: "level", firstEdge: "gauge edge", springFromWallDeg: 0 };

/** A plain block 40 wide and 20 thick: 800 mm² whose middle stands 10 mm out of the wall. */
function block(hanging: Hanging = LEVEL) {
  const ring = ringFromVertices([
    [0, 0],
    [40, 0],
    [40, 20],
    [0, 20],
  ]);
  const section = { name: "Block", stick: ring, outline: ring, freeSpans: [], named: [] };
  const lit = sectionInLight(section, DRAWING_LAMP, hanging);
  if (!lit.ok) throw new Error(lit.trouble.code);
  return lit.value;
}

/** Volume inside closed triangles that face out, mm³ (divergence theorem). */
function volumeMm3(numbers: Float32Array): number {
  let six = 0;
  for (let i = 0; i < numbers.length; i += 9) {
    const [ax = 0, ay = 0, az = 0, bx = 0, by = 0, bz = 0, cx = 0, cy = 0, cz = 0] = numbers.subarray(
      i,
      i + 9,
    );
    six += ax * (by * cz - bz * cy) + ay * (bz * cx - bx * cz) + az * (bx * cy - by * cx);
  }
  return six / 6;
}

function extentOf(numbers: Float32Array, axis: 0 | 1 | 2): readonly [number, number] {
  const values = [...numbers].filter((_, index) => index % 3 === axis);
  return [Math.min(...values), Math.max(...values)];
}

describe("a level run", () => {
  test("round an outside corner both pieces are longer by how far they stand out, and face out", () => {
    const { pieces, lengthMm } = mitredLength(block(), "outside");
    expect(pieces).toHaveLength(2);
    for (const piece of pieces) expect(volumeMm3(piece)).toBeCloseTo(800 * (lengthMm + 10), -1);
    const [along, round] = pieces;
    expect(extentOf(along!, 0)[1]).toBeCloseTo(20, 4);
    expect(extentOf(along!, 2)).toEqual([0, 20]);
    // The second runs back along the case's side, out of it to the right.
    expect(extentOf(round!, 2)[0]).toBeCloseTo(-lengthMm, 3);
    expect(extentOf(round!, 0)[1]).toBeCloseTo(20, 4);
  });

  test("into an inside corner they are shorter by as much", () => {
    const { pieces, lengthMm } = mitredLength(block(), "inside");
    for (const piece of pieces) expect(volumeMm3(piece)).toBeCloseTo(800 * (lengthMm - 10), -1);
    expect(extentOf(pieces[1]!, 2)[1]).toBeCloseTo(lengthMm, 3);
  });

  test("straight it is one piece, square at both ends", () => {
    const { pieces, lengthMm } = mitredLength(block(), "none");
    expect(pieces).toHaveLength(1);
    expect(volumeMm3(pieces[0]!)).toBeCloseTo(800 * lengthMm, -1);
  });
});

test("an upright run meets the level one over it in the plane of the wall", () => {
  const { pieces, lengthMm } = mitredLength(block({ ...LEVEL, run: "upright" }), "outside");
  const [upright, over] = pieces;
  // The outer edge is as long as the length, the inner one shorter by the width: on average by half of it.
  for (const piece of pieces) expect(volumeMm3(piece)).toBeCloseTo(800 * (lengthMm - 20), -1);
  expect(extentOf(upright!, 0)).toEqual([0, 40]);
  expect(extentOf(upright!, 1)[1]).toBeCloseTo(0, 4);
  expect(extentOf(over!, 1)[0]).toBeCloseTo(-40, 3);
  expect(extentOf(over!, 0)[1]).toBeCloseTo(lengthMm, 3);
});
