/**
 * One cut as a page to turn: the stick's end as it lies on the bench, what goes, the plane in its place, the marks that
 * place it. Scale and place are the same on every page of a plan, so that the eye sees only what changed.
 */
import type { Plan, PlanCut, PlanMark } from "../cutting/index.ts";
import { bug, formatLength } from "../measure/index.ts";
import { leanInHandDeg, leanSpan, planeName, shortLean, titleOf } from "./cut-facts.ts";
import { type DimensionLines, gaugeDimension, linearDimension } from "./dimension.ts";
import {
  circlePath,
  type Drawing,
  group,
  type Item,
  openPath,
  type PaperPoint,
  stroke,
  type Text,
  text,
} from "./drawing.ts";
import { type Box, boxOf, clipRun, type Disc } from "./flat-path.ts";
import { clipItems, rim } from "./hatch.ts";
import { boxesOverlap, type LabelPlacer, labelPlacer, textBox } from "./labels.ts";
import { FAINT_INK, GAUGE_LINE, PLANE_LINE } from "./palette.ts";
import { axisOnPaper, leanArrow, type PlaneLines, planeLines, sawLine, stationsOf } from "./plane-lines.ts";
import { printable } from "./printable-text.ts";
import {
  benchLine,
  polygonsOnPaper,
  ringsBefore,
  stickEnd,
  surfaceY,
  type WasteExtent,
  wasteExtent,
} from "./stick-end.ts";
import {
  commonScale,
  directionToPaper,
  enlargedScale,
  type StickView,
  scaleWords,
  toPaper,
  turnedBox,
  viewOnBench,
} from "./stick-view.ts";
import { shortened, textWidthMm, wrapTextTo } from "./text-width.ts";

export interface PictureOptions {
  readonly unit: "mm" | "in";
}

/** The page, mm: A5 across with a margin, twice on A4. */
const PAGE = { widthMm: 190, heightMm: 140, marginMm: 8 } as const;
const TITLE_MM = 5.4;
const SENTENCE_MM = 3.8;
const LABEL_MM = 3.6;
const SMALL_LABEL_MM = 3.2;
const LINE_HEIGHT_RATIO = 1.3;

const PICTURE: Box = { minX: 6, minY: 41, maxX: 184, maxY: 125 };
const STICK_ROOM = { widthMm: 100, heightMm: 46 } as const;
const BENCH = { centreX: 70, lineY: 107, fromX: 8, toX: 132 } as const;
const ENLARGED: Disc = { centre: [160, 84], radiusMm: 20 };
const BODY_MM = 27;
const AXIS_MM = 34;
/** A detail smaller than this is enlarged beside the picture, mm. */
const SMALL_DETAIL_MM = 3;
const GAUGE_ROW_MM = 6.4;

/**
 * Draws one cut. `cutNumber` is the cut's own number; a number that the plan does not hold is a bug of the caller.
 */
export function drawCut(plan: Plan, cutNumber: number, options: PictureOptions): Drawing {
  const cut = plan.cuts.find((candidate) => candidate.number === cutNumber);
  if (cut === undefined) return bug("the plan has no such cut", { cutNumber });
  const scaleRatio = commonScale(plan, STICK_ROOM);
  const view = viewOnBench(plan.stick, cut.cant, scaleRatio, BENCH);
  const placer = labelPlacer(PICTURE);
  const heading = headingItems(plan, cut, options);
  const marks = plan.marks.filter((mark) => mark.before === cut.number);
  const poses = posesOf(view, cut);
  const axis = axisOf(view, cut);
  const waste = wasteExtent(plan, cut, view, axis);
  for (const lines of poses.lines) placer.avoid(lines.box);
  placer.avoid(stickBox(plan, view));

  const enlargement = waste === null ? null : enlargementOf(plan, cut, view, waste, options);
  if (enlargement !== null) placer.keepFree(enlargement.box);
  const scale = text([PICTURE.minX + 2, PAGE.heightMm - 17], `Scale ${scaleWords(scaleRatio)}`, {
    sizeMm: SMALL_LABEL_MM,
  });
  placer.keepFree(textBox(scale));

  const labels: Item[] = [];
  const gauge = placeMarks(plan, cut, view, marks, options, placer, labels);
  const depth = depthItems(cut, view, waste, enlargement !== null, marks, plan, options, placer, labels);
  const leans = leanLabels(cut, poses, placer);
  const fence = fenceItems(plan, cut, view, options, placer, labels);

  return {
    widthMm: PAGE.widthMm,
    heightMm: PAGE.heightMm,
    title: `${printable(plan.name)}: cut ${cut.number}, ${titleOf(cut, options.unit)}`,
    description: printable(`${cut.says} ${cut.doneWhen}`),
    items: [
      ...heading,
      benchLine(BENCH.fromX, BENCH.toX, BENCH.lineY),
      ...stickEnd(plan, cut, view),
      ...fence,
      ...poses.items,
      ...gauge,
      ...depth,
      ...(enlargement?.items ?? []),
      scale,
      ...leans,
      ...labels,
    ],
  };
}

