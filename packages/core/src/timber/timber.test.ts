import { describe, expect, test } from "vitest";
import { type Outcome, sayTrouble } from "../measure/index.ts";
import {
  equilibriumMoisture,
  findTimber,
  movement,
  ownTimber,
  strainByCoefficient,
  strainByShrinkage,
  TIMBERS,
  type Timber,
} from "./index.ts";

function answer<T>(outcome: Outcome<T>): T {
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.trouble));
  return outcome.value;
}

function refusal(outcome: Outcome<unknown>): string {
  if (outcome.ok) throw new Error("a refusal was expected");
  const { sentence, hint } = sayTrouble(outcome.trouble, { unit: "mm" });
  expect(`${sentence} ${hint}`).not.toMatch(/NaN|undefined/);
  return outcome.trouble.code;
}

const cherry = answer(findTimber("black cherry"));

describe("look-up", () => {
  test.each([
    ["black cherry", "Cherry, black"],
    ["CHERRY,  black", "Cherry, black"],
    ["western red cedar", "Redcedar, western"],
    ["hard maple", "Maple, sugar"],
    ["white oak", "Oak, white (Quercus alba)"],
    ["commercial red oak", "Oak, red, commercial"],
    ["Scots pine", "Scots pine"],
  ])("%s is %s, without a warning", (asked, name) => {
    const found = findTimber(asked);
    expect(answer(found).name).toBe(name);
    expect(found.ok && found.warnings).toEqual([]);
  });

  test("a name that leaves one open is taken, and said", () => {
    const found = findTimber("Douglas fir");
    expect(answer(found).name).toBe("Douglas-fir, coast");
    expect(found.ok && found.warnings.map(({ code }) => code)).toEqual(["timber-taken-as"]);
  });

  test("a genus is taken, and its species named", () => {
    const found = findTimber("cherry");
    expect(answer(found).isGenus).toBe(true);
    expect(found.ok && found.warnings[0]?.facts.others).toEqual(["Cherry, black"]);
  });

  test("what can be several is refused with all of them", () => {
    const found = findTimber("red oak");
    expect(refusal(found)).toBe("timber-several");
    expect(!found.ok && found.trouble.facts.names).toEqual(["Oak, northern red", "Oak, red, commercial"]);
  });

  test.each([
    ["blak chery", "Cherry, black"],
    ["walnutt black", "Walnut, black"],
    ["yelow birch", "Birch, yellow"],
  ])("%s is not there: %s is offered first", (asked, nearest) => {
    const found = findTimber(asked);
    expect(refusal(found)).toBe("timber-unknown");
    expect(!found.ok && (found.trouble.facts.nearest as readonly string[])[0]).toBe(nearest);
  });

  test("no name, and a hostile one", () => {
    expect(refusal(findTimber("  -- "))).toBe("timber-no-name");
    expect(refusal(findTimber(`x\u0000\u202e${"x".repeat(100000)}`))).toBe("timber-unknown");
  });

  test("every timber is found by its own name", () => {
    for (const timber of TIMBERS) expect(answer(findTimber(timber.name)).name).toBe(timber.name);
  });

  test("every figure names its source, and every note is a sentence", () => {
    for (const { shrinkage, coefficients, hardness, note } of TIMBERS) {
      for (const figure of [shrinkage, coefficients, hardness]) {
        if (figure !== null) expect(figure.source.where).not.toBe("");
      }
      if (note !== "") expect(note).toMatch(/^[A-Z].*\.$/);
      expect(shrinkage ?? coefficients ?? hardness).not.toBeNull();
    }
  });
});

describe("moisture", () => {
  test("dry air leaves nothing, wet air more than dry", () => {
    expect(answer(equilibriumMoisture({ celsius: 20 }, 0)).moisturePercent).toBe(0);
    const [dry, wet] = [35, 75].map((rh) => answer(equilibriumMoisture({ celsius: 20 }, rh)).moisturePercent);
    expect(wet!).toBeGreaterThan(dry!);
  });

  test("frost is reckoned, with a warning below the table", () => {
    const frost = equilibriumMoisture({ celsius: -10 }, 70);
    expect(answer(frost).moisturePercent).toBeGreaterThan(10);
    expect(frost.ok && frost.warnings.map(({ code }) => code)).toEqual(["moisture-outside-table"]);
    expect(answer(equilibriumMoisture({ fahrenheit: 14 }, 70)).temperatureC).toBeCloseTo(-10, 10);
  });

  test("the two fits keep within 0.02 of each other in the room range", () => {
    for (let celsius = 5; celsius <= 35; celsius += 2.5) {
      for (let humidity = 20; humidity <= 80; humidity += 10) {
        const { moisturePercent, otherFitPercent } = answer(equilibriumMoisture({ celsius }, humidity));
        expect(Math.abs(moisturePercent - otherFitPercent)).toBeLessThan(0.02);
      }
    }
  });

  test.each([
    [{ celsius: 20 }, 140, "moisture-humidity"],
    [{ celsius: 20 }, -1, "moisture-humidity"],
    [{ celsius: 20 }, Number.NaN, "moisture-humidity"],
    [{ celsius: 400 }, 50, "moisture-temperature"],
    [{ celsius: -31 }, 50, "moisture-temperature"],
    [{ fahrenheit: Number.NaN }, 50, "moisture-temperature"],
  ] as const)("%j at %d %% is refused", (temperature, humidity, code) => {
    expect(refusal(equilibriumMoisture(temperature, humidity))).toBe(code);
  });
});

