/** Pictures of what comes out of fitting and of the stick: one page for each answer, in the family's look. */

export { drawCornice } from "./cornice-picture.ts";
export type { FitPageWish, FitPictureOptions } from "./fit-page.ts";
export { drawFrame, type FrameSizes } from "./frame-picture.ts";
export { drawHip, type HipSaid } from "./hip-picture.ts";
export { drawHopper } from "./hopper-picture.ts";
export { drawLight, hangingWords, lampWords } from "./light-picture.ts";
export type { LitVersion } from "./light-view.ts";
export { drawMitre } from "./mitre-picture.ts";
export { drawMoisture, drawMovement, type SeasonSaid } from "./movement-picture.ts";
export { drawRake, drawRakePoint } from "./rake-picture.ts";
export { drawRod } from "./rod-picture.ts";
export { drawSawCut, type StickNames } from "./saw-picture.ts";
export { drawScribes } from "./scribe-picture.ts";
export { drawSideMoulding } from "./side-picture.ts";
export { drawStick } from "./stick-picture.ts";
export { drawTimber } from "./timber-picture.ts";
export { drawUnlike, type UnlikeSizes } from "./unlike-picture.ts";
