/** A mitre as the saw sees it: how the moulding springs, which edge goes to the fence, which way the blade turns and leans. */
import type { Point } from "../curve/index.ts";
import type { BothPieces, Mitre, SawCut, Spring } from "../making/index.ts";
import { toRad } from "../measure/index.ts";
import type { Drawing, PaperPoint } from "./drawing.ts";
import { type FitPictureOptions, fitPage, type PagePanel, wordLines } from "./fit-page.ts";
import {
  angleItems,
  boundsOfPoints,
  groundItems,
  modelAside,
  type Sketch,
  sketch,
  spotOn,
  spotsRound,
  spotsTowards,
  woodItems,
} from "./fit-sketch.ts";
import { sawDeg, sawPanel } from "./saw-picture.ts";
import { shootingEndPanel, shootingPlanPanel } from "./shooting-board-picture.ts";

export function drawMitre(answer: Mitre, options: FitPictureOptions): Drawing {
  const { spring, corner, laidFlat, heldAtSpring } = answer;
  const flat = `Laid flat: mitre ${sawDeg(laidFlat.mitreDeg)}, bevel ${sawDeg(laidFlat.bevelDeg)}.`;
  const held = `Held at its spring: mitre ${sawDeg(heldAtSpring.mitreDeg)}, blade upright.`;
  return fitPage(
    {
      title: `Mitre: spring ${sawDeg(spring.fromWallDeg)} from the wall, ${corner.kind} corner ${sawDeg(corner.cornerDeg)}`,
      notes: [`${flat} ${held} Left and right as you face the corner. Not to scale.`],
    },
    [
      {
        heightMm: 82,
        panels: [springPanel(spring), cornerPanel(answer), heldPanel(spring, heldAtSpring)],
        shares: [1.2, 0.85, 0.95],
      },
      {
        heightMm: 112,
        panels: [
          sawPanel("Left-hand piece, laid flat", laidFlat.leftPiece),
          sawPanel("Right-hand piece, laid flat", laidFlat.rightPiece),
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

/** A generic moulding on its back, which runs from the foot on the wall to the head at the ceiling. */
const BACK_MM = 60;
const THICK_MM = 15;

/** Along the face, and out of it, as shares of face and thickness: step, ogee, step, step. */
const FACE: readonly (readonly [number, number])[] = [
  [0, 0.35],
  [0.1, 0.35],
  [0.1, 0.55],
  [0.2, 0.56],
  [0.32, 0.62],
  [0.44, 0.74],
  [0.52, 0.84],
  [0.6, 0.94],
  [0.72, 1.03],
  [0.82, 1.05],
  [0.82, 1.25],
  [1, 1.25],
];

/** The moulding in its place: wall at x = 0, the foot of its back at the origin. */
function mouldingInPlace(spring: Spring): { readonly outline: readonly Point[]; readonly head: Point } {
  const sine = Math.sin(toRad(spring.fromWallDeg));
  const cosine = Math.cos(toRad(spring.fromWallDeg));
  const head = { x: BACK_MM * sine, y: BACK_MM * cosine };
  const low = { x: 0, y: -THICK_MM * 0.7 * sine };
  const high = { x: head.x + THICK_MM * 0.7 * cosine, y: head.y };
  const face = FACE.map(([along, out]) => ({
    x: low.x + (high.x - low.x) * along + out * THICK_MM * cosine,
    y: low.y + (high.y - low.y) * along - out * THICK_MM * sine,
  }));
  return { outline: [{ x: 0, y: 0 }, low, ...face, high, head], head };
}

function springPanel(spring: Spring): PagePanel {
  return {
    heading: `The back, ${sawDeg(spring.fromWallDeg)} from the wall, ${sawDeg(spring.fromCeilingDeg)} from the ceiling`,
    draw: (box) => {
      const { outline, head } = mouldingInPlace(spring);
      const top = head.y;
      const corner = { x: 0, y: top };
      const wallFoot = { x: 0, y: Math.min(...outline.map(({ y }) => y)) - 14 };
      const ceilingEnd = { x: Math.max(...outline.map(({ x }) => x)) + 24, y: top };
      const view = sketch({ bounds: boundsOfPoints([corner, wallFoot, ceilingEnd]), box, marginMm: 4 });
      view.draw("ground", groundItems(view.at(corner), view.at(ceilingEnd)));
      view.draw("ground", groundItems(view.at(wallFoot), view.at(corner)));
      view.draw("wood", woodItems(outline.map(view.at), "end grain"));
      const foot = { x: 0, y: 0 };
      // No arc reaches past wall or ceiling; where the back lies on one of them its square to the other is shown.
      const wallDeg = spring.fromWallDeg;
      const along = (lengthMm: number, mostMm: number): number =>
        Math.max(5, Math.min(mostMm, lengthMm * view.scaleRatio * 0.85));
      springArc(view, foot, wallDeg === 90 ? 270 : 90 - wallDeg, wallDeg, along(head.y, 14));
      springArc(view, head, wallDeg === 0 ? 270 : 180, spring.fromCeilingDeg, along(head.x, 9));
      const low = outline[1] ?? foot;
      const high = outline[outline.length - 2] ?? head;
      view.label("wall edge", [
        { at: [view.at(low)[0] + 2, view.at(low)[1] + 5.5], anchor: "start" },
        ...spotsRound(view.at(low), 5),
      ]);
      view.label("ceiling edge", [
        { at: [view.at(ceilingEnd)[0], view.at(high)[1] + 5.5], anchor: "end" },
        { at: [view.at(high)[0] + 3, view.at(high)[1] + 8], anchor: "start" },
      ]);
      view.label("wall", besideWall(view.at(wallFoot)));
      view.label("ceiling", [{ at: aboveLine(view.at(ceilingEnd)), anchor: "end" }]);
      return view.items();
    },
  };
}

function besideWall(foot: PaperPoint): readonly { readonly at: PaperPoint; readonly anchor: "start" }[] {
  return [{ at: [foot[0] + 1.4, foot[1]], anchor: "start" }];
}

function aboveLine(end: PaperPoint): PaperPoint {
  return [end[0], end[1] - 2.6];
}

function springArc(view: Sketch, at: Point, fromDeg: number, sweepDeg: number, radiusMm: number): void {
  const arc = angleItems({ centre: view.at(at), radiusMm, fromDeg, sweepDeg });
  view.draw("angle", arc.items);
  if (sweepDeg > 0) view.label(sawDeg(sweepDeg), arc.spots, { bold: true });
}

/** Projection of the pieces in the plan, and how far the walls are drawn, mm of the model. */
const PLAN = { projectionMm: 22, wallMm: 62 } as const;

function cornerPanel({ corner }: Mitre): PagePanel {
  return {
    heading: "The corner, from above",
    draw: (box) => {
      const isInside = corner.kind === "inside";
      const at = { x: 0, y: 0 };
      const halfDeg = corner.cornerDeg / 2;
      const secondDeg = isInside ? 180 + corner.cornerDeg : 180 - corner.cornerDeg;
      const middleDeg = isInside ? 180 + halfDeg : -halfDeg;
      const front = modelAside(at, PLAN.projectionMm / Math.sin(toRad(halfDeg)), middleDeg);
      const firstEnd = modelAside(at, PLAN.wallMm, 180);
      const secondEnd = modelAside(at, PLAN.wallMm, secondDeg);
      const firstFront = modelAside(firstEnd, PLAN.projectionMm, 270);
      const secondFront = modelAside(
        secondEnd,
        PLAN.projectionMm,
        isInside ? secondDeg - 90 : secondDeg - 90,
      );
      const left = [at, firstEnd, firstFront, front];
      const right = [at, secondEnd, secondFront, front];
      const view = sketch({ bounds: boundsOfPoints([...left, ...right]), box, marginMm: 7 });
      view.draw("wood", woodItems(left.map(view.at), "along the grain"));
      view.draw("wood", woodItems(right.map(view.at), "along the grain"));
      view.draw("ground", groundItems(view.at(firstEnd), view.at(at)));
      view.draw("ground", groundItems(view.at(at), view.at(secondEnd)));
      const arc = angleItems({
        centre: view.at(at),
        radiusMm: isInside ? 15 : 9,
        fromDeg: 180,
        sweepDeg: isInside ? corner.cornerDeg : -corner.cornerDeg,
      });
      view.draw("angle", arc.items);
      view.label(sawDeg(corner.cornerDeg), arc.spots, { bold: true });
      const onLeft = middleOf(left.map(view.at));
      const onRight = middleOf(right.map(view.at));
      view.label("left", [spotOn(onLeft)]);
      view.label("right", [spotOn(onRight)]);
      view.label(isInside ? "the room" : "you", spotsTowards(view.at(front), 5, isInside ? middleDeg : 270));
      return view.items();
    },
  };
}

function middleOf(points: readonly PaperPoint[]): PaperPoint {
  const count = points.length;
  return [points.reduce((sum, [x]) => sum + x, 0) / count, points.reduce((sum, [, y]) => sum + y, 0) / count];
}

/** As the moulding hangs, turned upside down: the fence is the wall, the table the ceiling. */
function heldPanel(spring: Spring, { leftPiece, rightPiece }: BothPieces): PagePanel {
  return {
    heading: "Held at its spring: upside down in the saw",
    draw: (box) => {
      const { outline, head } = mouldingInPlace(spring);
      const turned = outline.map(({ x, y }): Point => ({ x, y: head.y - y }));
      const heel = { x: 0, y: 0 };
      const fenceTop = { x: 0, y: Math.max(...turned.map(({ y }) => y)) + 8 };
      const tableEnd = { x: Math.max(...turned.map(({ x }) => x)) + 12, y: 0 };
      const room = { ...box, maxY: box.maxY - 28 };
      const view = sketch({ bounds: boundsOfPoints([heel, fenceTop, tableEnd]), box: room, marginMm: 4 });
      view.draw("ground", groundItems(view.at(heel), view.at(fenceTop)));
      view.draw("ground", groundItems(view.at(tableEnd), view.at(heel)));
      view.draw("wood", woodItems(turned.map(view.at), "end grain"));
      view.label("fence = wall", [
        { at: [view.at(fenceTop)[0] + 1.6, view.at(fenceTop)[1] + 2.4], anchor: "start" },
        { at: [view.at(fenceTop)[0] - 1.6, view.at(fenceTop)[1] + 2.4], anchor: "end" },
      ]);
      return [
        ...view.items(),
        ...wordLines(
          ["Table = ceiling; blade upright.", heldWords("Left", leftPiece), heldWords("Right", rightPiece)],
          { ...box, minY: box.maxY - 26 },
        ),
      ];
    },
  };
}

function heldWords(piece: string, { turnHandleTo, mitreDeg, keep }: SawCut): string {
  const handle =
    turnHandleTo === "neither" ? "handle straight" : `handle ${turnHandleTo} ${sawDeg(mitreDeg)}`;
  return `${piece}: ${handle}, keep ${keep}.`;
}
