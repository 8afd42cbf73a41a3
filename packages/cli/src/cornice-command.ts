import { type CorniceJob, corniceQuestionOf, readCorniceJob, type SectionSizes } from "mouldwright/job";
import {
  type Cornice,
  type CornicePiece,
  type CorniceQuestion,
  cornice,
  corniceRun,
  corniceScribes,
  faceProfile,
  type PieceEnd,
  type Placing,
  type Scribe,
  type ScribedEnds,
  type SharedOut,
  shareOut,
} from "mouldwright/making";
import { cataloguedTrouble, fine, type Outcome, refused, sayTrouble } from "mouldwright/measure";
import type { Section } from "mouldwright/section";
import { drawCornice, drawRod, drawScribes, writeSvg } from "mouldwright/sheets";
import type { OptionKinds } from "./arguments.ts";
import { type Command, note, refuse, troublesOfRefusal } from "./command.ts";
import { deliver, FIT_OPTIONS, type Figures, figuresFor, type MoreFile } from "./fit-answer.ts";
import { readSectionInput } from "./input.ts";
import { lengthsLines, lengthsNumbers } from "./lengths-text.ts";
import { cutWords } from "./mitre-command.ts";
import { onlyName } from "./names.ts";
import { MOST_INPUT_BYTES, readTextFile } from "./read-file.ts";
import { PLACING_OPTIONS, readPlacing } from "./section-placing.ts";

export const CORNICE_OPTIONS: OptionKinds = {
  section: { value: true, sample: "--section cornice.json" },
  scribe: { value: true, sample: "--scribe scribe.svg" },
  rod: { value: true, sample: "--rod rod.svg" },
  ...PLACING_OPTIONS,
  ...FIT_OPTIONS,
};

export interface Hung {
  readonly section: Section;
  readonly placing: Placing;
  readonly sizes: SectionSizes;
}

/** `mouldwright cornice JOB.json`: the pieces of a run, their joints and lengths, and what is cut and fitted first. */
export async function corniceCommand(command: Command): Promise<number> {
  const { given } = command;
  const path = onlyName(given, "a cornice file");
  if (!path.ok) return refuse(command, { file: "", troubles: [path.trouble] });
  const refusal = (outcome: Outcome<unknown> & { readonly ok: false }): number =>
    refuse(command, { file: path.value, troubles: troublesOfRefusal(outcome) });
  const text = await readTextFile(path.value, MOST_INPUT_BYTES);
  if (!text.ok) return refusal(text);
  const job = readCorniceJob(text.value);
  if (!job.ok) return refusal(job);
  const unit = command.askedUnit ?? job.value.unit;
  const sectionPath = given.values.get("section");
  const hung = sectionPath === undefined ? null : await readHung(command, sectionPath);
  if (typeof hung === "number") return hung;
  const question = corniceQuestionOf(job.value, hung?.sizes ?? null);
  if (!question.ok) return refusal(question);
  const answer = cornice(question.value);
  if (!answer.ok) return refusal(answer);
  const scribed = scribesOf(answer.value, hung, question.value);
  if (!scribed.ok) return refusal(scribed);
  const shared = sharedOut(job.value, answer.value);
  if (!shared.ok) return refusal(shared);
  const more = moreFiles(command, {
    job: job.value,
    scribes: scribed.value,
    shared: shared.value,
    scribing: hung?.sizes.scribing,
    unit,
  });
  if (!more.ok) return refuse(command, { file: "", troubles: troublesOfRefusal(more) });
  const write = figuresFor(unit);
  return deliver(command, {
    unit,
    file: path.value,
    numbers: {
      name: job.value.name,
      ...corniceNumbers(answer.value, question.value),
      scribes: scribed.value.map(scribeNumbers),
      lengths: shared.value === null ? null : lengthsNumbers(shared.value),
    },
    lines: [
      ...corniceLines(answer.value, question.value, write),
      ...scribeLines(scribed.value, hung !== null, answer.value, write),
      ...(shared.value === null ? [] : [...lengthsLines(shared.value, write), ""]),
    ],
    warnings: [...job.warnings, ...answer.warnings, ...scribed.warnings],
    assumed: [
      ...answer.value.assumed,
      ...(scribed.value[0]?.scribe.assumed ?? []),
      ...(shared.value?.assumed ?? []),
    ],
    cautions: answer.value.cautions,
    drawing: () =>
      drawCornice(
        answer.value,
        { name: job.value.name, projectionMm: question.value.projectionMm, scribes: scribed.value },
        { unit },
      ),
    more: more.value,
    inputs: [path.value, ...(sectionPath === undefined ? [] : [sectionPath])],
  });
}

