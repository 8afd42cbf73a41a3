/** Movement and moisture on the command line, held to the handbook's printed values. */
import { describe, expect, test } from "vitest";
import { runHere } from "./run.ts";

async function numbersOf(...words: readonly string[]): Promise<Record<string, unknown>> {
  const ran = await runHere([...words, "--json"]);
  expect(ran).toMatchObject({ code: 0 });
  return JSON.parse(ran.out) as Record<string, unknown>;
}

describe("movement", () => {
  const CHERRY = ["movement", "--timber", "black cherry", "--width", "60", "--from", "12", "--to", "6"];

  test.each([
    // Wood Handbook, FPL-GTR-190, Table 13-5: black cherry 0.00126 radial, 0.00248 tangential.
    ["flat", 60 * 0.00248 * -6],
    ["quarter", 60 * 0.00126 * -6],
  ])("black cherry, %s sawn: D C ΔM by the published coefficient", async (sawn, changeMm) => {
    const numbers = await numbersOf(...CHERRY, "--sawn", sawn);
    expect(numbers.changeMm).toBeCloseTo(changeMm, 9);
    expect(numbers.afterMm).toBeCloseTo(60 + changeMm, 9);
  });

  test("thickness moves across the rings of a flat-sawn board", async () => {
    const numbers = await numbersOf(...CHERRY, "--sawn", "flat", "--thickness", "20");
    expect((numbers.thickness as { changeMm: number }).changeMm).toBeCloseTo(20 * 0.00126 * -6, 9);
  });

  test("beyond 6 to 14 % the wider formula is taken, with a note", async () => {
    const ran = await runHere([
      "movement",
      "--timber",
      "black cherry",
      "--width",
      "60",
      "--from",
      "20",
      "--to",
      "8",
      "--sawn",
      "flat",
    ]);
    expect(ran.code).toBe(0);
    expect(ran.err.replace(/\s+/g, " ")).toContain("outside the 6 % to 14 %");
  });

  test("inches come out in thousandths", async () => {
    const { out } = await runHere([
      ...CHERRY.map((word) => (word === "60" ? "6" : word)),
      "--sawn",
      "flat",
      "--unit",
      "in",
    ]);
    // 6 × 0.00248 × 6 = 0.08928
    expect(out).toContain("−0.089″");
  });
});

describe("moisture", () => {
  // Wood Handbook, FPL-GTR-190, Table 4-2 (the table's °F columns): 70 °F and 50 % give 9.2 %, 80 % gives 16.0 %.
  test.each([
    ["70F", "50", 9.2],
    ["21.1", "50", 9.2],
    ["70 °F", "80%", 16],
  ])("%s and %s", async (temperature, humidity, moisturePercent) => {
    const numbers = await numbersOf("moisture", "--temperature", temperature, "--humidity", humidity);
    expect(Math.abs((numbers.moisturePercent as number) - moisturePercent)).toBeLessThan(0.1);
  });

  test.each([[["--temperature=-5"]], [["--temperature", "-5"]]])(
    "frost as %s: a figure, and a note that no table reaches it",
    async (words) => {
      const ran = await runHere(["moisture", ...words, "--humidity", "50"]);
      expect(ran.code).toBe(0);
      expect(ran.out).toContain("−5 °C (23 °F)");
      expect(ran.err.replace(/\s+/g, " ")).toContain("does not reach");
    },
  );
});
