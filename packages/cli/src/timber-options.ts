/** What the commands about moving wood ask: which timber, how it is sawn, from which moisture to which. */
import { fine, type Outcome } from "mouldwright/measure";
import { findTimber, type Sawn, type Timber } from "mouldwright/timber";
import { type OptionKinds, readChoice } from "./arguments.ts";
import type { Command } from "./command.ts";
import { firstRefusal, missing, readPercent } from "./fit-options.ts";

export const TIMBER_OPTIONS: OptionKinds = {
  timber: { value: true, sample: '--timber "black cherry"' },
  from: { value: true, sample: "--from 12" },
  to: { value: true, sample: "--to 6" },
  sawn: { value: true, sample: "--sawn flat" },
};

export interface Season {
  readonly timber: Timber;
  readonly sawn: Sawn;
  readonly fromPercent: number;
  readonly toPercent: number;
}

/** All four are needed: none of them has a value that would be right more often than wrong. */
export function readSeason({ given }: Command): Outcome<Season> {
  const name = given.values.get("timber");
  if (name === undefined) return missing("timber", '"black cherry"');
  const timber = findTimber(name);
  const sawn = readChoice<Sawn>(given, "sawn", ["flat", "quarter"]);
  const from = readPercent(given, "from");
  const to = readPercent(given, "to");
  const wrong = firstRefusal([timber, from, to, sawn]);
  if (wrong !== null) return wrong;
  if (!timber.ok || !sawn.ok || !from.ok || !to.ok) return missing("timber", '"black cherry"');
  if (from.value === undefined) return missing("from", "12");
  if (to.value === undefined) return missing("to", "6");
  if (sawn.value === undefined) return missing("sawn", "flat");
  return fine(
    { timber: timber.value, sawn: sawn.value, fromPercent: from.value, toPercent: to.value },
    timber.warnings,
  );
}
