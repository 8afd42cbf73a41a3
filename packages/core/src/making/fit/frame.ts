/** Frames of any polygon: lengths at both edges and the cut at each end, from the size that is known. */
import { type Point, point } from "../../curve/index.ts";
import {
  cataloguedTrouble,
  fine,
  type Outcome,
  refused,
  type TroubleCode,
  toDeg,
  toRad,
} from "../../measure/index.ts";
import { dustCaution, sawCaution, shortPieceCaution } from "./cautions.ts";
import { LONGEST_MM } from "./checks.ts";
import { frameTroubles, sidesCross } from "./frame-checks.ts";
import type { FrameShape, StatedSize } from "./frame-types.ts";
import { offsetPolygon, unit } from "./offset-polygon.ts";
import { type FitDrawing, type FitTrouble, SAW_CONVENTION, type SawConvention } from "./types.ts";

export interface FrameQuestion {
  readonly shape: FrameShape;
  readonly stated: StatedSize;
  /** Width of the moulding from outside to sight edge: one for all sides, or one for each. */
  readonly widthMm: number | readonly number[];
  /** Width of the rebate from the sight edge; none if left out. */
  readonly rebateMm?: number | undefined;
  /** By how much the rebate's opening is larger than the glass, in all (both sides together). */
  readonly allowanceMm?: number | undefined;
}

export interface RailEnd {
  /** Between the two rails, inside the frame. */
  readonly cornerDeg: number;
  /** Swing of the saw from a square cut, the rail lying on its back. */
  readonly mitreDeg: number;
  /** Between the rail's outside edge and the cut. */
  readonly fromEdgeDeg: number;
  /** The sight edge is the shorter one, as at every corner that points outward. */
  readonly longerAt: "outside" | "sight";
}

export interface Rail {
  readonly number: number;
  readonly widthMm: number;
  readonly outsideMm: number;
  readonly sightMm: number;
  readonly rebateMm: number | null;
  /** Long point to long point: what the piece needs of the stick. */
  readonly longMm: number;
  readonly start: RailEnd;
  readonly end: RailEnd;
}

export interface Frame {
  readonly rails: readonly Rail[];
  /** Corners of each outline, anticlockwise, mm. */
  readonly outlines: {
    readonly outside: readonly Point[];
    readonly sight: readonly Point[];
    readonly rebate: readonly Point[] | null;
    readonly glass: readonly Point[] | null;
  };
  /** Long points of all rails together; saw kerfs, trim and planing are added where the stick is cut up. */
  readonly stickMm: number;
  /** How many times the saw's setting error stands in the last joint. */
  readonly errorTimes: number;
  readonly stated: StatedSize;
  readonly convention: SawConvention & {
    readonly sizes: "rebate = sight + 2 rebates; glass = rebate − allowance; outside = sight + 2 widths";
    readonly rails: "in order round the frame, anticlockwise as seen from the front";
  };
  readonly assumed: readonly FitTrouble[];
  readonly cautions: readonly FitTrouble[];
  readonly drawing: FitDrawing;
}

/**
 * A frame's rails from one stated size. The other outlines are parallels of it: the rebate's opening one rebate outside
 * the sight edge, the outside one width, the glass half the allowance inside the rebate. For a rectangle this is the
 * rule "glass + allowance + 2 (width − rebate)" (checks/area-f). Corners 30 to 175° (or as much beyond a half turn,
 * pointing inward). Refused: fewer than three corners, crossing sides, sides that a width leaves nothing of.
 */
export function frame(question: FrameQuestion): Outcome<Frame, TroubleCode> {
  const { shape, stated, rebateMm = 0, allowanceMm = 0 } = question;
  const corners = cornersOf(shape);
  const count = corners.length;
  const widths =
    typeof question.widthMm === "number" ? corners.map(() => question.widthMm as number) : question.widthMm;
  const refusal = frameTroubles({ shape, corners, widths, rebateMm, allowanceMm });
  if (refusal !== null) return refused(refusal);
  const offsets: Readonly<Record<StatedSize, readonly number[]>> = {
    sight: corners.map(() => 0),
    rebate: corners.map(() => rebateMm),
    glass: corners.map(() => rebateMm - allowanceMm / 2),
    outside: widths,
  };
  const outlineOf = (size: StatedSize) =>
    offsetPolygon(
      corners,
      offsets[size].map((offset, index) => offset - (offsets[stated][index] as number)),
    );
  const outside = outlineOf("outside");
  const sight = outlineOf("sight");
  const hasRebate = rebateMm > 0;
  const rebate = hasRebate ? outlineOf("rebate") : null;
  const turned = sight.findIndex((_, index) => isTurned(sight, outside, index));
  if (turned >= 0) {
    const facts = { rail: turned + 1, widthMm: widths[turned] as number };
    return refused(cataloguedTrouble("frame-nothing-left", "width", facts));
  }
  if (sidesCross(outside) || sidesCross(sight)) {
    return refused(cataloguedTrouble("frame-crosses-itself", "width", {}));
  }
  const rails = outside.map((_, index): Rail => railOf(index, { outside, sight, rebate, widths }));
  const longs = rails.map(({ longMm }) => longMm);
  const view = {
    title: "the frame from the front",
    shapes: [
      { kind: "stick", name: "outside", run: "closed", points: outside },
      { kind: "stick", name: "sight edge", run: "closed", points: sight },
      ...(rebate === null
        ? []
        : [{ kind: "hidden", name: "rebate", run: "closed", points: rebate } as const]),
      ...outside.map(
        (corner, index) =>
          ({
            kind: "cut",
            name: `mitre ${index + 1}`,
            run: "open",
            points: [corner, sight[index] as Point],
          }) as const,
      ),
    ],
    angles: sight.map((at, index) => {
      const toNext = unit(at, sight[(index + 1) % count] as Point);
      const cornerDeg = (rails[index] as Rail).start.cornerDeg;
      return {
        name: `corner ${index + 1}`,
        at,
        radiusMm: (widths[index] as number) / 2,
        fromDeg: toDeg(Math.atan2(toNext.y, toNext.x)),
        sweepDeg: cornerDeg,
        valueDeg: cornerDeg,
      };
    }),
    places: outside.map((at, index) => {
      const next = outside[(index + 1) % count] as Point;
      return { name: `rail ${index + 1}`, at: point((at.x + next.x) / 2, (at.y + next.y) / 2) };
    }),
  } as const;
  return fine({
    rails,
    outlines: { outside, sight, rebate, glass: hasRebate ? outlineOf("glass") : null },
    stickMm: longs.reduce((sum, long) => sum + long, 0),
    errorTimes: 2 * count,
    stated,
    convention: {
      ...SAW_CONVENTION,
      sizes: "rebate = sight + 2 rebates; glass = rebate − allowance; outside = sight + 2 widths",
      rails: "in order round the frame, anticlockwise as seen from the front",
    },
    assumed: [],
    cautions: [sawCaution(), dustCaution(), ...shortPieceCaution(Math.min(...longs))],
    drawing: { views: [view] },
  });
}

