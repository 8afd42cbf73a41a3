/** How near the finished face must come to the drawing, to which side it may miss it, and where the gauge runs. */
import type { Job } from "mouldwright/job";
import { DEFAULT_TOLERANCE_MM, LEAST_TOLERANCE_MM } from "mouldwright/measure";
import { memo } from "react";
import { change } from "../../../bench/job-on-bench.ts";
import { Choice } from "../../../common/choice.tsx";
import { FigureField } from "../../../common/figure-field.tsx";
import { HelpWord } from "../../../common/help-word.tsx";

/** More than this is no moulding any more, only its idea, mm. */
const MOST_MM = 3;

const MISS_OPTIONS = [
  { value: "either", words: "either" },
  { value: "proud", words: "leave wood" },
  { value: "under", words: "take wood" },
] as const;
const EDGE_OPTIONS = [
  { value: "left", words: "left" },
  { value: "right", words: "right" },
] as const;

/** Too fine for a rule: told in millimetres, or in thousandths of an inch as a feeler gauge has them. */
const THOU_MM = 0.0254;

const KEEP_OPTIONS = [
  { value: "neither", words: "neither" },
  { value: "gauge", words: "gauge edge" },
  { value: "far", words: "far edge" },
  { value: "both", words: "both" },
] as const;
type Kept = (typeof KEEP_OPTIONS)[number]["value"];

function withKeptSquare(job: Job, edge: Kept): Job {
  const { keepSquare: _, ...way } = job.way ?? {};
  return { ...job, way: edge === "neither" ? way : { ...way, keepSquare: edge } };
}

export interface LimitsFormProps {
  readonly way: NonNullable<Job["way"]> | undefined;
  readonly unit: "mm" | "in";
}

export const LimitsForm = memo(function LimitsForm({ way: own, unit }: LimitsFormProps) {
  const way = own ?? {};
  const unitMm = unit === "mm" ? 1 : THOU_MM;
  const set = (what: string, next: Partial<NonNullable<Job["way"]>>): void =>
    change(what, (old) => ({ ...old, way: { ...old.way, ...next } }));
  return (
    <div className="part-sizes">
      <FigureField
        label="May be off by"
        value={(way.toleranceMm ?? DEFAULT_TOLERANCE_MM) / unitMm}
        least={unit === "mm" ? LEAST_TOLERANCE_MM : 1}
        most={Math.round(MOST_MM / unitMm)}
        unit={unit === "mm" ? " mm" : " thou"}
        onChange={(value) => set("how near to the drawing", { toleranceMm: value * unitMm })}
      />
      <div className="field">
        <span className="field-label">
          Where it must miss: stand <HelpWord word="proud" /> or under
        </span>
        <Choice
          label="Side to miss the drawing to"
          value={way.missSide ?? "either"}
          options={MISS_OPTIONS}
          onChange={(missSide) => set(`where it must miss: ${missSide}`, { missSide })}
        />
      </div>
      <div className="field">
        <span className="field-label">
          <HelpWord word="gauge edge">Gauge edge</HelpWord> on the drawing
        </span>
        <Choice
          label="Gauge edge"
          value={way.gaugeEdge ?? "left"}
          options={EDGE_OPTIONS}
          onChange={(gaugeEdge) => set(`gauge edge ${gaugeEdge}`, { gaugeEdge })}
        />
      </div>
      <div className="field">
        <span className="field-label">Edge to keep square as long as can be</span>
        <Choice
          label="Edge to keep square"
          value={way.keepSquare ?? "neither"}
          options={KEEP_OPTIONS}
          onChange={(edge) => change(`kept square: ${edge}`, (job) => withKeptSquare(job, edge))}
        />
      </div>
    </div>
  );
});
