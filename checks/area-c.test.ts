import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { INCH_MM, type Outcome } from "../packages/core/src/measure/index.ts";
import {
  coefficientFromShrinkage,
  coefficientsOf,
  equilibriumMoisture,
  findTimber,
  movement,
  ownTimber,
  strainByCoefficient,
  type Timber,
} from "../packages/core/src/timber/index.ts";

interface Row {
  readonly id: string;
  readonly input: Readonly<Record<string, number | string>>;
  readonly expected: Readonly<Record<string, number | string>>;
  readonly tolerance: string;
  readonly source: string;
  readonly status: string;
}

const { rows } = JSON.parse(readFileSync(new URL("./area-c.json", import.meta.url), "utf8")) as {
  rows: readonly Row[];
};
const rowOf = (id: string): Row => rows.find((row) => row.id === id) as Row;
const rowsOf = (start: string) =>
  rows.filter(({ id }) => id.startsWith(start)).map((row) => [row.id, row] as const);
const given = (row: Row, key: string) => row.input[key] as number;
const wanted = (row: Row, key: string) => row.expected[key] as number;

function answerOf<T>(outcome: Outcome<T>): T {
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.trouble));
  return outcome.value;
}

/** The books write a few names their own way. */
const NAMES: Readonly<Record<string, string>> = {
  "Red oak, northern": "Oak, northern red",
  "Hard (sugar) maple": "Maple, sugar",
  Ash: "Ash, white",
  Basswood: "Basswood, American",
  Cherry: "Cherry, black",
  "Hickory (pecan)": "Hickory, pecan",
  "Hard maple": "Maple, sugar",
  "Soft maple (red)": "Maple, red",
  Walnut: "Walnut, black",
  "Yellow birch": "Birch, yellow",
  "Oak, plain-sawn": "Oak, red, commercial",
  Beech: "Beech, American",
};

function timberOf(row: Row): Timber {
  const name = row.input.species as string;
  return answerOf(findTimber(NAMES[name] ?? name));
}

test("every row names its source and is run below", () => {
  expect(rows.filter(({ source }) => source === "")).toEqual([]);
  expect(rows).toHaveLength(176);
  const groups = ["C-00", "C-E", "C-S", "C-K", "C-J", "C-V", "C-W"];
  expect(rows.filter(({ id }) => !groups.some((group) => id.startsWith(group)))).toEqual([]);
});

describe("moisture", () => {
  const printed = rows.filter(({ id }) => /^C-E[0-8]/.test(id));
  test.each(printed.map((row) => [row.id, row] as const))("%s: the printed table, both fits", (_, row) => {
    const humidity = given(row, "rh_percent");
    // The printed Celsius is rounded to a tenth; the table was made for the Fahrenheit beside it.
    const celsius = ((given(row, "temp_F") - 32) * 5) / 9;
    const byC = answerOf(equilibriumMoisture({ celsius }, humidity)).moisturePercent;
    const byF = answerOf(equilibriumMoisture({ fahrenheit: given(row, "temp_F") }, humidity)).moisturePercent;
    expect(Math.abs(byC - wanted(row, "emc_percent"))).toBeLessThanOrEqual(0.06);
    expect(Math.abs(byF - wanted(row, "emc_percent"))).toBeLessThanOrEqual(0.07);
  });

  test("C-E900, C-E901: regression", () => {
    const c = rowOf("C-E900");
    const atC = answerOf(equilibriumMoisture({ celsius: given(c, "temp_C") }, given(c, "rh_percent")));
    expect(Math.abs(atC.moisturePercent - wanted(c, "emc_percent"))).toBeLessThanOrEqual(1e-6);
    const f = rowOf("C-E901");
    const atF = answerOf(equilibriumMoisture({ fahrenheit: given(f, "temp_F") }, given(f, "rh_percent")));
    expect(Math.abs(atF.moisturePercent - wanted(f, "emc_percent_F_form"))).toBeLessThanOrEqual(1e-6);
    expect(Math.abs(atF.otherFitPercent - wanted(f, "emc_percent_C_form"))).toBeLessThanOrEqual(1e-6);
  });

  test.each(["C-001", "C-002"])("%s: the equation as written in the row, read from its text", (id) => {
    const row = rowOf(id);
    for (const t of id === "C-001" ? [-1, 10, 20, 35, 60, 90] : [30, 50, 70, 100, 150, 190]) {
      for (const humidity of [5, 20, 50, 80, 95]) {
        const temperature = id === "C-001" ? { celsius: t } : { fahrenheit: t };
        const ours = answerOf(equilibriumMoisture(temperature, humidity)).moisturePercent;
        expect(ours).toBeCloseTo(moistureByText(row, t, humidity / 100), 10);
      }
    }
  });
});

