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
  readonly onPointerDownCapture: (event: PointerEvent) => void;
  readonly onPointerUpCapture: (event: PointerEvent) => void;
  readonly onPointerCancelCapture: () => void;
}

/**
 * A finger drawn across turns a page; a mouse does not, since it marks text. It is heard before what lies under it: rows
 * and boxes to press keep the finger to themselves, and on a narrow screen they are nearly the whole page.
 */
export function useSwipe(turnBy: (step: -1 | 1) => void): SwipeHandlers {
  const from = useRef<{ readonly id: number; readonly x: number; readonly y: number } | null>(null);
  return {
    onPointerDownCapture: (event) => {
      if (event.pointerType === "mouse") return;
      // A second finger pinches: that is no swipe.
      from.current = event.isPrimary ? { id: event.pointerId, x: event.clientX, y: event.clientY } : null;
    },
    onPointerUpCapture: (event) => {
      const start = from.current;
      from.current = null;
      if (start === null || start.id !== event.pointerId) return;
      const step = swiped(event.clientX - start.x, event.clientY - start.y);
      if (step === 0) return;
      dropPress(event);
      turnBy(step);
    },
    onPointerCancelCapture: () => {
      from.current = null;
    },
  };
}

/** A press comes this soon after the finger has left, or not at all, ms. */
const PRESS_MS = 300;

/**
 * What the finger was drawn over has not been pressed; what it is set down on next has. Boxes take the finger's lifting
 * for a press, all else the click after it: the one is told that the finger was called off, the other is dropped.
 */
function dropPress({ pointerId, pointerType }: PointerEvent): void {
  document.dispatchEvent(new globalThis.PointerEvent("pointercancel", { pointerId, pointerType }));
  const drop = (event: Event): void => {
    event.preventDefault();
    event.stopPropagation();
  };
  const end = (): void => {
    clearTimeout(timer);
    removeEventListener("click", drop, { capture: true });
    removeEventListener("pointerdown", end, { capture: true });
  };
  const timer = setTimeout(end, PRESS_MS);
  addEventListener("click", drop, { capture: true });
  addEventListener("pointerdown", end, { capture: true });
}
