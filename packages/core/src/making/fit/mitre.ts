/** The mitre of a sprung moulding round one corner: laid flat, held at its spring, and how each piece lies on the saw. */
import { fine, type Outcome, refused, type TroubleCode, toDeg, toRad } from "../../measure/index.ts";
import { beyondSawCaution, dustCaution, overheadCaution, sawCaution } from "./cautions.ts";
import { LARGEST_ACROSS_MM, sizeTrouble } from "./checks.ts";
import type { Corner } from "./corner.ts";
import { mitreDrawing } from "./mitre-drawing.ts";
import {
  cornerPlane,
  cutHeldAtSpring,
  cutLaidFlat,
  levelFrame,
  type SawCut,
  type SawSettings,
} from "./saw-cut.ts";
import { type ShootingBoard, shootingBoard } from "./shooting-board.ts";
import type { Spring } from "./spring.ts";
import { type FitDrawing, type FitTrouble, SAW_CONVENTION, type SawConvention } from "./types.ts";

export interface MitreQuestion {
  readonly spring: Spring;
  readonly corner: Corner;
  /** Width of the stick's back, mm; only the drawing and the length of the cut need it. */
  readonly widthMm?: number | undefined;
  /** Which way the saw's blade can lean; most lean to the left. */
  readonly bladeLeans?: "left" | "right" | undefined;
}

/** Both pieces at the saw; left and right as seen from the room. */
export interface BothPieces extends SawSettings {
  readonly leftPiece: SawCut;
  readonly rightPiece: SawCut;
}

export interface Mitre {
  readonly spring: Spring;
  readonly corner: Corner;
  readonly laidFlat: BothPieces;
  readonly heldAtSpring: BothPieces;
  readonly shootingBoard: ShootingBoard;
  readonly convention: SawConvention & {
    readonly spring: "between the flat back and the wall";
    readonly corner: "between the walls in plan; at an outside corner through the solid";
  };
  readonly assumed: readonly FitTrouble[];
  readonly cautions: readonly FitTrouble[];
  readonly drawing: FitDrawing;
}

/** The stick is drawn this wide where nobody has said how wide it is, mm. */
const DRAWN_WIDTH_MM = 60;

/**
 * Saw settings of a moulding laid flat on its back, degrees. `halfDeg` is the angle in plan between the wall and the
 * mitre: half the corner where like meets like.
 *
 * mitre = atan(sin s / tan h), bevel = asin(cos s cos h). Domain: spring 0 to 90°, h over 0 and under 180°.
 * s = 0 gives no mitre and a bevel of 90 − h; s = 90 a mitre of 90 − h and no bevel.
 * Source: the cut line on the back has the direction (sin s / tan h, 1), the blade leans by the angle whose sine is
 * n·m, n the mitre plane's and m the back's direction; confirmed by printed tables of saw manuals (checks/area-b).
 */
export function flatSettings(springFromWallDeg: number, halfDeg: number): SawSettings {
  const springRad = toRad(springFromWallDeg);
  const halfRad = toRad(halfDeg);
  // At both ends of the range the answer is known without a sine, and without its last digit's noise.
  if (springFromWallDeg === 0) return { mitreDeg: 0, bevelDeg: Math.abs(90 - halfDeg) };
  if (springFromWallDeg === 90) return { mitreDeg: Math.abs(90 - halfDeg), bevelDeg: 0 };
  return {
    mitreDeg: toDeg(Math.atan2(Math.sin(springRad) * Math.abs(Math.cos(halfRad)), Math.sin(halfRad))),
    bevelDeg: toDeg(Math.asin(Math.cos(springRad) * Math.abs(Math.cos(halfRad)))),
  };
}

/** Everything the saw needs for two like lengths that meet at a corner. */
export function mitre(question: MitreQuestion): Outcome<Mitre, TroubleCode> {
  const { spring, corner, widthMm = DRAWN_WIDTH_MM, bladeLeans = "left" } = question;
  const trouble = sizeTrouble("width of the back", "width", widthMm, {
    mostMm: LARGEST_ACROSS_MM,
    zero: "refused",
  });
  if (trouble !== null) return refused(trouble);
  const halfDeg = corner.cornerDeg / 2;
  const flat = flatSettings(spring.fromWallDeg, halfDeg);
  const held: SawSettings = { mitreDeg: 90 - halfDeg, bevelDeg: 0 };
  const planes = {
    left: cornerPlane("right", halfDeg, corner.kind),
    right: cornerPlane("left", halfDeg, corner.kind),
  };
  const frame = levelFrame(spring.fromWallDeg);
  const laidFlat: BothPieces = {
    ...flat,
    leftPiece: { ...cutLaidFlat(planes.left, frame, { leans: bladeLeans }), ...flat },
    rightPiece: { ...cutLaidFlat(planes.right, frame, { leans: bladeLeans }), ...flat },
  };
  return fine({
    spring,
    corner,
    laidFlat,
    heldAtSpring: {
      ...held,
      leftPiece: { ...cutHeldAtSpring(planes.left), ...held },
      rightPiece: { ...cutHeldAtSpring(planes.right), ...held },
    },
    shootingBoard: shootingBoard(flat),
    convention: {
      ...SAW_CONVENTION,
      spring: "between the flat back and the wall",
      corner: "between the walls in plan; at an outside corner through the solid",
    },
    assumed: [],
    cautions: [sawCaution(), ...beyondSawCaution([flat]), dustCaution(), overheadCaution()],
    drawing: mitreDrawing({ spring, corner, widthMm, cut: laidFlat.leftPiece }),
  });
}
