/** How much a size across the grain changes when the moisture content does. */
import {
  cataloguedTrouble,
  fine,
  type Outcome,
  refused,
  SAME_POINT_MM,
  type Trouble,
  type TroubleCode,
} from "../measure/index.ts";
import { FROM_SHRINKAGE } from "./sources.ts";
import type { MovementCoefficients, Sawn, Shrinkage, Source, Timber } from "./types.ts";

export interface MovementQuestion {
  readonly timber: Timber;
  readonly widthMm: number;
  /** Left out: only the width is asked for. */
  readonly thicknessMm?: number | undefined;
  /** Moisture content before and after, percent. */
  readonly fromPercent: number;
  readonly toPercent: number;
  readonly sawn: Sawn;
  /** Which formula; left out: the coefficients from 6 to 14 %, the wider one beyond. */
  readonly by?: Formula | undefined;
}

export type Formula = "coefficients" | "shrinkage";

export interface SizeChange {
  readonly beforeMm: number;
  readonly changeMm: number;
  readonly afterMm: number;
  /** Change over the size before: negative when it shrinks. */
  readonly strainRatio: number;
  readonly direction: "tangential" | "radial";
}

export interface Movement {
  readonly timber: string;
  readonly width: SizeChange;
  readonly thickness: SizeChange | null;
  readonly formula: Formula;
  /** What the other formula gives for the width: how far the two agree. */
  readonly otherFormulaChangeMm: number;
  readonly coefficients: MovementCoefficients;
  readonly shrinkage: Shrinkage;
  readonly convention: {
    readonly sign: "positive: the wood grows; drying shrinks it";
    readonly flat: "width along the growth rings (tangential), thickness across them (radial)";
    readonly quarter: "width across the growth rings (radial), thickness along them (tangential)";
  };
  readonly assumed: readonly Trouble<TroubleCode>[];
}

/** The coefficients hold between these moisture contents, percent (Wood Handbook p. 13-15). */
export const COEFFICIENTS_FROM_PERCENT = 6;
export const COEFFICIENTS_TO_PERCENT = 14;
/** Above it wood no longer shrinks or swells, percent (fibre saturation, as the wider formula takes it). */
export const SATURATION_PERCENT = 30;
/** No stick, panel or side is wider. */
const WIDEST_MM = 10_000;

/**
 * Movement of width and thickness, mm; growing is positive.
 *
 * Inside 6 to 14 % the coefficients: D · C · (M2 − M1) (Wood Handbook eq. 13-2). Beyond, with a warning, the wider
 * formula D (M2 − M1) / (30 · 100 / S − 30 + M1) (eq. 13-3; its layout from memory, derived independently: the size
 * at M is D₀ [1 − S (30 − M) / 3000]). A timber that has only one of the two figures gets the other from it by
 * C = S / (3000 − 20 S). Refused: under 0 %, above 30 %, sizes that are not positive, timbers without a figure.
 */
export function movement(question: MovementQuestion): Outcome<Movement, TroubleCode> {
  const refusal = refusalOf(question);
  if (refusal !== null) return refused(refusal);
  const { timber, widthMm, thicknessMm, fromPercent, toPercent, sawn } = question;
  const coefficients = coefficientsOf(timber);
  const shrinkage = shrinkageOf(timber);
  if (coefficients === null || shrinkage === null) {
    return refused(cataloguedTrouble("timber-no-movement", "timber", { timber: timber.name }));
  }
  const isInside = [fromPercent, toPercent].every(
    (percent) => percent >= COEFFICIENTS_FROM_PERCENT && percent <= COEFFICIENTS_TO_PERCENT,
  );
  const formula = question.by ?? (isInside ? "coefficients" : "shrinkage");
  const strain = (direction: SizeChange["direction"], by: Formula) =>
    by === "coefficients"
      ? strainByCoefficient(
          direction === "radial" ? coefficients.radialPerPercent : coefficients.tangentialPerPercent,
          fromPercent,
          toPercent,
        )
      : strainByShrinkage(
          direction === "radial" ? shrinkage.radialPercent : shrinkage.tangentialPercent,
          fromPercent,
          toPercent,
        );
  const changeOf = (beforeMm: number, direction: SizeChange["direction"]): SizeChange => {
    const strainRatio = strain(direction, formula);
    const changeMm = beforeMm * strainRatio;
    return { beforeMm, changeMm, afterMm: beforeMm + changeMm, strainRatio, direction };
  };
  const acrossWidth = sawn === "flat" ? "tangential" : "radial";
  const acrossThickness = sawn === "flat" ? "radial" : "tangential";
  const other: Formula = formula === "coefficients" ? "shrinkage" : "coefficients";
  const warnings = isInside ? [] : [outsideRange(fromPercent, toPercent, formula)];
  return fine<Movement, TroubleCode>(
    {
      timber: timber.name,
      width: changeOf(widthMm, acrossWidth),
      thickness: thicknessMm === undefined ? null : changeOf(thicknessMm, acrossThickness),
      formula,
      otherFormulaChangeMm: widthMm * strain(acrossWidth, other),
      coefficients,
      shrinkage,
      convention: {
        sign: "positive: the wood grows; drying shrinks it",
        flat: "width along the growth rings (tangential), thickness across them (radial)",
        quarter: "width across the growth rings (radial), thickness along them (tangential)",
      },
      assumed: assumedOf(timber),
    },
    warnings,
  );
}

