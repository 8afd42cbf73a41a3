/** A plain figure to type: an angle, a count, a share. What cannot be read is said, and nothing changes. */
import { type KeyboardEvent, useEffect, useState } from "react";
import { FieldError, Input, Label, TextField } from "react-aria-components";

export interface FigureFieldProps {
  readonly label: string;
  readonly value: number;
  readonly least: number;
  readonly most: number;
  /** Behind the figure: "°", " %". */
  readonly sign?: string;
  readonly isWhole?: boolean;
  readonly onChange: (value: number) => void;
}

export function FigureField(props: FigureFieldProps) {
  const { label, value, least, most, sign = "", isWhole, onChange } = props;
  const [typed, setTyped] = useState<string | null>(null);
  const [trouble, setTrouble] = useState("");
  // A value from elsewhere (undo, a handle that was pulled) replaces what was typed.
  // biome-ignore lint/correctness/useExhaustiveDependencies: asked for whenever the value is another
  useEffect(() => {
    setTyped(null);
    setTrouble("");
  }, [value]);
  const finish = (): void => {
    if (typed === null) return;
    const read = Number(
      typed.replace(sign.trim(), "").replace("°", "").replace(",", ".").replace("\u2212", "-"),
    );
    if (typed.trim() === "" || !Number.isFinite(read)) {
      setTrouble("That is no figure: type one, such as 60.");
      return;
    }
    if (read < least || read > most || (isWhole === true && !Number.isInteger(read))) {
      setTrouble(`${isWhole === true ? "A whole number from" : "From"} ${least} to ${most}${sign} here.`);
      return;
    }
    setTyped(null);
    setTrouble("");
    if (read !== value) onChange(read);
  };
  const onKeyDown = (event: KeyboardEvent): void => {
    if (event.key === "Enter") finish();
    if (event.key === "Escape" && typed !== null) {
      event.stopPropagation();
      setTyped(null);
      setTrouble("");
    }
  };
  return (
    <TextField
      className="field"
      value={typed ?? `${Math.round(value * 100) / 100}${sign}`}
      onChange={setTyped}
      onBlur={finish}
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
