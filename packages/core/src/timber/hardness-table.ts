/** Side hardness (Janka) at 12 % moisture content. The sources round differently; take 5 % either way for the figure. */
import {
  FLOOR_HARDNESS,
  HARDNESS_MEMORY,
  MAPLE_HARDNESS,
  OREGON_HARDNESS,
  PINE_HARDNESS,
} from "./sources.ts";
import type { Hardness, Source } from "./types.ts";

const NEWTONS_PER_POUND_FORCE = 4.4482216152605;

const ROWS: readonly (readonly [name: string, poundsForce: number, source: Source])[] = [
  ["Oak, white (Quercus alba)", 1360, FLOOR_HARDNESS],
  ["Oak, northern red", 1290, FLOOR_HARDNESS],
  ["Maple, sugar", 1450, MAPLE_HARDNESS],
  ["Ash, white", 1320, FLOOR_HARDNESS],
  ["Birch, yellow", 1260, FLOOR_HARDNESS],
  ["Walnut, black", 1010, FLOOR_HARDNESS],
  ["Cherry, black", 950, FLOOR_HARDNESS],
  ["Douglas-fir, coast", 710, OREGON_HARDNESS],
  ["Pine, sugar", 380, PINE_HARDNESS],
  ["Pine, eastern white", 380, PINE_HARDNESS],
  ["Pine, western white", 420, PINE_HARDNESS],
  ["Beech, American", 1300, HARDNESS_MEMORY],
  ["Yellow-poplar", 540, HARDNESS_MEMORY],
  ["Basswood, American", 410, HARDNESS_MEMORY],
  ["Redcedar, western", 350, HARDNESS_MEMORY],
  ["Mahogany, true (Swietenia macrophylla)", 800, HARDNESS_MEMORY],
  ["Teak", 1000, HARDNESS_MEMORY],
];

/** Janka hardness in both units from pounds force. */
export function hardnessOf(poundsForce: number, source: Source): Hardness {
  return { poundsForce, newtons: poundsForce * NEWTONS_PER_POUND_FORCE, source };
}

export const HARDNESSES: ReadonlyMap<string, Hardness> = new Map(
  ROWS.map(([name, poundsForce, source]) => [name, hardnessOf(poundsForce, source)]),
);
