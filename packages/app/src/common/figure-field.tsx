/**
 * A figure that is no length: degrees, percent, a count. Like a length field it keeps what was typed until it is left or
 * Enter is pressed, and says why it cannot be read.
 */
import { FieldError, Input, Label, Text, TextField } from "react-aria-components";
import { figureTyped, writeFigure } from "./figure.ts";
import type { TypedReading } from "./typed-reading.ts";
import { useTyping } from "./use-typing.ts";

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
  const { text, trouble, type, take, onKeyDown } = useTyping<number | null>({
    value,
    write: (figure) => (figure === null ? "" : `${writeFigure(figure)}${unit === "%" ? "\u00a0%" : unit}`),
    read: (typed) => readFigureTyped(typed, props),
    isSame: (one, other) => one === other,
    onChange: (figure) => (figure === null ? onEmpty?.() : onChange(figure)),
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

function readFigureTyped(typed: string, props: FigureFieldProps): TypedReading<number | null> {
  if (typed.trim() === "" && props.onEmpty !== undefined) return { ok: true, value: null };
  const value = figureTyped(withoutUnit(typed, props.unit));
  const says = troubleOf(value, props);
  return says === "" ? { ok: true, value } : { ok: false, says };
}

function troubleOf(read: number | null, { least, most, isWhole, unit }: FigureFieldProps): string {
  const sample = unit === "°" ? "38 or 22½" : unit === "%" ? "12" : "4";
  if (read === null) return `A figure here, such as ${sample}.`;
  if (isWhole === true && !Number.isInteger(read)) return "A whole number here.";
  if (least !== undefined && read < least) return `At least ${writeFigure(least)}${unit} here: type more.`;
  if (most !== undefined && read > most) return `At most ${writeFigure(most)}${unit} here: type less.`;
  return "";
}
