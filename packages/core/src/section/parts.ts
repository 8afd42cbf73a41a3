/** Lays a chain of parts along the face: each starts where the one before ended. */
import {
  addPoints,
  arc,
  line,
  type Piece,
  type Point,
  point,
  tangentRad,
  turnPoint,
} from "../curve/index.ts";
import {
  bug,
  cataloguedTrouble,
  fine,
  type Outcome,
  refused,
  type Trouble,
  type TroubleCode,
  toRad,
} from "../measure/index.ts";
import { bandLayout } from "./band-layout.ts";
import { band } from "./forms/band.ts";
import { cyma } from "./forms/cymas.ts";
import { freeArc, freeCurve, runningArc, sweptArc } from "./forms/free.ts";
import { quarter, scotia } from "./forms/quarters.ts";
import { flutes, halfRound, lowBead, reeds } from "./forms/rounds.ts";
import { bevel, chamfer, fillet, quirk, step, veeQuirk } from "./forms/straight.ts";
import type { PartSpec } from "./part-spec.ts";
import { wrongSize } from "./sizes.ts";

/** One part where it stands: its pieces walked from gauge edge to far edge, and how far it was turned. */
export interface LaidPart {
  readonly spec: PartSpec;
  readonly pieces: readonly Piece[];
  readonly turnedRad: number;
}

/**
 * Lays the parts from `start`. A `"rest"` fillet gets the width that makes the chain end at `endXMm`.
 * `where` is the path of the list of parts in the file, for troubles.
 */
export function layParts(
  parts: readonly PartSpec[],
  start: Point,
  endXMm: number,
  where: string,
): Outcome<readonly LaidPart[], TroubleCode> {
  for (const [index, part] of parts.entries()) {
    const wrong = wrongSize(part, `${where}[${index}]`);
    if (wrong !== null) return refused(wrong as Trouble<TroubleCode>);
  }
  const rests = parts.flatMap((part, index) =>
    part.kind === "fillet" && part.widthMm === "rest" ? [index] : [],
  );
  if (rests.length === 0) return layWithRest(parts, start, 0, where);
  if (rests.length > 1) {
    return refused(cataloguedTrouble("parts-two-rests", `${where}[${rests[1]}]`, { count: rests.length }));
  }
  return fitRest(parts, start, endXMm, where, rests[0] ?? 0);
}

/** The chain's end moves evenly with the rest's width, so two trial widths give the right one. */
function fitRest(
  parts: readonly PartSpec[],
  start: Point,
  endXMm: number,
  where: string,
  restIndex: number,
): Outcome<readonly LaidPart[], TroubleCode> {
  const trialMm = 1;
  const once = layWithRest(parts, start, trialMm, where);
  const twice = layWithRest(parts, start, 2 * trialMm, where);
  if (!once.ok) return once;
  if (!twice.ok) return twice;
  const onceX = endOf(once.value, start).x;
  const acrossPerMm = (endOf(twice.value, start).x - onceX) / trialMm;
  const widthMm = trialMm + (endXMm - onceX) / acrossPerMm;
  const part: PartSpec = { kind: "fillet", widthMm };
  if (!(acrossPerMm > LEAST_ACROSS_OF_REST) || wrongSize(part, "") !== null) {
    const leftMm = endXMm - (onceX - acrossPerMm * trialMm);
    return refused(cataloguedTrouble("parts-no-rest", `${where}[${restIndex}]`, { leftMm }));
  }
  return layWithRest(parts, start, widthMm, where);
}

/** A rest that leans more steeply (about 84°) is a wall, and would shoot far up or down to fill a small gap. */
const LEAST_ACROSS_OF_REST = 0.1;

/** Where a laid chain ends. */
export function endOf(laid: readonly LaidPart[], start: Point): Point {
  return laid.at(-1)?.pieces.at(-1)?.to ?? start;
}

