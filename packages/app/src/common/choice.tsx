/** One of a few: buttons side by side, of which one is in. */
import { type Key, ToggleButton, ToggleButtonGroup } from "react-aria-components";

export interface ChoiceProps<Value extends string> {
  readonly label: string;
  readonly value: Value;
  readonly options: readonly { readonly value: Value; readonly words: string }[];
  readonly onChange: (value: Value) => void;
}

export function Choice<Value extends string>({ label, value, options, onChange }: ChoiceProps<Value>) {
  const choose = (keys: Set<Key>): void => {
    const chosen = options.find((option) => keys.has(option.value));
    if (chosen !== undefined && chosen.value !== value) onChange(chosen.value);
  };
  return (
    <ToggleButtonGroup
      className="choice"
      aria-label={label}
      selectionMode="single"
      disallowEmptySelection
      selectedKeys={[value]}
      onSelectionChange={choose}
    >
      {options.map((option) => (
        <ToggleButton key={option.value} id={option.value} className="choice-button">
          {option.words}
        </ToggleButton>
      ))}
    </ToggleButtonGroup>
  );
}