/** The stated outline's corners, anticlockwise, the first side at the bottom. */
function cornersOf(shape: FrameShape): readonly Point[] {
  if (shape.kind === "rectangle") {
    const { acrossMm, upMm } = shape;
    if (!Number.isFinite(acrossMm) || !Number.isFinite(upMm)) return [];
    return [point(0, 0), point(acrossMm, 0), point(acrossMm, upMm), point(0, upMm)];
  }
  if (shape.kind === "regular") {
    const { sides, sideMm } = shape;
    if (!Number.isInteger(sides) || sides < 3 || !(sideMm > 0 && sideMm <= LONGEST_MM)) return [];
    const radiusMm = sideMm / (2 * Math.sin(Math.PI / sides));
    const startDeg = 270 - 180 / sides;
    return Array.from({ length: Math.min(sides, MOST_CORNERS) }, (_, index) => {
      const directionRad = toRad(startDeg + (index * 360) / sides);
      return point(radiusMm * Math.cos(directionRad), radiusMm * Math.sin(directionRad));
    });
  }
  if (shape.corners.some(({ x, y }) => !Number.isFinite(x) || !Number.isFinite(y))) return [];
  const twice = shape.corners.reduce((sum, { x, y }, index) => {
    const next = shape.corners[(index + 1) % shape.corners.length] as Point;
    return sum + x * next.y - y * next.x;
  }, 0);
  return twice >= 0 ? shape.corners : [...shape.corners].reverse();
}

/** More corners make no frame that anybody mitres. */
const MOST_CORNERS = 72;

interface Outlines {
  readonly outside: readonly Point[];
  readonly sight: readonly Point[];
  readonly rebate: readonly Point[] | null;
  readonly widths: readonly number[];
}

function railOf(index: number, { outside, sight, rebate, widths }: Outlines): Rail {
  const next = (index + 1) % outside.length;
  const side = (outline: readonly Point[]) => {
    const from = outline[index] as Point;
    const to = outline[next] as Point;
    return Math.hypot(to.x - from.x, to.y - from.y);
  };
  const along = unit(outside[index] as Point, outside[next] as Point);
  const places = [outside[index], outside[next], sight[index], sight[next]].map(
    (place) => (place as Point).x * along.x + (place as Point).y * along.y,
  );
  return {
    number: index + 1,
    widthMm: widths[index] as number,
    outsideMm: side(outside),
    sightMm: side(sight),
    rebateMm: rebate === null ? null : side(rebate),
    longMm: Math.max(...places) - Math.min(...places),
    start: railEnd({ outside, sight }, index, along),
    end: railEnd({ outside, sight }, next, { x: -along.x, y: -along.y }),
  };
}

/** The end of a rail at a corner; `inward` runs along the rail away from that end. */
function railEnd(
  { outside, sight }: Pick<Outlines, "outside" | "sight">,
  corner: number,
  inward: Point,
): RailEnd {
  const total = outside.length;
  const at = outside[corner] as Point;
  const cut = unit(at, sight[corner] as Point);
  const acrossCut = Math.abs(cut.x * inward.y - cut.y * inward.x);
  const fromEdgeDeg = toDeg(Math.atan2(acrossCut, cut.x * inward.x + cut.y * inward.y));
  const before = unit(at, outside[(corner + total - 1) % total] as Point);
  const after = unit(at, outside[(corner + 1) % total] as Point);
  const turnRad = Math.atan2(
    after.x * before.y - after.y * before.x,
    after.x * before.x + after.y * before.y,
  );
  const cornerDeg = toDeg(turnRad);
  return {
    cornerDeg: cornerDeg < 0 ? cornerDeg + 360 : cornerDeg,
    mitreDeg: Math.abs(90 - fromEdgeDeg),
    fromEdgeDeg,
    longerAt: fromEdgeDeg < 90 ? "outside" : "sight",
  };
}

/** Does a side run the other way inside than outside, or has it shrunk to nothing? */
function isTurned(sight: readonly Point[], outside: readonly Point[], index: number): boolean {
  const next = (index + 1) % sight.length;
  const inner = { from: sight[index] as Point, to: sight[next] as Point };
  const outer = { from: outside[index] as Point, to: outside[next] as Point };
  return (
    (inner.to.x - inner.from.x) * (outer.to.x - outer.from.x) +
      (inner.to.y - inner.from.y) * (outer.to.y - outer.from.y) <=
    0
  );
}
