/** The stick along its sticking board: from above with the fence, from the side with the stop; which way it is pushed. */
import type { StickAnswer } from "../making/index.ts";
import { type LengthUnit, writerFor } from "../measure/index.ts";
import { linearDimension } from "./dimension.ts";
import { type Item, openPath, type PaperPoint, stroke } from "./drawing.ts";
import type { PagePanel } from "./fit-page.ts";
import { arrowItems, groundItems, sketch, spotOn, wasteItems, woodItems } from "./fit-sketch.ts";
import { figureMm } from "./lettering.ts";
import { INK, WOOD_GRAIN } from "./palette.ts";

/** Sizes on paper, mm: the stick's and the board's ends, the stop, the stick's two sides as drawn. */
const ALONG = {
  marginMm: 14,
  endMm: 9,
  stopMm: 6,
  planingMm: 16,
  wideMm: 15,
  thickMm: 9,
  boardMm: 6,
} as const;

/** The push runs to the left: the planer stands at the gauge edge. */
export function alongPanel(answer: StickAnswer, unit: LengthUnit): PagePanel {
  const write = writerFor(unit);
  const { board, grain, stock } = answer;
  return {
    heading: "Along the board, gauge edge towards you: above as seen from above, below from its side",
    draw: (box) => {
      const view = sketch({
        bounds: { minX: 0, minY: 0, maxX: 1, maxY: 1 },
        box,
        marginMm: 0,
        scaleRatio: 1,
      });
      const left = box.minX + ALONG.marginMm;
      const right = box.maxX - ALONG.marginMm;
      const stopFace = left + ALONG.endMm + ALONG.stopMm;
      const stickEnd = right - ALONG.endMm;
      const top = box.minY + 17;
      const bottom = top + ALONG.wideMm;
      const isFenced = board.fence !== null;
      view.draw("board", [stroke(openPath(loop(left, top - 5, right, bottom)))]);
      if (isFenced) view.draw("fence", groundItems([stopFace, top], [stickEnd, top]));
      stick(view, stopFace, stickEnd, top, bottom);
      const drift = grain.drift === "straight" ? 0 : grain.drift === "towards the far edge" ? 1 : -1;
      view.draw("grain", fibres(stopFace + ALONG.planingMm, stickEnd - ALONG.planingMm, top, bottom, drift));
      view.label(isFenced ? "fence at the far edge" : "far edge, no fence", [
        { at: [(left + right) / 2, top - 7], anchor: "middle" },
      ]);
      view.label("gauge edge, flush with the board", [{ at: [left, bottom + 5], anchor: "start" }]);
      view.label(grain.drift === "straight" ? "grain straight" : `grain drifts ${grain.drift}`, [
        { at: [right, bottom + 5], anchor: "end" },
      ]);
      const sideTop = bottom + 22;
      const bench = sideTop + ALONG.thickMm;
      view.draw("board", [stroke(openPath(loop(left, bench, right, bench + ALONG.boardMm)))]);
      stick(view, stopFace, stickEnd, sideTop, bench);
      view.draw("grain", fibres(stopFace + ALONG.planingMm, stickEnd - ALONG.planingMm, sideTop, bench, 1));
      if (board.stop !== null) {
        view.draw("stop", [
          stroke(openPath(loop(stopFace - ALONG.stopMm, sideTop + 3, stopFace, bench)), { colour: INK }),
        ]);
        view.label(`stop ${write.length(board.stop.topMm)} high`, [
          { at: [left, sideTop - 1], anchor: "start" },
        ]);
      }
      const middle = (stopFace + stickEnd) / 2;
      view.draw("push", arrowItems([middle + 16, sideTop - 4], [middle - 16, sideTop - 4]));
      view.label("push", [{ at: [middle + 18, sideTop - 2.8], anchor: "start" }], { bold: true });
      view.label("grain rises with the push", [{ at: [right, sideTop - 2.8], anchor: "end" }]);
      const sizeMm = figureMm(unit);
      const size = (from: PaperPoint, to: PaperPoint, offMm: number, words: string): void => {
        const lines = linearDimension({ from, to, aside: [0, 1], offMm, sizeMm });
        view.draw("dimension", [lines.items]);
        view.label(words, lines.spots, { sizeMm });
      };
      const foot = bench + ALONG.boardMm;
      if (board.stop !== null)
        size([stopFace, foot], [right, foot], 7, `${write.length(board.stop.fromStartMm)} to the stop`);
      size([left, foot], [right, foot], 15, `board ${write.length(board.lengthMm)}`);
      view.label(`stick ${write.length(stock.planed.lengthMm)}, ends for planing hatched`, [
        spotOn([(left + right) / 2, box.maxY - 2]),
      ]);
      return view.items();
    },
  };
}

function stick(
  view: ReturnType<typeof sketch>,
  left: number,
  right: number,
  top: number,
  bottom: number,
): void {
  const part = (from: number, to: number): readonly PaperPoint[] => [
    [from, top],
    [to, top],
    [to, bottom],
    [from, bottom],
  ];
  view.draw("waste", wasteItems(part(left, left + ALONG.planingMm)));
  view.draw("waste", wasteItems(part(right - ALONG.planingMm, right)));
  view.draw("wood", woodItems(part(left + ALONG.planingMm, right - ALONG.planingMm), "along the grain"));
}

/** Fibres that run to the left and rise by so much (1), fall (-1) or run level (0). */
function fibres(left: number, right: number, top: number, bottom: number, rise: number): readonly Item[] {
  const long = 26;
  const high = rise * (bottom - top - 3) * 0.55;
  const middle = (top + bottom) / 2;
  const count = Math.floor((right - left) / (long + 4));
  return Array.from({ length: Math.max(1, count) }, (_, index) => {
    const from = right - 4 - index * (long + 4);
    return stroke(
      openPath([
        [from, middle + high / 2],
        [Math.max(left + 1, from - long), middle - high / 2],
      ]),
      { colour: WOOD_GRAIN },
    );
  });
}

function loop(minX: number, minY: number, maxX: number, maxY: number): readonly PaperPoint[] {
  return [
    [minX, minY],
    [maxX, minY],
    [maxX, maxY],
    [minX, maxY],
    [minX, minY],
  ];
}
