/** What the commands have in common: their surroundings, and how they end in a refusal. */
import {
  cataloguedTrouble,
  LEAST_TOLERANCE_MM,
  type LengthUnit,
  type Outcome,
  type Trouble,
} from "mouldwright/measure";
import type { Given } from "./arguments.ts";
import { readLengthOption, readPlace, readSize } from "./arguments.ts";
import { EXIT } from "./exit-codes.ts";
import type { Placement, Read } from "./input.ts";
import type { Io } from "./io.ts";
import { reportsOf } from "./report.ts";

export interface Command {
  readonly given: Given;
  readonly io: Io;
  /** The unit asked for on the command line; `undefined` if none was. */
  readonly askedUnit: LengthUnit | undefined;
}

/** Says why something is refused and gives the exit code for it. */
export function refuse(
  command: Command,
  refusal: { readonly file: string; readonly troubles: readonly Trouble[] },
): number {
  const { io, askedUnit } = command;
  const reporting = { unit: askedUnit ?? "mm", columns: io.complaintColumns };
  io.complain(reportsOf("Refused", refusal.file, refusal.troubles, reporting));
  return EXIT.refused;
}

/** Says what was only noticed. */
export function note(command: Command, file: string, warnings: readonly Trouble[], unit: LengthUnit): void {
  const { io } = command;
  io.complain(reportsOf("Note", file, warnings, { unit, columns: io.complaintColumns }));
}

export function troublesOfRefusal(outcome: Outcome<unknown> & { readonly ok: false }): readonly Trouble[] {
  return [outcome.trouble, ...(outcome.more ?? [])];
}

/** `--stick` and `--at`, mm. */
export function readPlacement(command: Command): Read<Placement> {
  const { given } = command;
  const unit = command.askedUnit ?? "mm";
  const stick = given.values.get("stick");
  const at = given.values.get("at");
  const size = stick === undefined ? undefined : readSize("stick", stick, unit);
  if (size?.ok === false) return { ok: false, file: "", troubles: troublesOfRefusal(size) };
  const place = at === undefined ? undefined : readPlace("at", at, unit);
  if (place?.ok === false) return { ok: false, file: "", troubles: troublesOfRefusal(place) };
  return {
    ok: true,
    value: {
      stick: size?.value,
      at: place === undefined ? undefined : { x: place.value.xMm, y: place.value.yMm },
      unit: command.askedUnit,
    },
    warnings: [],
  };
}

/** `--tolerance`, mm; `undefined` if it was not given. */
export function readTolerance(command: Command): Read<number | undefined> {
  const typed = command.given.values.get("tolerance");
  if (typed === undefined) return { ok: true, value: undefined, warnings: [] };
  const tolerance = readLengthOption("tolerance", typed, command.askedUnit ?? "mm");
  if (!tolerance.ok) return { ok: false, file: "", troubles: troublesOfRefusal(tolerance) };
  if (tolerance.value >= LEAST_TOLERANCE_MM) return tolerance;
  const wanted = `a length of ${LEAST_TOLERANCE_MM} mm or more`;
  const facts = { option: "--tolerance", value: typed, wanted };
  return { ok: false, file: "", troubles: [cataloguedTrouble("option-value-wrong", "", facts)] };
}
