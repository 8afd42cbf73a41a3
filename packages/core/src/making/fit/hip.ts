/** Hips and valleys: roofs of little houses, lids and pediments, and the backing that a moulded hip is bevelled to. */
import { point } from "../../curve/index.ts";
import {
  cataloguedTrouble,
  fine,
  type Outcome,
  refused,
  SAME_POINT_DEG,
  type TroubleCode,
  toDeg,
  toRad,
} from "../../measure/index.ts";
import { sawCaution } from "./cautions.ts";
import { type CornerKind, LEAST_CORNER_DEG, MOST_CORNER_DEG } from "./corner.ts";
import type { DrawnView, FitDrawing, FitTrouble } from "./types.ts";

export interface HipQuestion {
  /** Slope of the main side, degrees from level. */
  readonly mainDeg: number;
  /** Slope of the side next to it; the same if left out. */
  readonly adjacentDeg?: number | undefined;
  /** Between the two eaves in plan; 90° if left out. */
  readonly cornerDeg?: number | undefined;
  /** A hip stands on an outside corner, a valley on an inside one; the angles are the same. */
  readonly kind?: CornerKind | undefined;
}

/** One side of the hip. */
export interface HipSide {
  readonly slopeDeg: number;
  /** Between this side's eaves and the hip, in plan. */
  readonly planDeg: number;
  /** The hip's top edge is bevelled by so much on this side, from square to the hip's upright faces. */
  readonly backingDeg: number;
  /** Swing of the cut across a board that runs level along this side and ends at the hip. */
  readonly jackSideCutDeg: number;
}

export interface Hip {
  readonly hipDeg: number;
  readonly main: HipSide;
  readonly adjacent: HipSide;
  /** Length of the hip for each unit that the main side runs level. */
  readonly lengthPerRun: number;
  readonly convention: {
    readonly slopes: "degrees from level";
    readonly plan: "between the eaves and the hip, seen from above";
    readonly jackSideCut: "swing from a square cut across a board that runs level along its side";
  };
  readonly assumed: readonly FitTrouble[];
  readonly cautions: readonly FitTrouble[];
  readonly drawing: FitDrawing;
}

const STEEPEST_DEG = 85;

/**
 * The hip between two sides of slopes c and c' over eaves that make an angle E in plan.
 *
 * Plan: tan D = tan c' sin E / (tan c + tan c' cos E) (both sides are as high at the hip). Hip: tan = tan c sin D.
 * Backing: sin = sin c cos D. Jack side cut: tan = cos c / tan D. Equal slopes on a square plan: tan hip = tan c / √2.
 * Domain: slopes over 0 up to 85°; corners 30 to 175°. Source: formulas of roof framing (checks/area-d-rake).
 */
export function hip(question: HipQuestion): Outcome<Hip, TroubleCode> {
  const { mainDeg, adjacentDeg = mainDeg, cornerDeg = 90 } = question;
  for (const [where, slopeDeg] of [
    ["main", mainDeg],
    ["adjacent", adjacentDeg],
  ] as const) {
    if (slopeDeg > 0 && slopeDeg <= STEEPEST_DEG) continue;
    return refused(cataloguedTrouble("slope-angle", where, { slopeDeg, mostDeg: STEEPEST_DEG }));
  }
  if (!(cornerDeg >= LEAST_CORNER_DEG && cornerDeg <= MOST_CORNER_DEG)) {
    const facts = { cornerDeg, leastDeg: LEAST_CORNER_DEG, mostDeg: MOST_CORNER_DEG };
    return refused(cataloguedTrouble("corner-angle", "corner", facts));
  }
  const mainRise = Math.tan(toRad(mainDeg));
  const adjacentRise = Math.tan(toRad(adjacentDeg));
  const cornerRad = toRad(cornerDeg);
  const planDeg = toDeg(
    Math.atan2(adjacentRise * Math.sin(cornerRad), mainRise + adjacentRise * Math.cos(cornerRad)),
  );
  const sine = Math.sin(toRad(planDeg));
  const hipDeg = toDeg(Math.atan(mainRise * sine));
  const main = hipSide(mainDeg, planDeg);
  const adjacent = hipSide(adjacentDeg, cornerDeg - planDeg);
  return fine({
    hipDeg,
    main,
    adjacent,
    lengthPerRun: 1 / (sine * Math.cos(toRad(hipDeg))),
    convention: {
      slopes: "degrees from level",
      plan: "between the eaves and the hip, seen from above",
      jackSideCut: "swing from a square cut across a board that runs level along its side",
    },
    assumed: [],
    cautions: [sawCaution()],
    drawing: { views: [hipPlan(main, adjacent), hipBacking(main, adjacent)] },
  });
}

/** The drawings have no size of their own: eaves and hip are drawn this long, mm. */
const DRAWN_MM = 100;

