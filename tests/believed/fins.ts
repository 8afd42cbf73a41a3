/** Thin fins of waste left standing: the next plane breaks them off, and they take wood of the moulding along. */

import { mm } from "../second-route/finding.ts";
import { boxOf, type FlatRegion, flatRing } from "../second-route/flat.ts";
import { stretches } from "../second-route/rays.ts";
import { type CutOnBench, FLAT_KINDS, type SaidPlan } from "./bench.ts";
import type { Said } from "./rules.ts";

/** Waste that stands thinner than this is a fin, mm, from this height on, mm and times as high as it is thick. */
const THIN_MM = 3;
const HIGH_MM = 3;
const HIGH_RATIO = 3;

/** Thinner than this two cuts touch as drawn, mm: a hair of wood that a plan itself draws thicker is set wrong. */
const FILM_MM = 0.02;

/** Levels at which the wood is looked through, mm apart. */
const LEVEL_MM = 0.2;

interface Fin {
  readonly leftMm: number;
  readonly rightMm: number;
  readonly footMm: number;
  readonly topMm: number;
}

/** Fins that a flat plane leaves where none stood before; what the wanted section itself has so thin is no waste. */
export function finsLeft(plan: SaidPlan, cuts: readonly CutOnBench[]): readonly Said[] {
  const wanted: FlatRegion = [flatRing(plan.planned)];
  return cuts.flatMap(({ cut, before, after }): Said[] => {
    if (!FLAT_KINDS.includes(cut.plane.kind)) return [];
    const older = finsIn(before, wanted);
    return finsIn(after, wanted)
      .filter((fin) => !older.some((other) => standsIn(fin, other)))
      .map((fin) => ({
        cut: cut.number,
        says: `a fin ${mm(fin.rightMm - fin.leftMm)} thick and ${mm(fin.topMm - fin.footMm)} high is left standing at ${mm(fin.leftMm)} across`,
      }));
  });
}

/** Fins of waste in the wood as it lies on its back, whatever they stand on. */
export function finsIn(wood: FlatRegion, wanted: FlatRegion): readonly Fin[] {
  const { minX, minY, maxY } = boxOf(wood);
  const done: Fin[] = [];
  let growing: Fin[] = [];
  for (let y = maxY - LEVEL_MM / 2; y > minY; y -= LEVEL_MM) {
    const thin = thinAt(wood, wanted, minX - 1, y);
    const next = thin.map(([from, to]): Fin => {
      const above = growing.find((fin) => fin.leftMm < to && fin.rightMm > from);
      return {
        leftMm: Math.min(from, above?.leftMm ?? from),
        rightMm: Math.max(to, above?.rightMm ?? to),
        footMm: y - LEVEL_MM / 2,
        topMm: above?.topMm ?? y + LEVEL_MM / 2,
      };
    });
    done.push(...growing.filter((fin) => !next.some((lower) => standsIn(fin, lower))));
    growing = next;
  }
  return [...done, ...growing].filter(isFin);
}

/** Thin stretches of waste across, at one level. */
function thinAt(
  wood: FlatRegion,
  wanted: FlatRegion,
  fromX: number,
  y: number,
): readonly (readonly [number, number])[] {
  return stretches(wood, [fromX, y], [1, 0])
    .filter(([a, b]) => b - a < THIN_MM && !isIn(wanted, fromX + (a + b) / 2, y))
    .map(([a, b]) => [fromX + a, fromX + b]);
}

function isIn(region: FlatRegion, x: number, y: number): boolean {
  const first = stretches(region, [x, y], [0, 1])[0];
  return first !== undefined && first[0] === 0;
}

function standsIn(fin: Fin, other: Fin): boolean {
  return fin.leftMm < other.rightMm && fin.rightMm > other.leftMm && fin.topMm <= other.topMm + LEVEL_MM;
}

function isFin({ leftMm, rightMm, footMm, topMm }: Fin): boolean {
  const highMm = topMm - footMm;
  const thickMm = rightMm - leftMm;
  return thickMm >= FILM_MM && thickMm < THIN_MM && highMm >= HIGH_MM && highMm >= thickMm * HIGH_RATIO;
}
