/**
 * One cut for the screen: the picture alone, in whatever room the screen has; heading and sentences stand beside it as
 * text. Scale and place are the same for every cut of a plan that lies the same way.
 */
import type { Plan, PlanCut } from "../cutting/index.ts";
import { bug } from "../measure/index.ts";
import { brokenStick } from "./broken-stick.ts";
import { leanSpan, planeName, titleOf } from "./cut-facts.ts";
import type { PictureOptions } from "./cut-marks.ts";
import { cutScene, type SceneLayout } from "./cut-scene.ts";
import type { Drawing } from "./drawing.ts";
import type { Box, Disc } from "./flat-path.ts";
import { printable } from "./printable-text.ts";
import { scaleFor, standsOnEdge, turnedBox } from "./stick-view.ts";
import { smallScene } from "./strip.ts";

/**
 * The room that a picture may fill, mm. Its lettering is 3.5 mm or more: shown at 3.43 px to the millimetre or more it
 * is at least 12 px high.
 */
export interface SceneSize {
  readonly widthMm: number;
  readonly heightMm: number;
}

/** From here a picture has room to spare beside the stick. */
const WIDE_FROM_MM = 150;
const EDGE_MM = 1;
/** Room for two rows of gauge dimensions below the bench line, for a plane above the stick, for upright dimensions. */
const BELOW_BENCH_MM = 17;
/** As high as the enlargement with its scale, so that it lies clear of the wood. */
const ABOVE_STICK_MM = { wide: 36, narrow: 31 } as const;
const ABOVE_TURNED_MM = 16;
const BESIDE_MM = { wide: 26, narrow: 18 } as const;
const DISC_MM = { wide: 13.5, narrow: 11 } as const;
const LEAST_STICK_MM = 10;
/** Height over width of a picture of good shape. */
const LEAST_SHAPE_RATIO = 0.62;

/**
 * Draws one cut without heading and sentences. The drawing is as wide as `size` says and no higher: what the plan's
 * highest stick does not need is left off, the same for every cut. A number that the plan does not hold is a bug of
 * the caller.
 */
export function drawCutScene(
  plan: Plan,
  cutNumber: number,
  size: SceneSize,
  options: PictureOptions,
): Drawing {
  const cut = cutOf(plan, cutNumber);
  const heightMm = neededHeightMm(plan, size);
  const layout = layoutFor({ widthMm: size.widthMm, heightMm });
  return {
    widthMm: size.widthMm,
    heightMm,
    title: sceneTitle(plan, cut, options),
    description: printable(`${cut.says} ${cut.doneWhen}`).trim(),
    items: cutScene(brokenStick(plan, layout.stickRoom), cutNumber, layout, options),
  };
}

/** The same cut small and without any lettering, for an order at a glance; the plane in its place, what goes. */
export function drawSmallScene(
  plan: Plan,
  cutNumber: number,
  size: SceneSize,
  options: PictureOptions,
): Drawing {
  const cut = cutOf(plan, cutNumber);
  const room = {
    widthMm: size.widthMm - 8,
    flatMm: size.heightMm - 20,
    turnedMm: size.heightMm - 12,
  };
  const broken = brokenStick(plan, room);
  const drawn = broken.plan.cuts.find(({ number }) => number === cutNumber) ?? cut;
  const scaleRatio = scaleFor(broken.plan, cut.cant, room);
  return {
    ...size,
    title: sceneTitle(plan, cut, options),
    description: "",
    items: [smallScene(broken, drawn, { cardMm: size.widthMm, lineY: size.heightMm - 3, scaleRatio })],
  };
}

function cutOf(plan: Plan, cutNumber: number): PlanCut {
  const cut = plan.cuts.find(({ number }) => number === cutNumber);
  return cut ?? bug("the plan has no such cut", { cutNumber });
}

function sceneTitle(plan: Plan, cut: PlanCut, { unit }: PictureOptions): string {
  const name = printable(plan.name).trim();
  return `${name}: cut ${cut.number}, ${titleOf(cut, unit)}; ${planeName(cut)}, ${leanSpan(cut)}`;
}

/**
 * The height that every cut with the stick lying flat needs in this width, mm, and no less than a picture of good shape;
 * one in which it stands on its edge is drawn as large as then fits. Never more than there is.
 */
function neededHeightMm(plan: Plan, size: SceneSize): number {
  const room = layoutFor(size).stickRoom;
  const { plan: drawn } = brokenStick(plan, room);
  const cants = [...new Set([0, ...drawn.cuts.map(({ cant }) => cant)])].filter(
    (cantDeg) => !standsOnEdge(cantDeg),
  );
  const neededMm = cants.map((cantDeg) => {
    const box = turnedBox(drawn.stick, cantDeg);
    const aboveMm = cantDeg === 0 ? ABOVE_STICK_MM[shapeOf(size)] : ABOVE_TURNED_MM;
    return (box.maxY - box.minY) * scaleFor(drawn, cantDeg, room) + aboveMm + BELOW_BENCH_MM + 2 * EDGE_MM;
  });
  return Math.min(size.heightMm, Math.max(size.widthMm * LEAST_SHAPE_RATIO, ...neededMm));
}

function shapeOf({ widthMm }: Pick<SceneSize, "widthMm">): "wide" | "narrow" {
  return widthMm >= WIDE_FROM_MM ? "wide" : "narrow";
}

function layoutFor({ widthMm, heightMm }: SceneSize): SceneLayout {
  const picture: Box = {
    minX: EDGE_MM,
    minY: EDGE_MM,
    maxX: widthMm - EDGE_MM,
    maxY: heightMm - EDGE_MM,
  };
  const shape = shapeOf({ widthMm });
  const radiusMm = DISC_MM[shape];
  const discY = picture.minY + radiusMm + EDGE_MM;
  const right: Disc = { centre: [picture.maxX - radiusMm - EDGE_MM, discY], radiusMm };
  const left: Disc = { centre: [picture.minX + radiusMm + EDGE_MM, discY], radiusMm };
  const sceneMm = picture.maxX - picture.minX;
  const lineY = picture.maxY - BELOW_BENCH_MM;
  return {
    picture,
    stickRoom: {
      widthMm: Math.max(LEAST_STICK_MM, sceneMm - 2 * BESIDE_MM[shape]),
      flatMm: Math.max(LEAST_STICK_MM, lineY - picture.minY - ABOVE_STICK_MM[shape]),
      turnedMm: Math.max(LEAST_STICK_MM, lineY - picture.minY - ABOVE_TURNED_MM),
    },
    bench: {
      centreX: picture.minX + sceneMm / 2,
      lineY,
      fromX: picture.minX + 1,
      toX: picture.maxX - 1,
    },
    // An upper corner: whichever the plane leaves free.
    enlarged: [right, left],
    uprights: {
      leftmostMm: picture.minX + BESIDE_MM[shape] - 2,
      rightmostMm: picture.maxX - BESIDE_MM[shape] + 2,
    },
  };
}