function headingItems(plan: Plan, cut: PlanCut, options: PictureOptions): readonly Item[] {
  const left = PAGE.marginMm;
  const textLeft = left + 14;
  const right = PAGE.widthMm - PAGE.marginMm;
  const held = `${planeName(cut)}, ${leanSpan(cut)}`;
  const ofAll = text([right, 12.5], `${cut.number} of ${plan.cuts.length}`, {
    sizeMm: LABEL_MM,
    anchor: "end",
  });
  const titleWidth = right - textLeft - textWidthMm(ofAll.text, LABEL_MM) - 4;
  const lines = wrapTextTo(3, printable(cut.says), SENTENCE_MM, right - left);
  const done = wrapTextTo(2, printable(cut.doneWhen), SENTENCE_MM, right - left);
  return [
    group("number", [
      stroke(circlePath([left + 5, 12], 5), { weight: "wide" }),
      text([left + 5, 13.9], String(cut.number), { sizeMm: TITLE_MM, anchor: "middle", bold: true }),
    ]),
    text([textLeft, 12.2], shortened(titleOf(cut, options.unit), TITLE_MM, titleWidth, "bold"), {
      sizeMm: TITLE_MM,
      bold: true,
    }),
    text([textLeft, 17.8], shortened(held, LABEL_MM, right - textLeft), { sizeMm: LABEL_MM }),
    ofAll,
    ...lines.map((line, index) =>
      text([left, 25 + index * SENTENCE_MM * LINE_HEIGHT_RATIO], line, { sizeMm: SENTENCE_MM }),
    ),
    ...done.map((line, index) =>
      text([left, PAGE.heightMm - 9 + index * SENTENCE_MM * LINE_HEIGHT_RATIO], line, {
        sizeMm: SENTENCE_MM,
        bold: false,
      }),
    ),
  ];
}

interface DrawnPoses {
  readonly items: readonly Item[];
  readonly lines: readonly PlaneLines[];
  /** The lean of each, in the hand. */
  readonly leansDeg: readonly number[];
}

function posesOf(view: StickView, cut: PlanCut): DrawnPoses {
  if (cut.line !== undefined) {
    const saw = sawLine(view, cut, PLANE_LINE);
    return { items: [group("saw", saw.items)], lines: [saw], leansDeg: [saw.leanDeg] };
  }
  const stations = stationsOf(cut);
  const lines = stations.map((pose, index) =>
    planeLines(view, cut, pose, {
      colour: index === 0 ? PLANE_LINE : FAINT_INK,
      bodyMm: BODY_MM,
      axisMm: AXIS_MM,
    }),
  );
  const leansDeg = stations.map((pose) => leanInHandDeg(cut, pose[2]));
  const [first, last] = lines;
  const turnedDeg = (leansDeg[1] ?? 0) - (leansDeg[0] ?? 0);
  const arrow =
    first === undefined || last === undefined ? [] : leanArrow(first, last, AXIS_MM - 3, turnedDeg);
  // The fainter last pose lies under the first one.
  const drawn = lines.map((plane, index) => group(index === 0 ? "plane" : "plane, last pose", plane.items));
  return { items: [...drawn.reverse(), group("movement", arrow)], lines, leansDeg };
}

function axisOf(view: StickView, cut: PlanCut): PaperPoint {
  const stations = stationsOf(cut);
  const last = stations[stations.length - 1];
  return last === undefined ? [0, -1] : axisOnPaper(view, last);
}

