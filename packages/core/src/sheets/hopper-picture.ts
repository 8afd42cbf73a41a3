/** A box with sloping sides: how its sides stand, a side laid out flat, and both of its ends at the saw. */
import type { Hopper } from "../making/index.ts";
import { type LengthUnit, toRad, writerFor } from "../measure/index.ts";
import { linearDimension } from "./dimension.ts";
import type { Drawing, PaperPoint } from "./drawing.ts";
import { type FitPictureOptions, fitPage, type PagePanel } from "./fit-page.ts";
import {
  angleItems,
  boundsOfPoints,
  groundItems,
  modelAside,
  sketch,
  spotOn,
  spotsRound,
  woodItems,
} from "./fit-sketch.ts";
import { figureMm } from "./lettering.ts";
import { type StickNames, sawDeg, sawPanel } from "./saw-picture.ts";
import { shootingEndPanel, shootingPlanPanel } from "./shooting-board-picture.ts";

const SIDE_NAMES: StickNames = {
  "wall edge": "narrow edge",
  "ceiling edge": "wide edge",
  up: "outside up",
};

export function drawHopper(answer: Hopper, options: FitPictureOptions): Drawing {
  const { polygon, mitreDeg, bevelDeg } = answer;
  return fitPage(
    {
      title: `Hopper of ${polygon.sides} sides, ${sawDeg(answer.fromLevelDeg)} from level`,
      notes: [
        `A side laid flat on its inside: mitre ${sawDeg(mitreDeg)}, bevel ${sawDeg(bevelDeg)}. Left and right as you look at the side's outside with its wide edge up. Not to scale.`,
      ],
    },
    [
      { heightMm: 74, panels: [slopePanel(answer), planPanel(answer), sidePanel(answer, options.unit)] },
      {
        heightMm: 112,
        panels: [
          sawPanel("Left end of a side", answer.leftEnd, SIDE_NAMES),
          sawPanel("Right end of a side", answer.rightEnd, SIDE_NAMES),
        ],
      },
      {
        heightMm: 68,
        panels: [shootingPlanPanel(answer.shootingBoard), shootingEndPanel(answer.shootingBoard)],
      },
    ],
    options,
  );
}

/** Sizes of the drawn side, mm of the model. */
const SIDE = { widthMm: 60, thickMm: 7, footMm: 30 } as const;

/** One side on its end, its outside to the right. */
function slopePanel({ fromLevelDeg, fromPlumbDeg }: Hopper): PagePanel {
  return {
    heading: `A side stands ${sawDeg(fromLevelDeg)} from level, ${sawDeg(fromPlumbDeg)} from plumb`,
    draw: (box) => {
      const foot = { x: 0, y: 0 };
      const rim = modelAside(foot, SIDE.widthMm, fromLevelDeg);
      const inner = [
        modelAside(rim, SIDE.thickMm, fromLevelDeg + 90),
        modelAside(foot, SIDE.thickMm, fromLevelDeg + 90),
      ];
      const ground = [
        { x: -SIDE.footMm, y: 0 },
        { x: Math.max(rim.x, SIDE.footMm), y: 0 },
      ] as const;
      const shape = [foot, rim, ...inner];
      const view = sketch({
        bounds: boundsOfPoints([...shape, ...ground, { x: 0, y: 40 }]),
        box,
        marginMm: 8,
      });
      view.draw("ground", groundItems(view.at(ground[1]), view.at(ground[0])));
      view.draw("wood", woodItems(shape.map(view.at), "end grain"));
      const arc = angleItems({ centre: view.at(foot), radiusMm: 14, fromDeg: 0, sweepDeg: fromLevelDeg });
      view.draw("angle", arc.items);
      view.label(sawDeg(fromLevelDeg), arc.spots, { bold: true });
      view.label("wide edge", spotsRound(view.at(rim), 3));
      view.label("narrow edge", [{ at: [view.at(foot)[0] - 1, view.at(foot)[1] + 6], anchor: "middle" }]);
      return view.items();
    },
  };
}

/** The rim from above, with the corner between two sides. */
function planPanel({ polygon }: Hopper): PagePanel {
  return {
    heading: `From above, corners of ${sawDeg(polygon.cornerDeg)}`,
    draw: (box) => {
      const turnDeg = 360 / polygon.sides;
      const ring = (radiusMm: number) =>
        Array.from({ length: polygon.sides }, (_, side) =>
          modelAside({ x: 0, y: 0 }, radiusMm, -90 - turnDeg / 2 + side * turnDeg),
        );
      const rim = ring(40);
      const foot = ring(26);
      const view = sketch({ bounds: boundsOfPoints(rim), box, marginMm: 7 });
      for (const [side, corner] of rim.entries()) {
        const next = (side + 1) % polygon.sides;
        const four = [corner, rim[next], foot[next], foot[side]].flatMap((one) =>
          one === undefined ? [] : [one],
        );
        view.draw("side", woodItems(four.map(view.at), "along the grain"));
      }
      view.label("wide edge outside", [{ at: [(box.minX + box.maxX) / 2, box.maxY - 1], anchor: "middle" }]);
      return view.items();
    },
  };
}

/** A side's outside laid out flat, in proportion where its sizes are known. */
function sidePanel({ side, mitreDeg }: Hopper, unit: LengthUnit): PagePanel {
  const write = writerFor(unit);
  return {
    heading: "A side's outside, laid out flat",
    draw: (box) => {
      const widthMm = side?.widthMm ?? SIDE.widthMm;
      const narrowMm = side?.narrowEdgeMm ?? SIDE.widthMm;
      const outMm = widthMm * Math.tan(toRad(mitreDeg));
      const half = narrowMm / 2;
      const corners = [
        { x: -half, y: 0 },
        { x: half, y: 0 },
        { x: half + outMm, y: widthMm },
        { x: -half - outMm, y: widthMm },
      ] as const;
      const view = sketch({ bounds: boundsOfPoints(corners), box, marginMm: 14 });
      const [left, right, topRight, topLeft] = corners.map(view.at) as [
        PaperPoint,
        PaperPoint,
        PaperPoint,
        PaperPoint,
      ];
      view.draw("side", woodItems([left, right, topRight, topLeft], "along the grain"));
      if (side === null) {
        view.label("narrow edge", [{ at: [(left[0] + right[0]) / 2, left[1] + 5], anchor: "middle" }]);
        view.label("wide edge", [{ at: [(left[0] + right[0]) / 2, topLeft[1] - 2], anchor: "middle" }]);
        return view.items();
      }
      const sizes = [
        { from: left, to: right, aside: [0, 1] as const, words: write.length(side.narrowEdgeMm) },
        { from: topLeft, to: topRight, aside: [0, -1] as const, words: write.length(side.wideEdgeMm) },
      ];
      for (const { from, to, aside, words } of sizes) {
        const lines = linearDimension({ from, to, aside, offMm: 6, sizeMm: figureMm(unit) });
        view.draw("dimension", [lines.items]);
        view.label(words, lines.spots, { sizeMm: figureMm(unit) });
      }
      const middle: PaperPoint = [(left[0] + right[0]) / 2, (left[1] + topLeft[1]) / 2];
      view.label(`${write.length(side.widthMm)} wide`, [spotOn(middle), ...spotsRound(middle, 5)]);
      return view.items();
    },
  };
}
