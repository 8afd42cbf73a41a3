/** What might cure a place that stays uncut, likeliest first: a plane to buy or borrow, or a small change of the section. */
import { distanceMm, sweepRad } from "../curve/index.ts";
import { OVERCUT_MM, SAME_POINT_MM, toDeg } from "../measure/index.ts";
import type { Plane } from "../shelf/index.ts";
import type { Bench } from "./bench.ts";
import type { Attempt } from "./cure-attempt.ts";
import { raised, widened, withFlatLowered, withFlatterRow, withShelfRadius } from "./cure-changes.ts";
import { withUprightEnds } from "./cure-upright.ts";
import { type PlaneDraft, planeDraft, tidy } from "./draft-cut.ts";
import type { PlanRequest } from "./request.ts";
import type { UncutPlace } from "./uncut.ts";
import { flatWidthsMm, isBetweenWalls, isWall } from "./why-uncut.ts";
import { sayLength } from "./words.ts";
import type { WorkedPiece } from "./worked-piece.ts";

/** Every cure worth a try for a place. */
export function curesFor(request: PlanRequest, bench: Bench, place: UncutPlace): Attempt[] {
  const { piece } = place.stretch;
  const tries = piece.curve ? curveCures(request, bench, place) : flatCures(request, bench, place);
  const snipes = request.shelf.planes.some((plane) => plane.kind === "snipe bill")
    ? []
    : [withPlanes(request, "Borrow or buy a pair of snipe bills.", SNIPE_BILLS)];
  return place.reason.rule === "wall" ? [...snipes, ...tries] : [...tries, ...snipes];
}

export function withPlanes(request: PlanRequest, says: string, planes: readonly Plane[]): Attempt {
  return {
    key: says,
    says,
    planes,
    request: { ...request, shelf: { ...request.shelf, planes: [...request.shelf.planes, ...planes] } },
    changed: [],
  };
}

const SNIPE_BILLS: readonly Plane[] = (["left", "right"] as const).map((hand) => ({
  id: `wanted-snipe-${hand}`,
  name: `${hand} snipe bill`,
  kind: "snipe bill",
  hand,
  widthMm: 6,
  noseMm: 0.4,
  slopeDeg: 60,
  reachMm: 5,
}));

// Curves

function curveCures(request: PlanRequest, bench: Bench, { stretch, reason }: UncutPlace): Attempt[] {
  const { piece } = stretch;
  const curve = piece.curve as NonNullable<WorkedPiece["curve"]>;
  const kind = curve.convex ? "hollow" : "round";
  const isThere = request.shelf.planes.some(
    (plane) => plane.kind === kind && Math.abs(plane.radiusMm - curve.radiusMm) <= OVERCUT_MM / 4,
  );
  const bead = beadPlane(request, bench, piece);
  const tries: Attempt[] = [];
  if (!isThere) {
    tries.push(ownRadius(request, piece));
    const change = withShelfRadius(request, bench, piece);
    if (change) tries.push(change);
  } else if (reason.stop?.kind === "meets" && reason.tool) {
    tries.push(narrower(request, piece, reason.tool.sole.widthMm));
    const lowered = withFlatLowered(request, bench, reason.stop.index, reason.stop.overcutMm);
    if (lowered) tries.push(lowered);
    const flatter = withFlatterRow(request, bench, piece);
    // A half-round with room beside it is stuck with a bead plane as it is drawn.
    if (flatter && !bead) tries.push(flatter);
  }
  tries.push(...withUprightEnds(request, bench, stretch));
  // For half a circle between flats the bead plane is the tool that was made for it.
  return bead ? [bead, ...tries] : tries;
}

/**
 * The plane that would take a curve in one setting: of its own radius, or, where that is on the shelf and does not go in, of
 * the same radius with a sole as wide as the curve. Null where that is there too.
 */
export function planeForCurve(request: PlanRequest, piece: WorkedPiece): Attempt | null {
  const curve = piece.curve;
  if (!curve) return null;
  const kind = curve.convex ? "hollow" : "round";
  const there = request.shelf.planes.flatMap((plane) =>
    plane.kind === kind && Math.abs(plane.radiusMm - curve.radiusMm) <= OVERCUT_MM / 4 ? [plane.widthMm] : [],
  );
  if (there.length === 0) return ownRadius(request, piece);
  const chordMm = distanceMm(piece.piece.from, piece.piece.to);
  return chordMm < Math.min(...there) ? narrower(request, piece, Math.min(...there)) : null;
}

/** The hollow or round of a curve's own radius, as wide as it: what makers sell. */
function ownRadius(request: PlanRequest, piece: WorkedPiece): Attempt {
  const curve = piece.curve as NonNullable<WorkedPiece["curve"]>;
  const radiusMm = tidy(curve.radiusMm);
  return curvedPlane(request, curve.convex ? "hollow" : "round", radiusMm, radiusMm);
}

function curvedPlane(
  request: PlanRequest,
  kind: "hollow" | "round",
  radiusMm: number,
  widthMm: number,
): Attempt {
  const says = (mm: number) => sayLength(mm, request.unit ?? "mm");
  const sole = widthMm < radiusMm ? ` with a sole no wider than ${says(widthMm)}` : "";
  const what = `${kind} of ${says(radiusMm)} radius${sole}`;
  const id = `wanted-${kind}-${radiusMm}-${widthMm}`;
  return withPlanes(request, `Borrow or buy a ${what}.`, [{ id, name: what, kind, radiusMm, widthMm }]);
}

/** Widths that are asked for are whole tenths of a millimetre, rounded down: a hair too wide does not go in. */
const WIDTH_STEPS_PER_MM = 10;

