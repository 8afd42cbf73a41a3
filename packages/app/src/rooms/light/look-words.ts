/** Lamp and hanging as they are said beside the sliders. */

/** A height above level: "45° high", "level", "30° from below". */
export function heightWords(heightDeg: number): string {
  if (heightDeg === 0) return "level";
  return heightDeg > 0 ? `${heightDeg}° high` : `${-heightDeg}° from below`;
}

/** A direction in plan: "45° from the left", "straight in front". */
export function directionWords(directionDeg: number): string {
  if (directionDeg === 0) return "straight in front";
  return directionDeg > 0 ? `${directionDeg}° from the left` : `${-directionDeg}° from the right`;
}

const PERCENT = 100;

export function ambientWords(ambientRatio: number): string {
  return `${Math.round(ambientRatio * PERCENT)} %`;
}

export function percentWords(ratio: number): string {
  return `${Math.round(ratio * PERCENT)} %`;
}
