/** Moving the drawing under the hand: wheel, one finger, two fingers. What is touched without moving is chosen. */
import type { Point } from "mouldwright/curve";
import { type PointerEvent, type RefObject, useEffect, useRef } from "react";
import { type BoardView, pannedBy, pinchedTo, zoomedAbout } from "./board-view.ts";

/** A hand that trembles by less has not moved, px. */
const STILL_PX = 5;
const WHEEL_RATIO = 1.0015;

export interface HandOnBoard {
  readonly onPointerDown: (event: PointerEvent<Element>) => void;
  readonly onPointerMove: (event: PointerEvent<Element>) => void;
  readonly onPointerUp: (event: PointerEvent<Element>) => void;
  readonly onPointerCancel: (event: PointerEvent<Element>) => void;
}

export function useHandOnBoard(
  board: RefObject<HTMLElement | null>,
  setView: (edit: (view: BoardView) => BoardView) => void,
  onTouch: (at: Point) => void,
): HandOnBoard {
  const down = useRef(new Map<number, Point>());
  const from = useRef<Point | null>(null);
  const hasMoved = useRef(false);
  useEffect(() => {
    const element = board.current;
    if (element === null) return;
    // React listens to the wheel passively; here the page must not scroll with it.
    const onWheel = (event: WheelEvent): void => {
      event.preventDefault();
      const at = placeIn(element, event);
      const lines = event.deltaMode === WheelEvent.DOM_DELTA_LINE ? 16 : 1;
      setView((view) => zoomedAbout(view, at, WHEEL_RATIO ** (-event.deltaY * lines)));
    };
    element.addEventListener("wheel", onWheel, { passive: false });
    return () => element.removeEventListener("wheel", onWheel);
  }, [board, setView]);
  const place = (event: PointerEvent<Element>): Point =>
    board.current === null ? { x: 0, y: 0 } : placeIn(board.current, event);
  const lift = (event: PointerEvent<Element>): void => {
    down.current.delete(event.pointerId);
    if (down.current.size === 0) from.current = null;
  };
  return {
    onPointerDown: (event) => {
      if (event.button > 0 && event.button !== 1) return;
      event.currentTarget.setPointerCapture(event.pointerId);
      down.current.set(event.pointerId, place(event));
      if (down.current.size === 1) {
        from.current = place(event);
        hasMoved.current = false;
      }
    },
    onPointerMove: (event) => {
      const before = down.current.get(event.pointerId);
      if (before === undefined) return;
      const now = place(event);
      const start = from.current ?? now;
      if (Math.hypot(now.x - start.x, now.y - start.y) > STILL_PX) hasMoved.current = true;
      if (!hasMoved.current) return;
      const other = [...down.current].find(([id]) => id !== event.pointerId)?.[1];
      down.current.set(event.pointerId, now);
      if (other === undefined) setView((view) => pannedBy(view, now.x - before.x, now.y - before.y));
      else setView((view) => pinchedTo(view, [before, other], [now, other]));
    },
    onPointerUp: (event) => {
      const wasAlone = down.current.size === 1;
      lift(event);
      if (wasAlone && !hasMoved.current) onTouch(place(event));
    },
    onPointerCancel: lift,
  };
}

export function placeIn(
  element: Element,
  event: { readonly clientX: number; readonly clientY: number },
): Point {
  const box = element.getBoundingClientRect();
  return { x: event.clientX - box.left, y: event.clientY - box.top };
}
