/** A frame from the front with its sizes, across one rail, and each different rail as it lies at the saw. */
import type { Point } from "../curve/index.ts";
import type { Frame, MitreSeasons, Rail, RailEnd } from "../making/index.ts";
import { formatDeg, type LengthUnit, sameMm, toRad, writerFor } from "../measure/index.ts";
import { linearDimension } from "./dimension.ts";
import { closedPath, type Drawing, openPath, type PaperPoint, stroke } from "./drawing.ts";
import { type FitPictureOptions, fitPage, type PagePanel, type PageRow } from "./fit-page.ts";
import {
  angleItems,
  boundsOfPoints,
  fitsIn,
  groundItems,
  type Sketch,
  sketch,
  spotOn,
  spotsRound,
  spotsTowards,
  woodItems,
} from "./fit-sketch.ts";
import { figureMm } from "./lettering.ts";
import { changeText } from "./movement-picture.ts";
import { FAINT_INK, MOVEMENT } from "./palette.ts";

export interface FrameSizes {
  readonly rebateMm: number;
  readonly allowanceMm: number;
}

export function drawFrame(
  answer: Frame,
  sizes: FrameSizes,
  seasons: MitreSeasons | null,
  options: FitPictureOptions,
): Drawing {
  const write = writerFor(options.unit);
  const different = differentRails(answer.rails);
  const shown = different.slice(0, MOST_RAILS);
  const more =
    different.length > shown.length
      ? ` ${different.length - shown.length} more sorts of rail are not drawn.`
      : "";
  const rows: PageRow[] = [
    {
      heightMm: 108,
      panels: [frontPanel(answer, options.unit), acrossPanel(answer, sizes, options.unit)],
      shares: [1.9, 1],
    },
    ...shown.map((rails): PageRow => ({ heightMm: 50, panels: [railPanel(rails, options.unit)] })),
    ...(seasons === null ? [] : [{ heightMm: 70, panels: [seasonsPanel(seasons, options.unit)] }]),
  ];
  return fitPage(
    {
      title: `Frame of ${answer.rails.length} rails`,
      notes: [
        `Rails numbered round the frame, anticlockwise as seen from the front. Long points together ${write.length(answer.stickMm)}, without kerfs and trim.${more}`,
      ],
    },
    rows,
    options,
  );
}

const MOST_RAILS = 4;

/** Rails that are cut alike, each sort with all its rails. */
function differentRails(rails: readonly Rail[]): readonly (readonly Rail[])[] {
  const sorts: Rail[][] = [];
  for (const rail of rails) {
    const sort = sorts.find(([first]) => first !== undefined && isAlike(first, rail));
    if (sort === undefined) sorts.push([rail]);
    else sort.push(rail);
  }
  return sorts;
}

function isAlike(a: Rail, b: Rail): boolean {
  return (
    sameMm(a.outsideMm, b.outsideMm) &&
    sameMm(a.sightMm, b.sightMm) &&
    sameMm(a.widthMm, b.widthMm) &&
    saw(a.start.mitreDeg) === saw(b.start.mitreDeg) &&
    saw(a.end.mitreDeg) === saw(b.end.mitreDeg)
  );
}

function saw(angleDeg: number): string {
  return formatDeg(angleDeg, { stepDeg: 0.25 });
}

function frontPanel(answer: Frame, unit: LengthUnit): PagePanel {
  return {
    heading: "From the front",
    draw: (box) => {
      const { outside, sight, rebate } = answer.outlines;
      const view = sketch({ bounds: boundsOfPoints(outside), box, marginMm: 22 });
      const count = outside.length;
      for (const [index, corner] of outside.entries()) {
        const next = (index + 1) % count;
        const rail = [corner, outside[next] as Point, sight[next] as Point, sight[index] as Point];
        view.draw("rail", woodItems(rail.map(view.at), "along the grain"));
      }
      if (rebate !== null) {
        view.draw("rebate", [stroke(closedPath(rebate.map(view.at)), { line: "dashed" })]);
      }
      numberRails(view, answer);
      const isRectangle = count === 4 && answer.rails.every(({ start }) => saw(start.cornerDeg) === saw(90));
      if (isRectangle) rectangleSizes(view, answer, unit);
      else cornerAngles(view, answer);
      return view.items();
    },
  };
}

