/** A raking moulding: the slope from the front, its three sections at one scale, and every cut at the saw. */
import { flattenPiece, type Point, type Ring } from "../curve/index.ts";
import type { Placing, Rake, RakedMember, RakePoint, Rise } from "../making/index.ts";
import { FLATTEN_MM, formatDeg, type LengthUnit, toRad, writerFor } from "../measure/index.ts";
import { linearDimension } from "./dimension.ts";
import { circlePath, type Drawing, fill, openPath, stroke } from "./drawing.ts";
import { type FitPictureOptions, fitPage, type PagePanel } from "./fit-page.ts";
import {
  angleItems,
  boundsOfPoints,
  groundItems,
  type Sketch,
  sketch,
  spotOn,
  spotsRound,
  spotsTowards,
  woodItems,
} from "./fit-sketch.ts";
import type { Box } from "./flat-path.ts";
import { figureMm } from "./lettering.ts";
import { GAUGE_LINE, INK } from "./palette.ts";
import { sawPanel } from "./saw-picture.ts";

export function drawRake(answer: Rake, placing: Placing, options: FitPictureOptions): Drawing {
  const { slopeDeg, cuts } = answer;
  const members = [answer.level, answer.rake, answer.upperReturn];
  const sections = members.map((member) => ({ member, points: onWall(member, placing) }));
  const bounds = boundsOfPoints(sections.flatMap(({ points }) => points));
  return fitPage(
    {
      title: `Slope of ${degrees(slopeDeg)}: ${answer.level.section.name.replace(/, level$/, "")}`,
      notes: [
        "The slope runs up to the right as seen from the front. Heights of the rake are measured square to the slope, those of the level moulding and the upper return plumb; projections from the wall.",
      ],
    },
    [
      { heightMm: 58, panels: [elevationPanel(slopeDeg)] },
      {
        heightMm: 84,
        panels: sections.map(({ member, points }) => memberPanel(member, points, bounds, options.unit)),
      },
      {
        heightMm: 112,
        panels: [
          sawPanel("Level piece at the foot", cuts.levelAtFoot),
          sawPanel("Rake at the foot", cuts.rakeAtFoot),
        ],
      },
      {
        heightMm: 112,
        panels: [
          sawPanel("Rake at the head, to its return", cuts.rakeAtHead),
          sawPanel("Upper return", cuts.upperReturnAtHead),
        ],
      },
      {
        heightMm: 112,
        panels: [
          sawPanel("Rake at the middle, rake to rake", cuts.rakeAtApex),
          { heading: "", draw: () => [] },
        ],
      },
    ],
    options,
  );
}

/** One point's heights in all three sections. */
export function drawRakePoint(point: RakePoint, { slopeDeg }: Rise, options: FitPictureOptions): Drawing {
  const write = writerFor(options.unit);
  const heights = [
    ["Level moulding", point.levelHeightMm],
    ["Rake, square to the slope", point.rakeHeightMm],
    ["Upper return", point.upperReturnHeightMm],
  ] as const;
  const mostMm = Math.max(...heights.map(([, heightMm]) => Math.abs(heightMm)), point.projectionMm, 1);
  return fitPage(
    {
      title: `One point on a slope of ${degrees(slopeDeg)}`,
      notes: [
        `A point that stands ${write.length(point.projectionMm)} from the wall. Heights from the foot: plumb for the level moulding and the upper return, square to the slope for the rake.`,
      ],
    },
    [
      { heightMm: 58, panels: [elevationPanel(slopeDeg)] },
      {
        heightMm: 84,
        panels: heights.map(([heading, heightMm]) =>
          pointPanel(heading, point.projectionMm, heightMm, mostMm, options.unit),
        ),
      },
    ],
    options,
  );
}

function degrees(angleDeg: number): string {
  return formatDeg(angleDeg, { stepDeg: 0.25 });
}

/** The outline on its wall, the wall on the left, its foot and its least projection at nought. */
function onWall(member: RakedMember, placing: Placing): readonly Point[] {
  const { springFromWallDeg } = member;
  const sine = Math.sin(toRad(springFromWallDeg));
  const cosine = Math.cos(toRad(springFromWallDeg));
  // Seen so that the moulding comes out to the right, whichever edge lies at the wall.
  const side = placing.wallEdge === "gauge edge" ? 1 : -1;
  const placed = pointsOf(member.section.outline).map(({ x, y }) => ({
    x: side * sine * x + cosine * y,
    y: side * cosine * x - sine * y,
  }));
  const { minX, minY } = boundsOfPoints(placed);
  return placed.map(({ x, y }) => ({ x: x - minX, y: y - minY }));
}

function pointsOf(ring: Ring): readonly Point[] {
  return ring.pieces.flatMap((piece) => flattenPiece(piece, FLATTEN_MM).slice(1));
}

/** A member on its wall with its sizes, at the scale of all three. */
function memberPanel(member: RakedMember, points: readonly Point[], all: Box, unit: LengthUnit): PagePanel {
  const write = writerFor(unit);
  const name = { level: "Level moulding", rake: "Rake, square to the slope", "upper return": "Upper return" };
  return {
    heading: name[member.member],
    draw: (box) => {
      const view = sketch({ bounds: { ...all, minX: 0, minY: 0 }, box, marginMm: 11 });
      wall(view, all);
      view.draw("wood", woodItems(points.map(view.at), "end grain"));
      const { maxX, maxY } = boundsOfPoints(points);
      sizes(view, { projectionMm: maxX, heightMm: maxY }, unit, write.length(maxX), write.length(maxY));
      return view.items();
    },
  };
}

