/** Random sections and small conveniences for the tests of fitting. */
import { type Ring, ringFromVertices } from "../../../curve/index.ts";
import { type Outcome, sayTrouble } from "../../../measure/index.ts";
import { type Corner, cornerFromAngle } from "../corner.ts";
import type { FlatPoint } from "./solid.ts";

/** The answer, or the trouble said as a failure. */
export function answer<T>(outcome: Outcome<T>): T {
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.trouble));
  return outcome.value;
}

/** Evenly spread numbers from a seed (a linear congruence modulo 2³²): the same on every machine. */
export function seededRandom(seed: number): (least: number, most: number) => number {
  let state = seed >>> 0;
  return (least, most) => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return least + ((most - least) * state) / 2 ** 32;
  };
}

/**
 * A moulding's section in the flat stick: the back along 0 from the wall's edge, the face above it with several members.
 * Anticlockwise with `acrossMm` to the right and `upMm` up.
 */
export function randomSection(random: (least: number, most: number) => number): FlatPoint[] {
  const width = random(20, 100);
  const members = 2 + Math.floor(random(0, 6));
  const face = Array.from({ length: members + 1 }, (_, index) => ({
    acrossMm: width * (1 - index / members),
    upMm: random(4, 30),
  }));
  return [{ acrossMm: 0, upMm: 0 }, { acrossMm: width, upMm: 0 }, ...face];
}

export function ringOf(vertices: readonly (readonly [number, number])[]): Ring {
  return ringFromVertices(vertices);
}

/** The code of a refusal, after saying it aloud. */
export function refusal(outcome: Outcome<unknown>): string {
  if (outcome.ok) throw new Error("a refusal was expected");
  const { sentence, hint } = sayTrouble(outcome.trouble, { unit: "mm" });
  if (/NaN|undefined|Infinity/.test(`${sentence} ${hint}`)) throw new Error(`${sentence} ${hint}`);
  return outcome.trouble.code;
}

export const warnings = (outcome: Outcome<unknown>): string[] =>
  outcome.ok ? outcome.warnings.map(({ code }) => code) : [];
export const inside = (cornerDeg: number): Corner => answer(cornerFromAngle(cornerDeg, "inside"));
export const outside = (cornerDeg: number): Corner => answer(cornerFromAngle(cornerDeg, "outside"));
