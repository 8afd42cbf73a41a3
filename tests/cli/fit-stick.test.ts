/** The stick of the chart cabinet's cornice: sizes, bevels, what is too small to hold, what is built up. */
import { fileURLToPath } from "node:url";
import { afterAll, beforeAll, expect, test } from "vitest";
import { type Bench, newBench, runHere } from "./run.ts";

const CORNICE = fileURLToPath(new URL("../../examples/cornice.json", import.meta.url));

/** 8 × 4 mm: no bench holds it. */
const TINY_SVG = `<svg xmlns="http://www.w3.org/2000/svg" width="8mm" height="4mm" viewBox="0 0 8 4">
  <path id="section" d="M0 4 H8 V2 H6 V0 H0 Z"/>
</svg>
`;

let bench: Bench;
beforeAll(async () => {
  bench = await newBench();
  await bench.put("tiny.svg", TINY_SVG);
});
afterAll(() => bench.clear());

async function numbersOf(...words: readonly string[]): Promise<Record<string, unknown>> {
  const ran = await runHere(["stick", ...words, "--json"]);
  expect(ran).toMatchObject({ code: 0 });
  return JSON.parse(ran.out) as Record<string, unknown>;
}

test("planed is the drawn stick with 50 mm at each end, bought is 6, 4 and 2 × 25 more", async () => {
  expect((await numbersOf(CORNICE, "--length", "1355")).stock).toMatchObject({
    planed: { widthMm: 68, thicknessMm: 22, lengthMm: 1455 },
    buy: { widthMm: 74, thicknessMm: 26, lengthMm: 1505 },
  });
});

test("the bevels are those of the job: 14 mm up at 52° and 6 mm up at 38°", async () => {
  const { bevels } = (await numbersOf(CORNICE, "--length", "1355")).bevels as {
    bevels: { edge: string; fromBackDeg: number; onEdgeMm: number; onBackMm: number }[];
  };
  expect(bevels.map(({ edge }) => edge)).toEqual(["gauge edge", "far edge"]);
  expect(bevels[0]?.onBackMm).toBeCloseTo(14 / Math.tan((52 * Math.PI) / 180), 6);
  expect(bevels[1]?.onBackMm).toBeCloseTo(6 / Math.tan((38 * Math.PI) / 180), 6);
  expect(bevels[0]?.onEdgeMm).toBeCloseTo(14, 6);
});

test("too small to hold: a wide board instead", async () => {
  const ran = await runHere(["stick", bench.path("tiny.svg"), "--length", "400", "--count", "3"]);
  expect(ran.code).toBe(0);
  const said = ran.out.replace(/\s+/g, " ");
  expect(said).toContain("Too small to hold safely");
  // Three times 4 mm and 5 mm for sawing and planing, and 80 mm to hold.
  expect(said).toContain("plane it to 107 mm × 8 mm");
});

test("timber at hand too small: parts that fit it, with the runner-up", async () => {
  const { builtUp } = (await numbersOf(CORNICE, "--length", "1355", "--timber", "50x18")) as {
    builtUp: { best: { pieces: { planed: { widthMm: number; thicknessMm: number } }[]; woodMm2: number } };
  };
  expect(builtUp.best.pieces.length).toBeGreaterThan(1);
  for (const { planed } of builtUp.best.pieces) {
    const [less, more] = [planed.widthMm, planed.thicknessMm].sort((a, b) => a - b);
    expect(less).toBeLessThanOrEqual(18);
    expect(more).toBeLessThanOrEqual(50);
  }
});

test("canted: the section turned, its drawn sides sawn last", async () => {
  const { out } = await runHere(["stick", CORNICE, "--length", "1355", "--cant", "12"]);
  expect(out).toContain("the section turned by 12°");
  expect(out).toContain("Saw last");
});
