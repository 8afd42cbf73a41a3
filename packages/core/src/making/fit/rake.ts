/** Raking mouldings: the three sections of a slope from any one of them, each to be planned like any other, and their cuts. */
import { extentsOf, flattenPiece, type Point, point, verticesOf } from "../../curve/index.ts";
import {
  cataloguedTrouble,
  FLATTEN_MM,
  fine,
  type Outcome,
  refused,
  type TroubleCode,
  toDeg,
  toRad,
} from "../../measure/index.ts";
import type { Section } from "../../section/index.ts";
import { beyondSawCaution, dustCaution, overheadCaution, sawCaution } from "./cautions.ts";
import { firstTrouble, LARGEST_ACROSS_MM, sizeTrouble } from "./checks.ts";
import type { Corner } from "./corner.ts";
import {
  applied,
  boundsOf,
  compose,
  inverse,
  type LinearMap,
  type LostArc,
  mapSection,
  type Placing,
  placingMap,
} from "./placed-section.ts";
import { type RakeMember, type RakePoint, type Rise, rakeMap, rakePoint } from "./rake-point.ts";
import { cornerPlane, cutLaidFlat, levelFrame, type SawCut, slopingFrame } from "./saw-cut.ts";
import { springFrom } from "./spring.ts";
import { type FitDrawing, type FitTrouble, SAW_CONVENTION, type SawConvention } from "./types.ts";

export interface RakeQuestion {
  readonly section: Section;
  /** Which of the three sections it is, and how it lies on its wall. */
  readonly given: RakeMember;
  readonly placing: Placing;
  readonly slopeDeg: number;
  /** At the foot of the slope; a square outside corner if left out. */
  readonly lower?: Corner | undefined;
  /** At its head, to the upper return; a square outside corner if left out. */
  readonly upper?: Corner | undefined;
}

export interface RakedMember {
  readonly member: RakeMember;
  readonly section: Section;
  readonly springFromWallDeg: number;
  readonly projectionMm: number;
  /** Square to the slope for the rake, plumb for the level ones. */
  readonly heightMm: number;
  /** Circles that have become parts of ellipses; the shelf may have no plane of their shape. */
  readonly lostArcs: readonly LostArc[];
}

export interface Rake {
  readonly slopeDeg: number;
  readonly lower: Corner;
  readonly upper: Corner;
  readonly given: RakeMember;
  readonly level: RakedMember;
  readonly rake: RakedMember;
  readonly upperReturn: RakedMember;
  /** Each corner of the given outline in all three. */
  readonly points: readonly RakePoint[];
  readonly cuts: {
    /** Level moulding and rake at the foot of the slope, the slope running up to the right. */
    readonly levelAtFoot: SawCut;
    readonly rakeAtFoot: SawCut;
    readonly rakeAtHead: SawCut;
    readonly upperReturnAtHead: SawCut;
    /** Two rakes against each other in the middle of a pediment: a plumb cut. */
    readonly rakeAtApex: SawCut;
  };
  readonly convention: SawConvention & {
    readonly heights: "rake square to the slope, level and upper return plumb; projections from the wall";
    readonly slope: "degrees from level, up to the right as seen from the room";
  };
  readonly assumed: readonly FitTrouble[];
  readonly cautions: readonly FitTrouble[];
  readonly drawing: FitDrawing;
}

/** Steeper than this nobody rakes a moulding, and the upper return leaves the wall, degrees. */
export const STEEPEST_RAKE_DEG = 75;

const SQUARE_OUTSIDE: Corner = { cornerDeg: 90, kind: "outside", measured: "by its angle", degPerMm: null };

/** A slope with its corners, or why it is none. */
export function riseOf(
  slopeDeg: number,
  lower: Corner = SQUARE_OUTSIDE,
  upper: Corner = SQUARE_OUTSIDE,
): Outcome<Rise, TroubleCode> {
  if (!(slopeDeg >= 0 && slopeDeg <= STEEPEST_RAKE_DEG)) {
    return refused(cataloguedTrouble("slope-angle", "slope", { slopeDeg, mostDeg: STEEPEST_RAKE_DEG }));
  }
  return fine({ slopeDeg, lower, upper });
}

/** One point from sizes that a maker types: as `rakePoint`, sizes and slope looked at first. */
export function askRakePoint(
  sizes: {
    readonly projectionMm: number;
    readonly heightMm: number;
    readonly given?: RakeMember | undefined;
  },
  rise: Outcome<Rise, TroubleCode>,
): Outcome<RakePoint, TroubleCode> {
  if (!rise.ok) return rise;
  const limits = { mostMm: LARGEST_ACROSS_MM, zero: "allowed" } as const;
  const trouble = firstTrouble([
    sizeTrouble("projection", "projection", sizes.projectionMm, limits),
    sizeTrouble("height", "height", sizes.heightMm, limits),
  ]);
  if (trouble !== null) return refused(trouble);
  return fine(rakePoint(sizes.projectionMm, sizes.heightMm, sizes.given ?? "level", rise.value));
}

/**
 * All three sections of a raking moulding from one of them.
 *
 * The section is set on its wall, every point is taken to the other members by `rakeMap` (a linear map, so plumb
 * fillets stay plumb and shrink by cos a, level ones tip), and each is laid back on its own flat back, whose spring has
 * changed. Lines stay lines, arcs become parts of ellipses, given as fine runs of lines. Area scales by cos a for the
 * rake. Refused: slopes outside 0 to 75°, springs outside 0 to 90°.
 */
