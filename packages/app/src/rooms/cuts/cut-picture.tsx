/** The picture of a cut, in the room it is given: always of one size, so that turning the page nothing jumps. */
import type { Plan } from "mouldwright/cutting";
import { drawCutScene } from "mouldwright/sheets";
import { useMemo } from "react";
import { DrawingView } from "../../common/drawing-view.tsx";
import type { Rule } from "./cut-words.ts";
import { type PictureWish, usePictureRoom } from "./picture-room.ts";

export interface CutPictureProps {
  readonly plan: Plan;
  readonly number: number;
  readonly rule: Rule;
  readonly wish: PictureWish;
}

export function CutPicture({ plan, number, rule, wish }: CutPictureProps) {
  const { ref, size } = usePictureRoom<HTMLDivElement>(wish);
  const { unit, inchStep } = rule;
  const drawing = useMemo(
    () => (size === null ? null : drawCutScene(plan, number, size, { unit, inchStep })),
    [plan, number, size, unit, inchStep],
  );
  return (
    <div className="cut-picture" ref={ref}>
      {drawing === null ? null : <DrawingView drawing={drawing} />}
    </div>
  );
}
