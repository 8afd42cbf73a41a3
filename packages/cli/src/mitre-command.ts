import {
  type Corner,
  cornerFromAngle,
  cornerFromTriangle,
  type Mitre,
  mitre,
  type SawCut,
  type Spring,
  springFrom,
  springFromLegs,
} from "mouldwright/making";
import { fine, type LengthUnit, type Outcome, parseLength } from "mouldwright/measure";
import { drawMitre } from "mouldwright/sheets";
import { type OptionKinds, readChoice, wrongValue } from "./arguments.ts";
import { type Command, refuse, troublesOfRefusal } from "./command.ts";
import { deliver, FIT_OPTIONS, type Figures, figuresFor } from "./fit-answer.ts";
import { firstRefusal, missing, nameTooMany, readAngle, readLengthIf, readSizeIf } from "./fit-options.ts";

export const MITRE_OPTIONS: OptionKinds = {
  spring: { value: true, sample: "--spring 38" },
  from: { value: true, sample: "--from ceiling" },
  legs: { value: true, sample: "--legs 40x52" },
  corner: { value: true, sample: "--corner 90" },
  triangle: { value: true, sample: "--triangle 600,800,1004" },
  kind: { value: true, sample: "--kind outside" },
  width: { value: true, sample: "--width 60" },
  leans: { value: true, sample: "--leans right" },
  ...FIT_OPTIONS,
};

/** `mouldwright mitre --spring 38 --corner 90`: saw settings, and how each piece lies on the saw. */
export async function mitreCommand(command: Command): Promise<number> {
  const { given } = command;
  const unit = command.askedUnit ?? "mm";
  const tooMany = nameTooMany(given);
  const kind = readChoice(given, "kind", ["inside", "outside"]);
  const leans = readChoice(given, "leans", ["left", "right"]);
  const width = readLengthIf(given, "width", unit);
  const spring = readSpring(command, unit);
  const corner = kind.ok ? readCorner(command, unit, kind.value) : kind;
  const wrong = firstRefusal([...(tooMany === null ? [] : [tooMany]), kind, leans, width, spring, corner]);
  if (wrong !== null) return refuse(command, { file: "", troubles: troublesOfRefusal(wrong) });
  if (!spring.ok || !corner.ok || !width.ok || !leans.ok) return refuse(command, { file: "", troubles: [] });
  const answer = mitre({
    spring: spring.value,
    corner: corner.value,
    widthMm: width.value,
    bladeLeans: leans.value,
  });
  if (!answer.ok) return refuse(command, { file: "", troubles: troublesOfRefusal(answer) });
  return deliver(command, {
    unit,
    file: "",
    numbers: mitreNumbers(answer.value),
    lines: mitreLines(answer.value, figuresFor(unit)),
    warnings: [...corner.warnings, ...answer.warnings],
    assumed: answer.value.assumed,
    cautions: answer.value.cautions,
    drawing: () => drawMitre(answer.value, { unit }),
  });
}

function readSpring(command: Command, unit: LengthUnit): Outcome<Spring> {
  const { given } = command;
  const from = readChoice(given, "from", ["wall", "ceiling"]);
  if (!from.ok) return from;
  const legs = readSizeIf(given, "legs", unit);
  if (!legs.ok) return legs;
  if (legs.value !== undefined) return springFromLegs(legs.value.widthMm, legs.value.thicknessMm);
  const springDeg = readAngle(given, "spring");
  if (!springDeg.ok) return springDeg;
  if (springDeg.value === undefined) return missing("spring", "38");
  return springFrom(from.value ?? "wall", springDeg.value);
}

function readCorner(
  command: Command,
  unit: LengthUnit,
  kind: "inside" | "outside" | undefined,
): Outcome<Corner> {
  const { given } = command;
  const triangle = given.values.get("triangle");
  if (triangle !== undefined) {
    const sides = readThreeLengths(triangle, unit);
    if (!sides.ok) return sides;
    const [alongFirstMm, alongSecondMm, acrossMm] = sides.value;
    return cornerFromTriangle({ alongFirstMm, alongSecondMm, acrossMm }, kind ?? "inside");
  }
  const cornerDeg = readAngle(given, "corner");
  if (!cornerDeg.ok) return cornerDeg;
  if (cornerDeg.value === undefined) return missing("corner", "90");
  return cornerFromAngle(cornerDeg.value, kind);
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

function mitreNumbers(answer: Mitre): Readonly<Record<string, unknown>> {
  const { spring, corner, laidFlat, heldAtSpring, convention } = answer;
  return {
    springFromWallDeg: spring.fromWallDeg,
    springFromCeilingDeg: spring.fromCeilingDeg,
    cornerDeg: corner.cornerDeg,
    cornerKind: corner.kind,
    cornerDegPerMm: corner.degPerMm,
    mitreDeg: laidFlat.mitreDeg,
    bevelDeg: laidFlat.bevelDeg,
    laidFlat,
    heldAtSpring,
    shootingBoard: answer.shootingBoard,
    convention,
  };
}

function mitreLines(answer: Mitre, write: Figures): readonly string[] {
  const { spring, corner, laidFlat, heldAtSpring, shootingBoard } = answer;
  const through = corner.kind === "outside" ? ", measured through the solid" : "";
  const sure =
    corner.degPerMm === null
      ? []
      : [
          `Measured by three lengths: if the length across is 1 mm out, the corner is ${corner.degPerMm.toFixed(2)}° out.`,
        ];
  return [
    `The spring is the angle between the flat back and the wall: ${write.sawDeg(spring.fromWallDeg)} from the wall, which is ${write.sawDeg(spring.fromCeilingDeg)} from the ceiling. The corner is ${corner.kind}, ${write.sawDeg(corner.cornerDeg)} between the walls${through}. Left and right as you face the corner. Mitre is the saw's swing from a square cut, bevel the blade's lean from upright.`,
    ...sure,
    "",
    `Laid flat on its back, face up: mitre ${write.sawDeg(laidFlat.mitreDeg)}, bevel ${write.sawDeg(laidFlat.bevelDeg)}.`,
    `  Left-hand piece   ${flatWords(laidFlat.leftPiece)}`,
    `  Right-hand piece  ${flatWords(laidFlat.rightPiece)}`,
    `Held at its spring, upside down, the wall's side against the fence: mitre ${write.sawDeg(heldAtSpring.mitreDeg)}, blade upright.`,
    `  Left-hand piece   ${heldWords(heldAtSpring.leftPiece)}`,
    `  Right-hand piece  ${heldWords(heldAtSpring.rightPiece)}`,
    `To trim on a shooting board: fence at ${write.sawDeg(shootingBoard.fenceDeg)} to the plane's run, bed tipped by ${write.sawDeg(shootingBoard.liftDeg)} so that the plane lies square.`,
    "Set to the nearest quarter of a degree; --json gives the exact angles.",
    "",
  ];
}

export function flatWords(cut: SawCut): string {
  const lean = cut.bladeLeans === "upright" ? "blade upright" : `blade leans ${cut.bladeLeans}`;
  return `${cut.edgeAtFence} at the fence, ${heldHandle(cut)}, ${lean}, keep the part on the ${cut.keep}`;
}

function heldWords(cut: SawCut): string {
  return `${heldHandle(cut)}, keep the part on the ${cut.keep}`;
}

function heldHandle({ turnHandleTo }: SawCut): string {
  return turnHandleTo === "neither" ? "handle straight" : `handle to the ${turnHandleTo}`;
}
