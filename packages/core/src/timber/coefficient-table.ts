/**
 * Change per size and per 1 % of moisture content, radial and tangential, valid from 6 to 14 %. The commercial oaks are
 * blends of species: northern red oak alone moves about a fifth less than "red, commercial".
 */
import { COEFFICIENT_TABLE } from "./sources.ts";
import type { MovementCoefficients } from "./types.ts";

const ROWS: readonly (readonly [name: string, radialPerPercent: number, tangentialPerPercent: number])[] = [
  ["Alder, red", 0.00151, 0.00256],
  ["Ash, white", 0.00169, 0.00274],
  ["Ash, green", 0.00169, 0.00274],
  ["Basswood, American", 0.0023, 0.0033],
  ["Beech, American", 0.0019, 0.00431],
  ["Birch, yellow", 0.00256, 0.00338],
  ["Butternut", 0.00116, 0.00223],
  ["Cherry, black", 0.00126, 0.00248],
  ["Chestnut, American", 0.00116, 0.00234],
  ["Elm, American", 0.00144, 0.00338],
  ["Hackberry", 0.00165, 0.00315],
  ["Hickory, pecan", 0.00169, 0.00315],
  ["Locust, black", 0.00158, 0.00252],
  ["Maple, red", 0.00137, 0.00289],
  ["Maple, silver", 0.00102, 0.00252],
  ["Maple, sugar", 0.00165, 0.00353],
  ["Oak, red, commercial", 0.00158, 0.00369],
  ["Oak, white, commercial", 0.0018, 0.00365],
  ["Persimmon, common", 0.00278, 0.00403],
  ["Sweetgum", 0.00183, 0.00365],
  ["Sycamore, American", 0.00172, 0.00296],
  ["Walnut, black", 0.0019, 0.00274],
];

export const COEFFICIENTS: ReadonlyMap<string, MovementCoefficients> = new Map(
  ROWS.map(([name, radialPerPercent, tangentialPerPercent]) => [
    name,
    { radialPerPercent, tangentialPerPercent, source: COEFFICIENT_TABLE },
  ]),
);
