/** Pages are drawn one after another, so that the screen is never asked for two at once. */

/** Draws one page; stops when the signal says so. */
export type Draw = (signal: AbortSignal) => Promise<void>;

export interface DrawQueue {
  /** Draws when its turn comes. What is called back is not drawn any more, or stopped where it has begun. */
  readonly add: (draw: Draw) => () => void;
}

export function drawQueue(): DrawQueue {
  const waiting: { readonly draw: Draw; readonly stop: AbortController }[] = [];
  let isDrawing = false;
  const drawAll = async (): Promise<void> => {
    if (isDrawing) return;
    isDrawing = true;
    for (let next = waiting.shift(); next !== undefined; next = waiting.shift()) {
      if (next.stop.signal.aborted) continue;
      // A page that cannot be drawn says so itself; the others are drawn all the same.
      await next.draw(next.stop.signal).catch(() => undefined);
    }
    isDrawing = false;
  };
  return {
    add: (draw) => {
      const stop = new AbortController();
      waiting.push({ draw, stop });
      void drawAll();
      return () => stop.abort();
    },
  };
}
