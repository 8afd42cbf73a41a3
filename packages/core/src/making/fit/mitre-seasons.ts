/** How a frame's mitre opens as its wood dries or swells, and what would keep it shut. */
import { type Point, point } from "../../curve/index.ts";
import {
  cataloguedTrouble,
  fine,
  type Outcome,
  refused,
  SAME_POINT_MM,
  type TroubleCode,
  toDeg,
  toRad,
} from "../../measure/index.ts";
import {
  coefficientsOf,
  movement,
  type Sawn,
  type Standing,
  TIMBERS,
  type Timber,
} from "../../timber/index.ts";
import { LARGEST_ACROSS_MM, sizeTrouble } from "./checks.ts";
import type { FitDrawing, FitTrouble } from "./types.ts";

export interface MitreOpening {
  /** Between the rail's length and the cut face after the change: half the corner before it. */
  readonly cutFaceDeg: number;
  /** Positive: the joint gapes at the inside corner; negative: at the outside. */
  readonly openingDeg: number;
  readonly gapMm: number;
  readonly opensAt: "inside corner" | "outside corner" | "nowhere";
}

/**
 * How a mitre of two rails opens when their width changes by a strain (negative: shrinks) and their length does not.
 *
 * The cut keeps its length along the rail and changes across it, so its angle goes from h = C/2 to
 * atan((1 + e) tan h); the joint opens by C − 2 h'. Each rail's edge moves by w e square to the rail, so the corners
 * that do not touch part by 2 cos(C/2) w |e|: √2 w |e| at a square corner. Drying opens the inside, swelling the outside.
 * Source: derived (checks/area-f); trade reports agree with the direction.
 */
export function mitreOpening(widthMm: number, cornerDeg: number, strainRatio: number): MitreOpening {
  const halfRad = toRad(cornerDeg / 2);
  const cutFaceDeg = toDeg(Math.atan((1 + strainRatio) * Math.tan(halfRad)));
  const gapMm = 2 * Math.cos(halfRad) * widthMm * Math.abs(strainRatio);
  return {
    cutFaceDeg,
    openingDeg: strainRatio === 0 ? 0 : cornerDeg - 2 * cutFaceDeg,
    gapMm,
    opensAt: strainRatio === 0 ? "nowhere" : strainRatio < 0 ? "inside corner" : "outside corner",
  };
}

export interface MitreSeasonsQuestion {
  readonly timber: Timber;
  readonly widthMm: number;
  /** 90° if left out; 30 to 175°. */
  readonly cornerDeg?: number | undefined;
  readonly fromPercent: number;
  readonly toPercent: number;
  readonly sawn: Sawn;
  /** The widest gap that is put up with, mm. */
  readonly wishedGapMm?: number | undefined;
  /** The maker's own timbers, looked through beside the table. */
  readonly ownTimbers?: readonly Timber[] | undefined;
}

export interface TimberForGap {
  readonly timber: string;
  readonly sawn: Sawn;
  readonly gapMm: number;
  /** The widest rail of it that keeps under the wished gap. */
  readonly widestMm: number;
  readonly standing: Standing;
}

export interface MitreSeasons extends MitreOpening {
  readonly timber: string;
  readonly widthMm: number;
  readonly cornerDeg: number;
  readonly strainRatio: number;
  /** The widest rail of this timber that keeps under the wished gap; null without a wish or without movement. */
  readonly widestMm: number | null;
  /** Timbers that keep under the wished gap at this width, least gap first. */
  readonly timbersUnder: readonly TimberForGap[];
  readonly convention: {
    readonly opening: "positive: at the inside corner, as wood dries; the corners that still touch are taken as fast";
    readonly moisture: "the same in both rails, even through their thickness";
  };
  readonly assumed: readonly FitTrouble[];
  readonly drawing: FitDrawing;
}

