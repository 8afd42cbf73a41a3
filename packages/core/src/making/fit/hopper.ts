/** Polygons, boxes with sloping sides (hoppers) and pyramids: the mitre of n like sides. */
import {
  cataloguedTrouble,
  fine,
  type Outcome,
  refused,
  type TroubleCode,
  toDeg,
  toRad,
} from "../../measure/index.ts";
import { beyondSawCaution, dustCaution, sawCaution, shortPieceCaution } from "./cautions.ts";
import { firstTrouble, LARGEST_ACROSS_MM, LONGEST_MM, sizeTrouble } from "./checks.ts";
import { cornerFromAngle } from "./corner.ts";
import { flatSettings } from "./mitre.ts";
import { mitreDrawing } from "./mitre-drawing.ts";
import { cornerPlane, cutLaidFlat, levelFrame, type SawCut, type SawSettings } from "./saw-cut.ts";
import { type ShootingBoard, shootingBoard } from "./shooting-board.ts";
import { springFrom } from "./spring.ts";
import { type FitDrawing, type FitTrouble, SAW_CONVENTION, type SawConvention } from "./types.ts";

export interface Polygon {
  readonly sides: number;
  /** Between two sides, inside. */
  readonly cornerDeg: number;
  /** Swing of the saw for each end, the sides lying flat. */
  readonly mitreDeg: number;
  /** How many times the saw's setting error stands in the last joint: two ends a side. */
  readonly errorTimes: number;
}

const FEWEST_SIDES = 3;
const MOST_SIDES = 72;

/** The mitre of a flat regular polygon: 180° over the number of sides. */
export function polygonMitre(sides: number): Outcome<Polygon, TroubleCode> {
  if (!Number.isInteger(sides) || sides < FEWEST_SIDES || sides > MOST_SIDES) {
    const facts = { sides, fewest: FEWEST_SIDES, most: MOST_SIDES };
    return refused(cataloguedTrouble("polygon-sides", "sides", facts));
  }
  return fine({
    sides,
    cornerDeg: 180 - 360 / sides,
    mitreDeg: 180 / sides,
    errorTimes: 2 * sides,
  });
}

export interface HopperQuestion {
  readonly sides: number;
  /** How steep the sides stand, measured as the maker says. */
  readonly slope: { readonly fromLevelDeg: number } | { readonly fromPlumbDeg: number };
  /** Of a side, from its narrow edge to its wide one along the slope, mm. */
  readonly widthMm?: number | undefined;
  /** Length of a side along its narrow edge, outside, mm; the bottom of a box that opens upwards. */
  readonly narrowEdgeMm?: number | undefined;
  readonly bladeLeans?: "left" | "right" | undefined;
}

export interface Hopper extends SawSettings {
  readonly polygon: Polygon;
  readonly fromLevelDeg: number;
  readonly fromPlumbDeg: number;
  /** A mitre gauge that reads 90° at a square cut. */
  readonly gaugeFromBladeDeg: number;
  /** Between the outer faces of two neighbouring sides. */
  readonly betweenFacesDeg: number;
  /** Lean of the blade where one side's end butts against its neighbour's face instead. */
  readonly buttBevelDeg: number;
  readonly shootingBoard: ShootingBoard;
  /** Each end of a side laid on its inside, outside up; the "wall edge" is the narrow one, the "ceiling edge" the wide one. */
  readonly leftEnd: SawCut;
  readonly rightEnd: SawCut;
  /** Of the side's outside, mm: along its edges and upright; null without both a width and a narrow edge. */
  readonly side: HopperSide | null;
  readonly convention: SawConvention & { readonly slope: "of the sides from level; 90° stands plumb" };
  readonly assumed: readonly FitTrouble[];
  readonly cautions: readonly FitTrouble[];
  readonly drawing: FitDrawing;
}

export interface HopperSide {
  readonly widthMm: number;
  readonly narrowEdgeMm: number;
  readonly wideEdgeMm: number;
  /** How high the box stands, and how far its rim stands out beyond its foot. */
  readonly heightMm: number;
  readonly splayMm: number;
}

/** Width of the drawn side where nobody has said it, mm. */
const DRAWN_WIDTH_MM = 100;

