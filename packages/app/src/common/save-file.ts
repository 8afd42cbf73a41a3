/** A file for the maker to keep: the browser saves it, or asks where. */

/** Some browsers begin to read the file only after the click is over, ms. */
const LET_GO_AFTER_MS = 60_000;

/** `name` with its ending: "cornice.pdf" (`stemOf` of the core makes names that every system takes). */
export function saveFile(name: string, file: Blob): void {
  const url = URL.createObjectURL(file);
  const link = document.createElement("a");
  link.href = url;
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(url), LET_GO_AFTER_MS);
}
