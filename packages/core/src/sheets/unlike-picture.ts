/** Two unlike mouldings at a corner: the line of their mitre in plan, its points, and both pieces at the saw. */
import type { Point } from "../curve/index.ts";
import type { MitrePoint, UnlikeMitre } from "../making/index.ts";
import { type LengthUnit, toRad, writerFor } from "../measure/index.ts";
import { linearDimension } from "./dimension.ts";
import {
  circlePath,
  closedPath,
  type Drawing,
  fill,
  group,
  openPath,
  type PaperPoint,
  stroke,
  text,
} from "./drawing.ts";
import { type FitPictureOptions, fitPage, innerWidthMm, type PagePanel } from "./fit-page.ts";
import {
  angleItems,
  boundsOfPoints,
  groundItems,
  modelAside,
  paperAside,
  sketch,
  spotOn,
  spotsRound,
  spotsTowards,
} from "./fit-sketch.ts";
import { figureMm, LABEL_MM, LEAST_LETTERING_MM } from "./lettering.ts";
import { markedPoints } from "./marked-points.ts";
import { GAUGE_LINE, INK, WOOD_TINT } from "./palette.ts";
import { sawDeg, sawPanel } from "./saw-picture.ts";

export interface UnlikeSizes {
  readonly firstMm: number;
  readonly secondMm: number;
}

/** `sizes`: the projections of both mouldings. */
export function drawUnlike(answer: UnlikeMitre, sizes: UnlikeSizes, options: FitPictureOptions): Drawing {
  const { corner, line } = answer;
  const shown = markedPoints(answer.points);
  const isCurved = line === "curved";
  return fitPage(
    {
      title: `Unlike mouldings at an ${corner.kind} corner of ${sawDeg(corner.cornerDeg)}`,
      notes: [
        `The mitre leaves the first wall at ${sawDeg(answer.fromFirstWallDeg)} and the second at ${sawDeg(answer.fromSecondWallDeg)}${isCurved ? ", measured along its chord; it bends, so saw outside the chord and pare to the points" : ""}. First and second from left to right as you face the corner.`,
      ],
    },
    [
      {
        heightMm: isCurved ? 104 : 96,
        panels: [
          planPanel(answer, sizes, options.unit),
          ...(isCurved ? [curvePanel(answer.points, shown)] : []),
        ],
        shares: [1.25, 1],
      },
      ...(isCurved
        ? pointsPanels(shown, innerWidthMm(options), options.unit).map((panel) => ({
            heightMm: 18 + TABLE_LINE_MM * shown.length,
            panels: [panel],
          }))
        : []),
      {
        heightMm: 112,
        panels: [
          sawPanel(isCurved ? "First, along the chord" : "First, laid flat", answer.first),
          sawPanel(isCurved ? "Second, along the chord" : "Second, laid flat", answer.second),
        ],
      },
    ],
    options,
  );
}

/** In plan the first wall runs to the left from the corner, you stand below. */
function inPlan({ alongFirstMm, fromFirstWallMm }: MitrePoint): Point {
  return { x: -alongFirstMm, y: -fromFirstWallMm };
}

