/** One cut on the bench card: heading, sentence, picture, the sign that it is done, a box to tick. */
import type { Plan, PlanCut } from "../cutting/index.ts";
import { formatThickness } from "../measure/index.ts";
import { type BrokenStick, brokenStick } from "./broken-stick.ts";
import { minutesWords } from "./card-words.ts";
import { leanSpan, planeName, titleOf } from "./cut-facts.ts";
import type { PictureOptions } from "./cut-marks.ts";
import { cutScene, type SceneLayout } from "./cut-scene.ts";
import { circlePath, group, type Item, stroke, text } from "./drawing.ts";
import type { Box } from "./flat-path.ts";
import { LINE_RATIO, tickBox } from "./flow.ts";
import { printable } from "./printable-text.ts";
import { scaleFor } from "./stick-view.ts";
import { shortened, textWidthMm, wrapText, wrapTextTo } from "./text-width.ts";

const NUMBER_MM = 6.4;
const TITLE_MM = 6.2;
const HELD_MM = 5;
const SENTENCE_MM = 4.3;
const HEAD_MM = 15.5;
const NUMBER_ROOM_MM = 16;
const MOST_LINES = 5;
const TICK_MM = 5;
const DONE_ROOM_MM = 8;
const GAP_MM = 1.5;

/** How the blocks of a plan are laid out: the same on every page, so that turning it the eye sees only what changed. */
export interface BlockLook {
  /** Words above and below the picture, or all in a column beside it, whichever leaves the larger picture. */
  readonly words: "above" | "beside";
  /** Lines kept for the longest sentence of the plan, and for the longest sign that a cut is done. */
  readonly sentenceLines: number;
  readonly doneLines: number;
  /** The stick as it is drawn in all blocks. */
  readonly stick: BrokenStick;
}

/** Width of the column of words. */
const COLUMN_MM = 62;
const COLUMN_GAP_MM = 5;

/** The look that draws this plan's stick largest in blocks of a size. */
export function blockLook(plan: Plan, widthMm: number, heightMm: number): BlockLook {
  const block: Box = { minX: 0, minY: 0, maxX: widthMm, maxY: heightMm };
  const looks = (["above", "beside"] as const).map((words) => {
    const sentenceMm = words === "above" ? widthMm : COLUMN_MM;
    const needed = (sentences: readonly string[], roomMm: number): number =>
      Math.max(1, ...sentences.map((one) => wrapText(printable(one).trim(), SENTENCE_MM, roomMm).length));
    const doneLines = Math.min(
      MOST_LINES,
      needed(
        plan.cuts.map((cut) => cut.doneWhen),
        widthMm - DONE_ROOM_MM,
      ),
    );
    const neededLines = needed(
      plan.cuts.map((cut) => cut.says),
      sentenceMm,
    );
    // Beside the picture a sentence has the block's whole height, above it no more than leaves a picture.
    const mostLines =
      words === "above" ? MOST_LINES : Math.floor((heightMm - HEAD_MM - doneLines * LINE_MM) / LINE_MM);
    const lines: WordLines = { words, sentenceLines: Math.min(mostLines, neededLines), doneLines };
    const room = sceneLayout(placesOf(block, lines)).stickRoom;
    const stick = brokenStick(plan, room);
    const isWhole = words === "above" || neededLines <= mostLines;
    const scaleRatio = room.flatMm <= 0 || room.widthMm <= 0 || !isWhole ? 0 : scaleFor(stick.plan, 0, room);
    return { look: { ...lines, stick }, scaleRatio };
  });
  const [above, beside] = looks as [(typeof looks)[number], (typeof looks)[number]];
  return beside.scaleRatio > above.scaleRatio ? beside.look : above.look;
}

type WordLines = Omit<BlockLook, "stick">;

interface Places {
  readonly sentence: Box;
  readonly picture: Box;
  readonly doneTop: number;
  /** Where the round enlargement has to keep to, if the words leave it a place of its own. */
  readonly disc: Box | null;
}

const LINE_MM = SENTENCE_MM * LINE_RATIO;

function placesOf(box: Box, { words, sentenceLines, doneLines }: WordLines): Places {
  const top = box.minY + HEAD_MM;
  const doneTop = box.maxY - doneLines * LINE_MM;
  const sentenceBottom = top + sentenceLines * LINE_MM + GAP_MM;
  if (words === "above") {
    return {
      sentence: { ...box, minY: top, maxY: sentenceBottom },
      picture: { ...box, minY: sentenceBottom, maxY: doneTop - GAP_MM },
      doneTop,
      disc: null,
    };
  }
  const columnLeft = box.maxX - COLUMN_MM;
  return {
    sentence: { minX: columnLeft, minY: top, maxX: box.maxX, maxY: sentenceBottom },
    picture: { minX: box.minX, minY: top, maxX: box.maxX, maxY: doneTop - GAP_MM },
    doneTop,
    disc: { minX: columnLeft, minY: sentenceBottom, maxX: box.maxX, maxY: doneTop - GAP_MM },
  };
}

