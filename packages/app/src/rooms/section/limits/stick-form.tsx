/** The stick that the section is cut from, where the section starts, and what is taken off its back. */
import type { Job } from "mouldwright/job";
import type { BackSpec } from "mouldwright/section";
import { memo } from "react";
import { change } from "../../../bench/job-on-bench.ts";
import { Choice } from "../../../common/choice.tsx";
import { FigureField } from "../../../common/figure-field.tsx";
import { LengthField } from "../../../common/length-field.tsx";
import { withBack } from "../chain/chain-edits.ts";

const LEAST_MM = 2;
const MOST_MM = 300;

export interface StickFormProps {
  readonly stick: Job["stick"];
  readonly startHeightMm: number | undefined;
  readonly back: readonly BackSpec[] | undefined;
  readonly isPath: boolean;
}

export const StickForm = memo(function StickForm({ stick, startHeightMm, back, isPath }: StickFormProps) {
  return (
    <div className="part-sizes">
      <LengthField
        label="Stick’s width"
        valueMm={stick.widthMm}
        leastMm={LEAST_MM}
        mostMm={MOST_MM}
        onChange={(widthMm) =>
          change("stick’s width", (job) => ({ ...job, stick: { ...job.stick, widthMm } }))
        }
      />
      <LengthField
        label="Stick’s thickness"
        valueMm={stick.thicknessMm}
        leastMm={LEAST_MM}
        mostMm={MOST_MM}
        onChange={(thicknessMm) =>
          change("stick’s thickness", (job) => ({ ...job, stick: { ...job.stick, thicknessMm } }))
        }
      />
      {isPath ? null : (
        <LengthField
          label="Starts at height"
          valueMm={startHeightMm ?? stick.thicknessMm}
          leastMm={0.1}
          mostMm={stick.thicknessMm}
          onChange={(heightMm) =>
            change("start on the gauge edge", (job) => {
              const { startHeightMm: _, ...rest } = job.section;
              const isAtFace = heightMm === job.stick.thicknessMm;
              return { ...job, section: isAtFace ? rest : { ...rest, startHeightMm: heightMm } };
            })
          }
        />
      )}
      {isPath
        ? null
        : (["gauge", "far"] as const).map((edge) => (
            <BackCorner key={edge} edge={edge} back={back?.find((one) => one.edge === edge) ?? null} />
          ))}
    </div>
  );
});

const CORNER_OPTIONS = [
  { value: "none", words: "square" },
  { value: "rebate", words: "rebate" },
  { value: "bevel", words: "bevel" },
] as const;

interface BackCornerProps {
  readonly edge: BackSpec["edge"];
  readonly back: BackSpec | null;
}

function BackCorner({ edge, back }: BackCornerProps) {
  const words = edge === "gauge" ? "Back at the gauge edge" : "Back at the far edge";
  const set = (next: BackSpec | null): void =>
    change(`${words.toLowerCase()}: ${next?.kind ?? "square"}`, (job) => withBack(job, edge, next));
  const choose = (kind: "none" | BackSpec["kind"]): void => {
    if (kind === "none") set(null);
    if (kind === "rebate") set({ kind, edge, widthMm: 6, depthMm: 6 });
    if (kind === "bevel") set({ kind, edge, riseMm: 6, fromBackDeg: 45 });
  };
  return (
    <fieldset className="back-corner">
      <legend className="field-label">{words}</legend>
      <Choice label={words} value={back?.kind ?? "none"} options={CORNER_OPTIONS} onChange={choose} />
      {back === null ? null : back.kind === "rebate" ? (
        <div className="part-sizes">
          <LengthField
            label="Across"
            valueMm={back.widthMm}
            leastMm={0.1}
            mostMm={MOST_MM}
            onChange={(widthMm) => set({ ...back, widthMm })}
          />
          <LengthField
            label="Up"
            valueMm={back.depthMm}
            leastMm={0.1}
            mostMm={MOST_MM}
            onChange={(depthMm) => set({ ...back, depthMm })}
          />
        </div>
      ) : (
        <div className="part-sizes">
          <LengthField
            label="Up the edge"
            valueMm={back.riseMm}
            leastMm={0.1}
            mostMm={MOST_MM}
            onChange={(riseMm) => set({ ...back, riseMm })}
          />
          <FigureField
            label="From the back"
            value={back.fromBackDeg}
            least={1}
            most={89}
            unit="°"
            onChange={(fromBackDeg) => set({ ...back, fromBackDeg })}
          />
        </div>
      )}
    </fieldset>
  );
}