describe("movement", () => {
  const question = { timber: cherry, widthMm: 60, fromPercent: 12, toPercent: 6, sawn: "flat" } as const;

  test("flat-sawn cherry, 60 mm from 12 to 6 %: 60 × 0.00248 × 6, and drying shrinks", () => {
    const moved = movement(question);
    expect(answer(moved).width.changeMm).toBeCloseTo(-0.8928, 10);
    expect(moved.ok && moved.warnings).toEqual([]);
    expect(answer(movement({ ...question, fromPercent: 6, toPercent: 12 })).width.changeMm).toBeCloseTo(
      0.8928,
      10,
    );
  });

  test("quarter-sawn takes the radial figure; thickness takes the other", () => {
    const quarter = answer(movement({ ...question, sawn: "quarter", thicknessMm: 20 }));
    expect(quarter.width.changeMm).toBeCloseTo(-60 * 0.00126 * 6, 10);
    expect(quarter.thickness?.changeMm).toBeCloseTo(-20 * 0.00248 * 6, 10);
    const flat = answer(movement({ ...question, thicknessMm: 20 }));
    expect(flat.thickness?.changeMm).toBeCloseTo(-20 * 0.00126 * 6, 10);
    expect(flat.thickness?.direction).toBe("radial");
  });

  test("no change of moisture, no change of size, and no minus nothing", () => {
    const still = answer(movement({ ...question, toPercent: 12 }));
    expect(Object.is(still.width.changeMm, 0)).toBe(true);
  });

  test("one step outside 6 to 14 % warns and takes the wider formula", () => {
    for (const [fromPercent, toPercent] of [
      [12, 5.9],
      [14.1, 8],
    ] as const) {
      const moved = movement({ ...question, fromPercent, toPercent });
      expect(moved.ok && moved.warnings.map(({ code }) => code)).toEqual(["movement-outside-range"]);
      expect(answer(moved).formula).toBe("shrinkage");
    }
  });

  test.each([
    [{ toPercent: 30.1 }, "movement-above-saturation"],
    [{ fromPercent: 45 }, "movement-above-saturation"],
    [{ fromPercent: -1 }, "movement-moisture"],
    [{ toPercent: Number.NaN }, "movement-moisture"],
    [{ widthMm: -60 }, "movement-size"],
    [{ widthMm: 0 }, "movement-size"],
    [{ thicknessMm: Number.NaN }, "movement-size"],
    [{ widthMm: Number.POSITIVE_INFINITY }, "movement-size"],
  ] as const)("%j is refused", (change, code) => {
    expect(refusal(movement({ ...question, ...change }))).toBe(code);
  });

  test("a timber of which only the hardness is known is refused", () => {
    expect(refusal(movement({ ...question, timber: answer(findTimber("western white pine")) }))).toBe(
      "timber-no-movement",
    );
  });

  test("a figure from memory says so", () => {
    const { assumed } = answer(movement({ ...question, timber: answer(findTimber("teak")) }));
    expect(assumed.map(({ code }) => code)).toContain("timber-from-memory");
  });

  test("the wider formula undoes itself, and agrees with the coefficient at 10 %", () => {
    // By hand: green 100, S = 10 %: 96 at 18 %, 92 at 6 %; from 96 to 92 is −4/96.
    expect(strainByShrinkage(10, 18, 6)).toBeCloseTo(-4 / 96, 12);
    expect(strainByShrinkage(10, 6, 18)).toBeCloseTo(4 / 92, 12);
    expect(strainByCoefficient(10 / 2800, 10, 11)).toBeCloseTo(strainByShrinkage(10, 10, 11), 12);
  });
});

describe("a maker's own timber", () => {
  const pear = { name: "Pear, our own", shrinkage: { radialPercent: 3.9, tangentialPercent: 11.3 } };

  test("is looked up before the table and moves by its own figures", () => {
    const timber = answer(ownTimber({ ...pear, source: "measured on three boards" }));
    expect(timber.shrinkage?.source).toEqual({ where: "measured on three boards", standing: "own" });
    expect(answer(findTimber("our own pear", [timber])).name).toBe("Pear, our own");
    const moved = answer(movement({ timber, widthMm: 100, fromPercent: 10, toPercent: 8, sawn: "flat" }));
    // C = 11.3 / (3000 − 226), two points.
    expect(moved.width.changeMm).toBeCloseTo((-100 * 2 * 11.3) / 2774, 10);
  });

  test.each([
    [{ ...pear, name: " " }, "timber-no-name"],
    [{ ...pear, name: "cherry, black" }, "own-timber-name-taken"],
    [{ name: "Pear" }, "own-timber-no-figures"],
    [{ name: "Pear", shrinkage: { radialPercent: -1, tangentialPercent: 5 } }, "own-timber-figure"],
    [{ name: "Pear", shrinkage: { radialPercent: 3, tangentialPercent: 50 } }, "own-timber-figure"],
    [
      { name: "Pear", coefficients: { radialPerPercent: Number.NaN, tangentialPerPercent: 0.002 } },
      "own-timber-figure",
    ],
    [{ ...pear, hardnessPoundsForce: 0 }, "own-timber-figure"],
  ] as const)("%j is refused", (given, code) => {
    expect(refusal(ownTimber(given))).toBe(code);
  });

  test("figures that look swapped are warned of", () => {
    const turned = ownTimber({ name: "Pear", shrinkage: { radialPercent: 9, tangentialPercent: 4 } });
    expect(turned.ok && turned.warnings.map(({ code }) => code)).toEqual(["own-timber-turned"]);
  });
});

test("the averages of the table are told apart from single species", () => {
  const genera = TIMBERS.filter(({ isGenus }: Timber) => isGenus).map(({ name }) => name);
  expect(genera).toContain("Beech (Fagus)");
  expect(genera).not.toContain("Scots pine");
});
