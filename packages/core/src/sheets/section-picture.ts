/** The finished section with its dimensions, parts and joins, the stick dashed around it. */
import type { Plan, PlanJoin } from "../cutting/index.ts";
import { formatLength, SAME_POINT_MM } from "../measure/index.ts";
import { lengthWords, type PictureOptions, ruleOf, stickBox } from "./cut-marks.ts";
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
import type { Box } from "./flat-path.ts";
import { gaugeEdgeOf } from "./gauge-edge.ts";
import { type LabelPlacer, type LabelSpot, labelPlacer, textBox } from "./labels.ts";
import { figureMm, LABEL_MM, LEAST_LETTERING_MM } from "./lettering.ts";
import { INK } from "./palette.ts";
import { arrowHead } from "./plane-lines.ts";
import { printable } from "./printable-text.ts";
import { type ArcMiddle, arcMiddles, runningDimension, turningPoints } from "./section-dimensions.ts";
import { finishedEnd } from "./stick-end.ts";
import { commonScale, type StickView, scaleWords, toPaper, turnedBox, viewOnBench } from "./stick-view.ts";
import { shortened } from "./text-width.ts";

const PAGE = { widthMm: 190, heightMm: 145, marginMm: 8 } as const;
const TITLE_MM = 5.6;
const NOTE_MM = 3.8;
const PICTURE: Box = { minX: 6, minY: 22, maxX: 184, maxY: 139 };
/** Room kept round the stick for its dimensions, and above it for the names of its parts. */
const SIDE_MM = 27;
const BELOW_MM = 25;
const ABOVE_MM = 34;
const JOIN_MM = 1.1;
/** A part narrower than this on paper is a wall or a nick, and goes unnamed. */
const LEAST_NAMED_MM = 4;
const RUNNING_OFF_MM = 7;

export function drawSection(plan: Plan, options: PictureOptions): Drawing {
  const note = sectionNote(plan, options);
  const inner = PAGE.widthMm - 2 * PAGE.marginMm;
  return {
    widthMm: PAGE.widthMm,
    heightMm: PAGE.heightMm,
    title: `${printable(plan.name).trim()}: finished section`,
    description: note,
    items: [
      text([PAGE.marginMm, 12], shortened(printable(plan.name).trim(), TITLE_MM, inner, "bold"), {
        sizeMm: TITLE_MM,
        bold: true,
      }),
      text([PAGE.marginMm, 18], shortened(note, NOTE_MM, inner), { sizeMm: NOTE_MM }),
      ...sectionScene(plan, PICTURE, options),
    ],
  };
}

/** What stick it is, and from where it is seen. */
export function sectionNote(plan: Plan, options: PictureOptions): string {
  const stick = turnedBox(plan.stick, 0);
  return `Stick ${lengthWords(stick.maxX - stick.minX, options)} × ${lengthWords(stick.maxY - stick.minY, options)}, seen from the end where the stroke starts; gauge edge ${gaugeEdgeOf(plan)}${options.unit === "mm" ? "; millimetres" : ""}.`;
}

/** How high a picture of the section need be at most so high and so wide: no higher than its scale fills. */
export function sectionSceneMm(plan: Plan, widthMm: number, mostMm: number): number {
  const stick = turnedBox(plan.stick, 0);
  return (stick.maxY - stick.minY) * sectionScale(plan, widthMm, mostMm) + BELOW_MM + ABOVE_MM;
}

function sectionScale(plan: Plan, widthMm: number, heightMm: number): number {
  const flatMm = heightMm - BELOW_MM - ABOVE_MM;
  return commonScale(
    { ...plan, cuts: [] },
    // What fits exactly fits, whatever the last decimal of a sum says.
    { widthMm: widthMm - 2 * SIDE_MM, flatMm: flatMm + SAME_POINT_MM, turnedMm: flatMm + SAME_POINT_MM },
  );
}

