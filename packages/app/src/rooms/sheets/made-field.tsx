/** What the printer made of a bar of 100 mm, in one direction. */
import { FieldError, Input, Label, TextField } from "react-aria-components";
import { useTyping } from "../../common/use-typing.ts";
import { readMade } from "./read-made.ts";

export interface MadeFieldProps {
  readonly label: string;
  readonly valueMm: number;
  readonly onChange: (valueMm: number) => void;
}

export function MadeField({ label, valueMm, onChange }: MadeFieldProps) {
  const { text, trouble, type, take, onKeyDown } = useTyping({
    value: valueMm,
    write: (madeMm) => `${madeMm} mm`,
    read: readMade,
    isSame: (one, other) => one === other,
    onChange,
  });
  return (
    <TextField
      className="field"
      value={text}
      onChange={type}
      onBlur={take}
      isInvalid={trouble !== ""}
      inputMode="decimal"
      autoComplete="off"
    >
      <Label>{label}</Label>
      <Input className="field-input figures" onKeyDown={onKeyDown} />
      <FieldError className="field-trouble">{trouble}</FieldError>
    </TextField>
  );
}
