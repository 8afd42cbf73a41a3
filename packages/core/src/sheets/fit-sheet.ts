/** The fit sheet: pictures of stick, saw, pieces and corners as `making` answers them, set on pages. */
import { ringFromVertices } from "../curve/index.ts";
import type { Plan } from "../cutting/index.ts";
import {
  cornerFromAngle,
  mitre,
  springBevels,
  springFrom,
  stickFor,
  type WayOfWorking,
} from "../making/index.ts";
import { fine, type Outcome } from "../measure/index.ts";
import type { Section } from "../section/index.ts";
import type { PictureOptions } from "./cut-marks.ts";
import { type Drawing, flatItems, group, type Item } from "./drawing.ts";
import { type Box, boxOf, flatPoints } from "./flat-path.ts";
import { type Block, flow } from "./flow.ts";
import { type Figure, fullSizePages } from "./full-size.ts";
import { textBox } from "./labels.ts";
import { drawMitre } from "./mitre-picture.ts";
import { type PageContent, pageBody, type SheetPaper } from "./sheet-frame.ts";
import { drawStick } from "./stick-picture.ts";

/** Answers of fitting that belong to the job, already drawn. */
export interface FitDrawings {
  /** Rods, frames, runs of cornice, in any scale. */
  readonly pictures: readonly Drawing[];
  /** Scribes and the like, drawn at full size. */
  readonly fullSize: readonly Drawing[];
}

export interface FitRequest {
  readonly drawings: FitDrawings;
  /** Length of the finished moulding, for the stick's sizes. */
  readonly lengthMm: number;
}

/** Stick and mitre of the plan, then what else is given. Trouble: `sheet-too-large`. */
export function fitPages(
  plan: Plan,
  sheetPaper: SheetPaper,
  request: FitRequest,
  options: PictureOptions,
): Outcome<readonly PageContent[]> {
  const body = pageBody(sheetPaper, false);
  const pictures = [...ownPictures(plan, request.lengthMm, options), ...request.drawings.pictures];
  const pages = flow(
    pictures.flatMap((drawing) => pictureBlocks(drawing, body)),
    body,
  ).map((items): PageContent => ({ sheet: "fit", title: "Stick and fit", isFullSize: false, items }));
  const { minX, maxX } = pageBody(sheetPaper, true);
  const figures = request.drawings.fullSize.flatMap((drawing) => figuresOf(drawing, maxX - minX));
  const full = fullSizePages("fit", "Fit, full size", figures, sheetPaper);
  return full.ok ? fine([...pages, ...full.value]) : full;
}

/** What the plan alone can tell: the stick to buy, and the saw at a square outside corner. */
function ownPictures(plan: Plan, lengthMm: number, options: PictureOptions): readonly Drawing[] {
  const section: Section = {
    name: plan.name,
    stick: ringFromVertices(plan.stick),
    outline: ringFromVertices(plan.section),
    freeSpans: [],
    named: [],
  };
  const stick = stickFor({ section, way: wayOf(plan), lengthMm, plan });
  const spring = springFrom("wall", springFromWallDeg(section));
  const corner = cornerFromAngle(90, "outside");
  const joint = spring.ok && corner.ok ? mitre({ spring: spring.value, corner: corner.value }) : null;
  return [
    ...(stick.ok ? [drawStick(stick.value, null, options)] : []),
    ...(joint?.ok ? [drawMitre(joint.value, options)] : []),
  ];
}

function wayOf({ way }: Plan): WayOfWorking {
  return way === "canted" ? "canted" : way.startsWith("bevelled") ? "bevelled first" : "flat";
}

/** The far edge hangs on the wall unless it has no bevel; a back without bevels lies flat on it. */
function springFromWallDeg(section: Section): number {
  const { bevels } = springBevels(section);
  const onWall = bevels.find(({ edge }) => edge === "far edge");
  const onCeiling = bevels.find(({ edge }) => edge === "gauge edge");
  return onWall?.fromBackDeg ?? (onCeiling === undefined ? 0 : 90 - onCeiling.fromBackDeg);
}

const MOST_ENLARGED = 1.3;
/** Rows of a drawing keep so far from each other as they stand in it, but on a new page nothing stands above them. */
const ROW_GAP_MM = 1;

