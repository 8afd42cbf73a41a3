/** Pictures of what comes out of fitting and of the stick: one page for each answer, in the family's look. */

export { drawCornice, drawScribe } from "./cornice-picture.ts";
export type { FitPictureOptions } from "./fit-page.ts";
export { drawFrame, type FrameSizes } from "./frame-picture.ts";
export { drawMitre } from "./mitre-picture.ts";
export { drawMoisture, drawMovement, type SeasonSaid } from "./movement-picture.ts";
export { drawRake, drawRakePoint } from "./rake-picture.ts";
export { drawRod } from "./rod-picture.ts";
export { drawStick } from "./stick-picture.ts";
