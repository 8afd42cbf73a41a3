/** Two unlike mouldings that meet at a corner: the line of their mitre leaves the bisector, and may bend. */
import { type Point, point } from "../../curve/index.ts";
import {
  cataloguedTrouble,
  DRAWING_NOISE_MM,
  exceedsMm,
  fine,
  type Outcome,
  refused,
  SAME_POINT_DEG,
  SAME_POINT_MM,
  type TroubleCode,
  toDeg,
  toRad,
} from "../../measure/index.ts";
import { beyondSawCaution, sawCaution } from "./cautions.ts";
import { firstTrouble, LARGEST_ACROSS_MM, sizeTrouble } from "./checks.ts";
import type { Corner } from "./corner.ts";
import { flatSettings } from "./mitre.ts";
import { cornerPlane, cutLaidFlat, levelFrame, type SawCut } from "./saw-cut.ts";
import type { Spring } from "./spring.ts";
import { type FitDrawing, type FitTrouble, SAW_CONVENTION, type SawConvention } from "./types.ts";

export interface UnlikeMoulding {
  readonly projectionMm: number;
  readonly heightMm: number;
  readonly spring: Spring;
  /**
   * The face from its foot up: x the projection from the wall, y the height, never falling. Left out: a straight
   * slope from the foot at the wall to the full projection.
   */
  readonly face?: readonly Point[] | undefined;
}

export interface UnlikeQuestion {
  readonly corner: Corner;
  readonly first: UnlikeMoulding;
  readonly second: UnlikeMoulding;
  /** Which way the saw's blade can lean; most lean to the left. */
  readonly bladeLeans?: "left" | "right" | undefined;
}

/** A point of the mitre, the corner of the walls at 0; along each wall towards its own moulding (beyond the corner: negative). */
export interface MitrePoint {
  readonly heightMm: number;
  readonly fromFirstWallMm: number;
  readonly fromSecondWallMm: number;
  readonly alongFirstMm: number;
  readonly alongSecondMm: number;
}

export interface UnlikeMitre {
  readonly corner: Corner;
  readonly line: "straight" | "curved";
  /** Between each wall and the mitre's line (its chord, if it is curved), in plan. Their sum is the corner. */
  readonly fromFirstWallDeg: number;
  readonly fromSecondWallDeg: number;
  /** How far the mitre leaves its chord, mm; 0 where it is straight. */
  readonly mostOffChordMm: number;
  /** Each stick laid flat on its back, the first on the left of the corner; for a curved mitre the chord's, to saw outside of. */
  readonly first: SawCut;
  readonly second: SawCut;
  /** From the foot up: what is marked and cut to where the line is curved. */
  readonly points: readonly MitrePoint[];
  readonly convention: SawConvention & { readonly points: "projections from the walls in plan, heights up" };
  readonly assumed: readonly FitTrouble[];
  readonly cautions: readonly FitTrouble[];
  readonly drawing: FitDrawing;
}

/**
 * Where two mouldings at the same corner meet: at every height the point that lies as far from the first wall as the
 * first face and as far from the second wall as the second. With projections a and b it stands (b + a cos C) / sin C
 * along the first wall. Proportional faces give a straight line, at atan(a sin C / (b + a cos C)) from the first wall;
 * others a curve, given by points. Above the lower of the two heights nothing meets: a warning says how much stands
 * over. Refused: sizes that are not positive, faces that fall or have fewer than two points, a line that does not run out
 * between the two walls (one face plumb, or one drawing in where the other comes out).
 */
