/** Names and ids for planes whose entry gives none, as a maker would say them. */
import {
  formatExactLength,
  formatLength,
  INCH_MM,
  nearestFraction,
  SAME_POINT_MM,
} from "../measure/index.ts";
import type { FilePlane } from "./file-schema.ts";

/** A size with the unit in which it was written. */
export interface Size {
  readonly mm: number;
  readonly unit: "mm" | "in";
}

/** The sizes of an entry by key, as read. */
export type Sizes = ReadonlyMap<string, Size>;

/** What a plane is called after its size: `⅜ in hollow`, `12 mm rebate plane`, `left snipe bill`. */
export function madeName(plane: FilePlane, sizes: Sizes): string {
  const noun = NOUNS[plane.kind];
  switch (plane.kind) {
    case "hollow":
    case "round": {
      const radius = sizes.get("radius")!;
      const width = sizes.get("width")!;
      const isPlain = Math.abs(radius.mm - width.mm) <= SAME_POINT_MM;
      const name = `${sizeText(radius, "print")} ${noun}`;
      return isPlain ? name : `${name}, ${sizeText(width, "print")} wide`;
    }
    case "plough":
      return noun;
    case "snipe bill":
    case "side round":
    case "side snipe":
    case "side rebate":
      return `${plane.hand} ${noun}`;
    default: {
      const width = sizes.get("width");
      return width === undefined ? noun : `${sizeText(width, "print")} ${noun}`;
    }
  }
}

/** An id from kind and size, in letters, figures, dots and dashes: `hollow-3-8in`, `rebate-12mm`, `snipe-bill-left`. */
export function madeId(plane: FilePlane, sizes: Sizes): string {
  const kind = plane.kind.replaceAll(" ", "-");
  switch (plane.kind) {
    case "plough":
      return kind;
    case "snipe bill":
    case "side round":
    case "side snipe":
    case "side rebate":
      return `${kind}-${plane.hand}`;
    default: {
      const size = sizes.get("radius") ?? sizes.get("width");
      if (size === undefined) return kind;
      const text = sizeText(size, "plain").replace(/ (?=mm$|in$)/, "");
      return `${kind}-${text.replace(/[ /]/g, "-")}`;
    }
  }
}

/** Kinds of plane as they are spoken of. */
export const NOUNS: Readonly<Record<FilePlane["kind"], string>> = {
  hollow: "hollow",
  round: "round",
  "snipe bill": "snipe bill",
  rebate: "rebate plane",
  smoother: "smoother",
  "moving fillister": "moving fillister",
  plough: "plough",
  "side round": "side round",
  "side snipe": "side snipe",
  "side rebate": "side rebate plane",
  bead: "bead plane",
  shaped: "shaped plane",
};

/** A size in its own unit, exact: a fraction of an inch where it is one to a 64th, decimals otherwise. */
export function sizeText(size: Size, form: "print" | "plain"): string {
  const { mm, unit } = size;
  const isFraction = unit === "in" && Math.abs(nearestFraction(mm, 64).errorMm) <= SAME_POINT_MM * INCH_MM;
  const text = isFraction
    ? formatLength(mm, { unit, denominator: 64, sides: "none", form })
    : formatExactLength(mm, { unit, form });
  return text.replace("\u2033", " in").replace("\u00a0", " ");
}
