/** End templates at full size, for both ends of the stick, and the profiles that check and finish the face. */
import { extentsOf, ringFromVertices, type Vertex } from "../curve/index.ts";
import type { Plan, PlanMark } from "../cutting/index.ts";
import { formatLength, type Outcome } from "../measure/index.ts";
import { leanInHandDeg, planeName, shortLean } from "./cut-facts.ts";
import { lengthWords, type PictureOptions, ruleOf } from "./cut-marks.ts";
import { group, type Item, openPath, type PaperPoint, stroke, type Text, text } from "./drawing.ts";
import { pathOf } from "./flat-path.ts";
import { paragraph } from "./flow.ts";
import { type Figure, fullSizePages } from "./full-size.ts";
import { gaugeEdgeOf } from "./gauge-edge.ts";
import { CENTRED_RATIO } from "./labels.ts";
import { figureMm } from "./lettering.ts";
import { GAUGE_LINE } from "./palette.ts";
import { axisOf, type PlaneAxis } from "./plane-axis.ts";
import { spread } from "./section-dimensions.ts";
import { type PageContent, pageBody, type SheetPaper } from "./sheet-frame.ts";
import { mirroredVertex, negativeOf, PAPER_ALLOWANCE_MM } from "./template-outline.ts";
import { shortened, textWidthMm, wrapText } from "./text-width.ts";

/** Room round the stick for its lines and their figures. */
const SIDE_MM = 24;
const ABOVE_MM = 17;
const BELOW_MM = 25;
const LINE_OVER_MM = 7;
const ROW_MM = 5;
const SMALL_MM = 3.6;
const LABEL_GAP_MM = 1.8;
const MOST_NAME_MM = 70;

type End = "starting end" | "far end";

/** Both ends, and the profiles. Trouble: `sheet-too-large`. */
export function endPages(
  plan: Plan,
  sheetPaper: SheetPaper,
  options: PictureOptions,
): Outcome<readonly PageContent[]> {
  const body = pageBody(sheetPaper, true);
  const widthMm = body.maxX - body.minX;
  const notes = [
    paragraph(
      "Each as you look at that end. Cut out along the stick's outline and fix with the lines on the scribed ones. Fix it dry (tape, spray adhesive or shellac let dry): wet glue stretches paper by up to 1 mm in 250.",
      widthMm,
      { sizeMm: SMALL_MM },
    ),
  ];
  const profiles = profileFigures(plan, widthMm, options);
  return fullSizePages(
    "ends",
    "End templates and profiles",
    [endFigure(plan, "starting end", options), endFigure(plan, "far end", options), ...profiles],
    sheetPaper,
    notes,
  );
}

/** One end of the stick: outline, section, lines and centre lines carried past the wood, depths. */
export function endFigure(plan: Plan, end: End, options: PictureOptions): Figure {
  const box = extentsOf(ringFromVertices(plan.stick));
  const isMirrored = end === "far end";
  const across = (x: number): number => (isMirrored ? box.maxX - x : x - box.minX);
  const labels = lineLabels(plan, box.maxX - box.minX, options);
  const sideMm = SIDE_MM + Math.max(0, (labels.rowMm - (box.maxX - box.minX)) / 2);
  const place = ([x, y]: PaperPoint): PaperPoint => [sideMm + across(x), ABOVE_MM + box.maxY - y];
  const seen = (ring: readonly Vertex[]): readonly Vertex[] =>
    isMirrored ? ring.map((vertex) => mirroredVertex(vertex, box.minX, box.maxX)) : ring;
  // Seen from the far end everything is mirrored first and then set down like the other.
  const down = ([x, y]: PaperPoint): PaperPoint => [sideMm + x - box.minX, ABOVE_MM + box.maxY - y];
  const widthMm = box.maxX - box.minX;
  const heightMm = box.maxY - box.minY;
  const stick = { left: sideMm, right: sideMm + widthMm, top: ABOVE_MM, bottom: ABOVE_MM + heightMm };
  const isGaugeLeft = (gaugeEdgeOf(plan) === "left") !== isMirrored;
  return {
    heading: `${isMirrored ? "Far end" : "Starting end of the stroke"}, gauge edge on the ${isGaugeLeft ? "left" : "right"}`,
    widthMm: widthMm + 2 * sideMm,
    heightMm: heightMm + ABOVE_MM + BELOW_MM + (labels.isTurned ? labels.longestMm - labels.sizeMm : 0),
    items: [
      group("stick", [stroke(pathOf(seen(plan.stick), down, "ring"))]),
      group("section", [stroke(pathOf(seen(plan.section), down, "ring"), { weight: "wide" })]),
      ...gaugeLines(plan, place, stick, labels, options),
      ...centreLines(plan, place, stick),
      ...depthLines(plan, place, stick, options),
      gaugeSign(stick, isGaugeLeft),
    ],
  };
}

