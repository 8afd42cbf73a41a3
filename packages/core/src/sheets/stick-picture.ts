/** The stick on its sticking board, its bevels at the saw, what to do where it is too small, and a section built up of parts. */
import { extentsOf, flattenPiece, type Point, type Ring } from "../curve/index.ts";
import type { BuiltUp, SpringBevel, StickAnswer, WideBoard } from "../making/index.ts";
import { FLATTEN_MM, formatDeg, type LengthUnit, toRad, writerFor } from "../measure/index.ts";
import type { Section } from "../section/index.ts";
import { builtUpRows } from "./built-up-picture.ts";
import { linearDimension } from "./dimension.ts";
import { closedPath, type Drawing, fill, openPath, stroke } from "./drawing.ts";
import { type FitPictureOptions, fitPage, type PagePanel, type PageRow, wordLines } from "./fit-page.ts";
import {
  angleItems,
  arrowItems,
  groundItems,
  modelAside,
  type Sketch,
  sketch,
  spotOn,
  spotsRound,
  spotsTowards,
  wasteItems,
  woodItems,
} from "./fit-sketch.ts";
import { wasteLines } from "./hatch.ts";
import { figureMm } from "./lettering.ts";
import { FAINT_INK, GAUGE_LINE, WASTE_TINT } from "./palette.ts";
import { alongPanel } from "./sticking-board-picture.ts";

export function drawStick(answer: StickAnswer, built: BuiltUp | null, options: FitPictureOptions): Drawing {
  const write = writerFor(options.unit);
  const { buy, planed, finishedLengthMm } = answer.stock;
  const size = ({ widthMm, thicknessMm, lengthMm }: typeof buy): string =>
    `${write.length(widthMm)} × ${write.length(thicknessMm)} × ${write.length(lengthMm)}`;
  // A canted stick has its bevels sawn with the other sides that it did not have as drawn.
  const bevels = answer.cantDeg === 0 ? answer.bevels.bevels : [];
  const rows: PageRow[] = [
    // What cannot be held is said before it is shown lying on its board.
    ...(answer.holding.wideBoard === null
      ? []
      : [{ heightMm: 84, panels: [wideBoardPanel(answer, answer.holding.wideBoard, options.unit)] }]),
    { heightMm: 88, panels: [boardPanel(answer, options.unit)] },
    ...(bevels.length === 0
      ? []
      : [{ heightMm: 84, panels: bevels.map((bevel) => bevelPanel(answer, bevel, options.unit)) }]),
    { heightMm: 96, panels: [alongPanel(answer, options.unit)] },
    ...(built === null ? [] : builtUpRows(built, options.unit)),
  ];
  return fitPage(
    {
      title: `${answer.section.name}: the stick, worked ${answer.stock.way}`,
      notes: [
        `Buy ${size(buy)}, plane to ${size(planed)}, finished length ${write.length(finishedLengthMm)} (width × thickness × length).`,
        "Seen from the end where the stroke starts.",
      ],
    },
    rows,
    options,
  );
}

function degrees(angleDeg: number): string {
  return formatDeg(angleDeg, { stepDeg: 0.25 });
}

function pointsOf(ring: Ring): readonly Point[] {
  return ring.pieces.flatMap((piece) => flattenPiece(piece, FLATTEN_MM).slice(1));
}