/**
 * Boxes with n like sides that slope: mitre = atan(cos P tan(180/n)), bevel = asin(sin P sin(180/n)), P from level.
 * The same as a sprung moulding of spring 90 − P round corners of 180 − 360/n. Confirmed by the 91 printed rows of
 * checks/area-b. The angle between faces: cos = cos²P + sin²P cos(360/n), counted inside.
 */
export function hopper(question: HopperQuestion): Outcome<Hopper, TroubleCode> {
  const { sides, slope, widthMm = DRAWN_WIDTH_MM, bladeLeans = "left" } = question;
  const polygon = polygonMitre(sides);
  if (!polygon.ok) return polygon;
  const fromLevelDeg = "fromLevelDeg" in slope ? slope.fromLevelDeg : 90 - slope.fromPlumbDeg;
  if (!(fromLevelDeg >= 0 && fromLevelDeg <= 90)) {
    return refused(cataloguedTrouble("hopper-slope", "slope", { slopeDeg: fromLevelDeg }));
  }
  const refusal = firstTrouble([
    sizeTrouble("width of a side", "width", widthMm, { mostMm: LARGEST_ACROSS_MM, zero: "refused" }),
    question.narrowEdgeMm === undefined
      ? null
      : sizeTrouble("length of a side", "length", question.narrowEdgeMm, {
          mostMm: LONGEST_MM,
          zero: "allowed",
        }),
  ]);
  if (refusal !== null) return refused(refusal);
  const spring = springFrom("wall", 90 - fromLevelDeg);
  if (!spring.ok) return spring;
  const corner = cornerFromAngle(polygon.value.cornerDeg, "outside");
  if (!corner.ok) return corner;
  const settings = flatSettings(spring.value.fromWallDeg, polygon.value.cornerDeg / 2);
  const pitchRad = toRad(fromLevelDeg);
  const turnRad = toRad(360 / sides);
  const between = Math.cos(pitchRad) ** 2 + Math.sin(pitchRad) ** 2 * Math.cos(turnRad);
  const betweenFacesDeg = 180 - toDeg(Math.acos(Math.max(-1, Math.min(1, between))));
  const cutAt = (end: "left" | "right"): SawCut => {
    const plane = cornerPlane(end, polygon.value.cornerDeg / 2, "outside");
    const cut = cutLaidFlat(plane, levelFrame(spring.value.fromWallDeg), { leans: bladeLeans });
    return { ...cut, ...settings };
  };
  const rightEnd = cutAt("right");
  const side = sideOf(question, settings.mitreDeg, fromLevelDeg);
  return fine({
    polygon: polygon.value,
    ...settings,
    fromLevelDeg,
    fromPlumbDeg: 90 - fromLevelDeg,
    gaugeFromBladeDeg: 90 - settings.mitreDeg,
    betweenFacesDeg,
    buttBevelDeg: Math.abs(90 - betweenFacesDeg),
    shootingBoard: shootingBoard(settings),
    leftEnd: cutAt("left"),
    rightEnd,
    side,
    convention: { ...SAW_CONVENTION, slope: "of the sides from level; 90° stands plumb" },
    assumed: [],
    cautions: [
      sawCaution(),
      ...beyondSawCaution([settings]),
      ...(side === null ? [] : shortPieceCaution(side.wideEdgeMm)),
      dustCaution(),
    ],
    drawing: mitreDrawing({ spring: spring.value, corner: corner.value, widthMm, cut: rightEnd }),
  });
}

/** A side's outside is a trapezium: each end runs out by the width times the mitre's tangent. */
function sideOf(
  { widthMm, narrowEdgeMm }: HopperQuestion,
  mitreDeg: number,
  fromLevelDeg: number,
): HopperSide | null {
  if (widthMm === undefined || narrowEdgeMm === undefined) return null;
  return {
    widthMm,
    narrowEdgeMm,
    wideEdgeMm: narrowEdgeMm + 2 * widthMm * Math.tan(toRad(mitreDeg)),
    heightMm: widthMm * Math.sin(toRad(fromLevelDeg)),
    splayMm: widthMm * Math.cos(toRad(fromLevelDeg)),
  };
}
