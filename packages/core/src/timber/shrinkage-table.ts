/**
 * Shrinkage from green to ovendry, percent, radial and tangential. The two books disagree on mahogany (3.0 and 4.1
 * against 3.2 and 5.1): both rows stand, each under its own name.
 */
import { GENUS_TABLE, IMPORTED_SHRINKAGE_TABLE, SHRINKAGE_MEMORY, SHRINKAGE_TABLE } from "./sources.ts";
import type { Shrinkage, Source } from "./types.ts";

type Row = readonly [name: string, radialPercent: number, tangentialPercent: number];

const HANDBOOK_ROWS: readonly Row[] = [
  ["Ash, white", 4.9, 7.8],
  ["Basswood, American", 6.6, 9.3],
  ["Beech, American", 5.5, 11.9],
  ["Birch, yellow", 7.3, 9.5],
  ["Butternut", 3.4, 6.4],
  ["Cherry, black", 3.7, 7.1],
  ["Chestnut, American", 3.4, 6.7],
  ["Elm, American", 4.2, 9.5],
  ["Hickory, pecan", 4.9, 8.9],
  ["Alder, red", 4.4, 7.3],
  ["Oak, white (Quercus alba)", 5.6, 10.5],
  ["Sweetgum", 5.3, 10.2],
  ["Sycamore, American", 5, 8.4],
  ["Walnut, black", 5.5, 7.8],
  ["Yellow-poplar", 4.6, 8.2],
  ["Cedar, yellow", 2.8, 6],
  ["Cedar, Port-Orford", 4.6, 6.9],
  ["Cedar, incense", 3.3, 5.2],
  ["Redcedar, western", 2.4, 5],
  ["Redcedar, eastern", 3.1, 4.7],
  ["Douglas-fir, coast", 4.8, 7.6],
  ["Fir, white", 3.3, 7],
];

const IMPORTED_ROWS: readonly Row[] = [
  ["Mahogany, true (Swietenia macrophylla)", 3, 4.1],
  ["Mahogany, African (Khaya)", 2.5, 4.5],
  ["Afrormosia", 3, 6.4],
];

/** Averages over a genus, or over the European kinds of it. */
const GENUS_ROWS: readonly Row[] = [
  ["Spruce (Picea)", 3.6, 7.4],
  ["Fir (Abies)", 3.8, 7.6],
  ["Scots pine", 4, 7.7],
  ["Larch", 3.3, 7.8],
  ["Walnut, European", 4.3, 6.4],
  ["Chestnut (Castanea)", 4, 6.8],
  ["Willow", 4.2, 7.2],
  ["Alder", 4.4, 7.3],
  ["Cherry (Prunus)", 4.2, 7.8],
  ["Ash (Fraxinus)", 5.2, 8.3],
  ["Poplar", 3.4, 8.5],
  ["Maple (Acer)", 4.2, 8.8],
  ["Elm (Ulmus)", 5.2, 9.1],
  ["Lime (Tilia)", 6.8, 9.5],
  ["Oak, white group", 5.2, 10.2],
  ["Beech (Fagus)", 5.8, 11.8],
  ["Mahogany (Swietenia)", 3.2, 5.1],
];

const MEMORY_ROWS: readonly Row[] = [
  ["Maple, sugar", 4.8, 9.9],
  ["Oak, northern red", 4, 8.6],
  ["Pine, eastern white", 2.1, 6.1],
  ["Pine, sugar", 2.9, 5.6],
  ["Pine, ponderosa", 3.9, 6.2],
  ["Redwood, old-growth", 2.6, 4.4],
  ["Spanish-cedar", 4.2, 6.3],
  ["Teak", 2.5, 5.8],
];

const sourced = (rows: readonly Row[], source: Source) =>
  rows.map(
    ([name, radialPercent, tangentialPercent]) =>
      [name, { radialPercent, tangentialPercent, source }] as const,
  );

export const SHRINKAGES: ReadonlyMap<string, Shrinkage> = new Map([
  ...sourced(HANDBOOK_ROWS, SHRINKAGE_TABLE),
  ...sourced(IMPORTED_ROWS, IMPORTED_SHRINKAGE_TABLE),
  ...sourced(GENUS_ROWS, GENUS_TABLE),
  ...sourced(MEMORY_ROWS, SHRINKAGE_MEMORY),
]);

/** Rows that stand for a whole genus or group; Scots pine and European walnut are one species in the same table. */
export const GENERA: ReadonlySet<string> = new Set(
  GENUS_ROWS.map(([name]) => name).filter((name) => name !== "Scots pine" && name !== "Walnut, European"),
);
