/**
 * What would cure the places that stay uncut: the one plane to buy or borrow, or the smallest change of the section.
 * Nothing is advised that was not planned so first.
 */
import { arc, circleOf, type Ring } from "../curve/index.ts";
import type { Plan, PlanUncut } from "../cutting/index.ts";
import { DEFAULT_TOLERANCE_MM } from "../measure/index.ts";
import type { Section } from "../section/index.ts";
import type { Plane } from "../shelf/index.ts";
import type { Bench } from "./bench.ts";
import { benchesFor } from "./benches-for.ts";
import type { ProvenWay } from "./proven-plan.ts";
import { provenPlan } from "./proven-plan.ts";
import type { PlanRequest } from "./request.ts";
import { type BenchMaker, type Found, searchWay } from "./search.ts";
import { type BenchUnit, sayLength } from "./words.ts";
import type { WorkedPiece } from "./worked-piece.ts";

/** A cure that was tried by planning with it. */
export interface Cure {
  readonly says: string;
  /** Places that stayed uncut without it, and stay with it. */
  readonly placesBefore: number;
  readonly placesAfter: number;
}

/** Cures tried at most: each is a plan of its own. */
const MOST_CURES = 3;

/** The plan with each uncut place told what would cure it, as far as a cure was found and proven. */
export function* advised(request: PlanRequest, proven: ProvenWay): Generator<string, Plan> {
  const { plan, bench } = proven;
  const places = plan.uncut.map((place) => ({ place, piece: pieceAt(bench, place) }));
  const tries = distinctTries(places.flatMap(({ piece }) => (piece ? triesFor(request, bench, piece) : [])));
  const proofs: { attempt: Attempt; uncut: readonly PlanUncut[] }[] = [];
  for (const attempt of tries.slice(0, MOST_CURES)) {
    yield `trying ${attempt.says}`;
    const uncut = uncutWith(attempt.request);
    if (uncut && uncut.length < plan.uncut.length) proofs.push({ attempt, uncut });
  }
  const uncut = places.map(({ place, piece }): PlanUncut => {
    const cure = piece
      ? proofs
          .filter((p) => p.attempt.pieces.has(piece.index) && !stillUncut(p.uncut, place))
          .sort(byLeftOver)[0]
      : undefined;
    if (!cure) return place;
    const rest =
      cure.uncut.length === 0
        ? "nothing stays uncut"
        : `${cure.uncut.length} other ${cure.uncut.length === 1 ? "place stays" : "places stay"} uncut`;
    return { ...place, try: `${cure.attempt.cures} Planned so: ${rest}.` };
  });
  return { ...plan, uncut };
}

interface Attempt {
  readonly key: string;
  readonly says: string;
  readonly cures: string;
  readonly request: PlanRequest;
  /** Pieces (places in the planned ring) it is meant for. */
  readonly pieces: Set<number>;
}

function byLeftOver(a: { uncut: readonly PlanUncut[] }, b: { uncut: readonly PlanUncut[] }): number {
  return a.uncut.length - b.uncut.length;
}

function distinctTries(tries: readonly Attempt[]): Attempt[] {
  const kept = new Map<string, Attempt>();
  for (const attempt of tries) {
    const known = kept.get(attempt.key);
    if (known) for (const index of attempt.pieces) known.pieces.add(index);
    else kept.set(attempt.key, attempt);
  }
  return [...kept.values()];
}

function triesFor(request: PlanRequest, bench: Bench, piece: WorkedPiece): Attempt[] {
  const unit = request.unit ?? "mm";
  const tries: Attempt[] = [];
  const add = (plane: Plane, says: string) =>
    tries.push({
      key: `plane ${plane.kind} ${"radiusMm" in plane ? plane.radiusMm : ""} ${"widthMm" in plane ? plane.widthMm : ""}`,
      says,
      cures: `Borrow or buy ${says}.`,
      request: {
        ...request,
        ways: ["flat"],
        shelf: { ...request.shelf, planes: [...request.shelf.planes, plane] },
      },
      pieces: new Set([piece.index]),
    });
  if (!request.shelf.planes.some((plane) => plane.kind === "snipe bill"))
    tries.push(withSnipeBills(request, piece));
  if (piece.curve) {
    const kind = piece.curve.convex ? "hollow" : "round";
    const radiusMm = rounded(piece.curve.radiusMm);
    const plane: Plane = {
      id: `wanted-${kind}`,
      name: `${kind} of ${sayLength(radiusMm, unit)} radius`,
      kind,
      radiusMm,
      widthMm: radiusMm,
    };
    if (!request.shelf.planes.some((p) => p.kind === kind && Math.abs(p.radiusMm - radiusMm) < 0.02)) {
      add(plane, `a ${kind} of ${sayLength(radiusMm, unit)} radius`);
    }
    const change = withShelfRadius(request, bench, piece, unit);
    if (change) tries.push(change);
  } else {
    // Rounded down: a plane a hair too wide does not go between the walls.
    const widthMm = Math.max(LEAST_REBATE_MM, Math.floor(piece.lengthMm * 100) / 100);
    const narrowest = Math.min(
      ...request.shelf.planes.map((p) => (p.kind === "rebate" ? p.widthMm : Number.POSITIVE_INFINITY)),
    );
    if (widthMm < narrowest) {
      add(
        { id: "wanted-rebate", name: "narrow rebate plane", kind: "rebate", widthMm },
        `a rebate plane ${sayLength(widthMm, unit)} wide`,
      );
    }
  }
  return tries;
}

