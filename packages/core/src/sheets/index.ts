export { type BenchCardOptions, benchCardLines } from "./bench-card-text.ts";
export type { PictureOptions } from "./cut-marks.ts";
export { drawCut } from "./cut-picture.ts";
export * from "./drawing.ts";
export { type Colour, type ColourName, colour, PAPER_RGB, type Rgb, rgbOf } from "./palette.ts";
export { printable } from "./printable-text.ts";
export { drawSection } from "./section-picture.ts";
export { drawStrip } from "./strip.ts";
export { type SvgOptions, writeSvg } from "./write-svg.ts";
