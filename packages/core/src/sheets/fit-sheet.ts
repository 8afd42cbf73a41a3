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
import { type Drawing, group } from "./drawing.ts";
import type { Box } from "./flat-path.ts";
import { type Block, flow } from "./flow.ts";
import { type Figure, fullSizePages } from "./full-size.ts";
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
    pictures.map((drawing) => pictureBlock(drawing, body)),
    body,
  ).map((items): PageContent => ({ sheet: "fit", title: "Stick and fit", isFullSize: false, items }));
  const full = fullSizePages("fit", "Fit, full size", request.drawings.fullSize.map(figureOf), sheetPaper);
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

/** A drawing as wide as the page, or as high as it if that is the less. */
function pictureBlock(drawing: Drawing, body: Box): Block {
  const ratio = Math.min(
    (body.maxX - body.minX) / drawing.widthMm,
    (body.maxY - body.minY) / drawing.heightMm,
    MOST_ENLARGED,
  );
  const asideMm = (body.maxX - body.minX - drawing.widthMm * ratio) / 2;
  return {
    heightMm: drawing.heightMm * ratio,
    aboveMm: 4,
    draw: (left, top) => [{ ...group("fit", drawing.items, [left + asideMm, top]), scaleRatio: ratio }],
  };
}

const MOST_ENLARGED = 1.3;

function figureOf(drawing: Drawing): Figure {
  return {
    heading: drawing.title,
    widthMm: drawing.widthMm,
    heightMm: drawing.heightMm,
    items: drawing.items,
  };
}
