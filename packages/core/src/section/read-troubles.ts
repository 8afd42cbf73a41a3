/** What one reading of a drawing gathers on its way; the sentences stand in `measure/say/drawing.ts`. */
import { cataloguedTrouble, type FactsOf, type Trouble, type TroubleCode } from "../measure/index.ts";

export interface Reading {
  readonly warnings: Trouble<TroubleCode>[];
  /** The first refusal stands: whatever is found after it may be its consequence. */
  refusal: Trouble<TroubleCode> | null;
  /** Pieces and flattened points still allowed. */
  pointsLeft: number;
}

export function newReading(pointLimit: number): Reading {
  return { warnings: [], refusal: null, pointsLeft: pointLimit };
}

export function refuse<Code extends TroubleCode>(
  reading: Reading,
  code: Code,
  where: string,
  facts: FactsOf<Code>,
): void {
  reading.refusal ??= cataloguedTrouble(code, where, facts);
}

/** Each warning is given once for a place. */
export function warn<Code extends TroubleCode>(
  reading: Reading,
  code: Code,
  where: string,
  facts: FactsOf<Code>,
): void {
  const known = reading.warnings.some((one) => one.code === code && one.where === where);
  if (!known) reading.warnings.push(cataloguedTrouble(code, where, facts));
}
