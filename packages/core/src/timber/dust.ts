/** Timbers whose dust is named as a danger beyond that of all fine dust. */
import { cataloguedTrouble, type Trouble, type TroubleCode } from "../measure/index.ts";
import type { Timber } from "./types.ts";

/**
 * Named the most dangerous for asthma. Source: HSE woodworking pages and WIS30; the exposure limit for it is half of
 * that for other woods (ACGIH 2007, on the OSHA wood-dust page).
 */
const ASTHMA = [["redcedar", "western"]] as const;

/** Reported to make people allergic. Source: HSE WIS30; OSU extension text. */
const REPORTED = [["oak"], ["mahogany"], ["redwood"], ["iroko"]] as const;

/** The caution of a timber that is named; none for others, which is no promise that their dust is harmless. */
export function dustCautionsOf({ name }: Timber): readonly Trouble<TroubleCode>[] {
  const words = name.toLowerCase().split(/[^a-z]+/);
  const isNamed = (names: readonly (readonly string[])[]): boolean =>
    names.some((every) => every.every((word) => words.includes(word)));
  const how = isNamed(ASTHMA) ? "asthma" : isNamed(REPORTED) ? "reported" : null;
  return how === null ? [] : [cataloguedTrouble("caution-dust-timber", "", { timber: name, how })];
}
