/** What the files of a job are called, whatever its name. */

/** Letters of a file name that come from a moulding's name. */
const STEM_LETTERS = 60;

/** A moulding's name as the beginning of a file name, safe on every system: letters, digits and dashes. */
export function stemOf(name: string): string {
  // A space before a fraction's sign, which is about to become figures: 1⅜ must not turn into 13/8.
  const stem = [
    ...name
      .replace(/\p{No}/gu, " $&")
      .normalize("NFKD")
      .replace(/\p{M}/gu, "")
      .toLowerCase(),
  ]
    .map((character) => (/[\p{L}\p{N}]/u.test(character) ? character : "-"))
    .join("")
    .replace(/-+/g, "-")
    .slice(0, STEM_LETTERS)
    .replace(/^-|-$/g, "");
  // Names that stand for devices on one system or another, whatever follows them.
  return stem === "" || /^(con|prn|aux|nul|com\d|lpt\d)$/.test(stem) ? `moulding${stem && `-${stem}`}` : stem;
}
