/** One of many, as the browser lets it be chosen. */
import { useId } from "react";

export interface SelectFieldProps<Value extends string> {
  readonly label: string;
  readonly value: Value;
  readonly options: readonly { readonly value: Value; readonly words: string }[];
  readonly onChange: (value: Value) => void;
  readonly help?: string;
}

export function SelectField<Value extends string>(props: SelectFieldProps<Value>) {
  const { label, value, options, onChange, help } = props;
  const fieldId = useId();
  return (
    <div className="field">
      <label htmlFor={fieldId}>{label}</label>
      <select
        id={fieldId}
        value={value}
        onChange={({ target }) => {
          const chosen = options.find((option) => option.value === target.value);
          if (chosen !== undefined) onChange(chosen.value);
        }}
      >
        {options.map((option) => (
          <option key={option.value} value={option.value}>
            {option.words}
          </option>
        ))}
      </select>
      {help === undefined ? null : <span className="field-note">{help}</span>}
    </div>
  );
}

/** A choice of a few with its label written above it. */
export function LabelledChoice({
  label,
  help,
  children,
}: {
  readonly label: string;
  readonly help?: string;
  readonly children: React.ReactNode;
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