function layWithRest(
  parts: readonly PartSpec[],
  start: Point,
  restMm: number,
  where: string,
): Outcome<readonly LaidPart[], TroubleCode> {
  const laid: LaidPart[] = [];
  let at = start;
  let runsRad: number | null = null;
  for (const [index, spec] of parts.entries()) {
    const from = { at, runsRad };
    const part = layPart(spec, from, restMm, `${where}[${index}]`);
    if (!part.ok) return part;
    laid.push(part.value);
    const last = part.value.pieces.at(-1);
    if (last === undefined) return bug("a part without pieces", { kind: spec.kind });
    at = last.to;
    runsRad = tangentRad(last, 1);
  }
  return fine(laid);
}

interface ChainEnd {
  readonly at: Point;
  /** Direction the part before ended in; null before the first part. */
  readonly runsRad: number | null;
}

function layPart(
  spec: PartSpec,
  from: ChainEnd,
  restMm: number,
  where: string,
): Outcome<LaidPart, TroubleCode> {
  const runsOn = spec.kind === "running arc" || spec.smooth === true;
  if (runsOn && from.runsRad === null) {
    return refused(cataloguedTrouble("part-runs-on-from-nothing", where, { part: spec.kind }));
  }
  const own = ownPieces(spec, from.runsRad ?? 0, restMm);
  if (own === null) return refused(cataloguedTrouble("part-behind", where, { part: spec.kind }));
  const first = own[0];
  if (first === undefined) return refused(cataloguedTrouble("part-empty", where, { part: spec.kind }));
  const turnedRad = turnOf(spec, first, from.runsRad ?? 0);
  return fine({ spec, pieces: place(own, from.at, turnedRad), turnedRad });
}

function turnOf(spec: PartSpec, first: Piece, runsRad: number): number {
  if (spec.kind === "running arc") return 0;
  if (spec.smooth === true) return runsRad - tangentRad(first, 0);
  return toRad(spec.leanDeg ?? 0);
}

/** Turned about the part's start and moved; each piece starts at the very point where the one before ends. */
function place(own: readonly Piece[], at: Point, turnedRad: number): readonly Piece[] {
  let from = at;
  return own.map((piece) => {
    const to = addPoints(at, turnedRad === 0 ? piece.to : turnPoint(piece.to, turnedRad));
    const placed = piece.kind === "line" ? line(from, to) : arc(from, to, piece.bulge);
    from = to;
    return placed;
  });
}

/** The part's pieces from (0, 0) in its own frame; null if a running arc would have to turn by more than a half circle. */
function ownPieces(spec: PartSpec, runsRad: number, restMm: number): readonly Piece[] | null {
  switch (spec.kind) {
    case "fillet":
      return fillet(spec.widthMm === "rest" ? restMm : spec.widthMm);
    case "step":
      return step(spec);
    case "bevel":
      return bevel(spec);
    case "chamfer":
      return chamfer(spec);
    case "quirk":
      return quirk(spec);
    case "vee quirk":
      return veeQuirk(spec);
    case "bead":
    case "astragal":
    case "torus":
      return halfRound(spec);
    case "low bead":
      return lowBead(spec);
    case "reeds":
      return reeds(spec);
    case "flutes":
      return flutes(spec);
    case "band": {
      const layout = bandLayout(spec);
      return layout.ok ? band(layout.value, spec.widthMm, spec.of === "reeds" ? "round" : "hollow") : null;
    }
    case "ovolo":
    case "cavetto":
      return quarter(spec);
    case "scotia":
      return scotia(spec);
    case "cyma recta":
    case "cyma reversa":
      return cyma(spec);
    case "arc":
      return freeArc(spec);
    case "swept arc":
      return sweptArc(spec);
    case "running arc":
      return runningArc(spec, runsRad);
    case "free curve":
      return freeCurve(spec);
  }
}

/** A point on the gauge edge, where a chain starts. */
export function gaugeEdgePoint(heightMm: number): Point {
  return point(0, heightMm);
}
