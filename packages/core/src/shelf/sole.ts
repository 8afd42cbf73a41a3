/**
 * The outline of every kind of sole, in the plane's own frame: origin on the plane's axis at the sole, +y into
 * the body, chain from left to right as seen looking along the stroke. What each kind assumes stands at its function.
 */
import { type Chain, chainFromVertices, type Vertex } from "../curve/index.ts";
import { bug, exceedsMm, SAME_POINT_MM } from "../measure/index.ts";
import type { BeadPlane, CurvedPlane, Hand, Plane, SidePlane, SnipeBill, Sole, WallSide } from "./types.ts";

/**
 * The soles of a plane, at least one: a plough has one for each of its irons, in the order of its list; every other
 * kind has exactly one.
 */
export function solesOf(plane: Plane): readonly Sole[] {
  if (plane.kind !== "plough") return [soleOf(plane)];
  return plane.widthsMm.map((widthMm) => flatSole(widthMm, "both"));
}

/**
 * The sole of a plane, mm. A plough's first sole is given; `solesOf` gives them all.
 *
 * A hollow or round is one arc whose middle is the origin. A moving fillister and a rebate plane cut the walls on
 * both sides, a smoother none. Throws a `Bug` on a plane whose sizes `readShelf` would have refused.
 */
export function soleOf(plane: Plane): Sole {
  switch (plane.kind) {
    case "hollow":
    case "round":
      return curvedSole(plane);
    case "rebate":
    case "moving fillister":
      return flatSole(plane.widthMm, "both");
    case "smoother":
      return flatSole(plane.widthMm, "none");
    case "plough":
      return flatSole(plane.widthsMm[0] ?? bug("a plough has at least one iron", { id: plane.id }), "both");
    case "snipe bill":
      return snipeBillSole(plane);
    case "side snipe":
    case "side rebate":
    case "side round":
      return sideSole(plane);
    case "bead":
      return beadSole(plane);
    case "shaped":
      return shapedSole(plane.sole, plane.cutsWall);
  }
}

/**
 * The angle of arc that a hollow's or round's sole carries, degrees: 2 asin(w / 2r), up to 180.
 * Source: elementary; a sole as wide as its radius carries 60° (checks/area-e.json, E-A01).
 */
export function soleAngleDeg(plane: Pick<CurvedPlane, "radiusMm" | "widthMm">): number {
  return (360 / Math.PI) * Math.asin(halfChordRatio(plane));
}

/**
 * Depth of a hollow's or round's sole between the middle of its arc and its corners (sagitta), mm.
 *
 * Domain: 0 < width <= 2 radius; anything else throws a `Bug`. Gives the radius for a half circle.
 * Written without the textbook subtraction r - sqrt(r² - w²/4), which loses half its digits on a flat sole.
 * Source: elementary; 0.13397 r for 60° (checks/common-practice.json).
 */
export function soleDepthMm(plane: Pick<CurvedPlane, "radiusMm" | "widthMm">): number {
  const ratio = halfChordRatio(plane);
  const halfMm = ratio * plane.radiusMm;
  return (halfMm * ratio) / (1 + Math.sqrt((1 - ratio) * (1 + ratio)));
}

/** Width of the sole that carries so many degrees of a circle, mm: 2 r sin(arc / 2), for 0 < arc <= 180. */
export function widthForArcMm(radiusMm: number, arcDeg: number): number {
  return 2 * radiusMm * Math.sin((arcDeg * Math.PI) / 360);
}

/**
 * Whether a sole is wider than its whole circle. Width and radius may each be off by half a step of the rounding in
 * which all input is taken, so a true half circle of thirds of an inch may come in a hair too wide.
 */
export function isWiderThanCircle(plane: Pick<CurvedPlane, "radiusMm" | "widthMm">): boolean {
  return exceedsMm(plane.widthMm, 2 * plane.radiusMm, 2 * SAME_POINT_MM);
}

/** w / 2r, at most 1. */
function halfChordRatio(plane: Pick<CurvedPlane, "radiusMm" | "widthMm">): number {
  const { radiusMm, widthMm } = plane;
  if (!(radiusMm > 0) || !(widthMm > 0) || isWiderThanCircle(plane)) {
    bug("a curved sole needs 0 < width <= 2 radius", { radiusMm, widthMm });
  }
  return Math.min(1, widthMm / (2 * radiusMm));
}

function curvedSole(plane: CurvedPlane): Sole {
  const { radiusMm, widthMm } = plane;
  const sign = plane.kind === "round" ? 1 : -1;
  const depthMm = soleDepthMm(plane);
  const ratio = halfChordRatio(plane);
  // tan(sweep / 4) with sweep = 2 asin(ratio), as a half-angle formula: exactly 1 at the half circle.
  const bulge = (sign * ratio) / (1 + Math.sqrt((1 - ratio) * (1 + ratio)));
  const chain = chainFromVertices([
    [-widthMm / 2, sign * depthMm, bulge],
    [widthMm / 2, sign * depthMm],
  ]);
  const sole = soleFrom(chain, -widthMm / 2, widthMm / 2, "none");
  return {
    ...sole,
    arc: { radiusMm, sign },
    ...(plane.shoulder === undefined ? {} : { shoulder: plane.shoulder }),
  };
}