/** The coefficients of a timber, from its shrinkage if it has no others; null if it has neither. */
export function coefficientsOf(timber: Timber): MovementCoefficients | null {
  if (timber.coefficients !== null || timber.shrinkage === null) return timber.coefficients;
  const { radialPercent, tangentialPercent, source } = timber.shrinkage;
  return {
    radialPerPercent: coefficientFromShrinkage(radialPercent),
    tangentialPerPercent: coefficientFromShrinkage(tangentialPercent),
    source: derivedFrom(source),
  };
}

/** The shrinkage of a timber, from its coefficients if it has no other; null if it has neither. */
export function shrinkageOf(timber: Timber): Shrinkage | null {
  if (timber.shrinkage !== null || timber.coefficients === null) return timber.shrinkage;
  const { radialPerPercent, tangentialPerPercent, source } = timber.coefficients;
  return {
    radialPercent: shrinkageFromCoefficient(radialPerPercent),
    tangentialPercent: shrinkageFromCoefficient(tangentialPerPercent),
    source: derivedFrom(source),
  };
}

/**
 * Change per size and per 1 % from the shrinkage green to ovendry in percent: C = S / (3000 − 20 S), the wider formula
 * at 10 %. Reproduces 32 of 36 printed pairs to the last digit (the others are a relative's figure).
 */
export function coefficientFromShrinkage(shrinkagePercent: number): number {
  return shrinkagePercent / (3000 - 20 * shrinkagePercent);
}

function shrinkageFromCoefficient(perPercent: number): number {
  return (3000 * perPercent) / (1 + 20 * perPercent);
}

/** Strain by eq. 13-2: coefficient times the change of moisture content. */
export function strainByCoefficient(perPercent: number, fromPercent: number, toPercent: number): number {
  return withoutMinusZero(perPercent * (toPercent - fromPercent));
}

/** Strain by eq. 13-3, both moisture contents at most 30 %. No shrinkage, no strain. */
export function strainByShrinkage(shrinkagePercent: number, fromPercent: number, toPercent: number): number {
  if (shrinkagePercent === 0) return 0;
  const wholeScale = (SATURATION_PERCENT * 100) / shrinkagePercent;
  return withoutMinusZero((toPercent - fromPercent) / (wholeScale - SATURATION_PERCENT + fromPercent));
}

function refusalOf(question: MovementQuestion): Trouble<TroubleCode> | null {
  const sizes = [
    ["width", question.widthMm],
    ["thickness", question.thicknessMm],
  ] as const;
  for (const [size, valueMm] of sizes) {
    if (valueMm === undefined || (valueMm >= SAME_POINT_MM && valueMm <= WIDEST_MM)) continue;
    return cataloguedTrouble("movement-size", size, { size, valueMm, mostMm: WIDEST_MM });
  }
  const moistures = [
    ["from", question.fromPercent],
    ["to", question.toPercent],
  ] as const;
  for (const [where, moisturePercent] of moistures) {
    if (moisturePercent > SATURATION_PERCENT) {
      const facts = { moisturePercent, saturationPercent: SATURATION_PERCENT };
      return cataloguedTrouble("movement-above-saturation", where, facts);
    }
    if (!(moisturePercent >= 0)) return cataloguedTrouble("movement-moisture", where, { moisturePercent });
  }
  return null;
}

function outsideRange(fromPercent: number, toPercent: number, by: Formula): Trouble<TroubleCode> {
  const leastPercent = COEFFICIENTS_FROM_PERCENT;
  const mostPercent = COEFFICIENTS_TO_PERCENT;
  return cataloguedTrouble("movement-outside-range", "", {
    fromPercent,
    toPercent,
    leastPercent,
    mostPercent,
    by,
  });
}

function assumedOf(timber: Timber): Trouble<TroubleCode>[] {
  const assumed: Trouble<TroubleCode>[] = [
    cataloguedTrouble("movement-averages", "", { timber: timber.name }),
  ];
  const isMemory = timber.coefficients === null && timber.shrinkage?.source.standing === "from memory";
  if (isMemory) assumed.push(cataloguedTrouble("timber-from-memory", "timber", { timber: timber.name }));
  if (timber.isGenus) assumed.push(cataloguedTrouble("timber-is-genus", "timber", { timber: timber.name }));
  return assumed;
}

function derivedFrom(source: Source): Source {
  return { where: `${FROM_SHRINKAGE}; from ${source.where}`, standing: "derived" };
}

function withoutMinusZero(value: number): number {
  return value === 0 ? 0 : value;
}
