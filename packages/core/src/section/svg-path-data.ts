/**
 * SVG path data (the `d` attribute) to runs of drawn curves, in the path's own units, y down as in the file.
 *
 * Grammar and the meaning of every command: W3C, Scalable Vector Graphics 1.1 (second edition), section 8.3; arcs by
 * its appendix F.6. Read here by one pass over the characters, because the time must grow with the length of the
 * data and no more.
 */
import type { Point } from "../curve/index.ts";
import type { DrawnCurve } from "./read-curves.ts";
import { MOST_POINTS } from "./read-limits.ts";
import { svgArc } from "./svg-arc.ts";

export interface DrawnRun {
  readonly curves: readonly DrawnCurve[];
  /** Closed by a Z. A run may also come back to its start without one. */
  readonly closed: boolean;
}

export interface PathData {
  readonly runs: readonly DrawnRun[];
  /** By how much the most grown arc had to grow to reach its ends, in the path's units; 0 if none had to. */
  readonly grownBy: number;
  /** Character at which the data stops making sense; null if it is whole. */
  readonly brokenAt: number | null;
  /** More commands than any drawing of a section needs; reading stopped there. */
  readonly tooMany: boolean;
}

// biome-ignore format: it reads as the table it is
const NUMBERS_OF: Readonly<Record<string, number>> = { M: 2, L: 2, H: 1, V: 1, C: 6, S: 4, Q: 4, T: 2, A: 7, Z: 0 };

export function readPathData(data: string): PathData {
  const scanner = { data, at: 0 };
  const runs: DrawnRun[] = [];
  let curves: DrawnCurve[] = [];
  let pen: Point = { x: 0, y: 0 };
  let start: Point = pen;
  let grownBy = 0;
  // The handle that a smooth command mirrors, and for which family of curves it counts.
  let handle: Handle | null = null;
  let letter = "";
  let count = 0;

  const finish = (closed: boolean): void => {
    if (curves.length > 0) runs.push({ curves, closed });
    curves = [];
  };
  const draw = (curve: DrawnCurve): void => {
    curves.push(curve);
    pen = curve.to;
  };

  while (skipSpace(scanner)) {
    const sign = data[scanner.at]!;
    const upper = sign.toUpperCase();
    const wasAt = scanner.at;
    if (upper in NUMBERS_OF && (letter !== "" || upper === "M")) {
      scanner.at++;
      letter = sign;
    } else if (letter === "" || letter === "z" || letter === "Z") {
      return { runs, grownBy, brokenAt: wasAt, tooMany: false };
    } else {
      // More numbers without a letter repeat the command; after a moveto they are linetos.
      if (letter === "M") letter = "L";
      if (letter === "m") letter = "l";
      if (sign === ",") scanner.at++;
    }
    const command = letter.toUpperCase();
    if (count++ > MOST_POINTS) return { runs, grownBy, brokenAt: null, tooMany: true };
    const numbers = readNumbers(scanner, command);
    if (numbers === null) return { runs, grownBy, brokenAt: scanner.at, tooMany: false };
    const base = letter === command ? { x: 0, y: 0 } : pen;
    const pointAt = (i: number): Point => ({ x: base.x + numbers[i]!, y: base.y + numbers[i + 1]! });
    const from = pen;
    let next: Handle | null = null;
    switch (command) {
      case "M":
        finish(false);
        pen = pointAt(0);
        start = pen;
        break;
      case "Z":
        if (pen.x !== start.x || pen.y !== start.y) curves.push({ kind: "line", from: pen, to: start });
        finish(true);
        pen = start;
        break;
      case "L":
        draw({ kind: "line", from, to: pointAt(0) });
        break;
      case "H":
        draw({ kind: "line", from, to: { x: base.x + numbers[0]!, y: from.y } });
        break;
      case "V":
        draw({ kind: "line", from, to: { x: from.x, y: base.y + numbers[0]! } });
        break;
      case "C":
      case "S": {
        const smooth = command === "S";
        const handleFrom: Point = smooth ? mirrored(from, handle, "cubic") : pointAt(0);
        const handleTo = pointAt(smooth ? 0 : 2);
        draw({ kind: "cubic", from, handleFrom, handleTo, to: pointAt(smooth ? 2 : 4) });
        next = { point: handleTo, of: "cubic" };
        break;
      }
      case "Q":
      case "T": {
        const smooth = command === "T";
        const middle: Point = smooth ? mirrored(from, handle, "quadratic") : pointAt(0);
        const to = pointAt(smooth ? 0 : 2);
        draw({
          kind: "cubic",
          from,
          handleFrom: twoThirds(from, middle),
          handleTo: twoThirds(to, middle),
          to,
        });
        next = { point: middle, of: "quadratic" };
        break;
      }
      case "A": {
        const arc = svgArc({
          from,
          to: pointAt(5),
          radiusX: numbers[0]!,
          radiusY: numbers[1]!,
          turnDeg: numbers[2]!,
          largeArc: numbers[3] === 1,
          sweepFlag: numbers[4] === 1,
        });
        grownBy = Math.max(grownBy, arc.grownBy);
        draw(arc.curve);
        break;
      }
    }
    handle = next;
  }
  finish(false);
  return { runs, grownBy, brokenAt: null, tooMany: false };
}

interface Handle {
  readonly point: Point;
  readonly of: "cubic" | "quadratic";
}

function mirrored(pen: Point, handle: Handle | null, of: Handle["of"]): Point {
  if (handle === null || handle.of !== of) return pen;
  return { x: 2 * pen.x - handle.point.x, y: 2 * pen.y - handle.point.y };
}

/** A quadratic Bézier is the cubic whose handles lie two thirds of the way to its own. */
function twoThirds(end: Point, middle: Point): Point {
  return { x: end.x + (2 / 3) * (middle.x - end.x), y: end.y + (2 / 3) * (middle.y - end.y) };
}

interface Scanner {
  readonly data: string;
  at: number;
}

function readNumbers(scanner: Scanner, command: string): number[] | null {
  const wanted = NUMBERS_OF[command]!;
  const numbers: number[] = [];
  for (let i = 0; i < wanted; i++) {
    skipSpace(scanner);
    if (i > 0 && scanner.data[scanner.at] === ",") {
      scanner.at++;
      skipSpace(scanner);
    }
    const flag = command === "A" && (i === 3 || i === 4);
    const number = flag ? readFlag(scanner) : readNumber(scanner);
    if (number === null) return null;
    numbers.push(number);
  }
  return numbers;
}

/** The two flags of an arc may stand without anything between them and what follows. */
function readFlag(scanner: Scanner): number | null {
  const sign = scanner.data[scanner.at];
  if (sign !== "0" && sign !== "1") return null;
  scanner.at++;
  return sign === "1" ? 1 : 0;
}

const NUMBER = /[+-]?(?:\d+(?:\.\d*)?|\.\d+)(?:[eE][+-]?\d+)?/y;

/** One number at the scanner's place; also used for lists of numbers in other attributes. */
export function readNumber(scanner: Scanner): number | null {
  NUMBER.lastIndex = scanner.at;
  const match = NUMBER.exec(scanner.data);
  if (match === null) return null;
  scanner.at = NUMBER.lastIndex;
  return Number(match[0]);
}

function isSpace(sign: string | undefined): boolean {
  return sign === " " || sign === "\t" || sign === "\n" || sign === "\r" || sign === "\f";
}

/** False at the end of the data. */
export function skipSpace(scanner: Scanner): boolean {
  while (isSpace(scanner.data[scanner.at])) scanner.at++;
  return scanner.at < scanner.data.length;
}
