/** The irons of a plough: several widths in one line, parted by semicolons or commas followed by a blank. */
import { parseLength, sayTrouble } from "mouldwright/measure";
import { type KeyboardEvent, useEffect, useState } from "react";
import { FieldError, Input, Label, Text, TextField } from "react-aria-components";
import { useLengthWords } from "../../common/length-words.ts";

export interface IronsFieldProps {
  readonly label: string;
  readonly widthsMm: readonly number[];
  readonly onChange: (widthsMm: readonly number[]) => void;
}

export function IronsField({ label, widthsMm, onChange }: IronsFieldProps) {
  const words = useLengthWords();
  const [typed, setTyped] = useState<string | null>(null);
  const [trouble, setTrouble] = useState("");
  const shown = widthsMm.map((widthMm) => words.typed(widthMm)).join("; ");
  // biome-ignore lint/correctness/useExhaustiveDependencies: widths from elsewhere replace what was typed.
  useEffect(() => {
    setTyped(null);
    setTrouble("");
  }, [shown]);
  const finish = (): void => {
    if (typed === null) return;
    const read: number[] = [];
    for (const part of typed.split(/;|,\s+/).filter((one) => one.trim() !== "")) {
      const length = parseLength(part, { unit: words.unit });
      if (!length.ok) {
        const { sentence, hint } = sayTrouble(length.trouble, { unit: words.unit });
        setTrouble(`${sentence} ${hint}`);
        return;
      }
      read.push(length.value.mm);
    }
    if (read.length === 0) {
      setTrouble("At least one iron here: type its width.");
      return;
    }
    setTrouble("");
    setTyped(null);
    onChange(read);
  };
  const onKeyDown = (event: KeyboardEvent): void => {
    if (event.key === "Enter") finish();
  };
  return (
    <TextField
      className="field"
      value={typed ?? shown}
      onChange={setTyped}
      onBlur={finish}
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
