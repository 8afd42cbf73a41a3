/**
 * Everything that stays fixed while one plan is made: the wanted section, the stick, the planes with their soles,
 * the limits, and the wood seen at each tilt.
 */
import {
  arc,
  circleOf,
  distanceMm,
  extentsOf,
  line,
  type Point,
  pointAt,
  type Region,
  type Ring,
  regionOf,
} from "../curve/index.ts";
import {
  COMMON_LIMITS,
  type CurveBook,
  type CuttingLimits,
  curveBook,
  type Profile,
  profileOf,
  type SoleShape,
  type SweepOptions,
  soleShape,
  sweepReachMm,
} from "../cutting/index.ts";
import { SEARCH_FLATTEN_MM } from "../measure/index.ts";
import { type Plane, type Shelf, type Sole, solesOf } from "../shelf/index.ts";
import { FLAT_CANTS_DEG } from "./cants.ts";
import type { KeptEdge } from "./edges-to-keep.ts";
import { Effort } from "./effort.ts";
import { COMMON_WORKING, type Working } from "./minutes.ts";
import { ORDER_WEIGHTS, type OrderWeights } from "./order-weights.ts";
import { type WorkedPiece, workedPiecesOf } from "./worked-piece.ts";

/** Thickness of shavings, mm: heavy for waste, ordinary, and the last ones. Common practice, no source. */
export interface Shavings {
  readonly heavyMm: number;
  readonly ordinaryMm: number;
  readonly lastMm: number;
}

export const COMMON_SHAVINGS: Shavings = { heavyMm: 0.3, ordinaryMm: 0.15, lastMm: 0.08 };

/** One sole of one plane, as the planner handles it. */
export interface Tool {
  readonly plane: Plane;
  readonly sole: Sole;
  readonly shape: SoleShape;
}

export interface Bench {
  readonly planned: Ring;
  readonly plannedRegion: Region;
  readonly stick: Ring;
  readonly stickRegion: Region;
  /** The wood as it stands when the plan begins. */
  readonly startRegion: Region;
  readonly cantsDeg: readonly number[];
  readonly box: {
    readonly minX: number;
    readonly maxX: number;
    readonly minY: number;
    readonly maxY: number;
  };
  readonly worked: readonly WorkedPiece[];
  readonly tools: readonly Tool[];
  readonly limits: CuttingLimits;
  readonly shavings: Shavings;
  /** What minutes are reckoned with, where they decide. */
  readonly working: Working;
  readonly toleranceMm: number;
  /** What is left of the tolerance on a piece of the planned ring, after what it was moved from the drawing, mm. */
  roomMm(index: number): number;
  readonly sweepOptions: SweepOptions;
  readonly book: CurveBook;
  readonly gaugeEdge: "left" | "right";
  readonly weights: OrderWeights;
  /** Curves (places in the planned ring) of bands that keep to a width. */
  readonly inBand: ReadonlySet<number>;
  /** Edges that are to be kept square as long as can be. */
  readonly keptEdges: readonly KeptEdge[];
  /** What the plan that this bench is for has taken so far. */
  readonly effort: Effort;
  /** The wanted section seen by a plane of this tilt; kept, since few tilts matter. */
  profileOfPlanned(tiltDeg: number): Profile;
}

export interface BenchOptions {
  readonly limits?: CuttingLimits;
  readonly shavings?: Shavings;
  /** Common working unless given. */
  readonly working?: Working;
  readonly toleranceMm: number;
  /** How far each piece of the planned ring lies from the drawing, mm; nowhere unless given. */
  readonly movedByPieceMm?: readonly number[];
  /** Chord error of flattened arcs: coarse while orders are searched, fine for the proof. */
  readonly chordTolMm?: number;
  /** Side of the drawing that the gauge edge is on; left unless given. */
  readonly gaugeEdge?: "left" | "right";
  readonly weights?: OrderWeights;
  /** Ways the stick may be turned, degrees; flat on its back, back up and either edge up unless given. */
  readonly cantsDeg?: readonly number[];
  /** The wood as it stands when the plan begins; the whole stick unless given. */
  readonly start?: Region;
  /** Middles of the drawn curves that stand in bands which keep to a width; none unless given. */
  readonly bandMiddles?: readonly Point[];
  /** Edges to be kept square as long as can be; none unless given. */
  readonly keptEdges?: readonly KeptEdge[];
  /** Counts the work of the plan; nothing is counted unless given. */
  readonly effort?: Effort;
}

