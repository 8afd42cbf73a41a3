export { type BenchCardOptions, benchCardLines } from "./bench-card-text.ts";
export { drawCut, type PictureOptions } from "./cut-picture.ts";
export * from "./drawing.ts";
export { type Colour, type ColourName, colour, PAPER_RGB, type Rgb, rgbOf } from "./palette.ts";
export { printable } from "./printable-text.ts";
export { drawStrip } from "./strip.ts";
export { type SvgOptions, writeSvg } from "./write-svg.ts";
