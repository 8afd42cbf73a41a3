/** Lengths as they are typed into fields, with the bounds of the field. */
import { formatFieldLength, type LengthUnit, parseLength, sayTrouble, WRITTEN_MM } from "mouldwright/measure";
import type { TypedReading } from "./typed-reading.ts";

export interface LengthBounds {
  /** Least and greatest that may be, mm. */
  readonly leastMm?: number;
  readonly mostMm?: number;
  /** Whether less than nought may be typed: downwards, to the other side. */
  readonly isSigned?: boolean;
}

/** Bounds are told as fields write lengths: typed as it was told, a bound is itself. */
export function readLengthTyped(typed: string, unit: LengthUnit, bounds: LengthBounds): TypedReading<number> {
  const plain = typed.trim();
  const isMinus = bounds.isSigned === true && /^[-\u2212]/.test(plain);
  const read = parseLength(isMinus ? plain.slice(1) : plain, { unit });
  if (!read.ok) {
    const { sentence, hint } = sayTrouble(read.trouble, { unit });
    return { ok: false, says: `${sentence} ${hint}` };
  }
  const valueMm = isMinus ? -read.value.mm : read.value.mm;
  const { leastMm = Number.NEGATIVE_INFINITY, mostMm = Number.POSITIVE_INFINITY } = bounds;
  if (valueMm < leastMm - WRITTEN_MM) {
    return { ok: false, says: `At least ${formatFieldLength(leastMm, unit)} here: type more.` };
  }
  if (valueMm > mostMm + WRITTEN_MM) {
    return { ok: false, says: `At most ${formatFieldLength(mostMm, unit)} here: type less.` };
  }
  return { ok: true, value: Math.max(leastMm, Math.min(mostMm, valueMm)) };
}
