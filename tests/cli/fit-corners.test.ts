/** Hoppers, unlike mouldings, hips, solid sides and timbers on the command line; expected values by hand or printed. */
import { fileURLToPath } from "node:url";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { type Bench, newBench, runHere } from "./run.ts";

const example = (name: string): string => fileURLToPath(new URL(`../../examples/${name}`, import.meta.url));

const PLUM = {
  format: "mouldwright/timbers",
  version: 1,
  timbers: [
    {
      name: "Plum, own tree",
      source: "measured on six boards",
      shrinkage: { radialPercent: 5, tangentialPercent: 9 },
      coefficients: { radialPerPercent: 0.0018, tangentialPerPercent: 0.0032 },
    },
  ],
};

let bench: Bench;
beforeAll(async () => {
  bench = await newBench();
  await bench.put("own.json", JSON.stringify(PLUM));
});
afterAll(() => bench.clear());

async function numbersOf(...words: readonly string[]): Promise<Record<string, unknown>> {
  const ran = await runHere([...words, "--json"]);
  expect(ran).toMatchObject({ code: 0 });
  return JSON.parse(ran.out) as Record<string, unknown>;
}

describe("hopper", () => {
  test("four sides at 60°: atan(cos 60° tan 45°) and asin(sin 60° sin 45°), the wide edge 2 w tan m longer", async () => {
    const numbers = await numbersOf(
      "hopper",
      "--sides",
      "4",
      "--slope",
      "60",
      "--width",
      "40",
      "--length",
      "240",
    );
    expect(numbers.mitreDeg).toBeCloseTo(26.565, 3);
    expect(numbers.bevelDeg).toBeCloseTo(37.761, 3);
    expect(numbers.side).toMatchObject({ narrowEdgeMm: 240, widthMm: 40 });
    const side = numbers.side as { wideEdgeMm: number; heightMm: number; splayMm: number };
    expect(side.wideEdgeMm).toBeCloseTo(280, 9);
    expect(side.heightMm).toBeCloseTo(40 * Math.sin(Math.PI / 3), 9);
    expect(side.splayMm).toBeCloseTo(20, 9);
  });

  test("from plumb the same box, and plumb sides are mitred like a frame stood on edge", async () => {
    const level = await numbersOf("hopper", "--sides", "6", "--slope", "70");
    const plumb = await numbersOf("hopper", "--sides", "6", "--slope", "20", "--from", "plumb");
    expect(plumb.mitreDeg).toBe(level.mitreDeg);
    const upright = await numbersOf("hopper", "--sides", "6", "--slope", "90");
    expect(upright).toMatchObject({ mitreDeg: 0, bevelDeg: 30 });
  });

  test("both ends are told with their edges at the fence, narrow and wide, never wall and ceiling", async () => {
    const { out } = await runHere(["hopper", "--sides", "4", "--slope", "60"], { columns: 110 });
    expect(out).toMatch(/Left end {3}wide edge at the fence/);
    expect(out).toMatch(/Right end {2}narrow edge at the fence/);
    expect(out).not.toMatch(/wall edge|ceiling edge/);
  });
});

describe("unlike mouldings", () => {
  const STRAIGHT = ["unlike", "--first", "54.5x50.7", "--second", "30x50.7", "--spring", "38"];

  test("at a square corner the mitre stands at atan(first over second) from the first wall", async () => {
    const numbers = await numbersOf(...STRAIGHT, "--corner", "90");
    expect(numbers.line).toBe("straight");
    expect(numbers.fromFirstWallDeg).toBeCloseTo((Math.atan2(54.5, 30) * 180) / Math.PI, 9);
    expect((numbers.fromFirstWallDeg as number) + (numbers.fromSecondWallDeg as number)).toBeCloseTo(90, 9);
    // atan(sin s / tan h), asin(cos s cos h), each with its own h in place of half the corner.
    const first = numbers.first as { mitreDeg: number; bevelDeg: number };
    const halfRad = Math.atan2(54.5, 30);
    const springRad = (38 * Math.PI) / 180;
    expect(first.mitreDeg).toBeCloseTo(
      (Math.atan(Math.sin(springRad) / Math.tan(halfRad)) * 180) / Math.PI,
      9,
    );
    expect(first.bevelDeg).toBeCloseTo(
      (Math.asin(Math.cos(springRad) * Math.cos(halfRad)) * 180) / Math.PI,
      9,
    );
  });

  test("like mouldings halve the corner, measured by three lengths too", async () => {
    const like = ["unlike", "--first", "40x50", "--second", "40x50", "--spring", "38"];
    const numbers = await numbersOf(...like, "--triangle", "600,800,1000");
    expect(numbers.fromFirstWallDeg).toBeCloseTo(45, 9);
    expect(numbers.cornerDegPerMm).toBeCloseTo(0.1194, 4);
  });

  test("real sections bend it: points from the foot up, a note how far it bends, a picture with the points", async () => {
    const picture = bench.path("unlike.svg");
    const words = ["unlike", "--first", example("cornice.json"), "--second", example("plinth.json")];
    const ran = await runHere([...words, "--corner", "90", "--json", "--picture", picture]);
    expect(ran.code).toBe(0);
    const numbers = JSON.parse(ran.out) as {
      line: string;
      points: { heightMm: number }[];
      mostOffChordMm: number;
    };
    expect(numbers.line).toBe("curved");
    expect(numbers.mostOffChordMm).toBeGreaterThan(1);
    const heights = numbers.points.map(({ heightMm }) => heightMm);
    expect(heights).toEqual([...heights].sort((a, b) => a - b));
    expect(ran.err.replace(/\s+/g, " ")).toContain("taken straight across");
    expect(await bench.read("unlike.svg")).toContain("Points of the mitre");
  });
});

