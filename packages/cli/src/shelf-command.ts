import { describeShelf } from "mouldwright/shelf";
import { type Command, note, refuse } from "./command.ts";
import { EXIT } from "./exit-codes.ts";
import { readShelfFile } from "./input.ts";
import { wrapped } from "./io.ts";
import { onlyName } from "./names.ts";

/** `mouldwright shelf SHELF.json`: the planes as a maker would list them, and what was assumed. */
export async function shelfCommand(command: Command): Promise<number> {
  const path = onlyName(command.given, "a shelf file");
  if (!path.ok) return refuse(command, { file: "", troubles: [path.trouble] });
  const unit = command.askedUnit ?? "mm";
  const shelf = await readShelfFile(path.value, unit);
  if (!shelf.ok) return refuse(command, shelf);
  note(command, path.value, shelf.warnings, unit);
  const assumed = shelf.value.assumed.map((sentence) => `Assumed: ${sentence}`);
  for (const line of [...describeShelf(shelf.value, { unit }), ...assumed]) {
    command.io.print(`${wrapped(line, command.io.columns, "    ")}\n`);
  }
  return EXIT.whole;
}