/** On the rail, or just outside it where it is too narrow for a figure: never in the opening, between two rails. */
function numberRails(view: Sketch, { rails, outlines: { outside, sight } }: Frame): void {
  for (const [index, rail] of rails.entries()) {
    const next = (index + 1) % outside.length;
    const middleOf = (outline: readonly Point[]): PaperPoint => {
      const [from, to] = [view.at(outline[index] as Point), view.at(outline[next] as Point)];
      return [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2];
    };
    const out = middleOf(outside);
    const inner = middleOf(sight);
    const middle: PaperPoint = [(out[0] + inner[0]) / 2, (out[1] + inner[1]) / 2];
    const railMm = Math.hypot(out[0] - inner[0], out[1] - inner[1]);
    const beside: PaperPoint =
      railMm === 0
        ? out
        : [out[0] + ((out[0] - inner[0]) / railMm) * 3, out[1] + ((out[1] - inner[1]) / railMm) * 3];
    const spots = railMm < NARROW_RAIL_MM ? [spotOn(beside)] : [spotOn(middle), spotOn(beside)];
    view.label(String(rail.number), spots, { bold: true });
  }
}

/** A rail narrower than this on paper has no room for its number. */
const NARROW_RAIL_MM = 4.5;

function rectangleSizes(view: Sketch, { outlines: { outside, sight } }: Frame, unit: LengthUnit): void {
  const write = writerFor(unit);
  const size = (outline: readonly Point[], from: number, to: number): number =>
    Math.hypot(
      (outline[to] as Point).x - (outline[from] as Point).x,
      (outline[to] as Point).y - (outline[from] as Point).y,
    );
  // Sight sizes stand outside too: a narrow opening has no room for them.
  const railMm = (corner: number): number =>
    Math.abs((sight[corner] as Point).x - (outside[corner] as Point).x) * view.scaleRatio;
  const wanted = [
    { outline: outside, from: 3, to: 2, aside: [0, -1] as const, offMm: 7, name: "outside" },
    { outline: outside, from: 0, to: 3, aside: [-1, 0] as const, offMm: 7, name: "" },
    { outline: sight, from: 0, to: 1, aside: [0, 1] as const, offMm: railMm(0) + 7, name: "sight" },
    { outline: sight, from: 1, to: 2, aside: [1, 0] as const, offMm: railMm(1) + 7, name: "" },
  ];
  for (const { outline, from, to, aside, offMm, name } of wanted) {
    const lines = linearDimension({
      from: view.at(outline[from] as Point),
      to: view.at(outline[to] as Point),
      aside,
      offMm,
      sizeMm: figureMm(unit),
    });
    view.draw("dimension", [lines.items]);
    const words = `${name} ${write.length(size(outline, from, to))}`.trim();
    view.label(words, lines.spots, { sizeMm: figureMm(unit) });
  }
}

function cornerAngles(view: Sketch, { rails, outlines: { sight } }: Frame): void {
  if (rails.length > 12) return;
  for (const [index, at] of sight.entries()) {
    const next = sight[(index + 1) % sight.length] as Point;
    const fromDeg = (Math.atan2(next.y - at.y, next.x - at.x) * 180) / Math.PI;
    const { cornerDeg } = (rails[index] as Rail).start;
    const arc = angleItems({ centre: view.at(at), radiusMm: 8, fromDeg, sweepDeg: cornerDeg });
    view.draw("angle", arc.items);
    view.label(saw(cornerDeg), arc.spots);
  }
}

