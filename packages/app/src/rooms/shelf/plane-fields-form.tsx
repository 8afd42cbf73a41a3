/** The sizes of a plane of any kind as fields, each with its trouble beside it. */
import { sayTrouble, type Trouble } from "mouldwright/measure";
import type { ReactNode } from "react";
import { Choice } from "../../common/choice.tsx";
import { FigureField } from "../../common/figure-field.tsx";
import { LengthField } from "../../common/length-field.tsx";
import { useLengthWords } from "../../common/length-words.ts";
import { IronsField } from "./irons-field.tsx";
import { PLANE_FIELDS, type PlaneField } from "./plane-fields.ts";
import type { Entry, FileKind } from "./shelf-edits.ts";

export interface PlaneFieldsFormProps {
  readonly kind: FileKind;
  /** What is said of the plane, lengths in mm. */
  readonly entry: Entry;
  /** The same with everything filled in that the maker has not said. */
  readonly filled: Entry;
  readonly troubles: readonly Trouble[];
  readonly onChange: (key: string, value: unknown) => void;
  /** Both hands may be chosen for new planes. */
  readonly mayBeBothHands?: boolean;
}

const HANDS = [
  { value: "left", words: "Left" },
  { value: "right", words: "Right" },
] as const;
const ANY_HANDS = [...HANDS, { value: "both", words: "Both" }] as const;
const WALLS = [
  { value: "none", words: "No" },
  { value: "left", words: "Left" },
  { value: "right", words: "Right" },
  { value: "both", words: "Both" },
] as const;

export function PlaneFieldsForm(props: PlaneFieldsFormProps) {
  return (
    <div className="plane-fields">
      {PLANE_FIELDS[props.kind].map((field) => (
        <div key={field.key} className={isWide(field, props.troubles) ? "plane-field-wide" : undefined}>
          <OneField field={field} {...props} />
          <FieldTroubles fieldKey={field.key} troubles={props.troubles} />
        </div>
      ))}
      <OtherTroubles kind={props.kind} troubles={props.troubles} />
    </div>
  );
}

/** What needs a line to itself: a list, and a field with words about what is wrong. */
function isWide({ key, holds }: PlaneField, troubles: readonly Trouble[]): boolean {
  return holds === "irons" || troubles.some(({ where }) => where === key);
}

function OneField({
  field,
  entry,
  filled,
  onChange,
  mayBeBothHands,
}: PlaneFieldsFormProps & { readonly field: PlaneField }) {
  const { key, label, help } = field;
  const said = entry[key] ?? filled[key];
  const more = help === undefined ? {} : { help };
  switch (field.holds) {
    case "length":
      return (
        <LengthField
          label={label}
          valueMm={typeof said === "number" ? said : 0}
          onChange={(valueMm) => onChange(key, valueMm)}
          {...more}
        />
      );
    case "angle":
      return (
        <FigureField
          label={label}
          unit="°"
          value={typeof said === "number" ? said : null}
          onChange={(angleDeg) => onChange(key, angleDeg)}
          onEmpty={() => onChange(key, undefined)}
          {...more}
        />
      );
    case "hand": {
      const hands = mayBeBothHands === true ? ANY_HANDS : HANDS;
      const value = hands.find((hand) => hand.value === said)?.value ?? "right";
      return (
        <Labelled label={label} {...more}>
          <Choice label={label} value={value} options={hands} onChange={(hand) => onChange(key, hand)} />
        </Labelled>
      );
    }
    case "walls": {
      const value = WALLS.find((wall) => wall.value === said)?.value ?? "none";
      return (
        <Labelled label={label} {...more}>
          <Choice label={label} value={value} options={WALLS} onChange={(wall) => onChange(key, wall)} />
        </Labelled>
      );
    }
    case "irons":
      return (
        <IronsField
          label={label}
          widthsMm={Array.isArray(said) ? said.filter((one): one is number => typeof one === "number") : []}
          onChange={(widthsMm) => onChange(key, widthsMm)}
        />
      );
  }
}

function Labelled({
  label,
  help,
  children,
}: {
  readonly label: string;
  readonly help?: string;
  readonly children: ReactNode;
}) {
  return (
    <div className="field">
      <span className="field-label" aria-hidden="true">
        {label}
      </span>
      {children}
      {help === undefined ? null : <span className="field-note">{help}</span>}
    </div>
  );
}

function FieldTroubles({
  fieldKey,
  troubles,
}: {
  readonly fieldKey: string;
  readonly troubles: readonly Trouble[];
}) {
  return <TroubleLines troubles={troubles.filter(({ where }) => where === fieldKey)} />;
}

/** What is about no field of this kind stands below them all. */
function OtherTroubles({
  kind,
  troubles,
}: {
  readonly kind: FileKind;
  readonly troubles: readonly Trouble[];
}) {
  const keys = PLANE_FIELDS[kind].map(({ key }) => key);
  return <TroubleLines troubles={troubles.filter(({ where }) => !keys.includes(where))} />;
}

export function TroubleLines({ troubles }: { readonly troubles: readonly Trouble[] }) {
  const { unit } = useLengthWords();
  if (troubles.length === 0) return null;
  return (
    <div role="alert">
      {troubles.map((trouble) => {
        const { sentence, hint } = sayTrouble(trouble, { unit });
        return (
          <p key={`${trouble.code}${sentence}`} className="field-trouble">
            {sentence} {hint}
          </p>
        );
      })}
    </div>
  );
}
