/**
 * Wood that is the same whichever way it came about. Orders meet again and again on the same wood; what was found out on
 * it once holds then.
 */
import type { FlatRing, Region } from "../curve/index.ts";
import type { Bench } from "./bench.ts";
import { type Slot, slotsIn } from "./slots.ts";

/** Woods kept before the older ones are let go: those are seldom met again, and memory is a tablet's. */
const MOST_KEPT = 2_000;

type Shelf = Map<number, Region[]>;

interface Book {
  recent: Shelf;
  older: Shelf;
  count: number;
}

const BOOKS = new WeakMap<Bench, Book>();

/** The wood met before on this bench that has the same outline, vertex for vertex, and came by the same grooves; else this. */
export function sameWood(bench: Bench, wood: Region): Region {
  const book: Book = BOOKS.get(bench) ?? { recent: new Map(), older: new Map(), count: 0 };
  BOOKS.set(bench, book);
  const hash = hashOf(wood);
  const recent = book.recent.get(hash)?.find((other) => isSame(other, wood));
  if (recent) return recent;
  const kept = book.older.get(hash)?.find((other) => isSame(other, wood)) ?? wood;
  if (book.count >= MOST_KEPT) {
    book.older = book.recent;
    book.recent = new Map();
    book.count = 0;
  }
  const beside = book.recent.get(hash);
  if (beside) beside.push(kept);
  else book.recent.set(hash, [kept]);
  book.count++;
  return kept;
}

function isSame(a: Region, b: Region): boolean {
  if (a === b) return true;
  if (a.length !== b.length || !a.every((ring, i) => isSameRing(ring, b[i] as FlatRing))) return false;
  const [ownSlots, otherSlots] = [slotsIn(a), slotsIn(b)];
  return isPartOf(ownSlots, otherSlots) && isPartOf(otherSlots, ownSlots);
}

function isSameRing(a: FlatRing, b: FlatRing): boolean {
  const count = a.xs.length;
  if (count !== b.xs.length) return false;
  for (let i = 0; i < count; i++) {
    if (a.xs[i] !== b.xs[i] || a.ys[i] !== b.ys[i] || a.sources[i] !== b.sources[i]) return false;
  }
  return true;
}

function isPartOf(some: readonly Slot[], all: readonly Slot[]): boolean {
  return some.every((slot) => all.some((other) => isSameSlot(slot, other)));
}

function isSameSlot(a: Slot, b: Slot): boolean {
  return (
    a === b ||
    (a.tiltDeg === b.tiltDeg &&
      a.leftMm === b.leftMm &&
      a.rightMm === b.rightMm &&
      a.floorMm === b.floorMm &&
      a.depthMm === b.depthMm)
  );
}

const NUMBER = new Float64Array(1);
const HALVES = new Int32Array(NUMBER.buffer);
const FIRST_HASH = 0x811c9dc5;
const HASH_FACTOR = 0x01000193;

/** FNV-1a (Fowler, Noll, Vo) over the halves of every coordinate. */
function hashOf(wood: Region): number {
  let hash = FIRST_HASH;
  for (const { xs, ys } of wood) {
    for (const values of [xs, ys]) {
      for (let i = 0; i < values.length; i++) {
        NUMBER[0] = values[i] as number;
        hash = Math.imul(hash ^ (HALVES[0] as number), HASH_FACTOR);
        hash = Math.imul(hash ^ (HALVES[1] as number), HASH_FACTOR);
      }
    }
  }
  return hash;
}
