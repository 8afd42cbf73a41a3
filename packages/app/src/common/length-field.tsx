/**
 * A length to type as people write it: `1 3/8`, `35 mm`, `.5`. What was typed stays in the field; below it stands what it
 * is in the job's unit, or why it cannot be read. Nothing changes until it is left or Enter is pressed.
 */
import { type LengthReading, parseLength, sameMm, sayTrouble } from "mouldwright/measure";
import { type KeyboardEvent, useEffect, useState } from "react";
import { FieldError, Input, Label, Text, TextField } from "react-aria-components";
import { useLengthWords } from "./length-words.ts";

export interface LengthFieldProps {
  readonly label: string;
  readonly valueMm: number;
  readonly onChange: (valueMm: number) => void;
  /** Least and greatest that may be, mm. */
  readonly leastMm?: number;
  readonly mostMm?: number;
  /** Whether less than nought may be typed: downwards, to the other side. */
  readonly isSigned?: boolean;
  readonly isDisabled?: boolean;
  readonly help?: string;
}

export function LengthField(props: LengthFieldProps) {
  const { label, valueMm, onChange, isDisabled, help } = props;
  const words = useLengthWords();
  const [typed, setTyped] = useState<string | null>(null);
  const [typedMm, setTypedMm] = useState(valueMm);
  const [trouble, setTrouble] = useState("");
  // A value from elsewhere (undo, a handle that was pulled) replaces what was typed.
  useEffect(() => {
    if (!sameMm(valueMm, typedMm)) {
      setTyped(null);
      setTrouble("");
    }
  }, [valueMm, typedMm]);
  const text = typed ?? words.typed(valueMm);
  const finish = (): void => {
    if (typed === null) return;
    const read = readTyped(typed, props, words.unit);
    if (!read.ok) {
      setTrouble(read.says);
      return;
    }
    setTrouble("");
    setTypedMm(read.valueMm);
    if (!sameMm(read.valueMm, valueMm)) onChange(read.valueMm);
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
      value={text}
      onChange={setTyped}
      onBlur={finish}
      isInvalid={trouble !== ""}
      isDisabled={isDisabled ?? false}
      inputMode="text"
      autoComplete="off"
    >
      <Label>{label}</Label>
      <Input className="field-input figures" onKeyDown={onKeyDown} />
      {trouble === "" && typed !== null && typed.trim() !== words.length(valueMm) ? (
        <Text slot="description" className="field-note figures">
          = {words.length(valueMm)}
        </Text>
      ) : help === undefined ? null : (
        <Text slot="description" className="field-note">
          {help}
        </Text>
      )}
      <FieldError className="field-trouble">{trouble}</FieldError>
    </TextField>
  );
}

type Typed = { readonly ok: true; readonly valueMm: number } | { readonly ok: false; readonly says: string };

function readTyped(typed: string, props: LengthFieldProps, unit: LengthReading["unit"]): Typed {
  const plain = typed.trim();
  const isMinus = props.isSigned === true && /^[-\u2212]/.test(plain);
  const read = parseLength(isMinus ? plain.slice(1) : plain, { unit });
  if (!read.ok) {
    const { sentence, hint } = sayTrouble(read.trouble, { unit });
    return { ok: false, says: `${sentence} ${hint}` };
  }
  const valueMm = isMinus ? -read.value.mm : read.value.mm;
  const words = (lengthMm: number): string => sayLengthIn(lengthMm, unit);
  if (props.leastMm !== undefined && valueMm < props.leastMm) {
    return { ok: false, says: `At least ${words(props.leastMm)} here: type more.` };
  }
  if (props.mostMm !== undefined && valueMm > props.mostMm) {
    return { ok: false, says: `At most ${words(props.mostMm)} here: type less.` };
  }
  return { ok: true, valueMm };
}

function sayLengthIn(lengthMm: number, unit: LengthReading["unit"]): string {
  return unit === "mm" ? `${lengthMm} mm` : `${Math.round((lengthMm / 25.4) * 1000) / 1000}\u2033`;
}
