/** Refuses sizes that are none before anything is worked out from them. */
import { cataloguedTrouble } from "../../measure/index.ts";
import { LONGEST_STICK_MM, MOST_ALLOWANCE_MM, MOST_CANT_DEG } from "./defaults.ts";
import type { StickTrouble } from "./types.ts";

/** More lengths than anyone runs in one go. */
const MOST_STICKS = 1000;

export function lengthTrouble(lengthMm: number): StickTrouble | null {
  if (lengthMm > 0 && lengthMm <= LONGEST_STICK_MM) return null;
  return cataloguedTrouble("stick-length", "length", { valueMm: lengthMm, mostMm: LONGEST_STICK_MM });
}

export function countTrouble(count: number): StickTrouble | null {
  if (Number.isInteger(count) && count >= 1 && count <= MOST_STICKS) return null;
  return cataloguedTrouble("stick-count", "count", { count, most: MOST_STICKS });
}

export function cantTrouble(cantDeg: number): StickTrouble | null {
  if (Math.abs(cantDeg) <= MOST_CANT_DEG) return null;
  return cataloguedTrouble("stick-cant", "cantDeg", { cantDeg, mostDeg: MOST_CANT_DEG });
}

/** The first of the named allowances that is negative, no number or absurd. Keys end in `Mm`. */
export function allowanceTrouble(where: string, allowances: object): StickTrouble | null {
  for (const [key, value] of Object.entries(allowances) as [string, unknown][]) {
    // A ratio divides, so nothing is no ratio.
    const isEnough = typeof value === "number" && (key.endsWith("Ratio") ? value > 0 : value >= 0);
    if (isEnough && value <= MOST_ALLOWANCE_MM) continue;
    if (value === undefined) continue;
    return cataloguedTrouble("stick-allowance", `${where}.${key}`, {
      size: key.replace(/Mm$|Ratio$/, "").replace(/([A-Z])/g, (letter) => ` ${letter.toLowerCase()}`),
      valueMm: Number(value),
      mostMm: MOST_ALLOWANCE_MM,
    });
  }
  return null;
}

export function grainTrouble(risesDeg: number, driftsDeg: number): StickTrouble | null {
  const most = 30;
  const wrong = [risesDeg, driftsDeg].find((angle) => !(Math.abs(angle) <= most));
  return wrong === undefined
    ? null
    : cataloguedTrouble("stick-grain", "grain", { grainDeg: wrong, mostDeg: most });
}