/** The section as it hangs, with the sizes that the cornice takes from it; an exit code where it cannot be used. */
async function readHung(command: Command, path: string): Promise<Hung | number> {
  const input = await readSectionInput(path, {});
  if (!input.ok) return refuse(command, input);
  const { section } = input.value;
  note(command, path, input.warnings, command.askedUnit ?? "mm");
  const hung = hungOf(command, section);
  if (hung.ok) return hung.value;
  const isOfFace = hung.trouble.code === "scribe-no-face";
  return refuse(command, { file: isOfFace ? path : "", troubles: troublesOfRefusal(hung) });
}

/** A section as it hangs, by its own bevels or as the options say. Trouble: `scribe-no-face`, or a wrong option. */
export function hungOf(command: Command, section: Section): Outcome<Hung> {
  const found = readPlacing(command, section);
  if (!found.ok) return found;
  const { placing } = found.value;
  const face = faceProfile(section, placing);
  if (face === null) return refused(cataloguedTrouble("scribe-no-face", "section", {}));
  return fine({
    section,
    placing,
    sizes: {
      springFromWallDeg: placing.springFromWallDeg,
      projectionMm: face.projectionMm,
      heightMm: face.heightMm,
      scribing: face.hiddenAtMm.length === 0 ? "possible" : "impossible",
    },
  });
}

/** The outlines of the ends that are scribed; none where no section is given. */
export function scribesOf(
  answer: Cornice,
  hung: Hung | null,
  { spring }: CorniceQuestion,
): Outcome<readonly ScribedEnds[]> {
  if (hung === null) return fine([]);
  const placing = { ...hung.placing, springFromWallDeg: spring.fromWallDeg };
  return corniceScribes(answer, hung.section, placing);
}

/** The pieces along the sticks of the file, in their order round the room; null where it names none. */
export function sharedOut(job: CorniceJob, answer: Cornice): Outcome<SharedOut | null> {
  if (job.sticks === null) return fine(null);
  return shareOut({
    runs: [corniceRun(answer)],
    sticks: job.sticks,
    ...(job.allowances === null ? {} : { allowances: job.allowances }),
  });
}

function moreFiles(
  { given }: Command,
  made: {
    readonly job: CorniceJob;
    readonly scribes: readonly ScribedEnds[];
    readonly shared: SharedOut | null;
    readonly scribing: SectionSizes["scribing"] | undefined;
    readonly unit: "mm" | "in";
  },
): Outcome<readonly MoreFile[]> {
  const { job, unit } = made;
  const files: MoreFile[] = [];
  const scribePath = given.values.get("scribe");
  if (scribePath !== undefined) {
    if (made.scribes.length === 0)
      return cannot(
        "scribe",
        scribePath,
        made.scribing === "impossible"
          ? "it with a section whose face does not curl in under itself"
          : "it with --section and a run that has a scribed corner",
      );
    const text = writeSvg(drawScribes(made.scribes, job.name, { unit }));
    files.push({ path: scribePath, text, holds: "The scribe stands at full size", folder: "there" });
  }
  const rodPath = given.values.get("rod");
  if (rodPath !== undefined) {
    if (made.shared === null) return cannot("rod", rodPath, "it with a file that names the sticks at hand");
    files.push({
      path: rodPath,
      text: writeSvg(drawRod(made.shared, job.name, { unit })),
      holds: "The rod stands",
      folder: "there",
    });
  }
  return fine(files);
}

function cannot(option: string, value: string, wanted: string): ReturnType<typeof refused> {
  return refused(cataloguedTrouble("option-value-wrong", "", { option: `--${option}`, value, wanted }));
}

function corniceNumbers(answer: Cornice, { spring, projectionMm, heightMm }: CorniceQuestion) {
  const { pieces, fittingOrder, run, closingGapMm, convention } = answer;
  return {
    springFromWallDeg: spring.fromWallDeg,
    springFromCeilingDeg: spring.fromCeilingDeg,
    projectionMm,
    heightMm,
    pieces: pieces.map(({ why: _, ...piece }) => piece),
    fittingOrder,
    run,
    closingGapMm,
    convention,
  };
}