export function rake(question: RakeQuestion): Outcome<Rake, TroubleCode> {
  const { section, given, placing } = question;
  const spring = springFrom("wall", placing.springFromWallDeg);
  if (!spring.ok) return spring;
  const rise = riseOf(question.slopeDeg, question.lower, question.upper);
  if (!rise.ok) return rise;
  const { slopeDeg, lower, upper } = rise.value;
  const toWall = placingMap(placing);
  const toLevel = inverse(rakeMap(rise.value, given));
  const memberOf = (member: RakeMember) =>
    rakedMember(member, section, placing, compose(rakeMap(rise.value, member), toLevel));
  const level = memberOf("level");
  const raked = memberOf("rake");
  const upperReturn = memberOf("upper return");
  const onWall = verticesOf(section.outline).map(([x, y]) => applied(toWall, point(x, y)));
  const { least } = boundsOf(onWall);
  const foot = {
    left: cornerPlane("right", lower.cornerDeg / 2, lower.kind),
    right: cornerPlane("left", lower.cornerDeg / 2, lower.kind),
  };
  const head = {
    left: cornerPlane("right", upper.cornerDeg / 2, upper.kind),
    right: cornerPlane("left", upper.cornerDeg / 2, upper.kind),
  };
  const sloping = slopingFrame(raked.springFromWallDeg, slopeDeg);
  const saw = { leans: "left" } as const;
  const lost = raked.lostArcs.length;
  const cuts = {
    levelAtFoot: cutLaidFlat(foot.left, levelFrame(level.springFromWallDeg), saw),
    rakeAtFoot: cutLaidFlat(foot.right, sloping, saw),
    rakeAtHead: cutLaidFlat(head.left, sloping, saw),
    upperReturnAtHead: cutLaidFlat(head.right, levelFrame(upperReturn.springFromWallDeg), saw),
    rakeAtApex: cutLaidFlat({ x: 1, y: 0, z: 0 }, sloping, saw),
  };
  return fine<Rake, TroubleCode>(
    {
      slopeDeg,
      lower,
      upper,
      given,
      level,
      rake: raked,
      upperReturn,
      points: onWall.map(({ x, y }) => rakePoint(x - least.x, y - least.y, given, rise.value)),
      cuts,
      convention: {
        ...SAW_CONVENTION,
        heights: "rake square to the slope, level and upper return plumb; projections from the wall",
        slope: "degrees from level, up to the right as seen from the room",
      },
      assumed:
        question.lower === undefined || question.upper === undefined
          ? [cataloguedTrouble("rake-square-corners", "", {})]
          : [],
      cautions: [sawCaution(), ...beyondSawCaution(Object.values(cuts)), overheadCaution(), dustCaution()],
      drawing: rakeDrawing(drawnOutline(section, toWall), least, given, rise.value),
    },
    lost > 0 ? [cataloguedTrouble("rake-arcs-drawn-out", "", { count: lost, slopeDeg })] : [],
  );
}

/** One member, laid on its own flat back. `change` goes from the given section's wall frame to the member's. */
function rakedMember(member: RakeMember, section: Section, placing: Placing, change: LinearMap): RakedMember {
  const { springFromWallDeg, wallEdge } = placing;
  const back = applied(change, point(Math.sin(toRad(springFromWallDeg)), Math.cos(toRad(springFromWallDeg))));
  const spring = toDeg(Math.atan2(back.x, back.y));
  const toWall = compose(change, placingMap(placing));
  const toStick = inverse(placingMap({ springFromWallDeg: spring, wallEdge }));
  const { section: mapped, lostArcs } = mapSection(
    section,
    compose(toStick, toWall),
    `${section.name}, ${member}`,
  );
  // The sizes on the wall, from the member's own stick frame.
  const onWall = mapSection(mapped, turnOnly({ springFromWallDeg: spring, wallEdge }), mapped.name).section;
  const { maxX, maxY } = extentsOf(onWall.outline);
  return {
    member,
    section: mapped,
    springFromWallDeg: spring,
    projectionMm: maxX,
    heightMm: maxY,
    lostArcs,
  };
}

/** The placing without its mirror: a turn, so that arcs stay arcs. Projection to the right or to the left is one for sizes. */
function turnOnly(placing: Placing): LinearMap {
  const map = placingMap(placing);
  return placing.wallEdge === "gauge edge" ? { a: -map.a, b: -map.b, c: map.c, d: map.d } : map;
}

/** The outline with its arcs drawn out, on the wall. */
function drawnOutline(section: Section, toWall: LinearMap): Point[] {
  return section.outline.pieces.flatMap((piece) =>
    flattenPiece(piece, FLATTEN_MM)
      .slice(1)
      .map((place) => applied(toWall, place)),
  );
}

/** The three outlines beside each other, on the wall, with the slope's angle. */
function rakeDrawing(onWall: readonly Point[], least: Point, given: RakeMember, rise: Rise): FitDrawing {
  const toLevel = inverse(rakeMap(rise, given));
  const members = ["level", "rake", "upper return"] as const;
  return {
    views: members.map((member) => {
      const map = compose(rakeMap(rise, member), toLevel);
      return {
        title: `${member}, seen along it, the wall on the left`,
        shapes: [
          {
            kind: "stick" as const,
            name: member,
            run: "closed" as const,
            points: onWall.map(({ x, y }) => applied(map, point(x - least.x, y - least.y))),
          },
        ],
        angles:
          member === "rake"
            ? [
                {
                  name: "slope",
                  at: point(0, 0),
                  radiusMm: boundsOf(onWall).most.x - least.x,
                  fromDeg: 0,
                  sweepDeg: rise.slopeDeg,
                  valueDeg: rise.slopeDeg,
                },
              ]
            : [],
        places: [],
      };
    }),
  };
}
