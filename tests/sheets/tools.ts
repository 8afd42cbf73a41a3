/**
 * The readers that the sheets are held against: poppler's programs and a browser, both of the system. Where one is
 * missing a test fails and says what to install; nothing is left out in silence.
 */
import { execFileSync } from "node:child_process";
import { existsSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { delimiter, join } from "node:path";

const BROWSERS = ["chromium", "chromium-browser", "google-chrome", "google-chrome-stable"];

function onPath(name: string): string | null {
  for (const folder of (process.env.PATH ?? "").split(delimiter)) {
    const file = join(folder, name);
    if (folder !== "" && existsSync(file)) return file;
  }
  return null;
}

/** The browser's program. */
export function browserPath(): string {
  const found = BROWSERS.map(onPath).find((path) => path !== null);
  if (found === undefined || found === null) {
    throw new Error(
      "No Chromium found: install it (Debian: apt-get install chromium) and run the tests again.",
    );
  }
  return found;
}

function poppler(name: string): string {
  const found = onPath(name);
  if (found === null) {
    throw new Error(
      `No ${name} found: install poppler (Debian: apt-get install poppler-utils) and run the tests again.`,
    );
  }
  return found;
}

/** Runs one of poppler's programs over a PDF; `args` stand between its name and the file, `after` behind it. */
export function readPdf(
  name: "pdftotext" | "pdftoppm" | "pdffonts" | "pdfinfo" | "pdftocairo",
  pdf: Uint8Array,
  args: readonly string[],
  after: readonly string[] = [],
): Buffer {
  const folder = mkdtempSync(join(tmpdir(), "mouldwright-sheets-"));
  try {
    const file = join(folder, "sheets.pdf");
    writeFileSync(file, pdf);
    return execFileSync(poppler(name), [...args, file, ...after], { maxBuffer: 1 << 28 });
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/** A grey picture: 0 black, 255 white. */
export interface Raster {
  readonly width: number;
  readonly height: number;
  readonly grey: Uint8Array;
}

export interface Crop {
  /** Pixels from the page's upper left corner. */
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** Part of a page as poppler prints it at so many dots to the inch, across and up. */
export function rasterOf(pdf: Uint8Array, page: number, dots: readonly [number, number], crop: Crop): Raster {
  const bytes = readPdf("pdftoppm", pdf, [
    ...["-f", String(page), "-l", String(page), "-gray"],
    ...["-rx", String(dots[0]), "-ry", String(dots[1])],
    ...["-x", String(crop.x), "-y", String(crop.y), "-W", String(crop.width), "-H", String(crop.height)],
  ]);
  // A PGM file: "P5", width, height, 255, each on its own line or parted by blanks, then the bytes.
  let offset = 0;
  const words: string[] = [];
  while (words.length < 4) {
    let word = "";
    while (!/\s/.test(String.fromCharCode(bytes[offset] ?? 32)))
      word += String.fromCharCode(bytes[offset++] ?? 32);
    offset++;
    if (word !== "") words.push(word);
  }
  const [, width, height] = words.map(Number);
  return { width: width ?? 0, height: height ?? 0, grey: new Uint8Array(bytes.subarray(offset)) };
}

/** Middles of the dark runs along a row (or down a column) of pixels, weighed by their darkness, in pixels. */
export function darkMiddles(raster: Raster, along: "row" | "column", at: number): readonly number[] {
  const count = along === "row" ? raster.width : raster.height;
  const middles: number[] = [];
  let weight = 0;
  let moment = 0;
  for (let i = 0; i <= count; i++) {
    const index = along === "row" ? at * raster.width + i : i * raster.width + at;
    const dark = i === count ? 0 : 255 - (raster.grey[index] ?? 255);
    if (dark > 40) {
      weight += dark;
      moment += dark * (i + 0.5);
    } else if (weight > 0) {
      middles.push(moment / weight);
      weight = 0;
      moment = 0;
    }
  }
  return middles;
}
