/** What the stick is reckoned from: the pieces wanted, how it is worked, its timber, and what is allowed for. */
import type { WayOfWorking } from "mouldwright/making";
import { equilibriumMoisture, TIMBERS } from "mouldwright/timber";
import { useState } from "react";
import { change, useShownJob } from "../../bench/job-on-bench.ts";
import { Choice } from "../../common/choice.tsx";
import { FigureField } from "../../common/figure-field.tsx";
import { LengthField } from "../../common/length-field.tsx";
import { choicesOf, type Fit, withFit, withTimber, withWorking } from "../../fitting/fit-choices.ts";
import { LabelledChoice, SelectField } from "./select-field.tsx";
import { StockFields } from "./stock-fields.tsx";

const PIECES = [
  { value: "lengths", words: "Lengths" },
  { value: "frame", words: "Frame" },
  { value: "cornice", words: "Cornice" },
] as const;

const WAYS: readonly { readonly value: WayOfWorking; readonly words: string }[] = [
  { value: "flat", words: "Flat" },
  { value: "bevelled first", words: "Bevelled" },
  { value: "canted", words: "Canted" },
];

const SAWN = [
  { value: "flat", words: "Flat sawn" },
  { value: "quarter", words: "Quarter sawn" },
] as const;

const TIMBER_NAMES = [
  { value: "", words: "Not chosen" },
  ...TIMBERS.map(({ name }) => ({ value: name, words: name })),
];

function setStick(what: string, part: Partial<NonNullable<Fit["stick"]>>): void {
  change(what, (job) => withFit(job, "stick", part));
}

export function StickInputs() {
  const choices = choicesOf(useShownJob());
  const { pieces, way, cantDeg } = choices;
  return (
    <>
      <LabelledChoice label="What comes out of it">
        <Choice
          label="What comes out of it"
          value={pieces}
          options={PIECES}
          onChange={(next) => setStick("what the sticks are for", { pieces: next })}
        />
      </LabelledChoice>
      {pieces === "lengths" ? (
        <div className="fit-fields">
          <LengthField
            label="Finished length"
            valueMm={choices.lengthMm}
            leastMm={50}
            mostMm={10_000}
            onChange={(lengthMm) => change("length of the sticks", (job) => withWorking(job, { lengthMm }))}
          />
          <FigureField
            label="Sticks"
            unit=""
            value={choices.sticks}
            least={1}
            most={1000}
            isWhole
            onChange={(sticks) => change(`${sticks} sticks`, (job) => withWorking(job, { sticks }))}
          />
        </div>
      ) : (
        <StockFields />
      )}
      <LabelledChoice label="Worked">
        <Choice
          label="How it is worked"
          value={way}
          options={WAYS}
          onChange={(next) => setStick(`worked ${next}`, { way: next })}
        />
      </LabelledChoice>
      {way === "canted" ? (
        <FigureField
          label="Cant"
          unit="°"
          value={cantDeg ?? null}
          least={-60}
          most={60}
          placeholder="the best"
          onChange={(next) => setStick(`cant of ${next}°`, { cantDeg: next })}
          onEmpty={() => setStick("the best cant", { cantDeg: undefined })}
        />
      ) : null}
      <TimberFields />
      <AllowanceFields />
      <AtHandFields />
    </>
  );
}

export function TimberFields() {
  const { timber, sawn, fittedPercent, driestPercent, wettestPercent } = choicesOf(useShownJob());
  const set = (what: string, part: Partial<NonNullable<Fit["timber"]>>): void =>
    change(what, (job) => withFit(job, "timber", { name: timber, ...part }));
  return (
    <>
      <SelectField
        label="Timber"
        value={timber}
        options={TIMBER_NAMES}
        onChange={(name) => change(name === "" ? "no timber" : name, (job) => withTimber(job, name))}
      />
      {timber === "" ? null : (
        <>
          <LabelledChoice label="Sawn">
            <Choice
              label="How it is sawn"
              value={sawn}
              options={SAWN}
              onChange={(next) => set(`${next} sawn`, { sawn: next })}
            />
          </LabelledChoice>
          <div className="fit-fields">
            <PercentField
              label="Moisture when fitted"
              value={fittedPercent}
              onChange={(next) => set("moisture when fitted", { fittedPercent: next })}
            />
            <PercentField
              label="At its driest"
              value={driestPercent}
              onChange={(next) => set("driest moisture", { driestPercent: next })}
            />
            <PercentField
              label="At its wettest"
              value={wettestPercent}
              onChange={(next) => set("wettest moisture", { wettestPercent: next })}
            />
          </div>
          <MoistureOfAir />
        </>
      )}
    </>
  );
}