export function unlikeMitre(question: UnlikeQuestion): Outcome<UnlikeMitre, TroubleCode> {
  const { corner, first, second } = question;
  const refusal = firstTrouble([mouldingTrouble(first, "first"), mouldingTrouble(second, "second")]);
  if (refusal !== null) return refused(refusal);
  const faces = [faceOf(first), faceOf(second)] as const;
  const points = meetingPoints(corner, faces[0], faces[1]);
  const start = points[0] as MitrePoint;
  const end = points[points.length - 1] as MitrePoint;
  const reach = { x: end.alongFirstMm - start.alongFirstMm, y: end.fromFirstWallMm - start.fromFirstWallMm };
  const reachMm = Math.hypot(reach.x, reach.y);
  if (reachMm <= SAME_POINT_MM) return refused(cataloguedTrouble("unlike-no-line", "first", {}));
  const mostOffChordMm = Math.max(
    ...points.map(({ alongFirstMm, fromFirstWallMm }) =>
      Math.abs(
        ((alongFirstMm - start.alongFirstMm) * reach.y -
          (fromFirstWallMm - start.fromFirstWallMm) * reach.x) /
          reachMm,
      ),
    ),
  );
  // A line has no direction: faces that draw in towards their head run it back to the corner.
  const away = reach.y < 0 ? -1 : 1;
  const fromFirstWallDeg = toDeg(Math.atan2(away * reach.y, away * reach.x));
  const fromSecondWallDeg = corner.cornerDeg - fromFirstWallDeg;
  if (fromFirstWallDeg <= SAME_POINT_DEG || fromSecondWallDeg <= SAME_POINT_DEG) {
    return refused(cataloguedTrouble("unlike-along-wall", "first", {}));
  }
  const line = exceedsMm(mostOffChordMm, 0, DRAWING_NOISE_MM) ? "curved" : "straight";
  const sign = corner.kind === "inside" ? 1 : -1;
  const warnings: FitTrouble[] = [];
  const overMm = Math.abs(first.heightMm - second.heightMm);
  if (exceedsMm(overMm, 0)) {
    const taller = first.heightMm > second.heightMm ? "first" : "second";
    warnings.push(cataloguedTrouble("unlike-heights", taller, { taller, overMm }));
  }
  if (line === "curved") {
    warnings.push(cataloguedTrouble("unlike-curved", "", { mostOffMm: mostOffChordMm }));
  }
  const firstCut = stickCut("right", fromFirstWallDeg, first, question);
  const secondCut = stickCut("left", fromSecondWallDeg, second, question);
  return fine(
    {
      corner,
      line,
      fromFirstWallDeg,
      fromSecondWallDeg,
      mostOffChordMm: line === "straight" ? 0 : mostOffChordMm,
      first: firstCut,
      second: secondCut,
      points: points.map((one) => ({
        ...one,
        alongFirstMm: sign * one.alongFirstMm || 0,
        alongSecondMm: sign * one.alongSecondMm || 0,
      })),
      convention: { ...SAW_CONVENTION, points: "projections from the walls in plan, heights up" },
      assumed:
        first.face === undefined || second.face === undefined
          ? [cataloguedTrouble("unlike-straight-face", "", {})]
          : [],
      cautions: [sawCaution(), ...beyondSawCaution([firstCut, secondCut])],
      drawing: planDrawing(corner, points),
    },
    warnings,
  );
}

/** The cut of one of the two sticks: its own angle to the mitre takes the place of half the corner. */
function stickCut(
  end: "left" | "right",
  fromWallDeg: number,
  { spring }: UnlikeMoulding,
  { corner, bladeLeans = "left" }: UnlikeQuestion,
): SawCut {
  const plane = cornerPlane(end, fromWallDeg, corner.kind);
  const cut = cutLaidFlat(plane, levelFrame(spring.fromWallDeg), { leans: bladeLeans });
  return { ...cut, ...flatSettings(spring.fromWallDeg, fromWallDeg) };
}

function mouldingTrouble(moulding: UnlikeMoulding, where: string): FitTrouble | null {
  const limits = { mostMm: LARGEST_ACROSS_MM, zero: "refused" } as const;
  const sizes = firstTrouble([
    sizeTrouble("projection", where, moulding.projectionMm, limits),
    sizeTrouble("height", where, moulding.heightMm, limits),
  ]);
  if (sizes !== null || moulding.face === undefined) return sizes;
  const { face } = moulding;
  const isFalling = face.some(({ y }, index) => index > 0 && !(y >= (face[index - 1] as Point).y));
  const isWild = face.some(({ x, y }) => !Number.isFinite(x) || !Number.isFinite(y) || x < 0);
  if (face.length < 2 || isFalling || isWild) {
    return cataloguedTrouble("unlike-face", where, { moulding: where });
  }
  return null;
}

