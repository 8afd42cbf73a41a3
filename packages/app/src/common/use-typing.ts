/**
 * What is typed into a field, from the first key to the moment it is taken: the one way of all fields for lengths,
 * figures, lists and names. Nothing changes until the field is left or Enter is pressed; Escape takes the typing back; a
 * value from elsewhere (undo, a handle that was pulled) replaces it. To leave a field, or to type again what it says
 * already, changes nothing: the value behind may be finer than what is shown of it.
 */
import { type KeyboardEvent, useEffect, useState } from "react";
import { readAgain, type TypedReading } from "./typed-reading.ts";

export interface TypingOptions<Value> {
  readonly value: Value;
  /** The value as it stands in the field while nothing is typed. */
  readonly write: (value: Value) => string;
  readonly read: (typed: string) => TypedReading<Value>;
  readonly isSame: (one: Value, other: Value) => boolean;
  readonly onChange: (value: Value) => void;
  /** Whether the maker's own way to write it stays in the field after it was taken. */
  readonly staysTyped?: boolean;
}

export interface Typing {
  /** What the field shows. */
  readonly text: string;
  /** Whether that is the maker's own writing. */
  readonly isTyped: boolean;
  /** Why it cannot be read; empty while it can. */
  readonly trouble: string;
  readonly type: (typed: string) => void;
  /** The field is left, or Enter was pressed. */
  readonly take: () => void;
  readonly onKeyDown: (event: KeyboardEvent) => void;
}

interface Taken {
  /** As it was typed. */
  readonly typed: string;
  /** As the field would write the value that it was read as. */
  readonly written: string;
}

export function useTyping<Value>(options: TypingOptions<Value>): Typing {
  const { value, write, onChange, staysTyped = false } = options;
  const [typed, setTyped] = useState<string | null>(null);
  const [taken, setTaken] = useState<Taken | null>(null);
  const [trouble, setTrouble] = useState("");
  const shown = write(value);
  const takenAs = taken?.written ?? null;
  useEffect(() => {
    if (shown === takenAs) return;
    setTyped(null);
    setTaken(null);
    setTrouble("");
  }, [shown, takenAs]);
  const isOpen = typed !== null && typed !== taken?.typed;
  const giveUp = (): void => {
    setTyped(staysTyped ? (taken?.typed ?? null) : null);
    setTrouble("");
  };
  const take = (): void => {
    if (!isOpen) return;
    const read = readAgain(typed, shown, options);
    if (read.kind === "none") {
      setTrouble(read.says);
      return;
    }
    setTrouble("");
    setTyped(staysTyped ? typed : null);
    if (read.kind === "same") {
      setTaken({ typed, written: shown });
      return;
    }
    setTaken({ typed, written: write(read.value) });
    onChange(read.value);
  };
  const onKeyDown = (event: KeyboardEvent): void => {
    if (event.key === "Enter") take();
    if (event.key === "Escape" && isOpen) {
      // It takes the typing back; only the next one leaves the dialog around it.
      event.stopPropagation();
      giveUp();
    }
  };
  return { text: typed ?? shown, isTyped: typed !== null, trouble, type: setTyped, take, onKeyDown };
}
