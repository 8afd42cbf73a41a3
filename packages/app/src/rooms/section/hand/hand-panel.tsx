/** Beside the board while a stroke is drawn by hand: what is read of it, before it is kept. */
import { Button } from "react-aria-components";
import { Choice } from "../../../common/choice.tsx";
import type { ReadStroke } from "./hand-drawn.ts";
import type { HandDrawing } from "./use-hand-drawing.ts";

const CLOSENESS = [
  { value: "close", words: "close" },
  { value: "even", words: "even" },
  { value: "smooth", words: "smooth" },
] as const;

export function HandPanel({ hand }: { readonly hand: HandDrawing }) {
  const { stroke, read } = hand;
  return (
    <section className="panel hand-panel" aria-label="Drawing by hand">
      <p role="status">
        {stroke === null
          ? "Draw with finger or mouse from one join of the section to another. What is drawn takes the place of the parts between."
          : read === null
            ? "That was too short, or began and ended at the same join. Draw again, from one join to another."
            : sayRead(read)}
      </p>
      <div className="tools">
        {read === null ? null : (
          <>
            <Choice
              label="How close to the stroke"
              value={hand.closeness}
              options={CLOSENESS}
              onChange={hand.setCloseness}
            />
            <Button className="button button-main" onPress={hand.keepCurves}>
              Keep as curves
            </Button>
            <Button className="button" onPress={hand.keepFree}>
              Keep as a free curve
            </Button>
            <Button className="button" onPress={() => hand.draw(null)}>
              Draw again
            </Button>
          </>
        )}
        <Button className="button" onPress={() => hand.setOn(false)}>
          {read === null ? "Back to pulling" : "Drop it"}
        </Button>
      </div>
    </section>
  );
}

function sayRead({ pieces, curveCount, planes }: ReadStroke): string {
  const flatCount = pieces.length - curveCount;
  const curves = curveCount === 1 ? "1 curve" : `${curveCount} curves`;
  const flats = flatCount === 1 ? "1 flat" : `${flatCount} flats`;
  const what = flatCount === 0 ? curves : curveCount === 0 ? flats : `${curves} and ${flats}`;
  const shelf = planes.length === 0 ? "" : ` On the shelf: ${planes.join(", ")}.`;
  return `Read as ${what}.${shelf}`;
}
