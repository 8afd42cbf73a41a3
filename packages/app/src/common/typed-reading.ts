/** What becomes of a text that was typed where a value stands already. */

/** What a typed text is read as, or why it cannot be. */
export type TypedReading<Value> =
  | { readonly ok: true; readonly value: Value }
  | { readonly ok: false; readonly says: string };

export type Read<Value> =
  | { readonly kind: "none"; readonly says: string }
  /** It says what stands there. */
  | { readonly kind: "same" }
  | { readonly kind: "new"; readonly value: Value };

export interface Reader<Value> {
  readonly value: Value;
  readonly read: (typed: string) => TypedReading<Value>;
  readonly isSame: (one: Value, other: Value) => boolean;
}

/**
 * `shown` is the value as the field writes it, which may be less fine than the value itself: whoever types that again
 * means the value, not its rounding.
 */
export function readAgain<Value>(
  typed: string,
  shown: string,
  { value, read, isSame }: Reader<Value>,
): Read<Value> {
  if (typed.trim() === shown.trim()) return { kind: "same" };
  const now = read(typed);
  if (!now.ok) return { kind: "none", says: now.says };
  if (isSame(now.value, value)) return { kind: "same" };
  const before = read(shown);
  return before.ok && isSame(now.value, before.value) ? { kind: "same" } : { kind: "new", value: now.value };
}