function leanLabels(cut: PlanCut, poses: DrawnPoses, placer: LabelPlacer): readonly Item[] {
  const isTwo = poses.lines.length === 2;
  return poses.lines.flatMap((lines, index) => {
    const lean = shortLean(poses.leansDeg[index] ?? 0);
    const words = !isTwo ? lean : index === 0 ? `from ${lean}` : `to ${lean}`;
    const [x, y] = lines.tip;
    const aside = 1.6;
    const rightFirst = (poses.lines[1 - index]?.tip[0] ?? x - 1) <= x;
    const right = { at: [x + aside, y + 2.4] as const, anchor: "start" as const };
    const left = { at: [x - aside, y + 2.4] as const, anchor: "end" as const };
    const above = { at: [x, y - 1.2] as const, anchor: "middle" as const };
    return placer.place(cut.line === undefined ? words : `blade ${words}`, { sizeMm: LABEL_MM }, [
      ...(rightFirst ? [right, left] : [left, right]),
      above,
    ]);
  });
}

/** Unit steps on paper: across the stick, and off the side that lies towards the bench, where gauge dimensions stand. */
function dimensionSide(view: StickView): { readonly aside: PaperPoint; readonly isBack: boolean } {
  const up = directionToPaper({ ...view, scaleRatio: 1 }, [0, 1]);
  const isBack = up[1] <= 0.5;
  return { aside: isBack ? [-up[0], -up[1]] : up, isBack };
}

function placeMarks(
  plan: Plan,
  cut: PlanCut,
  view: StickView,
  marks: readonly PlanMark[],
  options: PictureOptions,
  placer: LabelPlacer,
  labels: Item[],
): readonly Item[] {
  const { aside, isBack } = dimensionSide(view);
  const stick = turnedBox(plan.stick, 0);
  const sideY = isBack ? -stick.maxY : -stick.minY;
  const across = marks.filter((mark) => mark.kind !== "depth");
  return across.map((mark, index) => {
    const footX = footOf(plan, cut, mark);
    const foot = toPaper(view, [footX, footY(plan, cut, footX, mark)]);
    const line = toPaper(view, [mark.at[0], mark.at[1]]);
    const rowMm = Math.abs(mark.at[1] - sideY) * view.scaleRatio + 5 + index * GAUGE_ROW_MM;
    const drawn = gaugeDimension({ foot, line, aside, offMm: rowMm, sizeMm: LABEL_MM });
    const from =
      mark.from === "gauge edge" || mark.from === "far edge"
        ? `from the ${mark.from}`
        : `from the ${mark.from}`;
    const name = mark.kind === "end" ? "end line " : "";
    addLabel(`${name}${lengthWords(mark.distance, options)} ${printable(from)}`, drawn, placer, labels);
    return drawn.items;
  });
}

/** Where a mark is measured from, across the stick. A foot lies on whichever side of the line the wood has a corner. */
function footOf(plan: Plan, cut: PlanCut, mark: PlanMark): number {
  const stick = turnedBox(plan.stick, 0);
  if (mark.from === "gauge edge") return stick.minX;
  if (mark.from === "far edge") return stick.maxX;
  const corners = ringsBefore(plan, cut)
    .flat()
    .map((vertex) => vertex[0]);
  const nearest = (x: number): number => Math.min(...corners.map((corner) => Math.abs(corner - x)));
  const left = mark.at[0] - mark.distance;
  const right = mark.at[0] + mark.distance;
  return nearest(right) < nearest(left) ? right : left;
}

function footY(plan: Plan, cut: PlanCut, footX: number, mark: PlanMark): number {
  const stick = turnedBox(plan.stick, 0);
  if (footX === stick.minX || footX === stick.maxX) return mark.at[1];
  const corners = ringsBefore(plan, cut).flat();
  const first = corners[0];
  if (first === undefined) return mark.at[1];
  const offMm = (vertex: readonly number[]): number => Math.abs((vertex[0] ?? 0) - footX);
  const nearest = Math.min(...corners.map(offMm));
  // Of the corners above that place the lowest one that is no part of the back: the foot, not the arris over it.
  const there = corners.filter((vertex) => offMm(vertex) <= nearest).map((vertex) => vertex[1]);
  return Math.min(...there);
}

