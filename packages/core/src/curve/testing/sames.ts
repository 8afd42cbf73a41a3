/** The sweep of sames: one ring in the shapes that must give the same answers. */
import { mirrorRing, moveRing, reverseRing, transformRing } from "../ring.ts";
import type { Ring } from "../types.ts";

export interface Same {
  readonly name: string;
  readonly ring: Ring;
  /** Lengths in it are this many times the first ring's. */
  readonly scale: number;
  /** Reversed rings run clockwise. */
  readonly isReversed: boolean;
}

/** Ten metres: farther than any stick, so that lost digits show. */
const FAR_MM = 10_000;

export function samesOf(ring: Ring): Same[] {
  const plain = { scale: 1, isReversed: false };
  const starts = ring.pieces.map((_, index): Same => {
    return { name: `begun at piece ${index}`, ring: begunAt(ring, index), ...plain };
  });
  return [
    ...starts,
    { name: "reversed", ring: reverseRing(ring), scale: 1, isReversed: true },
    { name: "mirrored", ring: mirrorRing(ring, 7.5), ...plain },
    { name: "moved 10 m", ring: moveRing(ring, FAR_MM, -FAR_MM), ...plain },
    ...[0.5, 1, 1.5].map((turns): Same => {
      return {
        name: `turned ${turns * 180}°`,
        ring: transformRing(ring, { turnRad: turns * Math.PI }),
        ...plain,
      };
    }),
    { name: "turned 17°", ring: transformRing(ring, { turnRad: (17 * Math.PI) / 180 }), ...plain },
    { name: "a thousand times", ring: transformRing(ring, { scale: 1000 }), scale: 1000, isReversed: false },
    { name: "a thousandth", ring: transformRing(ring, { scale: 0.001 }), scale: 0.001, isReversed: false },
  ];
}

function begunAt(ring: Ring, index: number): Ring {
  return { pieces: [...ring.pieces.slice(index), ...ring.pieces.slice(0, index)] };
}
