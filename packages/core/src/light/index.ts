export { MOST_SPRING_DEG } from "./hang.ts";
export { DRAWING_LAMP, lightDirection, MOST_LAMP_DEG, trueHeightDeg, USUAL_AMBIENT_RATIO } from "./lamp.ts";
export { sectionInLight } from "./section-in-light.ts";
export { type Tone, tonesOf } from "./tones.ts";
export type * from "./types.ts";
