/** The card for the bench on paper: what to have and to know, then every cut with its picture, in order. */
import type { Plan, PlanMark } from "../cutting/index.ts";
import { writerFor } from "../measure/index.ts";
import {
  bandWords,
  cautions,
  errorWriter,
  finishWords,
  type Length,
  planesToFetch,
  stickWords,
  timeWords,
  uncutWords,
  wayWords,
} from "./card-words.ts";
import { blockLook, cutBlock } from "./cut-block.ts";
import type { PictureOptions } from "./cut-marks.ts";
import { openPath, stroke } from "./drawing.ts";
import type { Box } from "./flat-path.ts";
import { type Block, entry, flow, heading, paragraph, table, tickList } from "./flow.ts";
import { sectionBlock } from "./section-block.ts";
import { type PageContent, pageBody, type SheetPaper } from "./sheet-frame.ts";
import { LOOKS_UPRIGHT_MM } from "./stick-view.ts";
import { comparedWords } from "./ways-words.ts";

/** A cut needs at least so much of the page's height. */
const LEAST_BLOCK_MM = 110;
const BLOCK_GAP_MM = 7;
const MOST_SECTION_MM = 124;
const NAME_MM = 22;
const BULLET = { lead: "–", indentMm: 5 } as const;

/** First what to fetch and to mark, then the cuts, as many to a page as it holds well. */
export function benchPages(
  plan: Plan,
  sheetPaper: SheetPaper,
  options: PictureOptions,
): readonly PageContent[] {
  const body = pageBody(sheetPaper, false);
  return [
    ...flow(overview(plan, body, options), body).map(
      (items): PageContent => ({ sheet: "bench", title: "Bench card", isFullSize: false, items }),
    ),
    ...cutPages(plan, body, options),
  ];
}

function overview(plan: Plan, body: Box, options: PictureOptions): readonly Block[] {
  const widthMm = body.maxX - body.minX;
  const { length, error } = wordsFor(options);
  const bullets = (title: string, entries: readonly string[]): readonly Block[] =>
    entries.length === 0
      ? []
      : [heading(title), ...entries.map((words) => paragraph(words, widthMm, BULLET))];
  const planes = planesToFetch(plan);
  return [
    sectionBlock(plan, { widthMm, mostMm: MOST_SECTION_MM, belowMm: 1 }, options),
    entry("Stick", stickWords(plan, length), widthMm, NAME_MM),
    entry("Time", timeWords(plan), widthMm, NAME_MM),
    entry("Way", wayWords(plan), widthMm, NAME_MM),
    ...(planes.length === 0 ? [] : [heading("Fetch"), ...tickList(planes, widthMm, widthMm > 240 ? 4 : 3)]),
    ...bullets("Take care", cautions(plan)),
    ...marksTable(plan, widthMm, { length, error }),
    ...bullets(
      "Bands",
      (plan.bands ?? []).map((band) => bandWords(band, length, error)),
    ),
    ...bullets("Mind", plan.warnings),
    ...bullets("Ways compared", plan.ways.length > 1 ? plan.ways.map((way) => comparedWords(plan, way)) : []),
    ...bullets("Taken as given", plan.assumed),
    heading("When done"),
    paragraph(finishWords(plan, length, error), widthMm),
    ...bullets(
      "Stays uncut",
      plan.uncut.map((place) => uncutWords(plan, place, length)),
    ),
    ...(plan.cuts.length === 0
      ? [paragraph("No cut: the stick is the section already, or nothing on the shelf reaches it.", widthMm)]
      : []),
  ];
}

interface CardWords {
  readonly length: Length;
  /** How true a line is. */
  readonly error: Length;
}

function wordsFor({ unit, inchStep }: PictureOptions): CardWords {
  return { length: writerFor(unit, "print", inchStep).length, error: errorWriter(unit, inchStep) };
}

/** Every line to scribe, by the cut before which it is scribed, and how true it can be expected. */
function marksTable(plan: Plan, widthMm: number, { length, error }: CardWords): readonly Block[] {
  if (plan.marks.length === 0) return [];
  const columns = [
    { heading: "Before", share: 12 },
    { heading: "Scribe a", share: 16 },
    { heading: "Distance", share: 19 },
    { heading: "From the", share: 20 },
    { heading: "From gauge edge", share: 21 },
    { heading: "Good to", share: 12 },
  ];
  return [
    heading("Lines to scribe"),
    ...table(
      columns,
      plan.marks.map((mark) => [
        `cut ${mark.before}`,
        kindWords(mark),
        mark.distance < LOOKS_UPRIGHT_MM ? "at the" : length(mark.distance),
        mark.from,
        mark.kind === "depth" ? "" : length(mark.fromGaugeEdge),
        mark.error > 0 ? error(mark.error) : "",
      ]),
      widthMm,
    ),
  ];
}

function kindWords({ kind }: PlanMark): string {
  return kind === "depth" ? "depth line" : kind === "end" ? "end line" : "line";
}

function cutPages(plan: Plan, body: Box, options: PictureOptions): readonly PageContent[] {
  const heightMm = body.maxY - body.minY;
  const perPage = Math.max(1, Math.floor((heightMm + BLOCK_GAP_MM) / (LEAST_BLOCK_MM + BLOCK_GAP_MM)));
  const blockMm = (heightMm - (perPage - 1) * BLOCK_GAP_MM) / perPage;
  const look = blockLook(plan, body.maxX - body.minX, blockMm);
  const pages: PageContent[] = [];
  for (let first = 0; first < plan.cuts.length; first += perPage) {
    const cuts = plan.cuts.slice(first, first + perPage);
    const items = cuts.flatMap((cut, index) => {
      const top = body.minY + index * (blockMm + BLOCK_GAP_MM);
      const box: Box = { minX: body.minX, maxX: body.maxX, minY: top, maxY: top + blockMm };
      const between = stroke(
        openPath([
          [body.minX, top - BLOCK_GAP_MM / 2],
          [body.maxX, top - BLOCK_GAP_MM / 2],
        ]),
        { weight: "hatch" },
      );
      return [...(index === 0 ? [] : [between]), ...cutBlock(plan, cut, box, look, options)];
    });
    const last = cuts[cuts.length - 1]?.number ?? first;
    const title = cuts.length === 1 ? `Bench card: cut ${last}` : `Bench card: cuts ${first + 1} to ${last}`;
    pages.push({ sheet: "bench", title, isFullSize: false, items });
  }
  return pages;
}
