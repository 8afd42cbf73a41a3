/** The first look at a file's text, before anything is parsed. */
import { LONGEST_FILE } from "./read-limits.ts";
import { type Reading, refuse } from "./read-troubles.ts";

/** Whether there is a text of bearable length; refuses it otherwise. */
export function isReadable(reading: Reading, text: string): boolean {
  if (text.length > LONGEST_FILE) {
    const megabytes = Math.round(text.length / 100_000) / 10;
    refuse(reading, "drawing-too-long", "", { megabytes, mostMegabytes: LONGEST_FILE / 1_000_000 });
    return false;
  }
  // Not trim(): that would copy a text that is blank for megabytes.
  if (!/\S/.test(text)) {
    refuse(reading, "drawing-empty", "", {});
    return false;
  }
  return true;
}