/** A drawing as wide as the page, row by row, so that a long one goes on overleaf instead of shrinking. */
function pictureBlocks(drawing: Drawing, body: Box): readonly Block[] {
  const roomMm = body.maxY - body.minY;
  const rows = rowsOf(drawing);
  const highestMm = Math.max(...rows.map((row) => row.maxY - row.minY));
  const ratio = Math.min((body.maxX - body.minX) / drawing.widthMm, roomMm / highestMm, MOST_ENLARGED);
  const asideMm = (body.maxX - body.minX - drawing.widthMm * ratio) / 2;
  return rows.map((row, index): Block => {
    const before = rows[index - 1];
    return {
      heightMm: (row.maxY - row.minY) * ratio,
      aboveMm: before === undefined ? 6 : Math.max(0, row.minY - before.maxY) * ratio,
      // Its title and what stands below it go with the first of its pictures.
      keepsNext: index + 1 < rows.length && row.items.every((item) => item.kind === "text"),
      draw: (left, top) => [
        { ...group("fit", row.items, [left + asideMm, top - row.minY * ratio]), scaleRatio: ratio },
      ],
    };
  });
}

interface Row {
  readonly items: readonly Item[];
  readonly minY: number;
  readonly maxY: number;
}

/** The drawing's items in rows: those that share a height stand together. */
function rowsOf(drawing: Drawing): readonly Row[] {
  const rows: Row[] = [];
  const items = drawing.items
    .map((item) => ({ item, ...extentY(item) }))
    .filter(({ minY, maxY }) => minY <= maxY)
    .sort((a, b) => a.minY - b.minY);
  for (const { item, minY, maxY } of items) {
    const last = rows[rows.length - 1];
    if (last !== undefined && minY < last.maxY + ROW_GAP_MM) {
      rows[rows.length - 1] = {
        items: [...last.items, item],
        minY: last.minY,
        maxY: Math.max(last.maxY, maxY),
      };
    } else rows.push({ items: [item], minY, maxY });
  }
  return rows;
}

function extentY(item: Item): { readonly minY: number; readonly maxY: number } {
  const boxes = flatItems([item]).map(boxOfItem);
  return {
    minY: Math.min(...boxes.map((box) => box.minY)),
    maxY: Math.max(...boxes.map((box) => box.maxY)),
  };
}

/**
 * A drawing at full size as figures: each outline with its words, so that they go on overleaf rather than being cut.
 * Its title is the first one's heading; bars of its own are left out, for the page has them. Left whole where a row is
 * wider than the page: then it is pieced together.
 */
function figuresOf(drawing: Drawing, roomMm: number): readonly Figure[] {
  const whole: Figure = { heading: drawing.title, ...drawing };
  const rows = rowsOf(drawing)
    .slice(1)
    .filter((row) => !row.items.some((item) => item.kind === "group" && item.role === "check"));
  const figures: Figure[] = [];
  let words: Item[] = [];
  for (const row of rows) {
    words.push(...row.items);
    if (row.items.every((item) => item.kind === "text")) continue;
    figures.push(figureOfItems(words, figures.length === 0 ? drawing.title : ""));
    words = [];
  }
  return figures.length === 0 || figures.some((figure) => figure.widthMm > roomMm) ? [whole] : figures;
}

/** Clear room above a figure that follows another without a heading. */
const FIGURE_ABOVE_MM = 6;

function figureOfItems(items: readonly Item[], heading: string): Figure {
  const boxes = flatItems(items).map(boxOfItem);
  const minX = Math.min(...boxes.map((box) => box.minX));
  const minY = Math.min(...boxes.map((box) => box.minY));
  const above = heading === "" ? FIGURE_ABOVE_MM : 0;
  return {
    heading,
    widthMm: Math.max(...boxes.map((box) => box.maxX)) - minX,
    heightMm: Math.max(...boxes.map((box) => box.maxY)) - minY + above,
    items: [group("scribes", items, [-minX, above - minY])],
  };
}

function boxOfItem(one: Exclude<Item, { readonly kind: "group" }>): Box {
  if (one.kind === "text") return textBox(one);
  const paths = one.kind === "stroke" ? [one.path] : one.paths;
  return boxOf(paths.flatMap(flatPoints));
}
