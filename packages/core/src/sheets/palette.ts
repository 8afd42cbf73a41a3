/**
 * The colours of every drawing: Okabe and Ito's palette (Color Universal Design, 2008, jfly.uni-koeln.de/color),
 * told apart by the colour-blind, on a warm off-white. Six of its eight are used; yellow and reddish purple stay
 * below 3 : 1 on this paper and are left out. Nothing is said by colour alone: kind of line and pattern say it too.
 */

export type ColourName = "black" | "orange" | "sky blue" | "bluish green" | "blue" | "vermilion";

/** A palette colour, or a lighter mix of it with the paper: 1 is the pure colour, 0 the paper. */
export interface Colour {
  readonly name: ColourName;
  readonly strengthRatio: number;
}

export const PAPER_RGB: Rgb = [251, 247, 239];

export type Rgb = readonly [number, number, number];

/** What a printer prints on. */
export const PRINT_PAPER_RGB: Rgb = [255, 255, 255];

const PURE: Readonly<Record<ColourName, Rgb>> = {
  black: [0, 0, 0],
  orange: [230, 159, 0],
  "sky blue": [86, 180, 233],
  "bluish green": [0, 158, 115],
  blue: [0, 114, 178],
  vermilion: [213, 94, 0],
};

export function colour(name: ColourName, strengthRatio = 1): Colour {
  return { name, strengthRatio };
}

/** Red, green, blue 0 to 255 of a colour as it stands on the paper. */
export function rgbOf(wanted: Colour, paper: Rgb = PAPER_RGB): Rgb {
  const mix = (channel: 0 | 1 | 2): number =>
    Math.round(paper[channel] + (PURE[wanted.name][channel] - paper[channel]) * wanted.strengthRatio);
  return [mix(0), mix(1), mix(2)];
}

/** What each colour means, on every drawing of the family. */
export const PAPER = colour("black", 0);
export const INK = colour("black");
/** Second poses and things behind; still 3 : 1 against the paper. */
export const FAINT_INK = colour("black", 0.5);
export const WOOD_TINT = colour("orange", 0.2);
export const WOOD_GRAIN = colour("orange", 0.62);
export const WASTE_TINT = colour("sky blue", 0.5);
export const WASTE_PATTERN = colour("blue");
export const GAUGE_LINE = colour("vermilion");
export const PLANE_LINE = colour("black");
export const MOVEMENT = colour("blue");
