/** Nearer, further, the whole stick, full size; and the room's own tools beside them. */
import type { ReactNode } from "react";
import { Button } from "react-aria-components";
import { FULL_SIZE_PX_PER_MM } from "./board-view.ts";
import type { useBoardView } from "./use-board-view.ts";

export interface BoardToolsProps {
  readonly lie: ReturnType<typeof useBoardView>;
  readonly children?: ReactNode;
}

const RATIO = 1.25;

export function BoardTools({ lie, children }: BoardToolsProps) {
  const isFullSize = Math.abs(lie.view.pxPerMm / FULL_SIZE_PX_PER_MM - 1) < 0.001;
  return (
    <div className="board-tools">
      <div className="tools tight" role="toolbar" aria-label="View">
        <Button className="button small" onPress={lie.fit} isDisabled={lie.isFitted}>
          Fit
        </Button>
        <Button className="button small" onPress={lie.fullSize}>
          Full size
        </Button>
      </div>
      {children}
      {isFullSize && !lie.isFitted ? (
        <p className="quiet board-note">
          About full size: screens differ. Hold a rule to the bar on the board; a printed sheet is true.
        </p>
      ) : null}
    </div>
  );
}

/** In the corner of the board, where a thumb reaches them. */
export function ZoomButtons({ lie }: { readonly lie: ReturnType<typeof useBoardView> }) {
  return (
    <div className="zoom-buttons">
      <Button className="icon-button" aria-label="Smaller" onPress={() => lie.zoom(1 / RATIO)}>
        <ToolIcon d="M6 12h12" />
      </Button>
      <Button className="icon-button" aria-label="Larger" onPress={() => lie.zoom(RATIO)}>
        <ToolIcon d="M6 12h12M12 6v12" />
      </Button>
    </div>
  );
}

export function ToolIcon({ d }: { readonly d: string }) {
  return (
    <svg className="sign" viewBox="0 0 24 24" aria-hidden="true">
      <path d={d} />
    </svg>
  );
}
