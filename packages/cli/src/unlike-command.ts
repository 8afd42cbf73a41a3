import {
  faceProfile,
  risingFace,
  type Spring,
  springFrom,
  type UnlikeMitre,
  type UnlikeMoulding,
  unlikeMitre,
} from "mouldwright/making";
import { cataloguedTrouble, fine, type LengthUnit, type Outcome, type Trouble } from "mouldwright/measure";
import { drawUnlike } from "mouldwright/sheets";
import { type OptionKinds, readChoice, readSize } from "./arguments.ts";
import { type Command, refuse, troublesOfRefusal } from "./command.ts";
import { CORNER_OPTIONS, cornerSaid, readCorner } from "./corner-options.ts";
import { deliver, FIT_OPTIONS, type Figures, figuresFor } from "./fit-answer.ts";
import { firstRefusal, missing, nameTooMany, readAngle } from "./fit-options.ts";
import { notRead, type Read, readSectionInput } from "./input.ts";
import { cutWords } from "./mitre-command.ts";
import { readPlacing } from "./section-placing.ts";

export const UNLIKE_OPTIONS: OptionKinds = {
  first: { value: true, sample: "--first 54x50" },
  second: { value: true, sample: "--second 30x50" },
  spring: { value: true, sample: "--spring 38" },
  "second-spring": { value: true, sample: "--second-spring 45" },
  from: { value: true, sample: "--from ceiling" },
  wall: { value: true, sample: "--wall far" },
  leans: { value: true, sample: "--leans right" },
  ...CORNER_OPTIONS,
  ...FIT_OPTIONS,
};

interface ReadMoulding {
  readonly moulding: UnlikeMoulding;
  readonly file: string | null;
}

/** `mouldwright unlike --first cornice.json --second 30x50 --corner 90`: two unlike mouldings that meet. */
export async function unlikeCommand(command: Command): Promise<number> {
  const { given } = command;
  const unit = command.askedUnit ?? "mm";
  const leans = readChoice(given, "leans", ["left", "right"]);
  const corner = readCorner(command, unit);
  const wrong = nameTooMany(given) ?? firstRefusal([leans, corner]);
  if (wrong !== null) return refuse(command, { file: "", troubles: troublesOfRefusal(wrong) });
  if (!leans.ok || !corner.ok) return refuse(command, { file: "", troubles: [] });
  const first = await readMoulding(command, "first", unit);
  if (!first.ok) return refuse(command, first);
  const second = await readMoulding(command, "second", unit);
  if (!second.ok) return refuse(command, second);
  const mouldings = { first: first.value.moulding, second: second.value.moulding };
  const answer = unlikeMitre({ corner: corner.value, ...mouldings, bladeLeans: leans.value });
  if (!answer.ok) return refuse(command, { file: "", troubles: troublesOfRefusal(answer) });
  const inputs = [first.value.file, second.value.file].flatMap((file) => (file === null ? [] : [file]));
  return deliver(command, {
    unit,
    file: "",
    numbers: unlikeNumbers(answer.value, mouldings),
    lines: unlikeLines(answer.value, mouldings, figuresFor(unit), unit),
    warnings: [...corner.warnings, ...first.warnings, ...second.warnings, ...answer.warnings],
    assumed: answer.value.assumed,
    cautions: answer.value.cautions,
    drawing: () =>
      drawUnlike(
        answer.value,
        { firstMm: mouldings.first.projectionMm, secondMm: mouldings.second.projectionMm },
        { unit },
      ),
    inputs,
  });
}

/** One of the two: a section's file, or projection x height with its spring. */
async function readMoulding(
  command: Command,
  which: "first" | "second",
  unit: LengthUnit,
): Promise<Read<ReadMoulding>> {
  const typed = command.given.values.get(which);
  if (typed === undefined) return notRead("", missing(which, which === "first" ? "54x50" : "30x50"));
  if (/\.(svg|dxf|json)$/i.test(typed.trim())) return readFromFile(command, which, typed);
  const size = readSize(which, typed, unit);
  if (!size.ok) return notRead("", size);
  const spring = readSpring(command, which);
  if (!spring.ok) return notRead("", spring);
  if (spring.value === null) return notRead("", missing("spring", "38"));
  const moulding = {
    projectionMm: size.value.widthMm,
    heightMm: size.value.thicknessMm,
    spring: spring.value,
  };
  return { ok: true, value: { moulding, file: null }, warnings: [] };
}