/** The seasons at a frame's mitre: angle, gap and where it gapes, and what would keep it under a wished gap. */
export function mitreSeasons(question: MitreSeasonsQuestion): Outcome<MitreSeasons, TroubleCode> {
  const { timber, widthMm, cornerDeg = 90, fromPercent, toPercent, sawn, wishedGapMm } = question;
  if (!(cornerDeg >= 30 && cornerDeg <= 175)) {
    return refused(cataloguedTrouble("corner-angle", "corner", { cornerDeg, leastDeg: 30, mostDeg: 175 }));
  }
  if (wishedGapMm !== undefined) {
    const limits = { mostMm: LARGEST_ACROSS_MM, zero: "refused" } as const;
    const trouble = sizeTrouble("wished gap", "gap", wishedGapMm, limits);
    if (trouble !== null) return refused(trouble);
  }
  const moved = movement({ timber, widthMm, fromPercent, toPercent, sawn });
  if (!moved.ok) return moved;
  const { strainRatio } = moved.value.width;
  const opening = mitreOpening(widthMm, cornerDeg, strainRatio);
  const perMm = opening.gapMm / widthMm;
  return fine(
    {
      ...opening,
      timber: timber.name,
      widthMm,
      cornerDeg,
      strainRatio,
      widestMm: wishedGapMm === undefined || perMm === 0 ? null : wishedGapMm / perMm,
      timbersUnder: wishedGapMm === undefined ? [] : timbersUnder(question, cornerDeg, wishedGapMm),
      convention: {
        opening:
          "positive: at the inside corner, as wood dries; the corners that still touch are taken as fast",
        moisture: "the same in both rails, even through their thickness",
      },
      assumed: moved.value.assumed,
      drawing: openingDrawing(widthMm, cornerDeg, strainRatio),
    },
    moved.warnings,
  );
}

/** All timbers of the table and the maker's own, both ways sawn, whose gap stays within the wish. */
function timbersUnder(
  question: MitreSeasonsQuestion,
  cornerDeg: number,
  wishedGapMm: number,
): readonly TimberForGap[] {
  const { widthMm, fromPercent, toPercent, ownTimbers = [] } = question;
  const found = [...ownTimbers, ...TIMBERS].flatMap((timber) =>
    (["flat", "quarter"] as const).flatMap((sawn): TimberForGap[] => {
      const moved = movement({ timber, widthMm, fromPercent, toPercent, sawn });
      if (!moved.ok) return [];
      const { gapMm } = mitreOpening(widthMm, cornerDeg, moved.value.width.strainRatio);
      if (gapMm > wishedGapMm) return [];
      const widestMm = gapMm === 0 ? LARGEST_ACROSS_MM : (wishedGapMm * widthMm) / gapMm;
      const standing = coefficientsOf(timber)?.source.standing ?? "derived";
      return [{ timber: timber.name, sawn, gapMm, widestMm, standing }];
    }),
  );
  return found.sort((a, b) => a.gapMm - b.gapMm || (a.timber < b.timber ? -1 : 1));
}

/** The gap is drawn as if the wood moved this much more, or nothing would be seen. */
const DRAWN_TIMES = 8;

/** Two rails at the corner with their edges where they would go, the movement drawn larger. */
function openingDrawing(widthMm: number, cornerDeg: number, strainRatio: number): FitDrawing {
  const cornerRad = toRad(cornerDeg);
  const lengthMm = 3 * widthMm;
  const outer = point(0, 0);
  const second = { x: Math.cos(cornerRad), y: Math.sin(cornerRad) };
  const inner = (across: number): Point => point(across / Math.tan(cornerRad / 2), across);
  const moved = widthMm * (1 + DRAWN_TIMES * strainRatio);
  const alongCut = widthMm / Math.tan(cornerRad / 2);
  const firstInner = point(alongCut, moved);
  const turned = (at: Point): Point =>
    point(at.x * second.x + at.y * second.y, at.x * second.y - at.y * second.x);
  // Swelling brings the inner corners together first: the rails are then set apart outside.
  const apart = Math.max(0, DRAWN_TIMES * strainRatio * widthMm);
  const shifted = (at: Point): Point => point(at.x, at.y - apart);
  const firstRail = [outer, point(lengthMm, 0), point(lengthMm, moved), firstInner].map(shifted);
  const secondRail = [outer, point(lengthMm, 0), point(lengthMm, moved), firstInner].map(shifted).map(turned);
  return {
    views: [
      {
        title: `the corner from the front, the movement drawn ${DRAWN_TIMES} times as large`,
        shapes: [
          { kind: "stick", name: "first rail", run: "closed", points: firstRail },
          { kind: "stick", name: "second rail", run: "closed", points: secondRail },
          { kind: "hidden", name: "mitre as fitted", run: "open", points: [outer, inner(widthMm)] },
        ],
        angles: [
          {
            name: "corner",
            at: outer,
            radiusMm: widthMm / 2,
            fromDeg: 0,
            sweepDeg: cornerDeg,
            valueDeg: cornerDeg,
          },
        ],
        places:
          Math.abs(strainRatio) * widthMm <= SAME_POINT_MM
            ? []
            : [{ name: "gap", at: strainRatio < 0 ? inner(widthMm) : outer }],
      },
    ],
  };
}
