/** The board's size, and where the section lies on it: fitted until the maker zooms or moves it. */
import { type RefObject, useCallback, useLayoutEffect, useMemo, useState } from "react";
import {
  type BoardSize,
  type BoardView,
  fittedView,
  fullSizeView,
  type Margins,
  type StickSize,
  zoomedAbout,
} from "./board-view.ts";

export interface BoardLie {
  readonly size: BoardSize;
  readonly view: BoardView;
  readonly isFitted: boolean;
  readonly setView: (edit: (view: BoardView) => BoardView) => void;
  readonly fit: () => void;
  readonly fullSize: () => void;
  readonly zoom: (ratio: number) => void;
}

const NOT_YET: BoardSize = { widthPx: 0, heightPx: 0 };
/** Below this width figures and numbers stand closer to the wood, px. */
const NARROW_PX = 520;

export function useBoardView(board: RefObject<HTMLElement | null>, stick: StickSize): BoardLie {
  const [size, setSize] = useState(NOT_YET);
  const [own, setOwn] = useState<BoardView | null>(null);
  useLayoutEffect(() => {
    const element = board.current;
    if (element === null) return;
    const measure = (): void => {
      const { clientWidth: widthPx, clientHeight: heightPx } = element;
      setSize((old) => (old.widthPx === widthPx && old.heightPx === heightPx ? old : { widthPx, heightPx }));
    };
    measure();
    const observer = new ResizeObserver(measure);
    observer.observe(element);
    return () => observer.disconnect();
  }, [board]);
  const { widthMm, thicknessMm } = stick;
  const fitted = useMemo(
    () => fittedView(size, { widthMm, thicknessMm }, marginsFor(size)),
    [size, widthMm, thicknessMm],
  );
  const view = own ?? fitted;
  const setView = useCallback(
    (edit: (view: BoardView) => BoardView) => setOwn((old) => edit(old ?? fitted)),
    [fitted],
  );
  return {
    size,
    view,
    isFitted: own === null,
    setView,
    fit: () => setOwn(null),
    fullSize: () => setView((old) => fullSizeView(old, size)),
    zoom: (ratio) => setView((old) => zoomedAbout(old, { x: size.widthPx / 2, y: size.heightPx / 2 }, ratio)),
  };
}

/** How high a board of this width need be for the stick to fill it, px. */
export function neededHeightPx({ widthPx }: BoardSize, stick: StickSize): number {
  const margins = marginsFor({ widthPx, heightPx: 0 });
  const acrossPx = Math.max(0, widthPx - margins.left - margins.right);
  return Math.round((acrossPx * stick.thicknessMm) / stick.widthMm + margins.top + margins.bottom);
}

export function marginsFor({ widthPx }: BoardSize): Margins {
  return widthPx < NARROW_PX
    ? { left: 58, right: 58, top: 52, bottom: 100 }
    : { left: 76, right: 76, top: 72, bottom: 104 };
}