/** Across a rail: the sight edge on the right, the rebate behind, the glass in it. */
function acrossPanel({ rails }: Frame, { rebateMm, allowanceMm }: FrameSizes, unit: LengthUnit): PagePanel {
  return {
    heading: "Across a rail, face up",
    draw: (box) => {
      const write = writerFor(unit);
      const widthMm = Math.max(...rails.map((rail) => rail.widthMm));
      const thickMm = Math.max(widthMm * 0.6, rebateMm);
      const room = { ...box, minY: box.minY + 10, maxY: box.minY + 74 };
      const seenMm = rebateMm > 0 ? widthMm * 0.35 : 0;
      const view = sketch({
        bounds: { minX: 0, minY: 0, maxX: widthMm + seenMm, maxY: thickMm },
        box: room,
        marginMm: 18,
      });
      const deepMm = thickMm * 0.55;
      const corners = [
        { x: 0, y: 0 },
        ...(rebateMm > 0
          ? [
              { x: widthMm - rebateMm, y: 0 },
              { x: widthMm - rebateMm, y: deepMm },
            ]
          : [{ x: widthMm, y: 0 }]),
        ...(rebateMm > 0 ? [{ x: widthMm, y: deepMm }] : []),
        { x: widthMm, y: thickMm },
        { x: 0, y: thickMm },
      ];
      view.draw("wood", woodItems(corners.map(view.at), "end grain"));
      const size = (from: Point, to: Point, up: 1 | -1, words: string): void => {
        const lines = linearDimension({
          from: view.at(from),
          to: view.at(to),
          aside: [0, -up],
          offMm: 6,
          sizeMm: figureMm(unit),
        });
        view.draw("dimension", [lines.items]);
        view.label(words, lines.spots, { sizeMm: figureMm(unit) });
      };
      size({ x: 0, y: thickMm }, { x: widthMm, y: thickMm }, 1, `width ${write.length(widthMm)}`);
      if (rebateMm > 0) {
        const glassFrom = widthMm - rebateMm + allowanceMm / 2;
        const glass = [
          { x: glassFrom, y: deepMm * 0.7 },
          { x: widthMm + seenMm, y: deepMm * 0.7 },
          { x: widthMm + seenMm, y: deepMm },
          { x: glassFrom, y: deepMm },
        ];
        view.draw("glass", [stroke(closedPath(glass.map(view.at)), { colour: FAINT_INK })]);
        view.label("glass", [
          {
            at: [view.at({ x: widthMm + seenMm, y: 0 })[0], view.at({ x: 0, y: deepMm })[1] - 1.5],
            anchor: "end",
          },
          ...spotsRound(view.at({ x: widthMm + seenMm, y: deepMm }), 4),
        ]);
        size({ x: widthMm - rebateMm, y: 0 }, { x: widthMm, y: 0 }, -1, `rebate ${write.length(rebateMm)}`);
      }
      view.label("sight edge", [
        {
          at: [view.at({ x: widthMm, y: 0 })[0] + 1.5, view.at({ x: 0, y: thickMm })[1] + 3],
          anchor: "start",
        },
        ...spotsRound(view.at({ x: widthMm, y: thickMm }), 5),
      ]);
      return view.items();
    },
  };
}

