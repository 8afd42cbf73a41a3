/** Words to type: they are taken when the field is left or Enter is pressed. */
import { type KeyboardEvent, useEffect, useState } from "react";
import { TextArea as AreaInput, Input, Label, Text, TextField } from "react-aria-components";

export interface TextFieldProps {
  readonly label: string;
  readonly value: string;
  readonly onChange: (value: string) => void;
  readonly help?: string;
}

/** What stands in the field while it is typed in, and how it is taken. */
function useTyped({ value, onChange }: TextFieldProps) {
  const [typed, setTyped] = useState<string | null>(null);
  // biome-ignore lint/correctness/useExhaustiveDependencies: words from elsewhere replace what was typed.
  useEffect(() => setTyped(null), [value]);
  const finish = (): void => {
    if (typed !== null && typed.trim() !== value) onChange(typed.trim());
    setTyped(null);
  };
  const leave = (event: KeyboardEvent): void => {
    if (event.key !== "Escape" || typed === null) return;
    event.stopPropagation();
    setTyped(null);
  };
  return { shown: typed ?? value, setTyped, finish, leave };
}

export function TextLine(props: TextFieldProps) {
  const { shown, setTyped, finish, leave } = useTyped(props);
  return (
    <TextField className="field" value={shown} onChange={setTyped} onBlur={finish} autoComplete="off">
      <Label>{props.label}</Label>
      <Input
        className="field-input"
        onKeyDown={(event) => {
          if (event.key === "Enter") finish();
          leave(event);
        }}
      />
      <Help words={props.help} />
    </TextField>
  );
}

export function TextArea(props: TextFieldProps) {
  const { shown, setTyped, finish, leave } = useTyped(props);
  return (
    <TextField className="field" value={shown} onChange={setTyped} onBlur={finish}>
      <Label>{props.label}</Label>
      <AreaInput rows={3} onKeyDown={leave} />
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
