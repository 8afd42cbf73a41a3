/** What the commands about moving wood ask: which timber, how it is sawn, from which moisture to which. */
import { readTimbers } from "mouldwright/job";
import { fine, type Outcome } from "mouldwright/measure";
import { findTimber, type Sawn, type Timber } from "mouldwright/timber";
import { type OptionKinds, readChoice } from "./arguments.ts";
import type { Command } from "./command.ts";
import { firstRefusal, missing, readPercent } from "./fit-options.ts";
import { notRead, type Read } from "./input.ts";
import { MOST_INPUT_BYTES, readTextFile } from "./read-file.ts";

export const OWN_TIMBER_OPTION: OptionKinds = {
  timbers: { value: true, sample: "--timbers own-timbers.json" },
};

export const TIMBER_OPTIONS: OptionKinds = {
  timber: { value: true, sample: '--timber "black cherry"' },
  ...OWN_TIMBER_OPTION,
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

/** The maker's own timbers, from the file of `--timbers`; none where it was not given. */
export async function readOwnTimbers({ given }: Command): Promise<Read<readonly Timber[]>> {
  const path = given.values.get("timbers");
  if (path === undefined) return { ok: true, value: [], warnings: [] };
  const text = await readTextFile(path, MOST_INPUT_BYTES);
  if (!text.ok) return notRead(path, text);
  const timbers = readTimbers(text.value);
  return timbers.ok ? timbers : notRead(path, timbers);
}

/** The timber of `--timber`, of the table or the maker's own. */
export async function readTimber(command: Command): Promise<Read<Timber>> {
  const name = command.given.values.get("timber");
  if (name === undefined) return notRead("", missing("timber", '"black cherry"'));
  const own = await readOwnTimbers(command);
  if (!own.ok) return own;
  const timber = findTimber(name, own.value);
  if (!timber.ok) return notRead("", timber);
  return { ...timber, warnings: [...own.warnings, ...timber.warnings] };
}

/** How it is sawn and from which moisture to which: none of them has a value that would be right more often than wrong. */
export function readSeason({ given }: Command, timber: Timber): Outcome<Season> {
  const sawn = readChoice<Sawn>(given, "sawn", ["flat", "quarter"]);
  const from = readPercent(given, "from");
  const to = readPercent(given, "to");
  const wrong = firstRefusal([from, to, sawn]);
  if (wrong !== null) return wrong;
  if (!sawn.ok || !from.ok || !to.ok) return missing("sawn", "flat");
  if (from.value === undefined) return missing("from", "12");
  if (to.value === undefined) return missing("to", "6");
  if (sawn.value === undefined) return missing("sawn", "flat");
  return fine({ timber, sawn: sawn.value, fromPercent: from.value, toPercent: to.value });
}
