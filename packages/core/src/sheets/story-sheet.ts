/** The story stick: every distance of the job on two strips at full size, to be pricked off without a rule. */
import { extentsOf, ringFromVertices } from "../curve/index.ts";
import type { Plan } from "../cutting/index.ts";
import type { Outcome } from "../measure/index.ts";
import { lengthWords, type PictureOptions } from "./cut-marks.ts";
import {
  closedPath,
  group,
  type Item,
  openPath,
  type PaperPoint,
  stroke,
  type Text,
  text,
} from "./drawing.ts";
import { paragraph } from "./flow.ts";
import { type Figure, fullSizePages } from "./full-size.ts";
import { acrossFromGaugeMm } from "./gauge-edge.ts";
import { CENTRED_RATIO } from "./labels.ts";
import { GAUGE_LINE } from "./palette.ts";
import { printable } from "./printable-text.ts";
import { spread, turningPoints } from "./section-dimensions.ts";
import { type PageContent, pageBody, type SheetPaper } from "./sheet-frame.ts";
import { textWidthMm } from "./text-width.ts";

const STRIP_MM = 16;
const KNEE_MM = 7;
const SIZE_MM = 3.6;
const ROW_MM = 5;
const SIDE_MM = 10;
const ONE_PLACE_MM = 0.05;

/** A place on a strip: how far from its zero, and what it is. */
interface StoryPlace {
  readonly atMm: number;
  readonly words: string;
}

/** A strip across the face and one up from the back. Trouble: `sheet-too-large`. */
export function storyPages(
  plan: Plan,
  sheetPaper: SheetPaper,
  options: PictureOptions,
): Outcome<readonly PageContent[]> {
  const body = pageBody(sheetPaper, true);
  const note = paragraph(
    "Cut the strips out, glue them dry to a lath and keep it with the job. Zero lies on the gauge edge, or on the back; above the strip the section's own places, below it the lines to scribe.",
    body.maxX - body.minX,
    { sizeMm: SIZE_MM },
  );
  return fullSizePages(
    "story",
    "Story stick",
    [acrossFigure(plan, options), upFigure(plan, options)],
    sheetPaper,
    [note],
  );
}

function acrossFigure(plan: Plan, options: PictureOptions): Figure {
  const box = extentsOf(ringFromVertices(plan.stick));
  const section = turningPoints(plan.section).map(([x, y]): StoryPlace => {
    const atMm = acrossFromGaugeMm(plan, [x, y]);
    return { atMm, words: lengthWords(atMm, options) };
  });
  const lines = plan.marks
    .filter((mark) => mark.kind !== "depth")
    .map((mark) => ({
      atMm: mark.fromGaugeEdge,
      words: `${lengthWords(mark.fromGaugeEdge, options)} ${mark.kind === "end" ? "end line" : "line"}, cut ${mark.before}`,
    }));
  return strip("Across, from the gauge edge", box.maxX - box.minX, section, lines);
}

function upFigure(plan: Plan, options: PictureOptions): Figure {
  const box = extentsOf(ringFromVertices(plan.stick));
  const section = turningPoints(plan.section).map(([, y]): StoryPlace => {
    const atMm = y - box.minY;
    return { atMm, words: lengthWords(atMm, options) };
  });
  const lines = plan.marks
    .filter((mark) => mark.kind === "depth")
    .map((mark) => ({
      atMm: mark.at[1] - box.minY,
      words: `${lengthWords(mark.distance, options)} from the ${printable(mark.from)}, cut ${mark.before}`,
    }));
  return strip("Up, from the back", box.maxY - box.minY, section, lines);
}

