/**
 * A length to type as people write it: `1 3/8`, `35 mm`, `.5`. What was typed stays in the field; below it stands what it
 * is in the job's unit, or why it cannot be read. Shown again it stands as it was typed, to a thousandth of a millimetre.
 */
import { formatFieldLength, sameMm } from "mouldwright/measure";
import { FieldError, Input, Label, Text, TextField } from "react-aria-components";
import { type LengthWords, useLengthWords } from "./length-words.ts";
import { type LengthBounds, readLengthTyped } from "./read-length.ts";
import { useTyping } from "./use-typing.ts";

export interface LengthFieldProps extends LengthBounds {
  readonly label: string;
  readonly valueMm: number;
  readonly onChange: (valueMm: number) => void;
  readonly isDisabled?: boolean;
  readonly help?: string;
}

export function LengthField(props: LengthFieldProps) {
  const { label, valueMm, onChange, isDisabled, help } = props;
  const words = useLengthWords();
  const { text, isTyped, trouble, type, take, onKeyDown } = useTyping({
    value: valueMm,
    write: (lengthMm) => formatFieldLength(lengthMm, words.unit),
    read: (typed) => readLengthTyped(typed, words.unit, props),
    isSame: sameMm,
    onChange,
    staysTyped: true,
  });
  const note = trouble === "" ? noteOf(text, isTyped, valueMm, words) : null;
  return (
    <TextField
      className="field"
      value={text}
      onChange={type}
      onBlur={take}
      isInvalid={trouble !== ""}
      isDisabled={isDisabled ?? false}
      inputMode="text"
      autoComplete="off"
    >
      <Label>{label}</Label>
      <Input className="field-input figures" onKeyDown={onKeyDown} />
      {note !== null ? (
        <Text slot="description" className="field-note figures">
          {note}
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

/** What was typed otherwise than the job's unit has it; and where decimals of an inch stand, the mark on the rule. */
function noteOf(text: string, isTyped: boolean, valueMm: number, words: LengthWords): string | null {
  const { unit, length } = words;
  const exact = formatFieldLength(valueMm, unit);
  const bare = (written: string): string => written.replace(/[\s\u00a0]*(?:mm|\u2033)$/, "").trim();
  if (isTyped && bare(text) !== bare(exact)) return `= ${exact}`;
  return unit === "in" && exact.includes(".") ? `${length(valueMm)} on the rule` : null;
}
