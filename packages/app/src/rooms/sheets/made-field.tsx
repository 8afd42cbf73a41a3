/** What the printer made of a bar of 100 mm, in one direction. What was typed stays until it is left or Enter is pressed. */
import { useEffect, useState } from "react";
import { FieldError, Input, Label, TextField } from "react-aria-components";
import { readMade } from "./read-made.ts";

export interface MadeFieldProps {
  readonly label: string;
  readonly valueMm: number;
  readonly onChange: (valueMm: number) => void;
}

export function MadeField({ label, valueMm, onChange }: MadeFieldProps) {
  const [typed, setTyped] = useState<string | null>(null);
  const [trouble, setTrouble] = useState("");
  // biome-ignore lint/correctness/useExhaustiveDependencies: a value from elsewhere replaces what was typed.
  useEffect(() => {
    setTyped(null);
    setTrouble("");
  }, [valueMm]);
  const finish = (): void => {
    if (typed === null) return;
    const read = readMade(typed);
    if (!read.ok) {
      setTrouble(read.says);
      return;
    }
    setTrouble("");
    setTyped(null);
    if (read.valueMm !== valueMm) onChange(read.valueMm);
  };
  return (
    <TextField
      className="field"
      value={typed ?? `${valueMm} mm`}
      onChange={setTyped}
      onBlur={finish}
      onKeyDown={(event) => {
        if (event.key === "Enter") finish();
      }}
      isInvalid={trouble !== ""}
      inputMode="decimal"
      autoComplete="off"
    >
      <Label>{label}</Label>
      <Input className="field-input figures" />
      <FieldError className="field-trouble">{trouble}</FieldError>
    </TextField>
  );
}
