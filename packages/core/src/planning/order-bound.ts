/** What the rest of an order costs at least: settings and changes of plane that no order can do without. */
import { type Point, pointAt, type Region } from "../curve/index.ts";
import { spansAlong } from "../cutting/index.ts";
import { SAME_POINT_MM } from "../measure/index.ts";
import { along, type Bench } from "./bench.ts";
import { type PlaneDraft, sweepOfDraft } from "./draft-cut.ts";
import { planeId } from "./order.ts";
import { outwardAt } from "./worked-piece.ts";

/** A place just off the wanted face that has to come clear, and which of the candidates clear it. */
export interface Witness {
  readonly place: Point;
  /** Bits of the removals that take it. */
  readonly clearedBy: bigint;
  readonly planes: ReadonlySet<string>;
  readonly cants: ReadonlySet<number>;
  /** Cost of the cheapest cut that takes it, the lean counted. */
  readonly leastCost: number;
}

/** Places along each piece, as shares, and how far off it, mm: inside any waste that counts, outside what may stay. */
const WITNESS_SHARES = [0.1, 0.3, 0.5, 0.7, 0.9];
const WITNESS_OFF_MM = 0.05;

/**
 * Places that stand in `start` and are gone in `end`, with what clears them, those with the fewest choices first.
 * `bits` are the candidates' removals, `leastCosts` what each costs wherever it stands in an order.
 */
export function witnessesOf(
  bench: Bench,
  start: Region,
  end: Region,
  candidates: readonly PlaneDraft[],
  bits: readonly bigint[],
  leastCosts: readonly number[],
): readonly Witness[] {
  const found: Witness[] = [];
  for (const piece of bench.worked) {
    for (const share of WITNESS_SHARES) {
      const out = outwardAt(piece.piece, share);
      const place = along(pointAt(piece.piece, share), out, WITNESS_OFF_MM);
      if (!holds(start, place, out) || holds(end, place, out)) continue;
      const by = candidates.flatMap((draft, k) => (holds(sweepOfDraft(draft), place, out) ? [k] : []));
      found.push({
        place,
        clearedBy: by.reduce((all, k) => all | (bits[k] as bigint), 0n),
        planes: new Set(by.map((k) => planeId(candidates[k] as PlaneDraft))),
        cants: new Set(by.map((k) => (candidates[k] as PlaneDraft).cantDeg)),
        leastCost: Math.min(...by.map((k) => leastCosts[k] as number)),
      });
    }
  }
  const choices = ({ clearedBy }: Witness) => clearedBy.toString(2).replaceAll("0", "").length;
  return found
    .map((one) => ({ one, n: choices(one) }))
    .sort((a, b) => a.n - b.n)
    .map(({ one }) => one);
}

/** Whether a place lies in a region, seen along any direction. */
function holds(region: Region, place: Point, direction: Point): boolean {
  const first = spansAlong(region, place, direction)[0];
  return first !== undefined && first[0] <= SAME_POINT_MM;
}

export interface Open {
  /** Cost of cuts that clear places no one cut clears two of. */
  readonly cutsCost: number;
  /** Sets of planes (of lays of the stick) no two of which share one, each needed. */
  readonly planes: readonly ReadonlySet<string>[];
  readonly cants: readonly ReadonlySet<number>[];
}

/** What stands open once these cuts are made; null where every place is clear. */
export function openAfter(witnesses: readonly Witness[], made: bigint): Open | null {
  let taken = 0n;
  let cutsCost = 0;
  let isOpen = false;
  const planes: ReadonlySet<string>[] = [];
  const cants: ReadonlySet<number>[] = [];
  for (const witness of witnesses) {
    if (witness.clearedBy & made) continue;
    isOpen = true;
    if (!(witness.clearedBy & taken)) {
      taken |= witness.clearedBy;
      cutsCost += witness.leastCost;
    }
    if (!planes.some((one) => shares(one, witness.planes))) planes.push(witness.planes);
    if (!cants.some((one) => shares(one, witness.cants))) cants.push(witness.cants);
  }
  return isOpen ? { cutsCost, planes, cants } : null;
}

function shares<T>(a: ReadonlySet<T>, b: ReadonlySet<T>): boolean {
  for (const one of a) if (b.has(one)) return true;
  return false;
}

/** The least that is still to be paid, the last cut's plane and lay of the stick in hand. */
export function leastRest(
  bench: Bench,
  open: Open | null,
  last: { readonly plane: string; readonly cantDeg: number } | null,
): number {
  if (!open) return 0;
  const changes = open.planes.length - (last && !open.planes.some((one) => one.has(last.plane)) ? 0 : 1);
  const turns = open.cants.length - (last && !open.cants.some((one) => one.has(last.cantDeg)) ? 0 : 1);
  return open.cutsCost + changes * bench.weights.planeChange + turns * bench.weights.turnStick;
}