function planPanel(answer: UnlikeMitre, { firstMm, secondMm }: UnlikeSizes, unit: LengthUnit): PagePanel {
  const write = writerFor(unit);
  const { corner, points } = answer;
  return {
    heading: "The corner from above, projections in proportion",
    draw: (box) => {
      const at = { x: 0, y: 0 };
      const reach = 1.9 * Math.max(firstMm, secondMm);
      const secondDeg = corner.kind === "inside" ? 180 + corner.cornerDeg : 180 - corner.cornerDeg;
      const mitre = points.map(inPlan);
      const start = mitre[0] as Point;
      const end = mitre[mitre.length - 1] as Point;
      // Of a moulding only what lies below the other's top meets it; what stands out farther is dashed.
      const meets = (
        fromWallMm: (one: MitrePoint) => number,
      ): { readonly mm: number; readonly to: number } => {
        const mm = Math.max(...points.map(fromWallMm));
        return { mm, to: points.findIndex((one) => fromWallMm(one) === mm) };
      };
      const first = {
        wall: modelAside(at, reach, 180),
        outDeg: 270,
        outMm: firstMm,
        meets: meets(({ fromFirstWallMm }) => fromFirstWallMm),
      };
      const second = {
        wall: modelAside(at, reach, secondDeg),
        outDeg: secondDeg - 90,
        outMm: secondMm,
        meets: meets(({ fromSecondWallMm }) => fromSecondWallMm),
      };
      const frontOf = ({ wall, outDeg, meets }: typeof first): Point => modelAside(wall, meets.mm, outDeg);
      const tipOf = ({ meets }: typeof first): Point => mitre[meets.to] ?? end;
      const body = (one: typeof first): readonly Point[] => [
        at,
        one.wall,
        frontOf(one),
        tipOf(one),
        ...mitre.slice(0, one.meets.to).reverse(),
      ];
      const over = (one: typeof first): readonly Point[] =>
        one.outMm - one.meets.mm > MOST_UNSEEN_MM
          ? [
              modelAside(one.wall, one.outMm, one.outDeg),
              modelAside(tipOf(one), one.outMm - one.meets.mm, one.outDeg),
            ]
          : [];
      const all = [...body(first), ...body(second), ...over(first), ...over(second)];
      const view = sketch({
        bounds: boundsOfPoints(all),
        box: { ...box, maxY: box.maxY - 6 },
        marginMm: 15,
      });
      for (const one of [first, second]) {
        view.draw("piece", [
          fill([closedPath(body(one).map(view.at))], WOOD_TINT),
          stroke(openPath([view.at(one.wall), view.at(frontOf(one)), view.at(tipOf(one))]), {
            weight: "wide",
          }),
          ...(over(one).length === 0 ? [] : [stroke(openPath(over(one).map(view.at)), { line: "dashed" })]),
        ]);
      }
      view.draw("wall", groundItems(view.at(first.wall), view.at(at)));
      view.draw("wall", groundItems(view.at(at), view.at(second.wall)));
      view.draw("chord", [stroke(openPath([view.at(start), view.at(end)]), { line: "long-dashed dotted" })]);
      view.draw("mitre", [stroke(openPath(mitre.map(view.at)), { weight: "wide", colour: GAUGE_LINE })]);
      const chordDeg = (Math.atan2(end.y - start.y, end.x - start.x) * 180) / Math.PI;
      const inside = corner.kind === "inside";
      // At an outside corner the mitre runs on past the walls: the angles are shown where it leaves them.
      const firstArc = angleItems({
        centre: view.at(at),
        radiusMm: 21,
        fromDeg: inside ? 180 : 0,
        sweepDeg: inside ? answer.fromFirstWallDeg : -answer.fromFirstWallDeg,
      });
      const secondArc = angleItems({
        centre: view.at(at),
        radiusMm: 27,
        fromDeg: inside ? secondDeg : secondDeg - 180,
        sweepDeg: inside ? -answer.fromSecondWallDeg : answer.fromSecondWallDeg,
      });
      view.draw("angle", [
        ...firstArc.items,
        ...secondArc.items,
        ...beyondWalls(inside, view.at(at), secondDeg),
      ]);
      // Where an angle has no room for its figure before the walls, the figure stands behind its own wall.
      const behind = ({ outDeg }: typeof first, alongDeg: number, radiusMm: number) =>
        inside ? spotsTowards(paperAside(view.at(at), radiusMm, alongDeg), 3.5, outDeg + 180) : [];
      view.label(
        sawDeg(answer.fromFirstWallDeg),
        [...firstArc.spots.slice(0, 1), ...behind(first, 180, 19)],
        { bold: true },
      );
      view.label(
        sawDeg(answer.fromSecondWallDeg),
        [...secondArc.spots.slice(0, 1), ...behind(second, secondDeg, 26)],
        { bold: true },
      );
      const sizeMm = figureMm(unit);
      for (const { wall, outDeg, outMm } of [first, second]) {
        const from = view.at(wall);
        const to = view.at(modelAside(wall, outMm, outDeg));
        const length = Math.hypot(to[0] - from[0], to[1] - from[1]);
        const out: PaperPoint = [(to[0] - from[0]) / length, (to[1] - from[1]) / length];
        const away: PaperPoint = wall === first.wall ? [out[1], -out[0]] : [-out[1], out[0]];
        const aside: PaperPoint = pointsAway(away, from, view.at(at)) ? away : [-away[0], -away[1]];
        const lines = linearDimension({ from, to, aside, offMm: 6, sizeMm });
        view.draw("dimension", [lines.items]);
        view.label(write.length(outMm), lines.spots, { sizeMm });
      }
      for (const [name, one] of [
        ["first", first],
        ["second", second],
      ] as const) {
        const middle = modelAside(
          modelAside(at, reach * 0.72, one === first ? 180 : secondDeg),
          one.outMm / 2,
          one.outDeg,
        );
        view.label(name, [spotOn(view.at(middle)), ...spotsRound(view.at(middle), 5)]);
      }
      view.label("you stand here", [{ at: [(box.minX + box.maxX) / 2, box.maxY - 1], anchor: "middle" }]);
      view.label("mitre", spotsTowards(view.at(end), 3, chordDeg));
      return view.items();
    },
  };
}

function pointsAway(direction: PaperPoint, from: PaperPoint, corner: PaperPoint): boolean {
  return direction[0] * (from[0] - corner[0]) + direction[1] * (from[1] - corner[1]) > 0;
}

