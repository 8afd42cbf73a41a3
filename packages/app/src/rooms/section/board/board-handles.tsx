/** The rings to take hold of. Each is as large to the finger as a button, and small to the eye. */
import type { Handle } from "../pull/handles.ts";
import { type BoardSize, type BoardView, onBoard } from "./board-view.ts";
import type { HandleHands } from "./use-pull.ts";

export interface BoardHandlesProps {
  readonly handles: readonly Handle[];
  readonly view: BoardView;
  readonly size: BoardSize;
  readonly pulledId: string | null;
  readonly placeWords: (handle: Handle) => string;
  readonly handsOn: (handle: Handle) => HandleHands;
}

export function BoardHandles({ handles, view, size, pulledId, placeWords, handsOn }: BoardHandlesProps) {
  return handles.map((handle) => {
    const { x, y } = onBoard(view, handle.at);
    const isAway = x < -22 || y < -22 || x > size.widthPx + 22 || y > size.heightPx + 22;
    if (isAway && handle.id !== pulledId) return null;
    return (
      <button
        key={handle.id}
        type="button"
        className={`handle handle-${handle.kind}${handle.id === pulledId ? " pulled" : ""}`}
        style={{ transform: `translate(${x}px, ${y}px)` }}
        aria-label={`${handle.words}: ${placeWords(handle)}. Arrow keys move it`}
        {...handsOn(handle)}
      >
        <span className="handle-ring" />
      </button>
    );
  });
}