function depthItems(
  cut: PlanCut,
  view: StickView,
  waste: WasteExtent | null,
  isEnlarged: boolean,
  marks: readonly PlanMark[],
  plan: Plan,
  options: PictureOptions,
  placer: LabelPlacer,
  labels: Item[],
): readonly Item[] {
  const box = stickBox(plan, view);
  const drawn: Item[] = [];
  for (const mark of marks.filter((candidate) => candidate.kind === "depth")) {
    const line = toPaper(view, [mark.at[0], mark.at[1]]);
    const isUpright = Math.abs(directionToPaper({ ...view, scaleRatio: 1 }, [0, 1])[0]) < 0.02;
    if (!isUpright) continue;
    const fromY = mark.from === "back" ? BENCH.lineY : line[1] - mark.distance * view.scaleRatio;
    const dimension = sideDimension(line, [line[0], fromY], box);
    addLabel(lengthWords(mark.distance, options), dimension, placer, labels);
    drawn.push(dimension.items);
  }
  if (drawn.length > 0 || waste === null || isEnlarged || !saysDepth(cut)) return drawn;
  const { bottom, top } = waste.deepest;
  if (Math.abs(bottom[0] - top[0]) > 0.05) return drawn;
  const dimension = sideDimension(bottom, top, box);
  addLabel(
    `${lengthWords(Math.abs(bottom[1] - top[1]) / view.scaleRatio, options)} deep`,
    dimension,
    placer,
    labels,
  );
  return [dimension.items];
}

/** Curves are stopped by their join or their lines, not by a depth. */
function saysDepth(cut: PlanCut): boolean {
  return !["hollow", "round", "shaped", "saw", "bead", "smoother"].includes(cut.plane.kind);
}

/** An upright dimension beside the stick, on the side that is nearer. */
function sideDimension(bottom: PaperPoint, top: PaperPoint, box: Box): DimensionLines {
  const isLeft = bottom[0] - box.minX < box.maxX - bottom[0];
  const offMm = isLeft ? bottom[0] - box.minX + 6 : box.maxX - bottom[0] + 6;
  return linearDimension({
    from: bottom,
    to: top,
    aside: [isLeft ? -1 : 1, 0],
    offMm,
    sizeMm: LABEL_MM,
  });
}

interface Enlargement {
  readonly items: readonly Item[];
  readonly box: Box;
}

/** The round enlargement of a small cut, at one place on every page, with a ring round the spot it shows. */
function enlargementOf(
  plan: Plan,
  cut: PlanCut,
  view: StickView,
  waste: WasteExtent,
  options: PictureOptions,
): Enlargement | null {
  const widthMm = (waste.box.maxX - waste.box.minX) / view.scaleRatio;
  const heightMm = (waste.box.maxY - waste.box.minY) / view.scaleRatio;
  if (Math.min(widthMm, heightMm) >= SMALL_DETAIL_MM) return null;
  const isLocal = Math.max(widthMm, heightMm) < SMALL_DETAIL_MM * 4;
  const spot: PaperPoint = isLocal
    ? [(waste.box.minX + waste.box.maxX) / 2, (waste.box.minY + waste.box.maxY) / 2]
    : middle(waste.deepest.bottom, waste.deepest.top);
  const detailMm = isLocal ? Math.hypot(widthMm, heightMm) : Math.min(widthMm, heightMm);
  const scaleRatio = enlargedScale(view.scaleRatio, detailMm, ENLARGED.radiusMm * 1.5);
  const factor = scaleRatio / view.scaleRatio;
  const enlarge = (point: PaperPoint): PaperPoint => [
    ENLARGED.centre[0] + (point[0] - spot[0]) * factor,
    ENLARGED.centre[1] + (point[1] - spot[1]) * factor,
  ];
  const close: StickView = { ...view, scaleRatio, origin: enlarge(view.origin) };
  const lines = cut.line === undefined ? lastPlane(close, cut) : sawLine(close, cut, PLANE_LINE).items;
  const scene = [...stickEnd(plan, cut, close), group("plane", lines)];
  const ringMm = ENLARGED.radiusMm / factor;
  const ring: Disc = { centre: spot, radiusMm: ringMm };
  const caption = text(
    [ENLARGED.centre[0], ENLARGED.centre[1] + ENLARGED.radiusMm + 4.6],
    `Scale ${scaleWords(scaleRatio)}`,
    {
      sizeMm: SMALL_LABEL_MM,
      anchor: "middle",
    },
  );
  const depth = saysDepth(cut) ? enlargedDepth(enlarge, waste, view, options) : [];
  return {
    items: [
      group("enlarged spot", [
        stroke(circlePath(ring.centre, ring.radiusMm)),
        ...leaderBetween(ring, ENLARGED),
      ]),
      group("enlargement", [...clipItems(scene, ENLARGED), rim(ENLARGED), ...depth, caption]),
    ],
    box: {
      minX: ENLARGED.centre[0] - ENLARGED.radiusMm,
      maxX: ENLARGED.centre[0] + ENLARGED.radiusMm,
      minY: ENLARGED.centre[1] - ENLARGED.radiusMm,
      maxY: ENLARGED.centre[1] + ENLARGED.radiusMm + 6,
    },
  };
}

