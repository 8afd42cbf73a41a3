import { sectionOfJob } from "mouldwright/job";
import { useMemo, useState } from "react";
import { Button, Input, Label, NumberField, Radio, RadioGroup } from "react-aria-components";
import { LengthField } from "../../common/length-field.tsx";
import { stickWords, useLengthWords } from "../../common/length-words.ts";
import { SectionThumb } from "../../common/section-thumb.tsx";
import { TradeText } from "../../common/trade-text.tsx";
import { TroubleWords } from "../../common/trouble-words.tsx";
import { keepNewJob } from "../../keeping/job-actions.ts";
import { fromBench } from "./bench-shelf.ts";
import { FORMS, type Form, type FormSize, firstSizes, jobOfForm, type Sizes } from "./forms.ts";

const FIRST_FORM = FORMS[0] as Form;

export function FormChooser() {
  const [form, setForm] = useState(FIRST_FORM);
  const [sizes, setSizes] = useState<Sizes>(() => firstSizes(FIRST_FORM));
  const [given] = useState(fromBench);
  const words = useLengthWords();
  const job = useMemo(() => jobOfForm(form, sizes, given), [form, sizes, given]);
  const section = useMemo(() => sectionOfJob(job), [job]);
  const choose = (id: string): void => {
    const next = FORMS.find((known) => known.id === id);
    if (next === undefined) return;
    setForm(next);
    setSizes(firstSizes(next));
  };
  const keep = (): void => {
    void keepNewJob(job).then(() => {
      location.hash = "section";
    });
  };
  return (
    <div className="form-chooser">
      <FormTiles chosen={form.id} onChoose={choose} />
      <section className="panel form-chosen" aria-label={form.name}>
        <div className="form-head">
          <h2>{form.name}</h2>
          <Button className="button button-main" isDisabled={!section.ok} onPress={keep}>
            Keep and open
          </Button>
        </div>
        <div className="form-picture">
          <SectionThumb job={job} label={`${form.name}, seen on its end`} />
        </div>
        <div className="form-sizes">
          <p>
            <TradeText>{form.says}</TradeText>{" "}
            {section.ok ? <span className="figures">Stick {stickWords(words, job.stick)}.</span> : null}
          </p>
          <div className="form-fields">
            {form.sizes.map((size) => (
              <SizeField
                key={`${form.id} ${size.key}`}
                size={size}
                value={sizes[size.key] ?? size.value}
                onChange={(value) => setSizes({ ...sizes, [size.key]: value })}
              />
            ))}
          </div>
          {section.ok ? null : <TroubleWords troubles={[section.trouble]} />}
        </div>
      </section>
    </div>
  );
}

function FormTiles({
  chosen,
  onChoose,
}: {
  readonly chosen: string;
  readonly onChoose: (id: string) => void;
}) {
  const pictured = useMemo(
    () => FORMS.map((form) => ({ form, job: jobOfForm(form, firstSizes(form), {}) })),
    [],
  );
  return (
    <RadioGroup
      className="form-tiles"
      aria-label="Form"
      value={chosen}
      onChange={onChoose}
      orientation="horizontal"
    >
      {pictured.map(({ form, job }) => (
        <Radio key={form.id} value={form.id} className="form-tile">
          <span className="form-tile-picture">
            <SectionThumb job={job} />
          </span>
          <span>{form.name}</span>
        </Radio>
      ))}
    </RadioGroup>
  );
}

interface SizeFieldProps {
  readonly size: FormSize;
  readonly value: number;
  readonly onChange: (value: number) => void;
}

function SizeField({ size, value, onChange }: SizeFieldProps) {
  if (size.kind === "length") {
    return (
      <LengthField
        label={size.label}
        valueMm={value}
        onChange={onChange}
        leastMm={size.least}
        mostMm={size.most}
      />
    );
  }
  return (
    <NumberField
      className="field"
      value={value}
      minValue={size.least}
      maxValue={size.most}
      step={1}
      onChange={(next) => {
        if (Number.isFinite(next)) onChange(next);
      }}
    >
      <Label>{size.label}</Label>
      <Input className="field-input figures" />
    </NumberField>
  );
}
