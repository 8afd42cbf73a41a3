/**
 * The sign of a join, drawn in the air beside it, px on the board: a ring where parts run on smoothly, a tick that stands
 * off an arris, a wedge down into a quirk, the corner of a square in a step.
 */
import { type Piece, type Ring, tangentRad } from "mouldwright/curve";
import { sameMm } from "mouldwright/measure";
import type { Join } from "mouldwright/section";

export interface JoinSign {
  readonly kind: Join["kind"];
  /** A path with the join at 0, 0, y down; null for the ring. */
  readonly path: string | null;
}

const OFF_PX = 8;
const TICK_PX = 8;
const SQUARE_PX = 11;
const WEDGE_PX = 9;

/** What stands at a join; null where nothing meets to speak of: on a flat that only goes on, at the stick's own corners. */
export function signOf(join: Join, outline: Ring, stick: Ring): JoinSign | null {
  const { kind, turnDeg, at, piece } = join;
  if (kind === "smooth") {
    return Math.abs(turnDeg) < LEVEL_DEG && at.y === 0 ? null : { kind, path: null };
  }
  const isStickCorner = stick.pieces.some(({ from }) => sameMm(from.x, at.x) && sameMm(from.y, at.y));
  if (isStickCorner && kind === "arris") return null;
  const after = outline.pieces[piece];
  const before = outline.pieces[(piece + outline.pieces.length - 1) % outline.pieces.length];
  if (after === undefined || before === undefined) return null;
  return { kind, path: pathOf(kind, before, after) };
}

/** Less than this is no turn at all, degrees. */
const LEVEL_DEG = 0.001;

function pathOf(kind: "arris" | "quirk" | "step", before: Piece, after: Piece): string {
  // Along both faces away from the join, on the screen: y goes down there.
  const on = direction(tangentRad(after, 0));
  const back = direction(tangentRad(before, 1) + Math.PI);
  switch (kind) {
    case "arris": {
      const out = between(on, back, -1);
      return `M${point(out, OFF_PX)}L${point(out, OFF_PX + TICK_PX)}`;
    }
    case "step":
      return `M${point(on, SQUARE_PX)}L${point(sum(on, back), SQUARE_PX)}L${point(back, SQUARE_PX)}`;
    case "quirk": {
      const out = between(on, back, 1);
      const across: Direction = [-out[1] / 2, out[0] / 2];
      const less: Direction = [-across[0], -across[1]];
      return `M${point(sum(out, across), WEDGE_PX)}L0 0L${point(sum(out, less), WEDGE_PX)}`;
    }
  }
}

type Direction = readonly [number, number];

function direction(angleRad: number): Direction {
  return [Math.cos(angleRad), -Math.sin(angleRad)];
}

function sum(one: Direction, other: Direction): Direction {
  return [one[0] + other[0], one[1] + other[1]];
}

/** Halfway between both faces: into the opening (1), or away from it (−1). Square to a face where both lie in one line. */
function between(on: Direction, back: Direction, side: 1 | -1): Direction {
  const [x, y] = sum(on, back);
  const length = Math.hypot(x, y);
  return length < NO_LENGTH ? [0, -1] : [(side * x) / length, (side * y) / length];
}

const NO_LENGTH = 0.01;

function point([x, y]: Direction, px: number): string {
  return `${round(x * px)} ${round(y * px)}`;
}

function round(px: number): number {
  const rounded = Math.round(px * 10) / 10;
  return rounded === 0 ? 0 : rounded;
}

/** The kinds that a section has, in the order they are told. */
export function kindsOfJoins(signs: readonly (JoinSign | null)[]): readonly JoinSign["kind"][] {
  return (["smooth", "arris", "quirk", "step"] as const).filter((kind) =>
    signs.some((sign) => sign?.kind === kind),
  );
}