function lastPlane(view: StickView, cut: PlanCut): readonly Item[] {
  const stations = stationsOf(cut);
  const last = stations[stations.length - 1];
  return last === undefined
    ? []
    : planeLines(view, cut, last, { colour: PLANE_LINE, bodyMm: 60, axisMm: 66 }).items;
}

function enlargedDepth(
  enlarge: (point: PaperPoint) => PaperPoint,
  waste: WasteExtent,
  view: StickView,
  options: PictureOptions,
): readonly Item[] {
  const bottom = enlarge(waste.deepest.bottom);
  const top = enlarge(waste.deepest.top);
  const isUpright = Math.abs(bottom[0] - top[0]) < 0.2;
  const isInside =
    Math.hypot(bottom[0] - ENLARGED.centre[0], bottom[1] - ENLARGED.centre[1]) < ENLARGED.radiusMm * 0.85;
  if (!isUpright || !isInside) return [];
  const isLeft = bottom[0] <= ENLARGED.centre[0];
  const offMm = Math.abs(bottom[0] - ENLARGED.centre[0]) * -1 + 9.5;
  const dimension = linearDimension({
    from: bottom,
    to: top,
    aside: [isLeft ? -1 : 1, 0],
    offMm: Math.max(4, offMm),
    sizeMm: LABEL_MM,
  });
  const words = lengthWords(
    (Math.abs(bottom[1] - top[1]) * (view.scaleRatio === 0 ? 0 : 1)) /
      enlargeRatio(enlarge) /
      view.scaleRatio,
    options,
  );
  const placer = labelPlacer({
    minX: ENLARGED.centre[0] - ENLARGED.radiusMm,
    maxX: ENLARGED.centre[0] + ENLARGED.radiusMm,
    minY: ENLARGED.centre[1] - ENLARGED.radiusMm * 0.9,
    maxY: ENLARGED.centre[1] + ENLARGED.radiusMm * 0.9,
  });
  placer.avoid(boxOf([bottom, top]));
  return [dimension.items, ...placer.place(words, { sizeMm: LABEL_MM }, dimension.spots)];
}

function enlargeRatio(enlarge: (point: PaperPoint) => PaperPoint): number {
  return enlarge([1, 0])[0] - enlarge([0, 0])[0];
}

/** The line from the small ring's rim to the large one's. */
function leaderBetween(ring: Disc, large: Disc): readonly Item[] {
  const dx = large.centre[0] - ring.centre[0];
  const dy = large.centre[1] - ring.centre[1];
  const apartMm = Math.hypot(dx, dy);
  if (apartMm <= ring.radiusMm + large.radiusMm) return [];
  const at = (distanceMm: number): PaperPoint => [
    ring.centre[0] + (dx / apartMm) * distanceMm,
    ring.centre[1] + (dy / apartMm) * distanceMm,
  ];
  return [stroke(openPath([at(ring.radiusMm), at(apartMm - large.radiusMm)]), { colour: FAINT_INK })];
}

const FENCE_THICK_MM = 5;

