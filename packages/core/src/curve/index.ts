export { chain, chainFromVertices, verticesOf } from "./chain.ts";
export { type Extents, extentsOf } from "./extents.ts";
export { type CircleFit, type CircleFitting, fitCircle } from "./fit-circle.ts";
export { flatRingAreaMm2, regionExtents } from "./flat-ring.ts";
export { flatRingOf, flattenPiece } from "./flatten.ts";
export { type Crossing, type Hit, intersect } from "./intersect.ts";
export { offsetChain, offsetRing } from "./offset.ts";
export { orientation } from "./orientation.ts";
export {
  angleOnArc,
  arc,
  arcsThrough,
  circleOf,
  endAngleRad,
  lengthMm,
  line,
  type NearestOnPiece,
  nearestOnPiece,
  pointAt,
  reversePiece,
  splitPiece,
  startAngleRad,
  sweepRad,
  tangentRad,
} from "./piece.ts";
export {
  addPoints,
  cross,
  distanceMm,
  dot,
  lerpPoint,
  point,
  samePoint,
  scalePoint,
  subtractPoints,
  turnPoint,
} from "./point.ts";
export {
  difference,
  EMPTY_REGION,
  intersection,
  regionAreaMm2,
  regionOf,
  regionOfPolygon,
  splitRegion,
  union,
} from "./region.ts";
export {
  areaMm2,
  insideRing,
  mirrorRing,
  moveRing,
  type NearestOnRing,
  nearestOnRing,
  type RingTransform,
  reverseRing,
  ring,
  ringFromVertices,
  transformRing,
} from "./ring.ts";
export { ringsOf } from "./rings-of.ts";
export { radiusOfChordAndHeightMm, sagittaMm, segmentAreaMm2 } from "./segment.ts";
export { selfCrossings } from "./self-crossings.ts";
export type {
  Arc,
  Chain,
  Circle,
  Circles,
  FlatRing,
  Line,
  Piece,
  Point,
  Region,
  Ring,
  Vertex,
} from "./types.ts";
