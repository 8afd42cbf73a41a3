/** A run of cornice from above with its pieces, each sort of corner at the saw, and the scribe's outline at full size. */
import type { Point } from "../curve/index.ts";
import type { Cornice, CornicePiece, PieceEnd, SawCut, ScribedEnds } from "../making/index.ts";
import { formatDeg, type LengthUnit, toDeg, toRad, writerFor } from "../measure/index.ts";
import { linearDimension } from "./dimension.ts";
import type { Drawing, PaperPoint } from "./drawing.ts";
import {
  type FitPictureOptions,
  fitPage,
  innerWidthMm,
  type PagePanel,
  type PageRow,
  wordLines,
  wordsHeightMm,
} from "./fit-page.ts";
import {
  angleItems,
  boundsOfPoints,
  groundItems,
  modelAside,
  paperAside,
  type Sketch,
  sketch,
  spotOn,
  spotsRound,
  woodItems,
} from "./fit-sketch.ts";
import type { Box } from "./flat-path.ts";
import { figureMm } from "./lettering.ts";
import { sawPanel } from "./saw-picture.ts";
import { scribePanel } from "./scribe-picture.ts";

/** More sorts of corner than this are named in the list only. */
const MOST_SORTS = 4;

export function drawCornice(
  answer: Cornice,
  asked: { readonly name: string; readonly projectionMm: number; readonly scribes: readonly ScribedEnds[] },
  options: FitPictureOptions,
): Drawing {
  const sorts = cornerSorts(answer.pieces);
  const lines = answer.pieces.map((piece) => pieceWords(piece, options.unit));
  return fitPage(
    {
      title: asked.name,
      notes: [
        "Left and right as you face the wall. Lengths: back along the wall, front at the full projection. In the plan the moulding is drawn wide enough to be seen, and lengths that find no room stand in the list only. Order of fitting: " +
          `${answer.fittingOrder.join(", ")}.`,
      ],
    },
    [
      {
        heightMm: planHeightMm(answer, options),
        panels: [planPanel(answer, asked.projectionMm, options.unit)],
      },
      // Where pictures stand alone the pieces are told beside them.
      ...(options.page?.shows === "pictures"
        ? []
        : [
            {
              heightMm: wordsHeightMm(lines, options),
              panels: [{ heading: "The pieces", draw: (box: Box) => wordLines(lines, box) }],
            },
          ]),
      ...inPairs(sorts.slice(0, MOST_SORTS).flatMap(sawPanels)).map(
        (panels): PageRow => ({ heightMm: 112, panels }),
      ),
      ...inPairs(asked.scribes.map((one) => scribePanel(one, options.unit))).map(
        (panels): PageRow => ({ heightMm: 84, panels }),
      ),
    ],
    options,
  );
}

function sawPanels({ heading, left, right }: CornerSort): readonly PagePanel[] {
  return [
    ...(left === null ? [] : [sawPanel(`${heading}, left piece`, left)]),
    ...(right === null ? [] : [sawPanel(`${heading}, right piece`, right)]),
  ];
}

/** Two beside each other; the last one alone keeps its half of the page. */
function inPairs(panels: readonly PagePanel[]): readonly (readonly PagePanel[])[] {
  const pairs: PagePanel[][] = [];
  for (let index = 0; index < panels.length; index += 2) {
    pairs.push([panels[index] as PagePanel, panels[index + 1] ?? { heading: "", draw: () => [] }]);
  }
  return pairs;
}

function degrees(angleDeg: number): string {
  return formatDeg(angleDeg, { stepDeg: 0.25 });
}

function pieceWords(piece: CornicePiece, unit: LengthUnit): string {
  const write = writerFor(unit);
  const name = piece.kind === "return" ? `${piece.number} (return)` : `${piece.number}`;
  return `${name}: back ${write.length(piece.backMm)}, front ${write.length(piece.frontMm)}; left ${piece.left.joint}, right ${piece.right.joint}; cut the ${piece.cutFirst} end first.`;
}

interface CornerSort {
  readonly heading: string;
  /** The right end of the piece on the left of the corner, and the left end of the other. */
  readonly left: SawCut | null;
  readonly right: SawCut | null;
}