/** The finished section with sizes, radii, parts and joins, as large as the room allows; no words around it. */
export function sectionScene(plan: Plan, picture: Box, options: PictureOptions): readonly Item[] {
  const scaleRatio = sectionScale(plan, picture.maxX - picture.minX, picture.maxY - picture.minY);
  const view = viewOnBench(plan.stick, 0, scaleRatio, {
    centreX: (picture.minX + picture.maxX) / 2,
    lineY: picture.maxY - BELOW_MM,
  });
  const placer = labelPlacer(picture);
  const end = finishedEnd(plan, view);
  const sizes = sizesOf(plan, view, options);
  const scale = text([picture.minX + 2, picture.maxY], `Scale ${scaleWords(scaleRatio)}`, {
    sizeMm: LEAST_LETTERING_MM,
  });
  const joins = joinDots(plan, view);
  placer.keepFree(textBox(scale));
  placer.avoidLines([...end, ...sizes.items, joins]);
  for (const label of sizes.labels) placer.keepFree(textBox(label));
  const pointers = [
    ...merged(joinPointers(plan, view)),
    ...merged(arcPointers(plan, view, options)),
    ...partPointers(plan, view),
  ];
  const pointed = pointers.flatMap((pointer) => placedPointer(pointer, stickBox(plan, view).minY, placer));
  return [...end, ...sizes.items, group("labels", [...sizes.labels, ...pointed]), joins, scale];
}

interface Sizes {
  readonly items: readonly Item[];
  readonly labels: readonly Text[];
}

/** Running dimensions from the gauge edge and the back, and the overall size outside them. */
function sizesOf(plan: Plan, view: StickView, options: PictureOptions): Sizes {
  const box = stickBox(plan, view);
  const stick = turnedBox(plan.stick, 0);
  const common = {
    view,
    points: turningPoints(plan.section),
    words: shortLength(options),
    sizeMm: figureMm(options.unit),
  };
  const across = runningDimension({
    ...common,
    direction: "across",
    originAt: stick.minX,
    lineAt: box.maxY + RUNNING_OFF_MM,
  });
  // Heights stand on the side they are nearer to, so that they crowd on neither and cross little of the wood.
  const middleX = (stick.minX + stick.maxX) / 2;
  const heights = (["left", "right"] as const).map((side) =>
    runningDimension({
      ...common,
      points: common.points.filter((point) => (side === "left" ? point[0] < middleX : point[0] >= middleX)),
      direction: "up",
      side,
      originAt: -stick.maxY,
      lineAt: side === "left" ? box.minX - RUNNING_OFF_MM : box.maxX + RUNNING_OFF_MM,
    }),
  );
  const all = [across, ...heights];
  return { items: all.flatMap((one) => one.items), labels: all.flatMap((one) => one.labels) };
}

/** On a drawing the unit stands in the note, not at every figure. */
function shortLength(options: PictureOptions): (lengthMm: number) => string {
  return (lengthMm) =>
    options.unit === "in"
      ? formatLength(lengthMm, { ...ruleOf(options), sides: "none" })
      : formatLength(lengthMm, { unit: "mm" }).replace(/\s*mm$/, "");
}

/** Joins that the outline does not show by itself: a smooth one is told from a faint arris only by its mark. */
function markedJoins(plan: Plan): readonly PlanJoin[] {
  return plan.finish.joins.filter((join) => join.kind === "smooth" || join.kind === "quirk");
}

function joinDots(plan: Plan, view: StickView): Item {
  return group(
    "joins",
    markedJoins(plan).map((join) => stroke(circlePath(toPaper(view, [join.at[0], join.at[1]]), JOIN_MM))),
  );
}

/** A label above the section with a leader to what it names. */
interface Pointer {
  readonly words: string;
  readonly sizeMm: number;
  readonly at: PaperPoint;
  /** Where the leader ends: on a ring of this radius, or with an arrow on a line (0). */
  readonly ringMm: number;
  /** How far above the stick the label likes to stand. */
  readonly rowMm: number;
}

const MOST_ALIKE = 2;

