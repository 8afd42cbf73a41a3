/** A corner as makers give it: by its angle, by the sides of a polygon, or by three lengths of a triangle. */
import { type Corner, cornerFromAngle, cornerFromTriangle, polygonMitre } from "mouldwright/making";
import { fine, INCH_MM, type LengthUnit, type Outcome, parseLength } from "mouldwright/measure";
import { type OptionKinds, readChoice, wrongValue } from "./arguments.ts";
import type { Command } from "./command.ts";
import type { Figures } from "./fit-answer.ts";
import { missing, readAngle, readCount, saidTwice } from "./fit-options.ts";

export const CORNER_OPTIONS: OptionKinds = {
  corner: { value: true, sample: "--corner 90" },
  triangle: { value: true, sample: "--triangle 600,800,1004" },
  sides: { value: true, sample: "--sides 8" },
  kind: { value: true, sample: "--kind outside" },
};

export function readCorner(command: Command, unit: LengthUnit): Outcome<Corner> {
  const { given } = command;
  const twice = saidTwice(given, ["corner", "triangle", "sides"]);
  if (twice !== null) return twice;
  const kind = readChoice(given, "kind", ["inside", "outside"]);
  if (!kind.ok) return kind;
  const triangle = given.values.get("triangle");
  if (triangle !== undefined) {
    const sides = readThreeLengths(triangle, unit);
    if (!sides.ok) return sides;
    const [alongFirstMm, alongSecondMm, acrossMm] = sides.value;
    return cornerFromTriangle({ alongFirstMm, alongSecondMm, acrossMm }, kind.value ?? "inside");
  }
  const sides = readCount(given, "sides");
  if (!sides.ok) return sides;
  if (sides.value !== undefined) {
    const polygon = polygonMitre(sides.value);
    if (!polygon.ok) return polygon;
    return cornerFromAngle(polygon.value.cornerDeg, kind.value ?? "outside");
  }
  const cornerDeg = readAngle(given, "corner");
  if (!cornerDeg.ok) return cornerDeg;
  if (cornerDeg.value === undefined) return missing("corner", "90");
  return cornerFromAngle(cornerDeg.value, kind.value);
}

function readThreeLengths(typed: string, unit: LengthUnit): Outcome<readonly [number, number, number]> {
  const sides = typed.split(/[,;]/);
  const lengths = sides.map((side) => parseLength(side, { unit, where: "--triangle" }));
  const wrong = lengths.find((one) => !one.ok);
  if (sides.length !== 3) {
    return wrongValue(
      "triangle",
      typed,
      "three lengths with commas between: along one wall, along the other, across",
    );
  }
  if (wrong !== undefined && !wrong.ok) return wrong;
  const [a, b, c] = lengths.map((one) => (one.ok ? one.value.mm : 0));
  return fine([a ?? 0, b ?? 0, c ?? 0]);
}

/** How well a corner is known that was measured by three lengths. */
export function cornerSaid({ degPerMm }: Corner, write: Figures, unit: LengthUnit): readonly string[] {
  if (degPerMm === null) return [];
  const outMm = unit === "mm" ? 1 : INCH_MM / 32;
  return [
    `Measured by three lengths: if the length across is ${write.length(outMm)} out, the corner is ${(degPerMm * outMm).toFixed(2)}° out. Longer legs tell it better.`,
  ];
}
