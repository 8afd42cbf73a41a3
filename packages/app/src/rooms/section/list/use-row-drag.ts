/** A row of the list dragged to another place by its grip, with finger or mouse. */
import { type PointerEvent, useCallback, useEffect, useRef, useState } from "react";

export interface RowDrag {
  readonly from: number;
  /** Where it would stand if it were let go now. */
  readonly to: number;
}

export interface GripHands {
  readonly onPointerDown: (event: PointerEvent<Element>) => void;
  readonly onPointerMove: (event: PointerEvent<Element>) => void;
  readonly onPointerUp: () => void;
  readonly onPointerCancel: () => void;
}

export function useRowDrag(onMove: (from: number, to: number) => void): {
  readonly drag: RowDrag | null;
  readonly grip: (index: number) => GripHands;
} {
  const [drag, setDrag] = useState<RowDrag | null>(null);
  const middles = useRef<readonly number[]>([]);
  const now = useRef<RowDrag | null>(null);
  const show = useCallback((next: RowDrag | null) => {
    now.current = next;
    setDrag(next);
  }, []);
  const moved = useRef(onMove);
  useEffect(() => {
    moved.current = onMove;
  });
  // The same hands from one drawing of the list to the next, so that rows that have not changed are left alone.
  const grip = useCallback(
    (index: number): GripHands => ({
      onPointerDown: (event) => {
        const list = event.currentTarget.closest("ol");
        if (event.button > 0 || list === null) return;
        event.preventDefault();
        event.currentTarget.setPointerCapture(event.pointerId);
        middles.current = [...list.children].map((row) => {
          const { top, bottom } = row.getBoundingClientRect();
          return (top + bottom) / 2;
        });
        show({ from: index, to: index });
      },
      onPointerMove: ({ clientY }) => {
        const held = now.current;
        if (held !== null) show({ ...held, to: placeAt(clientY, held.from, middles.current) });
      },
      onPointerUp: () => {
        const held = now.current;
        if (held !== null && held.to !== held.from) moved.current(held.from, held.to);
        show(null);
      },
      onPointerCancel: () => show(null),
    }),
    [show],
  );
  return { drag, grip };
}

/** The place that a row held at this height would take: after every other row whose middle lies above it. */
export function placeAt(clientY: number, from: number, middles: readonly number[]): number {
  return middles.filter((middle, index) => index !== from && middle < clientY).length;
}
