/** The irons of a plough: several widths in one line, parted by semicolons or commas followed by a blank. */
import { formatFieldLength } from "mouldwright/measure";
import { FieldError, Input, Label, Text, TextField } from "react-aria-components";
import { useLengthWords } from "../../common/length-words.ts";
import { useTyping } from "../../common/use-typing.ts";
import { areSameIrons, readIrons } from "./read-irons.ts";

export interface IronsFieldProps {
  readonly label: string;
  readonly widthsMm: readonly number[];
  readonly onChange: (widthsMm: readonly number[]) => void;
}

export function IronsField({ label, widthsMm, onChange }: IronsFieldProps) {
  const { unit } = useLengthWords();
  const { text, trouble, type, take, onKeyDown } = useTyping({
    value: widthsMm,
    write: (irons) => irons.map((widthMm) => formatFieldLength(widthMm, unit)).join("; "),
    read: (typed) => readIrons(typed, unit),
    isSame: areSameIrons,
    onChange,
  });
  return (
    <TextField
      className="field"
      value={text}
      onChange={type}
      onBlur={take}
      isInvalid={trouble !== ""}
      autoComplete="off"
    >
      <Label>{label}</Label>
      <Input className="field-input figures" onKeyDown={onKeyDown} />
      <Text slot="description" className="field-note">
        Widths with semicolons between.
      </Text>
      <FieldError className="field-trouble">{trouble}</FieldError>
    </TextField>
  );
}
