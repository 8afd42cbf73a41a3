/**
 * A figure that is no length: degrees, percent, a count. Like a length field it keeps what was typed until it is left or
 * Enter is pressed, and says why it cannot be read.
 */
import { type KeyboardEvent, useEffect, useState } from "react";
import { FieldError, Input, Label, Text, TextField } from "react-aria-components";
import { figureTyped, writeFigure } from "./figure.ts";

export interface FigureFieldProps {
  readonly label: string;
  /** null: nothing is said, and the field is empty. */
  readonly value: number | null;
  /** What stands behind the figure: `°`, `%`; empty for a count. */
  readonly unit: string;
  readonly onChange: (value: number) => void;
  /** Emptied: what was said is taken back. A field without it cannot be empty. */
  readonly onEmpty?: () => void;
  readonly least?: number;
  readonly most?: number;
  readonly isWhole?: boolean;
  readonly help?: string;
  /** What holds while the field is empty. */
  readonly placeholder?: string;
}

export function FigureField(props: FigureFieldProps) {
  const { label, value, unit, onChange, onEmpty, help, placeholder } = props;
  const [typed, setTyped] = useState<string | null>(null);
  const [trouble, setTrouble] = useState("");
  // biome-ignore lint/correctness/useExhaustiveDependencies: a value from elsewhere replaces what was typed.
  useEffect(() => {
    setTyped(null);
    setTrouble("");
  }, [value]);
  const shown = value === null ? "" : `${writeFigure(value)}${unit === "%" ? "\u00a0%" : unit}`;
  const finish = (): void => {
    if (typed === null) return;
    if (typed.trim() === "" && onEmpty !== undefined) {
      setTyped(null);
      setTrouble("");
      if (value !== null) onEmpty();
      return;
    }
    const read = figureTyped(withoutUnit(typed, props.unit));
    const says = troubleOf(read, props);
    setTrouble(says);
    if (says !== "" || read === null) return;
    setTyped(null);
    if (read !== value) onChange(read);
  };
  const onKeyDown = (event: KeyboardEvent): void => {
    if (event.key === "Enter") finish();
    if (event.key === "Escape" && typed !== null) {
      // It takes the typing back; only the next one leaves the dialog around it.
      event.stopPropagation();
      setTyped(null);
      setTrouble("");
    }
  };
  return (
    <TextField
      className="field"
      value={typed ?? shown}
      onChange={setTyped}
      onBlur={finish}
      isInvalid={trouble !== ""}
      inputMode="decimal"
      autoComplete="off"
    >
      <Label>{label}</Label>
      <Input
        className="field-input figures"
        onKeyDown={onKeyDown}
        {...(placeholder === undefined ? {} : { placeholder })}
      />
      {help === undefined ? null : (
        <Text slot="description" className="field-note">
          {help}
        </Text>
      )}
      <FieldError className="field-trouble">{trouble}</FieldError>
    </TextField>
  );
}

/** What was typed without the field's own unit behind it, where it stands there. */
function withoutUnit(typed: string, unit: string): string {
  const plain = typed.trim();
  const sign = unit.trim();
  return sign !== "" && plain.endsWith(sign) ? plain.slice(0, -sign.length) : plain;
}

function troubleOf(read: number | null, { least, most, isWhole, unit }: FigureFieldProps): string {
  const sample = unit === "°" ? "38 or 22½" : unit === "%" ? "12" : "4";
  if (read === null) return `A figure here, such as ${sample}.`;
  if (isWhole === true && !Number.isInteger(read)) return "A whole number here.";
  if (least !== undefined && read < least) return `At least ${writeFigure(least)}${unit} here: type more.`;
  if (most !== undefined && read > most) return `At most ${writeFigure(most)}${unit} here: type less.`;
  return "";
}