/** The cut in its box, which it fills. */
export function cutBlock(
  plan: Plan,
  cut: PlanCut,
  box: Box,
  look: BlockLook,
  options: PictureOptions,
): readonly Item[] {
  const places = placesOf(box, look);
  const { sentence, doneTop } = places;
  const says = wrapTextTo(
    look.sentenceLines,
    printable(cut.says).trim(),
    SENTENCE_MM,
    sentence.maxX - sentence.minX,
  );
  const done = wrapTextTo(
    look.doneLines,
    printable(cut.doneWhen).trim(),
    SENTENCE_MM,
    box.maxX - box.minX - DONE_ROOM_MM,
  );
  // Of a short sentence the enlargement has the room that is left below it.
  const wordsBottom = sentence.minY + says.length * LINE_MM + GAP_MM;
  const scene = cutScene(
    look.stick,
    cut.number,
    sceneLayout(places.disc === null ? places : { ...places, disc: { ...places.disc, minY: wordsBottom } }),
    options,
  );
  return [
    ...headItems(plan, cut, box, options),
    ...says.map((line, index) =>
      text([sentence.minX, sentence.minY + SENTENCE_MM + index * LINE_MM], line, { sizeMm: SENTENCE_MM }),
    ),
    group("picture", scene),
    tickBox(box.minX, doneTop + SENTENCE_MM + 0.4, TICK_MM),
    ...done.map((line, index) =>
      text([box.minX + DONE_ROOM_MM, doneTop + SENTENCE_MM + index * LINE_MM], line, {
        sizeMm: SENTENCE_MM,
      }),
    ),
  ];
}

function headItems(plan: Plan, cut: PlanCut, box: Box, options: PictureOptions): readonly Item[] {
  const left = box.minX;
  const right = box.maxX;
  const facts = [`${cut.number} of ${plan.cuts.length}`, workWords(cut, options)].map((words, index) =>
    text([right, box.minY + 5 + index * 7], words, {
      sizeMm: index === 0 ? SENTENCE_MM : HELD_MM - 0.6,
      anchor: "end",
    }),
  );
  const roomBeside = (index: number, sizeMm: number): number =>
    right - left - NUMBER_ROOM_MM - textWidthMm(facts[index]?.text ?? "", sizeMm) - 4;
  return [
    group("number", [
      stroke(circlePath([left + 6.2, box.minY + 6.4], 6), { weight: "wide" }),
      text([left + 6.2, box.minY + 8.7], String(cut.number), {
        sizeMm: NUMBER_MM,
        anchor: "middle",
        bold: true,
      }),
    ]),
    text(
      [left + NUMBER_ROOM_MM, box.minY + 5.4],
      shortened(titleOf(cut, options.unit), TITLE_MM, roomBeside(0, SENTENCE_MM), "bold"),
      { sizeMm: TITLE_MM, bold: true },
    ),
    text(
      [left + NUMBER_ROOM_MM, box.minY + 12.2],
      shortened(`${planeName(cut)}, ${leanSpan(cut)}`, HELD_MM, roomBeside(1, HELD_MM - 0.6)),
      { sizeMm: HELD_MM },
    ),
    ...facts,
  ];
}

/** "6 passes of 0.3 mm, about 4 minutes". */
function workWords(cut: PlanCut, { unit }: PictureOptions): string {
  const minutes = minutesWords(cut.minutes).replace(/[.]$/, "").replace(/^A/, "a");
  if (cut.line !== undefined || cut.passes < 1) return minutes;
  const shaving = cut.shaving > 0 ? ` of ${formatThickness(cut.shaving, { unit })}` : "";
  const passes = `${cut.passes} ${cut.passes === 1 ? "pass" : "passes"}${shaving}`;
  return minutes === "" ? passes : `${passes}, ${minutes}`;
}

/** Room below the bench line for two rows of gauge dimensions, beside the stick for upright ones, above it for a plane. */
const BELOW_BENCH_MM = 17;
const BESIDE_STICK_MM = 32;
const ABOVE_STICK_MM = 24;
const ABOVE_TURNED_MM = 14;
const MOST_DISC_MM = 27;
const LEAST_DISC_MM = 14;
const DISC_CAPTION_MM = 4;

/** The picture's layout: stick on the left, the round enlargement on the right, below the words if they stand there. */
function sceneLayout({ picture, disc }: Places): SceneLayout {
  const widthMm = picture.maxX - picture.minX;
  const discRoom = disc ?? picture;
  const radiusMm = Math.max(
    LEAST_DISC_MM,
    Math.min(
      MOST_DISC_MM,
      (disc === null ? widthMm * 0.25 : COLUMN_MM) / 2,
      (discRoom.maxY - discRoom.minY) / 2 - DISC_CAPTION_MM,
    ),
  );
  const sceneRight = disc === null ? picture.maxX - 2 * radiusMm - 8 : disc.minX - COLUMN_GAP_MM;
  const sceneMm = sceneRight - picture.minX;
  const lineY = picture.maxY - BELOW_BENCH_MM;
  return {
    // Labels keep to the scene where words stand beside it.
    picture: disc === null ? picture : { ...picture, maxX: sceneRight + COLUMN_GAP_MM / 2 },
    stickRoom: {
      widthMm: sceneMm - BESIDE_STICK_MM,
      flatMm: lineY - picture.minY - ABOVE_STICK_MM,
      turnedMm: lineY - picture.minY - ABOVE_TURNED_MM,
    },
    bench: {
      centreX: picture.minX + sceneMm / 2,
      lineY,
      fromX: picture.minX + 2,
      toX: sceneRight,
    },
    enlarged: [
      {
        centre: [
          picture.maxX - radiusMm - 1,
          disc === null ? picture.minY + radiusMm + 1 : disc.maxY - radiusMm - DISC_CAPTION_MM - 2,
        ],
        radiusMm,
      },
    ],
    uprights: { leftmostMm: picture.minX + 30, rightmostMm: sceneRight - 2 },
  };
}
