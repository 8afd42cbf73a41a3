/** The bench card as plain lines for a terminal or a printer of any kind: everything of the plan that a maker needs. */
import type { Plan, PlanCut } from "../cutting/index.ts";
import { type InchDenominator, type LengthUnit, writerFor } from "../measure/index.ts";
import {
  bandWords,
  cautions,
  errorWriter,
  finishWords,
  markWords,
  minutesWords,
  planesToFetch,
  saversWords,
  stickWords,
  timeWords,
  uncutWords,
  wayWords,
} from "./card-words.ts";
import { leanSpan, planeName, titleOf } from "./cut-facts.ts";
import { printable } from "./printable-text.ts";
import { comparedWords } from "./ways-words.ts";

export interface BenchCardOptions {
  readonly unit: LengthUnit;
  /** Finest division of the maker's inch rule; thirty-seconds unless given. */
  readonly inchStep?: InchDenominator | undefined;
  /** Longest line, in characters; at least 24. */
  readonly columns: number;
  /** Names of planes that were not to be used, although they are on the shelf. */
  readonly leftOut?: readonly string[];
}

const LEAST_COLUMNS = 24;
const INDENT = 4;
/**
 * The card's lines, none longer than `columns` characters. Lengths are in the unit asked for; the plan's own
 * sentences keep the unit they were written in. No control character of the plan comes through.
 */
export function benchCardLines(plan: Plan, options: BenchCardOptions): string[] {
  const columns = Math.max(LEAST_COLUMNS, Math.floor(options.columns));
  const page = new Page(columns);
  const { length } = writerFor(options.unit, "print", options.inchStep);
  const error = errorWriter(options.unit, options.inchStep);
  const name = printable(plan.name).trim() || "Moulding";

  page.paragraph(name);
  page.line("=".repeat(Math.min(columns, [...name].length)));
  page.entry("Stick", stickWords(plan, length));
  page.entry("Planes", planesToFetch(plan).join("; ") || "none");
  page.entry("Time", timeWords(plan));
  page.entry("Way", wayWords(plan));
  if (options.leftOut !== undefined && options.leftOut.length > 0) {
    page.entry("Left out", `${options.leftOut.join("; ")}; not used, as asked`);
  }
  if (plan.ways.length > 1)
    page.list(
      "Ways compared",
      plan.ways.map((way) => comparedWords(plan, way)),
    );
  page.list("Taken as given", plan.assumed);
  page.list("Mind", plan.warnings);

  if (plan.marks.length > 0) {
    page.heading("Marks");
    for (const mark of plan.marks) page.entry(`before cut ${mark.before}`, markWords(mark, length, error));
  }
  page.list(
    "Bands",
    (plan.bands ?? []).map((band) => bandWords(band, length, error)),
  );
  page.heading("Cuts");
  if (plan.cuts.length === 0)
    page.paragraph("No cut: the stick is the section already, or nothing on the shelf reaches it.");
  for (const cut of plan.cuts) addCut(page, cut, options);

  page.heading("When done");
  page.paragraph(finishWords(plan, length, error));
  if (plan.uncut.length > 0) {
    page.heading("Stays uncut");
    for (const place of plan.uncut) {
      page.bullet(uncutWords(plan, place, length));
    }
  }
  page.list("Would save work", saversWords(plan));
  page.heading("Take care");
  for (const caution of cautions(plan)) page.bullet(caution);
  return page.lines;
}

function addCut(page: Page, cut: PlanCut, options: BenchCardOptions): void {
  const title = titleOf(cut, options.unit);
  const lean = /upright|leaned/.test(title) ? "" : `, ${leanSpan(cut)}`;
  page.numbered(cut.number, `${title} - ${planeName(cut)}${lean}`);
  page.paragraph(cut.says, INDENT);
  const told = cut.says.includes("pass") || cut.passes < 1 || cut.line !== undefined;
  const passes = cut.passes === 1 ? "One pass." : `About ${cut.passes} passes.`;
  const facts = [told ? "" : passes, cut.doneWhen, minutesWords(cut.minutes)];
  page.paragraph(facts.filter((fact) => fact.trim() !== "").join(" "), INDENT);
}

/** Lines of at most so many characters, wrapped at blanks; a no-break space keeps a number with its unit. */
class Page {
  readonly lines: string[] = [];
  readonly #columns: number;

  constructor(columns: number) {
    this.#columns = columns;
  }

  line(words: string): void {
    this.lines.push(words.replace(/\u00a0/g, " ").trimEnd());
  }

  heading(words: string): void {
    this.line("");
    this.line(words);
    this.line("-".repeat(words.length));
  }

  paragraph(words: string, indent = 0): void {
    this.#hang("", indent, words);
  }

  /** `name   text`, the text hanging under itself. */
  entry(name: string, words: string): void {
    this.#hang(`${name}  `.padEnd(8), Math.max(8, name.length + 2), words);
  }

  bullet(words: string): void {
    this.#hang("- ", 2, words);
  }

  numbered(number: number, words: string): void {
    this.line("");
    this.#hang(`${number}`.padStart(2).padEnd(INDENT), INDENT, words);
  }

  list(name: string, entries: readonly string[]): void {
    if (entries.length === 0) return;
    this.heading(name);
    for (const entry of entries) this.bullet(entry);
  }

  #hang(lead: string, indent: number, words: string): void {
    // A narrow terminal cannot spare the hanging indent.
    const hanging = indent > this.#columns / 3 ? 2 : indent;
    if (hanging !== indent && lead.trim() !== "") {
      this.line(lead.trimEnd());
      this.#hang("", hanging, words);
      return;
    }
    const wrapped = wrapWords(printable(words), this.#columns - hanging);
    const indented = " ".repeat(hanging);
    wrapped.forEach((line, index) => {
      this.line((index === 0 && lead !== "" ? lead.padEnd(hanging) : indented) + line);
    });
  }
}

function wrapWords(words: string, width: number): readonly string[] {
  const lines: string[] = [];
  let line = "";
  const flush = (): void => {
    if (line !== "") lines.push(line);
    line = "";
  };
  for (const word of words.split(" ").filter((part) => part !== "")) {
    let rest = [...word];
    if (line !== "" && [...line].length + 1 + rest.length <= width) {
      line += ` ${word}`;
      continue;
    }
    flush();
    while (rest.length > width) {
      lines.push(rest.slice(0, width).join(""));
      rest = rest.slice(width);
    }
    line = rest.join("");
  }
  flush();
  return lines.length === 0 ? [""] : lines;
}