/** A rail from above, its outside edge at the fence, with the lengths of both edges and the cut at each end. */
function railPanel(rails: readonly Rail[], unit: LengthUnit): PagePanel {
  const write = writerFor(unit);
  const [rail] = rails as readonly [Rail];
  const numbers = rails.map(({ number }) => number);
  const named = numbers.length === 1 ? `Rail ${numbers[0]}` : `Rails ${write.list(numbers.map(String))}`;
  return {
    heading: `${named}, on the back, outside edge at the fence`,
    draw: (box) => {
      const fenceY = box.minY + 15;
      const halfMm = 62;
      const centreX = (box.minX + box.maxX) / 2;
      const deep = 17;
      const step = (end: RailEnd): number =>
        (end.longerAt === "outside" ? 1 : -1) * Math.min(26, deep * Math.tan(toRad(end.mitreDeg)));
      const left: PaperPoint = [centreX - halfMm, fenceY];
      const right: PaperPoint = [centreX + halfMm, fenceY];
      const nearLeft: PaperPoint = [left[0] + step(rail.start), fenceY + deep];
      const nearRight: PaperPoint = [right[0] - step(rail.end), fenceY + deep];
      const view = sketch({
        bounds: { minX: 0, minY: 0, maxX: 1, maxY: 1 },
        box,
        marginMm: 0,
        scaleRatio: 1,
      });
      view.draw("wood", woodItems([left, right, nearRight, nearLeft], "along the grain"));
      view.draw("fence", groundItems([box.minX, fenceY], [box.maxX, fenceY]));
      const sizes = [
        { from: left, to: right, aside: [0, -1] as const, words: `outside ${write.length(rail.outsideMm)}` },
        {
          from: nearLeft,
          to: nearRight,
          aside: [0, 1] as const,
          words: `sight ${write.length(rail.sightMm)}`,
        },
      ];
      for (const { from, to, aside, words } of sizes) {
        const lines = linearDimension({ from, to, aside, offMm: 7, sizeMm: figureMm(unit) });
        view.draw("dimension", [lines.items]);
        view.label(words, lines.spots, { sizeMm: figureMm(unit), bold: true });
      }
      endAngle(view, left, nearLeft, rail.start, -1);
      endAngle(view, right, nearRight, rail.end, 1);
      view.label("fence", [{ at: [box.minX, fenceY - 3], anchor: "start" }]);
      if (fitsIn("keep", halfMm)) view.label("keep", [spotOn([centreX, fenceY + deep / 2])]);
      return view.items();
    },
  };
}

/** The swing from a square cut, with the square line; `side` is 1 at the right end. */
function endAngle(view: Sketch, corner: PaperPoint, near: PaperPoint, end: RailEnd, side: 1 | -1): void {
  if (end.mitreDeg === 0) return;
  const reach = 27;
  const square: PaperPoint = [corner[0], corner[1] + reach];
  const long = Math.hypot(near[0] - corner[0], near[1] - corner[1]);
  const beyond: PaperPoint = [
    corner[0] + ((near[0] - corner[0]) / long) * (reach + 3),
    corner[1] + ((near[1] - corner[1]) / long) * (reach + 3),
  ];
  view.draw("square", [stroke(openPath([corner, square]), { line: "long-dashed dotted" })]);
  view.draw("saw cut", [stroke(openPath([near, beyond]), { line: "long-dashed double-dotted" })]);
  const inward = end.longerAt === "outside" ? -side : side;
  const arc = angleItems({ centre: corner, radiusMm: 24, fromDeg: 270, sweepDeg: inward * end.mitreDeg });
  view.draw("angle", arc.items);
  view.label(
    `mitre ${saw(end.mitreDeg)}`,
    [
      { at: [corner[0] + side * 2.5, corner[1] + 25], anchor: side > 0 ? "start" : "end" },
      ...spotsTowards(square, 2, 270),
    ],
    { bold: true },
  );
}

/** Two rails at a corner with the joint's gap drawn larger. */
function seasonsPanel(answer: MitreSeasons, unit: LengthUnit): PagePanel {
  const [view0] = answer.drawing.views;
  const where =
    answer.opensAt === "nowhere" ? "The mitre stays shut" : `The mitre opens at the ${answer.opensAt}`;
  return {
    heading: `${where}: gap ${changeText(answer.gapMm, unit)} (movement drawn 8 times as large)`,
    draw: (box) => {
      const shapes = view0?.shapes ?? [];
      const view = sketch({
        bounds: boundsOfPoints(shapes.flatMap(({ points }) => points)),
        box,
        marginMm: 8,
      });
      for (const { kind, points } of shapes) {
        if (kind === "stick") view.draw("rail", woodItems(points.map(view.at), "along the grain"));
        else
          view.draw("as fitted", [
            stroke(openPath(points.map(view.at)), { line: "dashed", colour: MOVEMENT }),
          ]);
      }
      for (const place of view0?.places ?? []) {
        const at = view.at(place.at);
        // Inside the frame, or outside its corner: away from both rails.
        const awayDeg = answer.cornerDeg / 2 + (answer.opensAt === "inside corner" ? 0 : 180);
        view.label(`gap ${changeText(answer.gapMm, unit)}`, spotsTowards(at, 4, awayDeg), { bold: true });
      }
      return view.items();
    },
  };
}
