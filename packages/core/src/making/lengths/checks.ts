/** Refuses what no saw could cut, and counts everything in whole steps. */
import { cataloguedTrouble, SAME_POINT_MM } from "../../measure/index.ts";
import {
  COMMON_LENGTHS_ALLOWANCES,
  LONGEST_STICK_MM,
  MOST_BAD_PLACES,
  MOST_PIECES,
  MOST_STICKS,
} from "./defaults.ts";
import type { LengthsAllowances, LengthsQuestion, LengthsTrouble, StickAtHand } from "./types.ts";

/** The allowances given, the rest as usual. */
export function allowancesOf(question: LengthsQuestion): LengthsAllowances {
  return { ...COMMON_LENGTHS_ALLOWANCES, ...question.allowances };
}

/** The first thing wrong with a question, or null. */
export function questionTrouble(question: LengthsQuestion): LengthsTrouble | null {
  return allowanceTrouble(allowancesOf(question)) ?? piecesTrouble(question) ?? sticksTrouble(question);
}

function allowanceTrouble(allowances: LengthsAllowances): LengthsTrouble | null {
  const named = [
    ["kerf", "kerfMm", allowances.kerfMm],
    ["trim", "trimMm", allowances.trimMm],
    ["planing allowance", "planingMm", allowances.planingMm],
  ] as const;
  for (const [size, key, valueMm] of named) {
    if (!(valueMm >= 0 && valueMm <= MOST_ALLOWANCE_MM)) {
      return cataloguedTrouble("lengths-allowance", `allowances.${key}`, {
        size,
        valueMm,
        mostMm: MOST_ALLOWANCE_MM,
      });
    }
  }
  return null;
}

const MOST_ALLOWANCE_MM = 1000;

function piecesTrouble({ runs }: LengthsQuestion): LengthsTrouble | null {
  const count = runs.reduce((total, run) => total + run.pieces.length, 0);
  if (count < 1 || count > MOST_PIECES) {
    return cataloguedTrouble("lengths-pieces", "runs", { count, most: MOST_PIECES });
  }
  for (const [r, run] of runs.entries()) {
    for (const [p, piece] of run.pieces.entries()) {
      if (!isLength(piece.lengthMm)) {
        const name = piece.name ?? `${run.name} ${p + 1}`;
        return cataloguedTrouble("lengths-piece-size", `runs[${r}].pieces[${p}].lengthMm`, {
          name,
          valueMm: piece.lengthMm,
          mostMm: LONGEST_STICK_MM,
        });
      }
    }
  }
  return null;
}

function sticksTrouble({ sticks }: LengthsQuestion): LengthsTrouble | null {
  for (const [index, stick] of sticks.entries()) {
    const count = stick.count ?? 1;
    if (!Number.isInteger(count) || count < 0 || count > MOST_STICKS) {
      return cataloguedTrouble("lengths-sticks", `sticks[${index}].count`, { count, most: MOST_STICKS });
    }
  }
  const count = sticks.reduce((total, stick) => total + (stick.count ?? 1), 0);
  if (count < 1 || count > MOST_STICKS) {
    return cataloguedTrouble("lengths-sticks", "sticks", { count, most: MOST_STICKS });
  }
  return firstOf(sticks.map((stick, index) => stickTrouble(stick, index)));
}

function stickTrouble(stick: StickAtHand, index: number): LengthsTrouble | null {
  const name = stick.name ?? `Stick ${index + 1}`;
  if (!isLength(stick.lengthMm)) {
    return cataloguedTrouble("lengths-stick-size", `sticks[${index}].lengthMm`, {
      name,
      valueMm: stick.lengthMm,
      mostMm: LONGEST_STICK_MM,
    });
  }
  const places = stick.badPlaces ?? [];
  if (places.length > MOST_BAD_PLACES) {
    const facts = { name, count: places.length, most: MOST_BAD_PLACES };
    return cataloguedTrouble("lengths-bad-places", `sticks[${index}].badPlaces`, facts);
  }
  const wrong = places.findIndex(
    ({ fromMm, toMm }) => !(fromMm >= 0 && toMm >= fromMm && toMm <= stick.lengthMm),
  );
  if (wrong < 0) return null;
  return cataloguedTrouble("lengths-bad-place", `sticks[${index}].badPlaces[${wrong}]`, {
    name,
    fromMm: places[wrong]?.fromMm ?? 0,
    toMm: places[wrong]?.toMm ?? 0,
    lengthMm: stick.lengthMm,
  });
}

function isLength(valueMm: number): boolean {
  return valueMm >= SAME_POINT_MM && valueMm <= LONGEST_STICK_MM;
}

function firstOf(found: readonly (LengthsTrouble | null)[]): LengthsTrouble | null {
  return found.find((one) => one !== null) ?? null;
}
