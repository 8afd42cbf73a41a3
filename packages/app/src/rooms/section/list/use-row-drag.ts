/** A row of the list dragged to another place by its grip, with finger or mouse. */
import { type PointerEvent, useRef, useState } from "react";

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
  const grip = (index: number): GripHands => ({
    onPointerDown: (event) => {
      const list = event.currentTarget.closest("ol");
      if (event.button > 0 || list === null) return;
      event.preventDefault();
      event.currentTarget.setPointerCapture(event.pointerId);
      middles.current = [...list.children].map((row) => {
        const { top, bottom } = row.getBoundingClientRect();
        return (top + bottom) / 2;
      });
      setDrag({ from: index, to: index });
    },
    onPointerMove: ({ clientY }) => {
      setDrag((now) => (now === null ? null : { ...now, to: placeAt(clientY, now.from, middles.current) }));
    },
    onPointerUp: () => {
      if (drag !== null && drag.to !== drag.from) onMove(drag.from, drag.to);
      setDrag(null);
    },
    onPointerCancel: () => setDrag(null),
  });
  return { drag, grip };
}

/** The place that a row held at this height would take: after every other row whose middle lies above it. */
export function placeAt(clientY: number, from: number, middles: readonly number[]): number {
  return middles.filter((middle, index) => index !== from && middle < clientY).length;
}
