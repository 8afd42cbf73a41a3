/** Small changes of a section that might cure a place: a radius, a wider flat, a shallower groove, a lower neighbour. */
import { type Arc, arc, distanceMm, type Piece, type Ring, sagittaMm } from "../curve/index.ts";
import type { PlanCureChange } from "../cutting/index.ts";
import { toRad } from "../measure/index.ts";
import type { Section } from "../section/index.ts";
import { withLineMoved } from "./arc-circles.ts";
import type { Bench } from "./bench.ts";
import type { Attempt } from "./cure-attempt.ts";
import { tidy } from "./draft-cut.ts";
import type { PlanRequest } from "./request.ts";
import { sayLength } from "./words.ts";
import type { WorkedPiece } from "./worked-piece.ts";

/** Changes are told in whole tenths of a millimetre. */
const STEPS_PER_MM = 10;

/** The section with this arc drawn, between the same ends, to the nearest radius that is on the shelf. */
export function withShelfRadius(request: PlanRequest, bench: Bench, piece: WorkedPiece): Attempt | null {
  const curve = piece.curve;
  if (!curve || piece.piece.kind !== "arc") return null;
  const kind = curve.convex ? "hollow" : "round";
  const chordMm = distanceMm(piece.piece.from, piece.piece.to);
  const radii = request.shelf.planes.flatMap((plane) =>
    plane.kind === kind && 2 * plane.radiusMm >= chordMm ? [plane.radiusMm] : [],
  );
  if (radii.length === 0) return null;
  const radiusMm = radii.reduce((a, b) =>
    Math.abs(b - curve.radiusMm) < Math.abs(a - curve.radiusMm) ? b : a,
  );
  const drawn: Arc = piece.piece;
  const bulge = (Math.sign(drawn.bulge) * 2 * sagittaMm(chordMm, radiusMm)) / chordMm;
  const radius = sayLength(radiusMm, request.unit ?? "mm");
  return withSection(
    request,
    bench.planned.pieces.map((one, i) => (i === piece.index ? arc(drawn.from, drawn.to, bulge) : one)),
    [piece.index],
    `Draw the curve with ${radius} radius between the same ends.`,
    { what: "radius", from: xy(drawn.from), to: xy(drawn.to), toMm: radiusMm },
  );
}

/** An arc of no more than this goes well under a hollow between its like, degrees (common practice, no source). */
const MOST_REED_DEG = 120;

/**
 * Half-rounds side by side drawn flatter between the same feet, to the smallest radius on the shelf whose hollow goes down
 * to those feet: all that are alike, as reeds of a row are.
 */
export function withFlatterRow(request: PlanRequest, bench: Bench, piece: WorkedPiece): Attempt | null {
  const { curve } = piece;
  if (!curve?.convex || piece.piece.kind !== "arc") return null;
  const chordMm = distanceMm(piece.piece.from, piece.piece.to);
  const leastMm = chordMm / (2 * Math.sin(toRad(MOST_REED_DEG / 2)));
  if (curve.radiusMm >= leastMm) return null;
  const radii = request.shelf.planes.flatMap((plane) =>
    plane.kind === "hollow" && plane.radiusMm >= leastMm ? [plane.radiusMm] : [],
  );
  if (radii.length === 0) return null;
  const radiusMm = Math.min(...radii);
  const bulge = (2 * sagittaMm(chordMm, radiusMm)) / chordMm;
  const alike = bench.worked.filter(
    (other) =>
      other.curve?.convex &&
      Math.abs(other.curve.radiusMm - curve.radiusMm) < ALIKE_MM &&
      Math.abs(distanceMm(other.piece.from, other.piece.to) - chordMm) < ALIKE_MM,
  );
  const changed = alike.map(({ index }) => index);
  const radius = sayLength(radiusMm, request.unit ?? "mm");
  const what = changed.length > 1 ? "the reeds flatter, each" : "the curve flatter,";
  const { from, to } = piece.piece;
  const says = `Draw ${what} with ${radius} radius between the same feet.`;
  const pieces = bench.planned.pieces.map((one, i) =>
    changed.includes(i) ? arc(one.from, one.to, bulge) : one,
  );
  const change = { what: "radius", from: xy(from), to: xy(to), toMm: radiusMm } as const;
  return { ...withSection(request, pieces, changed, says, change), key: says };
}