function scribeNumbers({ scribe: answer, end, pieces }: ScribedEnds): Readonly<Record<string, unknown>> {
  const pairs = (points: Scribe["faceLine"]) => points.map(({ x, y }) => [x, y]);
  return {
    pieces,
    end,
    cornerDeg: answer.corner.cornerDeg,
    mitreFirst: answer.mitreFirst,
    sawLeanDeg: answer.sawLeanDeg,
    isPossible: answer.isPossible,
    faceLineMm: pairs(answer.faceLine),
    wallLineMm: pairs(answer.wallLine),
    laidFlatLineMm: pairs(answer.laidFlatLine),
    convention: answer.convention,
  };
}

function corniceLines(answer: Cornice, question: CorniceQuestion, write: Figures): readonly string[] {
  const { pieces, fittingOrder, closingGapMm } = answer;
  const { spring, projectionMm, heightMm } = question;
  return [
    `Walls from left to right as you face them; left and right of a piece likewise. The back springs ${write.sawDeg(spring.fromWallDeg)} from the wall, ${write.sawDeg(spring.fromCeilingDeg)} from the ceiling; the moulding comes out ${write.length(projectionMm)} and is ${write.length(heightMm)} high. Back is the length along the wall, front the length at the full projection.`,
    "",
    ...pieces.flatMap((piece) => pieceLines(piece, write)),
    "",
    `Put up in this order: ${fittingOrder.join(", ")}.`,
    ...(closingGapMm === null ? [] : [`The run closes to within ${write.length(closingGapMm)}.`]),
    "",
  ];
}

function pieceLines(piece: CornicePiece, write: Figures): readonly string[] {
  const name =
    piece.kind === "return" ? `Piece ${piece.number}, a return` : `Piece ${piece.number}, wall ${piece.wall}`;
  const why = sayTrouble(piece.why, { unit: "mm" });
  return [
    `${name}: back ${write.length(piece.backMm)}, front ${write.length(piece.frontMm)}, long points ${write.length(piece.longMm)}.`,
    `  left   ${endWords(piece.left, write)}`,
    `  right  ${endWords(piece.right, write)}`,
    `  ${why.sentence} ${why.hint}`,
  ];
}

function endWords(end: PieceEnd, write: Figures): string {
  if (end.joint === "square") return "square cut";
  if (end.joint === "against a wall") return "square cut, against a wall";
  const cut = `mitre ${write.sawDeg(end.laidFlat.mitreDeg)}, bevel ${write.sawDeg(end.laidFlat.bevelDeg)}; laid flat: ${cutWords(end.laidFlat)}`;
  const corner =
    end.corner === null ? "" : ` at the ${end.corner.kind} corner of ${write.sawDeg(end.corner.cornerDeg)}`;
  switch (end.joint) {
    case "scribed":
      return `scribed${corner}: saw first ${cut}`;
    case "butt":
      return `butts into the corner${corner}: ${cut}`;
    default:
      return `${end.joint}${corner}: ${cut}`;
  }
}

function scribeLines(
  scribes: readonly ScribedEnds[],
  hasSection: boolean,
  { pieces }: Cornice,
  write: Figures,
): readonly string[] {
  if (!hasSection) {
    const hasScribes = pieces.some(
      ({ left, right }) => left.joint === "scribed" || right.joint === "scribed",
    );
    return hasScribes
      ? ["Scribes: with --section FILE their outlines are reckoned, and --scribe FILE.svg draws them.", ""]
      : [];
  }
  if (scribes.length === 0) return [];
  return [
    ...scribes.map((one) => scribeWords(one, write)),
    "--scribe FILE.svg draws each outline at full size.",
    "",
  ];
}

function scribeWords({ scribe: answer, end, pieces }: ScribedEnds, write: Figures): string {
  const lean =
    answer.sawLeanDeg === 0
      ? "saw square to the wall"
      : `lean the coping saw ${write.sawDeg(Math.abs(answer.sawLeanDeg))} from square to the wall, ${answer.sawLeanDeg > 0 ? "taking more off the back than off the face" : "taking less off the back than off the face"}`;
  return `Scribe, ${end} end of ${pieces.length === 1 ? "piece" : "pieces"} ${write.list(pieces.map(String))}, inside corner of ${write.sawDeg(answer.corner.cornerDeg)}: saw mitre ${write.sawDeg(answer.mitreFirst.mitreDeg)}, bevel ${write.sawDeg(answer.mitreFirst.bevelDeg)}, follow its arris on the face, and ${lean}.`;
}
