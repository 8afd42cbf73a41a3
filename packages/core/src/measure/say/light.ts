/** Sentences about lamps and how a moulding hangs in their light. */
import { formatDeg } from "../format.ts";
import { catalogue } from "./catalogue.ts";

function angle(angleDeg: number): string {
  return Number.isFinite(angleDeg) ? formatDeg(angleDeg, { stepDeg: 0.25 }) : "?";
}

function figure(value: number): string {
  return Number.isFinite(value) ? String(Number(value.toFixed(1))) : "?";
}

export const lightTroubles = catalogue({
  "light-angle": {
    example: { which: "height", angleDeg: 95, mostDeg: 89 },
    sentence: (facts, write) =>
      `The lamp's ${write.text(facts.which)} is ${angle(facts.angleDeg)}; a lamp in front of the wall has at most ${angle(facts.mostDeg)} to either side of level and straight in front.`,
    hint: () =>
      "Give the height above level as it is drawn on the moulding's end, and the direction as seen from above; less than nought is from below, and from the right.",
  },
  "light-ambient": {
    example: { percent: 140 },
    sentence: (facts) =>
      `Light from the whole room is given as ${figure(facts.percent)} % of all light; it can be from 0 to 100 %.`,
    hint: () => "A dark wall and one lamp have about 10 %, a bright room 25 to 40 %.",
  },
  "light-spring": {
    example: { springDeg: 120, mostDeg: 90 },
    sentence: (facts) =>
      `The back leans ${angle(facts.springDeg)} from the wall; it can lean at most ${angle(facts.mostDeg)}, forwards or backwards.`,
    hint: () => "Give the spring from the wall, such as 38; 0 where the back stands flat against it.",
  },
  "light-one-far-lamp": {
    example: {},
    sentence: () =>
      "The lamp is taken to be far off, so that shadows have sharp edges; the wood is taken to be matt, and no light is thrown from one part of it on another.",
    hint: () =>
      "Near lamps and broad windows soften the edges, polish adds bright lines: hold a test piece up in its place before much depends on it.",
  },
});
