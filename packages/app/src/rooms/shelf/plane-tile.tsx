/** One plane on the shelf: its end with the sole drawn true, its name, and what it does in this job. */
import { INCH_MM } from "mouldwright/measure";
import type { Plane } from "mouldwright/shelf";
import { memo, useMemo } from "react";
import { Button } from "react-aria-components";
import { DrawingView } from "../../common/drawing-view.tsx";
import { planeDrawing } from "./plane-drawing.ts";
import { shortSizes } from "./plane-words.ts";
import { numbersInWords, type PlaneUse } from "./shelf-list.ts";

/** What the page takes a millimetre of paper to be. */
const PX_PER_PAPER_MM = 96 / INCH_MM;
const BODY_MM = 8;

export interface PlaneTileProps {
  readonly plane: Plane;
  /** Of the drawing; the same for all planes of a kind. */
  readonly scaleRatio: number;
  readonly use: PlaneUse | undefined;
  readonly isLeftOut: boolean;
  readonly unit: "mm" | "in";
  readonly onOpen: (id: string) => void;
}

export const PlaneTile = memo(function PlaneTile(props: PlaneTileProps) {
  const { plane, scaleRatio, use, isLeftOut, unit, onOpen } = props;
  const drawing = useMemo(
    () => planeDrawing(plane, { scaleRatio, bodyMm: BODY_MM, title: plane.name }),
    [plane, scaleRatio],
  );
  const sizes = shortSizes(plane, unit);
  const state = isLeftOut
    ? "left out of this job"
    : use === undefined
      ? ""
      : `${use.cuts.length === 1 ? "cut" : "cuts"} ${numbersInWords(use.cuts)}`;
  return (
    <Button
      className={`plane-tile${isLeftOut ? " plane-out" : ""}${use === undefined ? "" : " plane-used"}`}
      onPress={() => onOpen(plane.id)}
    >
      <span className="plane-picture" aria-hidden="true">
        <span className="plane-end" style={{ width: `${drawing.widthMm * PX_PER_PAPER_MM}px` }}>
          <DrawingView drawing={drawing} />
        </span>
      </span>
      <span className="plane-name">{plane.name}</span>
      {plane.name.startsWith(sizes) ? null : <span className="plane-sizes figures">{sizes}</span>}
      {state === "" ? null : <span className="plane-state figures">{state}</span>}
    </Button>
  );
});
