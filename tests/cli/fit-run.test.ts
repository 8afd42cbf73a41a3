/** Cornices and lengths from their files: the chart cabinet, the office and the barometer case. */
import { fileURLToPath } from "node:url";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { type Bench, newBench, runHere } from "./run.ts";

const example = (name: string): string => fileURLToPath(new URL(`../../examples/${name}`, import.meta.url));

let bench: Bench;
beforeAll(async () => {
  bench = await newBench();
});
afterAll(() => bench.clear());

const RUN = {
  format: "mouldwright/cornice",
  version: 1,
  name: "Trial run",
  springFromWallDeg: 38,
  projectionMm: 50,
  heightMm: 60,
  wallsMm: [400, 1000, 400],
  corners: [
    { cornerDeg: 90, kind: "outside" },
    { cornerDeg: 90, kind: "outside" },
  ],
};

interface Piece {
  readonly kind: string;
  readonly backMm: number;
  readonly frontMm: number;
  readonly longMm: number;
  readonly left: { readonly joint: string };
  readonly right: { readonly joint: string };
}

async function numbersOf(...words: readonly string[]): Promise<Record<string, unknown>> {
  const ran = await runHere([...words, "--json"]);
  expect(ran).toMatchObject({ code: 0 });
  return JSON.parse(ran.out) as Record<string, unknown>;
}

async function piecesOf(run: object, ...words: readonly string[]): Promise<readonly Piece[]> {
  const path = await bench.put("run.json", JSON.stringify(run));
  return (await numbersOf("cornice", path, ...words)).pieces as readonly Piece[];
}

describe("cornice", () => {
  test("round three sides of a case: the front runs on by the projection at each outside corner", async () => {
    const pieces = await piecesOf(RUN);
    expect(pieces.map(({ backMm, frontMm }) => [backMm, Math.round(frontMm * 1e6) / 1e6])).toEqual([
      [400, 450],
      [1000, 1100],
      [400, 450],
    ]);
  });

  test("with returns: two more pieces, as long in front as the moulding comes out", async () => {
    const pieces = await piecesOf({ ...RUN, wallsMm: [1000], corners: [], start: "return", end: "return" });
    expect(pieces.map(({ kind }) => kind)).toEqual(["return", "wall", "return"]);
    expect(pieces[0]?.frontMm).toBeCloseTo(50, 9);
    expect(pieces[1]?.frontMm).toBeCloseTo(1100, 9);
  });

  test("an inside corner is scribed: the earlier piece butts, the later one is cut to it", async () => {
    const pieces = await piecesOf({ ...RUN, wallsMm: [1000, 800], corners: [{ cornerDeg: 90 }] });
    expect([pieces[0]?.right.joint, pieces[1]?.left.joint]).toEqual(["butt", "scribed"]);
  });

  test("the chart cabinet's cornice takes spring and sizes from its section, and its sticks hold it", async () => {
    const numbers = await numbersOf(
      "cornice",
      example("fit/cabinet-cornice.json"),
      "--section",
      example("cornice.json"),
    );
    expect(numbers.springFromWallDeg).toBe(38);
    const projectionMm = numbers.projectionMm as number;
    const pieces = numbers.pieces as readonly Piece[];
    expect(pieces.map(({ kind }) => kind)).toEqual(["return", "wall", "wall", "wall", "return"]);
    const [, side, front] = pieces;
    expect(front?.longMm).toBeCloseTo(1240 + 2 * projectionMm, 6);
    expect(side?.longMm).toBeCloseTo(380 + 2 * projectionMm, 6);
    // One stick holds all five in their order, so every mitre meets in wood that lay side by side.
    expect(numbers.lengths).toMatchObject({ sticksUsed: 1, neighbours: { meetings: 4, together: 4 } });
  });

  test("the office's plinth: a scribe at full size, as high on paper as the moulding", async () => {
    const scribe = bench.path("scribe.svg");
    const words = [
      "cornice",
      example("fit/office-plinth.json"),
      "--section",
      example("plinth.json"),
      "--wall",
      "gauge",
    ];
    const numbers = await numbersOf(...words, "--scribe", scribe);
    const scribes = numbers.scribes as readonly {
      readonly cornerDeg: number;
      readonly end: string;
      readonly pieces: readonly number[];
      readonly faceLineMm: readonly (readonly [number, number])[];
    }[];
    // The corner out of square and the square one have an outline each.
    expect(scribes.map(({ end, pieces }) => [end, pieces])).toEqual([
      ["left", [3]],
      ["left", [4]],
    ]);
    const line = scribes[0]?.faceLineMm ?? [];
    const text = await bench.read("scribe.svg");
    const [, width, height] = /width="([\d.]+)mm" height="([\d.]+)mm"/.exec(text) ?? [];
    expect(text).toContain(`viewBox="0 0 ${width} ${height}"`);
    // The wide line of the scribe, in millimetres of paper.
    expect([...text.matchAll(/data-role="scribe"/g)]).toHaveLength(2);
    const drawn = /<g data-role="scribe">[\s\S]*?<\/g>/.exec(text)?.[0] ?? "";
    const wide = [...drawn.matchAll(/d="([^"]+)"[^>]*stroke-width="0.5"/g)].at(-1)?.[1] ?? "";
    const ys = [...wide.matchAll(/[ML]([-\d.]+) ([-\d.]+)/g)].map((found) => Number(found[2]));
    const heights = line.map(([, y]) => y);
    expect(Math.max(...ys) - Math.min(...ys)).toBeCloseTo(Math.max(...heights) - Math.min(...heights), 2);
  });

  test("a run that misses its start is told", async () => {
    const square = Array.from({ length: 4 }, () => ({ cornerDeg: 90, kind: "inside" }));
    const path = await bench.put(
      "room.json",
      JSON.stringify({ ...RUN, wallsMm: [3000, 4000, 3000, 4050], corners: square }),
    );
    const ran = await runHere(["cornice", path]);
    expect(ran.code).toBe(0);
    expect(ran.err).toContain("miss their own start");
  });
});