function boardPanel(answer: StickAnswer, unit: LengthUnit): PagePanel {
  const write = writerFor(unit);
  const { section, board, stock } = answer;
  return {
    heading: "On the sticking board",
    draw: (box) => {
      const stick = extentsOf(section.stick);
      const shownMm = Math.min(board.thicknessMm, (stick.maxY - stick.minY) * 0.6);
      const foot = stick.minY - shownMm;
      const bounds = {
        minX: stick.minX,
        minY: foot,
        maxX: stick.minX + board.widthMm,
        maxY: stick.maxY,
      };
      const view = sketch({ bounds, box, marginMm: 15 });
      const bed = rectangle(stick.minX, foot, stick.minX + board.widthMm, stick.minY);
      view.draw("board", [stroke(closedPath(bed.map(view.at)), { colour: FAINT_INK })]);
      if (board.fence !== null) {
        const { atMm, topMm, widthMm } = board.fence;
        const fence = rectangle(atMm, stick.minY, atMm + widthMm, stick.minY + topMm);
        view.draw("fence", [stroke(closedPath(fence.map(view.at)), { colour: FAINT_INK })]);
        const top = view.at({ x: atMm + widthMm, y: stick.minY + topMm });
        view.label(`fence ${write.length(topMm)} high`, [
          { at: [top[0], top[1] - 2], anchor: "end" },
          ...spotsRound(top, 3),
        ]);
      }
      const stickOnPaper = pointsOf(section.stick).map(view.at);
      view.draw("stick", [
        fill([closedPath(stickOnPaper)], WASTE_TINT),
        ...wasteLines([stickOnPaper], [pointsOf(section.outline).map(view.at)]),
        stroke(closedPath(stickOnPaper), { line: "dashed" }),
      ]);
      for (const { corners } of board.fillers) view.draw("filler", wasteItems(corners.map(view.at)));
      view.draw("wood", woodItems(pointsOf(section.outline).map(view.at), "end grain"));
      stickSizes(view, section, unit);
      const heel = view.at({ x: stick.minX, y: stick.minY });
      view.label("gauge edge", [
        { at: [heel[0] + 1.5, heel[1] + 4.6], anchor: "start" },
        ...spotsRound(heel, 3),
      ]);
      view.label("board", [spotOn(view.at({ x: stick.minX + board.widthMm / 2, y: foot + shownMm / 2 }))]);
      if (answer.cantDeg !== 0) {
        view.label(`section turned by ${degrees(answer.cantDeg)}`, [
          { at: [view.box.maxX - 2, view.box.minY + 5], anchor: "end" },
        ]);
      }
      if (stock.way === "bevelled first" && board.fillers.length > 0) {
        // Each strip is pointed at from below the board.
        const below = view.at({ x: stick.minX, y: foot })[1] + 8;
        for (const { corners } of board.fillers) {
          const centre = view.at(middleOf(corners));
          view.draw("leader", arrowItems([centre[0] + 6, below - 4], centre));
          view.label("strip of the same bevel", [{ at: [centre[0] + 4, below], anchor: "start" }]);
        }
      }
      return view.items();
    },
  };
}

function rectangle(minX: number, minY: number, maxX: number, maxY: number): readonly Point[] {
  return [
    { x: minX, y: minY },
    { x: maxX, y: minY },
    { x: maxX, y: maxY },
    { x: minX, y: maxY },
  ];
}

function middleOf(corners: readonly Point[]): Point {
  const count = corners.length;
  return {
    x: corners.reduce((sum, { x }) => sum + x, 0) / count,
    y: corners.reduce((sum, { y }) => sum + y, 0) / count,
  };
}

function stickSizes(view: Sketch, section: Section, unit: LengthUnit): void {
  const write = writerFor(unit);
  const { minX, minY, maxX, maxY } = extentsOf(section.stick);
  const sizeMm = figureMm(unit);
  const sizes = [
    {
      from: { x: minX, y: maxY },
      to: { x: maxX, y: maxY },
      aside: [0, -1] as const,
      words: write.length(maxX - minX),
    },
    {
      from: { x: minX, y: minY },
      to: { x: minX, y: maxY },
      aside: [-1, 0] as const,
      words: write.length(maxY - minY),
    },
  ];
  for (const { from, to, aside, words } of sizes) {
    const lines = linearDimension({ from: view.at(from), to: view.at(to), aside, offMm: 7, sizeMm });
    view.draw("dimension", [lines.items]);
    view.label(words, lines.spots, { sizeMm });
  }
}

