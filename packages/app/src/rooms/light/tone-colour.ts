/** Colours of what the lamp shines on. They are those of wood and plaster in both themes: a picture, not a drawing. */
export type Rgb = readonly [number, number, number];

/** Oak planed clean, and a wall limed white, in full light. */
export const WOOD_RGB: Rgb = [232, 203, 158];
export const PLASTER_RGB: Rgb = [238, 234, 226];

/** The eye answers to light about as a screen does; this is the exponent of both. */
const EYE_EXPONENT = 1 / 2.2;

/** A colour in so much of the light, 0 to 1, as a screen shows it. */
export function shownRgb([red, green, blue]: Rgb, brightnessRatio: number): string {
  const shown = Math.max(0, Math.min(1, brightnessRatio)) ** EYE_EXPONENT;
  return `rgb(${[red, green, blue].map((channel) => Math.round(channel * shown)).join(" ")})`;
}