/** Reeds are alike to within this, mm. */
const ALIKE_MM = 0.05;

/** The floor of a groove raised until a plane may be sunk down to it between its walls. */
export function raised(
  request: PlanRequest,
  bench: Bench,
  floor: WorkedPiece,
  deepMm: number,
): Attempt | null {
  const overMm = deepMm - bench.limits.slotMm;
  const byMm = Math.ceil(overMm * STEPS_PER_MM + 1) / STEPS_PER_MM;
  if (byMm <= 0) return null;
  const pieces = withLineMoved(bench.planned.pieces, floor.index, byMm);
  if (!pieces) return null;
  const count = pieces.length;
  const says = `Raise the floor by ${sayLength(byMm, request.unit ?? "mm")}.`;
  const { from, to } = floor.piece;
  const changed = [floor.index - 1, floor.index, floor.index + 1].map((i) => (i + count) % count);
  return withSection(request, pieces, changed, says, { what: "flat", from: xy(from), to: xy(to), byMm });
}

/** The flat made as wide as the narrowest plane, by moving the wall that is further from the gauge edge, or the other one. */
export function widened(request: PlanRequest, bench: Bench, flat: WorkedPiece, toMm: number): Attempt[] {
  const count = bench.planned.pieces.length;
  const walls = [(flat.index + count - 1) % count, (flat.index + 1) % count].sort(
    (a, b) => fromGauge(bench, b) - fromGauge(bench, a),
  );
  const says = `Make the flat ${sayLength(toMm, request.unit ?? "mm")} wide.`;
  for (const wall of walls) {
    const pieces = withLineMoved(bench.planned.pieces, wall, -(toMm - flat.lengthMm));
    if (!pieces) continue;
    const { from, to } = flat.piece;
    const changed = [wall - 1, wall, wall + 1].map((i) => (i + count) % count);
    return [withSection(request, pieces, changed, says, { what: "width", from: xy(from), to: xy(to), toMm })];
  }
  return [];
}

function fromGauge(bench: Bench, index: number): number {
  const { x } = (bench.planned.pieces[index] as Piece).from;
  return bench.gaugeEdge === "left" ? x - bench.box.minX : bench.box.maxX - x;
}

/** More than this is no small change of a section, mm. */
const MOST_LOWERED_MM = 3;

/** The flat that a sole's corner meets, lowered by as much as the corner would dig in. */
export function withFlatLowered(
  request: PlanRequest,
  bench: Bench,
  index: number,
  overcutMm: number,
): Attempt | null {
  const byMm = Math.ceil(overcutMm * STEPS_PER_MM) / STEPS_PER_MM;
  if (byMm > MOST_LOWERED_MM) return null;
  const pieces = withLineMoved(bench.planned.pieces, index, -byMm);
  if (!pieces) return null;
  const { from, to } = bench.planned.pieces[index] as Piece;
  const isUpright = Math.abs(to.x - from.x) < Math.abs(to.y - from.y);
  const count = bench.planned.pieces.length;
  return withSection(
    request,
    pieces,
    [index - 1, index, index + 1].map((i) => (i + count) % count),
    `${isUpright ? "Set back the wall" : "Lower the flat"} beside it by ${sayLength(byMm, request.unit ?? "mm")}.`,
    { what: isUpright ? "wall" : "flat", from: xy(from), to: xy(to), byMm },
  );
}

/** The request with another outline: what is tried, and what is told of it. */
export function withSection(
  request: PlanRequest,
  pieces: readonly Piece[],
  changed: readonly number[],
  says: string,
  change: PlanCureChange,
): Attempt {
  const outline: Ring = { pieces };
  const section: Section = { ...request.section, outline, freeSpans: [], named: [] };
  const key = `${says} ${change.from.join(" ")} ${change.to.join(" ")}`;
  return { key, says, planes: [], change, request: { ...request, section }, changed };
}

export function xy(p: { readonly x: number; readonly y: number }): readonly [number, number] {
  return [tidy(p.x), tidy(p.y)];
}
