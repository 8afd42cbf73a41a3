/** A hip: from above, rising along its length, its backing, and the side cut of the boards that end at it. */
import type { Hip, HipSide } from "../making/index.ts";
import { toDeg, toRad, writerFor } from "../measure/index.ts";
import { linearDimension } from "./dimension.ts";
import { type Drawing, openPath, type PaperPoint, stroke } from "./drawing.ts";
import { type FitPictureOptions, fitPage, type PagePanel } from "./fit-page.ts";
import {
  angleItems,
  arrowItems,
  boundsOfPoints,
  modelAside,
  paperAside,
  sketch,
  spotOn,
  spotsRound,
  spotsTowards,
  wasteItems,
  woodItems,
} from "./fit-sketch.ts";
import { figureMm } from "./lettering.ts";
import { GAUGE_LINE } from "./palette.ts";
import { sawDeg } from "./saw-picture.ts";

/** How far the main side runs level, if it was said, and what stands on the corner. */
export interface HipSaid {
  readonly runMm: number | null;
  readonly name: "hip" | "valley";
}

export function drawHip(answer: Hip, said: HipSaid, options: FitPictureOptions): Drawing {
  const { main, adjacent } = answer;
  const like = main.slopeDeg === adjacent.slopeDeg;
  return fitPage(
    {
      title: `The ${said.name} between slopes of ${sawDeg(main.slopeDeg)}${like ? "" : ` and ${sawDeg(adjacent.slopeDeg)}`}`,
      notes: [
        `Slopes from level; plan angles between the eaves${said.name === "hip" ? "" : ", carried on past the corner,"} and the ${said.name}, seen from above. Backing from square to the ${said.name}'s upright sides; side cut from a square cut across the board. Not to scale.`,
      ],
    },
    [
      { heightMm: 88, panels: [planPanel(answer, said), risePanel(answer, said, options)] },
      { heightMm: 84, panels: [backingPanel(answer, said), jackPanel(main, "main", said)] },
      ...(like && main.planDeg === adjacent.planDeg
        ? []
        : [
            {
              heightMm: 84,
              panels: [jackPanel(adjacent, "adjacent", said), { heading: "", draw: () => [] }],
            },
          ]),
    ],
    options,
  );
}

/** Eaves of the main side level below, the hip between them and the other side's. */
function planPanel({ main, adjacent }: Hip, { name }: HipSaid): PagePanel {
  return {
    heading: "From above",
    draw: (box) => {
      const at = { x: 0, y: 0 };
      const cornerDeg = main.planDeg + adjacent.planDeg;
      // A hip stands over the corner's inside; a valley runs back from an inside corner, its angles from the eaves
      // carried on past it.
      const turnDeg = name === "hip" ? 0 : 180;
      const mainEnd = modelAside(at, 100, 0);
      const adjacentEnd = modelAside(at, 100, cornerDeg);
      const hipEnd = modelAside(at, 110, main.planDeg + turnDeg);
      const past = turnDeg === 0 ? [] : [modelAside(at, 70, 180), modelAside(at, 70, cornerDeg + 180)];
      const view = sketch({
        bounds: boundsOfPoints([at, mainEnd, adjacentEnd, hipEnd, ...past]),
        box,
        marginMm: 13,
      });
      const line = (to: typeof at, look: Parameters<typeof stroke>[1]) =>
        view.draw("line", [stroke(openPath([view.at(at), view.at(to)]), look)]);
      line(mainEnd, { weight: "wide" });
      line(adjacentEnd, { weight: "wide" });
      for (const end of past) line(end, { line: "long-dashed dotted" });
      line(hipEnd, { weight: "gauge", colour: GAUGE_LINE });
      const mainArc = angleItems({
        centre: view.at(at),
        radiusMm: 18,
        fromDeg: turnDeg,
        sweepDeg: main.planDeg,
      });
      const adjacentArc = angleItems({
        centre: view.at(at),
        radiusMm: 24,
        fromDeg: main.planDeg + turnDeg,
        sweepDeg: adjacent.planDeg,
      });
      view.draw("angle", [...mainArc.items, ...adjacentArc.items]);
      view.label(sawDeg(main.planDeg), mainArc.spots, { bold: true });
      view.label(sawDeg(adjacent.planDeg), adjacentArc.spots, { bold: true });
      view.label("main eaves", [
        { at: [view.at(modelAside(at, 60, 0))[0], view.at(at)[1] + 5.5], anchor: "middle" },
      ]);
      view.label("adjacent eaves", [
        ...spotsTowards(view.at(adjacentEnd), 2.5, cornerDeg),
        ...spotsRound(view.at(adjacentEnd), 4),
      ]);
      view.label(name, spotsTowards(view.at(hipEnd), 2, main.planDeg + turnDeg));
      return view.items();
    },
  };
}

