/** The fonts that stand beside this package, for Node; a browser fetches the same two files. */
import { readFile } from "node:fs/promises";
import type { FontFiles } from "./fonts.ts";

const FOLDER = new URL("../fonts/", import.meta.url);

export async function nodeFonts(): Promise<FontFiles> {
  const [regular, bold] = await Promise.all([
    readFile(new URL("DejaVuSansCondensed.ttf", FOLDER)),
    readFile(new URL("DejaVuSansCondensed-Bold.ttf", FOLDER)),
  ]);
  // A plain array of bytes, as a browser has: nothing downstream can tell the two apart.
  return { regular: new Uint8Array(regular), bold: new Uint8Array(bold) };
}
