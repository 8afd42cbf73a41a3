import type { Plan } from "../cutting/index.ts";
import {
  cataloguedTrouble,
  DEFAULT_TOLERANCE_MM,
  fine,
  LEAST_TOLERANCE_MM,
  type Outcome,
  refused,
} from "../measure/index.ts";
import { assumedOf, type Plane, type Shelf } from "../shelf/index.ts";
import { advised, withSavers } from "./advice.ts";
import { benchesFor } from "./benches-for.ts";
import { Effort } from "./effort.ts";
import { type Following, followed, rememberFound } from "./follow-drawing.ts";
import { withLeastOrder } from "./least-order.ts";
import { type ProvenWay, provenPlan } from "./proven-plan.ts";
import type { PlanProgress, PlanRequest } from "./request.ts";
import { type Found, searchWay } from "./search.ts";
import { wantedCuts } from "./strategy.ts";
import { provesSwapped, withSwaps } from "./swap-cuts.ts";
import type { Way } from "./way.ts";
import { ALL_WAYS, askedWay, takenWay } from "./ways.ts";

/** Plans in one go; see `planSteps`. */
export function planSection(request: PlanRequest): Outcome<Plan> {
  const steps = planSteps(request);
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
  }
}

/**
 * Plans a section, handing control back between its steps. The plan is proven: every cut in it was made, in order,
 * on the wood as it then stands, and none is refused by any rule of the cutting model; what the shelf cannot do
 * stands in `uncut`. Refuses an empty shelf and a tolerance below what the kernel can tell apart.
 */
export function* planSteps(request: PlanRequest): Generator<PlanProgress, Outcome<Plan>> {
  const effort = new Effort();
  const steps = planned(request, effort);
  for (;;) {
    // Between two steps other plans may be made.
    effort.resume();
    const step = steps.next();
    effort.pause();
    if (step.done) return step.value;
    yield step.value;
  }
}

function* planned(request: PlanRequest, effort: Effort): Generator<PlanProgress, Outcome<Plan>> {
  const shelf = shelfInUse(request);
  if (shelf.planes.length === 0) return refused(cataloguedTrouble("shelf-empty", "planes", {}));
  const toleranceMm = request.toleranceMm ?? DEFAULT_TOLERANCE_MM;
  if (!(toleranceMm >= LEAST_TOLERANCE_MM)) {
    return refused(
      cataloguedTrouble("plan-tolerance-too-small", "tolerance", {
        toleranceMm,
        leastMm: LEAST_TOLERANCE_MM,
      }),
    );
  }
  const progress = counter();
  yield progress("reading the section");
  const makeBench = benchesFor({ ...request, shelf }, toleranceMm, effort);
  const bench = makeBench({});
  if (bench.worked.length === 0) return refused(cataloguedTrouble("section-nothing-to-cut", "section", {}));
  const sameAgain = mayFollow(request) ? followed(request, makeBench) : null;
  const found: Found[] = sameAgain ? [sameAgain] : [];
  for (const way of sameAgain ? [] : waysToCompare(request, wantedCuts(bench).saws.length > 0)) {
    // Whatever else is left out, there is one way to work by, and the one that was asked for.
    if (found.length > 0 && !effort.isThorough && way !== askedWay(request.ways)) continue;
    const search = searchWay(way, makeBench);
    for (let step = search.next(); ; step = search.next()) {
      if (step.done) {
        if (step.value) found.push(step.value);
        break;
      }
      yield progress(step.value);
    }
  }
  const asked = askedWay(request.ways);
  const chosen = takenWay(found, asked);
  if (!request.quick) yield progress("holding the order against others");
  const ordered = request.quick ? chosen : withLeastOrder(chosen);
  const swapped = withSwaps(ordered, request.swaps ?? []);
  yield progress("proving every cut");
  const provenWith = (taken: Found): ProvenWay => {
    const standing = { taken, found: found.map((way) => (way === chosen ? taken : way)), asked };
    return provenPlan({ ...request, shelf }, standing);
  };
  const asWished = provenWith(swapped.found);
  const holds = swapped.found === ordered || provesSwapped(asWished.plan, request.limits);
  const proven = holds ? asWished : provenWith(ordered);
  const warnings = holds ? swapped.troubles : [cataloguedTrouble("swap-unproven", "way.swaps", {})];
  let plan = proven.plan;
  if (plan.uncut.length > 0 && !request.quick) {
    yield progress("looking for what would cure the rest");
    plan = yield* counted(advised({ ...request, shelf }, proven));
  }
  if (request.advise) {
    yield progress("looking for a plane that saves cuts");
    plan = yield* counted(withSavers({ ...request, shelf }, proven, plan));
  }
  rememberFound(plan, proven.found);
  return fine(plan, warnings);

  function* counted(steps: Generator<string, Plan>): Generator<PlanProgress, Plan> {
    for (let step = steps.next(); ; step = steps.next()) {
      if (step.done) return step.value;
      yield progress(step.value);
    }
  }
}

/** The order of a plan before is taken while a drawing is dragged; swaps would be made in it a second time. */
function mayFollow(request: PlanRequest): request is Following {
  return request.quick === true && request.like !== undefined && (request.swaps ?? []).length === 0;
}

/** Steps of a plan are not known beforehand; this many is what an ordinary one takes. */
const ORDINARY_STEPS = 7;

function counter(): (says: string) => PlanProgress {
  let done = 0;
  return (says) => {
    const at = done++;
    return { done: at, of: Math.max(ORDINARY_STEPS, at + 1), says };
  };
}

function shelfInUse(request: PlanRequest): Shelf {
  const without = new Set(request.without ?? []);
  if (without.size === 0) return request.shelf;
  const isUsed = (plane: Plane) => !without.has(plane.id);
  return { planes: request.shelf.planes.filter(isUsed), assumed: assumedOf(request.shelf, isUsed) };
}

function waysToCompare(request: PlanRequest, isSprung: boolean): readonly Way[] {
  const ways = request.ways ?? (isSprung ? ALL_WAYS : ["flat"]);
  // Flat always exists, so that there is something to compare with and to fall back on.
  return ways.includes("flat") || ways.length === 0
    ? [...new Set<Way>(["flat", ...ways])]
    : [...ways, "flat"];
}
