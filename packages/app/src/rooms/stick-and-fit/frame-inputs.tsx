/** What a frame is reckoned from: one known size, the rail's width and its rebate. */
import type { StatedSize } from "mouldwright/making";
import { change, useShownJob } from "../../bench/job-on-bench.ts";
import { Choice } from "../../common/choice.tsx";
import { FigureField } from "../../common/figure-field.tsx";
import { LengthField } from "../../common/length-field.tsx";
import { choicesOf, type Fit, withFit } from "../../fitting/fit-choices.ts";
import { LabelledChoice, SelectField } from "./select-field.tsx";

const STATED: readonly { readonly value: StatedSize; readonly words: string }[] = [
  { value: "sight", words: "Sight size, as it is seen" },
  { value: "glass", words: "Glass, panel or picture" },
  { value: "rebate", words: "Opening of the rebate" },
  { value: "outside", words: "Outside" },
];

function set(what: string, part: Partial<NonNullable<Fit["frame"]>>): void {
  change(what, (job) => withFit(job, "frame", part));
}

export function FrameInputs() {
  const { frame } = choicesOf(useShownJob());
  const { stated, acrossMm, upMm, sides, sideMm, widthMm, rebateMm, allowanceMm } = frame;
  return (
    <>
      <SelectField
        label="The size that is known"
        value={stated}
        options={STATED}
        onChange={(next) => set("the size that is known", { stated: next })}
      />
      <LabelledChoice label="Shape">
        <Choice
          label="Shape of the frame"
          value={sides === null ? "rectangle" : "regular"}
          options={[
            { value: "rectangle", words: "Rectangle" },
            { value: "regular", words: "Equal sides" },
          ]}
          onChange={(next) => set("shape of the frame", { sides: next === "rectangle" ? undefined : 6 })}
        />
      </LabelledChoice>
      <div className="fit-fields">
        {sides === null ? (
          <>
            <LengthField
              label="Across"
              valueMm={acrossMm}
              onChange={(next) => set("width of the frame", { acrossMm: next })}
            />
            <LengthField
              label="Up"
              valueMm={upMm}
              onChange={(next) => set("height of the frame", { upMm: next })}
            />
          </>
        ) : (
          <>
            <FigureField
              label="Sides"
              unit=""
              value={sides}
              least={3}
              most={100}
              isWhole
              onChange={(next) => set(`${next} sides`, { sides: next })}
            />
            <LengthField
              label="Each side"
              valueMm={sideMm}
              onChange={(next) => set("length of a side", { sideMm: next })}
            />
          </>
        )}
        <LengthField
          label="Width of the rail"
          valueMm={widthMm}
          onChange={(next) => set("width of the rail", { widthMm: next })}
        />
        <LengthField
          label="Rebate, from sight"
          valueMm={rebateMm}
          onChange={(next) => set("rebate of the frame", { rebateMm: next })}
        />
        <LengthField
          label="Play round the glass"
          valueMm={allowanceMm}
          help="Both sides together."
          onChange={(next) => set("play round the glass", { allowanceMm: next })}
        />
      </div>
    </>
  );
}
