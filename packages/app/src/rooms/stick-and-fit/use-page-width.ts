/** How wide pictures are drawn: as wide as their place, so that their lettering is never too small to read. */
import { type RefObject, useLayoutEffect, useRef, useState } from "react";

/** The smallest lettering of a picture is 3.6 mm; at so many pixels a millimetre it stands over 12 px. */
const PX_PER_MM = 3.5;
const NARROWEST_MM = 88;
const WIDEST_MM = 190;
/** Steps of the width, so that a window that is drawn larger is not drawn again at every pixel, mm. */
const STEP_MM = 6;

export function pageWidthMm(widthPx: number): number {
  const steps = Math.floor(widthPx / PX_PER_MM / STEP_MM);
  return Math.min(WIDEST_MM, Math.max(NARROWEST_MM, steps * STEP_MM));
}

/** 0 until the place has been measured. */
export function usePageWidth(): {
  readonly place: RefObject<HTMLDivElement | null>;
  readonly widthMm: number;
} {
  const place = useRef<HTMLDivElement>(null);
  const [widthMm, setWidthMm] = useState(0);
  useLayoutEffect(() => {
    const element = place.current;
    if (element === null) return;
    const measure = (): void => setWidthMm(pageWidthMm(element.clientWidth));
    measure();
    const watcher = new ResizeObserver(measure);
    watcher.observe(element);
    return () => watcher.disconnect();
  }, []);
  return { place, widthMm };
}
