/**
 * What a pulled place settles on: where it stood, a radius on the shelf, a neighbour's level, a round size. What has
 * settled stays: settling it again changes nothing.
 */
import type { Point } from "mouldwright/curve";

export interface Settled<Value> {
  readonly value: Value;
  /** What it has settled on, in words; empty for a size of no account. */
  readonly says: string;
}

/** A place that draws: near enough, it is taken. */
export interface Draw<Value> {
  readonly value: Value;
  readonly says: string;
}

export interface SettleRule {
  /** How near a place must be to draw, mm. */
  readonly withinMm: number;
  /** Finest division of the rule, and the rounder sizes that draw, mm. */
  readonly fineMm: number;
  readonly roundMm: number;
}

/** More rounds than this no rule needs: each one ends on a place that draws more strongly than the one before. */
const MOST_ROUNDS = 4;

/**
 * A number along one way. Strong places (the shelf, a smooth join) draw before the rule's sizes. `gap` says how far two
 * values stand apart on the drawing, mm.
 */
export function settledNumber(
  value: number,
  strong: readonly Draw<number>[],
  rule: SettleRule,
  gap: (one: number, other: number) => number = (one, other) => Math.abs(one - other),
): Settled<number> {
  return untilStill(value, same, (now) => {
    const near = nearest(now, strong, gap, rule.withinMm);
    if (near !== null) return near;
    const round = onStep(now, rule.roundMm);
    if (gap(round, now) <= rule.withinMm) return { value: round, says: "" };
    return { value: onStep(now, rule.fineMm), says: "" };
  });
}

/** A point: strong points draw first, then levels, then round sizes counted from `from`, each way by itself. */
export function settledPoint(
  value: Point,
  strong: (near: Point) => readonly Draw<Point>[],
  levels: readonly Draw<number>[],
  from: Point,
  rule: SettleRule,
): Settled<Point> {
  return untilStill(value, samePlace, (now) => {
    const near = nearest(now, strong(now), apart, rule.withinMm);
    if (near !== null) return near;
    const across = settledNumber(now.x - from.x, [], rule);
    const rise = settledNumber(
      now.y - from.y,
      levels.map((level) => ({ value: level.value - from.y, says: level.says })),
      rule,
    );
    return { value: { x: from.x + across.value, y: from.y + rise.value }, says: rise.says };
  });
}

export function onStep(value: number, step: number): number {
  return Math.round(value / step) * step + 0;
}

function untilStill<Value>(
  value: Value,
  isSame: (one: Value, other: Value) => boolean,
  once: (now: Value) => Settled<Value>,
): Settled<Value> {
  let settled = once(value);
  for (let round = 1; round < MOST_ROUNDS; round++) {
    const next = once(settled.value);
    if (isSame(next.value, settled.value)) return next;
    settled = next;
  }
  return settled;
}

function nearest<Value>(
  value: Value,
  places: readonly Draw<Value>[],
  gap: (one: Value, other: Value) => number,
  withinMm: number,
): Settled<Value> | null {
  let best: Draw<Value> | null = null;
  let bestMm = withinMm;
  for (const place of places) {
    const awayMm = gap(place.value, value);
    if (awayMm < bestMm || (best === null && awayMm <= bestMm)) {
      best = place;
      bestMm = awayMm;
    }
  }
  return best;
}

/** Numbers that differ by rounding alone are one. */
const SAME_MM = 0.00001;

function same(one: number, other: number): boolean {
  return Math.abs(one - other) <= SAME_MM;
}

function samePlace(one: Point, other: Point): boolean {
  return apart(one, other) <= SAME_MM;
}

function apart(one: Point, other: Point): number {
  return Math.hypot(one.x - other.x, one.y - other.y);
}