/** Narrower rebate planes are not made, mm (common practice, no source). */
const LEAST_REBATE_MM = 1.5;

function withSnipeBills(request: PlanRequest, piece: WorkedPiece): Attempt {
  const bill = (hand: "left" | "right"): Plane => ({
    id: `wanted-snipe-${hand}`,
    name: `${hand} snipe bill`,
    kind: "snipe bill",
    hand,
    widthMm: 6,
    noseMm: 0.4,
    slopeDeg: 60,
    reachMm: 5,
  });
  return {
    key: "snipe bills",
    says: "a pair of snipe bills",
    cures: "Borrow or buy a pair of snipe bills.",
    request: {
      ...request,
      ways: ["flat"],
      shelf: { ...request.shelf, planes: [...request.shelf.planes, bill("left"), bill("right")] },
    },
    pieces: new Set([piece.index]),
  };
}

/** The section with this arc drawn, between the same ends, to the nearest radius that is on the shelf. */
function withShelfRadius(
  request: PlanRequest,
  bench: Bench,
  piece: WorkedPiece,
  unit: BenchUnit,
): Attempt | null {
  const curve = piece.curve;
  if (!curve || piece.piece.kind !== "arc") return null;
  const kind = curve.convex ? "hollow" : "round";
  const chord = Math.hypot(piece.piece.to.x - piece.piece.from.x, piece.piece.to.y - piece.piece.from.y);
  const radii = request.shelf.planes.flatMap((p) =>
    p.kind === kind && 2 * p.radiusMm >= chord ? [p.radiusMm] : [],
  );
  if (radii.length === 0) return null;
  const radiusMm = radii.reduce((a, b) =>
    Math.abs(b - curve.radiusMm) < Math.abs(a - curve.radiusMm) ? b : a,
  );
  if (Math.abs(radiusMm - curve.radiusMm) < 0.02) return null;
  const sagitta = radiusMm - Math.sqrt(Math.max(0, radiusMm * radiusMm - (chord * chord) / 4));
  const bulge = (Math.sign(piece.piece.bulge) * 2 * sagitta) / chord;
  const outline: Ring = {
    pieces: bench.planned.pieces.map((p, i) =>
      i === piece.index && p.kind === "arc" ? arc(p.from, p.to, bulge) : p,
    ),
  };
  const section: Section = { ...request.section, outline, freeSpans: [], named: [] };
  return {
    key: `radius ${piece.index}`,
    says: `the curve drawn with ${sayLength(radiusMm, unit)} radius`,
    cures: `Draw the curve with ${sayLength(radiusMm, unit)} radius between the same ends.`,
    request: { ...request, ways: ["flat"], section },
    pieces: new Set([piece.index]),
  };
}

function uncutWith(request: PlanRequest): readonly PlanUncut[] | null {
  const makeBench: BenchMaker = benchesFor(request, request.toleranceMm ?? DEFAULT_TOLERANCE_MM);
  const search = searchWay("flat", makeBench);
  let found: Found | null = null;
  for (let step = search.next(); ; step = search.next()) {
    if (step.done) {
      found = step.value;
      break;
    }
  }
  return found ? provenPlan(request, { taken: found, found: [found], asked: null }).plan.uncut : null;
}

/** Whether a place of the first plan is still among those of another: near enough to be the same. */
function stillUncut(uncut: readonly PlanUncut[], place: PlanUncut): boolean {
  const x = (place.from[0] + place.to[0]) / 2;
  const y = (place.from[1] + place.to[1]) / 2;
  const reach = Math.hypot(place.to[0] - place.from[0], place.to[1] - place.from[1]) / 2 + place.left;
  return uncut.some((p) => Math.hypot((p.from[0] + p.to[0]) / 2 - x, (p.from[1] + p.to[1]) / 2 - y) < reach);
}

function pieceAt(bench: Bench, place: PlanUncut): WorkedPiece | undefined {
  const x = (place.from[0] + place.to[0]) / 2;
  const y = (place.from[1] + place.to[1]) / 2;
  let best: { piece: WorkedPiece; mm: number } | undefined;
  for (const piece of bench.worked) {
    const { from, to } = piece.piece;
    const ends = [from, to, { x: (from.x + to.x) / 2, y: (from.y + to.y) / 2 }];
    const mid = piece.curve && piece.piece.kind === "arc" ? arcMiddle(piece.piece) : ends[2];
    const mm = Math.min(...[...ends, mid].map((p) => Math.hypot(p.x - x, p.y - y)));
    if (!best || mm < best.mm) best = { piece, mm };
  }
  return best?.piece;
}

function arcMiddle(piece: Extract<WorkedPiece["piece"], { kind: "arc" }>) {
  const { centre, radiusMm } = circleOf(piece);
  const x = (piece.from.x + piece.to.x) / 2 - centre.x;
  const y = (piece.from.y + piece.to.y) / 2 - centre.y;
  const length = Math.hypot(x, y) || 1;
  return { x: centre.x + (x / length) * radiusMm, y: centre.y + (y / length) * radiusMm };
}

function rounded(mm: number): number {
  return Math.round(mm * 100) / 100;
}
