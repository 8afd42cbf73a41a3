/** Benches for a request: its section made ready for planning, mirrored where the gauge edge is on the right. */
import { regionOf } from "../curve/index.ts";
import { COMMON_LIMITS } from "../cutting/index.ts";
import { SEARCH_FLATTEN_MM } from "../measure/index.ts";
import { mirrorSection } from "../section/index.ts";
import { bandsDrawn } from "./bands.ts";
import type { BenchOptions } from "./bench.ts";
import { keptEdges } from "./edges-to-keep.ts";
import { Effort } from "./effort.ts";
import { stillThere } from "./from-where-it-stands.ts";
import { mirrorShelf } from "./handedness.ts";
import { normalise } from "./normalise.ts";
import { weightsFor } from "./order-weights.ts";
import type { PlanRequest } from "./request.ts";
import { type BenchMaker, benchMaker } from "./search.ts";

/** The search always sees the gauge edge on its left; see handedness.ts. */
export function benchesFor(request: PlanRequest, toleranceMm: number, effort = new Effort()): BenchMaker {
  const isMirrored = request.gaugeEdge === "right";
  const section = isMirrored ? mirrorSection(request.section) : request.section;
  const shelf = isMirrored ? mirrorShelf(request.shelf) : request.shelf;
  const aimedAt = normalise(section, shelf, toleranceMm, request.missSide ?? "either");
  const drawn = aimedAt.planned;
  const planned = request.from ? stillThere(drawn, mirroredRings(request)) : drawn;
  const limits = request.limits ?? COMMON_LIMITS;
  const options: BenchOptions = {
    toleranceMm,
    ...(planned === drawn ? { movedByPieceMm: aimedAt.movedByPieceMm } : {}),
    limits: request.greatestLeanDeg === undefined ? limits : { ...limits, leanDeg: request.greatestLeanDeg },
    weights: weightsFor(request.prefer),
    keptEdges: keptEdges(request.keepSquare),
    effort,
    bandMiddles: bandsDrawn(section).flatMap(({ middles }) => middles),
    ...(request.shavings ? { shavings: request.shavings } : {}),
    ...(request.working ? { working: request.working } : {}),
    ...(request.from ? { start: regionOf(mirroredRings(request), SEARCH_FLATTEN_MM) } : {}),
  };
  return benchMaker(planned, section.stick, shelf, options);
}

function mirroredRings(request: PlanRequest) {
  const rings = request.from ?? [];
  if (request.gaugeEdge !== "right") return rings;
  return rings.map(
    (ring) => mirrorSection({ ...request.section, outline: ring, freeSpans: [], named: [] }).outline,
  );
}
