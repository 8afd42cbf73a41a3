/** What is taken off the two corners between the back and the edges: glass rebates, spring bevels. */
import { line, type Piece, type Point, point } from "../curve/index.ts";
import {
  cataloguedTrouble,
  exceedsMm,
  fine,
  LEAST_PIECE_MM,
  type Outcome,
  refused,
  sameMm,
  type TroubleCode,
  toRad,
} from "../measure/index.ts";
import type { BackSpec, SectionSpec } from "./part-spec.ts";

/** One back corner: where the back ends, where the edge begins, and the pieces from the one to the other. */
export interface BackCorner {
  readonly spec: BackSpec | null;
  readonly onBack: Point;
  readonly onEdge: Point;
  readonly pieces: readonly Piece[];
}

interface Taken {
  readonly acrossMm: number;
  readonly riseMm: number;
}

/**
 * Both corners of the back. The chain starts on the gauge edge at `startHeightMm` and ends at `end`; neither corner
 * may rise higher than that, nor may the two take the whole back.
 */
export function backCorners(
  spec: SectionSpec,
  startHeightMm: number,
  end: Point,
): Outcome<{ readonly gauge: BackCorner; readonly far: BackCorner }, TroubleCode> {
  const widthMm = spec.stick.widthMm;
  const gaugeSpecs = (spec.back ?? []).filter((one) => one.edge === "gauge");
  const farSpecs = (spec.back ?? []).filter((one) => one.edge === "far");
  for (const specs of [gaugeSpecs, farSpecs]) {
    if (specs.length > 1) {
      return refused(cataloguedTrouble("back-twice", "section.back", { edge: specs[0]?.edge ?? "" }));
    }
  }
  const gauge = corner(gaugeSpecs[0], "gauge", 0, startHeightMm);
  if (!gauge.ok) return gauge;
  const far = corner(farSpecs[0], "far", end.x, sameMm(end.x, widthMm) ? end.y : 0);
  if (!far.ok) return far;
  const leftMm = far.value.onBack.x - gauge.value.onBack.x;
  // Two bevels may meet in one arris; a rebate needs some back left, or it parts the stick.
  const onlyBevels = [...gaugeSpecs, ...farSpecs].every((one) => one.kind === "bevel");
  if (!(onlyBevels ? leftMm >= 0 || sameMm(leftMm, 0) : leftMm >= LEAST_PIECE_MM)) {
    return refused(cataloguedTrouble("back-all-gone", "section.back", { widthMm, overMm: -leftMm }));
  }
  return fine({ gauge: gauge.value, far: far.value });
}

function corner(
  spec: BackSpec | undefined,
  edge: "gauge" | "far",
  edgeXMm: number,
  edgeHeightMm: number,
): Outcome<BackCorner, TroubleCode> {
  const bare = point(edgeXMm, 0);
  if (spec === undefined) return fine({ spec: null, onBack: bare, onEdge: bare, pieces: [] });
  const taken = takenBy(spec);
  if (!(taken.acrossMm >= LEAST_PIECE_MM && taken.riseMm >= LEAST_PIECE_MM)) {
    return refused(
      cataloguedTrouble("back-size", "section.back", { kind: spec.kind, edge, leastMm: LEAST_PIECE_MM }),
    );
  }
  if (exceedsMm(taken.riseMm, edgeHeightMm)) {
    return refused(
      cataloguedTrouble("back-too-high", "section.back", {
        kind: spec.kind,
        edge,
        riseMm: taken.riseMm,
        edgeHeightMm,
      }),
    );
  }
  // Where the corner takes the whole edge, its end is the chain's own end point.
  const riseMm = sameMm(taken.riseMm, edgeHeightMm) ? edgeHeightMm : taken.riseMm;
  const onBack = point(edgeXMm + (edge === "gauge" ? taken.acrossMm : -taken.acrossMm), 0);
  const onEdge = point(edgeXMm, riseMm);
  const inner = point(onBack.x, riseMm);
  const pieces = spec.kind === "rebate" ? [line(onBack, inner), line(inner, onEdge)] : [line(onBack, onEdge)];
  return fine({ spec, onBack, onEdge, pieces });
}

function takenBy(spec: BackSpec): Taken {
  if (spec.kind === "rebate") return { acrossMm: spec.widthMm, riseMm: spec.depthMm };
  const sound = spec.fromBackDeg > 0 && spec.fromBackDeg < 90 && Number.isFinite(spec.riseMm);
  return {
    acrossMm: sound ? spec.riseMm / Math.tan(toRad(spec.fromBackDeg)) : Number.NaN,
    riseMm: spec.riseMm,
  };
}
