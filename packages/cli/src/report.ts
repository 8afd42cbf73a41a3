import { type LengthUnit, sayTrouble, type Trouble } from "mouldwright/measure";
import { wrapped } from "./io.ts";

export interface Reporting {
  readonly unit: LengthUnit;
  readonly columns: number;
}

/** What kind of news a trouble is; its first word on the line. */
export type Heading = "Refused" | "Note" | "Not written" | "Interrupted" | "Does not hold" | "Program fault";

const INDENT = "  ";

/**
 * A trouble as lines for the terminal: heading with the file and the place in it, what is wrong, what to do.
 * `file` is the name as the maker gave it; empty where none is concerned.
 */
export function reportOf(heading: Heading, file: string, trouble: Trouble, reporting: Reporting): string {
  const said = sayTrouble(trouble, { unit: reporting.unit });
  const place = [file, trouble.where === file ? "" : said.where].filter((one) => one !== "").join(", ");
  const room = reporting.columns - INDENT.length;
  return [
    place === "" ? `${heading}:` : `${heading}: ${place}`,
    ...indented(wrapped(said.sentence, room)),
    ...indented(wrapped(said.hint, room)),
    "",
  ].join("\n");
}

/** Several troubles of one file, the same one about several places only as often as it has something new to say. */
export function reportsOf(
  heading: Heading,
  file: string,
  troubles: readonly Trouble[],
  reporting: Reporting,
): string {
  const reports = troubles.map((one) => reportOf(heading, file, one, reporting));
  return [...new Set(reports)].join("");
}

function indented(text: string): readonly string[] {
  return text.split("\n").map((line) => INDENT + line);
}