/** A quadratic as the row writes it: "349 + 1.29 T + 0.0135 T^2". */
function quadratic(text: string, t: number): number {
  const terms = text.replace(/ - /g, " + -").split(" + ");
  return terms.reduce((sum, term) => {
    const [figure, power] = term.split(" ");
    return sum + Number(figure) * t ** (power === undefined ? 0 : power === "T" ? 1 : 2);
  }, 0);
}

function moistureByText(row: Row, t: number, h: number): number {
  const [w, k, k1, k2] = ["W", "K", "K1", "K2"].map((key) => quadratic(row.expected[key] as string, t)) as [
    number,
    number,
    number,
    number,
  ];
  return (
    (1800 / w) *
    ((k * h) / (1 - k * h) +
      (k1 * k * h + 2 * k1 * k2 * k ** 2 * h ** 2) / (1 + k1 * k * h + k1 * k2 * k ** 2 * h ** 2))
  );
}

test.each(rowsOf("C-S"))("%s: shrinkage", (_, row) => {
  const { shrinkage } = timberOf(row);
  expect(shrinkage?.radialPercent).toBe(wanted(row, "radial_percent"));
  expect(shrinkage?.tangentialPercent).toBe(wanted(row, "tangential_percent"));
  expect(shrinkage?.source.standing).toBe(row.status === "from-memory" ? "from memory" : "published");
});

test.each(rowsOf("C-K"))("%s: coefficients", (_, row) => {
  const timber = timberOf(row);
  const coefficients = coefficientsOf(timber);
  if (row.status === "derived") {
    expect(coefficients?.source.standing).toBe("derived");
    expect(coefficientFromShrinkage(given(row, "SR"))).toBe(coefficients?.radialPerPercent);
    expect(Math.abs(coefficients!.radialPerPercent - wanted(row, "CR"))).toBeLessThanOrEqual(1e-5);
    expect(Math.abs(coefficients!.tangentialPerPercent - wanted(row, "CT"))).toBeLessThanOrEqual(1e-5);
  } else {
    expect(coefficients?.source.standing).toBe("published");
    expect(coefficients?.radialPerPercent).toBe(wanted(row, "CR"));
    expect(coefficients?.tangentialPerPercent).toBe(wanted(row, "CT"));
  }
});

test("the coefficients follow from the shrinkage, but for the timbers that were given a relative's figure", () => {
  const names = rowsOf("C-K0").map(([, row]) => timberOf(row));
  const both = names.filter(({ shrinkage, coefficients }) => shrinkage !== null && coefficients !== null);
  const off = both.filter(({ shrinkage, coefficients }) => {
    const derived = coefficientFromShrinkage(shrinkage!.tangentialPercent);
    return Math.abs(derived - coefficients!.tangentialPerPercent) > 0.000006;
  });
  expect(both.length).toBeGreaterThan(10);
  // The check values name sycamore as out by one in the last digit.
  expect(off.map(({ name }) => name).filter((name) => name !== "Sycamore, American")).toEqual([]);
});