async function readFromFile(
  command: Command,
  which: "first" | "second",
  path: string,
): Promise<Read<ReadMoulding>> {
  const input = await readSectionInput(path, {});
  if (!input.ok) return input;
  const found = readPlacing(command, input.value.section);
  if (!found.ok) return notRead("", found);
  const own = which === "second" ? readSpring(command, "second") : fine(null);
  if (!own.ok) return notRead("", own);
  const isOwn = own.value !== null && command.given.values.has("second-spring");
  const placing = isOwn
    ? { ...found.value.placing, springFromWallDeg: own.value?.fromWallDeg ?? 0 }
    : found.value.placing;
  const spring = springFrom("wall", placing.springFromWallDeg);
  if (!spring.ok) return notRead(path, spring);
  const face = faceProfile(input.value.section, placing);
  if (face === null) {
    const trouble: Trouble = cataloguedTrouble("scribe-no-face", "section", {});
    return { ok: false, file: path, troubles: [trouble] };
  }
  const { projectionMm, heightMm, hiddenAtMm } = face;
  const moulding = { projectionMm, heightMm, spring: spring.value, face: risingFace(face) };
  const [hiddenMm] = hiddenAtMm;
  const bridged =
    hiddenMm === undefined
      ? []
      : [cataloguedTrouble("unlike-bridged", which, { moulding: which, heightMm: hiddenMm })];
  return { ok: true, value: { moulding, file: path }, warnings: [...input.warnings, ...bridged] };
}

/** The spring that was asked for; null where none was. The second's own goes before the common one. */
function readSpring({ given }: Command, which: "first" | "second"): Outcome<Spring | null> {
  const from = readChoice(given, "from", ["wall", "ceiling"]);
  if (!from.ok) return from;
  const option = which === "second" && given.values.has("second-spring") ? "second-spring" : "spring";
  const asked = readAngle(given, option);
  if (!asked.ok) return asked;
  return asked.value === undefined ? fine(null) : springFrom(from.value ?? "wall", asked.value);
}

type Both = Readonly<Record<"first" | "second", UnlikeMoulding>>;

function unlikeNumbers(answer: UnlikeMitre, { first, second }: Both): Readonly<Record<string, unknown>> {
  const sizes = ({ projectionMm, heightMm, spring }: UnlikeMoulding) => ({
    projectionMm,
    heightMm,
    springFromWallDeg: spring.fromWallDeg,
    springFromCeilingDeg: spring.fromCeilingDeg,
  });
  return {
    cornerDeg: answer.corner.cornerDeg,
    cornerKind: answer.corner.kind,
    cornerDegPerMm: answer.corner.degPerMm,
    line: answer.line,
    fromFirstWallDeg: answer.fromFirstWallDeg,
    fromSecondWallDeg: answer.fromSecondWallDeg,
    mostOffChordMm: answer.mostOffChordMm,
    first: { ...sizes(first), ...answer.first },
    second: { ...sizes(second), ...answer.second },
    points: answer.points,
    convention: answer.convention,
  };
}

function unlikeLines(
  answer: UnlikeMitre,
  { first, second }: Both,
  write: Figures,
  unit: LengthUnit,
): readonly string[] {
  const { corner, line } = answer;
  const one = (name: string, { projectionMm, heightMm, spring }: UnlikeMoulding): string =>
    `  ${name}  comes out ${write.length(projectionMm)}, ${write.length(heightMm)} high, spring ${write.sawDeg(spring.fromWallDeg)} from the wall`;
  const cut = (name: string, said: UnlikeMitre["first"]): string =>
    `  ${name}  mitre ${write.sawDeg(said.mitreDeg)}, bevel ${write.sawDeg(said.bevelDeg)}; ${cutWords(said)}`;
  return [
    `First and second from left to right as you face the ${corner.kind} corner of ${write.sawDeg(corner.cornerDeg)}. Mitre is the saw's swing from a square cut, bevel the blade's lean from upright.`,
    ...cornerSaid(corner, write, unit),
    "",
    one("First ", first),
    one("Second", second),
    "",
    `The mitre leaves the first wall at ${write.sawDeg(answer.fromFirstWallDeg)} and the second at ${write.sawDeg(answer.fromSecondWallDeg)}, where ${write.sawDeg(corner.cornerDeg / 2)} would be half the corner.`,
    ...(line === "straight"
      ? []
      : [
          `It is not straight: it bends ${write.length(answer.mostOffChordMm)} off its chord, whose angles these are. Saw outside the chord, then pare to the points: the picture shows them, --json gives them all.`,
        ]),
    "Laid flat on its back, face up:",
    cut("First ", answer.first),
    cut("Second", answer.second),
    "",
  ];
}