/** Lays everything out for planning `planned` (lines and arcs) out of `stick` with the planes of a shelf. */
export function layOutBench(planned: Ring, stick: Ring, shelf: Shelf, options: BenchOptions): Bench {
  const book = curveBook();
  const chordTolMm = options.chordTolMm ?? SEARCH_FLATTEN_MM;
  const withSources = sourced(planned, book);
  const plannedRegion = regionOf(withSources, chordTolMm);
  const profiles = new Map<string, Profile>();
  const tools = shelf.planes.flatMap((plane) =>
    solesOf(plane).map((sole): Tool => ({ plane, sole, shape: soleShape(sole.chain) })),
  );
  const stickRegion = regionOf(stick, chordTolMm);
  const worked = workedPiecesOf(withSources, stick);
  return {
    planned: withSources,
    plannedRegion,
    stick,
    stickRegion,
    startRegion: options.start ?? stickRegion,
    cantsDeg: options.cantsDeg ?? FLAT_CANTS_DEG,
    box: extentsOf(stick),
    worked,
    tools,
    limits: options.limits ?? COMMON_LIMITS,
    shavings: options.shavings ?? COMMON_SHAVINGS,
    working: options.working ?? COMMON_WORKING,
    toleranceMm: options.toleranceMm,
    roomMm: (index) => options.toleranceMm - (options.movedByPieceMm?.[index] ?? 0),
    sweepOptions: { reachMm: sweepReachMm(stick), chordTolMm, book },
    book,
    gaugeEdge: options.gaugeEdge ?? "left",
    weights: options.weights ?? ORDER_WEIGHTS,
    keptEdges: options.keptEdges ?? [],
    effort: options.effort ?? new Effort(),
    inBand: new Set(curvesAt(worked, options.bandMiddles ?? [])),
    profileOfPlanned(tiltDeg) {
      const key = tiltDeg.toFixed(6);
      let profile = profiles.get(key);
      if (!profile) {
        profile = profileOf(plannedRegion, tiltDeg);
        profiles.set(key, profile);
      }
      return profile;
    },
  };
}

/** A drawn part and a planned piece are the same where their middles lie this near, mm. */
const SAME_PIECE_MM = 0.5;

/** The worked curves (places in the planned ring) whose middles these are. */
export function curvesAt(worked: readonly WorkedPiece[], middles: readonly Point[]): number[] {
  return worked
    .filter(({ curve, piece }) => {
      const own = pointAt(piece, 0.5);
      return curve && middles.some((at) => distanceMm(own, at) < SAME_PIECE_MM);
    })
    .map(({ index }) => index);
}

/** The ring with every arc naming its circle: room is left above arcs while waste is taken, none above flats. */
export function sourced(ring: Ring, book: CurveBook): Ring {
  return {
    pieces: ring.pieces.map((piece) => {
      if (piece.kind === "line") return line(piece.from, piece.to, 0);
      const { centre, radiusMm } = circleOf(piece);
      return arc(piece.from, piece.to, piece.bulge, book.idOf(centre, radiusMm));
    }),
  };
}

/** Both sides, the gauge edge's first: where two would do, the one nearer to it is taken, whichever hand that is. */
export function sidesFromGauge(bench: Bench): readonly ["left", "right"] | readonly ["right", "left"] {
  return bench.gaugeEdge === "left" ? ["left", "right"] : ["right", "left"];
}

/** How far a place stands from the gauge edge, mm across. */
export function fromGaugeEdgeMm(bench: Bench, p: Point): number {
  return bench.gaugeEdge === "left" ? p.x - bench.box.minX : bench.box.maxX - p.x;
}

/** A point moved along a direction, mm. */
export function along(p: Point, direction: Point, byMm: number): Point {
  return { x: p.x + direction.x * byMm, y: p.y + direction.y * byMm };
}
