/** Files that the maker saves: their names and their writing to wherever the browser puts downloads. */

const MOST_CHARACTERS = 80;

/** A file's name that every system takes, from a job's name: "Chart cabinet cornice.json". */
export function fileNameOf(name: string, ending: string): string {
  const plain = name
    .normalize("NFC")
    .replace(/[\p{C}\\/:*?"<>|]+/gu, " ")
    .replace(/\s+/g, " ")
    .replace(/^[. ]+|[. ]+$/g, "")
    .slice(0, MOST_CHARACTERS)
    .trim();
  // Names that stand for devices on one system, whatever their ending.
  const isDevice = /^(?:con|prn|aux|nul|com\d|lpt\d)(?:\.|$)/i.test(plain);
  return `${plain === "" || isDevice ? "job" : plain}.${ending}`;
}

/** Hands a file to the browser, which asks or puts it among the downloads. */
export function saveFile(fileName: string, content: string | Uint8Array<ArrayBuffer>, type: string): void {
  const address = URL.createObjectURL(new Blob([content], { type }));
  const link = document.createElement("a");
  link.href = address;
  link.download = fileName;
  link.click();
  // Taken back later: some browsers begin to read it only after the click.
  setTimeout(() => URL.revokeObjectURL(address), 60_000);
}
