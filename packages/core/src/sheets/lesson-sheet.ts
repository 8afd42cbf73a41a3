/** A student's version of the plan: the section with its parts named, the idea of each cut, questions, blanks. */
import type { Plan, PlanCut, PlanPart } from "../cutting/index.ts";
import { type BrokenStick, brokenStick } from "./broken-stick.ts";
import { leanSpan, planeName, titleOf } from "./cut-facts.ts";
import { lengthWords, type PictureOptions } from "./cut-marks.ts";
import { circlePath, group, type Item, openPath, stroke, text } from "./drawing.ts";
import { type Block, flow, heading, paragraph, TEXT_MM, table } from "./flow.ts";
import { askedAgain, ideaOf, partMeaning, questionsOn } from "./lesson-words.ts";
import { printable } from "./printable-text.ts";
import { sectionBlock } from "./section-block.ts";
import { type PageContent, pageBody, type SheetPaper } from "./sheet-frame.ts";
import { LOOKS_UPRIGHT_MM, scaleFor, turnedBox } from "./stick-view.ts";
import { smallScene } from "./strip.ts";
import { wrapText } from "./text-width.ts";

const MOST_SECTION_MM = 110;
const PICTURE_MM = { wide: 62, high: 37 } as const;
const SMALL_ROOM = {
  widthMm: PICTURE_MM.wide - 12,
  flatMm: PICTURE_MM.high - 21,
  turnedMm: PICTURE_MM.high - 14,
} as const;
const BLANK_LINE_MM = 9;
const MOST_BLANKS = 11;

/** The handout, as many pages as it needs. */
export function lessonPages(
  plan: Plan,
  sheetPaper: SheetPaper,
  options: PictureOptions,
): readonly PageContent[] {
  const body = pageBody(sheetPaper, false);
  const widthMm = body.maxX - body.minX;
  const blocks: readonly Block[] = [
    nameBlock(widthMm),
    sectionBlock(plan, { widthMm, mostMm: MOST_SECTION_MM, belowMm: 2, aboveMm: 2 }, options),
    ...partBlocks(plan, widthMm),
    ...(plan.cuts.length === 0 ? [] : [heading("The idea of each cut")]),
    ...ideaBlocks(plan, widthMm, options),
    heading("To answer at the bench"),
    ...questionsOn(plan).flatMap((question, index) => [
      paragraph(question, widthMm, { lead: `${index + 1}`, indentMm: 7, keepsNext: true }),
      blankLines(2, widthMm),
    ]),
    ...measureBlocks(plan, widthMm, options),
  ];
  return flow(blocks, body).map((items) => ({ sheet: "lesson", title: "Lesson", isFullSize: false, items }));
}

function nameBlock(widthMm: number): Block {
  return {
    heightMm: 9,
    draw: (left, top) => [
      text([left, top + TEXT_MM], "Name", { sizeMm: TEXT_MM }),
      stroke(
        openPath([
          [left + 13, top + TEXT_MM + 1],
          [left + widthMm * 0.6, top + TEXT_MM + 1],
        ]),
      ),
      text([left + widthMm * 0.64, top + TEXT_MM], "Date", { sizeMm: TEXT_MM }),
      stroke(
        openPath([
          [left + widthMm * 0.64 + 11, top + TEXT_MM + 1],
          [left + widthMm, top + TEXT_MM + 1],
        ]),
      ),
    ],
  };
}

/** Every part by its name here, once: what the word means, the cuts that make it. */
function partBlocks(plan: Plan, widthMm: number): readonly Block[] {
  const nameOf = (part: PlanPart): string => printable(part.name).trim() || part.kind;
  const names = [...new Set(plan.parts.map(nameOf))];
  const rows = names.map((name) => {
    const alike = plan.parts.filter((part) => nameOf(part) === name);
    const cuts = [...new Set(alike.flatMap((part) => part.madeBy))].sort((a, b) => a - b);
    const kinds = alike.map((part) => part.kind);
    return [name, partMeaning(name, kinds), cuts.length === 0 ? "–" : cuts.join(", ")];
  });
  if (rows.length === 0) return [];
  const columns = [
    { heading: "Part", share: 26 },
    { heading: "What it is", share: 54 },
    { heading: "Made by cuts", share: 20 },
  ];
  return [heading("Its parts"), ...table(columns, rows, widthMm)];
}

