/** Names of jobs that are told apart. */

const MOST_NAME = 200;
/** Room for a blank and a number. */
const NUMBER_ROOM = 6;

/** The name, or with a number behind it the first that is free: "Cornice 2". */
export function freeName(wanted: string, taken: ReadonlySet<string>): string {
  const name = wanted.trim() === "" ? "Moulding" : wanted;
  if (!taken.has(name)) return name;
  const [, stem = name, found] = /^(.*?)(?: (\d{1,4}))?$/s.exec(name) ?? [];
  for (let number = Number(found ?? 1) + 1; ; number += 1) {
    const numbered = `${stem.slice(0, MOST_NAME - NUMBER_ROOM)} ${number}`;
    if (!taken.has(numbered)) return numbered;
  }
}

/** What this window's state is called where another window has saved the job too. */
export function nameOfCopy(name: string, time: string): string {
  const mark = ` (this window, ${time})`;
  return `${name.slice(0, MOST_NAME - mark.length)}${mark}`;
}
