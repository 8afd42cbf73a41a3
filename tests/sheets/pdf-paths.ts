/** The lines of a PDF's page as pdf.js reads them: the second reader beside poppler, which rounds thin lines for its screen. */
import { getDocument, OPS } from "pdfjs-dist/legacy/build/pdf.mjs";

export type Matrix = readonly [number, number, number, number, number, number];

/** One path: points walked along lines and curves, mm from the page's upper left corner, y down. */
export type WalkedPath = readonly (readonly [number, number])[];

const POINTS_PER_MM = 72 / 25.4;
const STEPS = 64;
/** pdf.js's own numbers for the steps of a path. */
const MOVE = 0;
const LINE = 1;
const CURVE = 2;
const CLOSE = 4;

export async function openPdf(pdf: Uint8Array) {
  return getDocument({ data: pdf.slice(), useSystemFonts: false, verbosity: 0 }).promise;
}

/** All paths of a page, in the order they are drawn. */
export async function pathsOf(pdf: Uint8Array, pageNumber: number): Promise<readonly WalkedPath[]> {
  const document = await openPdf(pdf);
  const page = await document.getPage(pageNumber);
  const heightPt = page.view[3] ?? 0;
  const list = await page.getOperatorList();
  const paths: WalkedPath[] = [];
  let matrix: Matrix = [1, 0, 0, 1, 0, 0];
  const kept: Matrix[] = [];
  list.fnArray.forEach((operation, index) => {
    const args: unknown = list.argsArray[index];
    if (operation === OPS.save) kept.push(matrix);
    if (operation === OPS.restore) matrix = kept.pop() ?? matrix;
    if (operation === OPS.transform) matrix = within(matrix, numbersIn(args));
    if (operation === OPS.constructPath && Array.isArray(args)) {
      const data: unknown = Array.isArray(args[1]) ? args[1][0] : args[1];
      const place = matrix;
      paths.push(
        ...walked(numbersIn(data), (x, y) => {
          const px = place[0] * x + place[2] * y + place[4];
          const py = place[1] * x + place[3] * y + place[5];
          return [px / POINTS_PER_MM, (heightPt - py) / POINTS_PER_MM];
        }),
      );
    }
  });
  await document.destroy();
  return paths;
}

function numbersIn(value: unknown): readonly number[] {
  if (value instanceof Float32Array || value instanceof Float64Array) return [...value];
  return Array.isArray(value) ? value.map(Number) : [];
}

function within(outer: Matrix, inner: readonly number[]): Matrix {
  const [a = 1, b = 0, c = 0, d = 1, e = 0, f = 0] = inner;
  return [
    outer[0] * a + outer[2] * b,
    outer[1] * a + outer[3] * b,
    outer[0] * c + outer[2] * d,
    outer[1] * c + outer[3] * d,
    outer[0] * e + outer[2] * f + outer[4],
    outer[1] * e + outer[3] * f + outer[5],
  ];
}

function walked(
  data: readonly number[],
  place: (x: number, y: number) => readonly [number, number],
): WalkedPath[] {
  const paths: (readonly [number, number])[][] = [];
  let at: readonly [number, number] = [0, 0];
  let start = at;
  for (let i = 0; i < data.length; ) {
    const kind = data[i++];
    const take = (): readonly [number, number] => [data[i++] ?? 0, data[i++] ?? 0];
    if (kind === MOVE) {
      at = take();
      start = at;
      paths.push([place(...at)]);
    } else if (kind === LINE) {
      at = take();
      paths.at(-1)?.push(place(...at));
    } else if (kind === CURVE) {
      const [one, two, to] = [take(), take(), take()];
      for (let step = 1; step <= STEPS; step++) {
        const t = step / STEPS;
        const s = 1 - t;
        const mix = (k: 0 | 1): number =>
          s ** 3 * at[k] + 3 * s * s * t * one[k] + 3 * s * t * t * two[k] + t ** 3 * to[k];
        paths.at(-1)?.push(place(mix(0), mix(1)));
      }
      at = to;
    } else if (kind === CLOSE) {
      paths.at(-1)?.push(place(...start));
      at = start;
    } else throw new Error(`pdf.js gives a step of kind ${kind}, which this test does not know`);
  }
  return paths;
}

/** Least distance from a place to a path, mm. */
export function distanceMm(path: WalkedPath, x: number, y: number): number {
  let least = Number.POSITIVE_INFINITY;
  for (let i = 1; i < path.length; i++) {
    const [ax, ay] = path[i - 1] as readonly [number, number];
    const [bx, by] = path[i] as readonly [number, number];
    const [dx, dy] = [bx - ax, by - ay];
    const length2 = dx * dx + dy * dy;
    const t = length2 === 0 ? 0 : Math.max(0, Math.min(1, ((x - ax) * dx + (y - ay) * dy) / length2));
    least = Math.min(least, Math.hypot(ax + t * dx - x, ay + t * dy - y));
  }
  return least;
}