/** Features repeated more than twice are said once, with their number (ISO 129-1), as in a row of reeds. */
function merged(pointers: readonly Pointer[]): readonly Pointer[] {
  return pointers.flatMap((pointer, index) => {
    const alike = pointers.filter((other) => other.words === pointer.words);
    if (alike.length <= MOST_ALIKE) return [pointer];
    const isFirst = pointers.findIndex((other) => other.words === pointer.words) === index;
    return isFirst ? [{ ...pointer, words: `${alike.length} × ${pointer.words}` }] : [];
  });
}

function joinPointers(plan: Plan, view: StickView): readonly Pointer[] {
  return markedJoins(plan).map((join) => ({
    words: join.kind,
    sizeMm: LABEL_MM,
    at: toPaper(view, [join.at[0], join.at[1]]),
    ringMm: JOIN_MM,
    rowMm: 7,
  }));
}

function arcPointers(plan: Plan, view: StickView, options: PictureOptions): readonly Pointer[] {
  return arcMiddles(plan.section).map((arc: ArcMiddle) => ({
    words: `R ${shortLength(options)(arc.radiusMm)}`,
    sizeMm: figureMm(options.unit),
    at: toPaper(view, arc.middle),
    ringMm: 0,
    rowMm: 14,
  }));
}

/** Names over parts wide enough to be seen; neighbours of one name (the two arcs of an ogee) are named once. */
function partPointers(plan: Plan, view: StickView): readonly Pointer[] {
  const spans: { words: string; fromX: number; toX: number }[] = [];
  for (const part of plan.parts) {
    const words = printable(part.name).trim();
    const [a, b] = [part.from, part.to].map((end) => toPaper(view, [end[0], end[1]])[0]) as [number, number];
    const span = { words, fromX: Math.min(a, b), toX: Math.max(a, b) };
    const last = spans[spans.length - 1];
    if (last?.words === words) {
      last.fromX = Math.min(last.fromX, span.fromX);
      last.toX = Math.max(last.toX, span.toX);
    } else {
      spans.push(span);
    }
  }
  return spans
    .filter((span) => span.toX - span.fromX >= LEAST_NAMED_MM)
    .map((span) => ({
      words: span.words,
      sizeMm: LABEL_MM,
      at: [(span.fromX + span.toX) / 2, 0] as const,
      ringMm: -1,
      rowMm: 21,
    }));
}

function placedPointer(pointer: Pointer, stickTop: number, placer: LabelPlacer): readonly Item[] {
  if (pointer.words === "") return [];
  const [x, y] = pointer.at;
  const spot = (rowMm: number, asideMm: number): LabelSpot => ({
    at: [x + asideMm, stickTop - rowMm],
    anchor: "middle",
  });
  const rows = [pointer.rowMm, pointer.rowMm + 5];
  const placed = placer.place({
    words: pointer.words,
    look: { sizeMm: pointer.sizeMm },
    spots: rows.flatMap((rowMm) => [spot(rowMm, 0), spot(rowMm, 5), spot(rowMm, -5)]),
  });
  if (placed === null) return [];
  // A part's name stands over its part and needs no leader.
  if (pointer.ringMm < 0) return placed.items;
  const from: PaperPoint = [
    Math.max(placed.box.minX, Math.min(placed.box.maxX, x)),
    placed.box.maxY < y ? placed.box.maxY + 0.3 : placed.box.minY - 0.3,
  ];
  const lengthMm = Math.hypot(x - from[0], y - from[1]) || 1;
  const along: PaperPoint = [(x - from[0]) / lengthMm, (y - from[1]) / lengthMm];
  const to: PaperPoint = [x - along[0] * pointer.ringMm, y - along[1] * pointer.ringMm];
  const leader = group("leader", [
    stroke(openPath([from, to])),
    ...(pointer.ringMm === 0 ? [arrowHead(to, along, INK)] : []),
  ]);
  // The next label keeps off this leader.
  placer.avoidLines([leader]);
  return [leader, ...placed.items];
}
