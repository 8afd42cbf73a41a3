/** Figures in fields: `22.5`, `22½`, `-5`, with or without a sign of unit behind them. */
import { readFigure } from "mouldwright/measure";

const UNITS = /\s*(?:°|deg|degrees?|%|percent|°\s*[cf]|[cf])$/i;

/** The figure; null for anything that is none. */
export function figureTyped(typed: string): number | null {
  return readFigure(typed.trim().replace(UNITS, ""));
}

/** As it stands in a field: three decimals at most, a true minus. */
export function writeFigure(value: number): string {
  return String(Number(value.toFixed(3))).replace("-", "\u2212");
}
