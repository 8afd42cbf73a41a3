/** What slopes are reckoned from: of a gable, of a hip's two sides, of a box. */
import { change, useShownJob } from "../../bench/job-on-bench.ts";
import { Choice } from "../../common/choice.tsx";
import { FigureField } from "../../common/figure-field.tsx";
import { LengthField } from "../../common/length-field.tsx";
import { choicesOf, type Fit, withFit } from "../../fitting/fit-choices.ts";
import { SpringFields } from "./corner-inputs.tsx";
import { LabelledChoice } from "./select-field.tsx";

const SHOWN = [
  { value: "rake", words: "Gable" },
  { value: "hip", words: "Hip" },
  { value: "box", words: "Box" },
] as const;

function set(what: string, part: Partial<NonNullable<Fit["slopes"]>>): void {
  change(what, (job) => withFit(job, "slopes", part));
}

export function SlopesInputs() {
  const { slopes } = choicesOf(useShownJob());
  return (
    <>
      <LabelledChoice label="What slopes">
        <Choice
          label="What slopes"
          value={slopes.shown}
          options={SHOWN}
          onChange={(shown) => set("another slope", { shown })}
        />
      </LabelledChoice>
      {slopes.shown === "rake" ? <RakeInputs /> : slopes.shown === "hip" ? <HipInputs /> : <BoxInputs />}
    </>
  );
}

function RakeInputs() {
  const { rakeDeg } = choicesOf(useShownJob()).slopes;
  return (
    <>
      <FigureField
        label="Slope from level"
        unit="°"
        value={rakeDeg}
        least={0}
        most={60}
        onChange={(next) => set(`slope of ${next}°`, { rakeDeg: next })}
      />
      <p className="field-note">The section of the job is the level one; corners are square.</p>
      <SpringFields />
    </>
  );
}

function HipInputs() {
  const { mainDeg, adjacentDeg, planDeg } = choicesOf(useShownJob()).slopes;
  return (
    <div className="fit-fields">
      <FigureField
        label="Main side"
        unit="°"
        value={mainDeg}
        least={1}
        most={85}
        onChange={(next) => set("slope of the main side", { mainDeg: next })}
      />
      <FigureField
        label="Other side"
        unit="°"
        value={adjacentDeg}
        least={1}
        most={85}
        placeholder="the same"
        onChange={(next) => set("slope of the other side", { adjacentDeg: next })}
        onEmpty={() => set("both sides alike", { adjacentDeg: undefined })}
      />
      <FigureField
        label="Between the eaves"
        unit="°"
        value={planDeg}
        least={30}
        most={175}
        onChange={(next) => set("angle between the eaves", { planDeg: next })}
      />
    </div>
  );
}

function BoxInputs() {
  const { boxSides, boxDeg, boxWidthMm, boxFootMm } = choicesOf(useShownJob()).slopes;
  return (
    <div className="fit-fields">
      <FigureField
        label="Sides"
        unit=""
        value={boxSides}
        least={3}
        most={100}
        isWhole
        onChange={(next) => set(`${next} sides`, { boxSides: next })}
      />
      <FigureField
        label="Sides from level"
        unit="°"
        value={boxDeg}
        least={1}
        most={90}
        help="90° stands plumb."
        onChange={(next) => set("slope of the sides", { boxDeg: next })}
      />
      <LengthField
        label="Width of a side"
        valueMm={boxWidthMm}
        onChange={(next) => set("width of the sides", { boxWidthMm: next })}
      />
      <LengthField
        label="Narrow edge"
        valueMm={boxFootMm}
        help="Outside, along one side."
        onChange={(next) => set("narrow edge of the box", { boxFootMm: next })}
      />
    </div>
  );
}
