/** The finger's way over the board while a stroke is drawn, shown at most once a frame. */
import type { Point } from "mouldwright/curve";
import { type PointerEvent, type RefObject, useRef, useState } from "react";
import { type BoardView, onStick } from "../board/board-view.ts";
import { type HandOnBoard, placeIn } from "../board/use-hand-on-board.ts";

/** What is being drawn, mm of the stick, and the hands that draw it. */
export function useStroke(
  board: RefObject<HTMLElement | null>,
  view: BoardView,
  onStroke: (points: readonly Point[]) => void,
): { readonly points: readonly Point[]; readonly hands: HandOnBoard } {
  const [points, setPoints] = useState<readonly Point[]>([]);
  const drawn = useRef<Point[] | null>(null);
  const frame = useRef(0);
  const at = (event: { readonly clientX: number; readonly clientY: number }): Point =>
    board.current === null ? { x: 0, y: 0 } : onStick(view, placeIn(board.current, event));
  const stop = (): readonly Point[] => {
    const all = drawn.current ?? [];
    drawn.current = null;
    cancelAnimationFrame(frame.current);
    setPoints([]);
    return all;
  };
  return {
    points,
    hands: {
      onPointerDown: (event: PointerEvent<Element>) => {
        if (event.button > 0) return;
        event.currentTarget.setPointerCapture(event.pointerId);
        drawn.current = [at(event)];
      },
      onPointerMove: (event: PointerEvent<Element>) => {
        const run = drawn.current;
        if (run === null) return;
        // Between two frames the finger has been in several places.
        const steps = event.nativeEvent.getCoalescedEvents?.() ?? [];
        for (const step of steps.length > 0 ? steps : [event]) run.push(at(step));
        cancelAnimationFrame(frame.current);
        frame.current = requestAnimationFrame(() => setPoints([...run]));
      },
      onPointerUp: () => {
        if (drawn.current !== null) onStroke(stop());
      },
      onPointerCancel: () => {
        stop();
      },
    },
  };
}
