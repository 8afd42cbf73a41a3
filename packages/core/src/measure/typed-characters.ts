/** The many characters that keyboards, phones and word processors put for the same few marks of a length. */

/** Ready-made fractions of Unicode, each with the fraction it stands for. */
const VULGAR_FRACTIONS: Readonly<Record<string, string>> = {
  "¼": "1/4",
  "½": "1/2",
  "¾": "3/4",
  "⅐": "1/7",
  "⅑": "1/9",
  "⅒": "1/10",
  "⅓": "1/3",
  "⅔": "2/3",
  "⅕": "1/5",
  "⅖": "2/5",
  "⅗": "3/5",
  "⅘": "4/5",
  "⅙": "1/6",
  "⅚": "5/6",
  "⅛": "1/8",
  "⅜": "3/8",
  "⅝": "5/8",
  "⅞": "7/8",
};
const RAISED = "⁰¹²³⁴⁵⁶⁷⁸⁹";
const LOWERED = "₀₁₂₃₄₅₆₇₈₉";

/**
 * The text in lower case with plain digits, `/`, `-`, `'` for feet and `"` for inches, one blank between words:
 * `1⅜″` becomes `1 3/8"`, `2’ 3½”` becomes `2' 3 1/2"`. Other characters stay as they are.
 */
export function inPlainCharacters(typed: string): string {
  return typed
    .toLowerCase()
    .replace(/[¼-¾⅐-⅞]/g, (fraction) => ` ${VULGAR_FRACTIONS[fraction] ?? fraction}`)
    .replace(/[⁰¹²³⁴-⁹]+/g, (digits) => ` ${plainDigits(digits, RAISED)}`)
    .replace(/[₀-₉]+/g, (digits) => plainDigits(digits, LOWERED))
    .replace(/[\u2044\u2215]/g, "/")
    .replace(/[\u2010-\u2015\u2212]/g, "-")
    .replace(/[\u2018\u2019\u2032\u02b9`\u00b4]/g, "'")
    .replace(/[\u201c\u201d\u201e\u2033\u02ba\u02dd]|''/g, '"')
    .replace(/\s+/g, " ")
    .trim();
}

function plainDigits(digits: string, alphabet: string): string {
  return [...digits].map((digit) => alphabet.indexOf(digit)).join("");
}
