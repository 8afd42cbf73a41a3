/** How much a drawing may ask of the program. Past these the file is refused with its reason, at once. */

/** Characters of one file. */
export const LONGEST_FILE = 20_000_000;

/** Pieces and flattened points of one drawing, and things drawn in it. */
export const MOST_POINTS = 100_000;

/** Groups within groups, blocks within blocks. */
export const DEEPEST_NESTING = 64;

/** Coordinates beyond this are no drawing of a moulding but a broken number, mm. */
export const FARTHEST_DRAWN_MM = 100_000;

/** Whether a point is one that a drawing can hold; no for numbers that are none. */
export function isNear(p: { readonly x: number; readonly y: number }): boolean {
  return Math.abs(p.x) <= FARTHEST_DRAWN_MM && Math.abs(p.y) <= FARTHEST_DRAWN_MM;
}

/** Names listed in one sentence; more are counted. */
export const MOST_NAMES = 6;

/** Characters of a name taken over from a file. */
export const LONGEST_NAME = 60;

/** Control characters, the invisible ones that turn the direction of writing, and unpaired surrogates are no part of a name. */
export function cleanName(text: string): string {
  let kept = "";
  for (const sign of text) {
    const code = sign.codePointAt(0)!;
    const control = code < 0x20 || (code >= 0x7f && code < 0xa0);
    const invisible = (code >= 0x200b && code <= 0x200f) || (code >= 0x2028 && code <= 0x202e);
    const isolates = code >= 0x2060 && code <= 0x206f;
    const surrogate = code >= 0xd800 && code <= 0xdfff;
    if (control || invisible || isolates || surrogate || code === 0xfeff) continue;
    kept += sign;
    if (kept.length >= LONGEST_NAME) break;
  }
  return kept.trim();
}
