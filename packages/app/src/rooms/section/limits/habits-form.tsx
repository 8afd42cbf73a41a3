/** The maker's own rule, hand and pace: what marks are told by, how near each line is good to, what the minutes are. */
import type { Job } from "mouldwright/job";
import { memo } from "react";
import { change } from "../../../bench/job-on-bench.ts";
import { Choice } from "../../../common/choice.tsx";
import { FigureField } from "../../../common/figure-field.tsx";
import { TradeText } from "../../../common/trade-text.tsx";
import {
  HAND_FIELDS,
  RULE_STEPS,
  WORKING_FIELDS,
  withHand,
  withInchStep,
  withWorkingSaid,
} from "./habits.ts";

export interface HabitsFormProps {
  readonly unit: "mm" | "in";
  readonly inchStep: Job["inchStep"];
  readonly hand: Job["hand"];
  readonly working: Job["working"];
}

/** Too fine for a rule: millimetres, or thousandths of an inch. */
const THOU_MM = 0.0254;
const MOST_HAND_MM = 5;

export const HabitsForm = memo(function HabitsForm({ unit, inchStep, hand, working }: HabitsFormProps) {
  const unitMm = unit === "mm" ? 1 : THOU_MM;
  const unitWords = unit === "mm" ? " mm" : " thou";
  return (
    <>
      <div className="field">
        <span className="field-label">Finest mark on the inch rule</span>
        <Choice
          label="Finest mark on the inch rule"
          value={`${inchStep ?? 32}`}
          options={RULE_STEPS}
          onChange={(chosen) => {
            const found = RULE_STEPS.find(({ value }) => value === chosen);
            if (found !== undefined) change(`rule to ${found.words}`, (job) => withInchStep(job, found.step));
          }}
        />
      </div>
      <details className="habits">
        <summary>How true your hand is</summary>
        <p className="field-note">
          What you keep to 95 times in 100. Lines are said to be good to so much, and the plan takes the surer
          way.
        </p>
        <div className="part-sizes">
          {HAND_FIELDS.map(({ key, label, commonMm }) => {
            const said = hand?.[key];
            return (
              <FigureField
                key={key}
                label={label}
                value={said === undefined ? null : said / unitMm}
                unit={unitWords}
                least={0}
                most={MOST_HAND_MM / unitMm}
                placeholder={`${Number((commonMm / unitMm).toFixed(unit === "mm" ? 2 : 0))}${unitWords}`}
                onChange={(value) =>
                  change("how true the hand is", (job) => withHand(job, key, value * unitMm))
                }
                onEmpty={() => change("a good hand", (job) => withHand(job, key, undefined))}
              />
            );
          })}
        </div>
      </details>
      <details className="habits">
        <summary>What your minutes go to</summary>
        <p className="field-note">
          <TradeText>The minutes of each setting and of the whole job are reckoned with these.</TradeText>
        </p>
        <div className="part-sizes">
          {WORKING_FIELDS.map(({ key, label, unit: figureUnit, least, most, common }) => (
            <FigureField
              key={key}
              label={label}
              value={working?.[key] ?? null}
              unit={` ${figureUnit}`}
              least={least}
              most={most}
              placeholder={`${common} ${figureUnit}`}
              onChange={(value) => change("what minutes go to", (job) => withWorkingSaid(job, key, value))}
              onEmpty={() => change("common minutes", (job) => withWorkingSaid(job, key, undefined))}
            />
          ))}
        </div>
      </details>
    </>
  );
});
