/** Plans of up to eight cuts, as the search found them, before they are written down. */
import { readFileSync } from "node:fs";
import { GALLERY } from "../../gallery/sections.ts";
import { planRequestOf } from "../../packages/core/src/job/index.ts";
import { benchesFor } from "../../packages/core/src/planning/benches-for.ts";
import type { PlanRequest } from "../../packages/core/src/planning/index.ts";
import { withLeastOrder } from "../../packages/core/src/planning/least-order.ts";
import { type Found, searchWay } from "../../packages/core/src/planning/search.ts";
import { wantedCuts } from "../../packages/core/src/planning/strategy.ts";
import type { Way } from "../../packages/core/src/planning/way.ts";
import { ALL_WAYS, askedWay, takenWay } from "../../packages/core/src/planning/ways.ts";
import { buildSection } from "../../packages/core/src/section/index.ts";
import { readShelf, type Shelf } from "../../packages/core/src/shelf/index.ts";
import { EXAMPLES, readExample } from "../../scripts/example-files.ts";

export const MOST_CUTS = 8;

export interface SmallPlan {
  readonly name: string;
  readonly found: Found;
}

/**
 * Those of the examples and the gallery whose plans are small. They are named, so that the large ones need not be
 * planned to be left out; one that has grown past eight cuts is left out too.
 */
const SMALL: readonly string[] = [
  "example cavetto",
  "example cyma-recta",
  "example glazing-bar",
  "example impossible",
  "example quarter-ovolo",
  "ovolo-small",
  "ovolo-and-fillet",
  "ovolo-large",
  "ovolo-flat",
  "cavetto-small",
  "cavetto-large",
  "cyma-recta-flat-small",
  "cyma-reversa-flat",
  "torus",
  "astragal",
  "quirked-bead",
  "low-bead",
  "wide-two-bands",
  "frame-two-rebates",
  "fielded-panel",
  "stair-nosing",
  "low-bead-on-bevel",
  "half-round-between-fillets",
  "narrow-fillets",
  "undercut",
  "thin-lath",
  "small-square",
  "dovetail-edge",
  "thin-strip-cove",
];

/** Every small plan, in the order of the list. */
export function smallPlans(): readonly SmallPlan[] {
  return SMALL.flatMap((name) => {
    const found = foundFor(requestOf(name));
    return found.sequence.cuts.length <= MOST_CUTS ? [{ name, found }] : [];
  });
}

function requestOf(name: string): PlanRequest {
  if (name.startsWith(EXAMPLE)) {
    const { job, section, shelf } = readExample(name.slice(EXAMPLE.length));
    return planRequestOf(job, section, shelf);
  }
  const entry = GALLERY.find(({ id }) => id === name);
  const built = entry ? buildSection(entry.section) : undefined;
  if (!entry || !built?.ok) throw new Error(`no such section in the gallery: ${name}`);
  return { section: built.value, shelf: shelfOf(entry.shelf) };
}

const EXAMPLE = "example ";

/** The way that is taken for a request, searched as `planSteps` does. */
export function foundFor(request: PlanRequest): Found {
  const makeBench = benchesFor(request, request.toleranceMm ?? TOLERANCE_MM);
  const isSprung = wantedCuts(makeBench({})).saws.length > 0;
  const ways = new Set<Way>(["flat", ...(request.ways ?? (isSprung ? ALL_WAYS : []))]);
  const found: Found[] = [];
  for (const way of ways) {
    const one = ended(searchWay(way, makeBench));
    if (one) found.push(one);
  }
  return withLeastOrder(takenWay(found, askedWay(request.ways)));
}

const TOLERANCE_MM = 0.2;

function ended<T>(steps: Generator<unknown, T>): T {
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
  }
}

const SHELVES = new Map<string, Shelf>();

function shelfOf(name: string): Shelf {
  const known = SHELVES.get(name);
  if (known) return known;
  const read = readShelf(readFileSync(new URL(`shelves/${name}.json`, EXAMPLES), "utf8"));
  if (!read.ok) throw new Error(read.trouble.code);
  SHELVES.set(name, read.value);
  return read.value;
}