function wall(view: Sketch, all: Box): void {
  const foot = view.at({ x: 0, y: 0 });
  const head = view.at({ x: 0, y: all.maxY });
  view.draw("wall", groundItems([foot[0], foot[1] + 4], [head[0], head[1] - 4]));
}

function sizes(
  view: Sketch,
  { projectionMm, heightMm }: { readonly projectionMm: number; readonly heightMm: number },
  unit: LengthUnit,
  across: string,
  up: string,
): void {
  const sizeMm = figureMm(unit);
  const foot = { x: 0, y: 0 };
  const width = linearDimension({
    from: view.at(foot),
    to: view.at({ x: projectionMm, y: 0 }),
    aside: [0, 1],
    offMm: 6,
    sizeMm,
  });
  const height = linearDimension({
    from: view.at({ x: projectionMm, y: 0 }),
    to: view.at({ x: projectionMm, y: heightMm }),
    aside: [1, 0],
    offMm: 4,
    sizeMm,
  });
  if (projectionMm > 0) {
    view.draw("dimension", [width.items]);
    view.label(across, width.spots, { sizeMm });
  }
  if (heightMm > 0) {
    view.draw("dimension", [height.items]);
    view.label(up, height.spots, { sizeMm });
  }
}

function pointPanel(
  heading: string,
  projectionMm: number,
  heightMm: number,
  mostMm: number,
  unit: LengthUnit,
): PagePanel {
  const write = writerFor(unit);
  return {
    heading,
    draw: (box) => {
      const all = { minX: 0, minY: Math.min(0, heightMm), maxX: projectionMm, maxY: mostMm };
      const view = sketch({ bounds: { ...all, maxX: mostMm }, box, marginMm: 12 });
      wall(view, all);
      const tip = view.at({ x: projectionMm, y: heightMm });
      view.draw("level", [
        stroke(openPath([view.at({ x: 0, y: 0 }), view.at({ x: mostMm, y: 0 })]), {
          line: "long-dashed dotted",
        }),
      ]);
      view.draw("point", [fill([circlePath(tip, 1.1)], INK)]);
      sizes(
        view,
        { projectionMm, heightMm: Math.max(0, heightMm) },
        unit,
        write.length(projectionMm),
        write.length(heightMm),
      );
      return view.items();
    },
  };
}

/** The slope from the front: level moulding round the corner at the foot, rake, return at the head. */
function elevationPanel(slopeDeg: number): PagePanel {
  return {
    heading: "From the front",
    draw: (box) => {
      const rise = Math.tan(toRad(slopeDeg));
      const run = slopeDeg > 30 ? 34 / rise : 62;
      const deep = 8;
      const across = run * 1.1;
      const up = run * rise;
      const plumb = deep / Math.cos(toRad(slopeDeg));
      const level: readonly Point[] = [
        { x: -26, y: 0 },
        { x: 0, y: 0 },
        { x: 0, y: deep },
        { x: -26, y: deep },
      ];
      const raked: readonly Point[] = [
        { x: 0, y: deep - plumb },
        { x: across, y: up * 1.1 + deep - plumb },
        { x: across, y: up * 1.1 + deep },
        { x: 0, y: deep },
      ];
      const headY = up * 1.1 + deep;
      const back: readonly Point[] = [
        { x: across, y: headY - plumb * 1.3 },
        { x: across + 20, y: headY - plumb * 1.3 },
        { x: across + 20, y: headY },
        { x: across, y: headY },
      ];
      const all = [...level, ...raked, ...back];
      const view = sketch({ bounds: boundsOfPoints(all), box, marginMm: 7, scaleRatio: fitScale(all, box) });
      for (const points of [level, raked, back])
        view.draw("wood", woodItems(points.map(view.at), "along the grain"));
      const foot = view.at({ x: 0, y: deep - plumb });
      if (slopeDeg > 0) {
        const end = view.at({ x: run * 0.75, y: deep - plumb });
        view.draw("level", [
          stroke(openPath([foot, end]), { line: "long-dashed dotted", colour: GAUGE_LINE }),
        ]);
        const arc = angleItems({ centre: foot, radiusMm: 30, fromDeg: 0, sweepDeg: slopeDeg });
        view.draw("angle", arc.items);
        view.label(degrees(slopeDeg), arc.spots, { bold: true });
      }
      view.label("level moulding", [
        { at: [view.at(level[0] as Point)[0], view.at(level[0] as Point)[1] + 5], anchor: "start" },
      ]);
      const middle = view.at({ x: across * 0.45, y: up * 0.5 + deep });
      view.label("rake", [...spotsTowards(middle, 3, 90 + slopeDeg), spotOn(middle)]);
      const end = view.at(back[1] as Point);
      view.label("upper return", [{ at: [end[0], end[1] + 5], anchor: "end" }, ...spotsRound(end, 4)]);
      return view.items();
    },
  };
}

function fitScale(points: readonly Point[], box: Box): number {
  const { minX, maxX, minY, maxY } = boundsOfPoints(points);
  return Math.min((box.maxX - box.minX - 30) / (maxX - minX), (box.maxY - box.minY - 16) / (maxY - minY));
}
