/**
 * One cut as a page to turn: the stick's end as it lies on the bench, what goes, the plane in its place, the marks that
 * place it. Scale and place are the same on every page of a plan, so that the eye sees only what changed.
 */
import type { Plan, PlanCut, Pose } from "../cutting/index.ts";
import { bug } from "../measure/index.ts";
import { leanInHandDeg, leanSpan, planeName, shortLean, titleOf } from "./cut-facts.ts";
import { cutMarks, type PictureOptions, stickBox } from "./cut-marks.ts";
import {
  circlePath,
  closedPath,
  type Drawing,
  group,
  type Item,
  type PaperPoint,
  stroke,
  text,
} from "./drawing.ts";
import { enlargementOf } from "./enlargement.ts";
import type { Box, Disc } from "./flat-path.ts";
import { type LabelWish, labelPlacer, textBox } from "./labels.ts";
import { LABEL_MM, LEAST_LETTERING_MM } from "./lettering.ts";
import { FAINT_INK, PLANE_LINE } from "./palette.ts";
import { axisOnPaper, leanArrow, type PlaneLines, planeLines, sawLine, stationsOf } from "./plane-lines.ts";
import { printable } from "./printable-text.ts";
import { benchLine, stickEnd, wasteExtent } from "./stick-end.ts";
import { commonScale, type StickView, scaleWords, toPaper, viewOnBench } from "./stick-view.ts";
import { shortened, textWidthMm, wrapTextTo } from "./text-width.ts";

/** The page, mm: half an A4 sheet across, with a margin. */
const PAGE = { widthMm: 190, heightMm: 145, marginMm: 8 } as const;
const TITLE_MM = 5.6;
const HELD_MM = 4.4;
const SENTENCE_MM = 3.8;
const LINE_HEIGHT_MM = 4.9;

const PICTURE: Box = { minX: 6, minY: 44, maxX: 184, maxY: 131 };
const STICK_ROOM = { widthMm: 106, flatMm: 55, turnedMm: 60 } as const;
const BENCH = { centreX: 70, lineY: 115, fromX: 8, toX: 134 } as const;
const ENLARGED: Disc = { centre: [161, 65], radiusMm: 20 };
const BODY_MM = 27;
const LEAST_BODY_MM = 8;
const BODY_OVER_STICK_MM = 8;
/** A plane held flatter than this (its axis's rise) is drawn no longer for it. */
const LEAST_UP_RATIO = 0.7;
const AXIS_OVER_BODY_MM = 7;

/**
 * Draws one cut. `cutNumber` is the cut's own number; one that the plan does not hold is a bug of the caller.
 */
export function drawCut(plan: Plan, cutNumber: number, options: PictureOptions): Drawing {
  const cut = plan.cuts.find((candidate) => candidate.number === cutNumber);
  if (cut === undefined) return bug("the plan has no such cut", { cutNumber });
  const scaleRatio = commonScale(plan, STICK_ROOM);
  const view = viewOnBench(plan.stick, cut.cant, scaleRatio, BENCH);
  const poses = drawnPoses(plan, cut, view);
  const waste = wasteExtent(plan, cut, view, firstAxis(cut, view));
  const close = waste === null ? null : enlargementOf(plan, cut, view, waste, ENLARGED, options);
  const marks = cutMarks(plan, cut, view, close === null ? waste : null, options);
  const scale = text([PICTURE.minX + 2, PICTURE.maxY - 1], `Scale ${scaleWords(scaleRatio)}`, {
    sizeMm: LEAST_LETTERING_MM,
  });
  const end = stickEnd(plan, cut, view);
  const bench = benchLine(BENCH.fromX, BENCH.toX, BENCH.lineY);

  const placer = labelPlacer(PICTURE);
  placer.keepFree(textBox(scale));
  if (close !== null) placer.keepFree(close.box);
  placer.avoidLines([bench, ...end, ...poses.items, ...marks.items, ...(close?.spot ?? [])]);
  const labels = [...poses.wishes, ...marks.wishes].flatMap((wish) => placer.place(wish)?.items ?? []);

  return {
    widthMm: PAGE.widthMm,
    heightMm: PAGE.heightMm,
    title: `${printable(plan.name).trim()}: cut ${cut.number}, ${titleOf(cut, options.unit)}`,
    description: printable(`${cut.says} ${cut.doneWhen}`).trim(),
    items: [
      ...headingItems(plan, cut, options),
      bench,
      ...end,
      ...poses.items,
      ...marks.items,
      ...(close?.spot ?? []),
      ...(close?.items ?? []),
      scale,
      group("labels", labels),
      ...footItems(cut),
    ],
  };
}

