/** Pieces marked along sticks, in words and in numbers: for the lengths command and for a cornice with its sticks. */
import type { MarkedStick, SharedOut } from "mouldwright/making";
import type { Figures } from "./fit-answer.ts";

export function lengthsNumbers(answer: SharedOut): Readonly<Record<string, unknown>> {
  const { sticks, spare, sticksUsed, neighbours, usedMm, wastedMm, allowances, convention } = answer;
  return {
    pieces: sticks.flatMap((stick) => stick.pieces.map((piece) => ({ stick: stick.name, ...piece }))),
    sticks,
    spare,
    sticksUsed: sticksUsed.count,
    sticksNeededAtLeast: sticksUsed.atLeast,
    sticksStanding: sticksUsed.standing,
    neighbours,
    usedMm,
    wastedMm,
    allowances,
    convention,
  };
}

export function lengthsLines(answer: SharedOut, write: Figures): readonly string[] {
  const { sticks, spare, sticksUsed, neighbours, usedMm, wastedMm } = answer;
  const fewest =
    sticksUsed.standing === "proven"
      ? "fewer cannot do"
      : `best found; at least ${sticksUsed.atLeast} are needed`;
  const meetings =
    neighbours.meetings === 0
      ? []
      : [
          `${neighbours.together} of ${neighbours.meetings} meeting ends come from neighbouring wood${
            neighbours.standing === "proven" ? "" : `; at most ${neighbours.atMost} could`
          }.`,
        ];
  return [
    `${sticksUsed.count} ${sticksUsed.count === 1 ? "stick" : "sticks"} (${fewest}), ${write.length(usedMm)} in all, ${write.length(wastedMm)} of it lost to kerfs, trim, ends and offcuts.`,
    ...meetings,
    ...(spare.length === 0 ? [] : [`Whole sticks left: ${write.list(spare)}.`]),
    "",
    ...sticks.flatMap((stick) => stickLines(stick, write)),
  ];
}

function stickLines(stick: MarkedStick, write: Figures): readonly string[] {
  return [
    `${write.text(stick.name)}, ${write.length(stick.lengthMm)}:`,
    ...stick.pieces.map(
      (piece) =>
        `  ${write.text(piece.name)}, ${write.length(piece.toMm - piece.fromMm)}: saw off from ${write.length(piece.roughFromMm)} to ${write.length(piece.roughToMm)}${
          piece.follows === "its neighbour" ? "; meets the piece before it" : ""
        }`,
    ),
    ...(stick.offcuts.length === 0
      ? []
      : [`  Left over: ${write.list(stick.offcuts.map(({ fromMm, toMm }) => write.length(toMm - fromMm)))}`]),
  ];
}