/** Each different mitred or scribed corner once; square ends need no picture. */
function cornerSorts(pieces: readonly CornicePiece[]): readonly CornerSort[] {
  const sorts = new Map<string, { heading: string; left: SawCut | null; right: SawCut | null }>();
  const add = (end: PieceEnd, side: "left" | "right"): void => {
    if (end.corner === null || end.joint === "butt" || end.joint === "square") return;
    const { kind, cornerDeg } = end.corner;
    const joint = end.joint === "scribed" ? "scribe: saw this mitre first" : "mitre";
    const heading = `${kind === "inside" ? "Inside" : "Outside"} ${degrees(cornerDeg)}, ${joint}`;
    const sort = sorts.get(heading) ?? { heading, left: null, right: null };
    sorts.set(heading, { ...sort, [side]: end.laidFlat });
  };
  for (const piece of pieces) {
    add(piece.right, "left");
    add(piece.left, "right");
  }
  return [...sorts.values()];
}

/** Walls from above with the pieces on them; you stand below. */
function planPanel(answer: Cornice, projectionMm: number, unit: LengthUnit): PagePanel {
  const write = writerFor(unit);
  return {
    heading: "The run from above, the longest wall before you",
    draw: (box) => {
      const { walls, turnedDeg } = wallsOf(answer);
      const drawnMm = drawnProjection(walls, projectionMm, box);
      const bodies = answer.pieces.map((piece) => ({
        piece,
        points: bodyOf(piece, walls, drawnMm, projectionMm),
      }));
      const all = [...walls.flatMap(({ from, to }) => [from, to]), ...bodies.flatMap(({ points }) => points)];
      const view = sketch({
        bounds: boundsOfPoints(all),
        box: { ...box, maxY: box.maxY - 6 },
        marginMm: PLAN_MARGIN_MM,
      });
      // A butting piece runs into the corner and is seen whole; the scribed one ends on it.
      const isUnder = ({ piece }: (typeof bodies)[number]): boolean =>
        piece.left.joint === "scribed" || piece.right.joint === "scribed";
      for (const { points } of [...bodies.filter(isUnder), ...bodies.filter((body) => !isUnder(body))]) {
        view.draw("piece", woodItems(points.map(view.at), "along the grain"));
      }
      for (const { from, to } of walls) view.draw("wall", groundItems(view.at(from), view.at(to)));
      for (const { piece, points } of bodies) {
        const on = points.map(view.at);
        const middle: PaperPoint = [mean(on.map(([x]) => x)), mean(on.map(([, y]) => y))];
        view.label(String(piece.number), [spotOn(middle), ...spotsRound(middle, 4)], { bold: true });
      }
      for (const [index, { from, to, headingDeg }] of walls.entries()) {
        const piece = answer.pieces.find(({ kind, wall }) => kind === "wall" && wall === index + 1);
        if (piece === undefined) continue;
        // In a long run short walls would only cover each other with their lengths: those stand in the list.
        const onPaperMm = piece.backMm * view.scaleRatio;
        if (walls.length > MOST_WALLS_MEASURED && onPaperMm < LEAST_MEASURED_MM) continue;
        const aside = paperAside([0, 0], 1, headingDeg + 90);
        // Behind an outside corner stands its angle: the dimension goes round it.
        const isBehindAngle = [piece.left, piece.right].some((end) => isOutsideCorner(end));
        const lines = linearDimension({
          from: view.at(from),
          to: view.at(to),
          aside,
          offMm: isBehindAngle ? ANGLE_ARC_MM + 8 : 7,
          sizeMm: figureMm(unit),
        });
        view.draw("dimension", [lines.items]);
        view.label(write.length(piece.backMm), lines.spots, { sizeMm: figureMm(unit) });
      }
      cornerAngles(view, answer, turnedDeg);
      const bottom = box.maxY - 1;
      view.label("you stand here", [
        { at: [(box.minX + box.maxX) / 2, bottom], anchor: "middle" },
        { at: [box.minX + 2, bottom], anchor: "start" },
      ]);
      return view.items();
    },
  };
}

/** Round the run for dimensions and labels, and the radius of an angle's arc, mm on paper. */
const PLAN_MARGIN_MM = 20;
const ANGLE_ARC_MM = 7;
/** The plan is no lower than this and no higher than that, mm. */
const PLAN_HEIGHTS_MM = { least: 66, most: 118 } as const;