function ideaBlocks(plan: Plan, widthMm: number, options: PictureOptions): readonly Block[] {
  const broken = brokenStick(plan, SMALL_ROOM);
  const told = new Set<string>();
  return plan.cuts.map((cut, index): Block => {
    // Drawn from the stick as it is drawn, which may be broken off.
    const drawn = broken.plan.cuts[index] ?? cut;
    const left = PICTURE_MM.wide + 6;
    const idea = ideaOf(cut);
    // What was told once is for the student to tell the second time.
    const isAsked = told.has(idea);
    told.add(idea);
    const words = wrapText(isAsked ? askedAgain(idea) : idea, TEXT_MM, widthMm - left);
    const head = `${titleOf(cut, options.unit)}: ${planeName(cut)}, ${leanSpan(cut)}`;
    const headLines = wrapText(head, TEXT_MM, widthMm - left - 10, "bold");
    const textMm = (headLines.length + words.length) * TEXT_MM * 1.34 + 2;
    return {
      heightMm: Math.max(PICTURE_MM.high, textMm),
      aboveMm: 3,
      draw: (x, y) => [
        group("picture", [small(broken, drawn)], [x, y]),
        group("number", [
          stroke(circlePath([x + left + 3.6, y + 3.4], 3.5), { weight: "gauge" }),
          text([x + left + 3.6, y + 4.8], String(cut.number), {
            sizeMm: TEXT_MM,
            anchor: "middle",
            bold: true,
          }),
        ]),
        ...headLines.map((line, row) =>
          text([x + left + 10, y + TEXT_MM + 0.6 + row * TEXT_MM * 1.34], line, {
            sizeMm: TEXT_MM,
            bold: true,
          }),
        ),
        ...words.map((line, row) =>
          text([x + left, y + (headLines.length + row) * TEXT_MM * 1.34 + TEXT_MM + 2], line, {
            sizeMm: TEXT_MM,
          }),
        ),
        ...(isAsked
          ? [group("blank", blankLines(2, widthMm - left + 7).draw(x + left - 7, y + textMm))]
          : []),
      ],
    };
  });
}

/** The cut in a small picture, as large as its place allows. */
function small(broken: BrokenStick, cut: PlanCut): Item {
  const { plan } = broken;
  const scaleRatio = scaleFor(plan, cut.cant, SMALL_ROOM);
  const box = turnedBox(plan.stick, cut.cant);
  const spareMm = PICTURE_MM.high - 20 - (box.maxY - box.minY) * scaleRatio;
  return smallScene(broken, cut, {
    cardMm: PICTURE_MM.wide,
    lineY: PICTURE_MM.high - 3 - Math.max(0, spareMm / 2),
    scaleRatio,
  });
}

function blankLines(count: number, widthMm: number): Block {
  return {
    heightMm: count * BLANK_LINE_MM,
    draw: (left, top) =>
      Array.from({ length: count }, (_, index) =>
        stroke(
          openPath([
            [left + 7, top + (index + 1) * BLANK_LINE_MM - 1],
            [left + widthMm, top + (index + 1) * BLANK_LINE_MM - 1],
          ]),
          { weight: "hatch" },
        ),
      ),
  };
}

/** What the plan says beside what came out: lines and depths, then the soles that made the curves. */
function measureBlocks(plan: Plan, widthMm: number, options: PictureOptions): readonly Block[] {
  const rows = plan.marks.slice(0, MOST_BLANKS).map((mark) => {
    const what = mark.kind === "depth" ? "depth line" : mark.kind === "end" ? "end line" : "line";
    const from = printable(mark.from);
    const wanted =
      mark.distance < LOOKS_UPRIGHT_MM
        ? `at the ${from}`
        : `${lengthWords(mark.distance, options)} from the ${from}`;
    return [`${what} before cut ${mark.before}`, wanted, "", ""];
  });
  if (rows.length === 0) return [];
  const columns = [
    { heading: "What", share: 28 },
    { heading: "The plan says", share: 34 },
    { heading: "Measured", share: 19 },
    { heading: "Out by", share: 19 },
  ];
  return [
    heading("Measure, and write down what came out"),
    ...table(columns, rows, widthMm),
    paragraph(
      "A good hand keeps a gauge line to 0.1 mm, a plane sideways to 0.2 mm and a depth to 0.15 mm, 95 times in 100. Which of yours were further out, and what did they do to the joins?",
      widthMm,
      { keepsNext: true },
    ),
    blankLines(3, widthMm),
  ];
}