/** A plane of the radius with a narrower sole: as wide as the curve from end to end, or half as wide as the one there is. */
function narrower(request: PlanRequest, piece: WorkedPiece, widthMm: number): Attempt {
  const curve = piece.curve as NonNullable<WorkedPiece["curve"]>;
  const chordMm = distanceMm(piece.piece.from, piece.piece.to);
  const wantedMm = chordMm < widthMm ? chordMm : widthMm / 2;
  const narrowMm = Math.floor(wantedMm * WIDTH_STEPS_PER_MM) / WIDTH_STEPS_PER_MM;
  return curvedPlane(request, curve.convex ? "hollow" : "round", tidy(curve.radiusMm), narrowMm);
}

/** From so much of a circle on a convex curve is a half-round, degrees. */
const HALF_ROUND_FROM_DEG = 150;
const LEAST_QUIRK_MM = 0.8;

/** A bead plane for a half-round that stands on two flats. */
function beadPlane(request: PlanRequest, bench: Bench, piece: WorkedPiece): Attempt | null {
  const curve = piece.curve;
  if (!curve?.convex || piece.piece.kind !== "arc") return null;
  if (toDeg(Math.abs(sweepRad(piece.piece))) < HALF_ROUND_FROM_DEG) return null;
  const { pieces } = bench.planned;
  const beside = [piece.index - 1, piece.index + 1].map((i) => pieces[(i + pieces.length) % pieces.length]);
  const roomMm = Math.min(...beside.map((one) => (one?.kind === "line" ? distanceMm(one.from, one.to) : 0)));
  if (roomMm < LEAST_QUIRK_MM) return null;
  const widthMm = tidy(2 * curve.radiusMm);
  const says = (mm: number) => sayLength(mm, request.unit ?? "mm");
  const plane: Plane = {
    id: `wanted-bead-${widthMm}`,
    name: `bead plane ${says(widthMm)} wide`,
    kind: "bead",
    widthMm,
    quirkMm: LEAST_QUIRK_MM,
  };
  return {
    ...withPlanes(request, `Borrow or buy a bead plane ${says(widthMm)} wide.`, [plane]),
    bead: { plane, index: piece.index },
  };
}

/** The bead plane let down upright on its half-round. */
export function beadDraft(bench: Bench, plane: Plane, index: number): PlaneDraft[] {
  const piece = bench.worked.find((worked) => worked.index === index);
  const tool = bench.tools.find((one) => one.plane.id === plane.id);
  if (!piece?.curve || !tool) return [];
  const { centre, radiusMm } = piece.curve;
  return [
    planeDraft(bench, {
      work: "curve",
      purpose: "shape",
      cantDeg: 0,
      shapes: [index],
      tool,
      runs: [[[tidy(centre.x), tidy(centre.y + radiusMm), 0]]],
    }),
  ];
}

// Flats

/** A foot of 1 mm goes in beside a wall that leans out over its floor, and leaves a hair in the corner. */
const SIDE_REBATES: readonly Plane[] = (["left", "right"] as const).map((hand) => ({
  id: `wanted-side-rebate-${hand}`,
  name: `${hand} side rebate plane`,
  kind: "side rebate",
  hand,
  widthMm: 1,
}));

const SIDE_REBATES_SAYS = "Borrow or buy a pair of side rebate planes with a foot no wider than 1 mm.";

/** Whether the section leans out over a flat. */
function isUnderWall(bench: Bench, { piece }: WorkedPiece): boolean {
  const { pieces } = bench.planned;
  return pieces.some((other) => {
    if (other === piece || other.kind !== "line" || other.from.y === other.to.y) return false;
    const [foot, top] = other.from.y < other.to.y ? [other.from, other.to] : [other.to, other.from];
    const meets = [piece.from, piece.to].find((end) => distanceMm(end, foot) < SAME_POINT_MM);
    const away = meets === piece.from ? piece.to : piece.from;
    return meets !== undefined && (top.x - foot.x) * (away.x - foot.x) > SAME_POINT_MM;
  });
}

/** Narrower rebate planes are not made, mm (common practice, no source). */
const LEAST_REBATE_MM = 1.5;

function flatCures(request: PlanRequest, bench: Bench, { stretch, reason }: UncutPlace): Attempt[] {
  const { piece } = stretch;
  if (isWall(piece) || isUnderWall(bench, piece))
    return [withPlanes(request, SIDE_REBATES_SAYS, SIDE_REBATES)];
  const flat = piece;
  if (!isBetweenWalls(bench, flat)) return [];
  const { deepMm } = reason;
  const shallower = deepMm === undefined ? null : raised(request, bench, flat, deepMm);
  if (shallower) return [shallower];
  const narrowest = Math.min(...flatWidthsMm(bench));
  if (flat.lengthMm >= narrowest - SAME_POINT_MM) return [];
  const says = (mm: number) => sayLength(mm, request.unit ?? "mm");
  const widthMm = Math.floor(flat.lengthMm * WIDTH_STEPS_PER_MM + SAME_POINT_MM) / WIDTH_STEPS_PER_MM;
  const tries: Attempt[] = [];
  if (widthMm >= LEAST_REBATE_MM) {
    const what = `rebate plane ${says(widthMm)} wide`;
    tries.push(
      withPlanes(request, `Borrow or buy a ${what}.`, [
        { id: `wanted-rebate-${widthMm}`, name: what, kind: "rebate", widthMm },
      ]),
    );
  }
  if (Number.isFinite(narrowest)) tries.push(...widened(request, bench, flat, narrowest));
  return tries;
}
