/** What a corner is reckoned from: the spring, the angle between the walls, inside or outside, the saw. */
import type { CornerTriangle } from "mouldwright/making";
import { change, useShownJob } from "../../bench/job-on-bench.ts";
import { Choice } from "../../common/choice.tsx";
import { FigureField } from "../../common/figure-field.tsx";
import { HelpWord } from "../../common/help-word.tsx";
import { LengthField } from "../../common/length-field.tsx";
import { choicesOf, type Fit, withFit } from "../../fitting/fit-choices.ts";
import { LabelledChoice } from "./select-field.tsx";

const KINDS = [
  { value: "inside", words: "Inside" },
  { value: "outside", words: "Outside" },
] as const;
const MEASURED = [
  { value: "angle", words: "Its angle" },
  { value: "triangle", words: "Three lengths" },
] as const;
const EDGES = [
  { value: "far edge", words: "Far edge" },
  { value: "gauge edge", words: "Gauge edge" },
] as const;
const LEANS = [
  { value: "left", words: "Left" },
  { value: "right", words: "Right" },
] as const;

/** A square corner by the old rule of 3, 4 and 5, to begin with. */
const SQUARE: CornerTriangle = { alongFirstMm: 600, alongSecondMm: 800, acrossMm: 1000 };

export function setCorner(what: string, part: Partial<NonNullable<Fit["corner"]>>): void {
  change(what, (job) => withFit(job, "corner", part));
}

export function CornerInputs() {
  const { cornerDeg, triangleMm, kind, bladeLeans } = choicesOf(useShownJob());
  return (
    <>
      <LabelledChoice label="Corner">
        <Choice
          label="Kind of corner"
          value={kind}
          options={KINDS}
          onChange={(next) => setCorner(`${next} corner`, { kind: next })}
        />
      </LabelledChoice>
      <LabelledChoice label="Measured">
        <Choice
          label="How the corner was measured"
          value={triangleMm === null ? "angle" : "triangle"}
          options={MEASURED}
          onChange={(next) =>
            setCorner("corner measured otherwise", {
              triangleMm: next === "triangle" ? { ...SQUARE } : undefined,
            })
          }
        />
      </LabelledChoice>
      {triangleMm === null ? (
        <FigureField
          label="Angle between the walls"
          unit="°"
          value={cornerDeg}
          least={30}
          most={330}
          onChange={(next) => setCorner(`corner of ${next}°`, { cornerDeg: next })}
          help={kind === "outside" ? "Through the solid: 90° for a square case." : "90° for a square room."}
        />
      ) : (
        <TriangleFields triangle={triangleMm} />
      )}
      <SpringFields />
      <LabelledChoice label="The saw’s blade leans">
        <Choice
          label="The saw’s blade leans"
          value={bladeLeans}
          options={LEANS}
          onChange={(next) => setCorner(`blade leaning ${next}`, { bladeLeans: next })}
        />
      </LabelledChoice>
    </>
  );
}

function TriangleFields({ triangle }: { readonly triangle: CornerTriangle }) {
  const set = (part: Partial<CornerTriangle>): void =>
    setCorner("corner by three lengths", { triangleMm: { ...triangle, ...part } });
  return (
    <div className="fit-fields">
      <LengthField
        label="Along one wall"
        valueMm={triangle.alongFirstMm}
        onChange={(alongFirstMm) => set({ alongFirstMm })}
      />
      <LengthField
        label="Along the other"
        valueMm={triangle.alongSecondMm}
        onChange={(alongSecondMm) => set({ alongSecondMm })}
      />
      <LengthField label="Across" valueMm={triangle.acrossMm} onChange={(acrossMm) => set({ acrossMm })} />
    </div>
  );
}

/** The spring and which edge lies at the wall: for a corner and for a whole run. */
export function SpringFields() {
  const { springFromWallDeg, wallEdge } = choicesOf(useShownJob());
  return (
    <>
      <FigureField
        label="Spring from the wall"
        unit="°"
        value={springFromWallDeg}
        least={0}
        most={90}
        placeholder="as the section is bevelled"
        onChange={(next) => setCorner(`spring of ${next}°`, { springFromWallDeg: next })}
        onEmpty={() => setCorner("the section’s own spring", { springFromWallDeg: undefined })}
      />
      <p className="field-note">
        The <HelpWord word="spring">spring</HelpWord> lies between back and wall; 0° stands flat against it.
      </p>
      <LabelledChoice label="At the wall lies the">
        <Choice
          label="Edge at the wall"
          value={wallEdge}
          options={EDGES}
          onChange={(next) => setCorner(`${next} at the wall`, { wallEdge: next })}
        />
      </LabelledChoice>
    </>
  );
}
