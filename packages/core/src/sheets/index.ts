export { type BenchCardOptions, benchCardLines } from "./bench-card-text.ts";
export {
  bandWords,
  cautions,
  cutCautions,
  errorWriter,
  finishWords,
  markWords,
  minutesWords,
  planesToFetch,
  saversWords,
  stickWords,
  timeWords,
  uncutWords,
  wayWords,
} from "./card-words.ts";
export { leanSpan, planeName, titleOf } from "./cut-facts.ts";
export type { PictureOptions } from "./cut-marks.ts";
export { drawCut } from "./cut-picture.ts";
export * from "./drawing.ts";
export { exportDxf, exportLayers, exportSvg } from "./export-layers.ts";
export * from "./fit-picture.ts";
export type { FitDrawings, FitRequest } from "./fit-sheet.ts";
export { gaugeEdgeOf } from "./gauge-edge.ts";
export { ideaOf } from "./lesson-words.ts";
export {
  type Colour,
  type ColourName,
  colour,
  PAPER_RGB,
  PRINT_PAPER_RGB,
  type Rgb,
  rgbOf,
} from "./palette.ts";
export { PAPER_NAMES, PAPERS, type Paper, type PaperName, type PrinterMade, stretchFor } from "./paper.ts";
export { printable } from "./printable-text.ts";
export { drawCutScene, drawSmallScene, type SceneSize } from "./screen-scene.ts";
export { type ArcMiddle, arcMiddles, spread, turningPoints } from "./section-dimensions.ts";
export { drawSection } from "./section-picture.ts";
export { KNOWN_LETTERS, letterWidthRatio } from "./sheet-font-widths.ts";
export { type Page, SHEET_KINDS, type SheetKind } from "./sheet-frame.ts";
export { type SheetOptions, sheetPages } from "./sheet-set.ts";
export {
  depthGaugeSolid,
  drawnOut,
  gaugeDepths,
  mouldingSolid,
  type Solid,
  sandingBlockSolid,
  writeStl,
} from "./solid.ts";
export { drawStrip } from "./strip.ts";
export { printedWidthMm } from "./text-width.ts";
export { type WaysRow, waysTable } from "./ways-words.ts";
export { type SvgOptions, writeSvg } from "./write-svg.ts";
