/** The drawing that removes doubt about a mitre: the spring, the corner in plan, the stick on the table, the blade. */
import { type Point, point } from "../../curve/index.ts";
import { toRad } from "../../measure/index.ts";
import type { Corner } from "./corner.ts";
import type { SawCut } from "./saw-cut.ts";
import type { Spring } from "./spring.ts";
import type { DrawnAngle, DrawnView, FitDrawing } from "./types.ts";

export interface MitreDrawn {
  readonly spring: Spring;
  readonly corner: Corner;
  readonly widthMm: number;
  readonly cut: SawCut;
}

/** Arcs of angles are drawn with this part of the stick's width as their radius. */
const ARC_PER_WIDTH = 0.4;
/** Walls, fence and stick are drawn on beyond what they carry, as multiples of the width. */
const BEYOND_PER_WIDTH = 1.5;

export function mitreDrawing(drawn: MitreDrawn): FitDrawing {
  return { views: [springView(drawn), cornerView(drawn), tableView(drawn), bladeView(drawn)] };
}

/** The moulding's back between wall and ceiling, seen on its end: wall at x = 0, ceiling above. */
function springView({ spring, widthMm }: MitreDrawn): DrawnView {
  const foot = point(0, 0);
  const head = aside(foot, widthMm, 90 - spring.fromWallDeg);
  const beyond = widthMm * BEYOND_PER_WIDTH;
  const radiusMm = widthMm * ARC_PER_WIDTH;
  const angles: DrawnAngle[] = [
    {
      name: "spring from the wall",
      at: foot,
      radiusMm,
      fromDeg: 90 - spring.fromWallDeg,
      sweepDeg: spring.fromWallDeg,
      valueDeg: spring.fromWallDeg,
    },
    {
      name: "spring from the ceiling",
      at: head,
      radiusMm,
      fromDeg: 180,
      sweepDeg: spring.fromCeilingDeg,
      valueDeg: spring.fromCeilingDeg,
    },
  ];
  return {
    title: "the back between wall and ceiling",
    shapes: [
      { kind: "wall", name: "wall", run: "open", points: [point(0, -beyond / 2), point(0, head.y)] },
      { kind: "ceiling", name: "ceiling", run: "open", points: [point(0, head.y), point(beyond, head.y)] },
      { kind: "stick", name: "flat back", run: "open", points: [foot, head] },
    ],
    angles,
    places: [
      { name: "wall edge", at: foot },
      { name: "ceiling edge", at: head },
    ],
  };
}

/** The corner from above, the first wall along −x from the corner; the room below it at an inside corner. */
function cornerView({ corner, widthMm }: MitreDrawn): DrawnView {
  const at = point(0, 0);
  const beyond = widthMm * BEYOND_PER_WIDTH * 2;
  const isInside = corner.kind === "inside";
  const secondDeg = isInside ? 180 + corner.cornerDeg : 180 - corner.cornerDeg;
  const middleDeg = isInside ? 180 + corner.cornerDeg / 2 : -corner.cornerDeg / 2;
  return {
    title: "the corner from above",
    shapes: [
      { kind: "wall", name: "first wall", run: "open", points: [aside(at, beyond, 180), at] },
      { kind: "wall", name: "second wall", run: "open", points: [at, aside(at, beyond, secondDeg)] },
      { kind: "cut", name: "mitre", run: "open", points: [at, aside(at, beyond, middleDeg)] },
    ],
    angles: [
      {
        name: "corner",
        at,
        radiusMm: widthMm * ARC_PER_WIDTH,
        fromDeg: 180,
        sweepDeg: isInside ? corner.cornerDeg : -corner.cornerDeg,
        valueDeg: corner.cornerDeg,
      },
    ],
    places: [{ name: `${corner.kind} corner`, at }],
  };
}

/** The stick on the table from above, fence at the top, operator below: the left-hand piece. */
function tableView({ widthMm, cut }: MitreDrawn): DrawnView {
  const beyond = widthMm * BEYOND_PER_WIDTH;
  const handle = cut.turnHandleTo === "left" ? 1 : -1;
  const shift = (widthMm / 2) * Math.tan(toRad(cut.mitreDeg)) * handle;
  const far = point(shift, 0);
  const near = point(-shift, -widthMm);
  const side = cut.keep === "left" ? -1 : 1;
  const end = side * (Math.abs(shift) + beyond);
  return {
    title: "the left-hand piece on the saw's table, from above",
    shapes: [
      {
        kind: "fence",
        name: "fence",
        run: "open",
        points: [point(-Math.abs(end), 0), point(Math.abs(end), 0)],
      },
      {
        kind: "stick",
        name: "piece that is kept",
        run: "closed",
        points: [far, point(end, 0), point(end, -widthMm), near],
      },
      {
        kind: "hidden",
        name: "offcut",
        run: "closed",
        points: [far, point(-end, 0), point(-end, -widthMm), near],
      },
      { kind: "cut", name: "saw cut", run: "open", points: [near, far] },
    ],
    angles: [
      {
        name: "mitre",
        at: near,
        radiusMm: widthMm * ARC_PER_WIDTH,
        fromDeg: 90,
        sweepDeg: -handle * cut.mitreDeg,
        valueDeg: cut.mitreDeg,
      },
    ],
    places: [
      { name: cut.edgeAtFence, at: point(end / 2, 0) },
      {
        name: cut.edgeAtFence === "ceiling edge" ? "wall edge" : "ceiling edge",
        at: point(end / 2, -widthMm),
      },
      { name: "keep", at: point(end / 2, -widthMm / 2) },
    ],
  };
}

/** The blade from the operator's place. */
function bladeView({ widthMm, cut }: MitreDrawn): DrawnView {
  const foot = point(0, 0);
  const side = cut.bladeLeans === "left" ? 1 : -1;
  return {
    title: "the blade, seen by the operator",
    shapes: [
      { kind: "table", name: "table", run: "open", points: [point(-widthMm, 0), point(widthMm, 0)] },
      {
        kind: "blade",
        name: "blade",
        run: "open",
        points: [foot, aside(foot, widthMm, 90 + side * cut.bevelDeg)],
      },
    ],
    angles: [
      {
        name: "bevel",
        at: foot,
        radiusMm: widthMm * ARC_PER_WIDTH,
        fromDeg: 90,
        sweepDeg: side * cut.bevelDeg,
        valueDeg: cut.bevelDeg,
      },
    ],
    places: [
      { name: `keep the ${cut.keep}-hand part`, at: point(cut.keep === "left" ? -widthMm : widthMm, 0) },
    ],
  };
}

/** The point at a distance and direction (degrees anticlockwise from +x) from another. */
function aside(from: Point, distanceMm: number, directionDeg: number): Point {
  const directionRad = toRad(directionDeg);
  return point(from.x + distanceMm * Math.cos(directionRad), from.y + distanceMm * Math.sin(directionRad));
}