/** As high as the run needs when it fills the page's width. */
function planHeightMm(answer: Cornice, options: FitPictureOptions): number {
  const { walls } = wallsOf(answer);
  const { minX, maxX, minY, maxY } = boundsOfPoints(walls.flatMap(({ from, to }) => [from, to]));
  const roomMm = innerWidthMm(options) - 2 * PLAN_MARGIN_MM;
  const upMm = ((maxY - minY) / (maxX - minX || 1)) * roomMm + 2 * PLAN_MARGIN_MM + 26;
  return Math.min(PLAN_HEIGHTS_MM.most, Math.max(PLAN_HEIGHTS_MM.least, upMm));
}

function isOutsideCorner({ corner, joint }: PieceEnd): boolean {
  return joint === "mitre" && corner?.kind === "outside";
}

interface DrawnWall {
  readonly from: Point;
  readonly to: Point;
  readonly headingDeg: number;
  readonly lengthMm: number;
}

/** The run turned so that its longest wall lies level, the room below it. */
function wallsOf(answer: Cornice): { readonly walls: readonly DrawnWall[]; readonly turnedDeg: number } {
  const run = answer.drawing.views[0]?.shapes[0]?.points ?? [];
  const straight = run.slice(1).map((to, index) => drawnWall(run[index] as Point, to));
  const longest = straight.reduce((kept, wall) => (wall.lengthMm > kept.lengthMm ? wall : kept));
  const turnedDeg = -longest.headingDeg;
  const turned = run.map((place) => turnedPoint(place, turnedDeg));
  return { walls: turned.slice(1).map((to, index) => drawnWall(turned[index] as Point, to)), turnedDeg };
}

function drawnWall(from: Point, to: Point): DrawnWall {
  const headingDeg = toDeg(Math.atan2(to.y - from.y, to.x - from.x));
  return { from, to, headingDeg, lengthMm: Math.hypot(to.x - from.x, to.y - from.y) };
}

function turnedPoint({ x, y }: Point, byDeg: number): Point {
  const cosine = Math.cos(toRad(byDeg));
  const sine = Math.sin(toRad(byDeg));
  return { x: x * cosine - y * sine, y: x * sine + y * cosine };
}

/** At least as wide on paper as a figure is high, as long as the shortest wall bears it. */
function drawnProjection(
  walls: readonly DrawnWall[],
  projectionMm: number,
  box: { readonly minX: number; readonly maxX: number; readonly minY: number; readonly maxY: number },
): number {
  const { minX, maxX, minY, maxY } = boundsOfPoints(walls.flatMap(({ from, to }) => [from, to]));
  const scale = Math.min(
    (box.maxX - box.minX - 40) / (maxX - minX || 1),
    (box.maxY - box.minY - 40) / (maxY - minY || 1),
  );
  const shortest = Math.min(...walls.map(({ lengthMm }) => lengthMm));
  return Math.max(projectionMm, Math.min(6 / scale, shortest / 3));
}

/** A piece's outline in plan; ends as far past the wall's end as their joint says. */
function bodyOf(
  piece: CornicePiece,
  walls: readonly DrawnWall[],
  drawnMm: number,
  projectionMm: number,
): readonly Point[] {
  const { from, to, headingDeg } = walls[piece.wall - 1] as DrawnWall;
  const times = drawnMm / projectionMm;
  const out = (place: Point, pastMm: number): Point =>
    modelAside(modelAside(place, pastMm, headingDeg), drawnMm, headingDeg - 90);
  if (piece.kind === "return") {
    const isAtLeft = piece.right.joint === "return mitre";
    const end = isAtLeft ? from : to;
    const past = isAtLeft ? -drawnMm : drawnMm;
    return [end, modelAside(end, past, headingDeg), out(end, past)];
  }
  return [
    from,
    to,
    out(to, piece.right.frontPastBackMm * times),
    out(from, -piece.left.frontPastBackMm * times),
  ];
}

/** A run of more walls than this shows only lengths that have room. */
const MOST_WALLS_MEASURED = 5;
const LEAST_MEASURED_MM = 26;

/** More corners than this would only cover each other with their angles. */
const MOST_ANGLES = 12;

function cornerAngles(view: Sketch, answer: Cornice, turnedDeg: number): void {
  const angles = answer.drawing.views[0]?.angles ?? [];
  for (const { at, fromDeg, sweepDeg, valueDeg } of angles.slice(0, MOST_ANGLES)) {
    const centre = view.at(turnedPoint(at, turnedDeg));
    const arc = angleItems({ centre, radiusMm: ANGLE_ARC_MM, fromDeg: fromDeg + turnedDeg, sweepDeg });
    view.draw("angle", arc.items);
    view.label(degrees(valueDeg), arc.spots);
  }
}

function mean(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}