/** The fence against its edge, or the batten beside the plane, as the outline of a tool. */
function fenceItems(
  plan: Plan,
  cut: PlanCut,
  view: StickView,
  options: PictureOptions,
  placer: LabelPlacer,
  labels: Item[],
): readonly Item[] {
  if (cut.runsAgainst === "batten") return battenItems(plan, cut, view, placer, labels);
  if (cut.runsAgainst !== "gauge edge" && cut.runsAgainst !== "far edge") return [];
  const stick = turnedBox(plan.stick, 0);
  const isGauge = cut.runsAgainst === "gauge edge";
  const edgeX = isGauge ? stick.minX : stick.maxX;
  const outward = directionToPaper({ ...view, scaleRatio: 1 }, [isGauge ? -1 : 1, 0]);
  if (Math.abs(outward[0]) < 0.5) return [];
  const corners = [toPaper(view, [edgeX, -stick.maxY]), toPaper(view, [edgeX, -stick.minY])];
  const upper = corners[0]![1] < corners[1]![1] ? corners[0]! : corners[1]!;
  const lower = upper === corners[0] ? corners[1]! : corners[0]!;
  const edgeMm = Math.hypot(lower[0] - upper[0], lower[1] - upper[1]) || 1;
  const down: PaperPoint = [(lower[0] - upper[0]) / edgeMm, (lower[1] - upper[1]) / edgeMm];
  const reachMm = Math.min(edgeMm * 0.8, 14);
  const at = (outMm: number, downMm: number): PaperPoint => [
    upper[0] + outward[0] * outMm + down[0] * downMm,
    upper[1] + outward[1] * outMm + down[1] * downMm,
  ];
  const outline = openPath([
    at(0.4, -6),
    at(0.4, reachMm),
    at(FENCE_THICK_MM, reachMm),
    at(FENCE_THICK_MM, -6),
  ]);
  const isRightOnPaper = outward[0] > 0;
  const middleOf = at(FENCE_THICK_MM + 1.2, reachMm / 2);
  const words =
    cut.fence === undefined || cut.fence === 0 ? "fence" : `fence ${lengthWords(cut.fence, options)}`;
  labels.push(
    ...placer.place(words, { sizeMm: LABEL_MM }, [
      { at: middleOf, anchor: isRightOnPaper ? "start" : "end" },
      { at: at(FENCE_THICK_MM / 2, reachMm + 4.5), anchor: "middle" },
    ]),
  );
  return [group("fence", [stroke(outline, { line: "long-dashed double-dotted" })])];
}

function battenItems(
  plan: Plan,
  cut: PlanCut,
  view: StickView,
  placer: LabelPlacer,
  labels: Item[],
): readonly Item[] {
  const first = stationsOf(cut)[0];
  const sole = cut.sole ?? [];
  if (first === undefined || sole.length === 0) return [];
  const ends = [sole[0], sole[sole.length - 1]].map((vertex) =>
    toPaper(view, [first[0] + (vertex?.[0] ?? 0), first[1] + (vertex?.[1] ?? 0)]),
  );
  const polygons = polygonsOnPaper(view, ringsBefore(plan, cut));
  const widthMm = 9;
  const spots = [
    Math.min(...ends.map((end) => end[0])) - 0.4 - widthMm,
    Math.max(...ends.map((end) => end[0])) + 0.4,
  ];
  for (const left of spots) {
    const ys = [left + 0.5, left + widthMm - 0.5].map((x) => surfaceY(polygons, x));
    if (ys.some((y) => y === null)) continue;
    const y = Math.min(...(ys as number[]));
    const outline = openPath([
      [left, y],
      [left, y - 6],
      [left + widthMm, y - 6],
      [left + widthMm, y],
      [left, y],
    ]);
    labels.push(
      ...placer.place("batten", { sizeMm: LABEL_MM }, [
        { at: [left + widthMm / 2, y - 7.2], anchor: "middle" },
        { at: [left - 1, y - 2], anchor: "end" },
        { at: [left + widthMm + 1, y - 2], anchor: "start" },
      ]),
    );
    return [group("batten", [stroke(outline, { line: "long-dashed double-dotted" })])];
  }
  return [];
}

function addLabel(words: string, drawn: DimensionLines, placer: LabelPlacer, labels: Item[]): void {
  labels.push(...placer.place(words, { sizeMm: LABEL_MM }, drawn.spots));
}

function lengthWords(lengthMm: number, options: PictureOptions): string {
  return formatLength(lengthMm, { unit: options.unit });
}

function stickBox(plan: Plan, view: StickView): Box {
  return boxOf(polygonsOnPaper(view, [plan.stick]).flat());
}

function middle(a: PaperPoint, b: PaperPoint): PaperPoint {
  return [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];
}

void GAUGE_LINE;
void clipRun;
void boxesOverlap;

export type { Text };
