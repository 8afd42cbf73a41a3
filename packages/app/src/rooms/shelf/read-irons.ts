/** Several widths typed in one line. */
import { type LengthUnit, sameMm } from "mouldwright/measure";
import { readLengthTyped } from "../../common/read-length.ts";
import type { TypedReading } from "../../common/typed-reading.ts";

/** Widths in mm, parted by semicolons or by commas followed by a blank; a comma alone may be a decimal comma. */
export function readIrons(typed: string, unit: LengthUnit): TypedReading<readonly number[]> {
  const widthsMm: number[] = [];
  for (const part of typed.split(/;|,\s+/).filter((one) => one.trim() !== "")) {
    const read = readLengthTyped(part, unit, {});
    if (!read.ok) return read;
    widthsMm.push(read.value);
  }
  return widthsMm.length === 0
    ? { ok: false, says: "At least one iron here: type its width." }
    : { ok: true, value: widthsMm };
}

export function areSameIrons(one: readonly number[], other: readonly number[]): boolean {
  return (
    one.length === other.length && one.every((widthMm, index) => sameMm(widthMm, other[index] ?? Number.NaN))
  );
}
