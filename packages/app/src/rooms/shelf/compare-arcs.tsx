/** Arcs at full size on the screen, to hold a plane's sole against; first the screen is measured, once. */
import { INCH_MM } from "mouldwright/measure";
import { useMemo, useState } from "react";
import { Button } from "react-aria-components";
import { DrawingView } from "../../common/drawing-view.tsx";
import { useLengthWords } from "../../common/length-words.ts";
import { MeasureScreen } from "./measure-screen.tsx";
import { arcDrawing } from "./plane-drawing.ts";
import { sizeWords } from "./plane-words.ts";
import { useScreenScale } from "./screen-scale.ts";

export interface CompareArcsProps {
  readonly kind: "hollow" | "round";
  readonly onTake: (radiusMm: number) => void;
}

const LEAST_MM = 3;
const MOST_MM = 38.5;
const STEP_MM = 0.5;
const LEAST_32NDS = 4;
const MOST_32NDS = 48;

/** Radii every half millimetre or every thirty-second of an inch, as on the printed sheet of arcs. */
export function comparedRadii(unit: "mm" | "in"): readonly number[] {
  if (unit === "in") {
    return Array.from(
      { length: MOST_32NDS - LEAST_32NDS + 1 },
      (_, index) => ((LEAST_32NDS + index) * INCH_MM) / 32,
    );
  }
  return Array.from({ length: (MOST_MM - LEAST_MM) / STEP_MM + 1 }, (_, index) => LEAST_MM + index * STEP_MM);
}

export function CompareArcs({ kind, onTake }: CompareArcsProps) {
  const { unit } = useLengthWords();
  const pxPerMm = useScreenScale();
  const [isMeasuring, setIsMeasuring] = useState(false);
  const radii = useMemo(() => comparedRadii(unit), [unit]);
  const [index, setIndex] = useState(Math.floor(radii.length / 4));
  const radiusMm = radii[Math.min(index, radii.length - 1)] ?? LEAST_MM;
  const words = sizeWords(radiusMm, unit);
  const drawing = useMemo(() => arcDrawing(radiusMm, kind, `Arc of ${words}`), [radiusMm, kind, words]);
  if (pxPerMm === null || isMeasuring) return <MeasureScreen onDone={() => setIsMeasuring(false)} />;
  return (
    <div className="compare-arcs">
      <p>
        {kind === "hollow"
          ? "Draw the iron back and lay the hollow’s sole on the arc from above."
          : "Draw the iron back and lay the round’s sole into the arc."}{" "}
        Light in the middle: the sole is tighter than the arc. Light at its corners: flatter.
      </p>
      <div className="arc-at-size">
        <div style={{ width: `${drawing.widthMm * pxPerMm}px` }}>
          <DrawingView drawing={drawing} />
        </div>
      </div>
      <div className="arc-steps">
        <Button
          className="button"
          isDisabled={index === 0}
          onPress={() => setIndex(index - 1)}
          aria-label="Tighter arc"
        >
          Tighter
        </Button>
        <output className="big-figure figures">{words}</output>
        <Button
          className="button"
          isDisabled={index === radii.length - 1}
          onPress={() => setIndex(index + 1)}
          aria-label="Flatter arc"
        >
          Flatter
        </Button>
      </div>
      <input
        className="arc-slider"
        type="range"
        aria-label="Radius of the arc"
        aria-valuetext={words}
        min={0}
        max={radii.length - 1}
        value={index}
        onChange={({ target }) => setIndex(Number(target.value))}
      />
      <div className="tools">
        <Button className="button button-main" onPress={() => onTake(radiusMm)}>
          Take this radius
        </Button>
        <Button className="button" onPress={() => setIsMeasuring(true)}>
          Measure the screen again
        </Button>
      </div>
    </div>
  );
}