/** The stick as it lies at the saw for one bevel: on its back or on that edge, the blade leaning through it. */
function bevelPanel(answer: StickAnswer, bevel: SpringBevel, unit: LengthUnit): PagePanel {
  const write = writerFor(unit);
  const isOnBack = bevel.layOn === "back";
  const leanDeg = isOnBack ? bevel.backOnTableDeg : bevel.edgeOnTableDeg;
  return {
    heading: `Bevel at the ${bevel.edge}: lay the stick on ${isOnBack ? "its back" : "that edge"}, blade ${degrees(leanDeg)}`,
    draw: (box) => {
      const { minX, minY, maxX, maxY } = extentsOf(answer.section.stick);
      const width = maxX - minX;
      const thick = maxY - minY;
      // The frame of the saw: table at 0, the bevelled corner at the right.
      const place = ({ x, y }: Point): Point => {
        const fromEdge = bevel.edge === "far edge" ? maxX - x : x - minX;
        return isOnBack ? { x: width - fromEdge, y: y - minY } : { x: thick - (y - minY), y: fromEdge };
      };
      const stick = isOnBack ? rectangle(0, 0, width, thick) : rectangle(0, 0, thick, width);
      const edgeX = bevel.edge === "far edge" ? maxX : minX;
      const corner = { x: edgeX, y: minY };
      const waste = [bevel.from, corner, bevel.to].map(place);
      const [low, high] = [place(bevel.from), place(bevel.to)].sort((a, b) => a.y - b.y) as [Point, Point];
      const [right, up] = [isOnBack ? width : thick, isOnBack ? thick : width];
      const tall = up * 1.25;
      const view = sketch({
        bounds: { minX: -right * 0.05, minY: 0, maxX: right * 1.15, maxY: tall },
        box,
        marginMm: 13,
      });
      view.draw("wood", woodItems(stick.map(view.at), "end grain"));
      view.draw("waste", wasteItems(waste.map(view.at)));
      view.draw("table", groundItems(view.at({ x: right * 1.2, y: 0 }), view.at({ x: -right * 0.1, y: 0 })));
      const reach = tall / Math.max(Math.cos(toRad(leanDeg)), 0.3);
      const directionDeg = (Math.atan2(high.y - low.y, high.x - low.x) * 180) / Math.PI;
      const foot = { x: low.x - (low.y / Math.tan(toRad(directionDeg)) || 0), y: 0 };
      const tip = modelAside(foot, Math.min(reach, up * 1.15), directionDeg);
      view.draw("blade", [
        stroke(openPath([view.at(foot), view.at(tip)]), {
          line: "long-dashed double-dotted",
          weight: "gauge",
          colour: GAUGE_LINE,
        }),
        stroke(openPath([view.at(foot), view.at({ x: foot.x, y: up * 1.1 })]), {
          line: "long-dashed dotted",
        }),
      ]);
      const arc = angleItems({
        centre: view.at(foot),
        radiusMm: 20,
        fromDeg: 90,
        sweepDeg: directionDeg - 90,
      });
      view.draw("angle", arc.items);
      view.label(degrees(leanDeg), arc.spots, { bold: true });
      const onTableMm = isOnBack ? bevel.onBackMm : bevel.onEdgeMm;
      const enters = linearDimension({
        from: view.at(foot),
        to: view.at({ x: right, y: 0 }),
        aside: [0, 1],
        offMm: 5,
        sizeMm: figureMm(unit),
      });
      view.draw("dimension", [enters.items]);
      view.label(write.length(onTableMm), enters.spots, { sizeMm: figureMm(unit) });
      const top = view.at({ x: right * 0.3, y: up });
      view.label(isOnBack ? "face up" : "face to the left", [
        { at: [top[0], top[1] - 2], anchor: "middle" },
        ...spotsTowards(top, 3, 90),
      ]);
      return view.items();
    },
  };
}

/** A board on its edge, the moulding at its top, saw lines below each. */
function wideBoardPanel(answer: StickAnswer, wide: WideBoard, unit: LengthUnit): PagePanel {
  const write = writerFor(unit);
  return {
    heading: "Too small to hold: mould the edge of a wide board and saw the moulding off",
    draw: (box) => {
      const half = { ...box, maxX: box.minX + (box.maxX - box.minX) * 0.45 };
      const { minX, minY, maxX, maxY } = extentsOf(answer.section.stick);
      const up = wide.planed.widthMm;
      const across = maxX - minX;
      const view = sketch({ bounds: { minX: 0, minY: 0, maxX: across, maxY: up }, box: half, marginMm: 12 });
      const lift = up - (maxY - minY);
      const moulding = pointsOf(answer.section.outline).map(({ x, y }) => ({
        x: x - minX,
        y: y - minY + lift,
      }));
      view.draw("board", woodItems(rectangle(0, 0, across, lift).map(view.at), "end grain"));
      view.draw("moulding", woodItems(moulding.map(view.at), "end grain"));
      const lines = linearDimension({
        from: view.at({ x: across, y: 0 }),
        to: view.at({ x: across, y: up }),
        aside: [1, 0],
        offMm: 6,
        sizeMm: figureMm(unit),
      });
      view.draw("dimension", [lines.items]);
      view.label(write.length(up), lines.spots, { sizeMm: figureMm(unit) });
      const { planed, buy, eachMm, count, holdMm } = wide;
      const words = [
        `Board planed to ${write.length(planed.widthMm)} wide, ${write.length(planed.thicknessMm)} thick, ${write.length(planed.lengthMm)} long; bought ${write.length(buy.widthMm)} × ${write.length(buy.thicknessMm)} × ${write.length(buy.lengthMm)}.`,
        `For ${count}: each takes ${write.length(eachMm)} of the width with its saw line, and ${write.length(holdMm)} stays to be held.`,
        "The board stands on its edge while it is moulded; saw off with a push stick and the guard in place.",
      ];
      return [...view.items(), ...wordLines(words, { ...box, minX: half.maxX + 4, minY: box.minY + 8 })];
    },
  };
}
