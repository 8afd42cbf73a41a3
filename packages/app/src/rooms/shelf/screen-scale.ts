/**
 * How many pixels this screen shows on a real millimetre, as the maker has set it against a card or a rule. Kept in this
 * browser; nothing but the arcs to compare hangs on it.
 */
import { useSyncExternalStore } from "react";

/** An identification card ID-1 (bank card), mm. Source: ISO/IEC 7810. */
export const CARD_MM = { width: 85.6, height: 53.98 } as const;

/** What a browser takes a millimetre to be: 96 pixels an inch. */
export const USUAL_PX_PER_MM = 96 / 25.4;
/** No screen that a hand holds a plane against is coarser or finer. */
export const LEAST_PX_PER_MM = 1.5;
export const MOST_PX_PER_MM = 12;

const KEPT_AS = "mouldwright pixels on a millimetre";
const listeners = new Set<() => void>();
let pxPerMm: number | null = readKept();

/** null until the maker has set it. */
export function useScreenScale(): number | null {
  return useSyncExternalStore(
    (onChange) => {
      listeners.add(onChange);
      return () => listeners.delete(onChange);
    },
    () => pxPerMm,
  );
}

export function setScreenScale(next: number): void {
  pxPerMm = next;
  try {
    localStorage.setItem(KEPT_AS, String(next));
  } catch {
    // A browser that keeps nothing has it until it is closed.
  }
  for (const listener of listeners) listener();
}

/** A kept value that can be believed; null for anything else. */
export function believable(kept: string | null): number | null {
  const value = kept === null ? Number.NaN : Number(kept);
  return value >= LEAST_PX_PER_MM && value <= MOST_PX_PER_MM ? value : null;
}

function readKept(): number | null {
  try {
    return believable(localStorage.getItem(KEPT_AS));
  } catch {
    return null;
  }
}
