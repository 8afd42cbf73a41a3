/** The radius of a sole from its width and depth, always with how far it can be trusted. */
import { nearestPairNumber, radiusFromSole } from "mouldwright/shelf";
import { useState } from "react";
import { Button } from "react-aria-components";
import { LengthField } from "../../common/length-field.tsx";
import { useLengthWords } from "../../common/length-words.ts";
import { TroubleLines } from "./plane-fields-form.tsx";

export interface MeasuredSoleProps {
  readonly onTake: (radiusMm: number, widthMm: number) => void;
}

export function MeasuredSole({ onTake }: MeasuredSoleProps) {
  const { length } = useLengthWords();
  const [widthMm, setWidthMm] = useState(9.5);
  const [depthMm, setDepthMm] = useState(1.3);
  const reading = radiusFromSole({ widthMm, depthMm });
  return (
    <div className="measured-sole">
      <p>
        Measure the sole across from corner to corner, then lay a straight-edge across its corners (or stand
        the round on a flat) and measure how deep or high the middle is.
      </p>
      <div className="plane-fields">
        <LengthField label="Width across" valueMm={widthMm} onChange={setWidthMm} />
        <LengthField label="Depth of the middle" valueMm={depthMm} onChange={setDepthMm} />
      </div>
      {reading.ok ? (
        <>
          <p className="big-figure figures" role="status">
            Radius {length(reading.value.radiusMm)}
          </p>
          <p className="figures">
            Likely within {length(reading.value.uncertaintyMm)}; between {length(reading.value.leastMm)} and{" "}
            {reading.value.mostMm === undefined ? "flat" : length(reading.value.mostMm)} at worst. The nearest
            pair is No. {nearestPairNumber(reading.value.radiusMm)}. Small depths are hard to read: an arc
            held to the sole tells it better.
          </p>
          <div className="tools">
            <Button className="button button-main" onPress={() => onTake(reading.value.radiusMm, widthMm)}>
              Take this radius
            </Button>
          </div>
        </>
      ) : (
        <TroubleLines troubles={[reading.trouble]} />
      )}
    </div>
  );
}