function faceOf({ face, projectionMm, heightMm }: UnlikeMoulding): readonly Point[] {
  return face ?? [point(0, 0), point(projectionMm, heightMm)];
}

/** At every height where one of the two faces turns, from the foot up; at a level member its two ends. */
function meetingPoints(corner: Corner, first: readonly Point[], second: readonly Point[]): MitrePoint[] {
  const top = Math.min((first[first.length - 1] as Point).y, (second[second.length - 1] as Point).y);
  const heights = [...new Set([...first, ...second].map(({ y }) => y).filter((y) => y <= top))].sort(
    (a, b) => a - b,
  );
  const cosine = Math.cos(toRad(corner.cornerDeg));
  const sine = Math.sin(toRad(corner.cornerDeg));
  const at = (heightMm: number, a: number, b: number): MitrePoint => ({
    heightMm,
    fromFirstWallMm: a,
    fromSecondWallMm: b,
    alongFirstMm: (b + a * cosine) / sine,
    alongSecondMm: (a + b * cosine) / sine,
  });
  return heights.flatMap((height) => {
    const a = projectionsAt(first, height);
    const b = projectionsAt(second, height);
    const below = at(height, a.below, b.below);
    const above = at(height, a.above, b.above);
    const isOne = a.below === a.above && b.below === b.above;
    return isOne ? [below] : [below, above];
  });
}

/** How far a face stands out just below and just above a height. */
function projectionsAt(face: readonly Point[], heightMm: number): { below: number; above: number } {
  const first = face[0] as Point;
  const last = face[face.length - 1] as Point;
  if (heightMm < first.y) return { below: first.x, above: first.x };
  if (heightMm > last.y) return { below: last.x, above: last.x };
  const onHeight = face.filter(({ y }) => y === heightMm);
  if (onHeight.length > 0) {
    return { below: (onHeight[0] as Point).x, above: (onHeight[onHeight.length - 1] as Point).x };
  }
  const next = face.findIndex(({ y }) => y > heightMm);
  const low = face[next - 1] as Point;
  const high = face[next] as Point;
  const x = low.x + ((high.x - low.x) * (heightMm - low.y)) / (high.y - low.y);
  return { below: x, above: x };
}

/** The corner from above with the walls, the mitre and both mouldings' fronts; the first wall along +x. */
function planDrawing(corner: Corner, points: readonly MitrePoint[]): FitDrawing {
  const end = points[points.length - 1] as MitrePoint;
  const beyondMm = 3 * Math.max(end.fromFirstWallMm, end.fromSecondWallMm);
  const secondWall = point(
    beyondMm * Math.cos(toRad(corner.cornerDeg)),
    beyondMm * Math.sin(toRad(corner.cornerDeg)),
  );
  const corner0 = point(0, 0);
  const mitreEnd = point(end.alongFirstMm, end.fromFirstWallMm);
  return {
    views: [
      {
        title: "the corner from above",
        shapes: [
          { kind: "wall", name: "first wall", run: "open", points: [corner0, point(beyondMm, 0)] },
          { kind: "wall", name: "second wall", run: "open", points: [corner0, secondWall] },
          {
            kind: "cut",
            name: "mitre",
            run: "open",
            points: points.map((one) => point(one.alongFirstMm, one.fromFirstWallMm)),
          },
          {
            kind: "stick",
            name: "front of the first",
            run: "open",
            points: [mitreEnd, point(mitreEnd.x + beyondMm, mitreEnd.y)],
          },
          {
            kind: "stick",
            name: "front of the second",
            run: "open",
            points: [mitreEnd, point(mitreEnd.x + secondWall.x, mitreEnd.y + secondWall.y)],
          },
        ],
        angles: [
          {
            name: "corner",
            at: corner0,
            radiusMm: beyondMm / 4,
            fromDeg: 0,
            sweepDeg: corner.cornerDeg,
            valueDeg: corner.cornerDeg,
          },
        ],
        places: [{ name: `${corner.kind} corner`, at: corner0 }],
      },
    ],
  };
}