test.each(rowsOf("C-J"))("%s: hardness", (_, row) => {
  const { hardness } = timberOf(row);
  expect(Math.abs(hardness!.poundsForce / wanted(row, "lbf") - 1)).toBeLessThanOrEqual(0.05);
  expect(Math.abs(hardness!.newtons / wanted(row, "N") - 1)).toBeLessThanOrEqual(0.05);
  expect(hardness?.source.standing).toBe(row.status === "from-memory" ? "from memory" : "published");
});

describe("movement", () => {
  test.each(rowsOf("C-V"))("%s: a coarse trade table, as a band only", (_, row) => {
    const moved = movement({
      timber: timberOf(row),
      widthMm: given(row, "width_in") * INCH_MM,
      fromPercent: given(row, "from_MC"),
      toPercent: given(row, "to_MC"),
      sawn: "flat",
    });
    const shrinks64ths = (-answerOf(moved).width.changeMm / INCH_MM) * 64;
    expect(Math.abs(shrinks64ths - wanted(row, "shrinkage_64ths_in"))).toBeLessThanOrEqual(4);
  });

  test("C-W01: white fir, with the printed coefficient and from the table's shrinkage", () => {
    const row = rowOf("C-W01");
    const question = { fromPercent: given(row, "MI"), toPercent: given(row, "MF"), sawn: "flat" } as const;
    const widthMm = given(row, "width_mm");
    const table = answerOf(movement({ ...question, timber: answerOf(findTimber("white fir")), widthMm }));
    const printed = widthMm * strainByCoefficient(given(row, "CT"), given(row, "MI"), given(row, "MF"));
    for (const changeMm of [table.width.changeMm, printed]) {
      expect(Math.abs(changeMm - wanted(row, "change_mm"))).toBeLessThanOrEqual(0.05);
      expect(Math.abs(widthMm + changeMm - wanted(row, "final_mm"))).toBeLessThanOrEqual(0.05);
    }
    const inches =
      wanted(row, "width_in") * strainByCoefficient(given(row, "CT"), given(row, "MI"), given(row, "MF"));
    expect(Math.abs(inches - wanted(row, "change_in"))).toBeLessThanOrEqual(0.0005);
    expect(Math.abs(wanted(row, "width_in") + inches - wanted(row, "final_in"))).toBeLessThanOrEqual(0.0005);
  });

  test.each([
    ["C-W02", 6, 9, 0.0005],
    ["C-W03", 6, 12, 1e-6],
  ] as const)("%s: a worked example with its own coefficient", (id, fromPercent, toPercent, tolerance) => {
    const row = rowOf(id);
    const perPercent = given(row, "C");
    const timber = answerOf(
      ownTimber({
        name: row.input.species as string,
        coefficients: { radialPerPercent: perPercent, tangentialPerPercent: perPercent },
        source: row.source,
      }),
    );
    const widthMm = given(row, "width_in") * INCH_MM;
    const moved = answerOf(movement({ timber, widthMm, fromPercent, toPercent, sawn: "flat" }));
    expect(Math.abs(moved.width.changeMm / INCH_MM - wanted(row, "change_in"))).toBeLessThanOrEqual(
      tolerance,
    );
  });

  test("C-W04: the wide formula, which warns of its range", () => {
    const row = rowOf("C-W04");
    const timber = answerOf(findTimber("white oak"));
    expect(timber.shrinkage?.tangentialPercent).toBe(given(row, "ST"));
    const moved = movement({
      timber,
      widthMm: given(row, "DI_mm"),
      fromPercent: given(row, "MI"),
      toPercent: given(row, "MF"),
      sawn: "flat",
    });
    expect(moved.ok && moved.warnings.map(({ code }) => code)).toEqual(["movement-outside-range"]);
    expect(Math.abs(answerOf(moved).width.changeMm - wanted(row, "change_mm"))).toBeLessThanOrEqual(1e-6);
  });
});