function headingItems(plan: Plan, cut: PlanCut, options: PictureOptions): readonly Item[] {
  const left = PAGE.marginMm;
  const right = PAGE.widthMm - PAGE.marginMm;
  const textLeft = left + 14;
  const counter = text([right, 12.4], `${cut.number} of ${plan.cuts.length}`, {
    sizeMm: LABEL_MM,
    anchor: "end",
  });
  const titleWidth = right - textLeft - textWidthMm(counter.text, LABEL_MM) - 4;
  const held = `${planeName(cut)}, ${leanSpan(cut)}`;
  return [
    group("number", [
      stroke(circlePath([left + 5, 12], 5), { weight: "wide" }),
      text([left + 5, 14], String(cut.number), { sizeMm: TITLE_MM, anchor: "middle", bold: true }),
    ]),
    text([textLeft, 11.8], shortened(titleOf(cut, options.unit), TITLE_MM, titleWidth, "bold"), {
      sizeMm: TITLE_MM,
      bold: true,
    }),
    text([textLeft, 18], shortened(held, HELD_MM, right - textLeft), { sizeMm: HELD_MM }),
    counter,
    ...wrapTextTo(4, printable(cut.says), SENTENCE_MM, right - left).map((line, index) =>
      text([left, 26 + index * LINE_HEIGHT_MM], line, { sizeMm: SENTENCE_MM }),
    ),
  ];
}

/** The sign that it is done, behind a box to tick. */
function footItems(cut: PlanCut): readonly Item[] {
  const left = PAGE.marginMm;
  const baseY = PAGE.heightMm - 8.6;
  const textLeft = left + 6;
  const lines = wrapTextTo(2, printable(cut.doneWhen), SENTENCE_MM, PAGE.widthMm - PAGE.marginMm - textLeft);
  if (lines.length === 0) return [];
  const box = closedPath([
    [left, baseY - 3.1],
    [left + 3.4, baseY - 3.1],
    [left + 3.4, baseY + 0.3],
    [left, baseY + 0.3],
  ]);
  return [
    group("done when", [
      stroke(box),
      ...lines.map((line, index) =>
        text([textLeft, baseY + index * LINE_HEIGHT_MM], line, { sizeMm: SENTENCE_MM }),
      ),
    ]),
  ];
}

interface DrawnPoses {
  readonly items: readonly Item[];
  readonly wishes: readonly LabelWish[];
}

function drawnPoses(plan: Plan, cut: PlanCut, view: StickView): DrawnPoses {
  if (cut.line !== undefined) {
    const saw = sawLine(view, cut, PLANE_LINE);
    return { items: [group("saw", saw.items)], wishes: [leanWish(leanSpan(cut), saw, null)] };
  }
  const stations = stationsOf(cut);
  const bodyMm = bodyLengthMm(plan, view, stations);
  const axisMm = bodyMm + AXIS_OVER_BODY_MM;
  const lines = stations.map((pose, index) =>
    planeLines(view, cut, pose, { colour: index === 0 ? PLANE_LINE : FAINT_INK, bodyMm, axisMm }),
  );
  const leans = stations.map((pose) => leanInHandDeg(cut, pose[2]));
  const [first, last] = lines;
  if (first === undefined) return { items: [], wishes: [] };
  const drawn = lines.map((plane, index) => group(index === 0 ? "plane" : "plane, last pose", plane.items));
  if (last === undefined) {
    return { items: drawn, wishes: [leanWish(shortLean(leans[0] ?? 0), first, null)] };
  }
  const arrow = leanArrow(first, last, axisMm - 3, (leans[1] ?? 0) - (leans[0] ?? 0));
  return {
    // The fainter last pose lies under the first one.
    items: [...drawn.reverse(), group("movement", arrow)],
    wishes: [
      leanWish(`from ${shortLean(leans[0] ?? 0)}`, first, last),
      leanWish(`to ${shortLean(leans[1] ?? 0)}`, last, first),
    ],
  };
}

/** As much of the body as clears the stick's top, and no more than the picture has room for; the same in both poses. */
function bodyLengthMm(plan: Plan, view: StickView, stations: readonly Pose[]): number {
  const top = stickBox(plan, view).minY;
  const lengths = stations.map((pose) => {
    const sole = toPaper(view, [pose[0], pose[1]]);
    const up = Math.max(LEAST_UP_RATIO, -axisOnPaper(view, pose)[1]);
    const roomMm = (sole[1] - PICTURE.minY - 1) / up - AXIS_OVER_BODY_MM;
    return Math.min(roomMm, Math.max(BODY_MM, (sole[1] - top) / up + BODY_OVER_STICK_MM));
  });
  return Math.max(LEAST_BODY_MM, Math.min(...lengths));
}

/** The lean beside the upper end of its axis, on the side away from the other pose. */
function leanWish(words: string, lines: PlaneLines, other: PlaneLines | null): LabelWish {
  const [x, y] = lines.tip;
  const right = { at: [x + 1.6, y + 2.4] as const, anchor: "start" as const };
  const left = { at: [x - 1.6, y + 2.4] as const, anchor: "end" as const };
  const above = { at: [x, y - 1.2] as const, anchor: "middle" as const };
  const isRightmost = other === null || other.tip[0] <= x;
  return {
    words,
    look: { sizeMm: LABEL_MM },
    spots: [...(isRightmost ? [right, left] : [left, right]), above],
  };
}

/** The axis of the first hold: depths are told along it, whatever the plane leans to afterwards. */
function firstAxis(cut: PlanCut, view: StickView): PaperPoint {
  const first = stationsOf(cut)[0];
  return first === undefined ? [0, -1] : axisOnPaper(view, first);
}
