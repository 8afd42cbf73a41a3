/**
 * Expected trouble is a value; a broken promise of our own throws.
 *
 * A trouble carries no ready-made sentence: `say.ts` makes those from `code` and `facts`, so that the command
 * line, the sheets and the app all say the same.
 */

/** Values a sentence is made of. A key that ends in `Mm`, `Mm2` or `Deg` is a measure and is written in the user's unit. */
export type Facts = Readonly<Record<string, string | number | boolean | readonly string[]>>;

export interface Trouble<Code extends string = string> {
  readonly code: Code;
  /** Path into the file (`planes[2].radius`), a cut (`cut 4`) or a place; empty if the whole input is meant. */
  readonly where: string;
  readonly facts: Facts;
}

export type Outcome<T, Code extends string = string> =
  | { readonly ok: true; readonly value: T; readonly warnings: readonly Trouble<Code>[] }
  | { readonly ok: false; readonly trouble: Trouble<Code>; readonly more?: readonly Trouble<Code>[] };

export function fine<T, Code extends string = string>(
  value: T,
  warnings: readonly Trouble<Code>[] = [],
): Outcome<T, Code> {
  return { ok: true, value, warnings };
}

export function trouble<Code extends string>(code: Code, where: string, facts: Facts = {}): Trouble<Code> {
  return { code, where, facts };
}

export function refused<Code extends string = string>(
  first: Trouble<Code>,
  ...more: readonly Trouble<Code>[]
): { readonly ok: false; readonly trouble: Trouble<Code>; readonly more?: readonly Trouble<Code>[] } {
  return more.length > 0 ? { ok: false, trouble: first, more } : { ok: false, trouble: first };
}

/** A broken promise of our own code: never the user's fault, becomes the trouble `internal` at the outermost edge. */
export class Bug extends Error {
  readonly facts: Facts;
  constructor(message: string, facts: Facts = {}) {
    super(`${message} ${JSON.stringify(facts)}`);
    this.name = "Bug";
    this.facts = facts;
  }
}

export function bug(message: string, facts: Facts = {}): never {
  throw new Bug(message, facts);
}
