/**
 * A band of reeds or flutes laid out to a fixed width: equal parts side by side, a fillet between neighbours where one
 * is wanted, and what is left of the width shared evenly between both ends.
 */
import {
  asinRad,
  cataloguedTrouble,
  fine,
  LEAST_PIECE_MM,
  type Outcome,
  refused,
  SAME_POINT_MM,
  type TroubleCode,
  toDeg,
  toRad,
} from "../measure/index.ts";
import { SOLE_SWEEP_DEG } from "./forms/rounds.ts";
import type { BandSpec } from "./part-spec.ts";

/** A sole that a part of a band can be made with: of a hollow for reeds, of a round for flutes. */
export interface BandSole {
  readonly radiusMm: number;
  readonly widthMm: number;
}

export interface BandLayout {
  readonly count: number;
  readonly radiusMm: number;
  readonly sweepDeg: number;
  /** Width of one reed or flute, mm. */
  readonly partMm: number;
  readonly filletMm: number;
  /** Flat left at either end, mm; 0 where the parts fill the band. */
  readonly endMm: number;
  /** Where each part starts, from the band's own start, mm. */
  readonly startsMm: readonly number[];
}

/** More parts than this are no band that is planed. */
const MOST_PARTS = 100;

/**
 * The layout of a band. With a radius, as many parts as there is room for, or the count given; with a count alone the
 * widest parts that leave the ends no less than `leastEndMm`. Refused where the band has neither, or too little width.
 *
 * Places are counted from both ends alike, so that the ends are equal to the last bit and nothing adds up along the row.
 */
export function bandLayout(spec: BandSpec, where = ""): Outcome<BandLayout, TroubleCode> {
  const filletMm = spec.filletMm ?? 0;
  const leastEndMm = spec.leastEndMm ?? 0;
  const sweepDeg = spec.sweepDeg ?? SOLE_SWEEP_DEG;
  const roomMm = spec.widthMm - 2 * leastEndMm;
  const half = Math.sin(toRad(sweepDeg) / 2);
  const oneMm = spec.radiusMm === undefined ? undefined : 2 * spec.radiusMm * half;
  const count = spec.count ?? (oneMm === undefined ? undefined : mostParts(roomMm, oneMm, filletMm));
  if (count === undefined) {
    return refused(cataloguedTrouble("band-without-size", where, { of: spec.of }));
  }
  const takenMm = (count - 1) * filletMm;
  const partMm = oneMm ?? (roomMm - takenMm) / count;
  const needMm = count * partMm + takenMm + 2 * leastEndMm;
  const isTooNarrow = count < 1 || partMm < LEAST_PIECE_MM || needMm > spec.widthMm + SAME_POINT_MM;
  if (isTooNarrow || count > MOST_PARTS) {
    const facts = {
      of: spec.of,
      count: Math.min(count, MOST_PARTS + 1),
      most: MOST_PARTS,
      widthMm: spec.widthMm,
      needMm: Math.max(needMm, (oneMm ?? LEAST_PIECE_MM) + 2 * leastEndMm),
    };
    return refused(cataloguedTrouble("band-too-narrow", where, facts));
  }
  return fine(laidOut({ widthMm: spec.widthMm, count, partMm, filletMm, half, sweepDeg, spec }));
}

/** How many parts fit; a room that is short by a rounding error is not. */
function mostParts(roomMm: number, partMm: number, filletMm: number): number {
  return Math.floor((roomMm + filletMm + SAME_POINT_MM) / (partMm + filletMm));
}

interface Row {
  readonly widthMm: number;
  readonly count: number;
  readonly partMm: number;
  readonly filletMm: number;
  readonly half: number;
  readonly sweepDeg: number;
  readonly spec: BandSpec;
}

function laidOut({ widthMm, count, partMm, filletMm, half, sweepDeg, spec }: Row): BandLayout {
  const restMm = (widthMm - count * partMm - (count - 1) * filletMm) / 2;
  // An end too narrow to be a flat is no end: the parts take it in, each by a hair.
  const endMm = restMm < LEAST_PIECE_MM ? 0 : restMm;
  const wideMm = endMm === 0 ? (widthMm - (count - 1) * filletMm) / count : partMm;
  const pitchMm = wideMm + filletMm;
  const middleMm = widthMm / 2;
  const startsMm = Array.from(
    { length: count },
    (_, i) => middleMm + (i - (count - 1) / 2) * pitchMm - wideMm / 2,
  );
  if (endMm === 0) startsMm[0] = 0;
  const radiusMm = spec.radiusMm ?? wideMm / (2 * half);
  return { count, radiusMm, sweepDeg, partMm: wideMm, filletMm, endMm, startsMm };
}

/**
 * The same band made with a sole that is on the shelf. A count keeps its count and gets the widest sole there is room
 * for; a radius keeps its radius; both take the sweep that the sole makes held upright, unless the band says its own.
 * Refused (`band-no-sole`) where no sole is narrow enough. A band whose radius no sole has stays as it is.
 */
export function bandOnShelf(
  spec: BandSpec,
  soles: readonly BandSole[],
  where = "",
): Outcome<BandSpec, TroubleCode> {
  if (spec.radiusMm !== undefined) {
    const { radiusMm } = spec;
    const same = soles.find((sole) => Math.abs(sole.radiusMm - radiusMm) <= SAME_POINT_MM);
    return fine(same === undefined || spec.sweepDeg !== undefined ? spec : { ...spec, ...madeBy(same) });
  }
  const exact = bandLayout(spec, where);
  if (!exact.ok) return exact;
  const fitting = soles
    .map((sole) => ({ sole, partMm: partOf(sole, spec.sweepDeg) }))
    .filter(({ partMm }) => partMm <= exact.value.partMm + SAME_POINT_MM && partMm >= LEAST_PIECE_MM)
    .sort((a, b) => b.partMm - a.partMm || a.sole.radiusMm - b.sole.radiusMm);
  const [widest] = fitting;
  if (widest === undefined) {
    const facts = { of: spec.of, count: exact.value.count, mostMm: exact.value.partMm };
    return refused(cataloguedTrouble("band-no-sole", where, facts));
  }
  const { radiusMm } = widest.sole;
  return fine({ ...spec, radiusMm, sweepDeg: spec.sweepDeg ?? madeBy(widest.sole).sweepDeg });
}

/** How wide a part a sole makes: its own width, or the chord of the sweep that is wanted. */
function partOf({ radiusMm, widthMm }: BandSole, sweepDeg: number | undefined): number {
  return sweepDeg === undefined ? widthMm : 2 * radiusMm * Math.sin(toRad(sweepDeg) / 2);
}

function madeBy({ radiusMm, widthMm }: BandSole): { readonly sweepDeg: number } {
  return { sweepDeg: toDeg(2 * asinRad(Math.min(1, widthMm / 2 / radiusMm))) };
}
