import { type Mitre, mitre, type SawCut, type Spring, springFrom, springFromLegs } from "mouldwright/making";
import type { LengthUnit, Outcome } from "mouldwright/measure";
import { drawMitre } from "mouldwright/sheets";
import { type OptionKinds, readChoice } from "./arguments.ts";
import { type Command, refuse, troublesOfRefusal } from "./command.ts";
import { CORNER_OPTIONS, cornerSaid, readCorner } from "./corner-options.ts";
import { deliver, FIT_OPTIONS, type Figures, figuresFor } from "./fit-answer.ts";
import {
  firstRefusal,
  missing,
  nameTooMany,
  readAngle,
  readLengthIf,
  readSizeIf,
  saidTwice,
} from "./fit-options.ts";

export const MITRE_OPTIONS: OptionKinds = {
  spring: { value: true, sample: "--spring 38" },
  from: { value: true, sample: "--from ceiling" },
  legs: { value: true, sample: "--legs 40x52" },
  ...CORNER_OPTIONS,
  width: { value: true, sample: "--width 60" },
  leans: { value: true, sample: "--leans right" },
  ...FIT_OPTIONS,
};

/** `mouldwright mitre --spring 38 --corner 90`: saw settings, and how each piece lies on the saw. */
export async function mitreCommand(command: Command): Promise<number> {
  const { given } = command;
  const unit = command.askedUnit ?? "mm";
  const tooMany = nameTooMany(given);
  const leans = readChoice(given, "leans", ["left", "right"]);
  const width = readLengthIf(given, "width", unit);
  const spring = readSpring(command, unit);
  const corner = readCorner(command, unit);
  const wrong = firstRefusal([...(tooMany === null ? [] : [tooMany]), leans, width, spring, corner]);
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
    lines: mitreLines(answer.value, figuresFor(unit), unit),
    warnings: [...corner.warnings, ...answer.warnings],
    assumed: answer.value.assumed,
    cautions: answer.value.cautions,
    drawing: () => drawMitre(answer.value, { unit }),
  });
}

function readSpring(command: Command, unit: LengthUnit): Outcome<Spring> {
  const { given } = command;
  const twice = saidTwice(given, ["spring", "legs"]);
  if (twice !== null) return twice;
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

function mitreLines(answer: Mitre, write: Figures, unit: LengthUnit): readonly string[] {
  const { spring, corner, laidFlat, heldAtSpring, shootingBoard } = answer;
  const through = corner.kind === "outside" ? ", measured through the solid" : "";
  return [
    `The spring is the angle between the flat back and the wall: ${write.sawDeg(spring.fromWallDeg)} from the wall, which is ${write.sawDeg(spring.fromCeilingDeg)} from the ceiling. The corner is ${corner.kind}, ${write.sawDeg(corner.cornerDeg)} between the walls${through}. Left and right as you face the corner. Mitre is the saw's swing from a square cut, bevel the blade's lean from upright.`,
    ...cornerSaid(corner, write, unit),
    "",
    `Laid flat on its back, face up: mitre ${write.sawDeg(laidFlat.mitreDeg)}, bevel ${write.sawDeg(laidFlat.bevelDeg)}.`,
    `  Left-hand piece   ${cutWords(laidFlat.leftPiece)}`,
    `  Right-hand piece  ${cutWords(laidFlat.rightPiece)}`,
    `Held at its spring, upside down, the wall's side against the fence: mitre ${write.sawDeg(heldAtSpring.mitreDeg)}, blade upright.`,
    `  Left-hand piece   ${heldWords(heldAtSpring.leftPiece)}`,
    `  Right-hand piece  ${heldWords(heldAtSpring.rightPiece)}`,
    `To trim on a shooting board: fence at ${write.sawDeg(shootingBoard.fenceDeg)} to the plane's run, bed tipped by ${write.sawDeg(shootingBoard.liftDeg)} so that the plane lies square.`,
    "Set to the nearest quarter of a degree; --json gives the exact angles.",
    "",
  ];
}

export function cutWords(cut: SawCut): string {
  const lean = cut.bladeLeans === "upright" ? "blade upright" : `blade leans ${cut.bladeLeans}`;
  return `${cut.edgeAtFence} at the fence, ${heldHandle(cut)}, ${lean}, keep the part on the ${cut.keep}`;
}

function heldWords(cut: SawCut): string {
  return `${heldHandle(cut)}, keep the part on the ${cut.keep}`;
}

function heldHandle({ turnHandleTo }: SawCut): string {
  return turnHandleTo === "neither" ? "handle straight" : `handle to the ${turnHandleTo}`;
}