/** Places nearer than a pencil line are one; their words are said together. */
function onePerPlace(places: readonly StoryPlace[], lengthMm: number): readonly StoryPlace[] {
  const sorted = [...places].sort((a, b) => a.atMm - b.atMm);
  const kept: StoryPlace[] = [];
  for (const place of sorted) {
    if (place.atMm < -ONE_PLACE_MM || place.atMm > lengthMm + ONE_PLACE_MM) continue;
    const last = kept[kept.length - 1];
    if (last === undefined || place.atMm - last.atMm >= ONE_PLACE_MM) {
      kept.push(place);
      continue;
    }
    const cut = /, (cut \d+)$/.exec(place.words)?.[1];
    if (cut !== undefined && !last.words.includes(cut)) {
      kept[kept.length - 1] = { ...last, words: `${last.words}, ${cut}` };
    }
  }
  return kept;
}

/** The strip with its zero on the left; words read upwards at both sides, reached by knees where they would crowd. */
function strip(
  heading: string,
  lengthMm: number,
  above: readonly StoryPlace[],
  below: readonly StoryPlace[],
): Figure {
  const section = onePerPlace(above, lengthMm);
  const lines = onePerPlace(below, lengthMm);
  const longest = (places: readonly StoryPlace[]): number =>
    Math.max(0, ...places.map(({ words }) => textWidthMm(words, SIZE_MM)));
  const aboveMm = section.length === 0 ? 2 : longest(section) + KNEE_MM + 3;
  const belowMm = lines.length === 0 ? 2 : longest(lines) + KNEE_MM + 3;
  const rowsOf = (places: readonly StoryPlace[]): readonly number[] =>
    spread(
      places.map(({ atMm }) => atMm),
      places.map(() => ROW_MM),
    );
  const rows = [rowsOf(section), rowsOf(lines)] as const;
  const leftMost = Math.min(0, ...rows.flat()) - ROW_MM / 2;
  const rightMost = Math.max(lengthMm, ...rows.flat()) + ROW_MM / 2;
  const zeroX = Math.max(SIDE_MM, -leftMost);
  const top = aboveMm;
  const bottom = aboveMm + STRIP_MM;
  return {
    heading,
    widthMm: zeroX + Math.max(lengthMm + SIDE_MM, rightMost),
    heightMm: bottom + belowMm,
    items: [
      group("story stick", [
        stroke(
          closedPath([
            [zeroX, top],
            [zeroX + lengthMm, top],
            [zeroX + lengthMm, bottom],
            [zeroX, bottom],
          ]),
          { weight: "wide" },
        ),
      ]),
      ...placesItems(section, rows[0], { zeroX, edgeY: top, away: -1 }),
      ...placesItems(lines, rows[1], { zeroX, edgeY: bottom, away: 1 }),
    ],
  };
}

interface StripSide {
  readonly zeroX: number;
  readonly edgeY: number;
  /** -1 above the strip, 1 below it. */
  readonly away: -1 | 1;
}

function placesItems(
  places: readonly StoryPlace[],
  rows: readonly number[],
  { zeroX, edgeY, away }: StripSide,
): readonly Item[] {
  const look = away === 1 ? { colour: GAUGE_LINE } : {};
  const inner = edgeY - away * (STRIP_MM / 2 - 0.6);
  const knees = places.map(({ atMm }, index) => {
    const row = zeroX + (rows[index] ?? atMm);
    const points: PaperPoint[] = [
      [zeroX + atMm, inner],
      [zeroX + atMm, edgeY + away * 1.5],
      [row, edgeY + away * (KNEE_MM - 1)],
      [row, edgeY + away * KNEE_MM],
    ];
    return stroke(openPath(points), look);
  });
  const words = places.map(({ words: said, atMm }, index): Text => {
    const row = zeroX + (rows[index] ?? atMm);
    return {
      ...text([row + CENTRED_RATIO * SIZE_MM, edgeY + away * (KNEE_MM + 1)], said, {
        sizeMm: SIZE_MM,
        // Words read upwards: above the strip they begin at it, below it they end there.
        anchor: away === -1 ? "start" : "end",
      }),
      turnDeg: 90,
    };
  });
  return [group(away === -1 ? "places" : "lines", knees), ...words];
}
