/** What the command line talks to, so that tests can listen in without starting a process. */
export interface Io {
  /** Answers: the card, the plan, the description. */
  readonly print: (text: string) => void;
  /** Troubles, warnings and progress. */
  readonly complain: (text: string) => void;
  /** Columns to wrap answers and troubles to. */
  readonly columns: number;
  readonly complaintColumns: number;
  /** Whether a person watches the complaints: only then a progress line is drawn over itself. */
  readonly isWatched: boolean;
  /** Raised when the maker interrupts. */
  readonly interrupted: AbortSignal;
  /** Milliseconds of a clock that never runs back. */
  readonly now: () => number;
  /** Lets signals and timers be heard in between two steps of long work. */
  readonly breathe: () => Promise<void>;
}

/** Columns where nobody says how wide the paper is. */
const COLUMNS = 80;
/** Columns below which wrapping would chop words rather than help. */
const LEAST_COLUMNS = 32;
/** Columns above which a line is too long to find the next one's start. */
const MOST_COLUMNS = 110;

/** The terminal or pipe that this process was started with. */
export function processIo(interrupted: AbortSignal): Io {
  // A reader that has seen enough (`… | head`) closes the pipe; that is no trouble of ours.
  for (const stream of [process.stdout, process.stderr]) {
    stream.on("error", (error: NodeJS.ErrnoException) => {
      if (error.code !== "EPIPE") throw error;
    });
  }
  return {
    print: (text) => void process.stdout.write(printableLines(text)),
    complain: (text) => void process.stderr.write(printableLines(text, "\r")),
    columns: columnsOf(process.stdout),
    complaintColumns: columnsOf(process.stderr),
    isWatched: process.stderr.isTTY === true,
    interrupted,
    now: () => performance.now(),
    breathe: () => new Promise((go) => setImmediate(go)),
  };
}

function columnsOf(stream: { readonly isTTY?: boolean; readonly columns?: number }): number {
  const told = stream.isTTY === true ? (stream.columns ?? COLUMNS) : COLUMNS;
  return Math.min(MOST_COLUMNS, Math.max(LEAST_COLUMNS, told));
}

/**
 * The text with every character that could steer a terminal, or hide in it, written out as `\u{…}`. Line ends
 * stay, and `kept` (our own return to the line's start). Names in files are somebody else's words.
 */
export function printableLines(text: string, kept = ""): string {
  return text.replace(/[\p{Cc}\p{Zl}\p{Zp}\p{Cs}\p{Bidi_Control}\u200b-\u200d\ufeff]/gu, (character) =>
    character === "\n" || kept.includes(character)
      ? character
      : `\\u{${character.codePointAt(0)!.toString(16)}}`,
  );
}

/** Printed columns of a text: marks that sit on the letter before take none. */
export function columnsWide(text: string): number {
  return [...text.replace(/\p{M}/gu, "")].length;
}

/**
 * The paragraph broken at spaces into lines of at most `columns`; lines after the first begin with `hang`. Runs of
 * spaces within a line stay (columns of a table), a word longer than a line stands alone.
 */
export function wrapped(paragraph: string, columns: number, hang = ""): string {
  const lines: string[] = [];
  let line = "";
  let isEmpty = true;
  for (const token of paragraph.match(/ *[^ ]+/g) ?? []) {
    if (!isEmpty && columnsWide(line + token) > columns) {
      lines.push(line);
      line = hang + token.trimStart();
    } else line += token;
    isEmpty = false;
  }
  return [...lines, line].join("\n");
}