describe("hip", () => {
  // Tables of roof framing for 8 in 12: hip 25.2394°, backing 23.09347°, side cut 39.76216°, 18.762 for 12 of run.
  test("8 in 12 on both sides", async () => {
    const slope = String((Math.atan(8 / 12) * 180) / Math.PI);
    const numbers = await numbersOf("hip", "--slope", slope, "--run", "12");
    expect(numbers.hipDeg).toBeCloseTo(25.2394, 4);
    expect(numbers.lengthMm).toBeCloseTo(18.762, 3);
    expect(numbers.main).toMatchObject({ planDeg: expect.closeTo(45, 6) as number });
    const main = numbers.main as { backingDeg: number; jackSideCutDeg: number };
    expect(main.backingDeg).toBeCloseTo(23.09347, 4);
    expect(main.jackSideCutDeg).toBeCloseTo(39.76216, 4);
  });

  test("from the side cut of a board the same hip", async () => {
    const slope = String((Math.atan(8 / 12) * 180) / Math.PI);
    const numbers = await numbersOf("hip", "--slope", slope, "--jack", "39.76216");
    expect(numbers.hipDeg).toBeCloseTo(25.2394, 3);
    expect((numbers.adjacent as { slopeDeg: number }).slopeDeg).toBeCloseTo(33.69007, 3);
  });

  test("a valley is called one, and its plan angles are explained", async () => {
    const { out } = await runHere(["hip", "--slope", "30", "--kind", "inside"]);
    expect(out.replace(/\s+/g, " ")).toContain("The valley rises at 22¼°");
    expect(out.replace(/\s+/g, " ")).toContain("carried on past the corner");
  });
});

describe("a solid side", () => {
  const SIDE = ["side", "--timber", "black cherry", "--sawn", "flat", "--depth", "380"];
  const YEAR = ["--fitted", "9", "--driest", "6", "--wettest", "12"];

  test("D C ΔM either way; a slot is the shank and all of the travel at its place", async () => {
    const numbers = await numbersOf(...SIDE, ...YEAR, "--screws", "120,240");
    expect(numbers.driestChangeMm).toBeCloseTo(-380 * 0.00248 * 3, 9);
    expect(numbers.wettestChangeMm).toBeCloseTo(380 * 0.00248 * 3, 9);
    expect(numbers.shortAtBackMm).toBeCloseTo(380 * 0.00248 * 3, 9);
    const [first] = numbers.screws as { slotMm: number }[];
    expect(first?.slotMm).toBeCloseTo(4 + 120 * 0.00248 * 6, 9);
  });

  test("says where it is fast and where it slides, in inches too", async () => {
    const { out } = await runHere([
      ...["side", "--timber", "black cherry", "--sawn", "flat", "--depth", "15", "--screws", "5,10"],
      ...YEAR,
      "--unit",
      "in",
    ]);
    const said = out.replace(/\s+/g, " ");
    expect(said).toContain("Fast at the front");
    expect(said).toContain("Screw 5″ from the front: slot");
  });
});

describe("timber", () => {
  test("the table without a name; with one every figure and its source", async () => {
    const table = await runHere(["timber"]);
    expect(table.code).toBe(0);
    expect(table.out).toMatch(/Cherry, black +3\.7 +7\.1/);
    const { timbers } = JSON.parse((await runHere(["timber", "--json"])).out) as {
      timbers: { name: string }[];
    };
    expect(timbers.length).toBeGreaterThan(30);
    const one = (await runHere(["timber", "black", "cherry"])).out.replace(/\s+/g, " ");
    expect(one).toContain("radial 0.00126, tangential 0.00248");
    expect(one).toContain("Table 13-5");
  });

  test("own timbers are known beside the table, wherever a timber is asked for", async () => {
    const own = ["--timbers", bench.path("own.json")];
    expect((await runHere(["timber", "plum", ...own])).out).toContain("measured on six boards");
    const words = [
      "movement",
      "--timber",
      "plum",
      "--width",
      "100",
      "--from",
      "12",
      "--to",
      "7",
      "--sawn",
      "flat",
    ];
    const numbers = await numbersOf(...words, ...own);
    expect(numbers.changeMm).toBeCloseTo(100 * 0.0032 * -5, 9);
  });
});

test("a corner of a polygon for the mitre: eight sides are mitred like 135° outside", async () => {
  const eight = await numbersOf("mitre", "--spring", "38", "--sides", "8");
  const corner = await numbersOf("mitre", "--spring", "38", "--corner", "135", "--kind", "outside");
  expect(eight).toEqual(corner);
});