function PercentField(props: {
  readonly label: string;
  readonly value: number;
  readonly onChange: (value: number) => void;
}) {
  return <FigureField {...props} unit="%" least={0} most={30} />;
}

/** A small sum at hand for the moistures above; nothing of it is kept. */
function MoistureOfAir() {
  const [celsius, setCelsius] = useState(20);
  const [humidity, setHumidity] = useState(50);
  const moisture = equilibriumMoisture({ celsius }, humidity);
  return (
    <details className="fit-more">
      <summary>What moisture does wood come to?</summary>
      <div className="fit-fields">
        <FigureField label="Air, °C" unit="" value={celsius} least={-30} most={120} onChange={setCelsius} />
        <FigureField label="Humidity" unit="%" value={humidity} least={0} most={100} onChange={setHumidity} />
      </div>
      <p className="figures" role="status">
        {moisture.ok
          ? `Wood comes to ${Number(moisture.value.moisturePercent.toFixed(1))} % in such air: a stick in weeks, a thick one in months. A meter says where it stands now.`
          : ""}
      </p>
    </details>
  );
}

function AllowanceFields() {
  const { allowances } = choicesOf(useShownJob());
  const field = (label: string, key: keyof typeof allowances) => (
    <LengthField
      label={label}
      valueMm={allowances[key]}
      leastMm={0}
      mostMm={1000}
      onChange={(valueMm) =>
        change(`${label.toLowerCase()} allowed`, (job) =>
          withFit(job, "stick", {
            allowances: { ...job.fit?.stick?.allowances, [key]: valueMm },
          }),
        )
      }
    />
  );
  return (
    <details className="fit-more">
      <summary>What is allowed for</summary>
      <div className="fit-fields">
        {field("Width, to plane", "sawnWidthMm")}
        {field("Thickness, to plane", "sawnThicknessMm")}
        {field("Each end, for planing", "planingMm")}
        {field("Each end, for checks", "endChecksMm")}
      </div>
    </details>
  );
}

function AtHandFields() {
  const job = useShownJob();
  const { atHand } = choicesOf(job);
  const set = (what: string, next: { readonly widthMm: number; readonly thicknessMm: number } | undefined) =>
    setStick(what, { atHand: next === undefined ? undefined : { ...next } });
  return (
    <details className="fit-more" open={atHand !== null}>
      <summary>Built up of smaller timber</summary>
      <LabelledChoice label="The section is made of" help="For timber too narrow or thin to hold all of it.">
        <Choice
          label="Made of"
          value={atHand === null ? "one" : "several"}
          options={[
            { value: "one", words: "One stick" },
            { value: "several", words: "Timber at hand" },
          ]}
          onChange={(next) =>
            set(
              next === "one" ? "one stick" : "built up",
              next === "one"
                ? undefined
                : { widthMm: job.stick.widthMm, thicknessMm: Math.max(6, job.stick.thicknessMm - 4) },
            )
          }
        />
      </LabelledChoice>
      {atHand === null ? null : (
        <div className="fit-fields">
          <LengthField
            label="Planed width"
            valueMm={atHand.widthMm}
            leastMm={6}
            onChange={(widthMm) => set("timber at hand", { ...atHand, widthMm })}
          />
          <LengthField
            label="Planed thickness"
            valueMm={atHand.thicknessMm}
            leastMm={6}
            onChange={(thicknessMm) => set("timber at hand", { ...atHand, thicknessMm })}
          />
        </div>
      )}
    </details>
  );
}