interface StickSides {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

type Place = (point: PaperPoint) => PaperPoint;

/** Lines across, from above the stick down to their figures below it; a line at one place is drawn once. */
function gaugeLines(
  plan: Plan,
  place: Place,
  stick: StickSides,
  { isTurned, sizeMm, stepOf }: LineLabels,
  options: PictureOptions,
): readonly Item[] {
  const marks = onePerPlace(plan.marks.filter((mark) => mark.kind !== "depth"));
  const lines = marks
    .map((mark) => ({ x: place([mark.at[0], 0])[0], words: figureWords(mark.fromGaugeEdge, options) }))
    .sort((a, b) => a.x - b.x);
  const shown = lines.map(({ words }) => words);
  const rows = spread(
    lines.map(({ x }) => x),
    shown.map(stepOf),
  );
  const kneeY = stick.bottom + LINE_OVER_MM;
  return [
    group(
      "gauge lines",
      lines.map(({ x }, index) =>
        stroke(
          openPath([
            [x, stick.top - LINE_OVER_MM],
            [x, kneeY],
            [rows[index] ?? x, kneeY + ROW_MM],
            [rows[index] ?? x, kneeY + ROW_MM + 1],
          ]),
          { colour: GAUGE_LINE },
        ),
      ),
    ),
    ...shown.map(
      (words, index): Text =>
        isTurned
          ? {
              ...text([(rows[index] ?? 0) + CENTRED_RATIO * sizeMm, kneeY + ROW_MM + 2], words, {
                sizeMm,
                anchor: "end",
              }),
              turnDeg: 90,
            }
          : text([rows[index] ?? 0, kneeY + ROW_MM + 2 + 0.78 * sizeMm], words, { sizeMm, anchor: "middle" }),
    ),
  ];
}

/** How the figures of the lines stand: side by side while there is room, else turned to read upwards. */
interface LineLabels {
  readonly isTurned: boolean;
  readonly sizeMm: number;
  /** How far the figures of all lines reach side by side. */
  readonly rowMm: number;
  readonly longestMm: number;
  /** Room along the row for one figure. */
  readonly stepOf: (words: string) => number;
}

function lineLabels(plan: Plan, widthMm: number, options: PictureOptions): LineLabels {
  const sizeMm = figureMm(options.unit);
  const wides = onePerPlace(plan.marks.filter((mark) => mark.kind !== "depth")).map((mark) =>
    textWidthMm(figureWords(mark.fromGaugeEdge, options), sizeMm),
  );
  const sum = (steps: readonly number[]): number => steps.reduce((total, step) => total + step, 0);
  const levelMm = sum(wides.map((wide) => wide + LABEL_GAP_MM));
  const isTurned = levelMm > widthMm + SIDE_MM;
  const turnedMm = sizeMm * 1.3;
  return {
    isTurned,
    sizeMm,
    rowMm: isTurned ? wides.length * turnedMm : levelMm,
    longestMm: Math.max(0, ...wides),
    stepOf: (words) => (isTurned ? turnedMm : textWidthMm(words, sizeMm) + LABEL_GAP_MM),
  };
}

/** On a template the line itself is exact; its figure only tells it from its neighbours, without the unit. */
function figureWords(lengthMm: number, options: PictureOptions): string {
  return options.unit === "in"
    ? formatLength(lengthMm, { ...ruleOf(options), sides: "none" })
    : formatLength(lengthMm, { unit: "mm" }).replace(/\s*mm$/, "");
}

const ONE_PLACE_MM = 0.05;

function onePerPlace(marks: readonly PlanMark[]): readonly PlanMark[] {
  return marks.filter(
    (mark, index) => marks.findIndex((other) => Math.abs(other.at[0] - mark.at[0]) < ONE_PLACE_MM) === index,
  );
}

/** Axes of hollows and rounds as they finish, past the outline on both sides, with the lean above. */
function centreLines(plan: Plan, place: Place, stick: StickSides): readonly Item[] {
  const axes = plan.cuts
    .flatMap((cut) => {
      const axis = axisOf(cut);
      return axis === null
        ? []
        : [{ axis, words: `${planeName(cut)}, ${shortLean(leanInHandDeg(cut, axis.tiltDeg))}` }];
    })
    .filter(({ axis }, index, all) => all.findIndex((other) => isOneAxis(other.axis, axis)) === index);
  const drawn = axes.map(({ axis, words }) => {
    const at = place(axis.at);
    const ahead = place([axis.at[0] + axis.up[0], axis.at[1] + axis.up[1]]);
    const up: PaperPoint = [ahead[0] - at[0], ahead[1] - at[1]];
    const rise = Math.max(0.3, -up[1]);
    const along = (mm: number): PaperPoint => [at[0] + up[0] * mm, at[1] + up[1] * mm];
    return {
      line: openPath([along(-4), along((at[1] - stick.top + LINE_OVER_MM + 2) / rise)]),
      top: along((at[1] - stick.top + LINE_OVER_MM + 2) / rise),
      words,
    };
  });
  return [
    group(
      "centre lines",
      drawn.map(({ line }) => stroke(line, { line: "long-dashed dotted" })),
    ),
    ...centreNames(drawn, stick.right + LINE_OVER_MM),
  ];
}

function isOneAxis(a: PlaneAxis, b: PlaneAxis): boolean {
  return Math.hypot(a.at[0] - b.at[0], a.at[1] - b.at[1]) < ONE_PLACE_MM && a.tiltDeg === b.tiltDeg;
}

/** Names in two rows above the lines; one that finds no room in either is left out, the bench card has it. */
function centreNames(
  drawn: readonly { readonly top: PaperPoint; readonly words: string }[],
  rightmost: number,
): readonly Text[] {
  const ends: [number, number] = [Number.NEGATIVE_INFINITY, Number.NEGATIVE_INFINITY];
  return [...drawn]
    .sort((a, b) => a.top[0] - b.top[0])
    .flatMap(({ top, words: whole }): readonly Text[] => {
      const words = shortened(whole, SMALL_MM, MOST_NAME_MM);
      const halfMm = textWidthMm(words, SMALL_MM) / 2;
      // Depths have the right side to themselves.
      const middle = Math.min(top[0], rightmost - halfMm);
      const row = ends.findIndex((end) => middle - halfMm > end + 1.5);
      if (row < 0 || (row !== 0 && row !== 1)) return [];
      ends[row] = middle + halfMm;
      return [
        text([middle, ABOVE_MM - LINE_OVER_MM - 3.5 - row * 4.6], words, {
          sizeMm: SMALL_MM,
          anchor: "middle",
        }),
      ];
    });
}

/** Depths, level, past both sides of the stick; figures on the right. */
function depthLines(plan: Plan, place: Place, stick: StickSides, options: PictureOptions): readonly Item[] {
  const sizeMm = figureMm(options.unit);
  const depths = plan.marks
    .filter((mark) => mark.kind === "depth")
    .filter(
      (mark, index, all) =>
        all.findIndex((other) => Math.abs(other.at[1] - mark.at[1]) < ONE_PLACE_MM) === index,
    )
    .map((mark) => ({ y: place([0, mark.at[1]])[1], words: figureWords(mark.distance, options) }))
    .sort((a, b) => a.y - b.y);
  const rows = spread(
    depths.map(({ y }) => y),
    depths.map(() => sizeMm * 1.25),
  );
  return [
    group(
      "depth lines",
      depths.map(({ y }, index) =>
        stroke(
          openPath([
            [stick.left - LINE_OVER_MM, y],
            [stick.right + LINE_OVER_MM - 3, y],
            [stick.right + LINE_OVER_MM, rows[index] ?? y],
            [stick.right + LINE_OVER_MM + 1, rows[index] ?? y],
          ]),
          { line: "dashed" },
        ),
      ),
    ),
    ...depths.map(({ words }, index) =>
      text([stick.right + LINE_OVER_MM + 2, (rows[index] ?? 0) + CENTRED_RATIO * sizeMm], words, { sizeMm }),
    ),
  ];
}

/** A foot at the edge that lines are measured from. */
function gaugeSign(stick: StickSides, isLeft: boolean): Item {
  const x = isLeft ? stick.left : stick.right;
  return group("gauge edge", [
    stroke(
      openPath([
        [x, stick.bottom + 1],
        [x, stick.bottom + LINE_OVER_MM + 2],
      ]),
      { weight: "wide", colour: GAUGE_LINE },
    ),
  ]);
}

/** A negative of the face with the words below it. */
interface Negative {
  readonly ring: readonly Vertex[];
  readonly title: string;
  readonly words: string;
}

/** For card or sheet metal and the edge of a scraper as drawn, for a sanding block with its paper allowed for. */
function profileFigures(plan: Plan, roomMm: number, options: PictureOptions): readonly Figure[] {
  const negatives: readonly Negative[] = [
    {
      ring: negativeOf(plan),
      title: "Card, sheet metal, scraper's edge",
      words: "Hold it square to the stick, against the light. Where it rides, wood stands proud.",
    },
    {
      ring: negativeOf(plan, PAPER_ALLOWANCE_MM),
      title: "Sanding block",
      words: `Stands ${lengthWords(PAPER_ALLOWANCE_MM, options)} off the face for paper and felt. Sand along, never across an arris.`,
    },
  ];
  const figures = negatives.map(negativeFigure);
  const besideMm = figures.reduce((sum, figure) => sum + figure.widthMm, 0) + BETWEEN_MM;
  const heading = "Profiles that close on the finished face";
  const [first, second] = figures;
  if (first === undefined || second === undefined || besideMm > roomMm) {
    return figures.map((figure) => ({ ...figure, heading }));
  }
  return [
    {
      heading,
      widthMm: besideMm,
      heightMm: Math.max(first.heightMm, second.heightMm),
      items: [...first.items, group("beside", second.items, [first.widthMm + BETWEEN_MM, 0])],
    },
  ];
}

const BETWEEN_MM = 10;
const LEAST_WORDS_MM = 70;

function negativeFigure({ ring, title, words }: Negative): Figure {
  const box = extentsOf(ringFromVertices(ring));
  const place = ([x, y]: PaperPoint): PaperPoint => [x - box.minX, box.maxY - y];
  const widthMm = Math.max(box.maxX - box.minX, LEAST_WORDS_MM);
  const textTop = box.maxY - box.minY + 2;
  const lines = [title, ...wrapText(words, SMALL_MM, widthMm)];
  return {
    heading: title,
    widthMm,
    heightMm: textTop + lines.length * SMALL_MM * 1.35 + 1,
    items: [
      group("profile", [stroke(pathOf(ring, place, "ring"), { weight: "wide" })]),
      ...lines.map((line, index) =>
        text([0, textTop + SMALL_MM + index * SMALL_MM * 1.35], line, {
          sizeMm: SMALL_MM,
          bold: index === 0,
        }),
      ),
    ],
  };
}
