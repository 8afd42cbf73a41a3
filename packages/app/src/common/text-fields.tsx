/** Words to type: they are taken when the field is left or Enter is pressed. */
import { TextArea as AreaInput, Input, Label, Text, TextField } from "react-aria-components";
import { useTyping } from "./use-typing.ts";

export interface TextFieldProps {
  readonly label: string;
  readonly value: string;
  readonly onChange: (value: string) => void;
  readonly help?: string;
  /** What holds while the field is empty. */
  readonly placeholder?: string;
  readonly mostCharacters?: number;
}

function useWords({ value, onChange }: TextFieldProps) {
  return useTyping({
    value,
    write: (words) => words,
    read: (typed) => ({ ok: true, value: typed.trim() }),
    isSame: (one, other) => one === other,
    onChange,
  });
}

export function TextLine(props: TextFieldProps) {
  const { text, type, take, onKeyDown } = useWords(props);
  return (
    <TextField
      className="field"
      value={text}
      onChange={type}
      onBlur={take}
      autoComplete="off"
      {...(props.mostCharacters === undefined ? {} : { maxLength: props.mostCharacters })}
    >
      <Label>{props.label}</Label>
      <Input
        className="field-input"
        onKeyDown={onKeyDown}
        {...(props.placeholder === undefined ? {} : { placeholder: props.placeholder })}
      />
      <Help words={props.help} />
    </TextField>
  );
}

export function TextArea(props: TextFieldProps) {
  const { text, type, take, onKeyDown } = useWords(props);
  return (
    <TextField className="field" value={text} onChange={type} onBlur={take}>
      <Label>{props.label}</Label>
      <AreaInput rows={3} onKeyDown={(event) => (event.key === "Enter" ? undefined : onKeyDown(event))} />
      <Help words={props.help} />
    </TextField>
  );
}

function Help({ words }: { readonly words: string | undefined }) {
  if (words === undefined) return null;
  return (
    <Text slot="description" className="field-note">
      {words}
    </Text>
  );
}
