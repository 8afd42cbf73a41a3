/** What was measured on a check bar, as it is typed: millimetres unless another unit stands behind it. */
import { parseLength, sayTrouble } from "mouldwright/measure";
import { stretchFor } from "mouldwright/sheets";
import type { TypedReading } from "../../common/typed-reading.ts";

/** A hundredth is finer than any rule that is laid on paper, mm. */
const FINEST_PER_MM = 100;

export function readMade(typed: string): TypedReading<number> {
  const read = parseLength(typed.trim(), { unit: "mm" });
  if (!read.ok) return { ok: false, says: said(read.trouble) };
  const valueMm = Math.round(read.value.mm * FINEST_PER_MM) / FINEST_PER_MM;
  const stretch = stretchFor({ acrossMm: valueMm, upMm: valueMm });
  return stretch.ok ? { ok: true, value: valueMm } : { ok: false, says: said(stretch.trouble) };
}

function said(trouble: Parameters<typeof sayTrouble>[0]): string {
  const { sentence, hint } = sayTrouble(trouble, { unit: "mm" });
  return `${sentence} ${hint}`;
}