/** Along the hip: the angle it rises at, its length for the run of the main side. */
function risePanel(
  { hipDeg, main, lengthPerRun }: Hip,
  { runMm, name }: HipSaid,
  { unit }: FitPictureOptions,
): PagePanel {
  const write = writerFor(unit);
  return {
    heading: `Seen square to the ${name}: it rises at ${sawDeg(hipDeg)}`,
    draw: (box) => {
      const foot = { x: 0, y: 0 };
      const head = modelAside(foot, 100, hipDeg);
      const below = { x: head.x, y: 0 };
      const view = sketch({ bounds: boundsOfPoints([foot, head, below]), box, marginMm: 16 });
      const thick = 5;
      const under = [view.at(foot), view.at(head)].map(
        (point): PaperPoint => paperAside(point, thick, hipDeg - 90),
      );
      view.draw(
        "hip",
        woodItems(
          [view.at(foot), view.at(head), under[1] as PaperPoint, under[0] as PaperPoint],
          "along the grain",
        ),
      );
      view.draw("level", [
        stroke(openPath([view.at(foot), view.at(below), view.at(head)]), { line: "long-dashed dotted" }),
      ]);
      const arc = angleItems({ centre: view.at(foot), radiusMm: 34, fromDeg: 0, sweepDeg: hipDeg });
      view.draw("angle", arc.items);
      view.label(sawDeg(hipDeg), arc.spots, { bold: true });
      const sizeMm = figureMm(unit);
      const along = linearDimension({
        from: view.at(foot),
        to: view.at(head),
        aside: [-Math.sin(toRad(hipDeg)), -Math.cos(toRad(hipDeg))],
        offMm: 6,
        sizeMm,
      });
      view.draw("dimension", [along.items]);
      const words =
        runMm === null
          ? `${lengthPerRun.toFixed(3)} × the main side's run`
          : `${write.length(lengthPerRun * runMm)} for a run of ${write.length(runMm)}`;
      view.label(
        words,
        [{ at: [(box.minX + box.maxX) / 2, box.minY + 5], anchor: "middle" }, ...along.spots],
        { sizeMm },
      );
      view.label(`main side ${sawDeg(main.slopeDeg)}`, [
        { at: [(box.minX + box.maxX) / 2, box.maxY - 1], anchor: "middle" },
      ]);
      return view.items();
    },
  };
}

/** Half the width of the drawn hip and its depth, mm of the model. */
const HIP = { halfMm: 20, deepMm: 62 } as const;