/** The corner from above: the main side's eaves along +x, the hip between them and the other side's. */
function hipPlan(main: HipSide, adjacent: HipSide): DrawnView {
  const at = point(0, 0);
  const cornerDeg = main.planDeg + adjacent.planDeg;
  const out = (directionDeg: number) =>
    point(DRAWN_MM * Math.cos(toRad(directionDeg)), DRAWN_MM * Math.sin(toRad(directionDeg)));
  const angle = (name: string, fromDeg: number, valueDeg: number) => ({
    name,
    at,
    radiusMm: DRAWN_MM / 3,
    fromDeg,
    sweepDeg: valueDeg,
    valueDeg,
  });
  return {
    title: "the corner from above",
    shapes: [
      { kind: "wall", name: "main eaves", run: "open", points: [at, out(0)] },
      { kind: "wall", name: "adjacent eaves", run: "open", points: [at, out(cornerDeg)] },
      { kind: "cut", name: "hip", run: "open", points: [at, out(main.planDeg)] },
    ],
    angles: [angle("main plan", 0, main.planDeg), angle("adjacent plan", main.planDeg, adjacent.planDeg)],
    places: [{ name: "corner", at }],
  };
}

/** The hip's stick cut square to its length, looking up it: both sides of its top bevelled off from the middle. */
function hipBacking(main: HipSide, adjacent: HipSide): DrawnView {
  const ridge = point(0, 0);
  const half = DRAWN_MM / 4;
  const edge = (side: 1 | -1, backingDeg: number) => point(side * half, -half * Math.tan(toRad(backingDeg)));
  return {
    title: "the hip's end, square to its length",
    shapes: [
      {
        kind: "stick",
        name: "hip",
        run: "closed",
        points: [
          edge(-1, adjacent.backingDeg),
          point(-half, -DRAWN_MM),
          point(half, -DRAWN_MM),
          edge(1, main.backingDeg),
          ridge,
        ],
      },
    ],
    angles: [
      {
        name: "main backing",
        at: ridge,
        radiusMm: half,
        fromDeg: 0,
        sweepDeg: -main.backingDeg,
        valueDeg: main.backingDeg,
      },
      {
        name: "adjacent backing",
        at: ridge,
        radiusMm: half,
        fromDeg: 180,
        sweepDeg: adjacent.backingDeg,
        valueDeg: adjacent.backingDeg,
      },
    ],
    places: [{ name: "middle of the hip", at: ridge }],
  };
}

function hipSide(slopeDeg: number, planDeg: number): HipSide {
  const slopeRad = toRad(slopeDeg);
  const planRad = toRad(planDeg);
  return {
    slopeDeg,
    planDeg,
    backingDeg: toDeg(Math.asin(Math.sin(slopeRad) * Math.cos(planRad))),
    jackSideCutDeg: toDeg(Math.atan2(Math.cos(slopeRad) * Math.cos(planRad), Math.sin(planRad))),
  };
}

export interface JackQuestion {
  readonly mainDeg: number;
  readonly jackSideCutDeg: number;
  readonly cornerDeg?: number | undefined;
  readonly kind?: CornerKind | undefined;
}

/**
 * The hip from one side's slope and the side cut measured on a board of it: the plan angle D follows from the cut, and
 * the other side is as high at the hip, tan c' = tan c sin D / sin(E − D). Refused as `hip` and `hipSideFromJack` refuse,
 * and where the hip would lie outside the corner.
 */
export function hipFromJack(question: JackQuestion): Outcome<Hip, TroubleCode> {
  const { mainDeg, jackSideCutDeg, cornerDeg = 90, kind } = question;
  const main = hipSideFromJack(mainDeg, jackSideCutDeg);
  if (!main.ok) return main;
  const restDeg = cornerDeg - main.value.planDeg;
  if (cornerDeg >= LEAST_CORNER_DEG && cornerDeg <= MOST_CORNER_DEG && restDeg <= SAME_POINT_DEG) {
    const facts = { cutDeg: jackSideCutDeg, planDeg: main.value.planDeg, cornerDeg };
    return refused(cataloguedTrouble("jack-beyond-corner", "jack", facts));
  }
  const rise = (Math.tan(toRad(mainDeg)) * Math.sin(toRad(main.value.planDeg))) / Math.sin(toRad(restDeg));
  return hip({ mainDeg, adjacentDeg: toDeg(Math.atan(rise)), cornerDeg, kind });
}

/** The side of a hip from its slope and the side cut of its boards: tan D = cos c / tan J. Degrees. */
export function hipSideFromJack(slopeDeg: number, jackSideCutDeg: number): Outcome<HipSide, TroubleCode> {
  if (!(slopeDeg > 0 && slopeDeg <= STEEPEST_DEG)) {
    return refused(cataloguedTrouble("slope-angle", "slope", { slopeDeg, mostDeg: STEEPEST_DEG }));
  }
  if (!(jackSideCutDeg > 0 && jackSideCutDeg < 90)) {
    return refused(cataloguedTrouble("jack-side-cut", "jack", { cutDeg: jackSideCutDeg }));
  }
  const planDeg = toDeg(Math.atan2(Math.cos(toRad(slopeDeg)), Math.tan(toRad(jackSideCutDeg))));
  return fine(hipSide(slopeDeg, planDeg));
}