function flatSole(widthMm: number, cutsWall: WallSide): Sole {
  const halfMm = widthMm / 2;
  const chain = chainFromVertices([
    [-halfMm, 0],
    [halfMm, 0],
  ]);
  return soleFrom(chain, -halfMm, halfMm, cutsWall);
}

/** Upright wall at x = 0, a flat nose beside it, then the beak's flank rising at its slope from level. */
function snipeBillSole(plane: SnipeBill): Sole {
  const { widthMm, noseMm, slopeDeg } = plane;
  const flankMm = (widthMm - noseMm) * Math.tan((slopeDeg * Math.PI) / 180);
  const nose: Vertex[] = noseMm > 0 ? [[0, 0]] : [];
  return handedSole([...nose, [noseMm, 0], [widthMm, flankMm]], plane.hand);
}

/**
 * Side planes pare an upright wall at x = 0 and hardly touch the floor: a side snipe and a side rebate plane are
 * taken as a narrow flat foot as wide as the plane's `widthMm`. A side round carries the flank of an arc of
 * `radiusMm` (the plane's width if none is given: a quarter circle) that starts upright at the wall and comes down
 * to its foot at x = width. These are assumptions: makers' side planes differ, and a measured sole can be given as
 * a plane of kind "shaped".
 */
function sideSole(plane: SidePlane): Sole {
  const { widthMm } = plane;
  if (plane.kind !== "side round") {
    return handedSole(
      [
        [0, 0],
        [widthMm, 0],
      ],
      plane.hand,
    );
  }
  const radiusMm = plane.radiusMm ?? widthMm;
  const depthMm = Math.sqrt(widthMm * (2 * radiusMm - widthMm));
  // The arc turns from straight down through atan2(depth, radius - width); its bulge is the tangent of a quarter of that.
  const sweepRad = Math.atan2(depthMm, radiusMm - widthMm);
  return handedSole(
    [
      [0, depthMm, Math.tan(sweepRad / 4)],
      [widthMm, 0],
    ],
    plane.hand,
  );
}

/**
 * A half-circle hollow as wide as the bead, its middle the origin, and beside it the nib that sinks the quirk, as
 * deep as the bead is high. The nib stands on the plane's `hand`, the right unless said: the fence side is the left.
 */
function beadSole(plane: BeadPlane): Sole {
  const radiusMm = plane.widthMm / 2;
  const right: readonly Vertex[] = [
    [-radiusMm, -radiusMm, -1],
    [radiusMm, -radiusMm],
    [radiusMm + plane.quirkMm, -radiusMm],
  ];
  const hand = plane.hand ?? "right";
  const vertices = hand === "right" ? right : mirrored(right);
  return soleFrom(chainFromVertices([...vertices]), vertices[0]![0], vertices[2]![0], hand);
}

function shapedSole(chain: Chain, cutsWall: WallSide): Sole {
  const pieces = chain.pieces;
  return soleFrom(chain, pieces[0]!.from.x, pieces[pieces.length - 1]!.to.x, cutsWall);
}

/** A sole drawn for the left hand (its upright wall at x = 0, the rest to the right of it), for either hand. */
function handedSole(leftHanded: readonly Vertex[], hand: Hand): Sole {
  const vertices = hand === "left" ? leftHanded : mirrored(leftHanded);
  const leftMm = vertices[0]![0];
  const rightMm = vertices[vertices.length - 1]![0];
  return soleFrom(chainFromVertices([...vertices]), leftMm, rightMm, hand);
}

/**
 * The outline mirrored about the axis, again from left to right. Mirroring and reversing both turn the sign of a
 * bulge, so it stays; but it belongs to the piece, which now starts at the piece's other end.
 */
export function mirrored(vertices: readonly Vertex[]): readonly Vertex[] {
  const last = vertices.length - 1;
  return vertices.map((_, index): Vertex => {
    const [x, y] = vertices[last - index]!;
    const bulge = index < last ? (vertices[last - index - 1]![2] ?? 0) : 0;
    const mirroredX = x === 0 ? 0 : -x;
    return bulge === 0 ? [mirroredX, y] : [mirroredX, y, bulge];
  });
}

function soleFrom(chain: Chain, leftMm: number, rightMm: number, cutsWall: WallSide): Sole {
  return {
    chain,
    leftMm,
    rightMm,
    widthMm: rightMm - leftMm,
    cutsWall: {
      left: cutsWall === "left" || cutsWall === "both",
      right: cutsWall === "right" || cutsWall === "both",
    },
  };
}