/** Its end square to its length: the corners that the backing takes off. */
function backingPanel({ main, adjacent }: Hip, { name }: HipSaid): PagePanel {
  const isHip = name === "hip";
  return {
    heading: `Across the ${name}, looking up it: its ${isHip ? "backing" : "hollowed top"}`,
    draw: (box) => {
      const { halfMm, deepMm } = HIP;
      const drop = (side: HipSide): number => halfMm * Math.tan(toRad(side.backingDeg));
      // A hip falls from its middle, a valley rises from it.
      const middleY = isHip ? 0 : -Math.max(drop(main), drop(adjacent));
      const sign = isHip ? -1 : 1;
      const leftTop = { x: -halfMm, y: middleY + sign * drop(adjacent) };
      const rightTop = { x: halfMm, y: middleY + sign * drop(main) };
      const middle = { x: 0, y: middleY };
      const block = [
        { x: -halfMm, y: -deepMm },
        { x: halfMm, y: -deepMm },
        { x: halfMm, y: 0 },
        { x: -halfMm, y: 0 },
      ];
      const view = sketch({ bounds: boundsOfPoints(block), box, marginMm: 17 });
      view.draw("waste", wasteItems(block.map(view.at)));
      view.draw(
        "wood",
        woodItems(
          [leftTop, { x: -halfMm, y: -deepMm }, { x: halfMm, y: -deepMm }, rightTop, middle].map(view.at),
          "end grain",
        ),
      );
      view.draw("square", [
        stroke(
          openPath([view.at({ x: -halfMm * 1.7, y: middleY }), view.at({ x: halfMm * 1.7, y: middleY })]),
          {
            line: "long-dashed dotted",
          },
        ),
      ]);
      for (const [side, fromDeg, turn] of [
        [main, 0, sign],
        [adjacent, 180, -sign],
      ] as const) {
        const arc = angleItems({
          centre: view.at(middle),
          radiusMm: halfMm * view.scaleRatio + 4,
          fromDeg,
          sweepDeg: turn * side.backingDeg,
        });
        view.draw("angle", arc.items);
        view.label(sawDeg(side.backingDeg), arc.spots, { bold: true });
      }
      const base = view.at({ x: 0, y: -deepMm })[1] + 5.5;
      view.label("main side", [{ at: [view.at({ x: halfMm * 0.4, y: 0 })[0], base], anchor: "start" }]);
      view.label("adjacent side", [{ at: [view.at({ x: -halfMm * 0.4, y: 0 })[0], base], anchor: "end" }]);
      return view.items();
    },
  };
}

/** A board that runs level along one side and ends at the hip, seen square to its face, the eaves below it. */
function jackPanel(
  { jackSideCutDeg, slopeDeg }: HipSide,
  which: "main" | "adjacent",
  { name }: HipSaid,
): PagePanel {
  return {
    heading: `A board that runs level on the ${which} side (${sawDeg(slopeDeg)}), square to its face`,
    draw: (box) => {
      const view = sketch({
        bounds: { minX: 0, minY: 0, maxX: 1, maxY: 1 },
        box,
        marginMm: 0,
        scaleRatio: 1,
      });
      const wide = 20;
      // Boards grow shorter up to a hip and longer up to a valley.
      const up = name === "hip" ? 1 : -1;
      const longPoint: PaperPoint = [box.minX + 12, box.minY + (up > 0 ? 46 : 22)];
      const across = longPoint[1] - up * wide;
      const right = box.maxX - 20;
      const shortX = Math.min(right - 10, longPoint[0] + wide * Math.tan(toRad(jackSideCutDeg)));
      const board: readonly PaperPoint[] = [
        longPoint,
        [right, longPoint[1]],
        [right, across],
        [shortX, across],
      ];
      view.draw("board", woodItems(board, "along the grain"));
      const drawnDeg = up * (90 - toDeg(Math.atan((shortX - longPoint[0]) / wide)));
      const beyond = paperAside([shortX, across], 14, drawnDeg);
      view.draw("hip", [
        stroke(openPath([paperAside(longPoint, -8, drawnDeg), beyond]), {
          weight: "gauge",
          colour: GAUGE_LINE,
          line: "long-dashed double-dotted",
        }),
        stroke(openPath([longPoint, [longPoint[0], across - up * 16]]), { line: "long-dashed dotted" }),
      ]);
      const arc = angleItems({
        centre: longPoint,
        radiusMm: wide + 9,
        fromDeg: up * 90,
        sweepDeg: drawnDeg - up * 90,
      });
      view.draw("angle", arc.items);
      view.label(`side cut ${sawDeg(jackSideCutDeg)}`, arc.spots, { bold: true });
      const middleY = longPoint[1] - (up * wide) / 2;
      view.label("board", [spotOn([(shortX + right) / 2, middleY])]);
      view.label(name, spotsRound(beyond, 3));
      view.draw("slope", arrowItems([right + 7, middleY + wide / 2], [right + 7, middleY - wide / 2]));
      view.label("up the slope", [{ at: [box.maxX - 1, middleY + wide / 2 + 6], anchor: "end" }]);
      view.label("long point", [
        { at: [longPoint[0] + 3, longPoint[1] + (up > 0 ? 6 : -2.5)], anchor: "start" },
      ]);
      return view.items();
    },
  };
}
