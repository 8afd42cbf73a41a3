/** How a sawn end is trimmed: the shooting board from above and from its end. */
import type { ShootingBoard } from "../making/index.ts";
import { toRad } from "../measure/index.ts";
import { closedPath, openPath, type PaperPoint, stroke } from "./drawing.ts";
import type { PagePanel } from "./fit-page.ts";
import {
  angleItems,
  arrowItems,
  groundItems,
  paperAside,
  sketch,
  spotsRound,
  woodItems,
} from "./fit-sketch.ts";
import type { Box } from "./flat-path.ts";
import { FAINT_INK, GAUGE_LINE } from "./palette.ts";
import { sawDeg } from "./saw-picture.ts";

/** Sizes on paper, mm: the board's length and width, the plane's side, the stick. */
const BOARD = { alongMm: 78, acrossMm: 34, planeMm: 9, stickMm: 13, reachMm: 32 } as const;

/** From above: the plane on its side runs along the board's edge, the stick lies against the fence. */
export function shootingPlanPanel({ fenceDeg }: ShootingBoard): PagePanel {
  return {
    heading: `Trimmed on the shooting board: fence ${sawDeg(fenceDeg)} to the plane's run`,
    draw: (box) => {
      const view = paperSketch(box);
      const edgeY = box.minY + 15;
      const left = (box.minX + box.maxX - BOARD.alongMm) / 2;
      const right = left + BOARD.alongMm;
      const board: readonly PaperPoint[] = [
        [left, edgeY],
        [right, edgeY],
        [right, edgeY + BOARD.acrossMm],
        [left, edgeY + BOARD.acrossMm],
      ];
      view.draw("board", [stroke(closedPath(board), { colour: FAINT_INK })]);
      // The plane pushes to the right; the fence holds the stick from that side.
      const heel: PaperPoint = [left + BOARD.alongMm * (fenceDeg < 60 ? 0.7 : 0.62), edgeY];
      const fenceEnd = paperAside(
        heel,
        BOARD.reachMm / Math.max(0.7, Math.sin(toRad(fenceDeg))),
        180 + fenceDeg,
      );
      const across = BOARD.stickMm / Math.max(0.35, Math.sin(toRad(fenceDeg)));
      const toe: PaperPoint = [heel[0] - across, edgeY];
      const stickEnd: PaperPoint = [fenceEnd[0] - across, fenceEnd[1]];
      view.draw("wood", woodItems([toe, heel, fenceEnd, stickEnd], "along the grain"));
      view.draw("fence", groundItems(heel, fenceEnd));
      const planeBox: readonly PaperPoint[] = [
        [left + 4, edgeY - BOARD.planeMm],
        [left + 34, edgeY - BOARD.planeMm],
        [left + 34, edgeY],
        [left + 4, edgeY],
      ];
      view.draw("plane", [
        stroke(closedPath(planeBox), { line: "long-dashed double-dotted" }),
        ...arrowItems([left + 37, edgeY - BOARD.planeMm / 2], [left + 55, edgeY - BOARD.planeMm / 2]),
        stroke(
          openPath([
            [left - 4, edgeY],
            [right + 4, edgeY],
          ]),
          { weight: "gauge", colour: GAUGE_LINE },
        ),
      ]);
      const arc = angleItems({
        centre: heel,
        radiusMm: 17,
        fromDeg: 180 + fenceDeg,
        sweepDeg: 180 - fenceDeg,
      });
      const inner = angleItems({ centre: heel, radiusMm: 17, fromDeg: 180, sweepDeg: fenceDeg });
      view.draw("angle", inner.items);
      view.label(sawDeg(fenceDeg), [...inner.spots, ...arc.spots], { bold: true });
      view.label("plane on its side", [{ at: [left + 4, edgeY - BOARD.planeMm - 1.6], anchor: "start" }]);
      view.label("fence", spotsRound([fenceEnd[0] + 2, fenceEnd[1] - 3], 3));
      return view.items();
    },
  };
}

/** From the end of the board, looking along the plane's run: the bed tipped so that the plane can lie square. */
export function shootingEndPanel({ liftDeg }: ShootingBoard): PagePanel {
  const words = liftDeg === 0 ? "bed level" : `bed tipped by ${sawDeg(liftDeg)}`;
  return {
    heading: `The same from its end: ${words}`,
    draw: (box) => {
      const view = paperSketch(box);
      const foot: PaperPoint = [box.minX + 24, box.maxY - 12];
      const end: PaperPoint = [box.maxX - 6, foot[1]];
      view.draw("board", groundItems([end[0], end[1]], [box.minX + 2, foot[1]]));
      const lengthMm = Math.min(46, end[0] - foot[0] - 4, 40 / Math.max(0.2, Math.sin(toRad(liftDeg))));
      const bedEnd = paperAside(foot, lengthMm, liftDeg);
      view.draw("bed", [stroke(openPath([foot, bedEnd, [bedEnd[0], foot[1]]]), { colour: FAINT_INK })]);
      const up = (from: PaperPoint): PaperPoint => paperAside(from, 8, liftDeg + 90);
      // The sawn end is plumb once the bed is tipped by its bevel.
      const topLeft: PaperPoint = [foot[0], foot[1] - 8 / Math.max(0.35, Math.cos(toRad(liftDeg)))];
      view.draw("wood", woodItems([foot, bedEnd, up(bedEnd), topLeft], "along the grain"));
      const plane: readonly PaperPoint[] = [
        [foot[0] - 14, foot[1]],
        [foot[0], foot[1]],
        [foot[0], foot[1] - 22],
        [foot[0] - 14, foot[1] - 22],
      ];
      view.draw("plane", [stroke(closedPath(plane), { line: "long-dashed double-dotted" })]);
      view.label("plane", [{ at: [foot[0] - 7, foot[1] - 24], anchor: "middle" }]);
      if (liftDeg > 0) {
        const arc = angleItems({
          centre: foot,
          radiusMm: Math.min(26, lengthMm * 0.8),
          fromDeg: 0,
          sweepDeg: liftDeg,
        });
        view.draw("angle", arc.items);
        view.label(sawDeg(liftDeg), arc.spots, { bold: true });
      }
      return view.items();
    },
  };
}

function paperSketch(box: Box): ReturnType<typeof sketch> {
  return sketch({ bounds: { minX: 0, minY: 0, maxX: 1, maxY: 1 }, box, marginMm: 0, scaleRatio: 1 });
}
