/** Turning pages by key and by finger. */
import { type PointerEvent, useEffect, useRef } from "react";
import { swiped, turnedByKey } from "./pages.ts";

/** What takes arrow keys for itself. */
const TAKES_KEYS =
  "input:not([type='checkbox']), textarea, select, [contenteditable], [role='radiogroup'], [role='toolbar'], [role='slider']";

/**
 * Keys turn pages wherever the focus stands, but for what takes arrow keys itself. While a dialog is open its own pages
 * are turned, or none.
 */
export function useTurningKeys(
  at: number,
  count: number,
  turn: (to: number) => void,
  { isInDialog = false }: { readonly isInDialog?: boolean } = {},
): void {
  useEffect(() => {
    const onKey = (event: KeyboardEvent): void => {
      if (event.defaultPrevented || event.ctrlKey || event.metaKey || event.altKey || event.shiftKey) return;
      if (event.target instanceof Element && event.target.closest(TAKES_KEYS) !== null) return;
      const dialog = document.querySelector("[role='dialog']");
      if ((dialog !== null) !== isInDialog) return;
      const to = turnedByKey(event.key, at, count);
      if (to === null) return;
      event.preventDefault();
      if (to !== at) turn(to);
    };
    addEventListener("keydown", onKey);
    return () => removeEventListener("keydown", onKey);
  }, [at, count, turn, isInDialog]);
}

export interface SwipeHandlers {
  readonly onPointerDown: (event: PointerEvent) => void;
  readonly onPointerUp: (event: PointerEvent) => void;
  readonly onPointerCancel: () => void;
}

/** A finger drawn across turns a page; a mouse does not, since it marks text. */
export function useSwipe(turnBy: (step: -1 | 1) => void): SwipeHandlers {
  const from = useRef<{ readonly id: number; readonly x: number; readonly y: number } | null>(null);
  return {
    onPointerDown: (event) => {
      if (event.pointerType === "mouse") return;
      // A second finger pinches: that is no swipe.
      from.current = event.isPrimary ? { id: event.pointerId, x: event.clientX, y: event.clientY } : null;
    },
    onPointerUp: (event) => {
      const start = from.current;
      from.current = null;
      if (start === null || start.id !== event.pointerId) return;
      const step = swiped(event.clientX - start.x, event.clientY - start.y);
      if (step !== 0) turnBy(step);
    },
    onPointerCancel: () => {
      from.current = null;
    },
  };
}
