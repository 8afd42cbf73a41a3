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
import { dustCaution, sawCaution } from "./cautions.ts";
import { cornerFromAngle } from "./corner.ts";
import { flatSettings } from "./mitre.ts";
import { mitreDrawing } from "./mitre-drawing.ts";
import { cornerPlane, cutLaidFlat, levelFrame, type SawSettings } from "./saw-cut.ts";
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
  readonly widthMm?: number | undefined;
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
  readonly convention: SawConvention & { readonly slope: "of the sides from level; 90° stands plumb" };
  readonly assumed: readonly FitTrouble[];
  readonly cautions: readonly FitTrouble[];
  readonly drawing: FitDrawing;
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
  const spring = springFrom("wall", 90 - fromLevelDeg);
  if (!spring.ok) return spring;
  const corner = cornerFromAngle(polygon.value.cornerDeg, "outside");
  if (!corner.ok) return corner;
  const settings = flatSettings(spring.value.fromWallDeg, polygon.value.cornerDeg / 2);
  const pitchRad = toRad(fromLevelDeg);
  const turnRad = toRad(360 / sides);
  const between = Math.cos(pitchRad) ** 2 + Math.sin(pitchRad) ** 2 * Math.cos(turnRad);
  const betweenFacesDeg = 180 - toDeg(Math.acos(Math.max(-1, Math.min(1, between))));
  const plane = cornerPlane("right", polygon.value.cornerDeg / 2, "outside");
  const cut = cutLaidFlat(plane, levelFrame(spring.value.fromWallDeg), { leans: bladeLeans });
  return fine({
    polygon: polygon.value,
    ...settings,
    fromLevelDeg,
    fromPlumbDeg: 90 - fromLevelDeg,
    gaugeFromBladeDeg: 90 - settings.mitreDeg,
    betweenFacesDeg,
    buttBevelDeg: Math.abs(90 - betweenFacesDeg),
    shootingBoard: shootingBoard(settings),
    convention: { ...SAW_CONVENTION, slope: "of the sides from level; 90° stands plumb" },
    assumed: [],
    cautions: [sawCaution(), dustCaution()],
    drawing: mitreDrawing({ spring: spring.value, corner: corner.value, widthMm, cut }),
  });
}