describe("lengths", () => {
  test("the barometer case's frame: one stick, the knot left out, both pairs side by side", async () => {
    const numbers = await numbersOf("lengths", example("fit/barometer-lengths.json"));
    expect(numbers).toMatchObject({ sticksUsed: 1, sticksStanding: "proven" });
    const pieces = numbers.pieces as {
      roughFromMm: number;
      roughToMm: number;
      fromMm: number;
      toMm: number;
    }[];
    expect(
      pieces.map(({ fromMm, toMm }) => Math.round((toMm - fromMm) * 1e6) / 1e6).sort((a, b) => a - b),
    ).toEqual([150, 150, 680, 680]);
    for (const piece of pieces) expect(piece.roughToMm <= 905 || piece.roughFromMm >= 940).toBe(true);
  });

  test("frame and rod agree: the outside lengths of the frame are the pieces of the file", async () => {
    const frame = await numbersOf(
      "frame",
      "--sight",
      "90x620",
      "--width",
      "30",
      "--rebate",
      "8",
      "--allow",
      "2",
    );
    const rails = (frame.pieces as { longMm: number }[]).map(({ longMm }) => longMm).sort((a, b) => a - b);
    expect(rails).toEqual([150, 150, 680, 680]);
  });

  test("kerf, trim and planing are counted: 2 × 100 + 3 × … need exactly this stick and no shorter one", async () => {
    // 50 + (3 + 100 + 3) + 1.5 + (3 + 100 + 3) + 50
    const job = (lengthMm: number): string =>
      JSON.stringify({
        format: "mouldwright/lengths",
        version: 1,
        name: "Two",
        runs: [{ name: "Bit", pieces: [{ lengthMm: 100, count: 2 }] }],
        sticks: [{ lengthMm }],
        allowances: { kerfMm: 1.5, trimMm: 3, planingMm: 50 },
      });
    expect((await runHere(["lengths", await bench.put("fits.json", job(313.5))])).code).toBe(0);
    const short = await runHere(["lengths", await bench.put("short.json", job(313.4))]);
    expect(short.code).toBe(2);
    expect(short.err).toContain("left over");
  });
});
