/** A timber that the maker adds: looked at before anything is computed from it. */
import {
  cataloguedTrouble,
  fine,
  harmlessText,
  type Outcome,
  refused,
  type Trouble,
  type TroubleCode,
} from "../measure/index.ts";
import { hardnessOf } from "./hardness-table.ts";
import { OWN } from "./sources.ts";
import { TIMBERS } from "./timbers.ts";
import type { Timber } from "./types.ts";

/** What a maker says of a timber; shrinkage or coefficients or both. */
export interface OwnTimber {
  readonly name: string;
  readonly shrinkage?: { readonly radialPercent: number; readonly tangentialPercent: number } | undefined;
  readonly coefficients?:
    | { readonly radialPerPercent: number; readonly tangentialPerPercent: number }
    | undefined;
  readonly hardnessPoundsForce?: number | undefined;
  /** Where the figures are from; "given by the maker" if left out. */
  readonly source?: string | undefined;
  readonly note?: string | undefined;
}

/** No wood is known to shrink more from green to ovendry. */
const MOST_SHRINKAGE_PERCENT = 20;
/** The coefficient of that shrinkage, rounded up. */
const MOST_PER_PERCENT = 0.008;
/** Hardest woods known lie under it, lbf. */
const MOST_POUNDS_FORCE = 6000;

/**
 * A maker's own timber as one of the table's kind. Refused: no name, a name of the table, no figure at all, figures
 * that no wood has. Warned of: more movement across the rings than along them, which is nearly always a slip.
 */
export function ownTimber(given: OwnTimber): Outcome<Timber, TroubleCode> {
  const name = harmlessText(given.name);
  if (name === "") return refused(cataloguedTrouble("timber-no-name", "timber", {}));
  if (TIMBERS.some((timber) => timber.name.toLowerCase() === name.toLowerCase())) {
    return refused(cataloguedTrouble("own-timber-name-taken", "timber", { name }));
  }
  if (given.shrinkage === undefined && given.coefficients === undefined) {
    return refused(cataloguedTrouble("own-timber-no-figures", "timber", { name }));
  }
  const [first, ...more] = figureTroubles(given, name);
  if (first !== undefined) return refused(first, ...more);
  const source = { ...OWN, where: given.source === undefined ? OWN.where : harmlessText(given.source) };
  const timber: Timber = {
    name,
    otherNames: [],
    isGenus: false,
    shrinkage: given.shrinkage === undefined ? null : { ...given.shrinkage, source },
    coefficients: given.coefficients === undefined ? null : { ...given.coefficients, source },
    hardness: given.hardnessPoundsForce === undefined ? null : hardnessOf(given.hardnessPoundsForce, source),
    note: harmlessText(given.note ?? ""),
  };
  const isTurned =
    (timber.shrinkage !== null && timber.shrinkage.radialPercent > timber.shrinkage.tangentialPercent) ||
    (timber.coefficients !== null &&
      timber.coefficients.radialPerPercent > timber.coefficients.tangentialPerPercent);
  return fine<Timber, TroubleCode>(
    timber,
    isTurned ? [cataloguedTrouble("own-timber-turned", "timber", { name })] : [],
  );
}

function figureTroubles({ shrinkage, coefficients, hardnessPoundsForce }: OwnTimber, name: string) {
  const figures: readonly (readonly [figure: string, value: number | undefined, most: number])[] = [
    ["radial shrinkage in percent", shrinkage?.radialPercent, MOST_SHRINKAGE_PERCENT],
    ["tangential shrinkage in percent", shrinkage?.tangentialPercent, MOST_SHRINKAGE_PERCENT],
    ["radial coefficient per 1 %", coefficients?.radialPerPercent, MOST_PER_PERCENT],
    ["tangential coefficient per 1 %", coefficients?.tangentialPerPercent, MOST_PER_PERCENT],
    ["hardness in pounds force", hardnessPoundsForce, MOST_POUNDS_FORCE],
  ];
  return figures.flatMap(([figure, value, most]): Trouble<TroubleCode>[] =>
    value === undefined || (value > 0 && value <= most)
      ? []
      : [cataloguedTrouble("own-timber-figure", "timber", { name, figure, value, most })],
  );
}