/** Less than this of a moulding over the other is not drawn, mm. */
const MOST_UNSEEN_MM = 0.5;

/** The mitre's line alone, larger, with the points of the table. */
function curvePanel(points: readonly MitrePoint[], shown: readonly MitrePoint[]): PagePanel {
  return {
    heading: "The mitre's line larger, with its points",
    draw: (box) => {
      const line = points.map(inPlan);
      const view = sketch({ bounds: boundsOfPoints(line), box, marginMm: 12 });
      const start = view.at(line[0] as Point);
      const end = view.at(line[line.length - 1] as Point);
      view.draw("chord", [stroke(openPath([start, end]), { line: "long-dashed dotted" })]);
      view.draw("mitre", [stroke(openPath(line.map(view.at)), { weight: "wide", colour: GAUGE_LINE })]);
      for (const [index, one] of shown.entries()) {
        const spot = view.at(inPlan(one));
        view.draw("point", [fill([circlePath(spot, 0.7)], INK)]);
        view.label(String(index + 1), spotsRound(spot, 1.8), { sizeMm: LEAST_LETTERING_MM });
      }
      return view.items();
    },
  };
}

/** Both walls drawn on past an outside corner, for the angles to start from. */
function beyondWalls(inside: boolean, at: PaperPoint, secondDeg: number) {
  if (inside) return [];
  const on = (directionDeg: number): PaperPoint => [
    at[0] + 32 * Math.cos(toRad(directionDeg)),
    at[1] - 32 * Math.sin(toRad(directionDeg)),
  ];
  return [0, secondDeg - 180].map((directionDeg) =>
    stroke(openPath([at, on(directionDeg)]), { line: "long-dashed dotted" }),
  );
}

/** The points of a curved mitre as a table: what is marked on each stick. */
/** A column of the points: where it begins, mm, what stands over it, and what it tells of a point. */
interface PointColumn {
  readonly fromMm: number;
  readonly head: string;
  readonly of: (one: MitrePoint) => number;
}

const WIDE_FROM_MM = 174;

/** The points in one table; on a narrow page in one for each moulding. */
function pointTables(
  widthMm: number,
): readonly { readonly of: string; readonly columns: readonly PointColumn[] }[] {
  const height = { head: "height", of: (one: MitrePoint) => one.heightMm };
  const firstOut = (one: MitrePoint) => one.fromFirstWallMm;
  const alongFirst = (one: MitrePoint) => one.alongFirstMm;
  const secondOut = (one: MitrePoint) => one.fromSecondWallMm;
  const alongSecond = (one: MitrePoint) => one.alongSecondMm;
  if (widthMm >= WIDE_FROM_MM) {
    return [
      {
        of: "",
        columns: [
          { fromMm: 18, ...height },
          { fromMm: 52, head: "first comes out", of: firstOut },
          { fromMm: 88, head: "along first", of: alongFirst },
          { fromMm: 124, head: "second", of: secondOut },
          { fromMm: 150, head: "along second", of: alongSecond },
        ],
      },
    ];
  }
  const ofOne = (out: PointColumn["of"], along: PointColumn["of"]) => [
    { fromMm: widthMm * 0.15, ...height },
    { fromMm: widthMm * 0.43, head: "comes out", of: out },
    { fromMm: widthMm * 0.72, head: "along it", of: along },
  ];
  return [
    { of: ", first", columns: ofOne(firstOut, alongFirst) },
    { of: ", second", columns: ofOne(secondOut, alongSecond) },
  ];
}

const TABLE_LINE_MM = 5.6;

function pointsPanels(shown: readonly MitrePoint[], widthMm: number, unit: LengthUnit): PagePanel[] {
  const write = writerFor(unit);
  return pointTables(widthMm).map(({ of: which, columns }) => ({
    heading: `Points of the mitre${which}, from the foot up`,
    draw: (box) => {
      const row = (cells: readonly string[], line: number, bold: boolean) =>
        cells.map((words, i) =>
          text([box.minX + (columns[i - 1]?.fromMm ?? 0), box.minY + 5 + line * TABLE_LINE_MM], words, {
            sizeMm: LABEL_MM,
            bold,
          }),
        );
      const head = row(["point", ...columns.map(({ head: words }) => words)], 0, true);
      const body = shown.flatMap((one, index) =>
        row([String(index + 1), ...columns.map(({ of }) => signed(of(one), write.length))], index + 1, false),
      );
      return [group("table", [...head, ...body])];
    },
  }));
}

/** Shorter than this a length is shown as nothing. */
const LEAST_SHOWN_MM = 0.05;

function signed(lengthMm: number, say: (lengthMm: number) => string): string {
  return lengthMm <= -LEAST_SHOWN_MM ? `\u2212${say(-lengthMm)}` : say(Math.max(0, lengthMm));
}
