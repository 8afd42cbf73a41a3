/** Mitres and frames on the command line. Expected values by hand from the formula beside them, or from a printed table. */
import { describe, expect, test } from "vitest";
import { runHere } from "./run.ts";

async function numbersOf(...words: readonly string[]): Promise<Record<string, unknown>> {
  const ran = await runHere([...words, "--json"]);
  expect(ran).toMatchObject({ code: 0 });
  return JSON.parse(ran.out) as Record<string, unknown>;
}

describe("mitre", () => {
  // Printed in the manuals of compound mitre saws: 31.62 and 33.86 for the 38° crown, 35.26 and 30.00 for the 45° one.
  test.each([
    ["38 from the wall", ["--spring", "38"], 31.62, 33.86],
    ["the same said from the ceiling", ["--spring", "52", "--from", "ceiling"], 31.62, 33.86],
    ["45", ["--spring", "45"], 35.26, 30],
    ["flat against the wall", ["--spring", "0"], 0, 45],
    ["flat against the ceiling", ["--spring", "90"], 45, 0],
  ])("%s at a square corner", async (_, spring, mitreDeg, bevelDeg) => {
    const numbers = await numbersOf("mitre", ...spring, "--corner", "90");
    expect(numbers.mitreDeg).toBeCloseTo(mitreDeg, 2);
    expect(numbers.bevelDeg).toBeCloseTo(bevelDeg, 2);
  });

  test("the two conventions are not mixed up: 38° from the ceiling is another moulding", async () => {
    const fromCeiling = await numbersOf("mitre", "--spring", "38", "--from", "ceiling", "--corner", "90");
    // atan(sin 52° / tan 45°) and asin(cos 52° cos 45°)
    expect(fromCeiling.mitreDeg).toBeCloseTo(38.24, 2);
    expect(fromCeiling.bevelDeg).toBeCloseTo(25.81, 2);
    expect(fromCeiling.springFromWallDeg).toBe(52);
  });

  test("two legs say the spring: 3 out and 4 down lean by atan(3/4) from the wall", async () => {
    const numbers = await numbersOf("mitre", "--legs", "30x40", "--corner", "90");
    expect(numbers.springFromWallDeg).toBeCloseTo(36.87, 2);
  });

  test("a corner by three lengths: 600, 800 and 1000 are square, 1 mm more across is 0.12° more", async () => {
    const numbers = await numbersOf("mitre", "--spring", "38", "--triangle", "600,800,1000");
    expect(numbers.cornerDeg).toBeCloseTo(90, 9);
    // dC/dc = c / (a b sin C) = 1000 / 480 000 rad
    expect(numbers.cornerDegPerMm).toBeCloseTo(0.1194, 4);
  });

  test("inches, fractions and degree signs are read", async () => {
    const numbers = await numbersOf(
      "mitre",
      "--spring",
      "37 1/2°",
      "--corner",
      "89,5",
      "--width",
      "2 3/8",
      "--unit",
      "in",
    );
    expect(numbers).toMatchObject({ springFromWallDeg: 37.5, cornerDeg: 89.5 });
  });

  test("a corner measured round the outside is taken as the outside corner, with a note", async () => {
    const ran = await runHere(["mitre", "--spring", "38", "--corner", "270"]);
    expect(ran.code).toBe(0);
    expect(ran.err).toContain("outside corner of 90°");
    expect(ran.out).toContain("The corner is outside, 90° between");
  });

  test("words: convention first, quarters of a degree, both pieces, cautions", async () => {
    const { out } = await runHere(["mitre", "--spring", "38", "--corner", "90"], { columns: 110 });
    expect(out.split("\n")[0]).toMatch(/^The spring is the angle between the flat back and the wall/);
    expect(out).toContain("mitre 31½°, bevel 33¾°");
    expect(out).toContain("Left-hand piece");
    expect(out).toContain("Right-hand piece");
    expect(out.replace(/\s+/g, " ")).toContain("local codes and licensed practice decide");
  });
});

describe("frame", () => {
  const ASKED = ["frame", "--sight", "300x400", "--width", "30", "--rebate", "8", "--allow", "2"];

  test("rebate = sight + 2 rebates, glass = rebate − allowance, outside = sight + 2 widths", async () => {
    const { out } = await runHere(ASKED, { columns: 110 });
    const said = out.replace(/\s+/g, " ");
    expect(said).toContain("outside 360 mm × 460 mm");
    expect(said).toContain("rebate opening 316 mm × 416 mm");
    expect(said).toContain("glass 314 mm × 414 mm");
  });

  test("from the glass, the opening or the outside the same frame comes out", async () => {
    const wanted = (await numbersOf(...ASKED)).pieces;
    for (const [option, size] of [
      ["--glass", "314x414"],
      ["--opening", "316x416"],
      ["--outside", "360x460"],
    ] as const) {
      const given = ["frame", option, size, "--width", "30", "--rebate", "8", "--allow", "2"];
      expect((await numbersOf(...given)).pieces).toEqual(wanted);
    }
  });

  test("four pieces with both lengths and 45° at each end", async () => {
    const pieces = (await numbersOf(...ASKED)).pieces as Record<string, unknown>[];
    expect(pieces.map(({ outsideMm, sightMm, rebateMm }) => [outsideMm, sightMm, rebateMm])).toEqual([
      [360, 300, 316],
      [460, 400, 416],
      [360, 300, 316],
      [460, 400, 416],
    ]);
    for (const { mitreDeg } of pieces) expect(mitreDeg).toBeCloseTo(45, 9);
  });

  test("six sides: 30° mitres, outside longer than sight by 2 w tan 30°", async () => {
    const pieces = (await numbersOf("frame", "--sight", "200", "--sides", "6", "--width", "30")).pieces as {
      mitreDeg: number;
      outsideMm: number;
    }[];
    expect(pieces).toHaveLength(6);
    for (const piece of pieces) {
      expect(piece.mitreDeg).toBeCloseTo(30, 9);
      expect(piece.outsideMm).toBeCloseTo(200 + 60 * Math.tan(Math.PI / 6), 6);
    }
  });

  test("corners in the plane, one width for each side", async () => {
    const words = ["frame", "--sight", "0,0 300,0 300,200 0,200", "--width", "30,40,30,40"];
    const pieces = (await numbersOf(...words)).pieces as {
      outsideMm: number;
      start: { fromEdgeDeg: number };
    }[];
    expect(pieces.map(({ outsideMm }) => Math.round(outsideMm * 1e6) / 1e6)).toEqual([380, 260, 380, 260]);
    // The mitre runs from corner to corner: atan(30/40) from the edge of the 30 mm rail.
    expect(pieces[0]?.start.fromEdgeDeg).toBeCloseTo(36.87, 2);
  });

  test("the mitre's seasons: √2 w C ΔM for cherry, flat sawn, with its published coefficient 0.00248", async () => {
    const season = [
      "--timber",
      "black cherry",
      "--from",
      "12",
      "--to",
      "6",
      "--sawn",
      "flat",
      "--gap",
      "0.3",
    ];
    const opening = (await numbersOf(...ASKED, ...season)).mitreOpening as Record<string, number | string>;
    expect(opening.gapMm).toBeCloseTo(Math.SQRT2 * 30 * 0.00248 * 6, 6);
    expect(opening.opensAt).toBe("inside corner");
    expect(opening.widestMm).toBeCloseTo(0.3 / (Math.SQRT2 * 0.00248 * 6), 6);
  });
});
