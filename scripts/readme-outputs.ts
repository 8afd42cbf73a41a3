/**
 * The commands shown in README.md with what they print. A block that begins with `$ ` is run again and its output put
 * in its place; a comment above it says which stretches of the output are shown:
 * `<!-- shown: "Marks" to "Cuts", " 9 " to "Take care" -->`, each from the first line that begins so up to (not with)
 * the next that begins so; `""` as an end means the end. Without the comment everything is shown.
 */

export interface Ran {
  readonly code: number | null;
  /** What it printed for the reader; complaints and progress not included. */
  readonly out: string;
}

/** Runs the words after `npx mouldwright`. */
export type RunCommand = (words: readonly string[]) => Ran;

const BLOCK = /(?:<!-- shown: (?<shown>.+?) -->\n)?```console\n\$ npx mouldwright (?<words>.+)\n[\s\S]*?```/g;
const STRETCH = /"(?<from>[^"]+)" to "(?<to>[^"]*)"/g;
const LEFT_OUT = "[…]";

/** The commands of a text in its order, each as the words after `npx mouldwright`. */
export function commandsIn(markdown: string): readonly (readonly string[])[] {
  return [...markdown.matchAll(BLOCK)].map((block) => wordsOf(block.groups?.words ?? ""));
}

/** The same text with every command's output as `run` gives it now. */
export function renewed(markdown: string, run: RunCommand): string {
  return markdown.replace(BLOCK, (_, shown: string | undefined, command: string) => {
    const lines = run(wordsOf(command)).out.trimEnd().split("\n");
    const kept = shown === undefined ? lines : stretches(lines, shown);
    const comment = shown === undefined ? "" : `<!-- shown: ${shown} -->\n`;
    return `${comment}\`\`\`console\n$ npx mouldwright ${command}\n${kept.join("\n")}\n\`\`\``;
  });
}

/** No shell stands between: the README's commands need no quoting. */
function wordsOf(command: string): readonly string[] {
  return command.split(" ");
}

function stretches(lines: readonly string[], shown: string): readonly string[] {
  const kept: string[] = [];
  let at = 0;
  for (const { groups } of shown.matchAll(STRETCH)) {
    const { from = "", to = "" } = groups ?? {};
    const start = indexOfLine(lines, from, at);
    const end = to === "" ? lines.length : indexOfLine(lines, to, start + 1);
    if (start > at) kept.push(LEFT_OUT);
    kept.push(...withoutEmptyEnd(lines.slice(start, end)));
    at = end;
  }
  return at < lines.length ? [...kept, LEFT_OUT] : kept;
}

function indexOfLine(lines: readonly string[], beginning: string, after: number): number {
  const index = lines.findIndex((line, i) => i >= after && line.startsWith(beginning));
  if (index < 0) throw new Error(`README.md: no line of the output begins with "${beginning}"`);
  return index;
}

function withoutEmptyEnd(lines: readonly string[]): readonly string[] {
  return lines.at(-1) === "" ? lines.slice(0, -1) : lines;
}
