/** What is said of the stick in sentences: how it is held, sawn and pushed, and how its timber moves. */
import type { StickAnswer } from "mouldwright/making";
import { formatDeg, INCH_MM } from "mouldwright/measure";
import type { Movement } from "mouldwright/timber";

interface Words {
  readonly length: (lengthMm: number) => string;
}

export function percentWords(ratio: number): string {
  return `${Math.round(ratio * 100)}\u00a0%`;
}

export function holdingWords({ holding }: StickAnswer, { length }: Words): string {
  if (holding.canBeHeld) return `It can be held: it beds on ${length(holding.bedMm)}.`;
  const short = holding.shortcomings.map(({ rule, isMm, leastMm }) => {
    const what = rule === "height to bed" ? "bed for its height" : rule;
    return `${what} ${length(isMm)}, should be ${length(leastMm)}`;
  });
  const wide = holding.wideBoard;
  const instead =
    wide === null
      ? ""
      : ` Mould the edge of a board instead and saw off ${wide.count === 1 ? "the moulding" : `${wide.count} mouldings`}: buy ${length(wide.buy.widthMm)} × ${length(wide.buy.thicknessMm)} × ${length(wide.buy.lengthMm)}, plane to ${length(wide.planed.widthMm)} × ${length(wide.planed.thicknessMm)}.`;
  return `Too small to hold safely: ${short.join("; ")}.${instead}`;
}

/** Spring bevels, and the sides of a canted stick that are sawn last. */
export function sawingWords(
  { bevels, sawnLast, cantDeg }: StickAnswer,
  { length }: Words,
): readonly string[] {
  const degrees = (angleDeg: number): string => formatDeg(angleDeg, { stepDeg: 0.25 });
  if (cantDeg !== 0) {
    return sawnLast.map(
      ({ widthMm, fromBackDeg }) =>
        `Saw last: a side ${length(widthMm)} wide at ${degrees(fromBackDeg)} from the stick’s back.`,
    );
  }
  return bevels.bevels.map((bevel) => {
    const leanDeg = bevel.layOn === "back" ? bevel.backOnTableDeg : bevel.edgeOnTableDeg;
    const lies = bevel.layOn === "back" ? "its back" : "that edge";
    return `Bevel at the ${bevel.edge}: ${degrees(bevel.fromBackDeg)} from the back, entering ${length(bevel.onBackMm)} in on the back and ${length(bevel.onEdgeMm)} up the edge. Lay the stick on ${lies} and lean the blade ${degrees(leanDeg)}.`;
  });
}

export function boardWords({ board }: StickAnswer, { length }: Words): string {
  const fence =
    board.fence === null
      ? "no fence, as the far edge is too low: screw through the waste at both ends"
      : `fence at the far edge, ${length(board.fence.topMm)} high at most`;
  const stop =
    board.stop === null
      ? "no stop, as the section is too low"
      : `stop ahead, ${length(board.stop.topMm)} high at most`;
  return `Sticking board ${length(board.widthMm)} wide and ${length(board.lengthMm)} long, the gauge edge flush with its front; ${fence}; ${stop}.`;
}

export function grainWords({ grain }: StickAnswer): string {
  const drift = grain.drift === "straight" ? "running straight along the face" : `drifting ${grain.drift}`;
  return `Grain rising with the push, ${drift}.`;
}

/** `At 6 % its width of 68 mm is 0.75 mm less.` */
export function movementWords({ width }: Movement, toPercent: number, unit: "mm" | "in"): string {
  if (width.changeMm === 0) return `At ${toPercent} % the width of the stick is the same.`;
  return `At ${toPercent} % the stick is ${thickness(Math.abs(width.changeMm), unit)} ${width.changeMm < 0 ? "narrower" : "wider"}.`;
}

/** A small size: to the tenth of a millimetre, in inches to the thousandth. */
export function thickness(sizeMm: number, unit: "mm" | "in"): string {
  return unit === "mm"
    ? `${sizeMm.toFixed(1)}\u00a0mm`
    : `${Math.round((sizeMm / INCH_MM) * 1000)}\u00a0thou`;
}
