/** A moulding along a solid side: where it is fast, where it slides, how far, and what a slot must give. */
import type { SideMoulding } from "../making/index.ts";
import { type LengthUnit, writerFor } from "../measure/index.ts";
import { linearDimension } from "./dimension.ts";
import {
  circlePath,
  type Drawing,
  fill,
  openPath,
  type PaperPoint,
  type Path,
  stroke,
  text,
} from "./drawing.ts";
import { type FitPictureOptions, fitPage, type PagePanel } from "./fit-page.ts";
import { arrowItems, boundsOfPoints, sketch, spotOn, woodItems } from "./fit-sketch.ts";
import { figureMm, LABEL_MM } from "./lettering.ts";
import { changeText } from "./movement-picture.ts";
import { INK, MOVEMENT, WOOD_GRAIN } from "./palette.ts";

export function drawSideMoulding(answer: SideMoulding, options: FitPictureOptions): Drawing {
  const change = (changeMm: number): string =>
    changeMm === 0
      ? "no change"
      : `${changeText(changeMm, options.unit)} ${changeMm > 0 ? "deeper" : "shallower"}`;
  return fitPage(
    {
      title: `Moulding along a solid side of ${answer.timber}`,
      notes: [
        `From the day of fitting the side becomes ${change(answer.driestMm)} at its driest and ${change(answer.wettestMm)} at its wettest; the moulding keeps its length. Places from the front mitre. Movement and slots are drawn larger than they are.`,
      ],
    },
    [
      { heightMm: 96, panels: [sidePanel(answer, options.unit)] },
      { heightMm: 16 + 6 * (answer.screws.length + 1), panels: [slotPanel(answer, options.unit)] },
    ],
    options,
  );
}

/** The case's side from outside, its front on the left, grain upright, the moulding along its top. */
function sidePanel(answer: SideMoulding, unit: LengthUnit): PagePanel {
  const write = writerFor(unit);
  const { depthMm, screws, shortAtBackMm } = answer;
  return {
    heading: "The side from outside, its front edge on the left",
    draw: (box) => {
      const tall = depthMm * 0.42;
      const strip = depthMm * 0.11;
      const bounds = boundsOfPoints([
        { x: 0, y: 0 },
        { x: depthMm, y: tall },
      ]);
      const view = sketch({ bounds, box, marginMm: 20 });
      const [left, top] = view.at({ x: 0, y: tall });
      const [right, bottom] = view.at({ x: depthMm, y: 0 });
      const low = view.at({ x: 0, y: tall - strip })[1];
      view.draw("side", [
        ...woodItems(rectangle(left, top, right, bottom), "along the grain"),
        ...grainLines(left, right, low, bottom),
      ]);
      // The moulding ends short of the back by what the side loses when it is driest.
      const gap = shortAtBackMm > 0 ? 3 : 0;
      view.draw("moulding", woodItems(rectangle(left - 3, top - 3, right - gap, low), "along the grain"));
      const middleY = (top - 3 + low) / 2;
      view.draw("fixed", [fill([circlePath([left + 3.5, middleY], 1.3)], INK)]);
      view.label("fast: glued and screwed at the mitre", [{ at: [left - 3, top - 5], anchor: "start" }], {
        bold: true,
      });
      for (const [index, { fromFrontMm }] of screws.entries()) {
        const centre = view.at({ x: fromFrontMm, y: 0 })[0];
        view.draw("slot", [
          stroke(slotPath([centre, middleY], 5.5, 2.2)),
          fill([circlePath([centre, middleY], 0.9)], INK),
        ]);
        view.label(
          String(index + 1),
          [
            { at: [centre, low + 5.4], anchor: "middle" },
            { at: [centre + 3, low + 5.4], anchor: "start" },
          ],
          { bold: true },
        );
      }
      const arrowY = bottom - 9;
      view.draw("movement", [
        ...arrowItems([right - 16, arrowY], [right - 28, arrowY]),
        ...arrowItems([right - 16, arrowY], [right - 4, arrowY]),
      ]);
      view.label("the side moves", [spotOn([right - 16, arrowY + 4.5])], { colour: MOVEMENT });
      const sizeMm = figureMm(unit);
      const depth = linearDimension({
        from: [left, bottom],
        to: [right, bottom],
        aside: [0, 1],
        offMm: 7,
        sizeMm,
      });
      view.draw("dimension", [depth.items]);
      view.label(write.length(depthMm), depth.spots, { sizeMm });
      if (gap > 0) {
        view.label(
          `${write.length(shortAtBackMm)} short of the back`,
          [{ at: [right, top - 5], anchor: "end" }],
          {
            bold: true,
          },
        );
      }
      view.label("front", [{ at: [left - 4.5, (low + bottom) / 2], anchor: "end" }]);
      view.label("back", [{ at: [right + 2, (low + bottom) / 2], anchor: "start" }]);
      return view.items();
    },
  };
}

/** What each slot must give: its length, and how far the wood goes under it either way. */
function slotPanel({ screws }: SideMoulding, unit: LengthUnit): PagePanel {
  const write = writerFor(unit);
  return {
    heading:
      screws.length === 0
        ? "No screws were named: give their places"
        : "Slots, their length along the moulding",
    draw: (box) => {
      const columns = [0, 16, 50, 84, 130];
      const rows = [
        ["screw", "from the front", "slot at least", "driest", "wettest"],
        ...screws.map(({ fromFrontMm, slotMm, driestMm, wettestMm }, index) => [
          String(index + 1),
          write.length(fromFrontMm),
          write.length(slotMm),
          toWhere(driestMm, unit),
          toWhere(wettestMm, unit),
        ]),
      ];
      return (screws.length === 0 ? [] : rows).flatMap((cells, line) =>
        cells.map((words, column) =>
          text([box.minX + (columns[column] ?? 0), box.minY + 5 + line * 6], words, {
            sizeMm: LABEL_MM,
            bold: line === 0,
          }),
        ),
      );
    },
  };
}

function toWhere(moveMm: number, unit: LengthUnit): string {
  if (moveMm === 0) return "stays";
  return `${changeText(moveMm, unit)} ${moveMm > 0 ? "to the back" : "to the front"}`;
}

function rectangle(minX: number, minY: number, maxX: number, maxY: number): readonly PaperPoint[] {
  return [
    [minX, minY],
    [maxX, minY],
    [maxX, maxY],
    [minX, maxY],
  ];
}

function grainLines(left: number, right: number, top: number, bottom: number) {
  const step = 6;
  const count = Math.floor((right - left) / step);
  return Array.from({ length: Math.max(0, count - 1) }, (_, index) => {
    const x = left + (index + 1) * step;
    return stroke(
      openPath([
        [x, top + 8],
        [x, bottom - 14],
      ]),
      { weight: "hatch", colour: WOOD_GRAIN },
    );
  });
}

/** A slot with round ends. */
function slotPath([x, y]: PaperPoint, longMm: number, wideMm: number): Path {
  const reach = (longMm - wideMm) / 2;
  const half = wideMm / 2;
  return {
    start: [x - reach, y - half],
    steps: [
      { to: [x + reach, y - half] },
      { to: [x + reach, y + half], bulge: -1 },
      { to: [x - reach, y + half] },
      { to: [x - reach, y - half], bulge: -1 },
    ],
    closed: true,
  };
}
