import fc from "fast-check";
import { expect, test } from "vitest";
import { difference, type Region, regionOfPolygon } from "../curve/index.ts";
import { SEAT_LEVEL_MM } from "../measure/index.ts";
import { soleOf } from "../shelf/index.ts";
import { COMMON_LIMITS } from "./limits.ts";
import { profileOf, restOn, turned, turnOf } from "./profile.ts";
import { seatOf } from "./seat.ts";
import { soleShape } from "./sole-shape.ts";

fc.configureGlobal({ seed: 20261128 });

function polygon(points: readonly (readonly [number, number])[]): Region {
  return regionOfPolygon(points.map(([x, y]) => ({ x, y })));
}

const STICK = polygon([
  [0, 0],
  [60, 0],
  [60, 20],
  [0, 20],
]);

const mm = (least: number, most: number) => fc.double({ min: least, max: most, noNaN: true });

/** A groove in the face: square, or a V with its point over that share of its width. */
function grooveAt(x: number, widthMm: number, depthMm: number, point: number | null): Region {
  const floor = 20 - depthMm;
  const right = x + widthMm;
  return polygon(
    point === null
      ? [
          [x, floor],
          [right, floor],
          [right, 21],
          [x, 21],
        ]
      : [
          [x + point * widthMm, floor],
          [right, 20],
          [right, 21],
          [x, 21],
          [x, 20],
        ],
  );
}

/** From a hair wide to wider than most soles. */
const grooves = fc
  .tuple(mm(0, 55), fc.oneof(mm(0.02, 0.5), mm(0.5, 15)), mm(0.1, 12), fc.option(mm(0, 1)))
  .map(([x, widthMm, depthMm, point]) => grooveAt(x, widthMm, depthMm, point));

const soles = fc
  .tuple(fc.constantFrom("round", "hollow"), mm(3, 38), mm(0.3, 1))
  .map(([kind, radiusMm, ratio]) =>
    soleShape(soleOf({ id: "p", name: "p", kind, radiusMm, widthMm: radiusMm * ratio }).chain),
  );

/** Steps of the dense search from the middle to either side. */
const STEPS = 4000;

/** A resting place this little over the lowest is the lowest to any hand, and a drop of less is none, mm. */
const AS_LOW_MM = 0.002;

/** Room across in which a plane may slip down that is found whatever else the wood does, mm: half a body's clearance. */
const ROOM_MM = 0.05;

test("a plane comes to rest as low as a dense search of all places near its aim finds", () => {
  // Held however little: what is asked is where it comes to rest.
  const limits = { ...COMMON_LIMITS, seatHeldRatio: 0 };
  const near = fc.record({
    widthRatio: mm(0.2, 0.95),
    depthMm: mm(1, 6),
    point: fc.option(mm(0, 1)),
    besideMm: mm(-0.5, 0.5),
    share: fc.constantFrom(-0.05, 0, 0.05),
  });
  fc.assert(
    fc.property(
      fc.array(grooves, { maxLength: 4 }),
      soles,
      near,
      fc.constantFrom(-45, -20, 0, 0, 20, 45),
      (others, sole, { widthRatio, depthMm, point, besideMm, share }, tilt) => {
        const widthMm = widthRatio * sole.widthMm;
        const opened = [grooveAt(30 - widthMm / 2, widthMm, depthMm, point), ...others];
        const wood = opened.reduce((left, one) => difference(left, one), STICK);
        const x = 30 + besideMm + share * sole.widthMm;
        const seat = seatOf(wood, sole, [x, 20, tilt], limits);
        const aim = turned(turnOf(tilt), { x, y: 20 }).x;
        const profile = profileOf(wood, tilt);
        const heightAt = (shift: number): number =>
          restOn(profile, sole, aim + shift, { narrowMm: limits.bodyClearanceMm })?.heightMm ??
          Number.NEGATIVE_INFINITY;
        const offMm = Math.max(limits.seatOffMm, sole.widthMm * limits.seatOffRatio);
        const heights = Array.from({ length: 2 * STEPS + 1 }, (_, i) =>
          heightAt((offMm * (i - STEPS)) / STEPS),
        );
        if (!heights.every(Number.isFinite) || !seat) {
          expect(seat).toBeNull();
          return;
        }
        // Slipping down where the plane has hardly room to move is nothing a hand can count on, nor meet.
        const apart = Math.ceil((ROOM_MM / 2 / offMm) * STEPS);
        const roomy = heights
          .slice(apart, -apart)
          .map((height, i) => Math.max(height, heights[i] as number, heights[i + 2 * apart] as number));
        expect(seat.heightMm).toBeLessThan(Math.min(...roomy) + AS_LOW_MM);
        const beside = heights.filter(
          (_, i) => Math.abs((offMm * (i - STEPS)) / STEPS - seat.shift) < ROOM_MM / 4,
        );
        const restMm = Math.min(seat.heightMm, ...beside);
        expect(seat.heightMm).toBeLessThan(restMm + AS_LOW_MM);
      },
    ),
    { numRuns: Number(process.env.MOULDWRIGHT_RUNS ?? 300) },
  );
});

/** A groove about the middle of the face that leans as the plane does: its mouth runs out to one side. */
function leaningGroove(widthMm: number, depthMm: number, tiltDeg: number): Region {
  const turn = turnOf(-tiltDeg);
  const half = widthMm / 2;
  const corners = [
    [-half, -depthMm],
    [half, -depthMm],
    [half, 20],
    [-half, 20],
  ] as const;
  return regionOfPolygon(
    corners.map(([x, y]) => {
      const at = turned(turn, { x, y });
      return { x: 30 + at.x, y: 20 + at.y };
    }),
  );
}

/** The greatest lift on the way to a side, looked at densely, before the plane drops below where it rests, mm. */
function denseLiftMm(heightAt: (shift: number) => number, restMm: number, from: number, to: number): number {
  let liftMm = 0;
  for (let i = 1; i <= STEPS; i++) {
    const height = heightAt(from + ((to - from) * i) / STEPS);
    if (height < restMm - SEAT_LEVEL_MM) break;
    liftMm = Math.max(liftMm, height - restMm);
  }
  return liftMm;
}

test("no more lift is told than a dense search finds to either side, in grooves about as wide as the body too", () => {
  const limits = COMMON_LIMITS;
  fc.assert(
    fc.property(
      soles,
      fc.oneof(mm(0.5, 1.05), fc.constant(null)),
      mm(0.5, 3),
      fc.oneof(mm(-0.3, 0.3), fc.constant(0)),
      fc.oneof(mm(-45, 45), fc.constantFrom(0, 15, 23.4, -30, 40)),
      (sole, ratio, depthMm, besideMm, tilt) => {
        const bodyMm = sole.widthMm - 2 * limits.bodyClearanceMm;
        const widthMm = ratio === null ? bodyMm : ratio * sole.widthMm;
        const wood = difference(STICK, leaningGroove(widthMm, depthMm, tilt));
        const x = 30 + besideMm;
        const seat = seatOf(wood, sole, [x, 20, tilt], limits);
        if (!seat) return;
        const aim = turned(turnOf(tilt), { x, y: 20 }).x;
        const profile = profileOf(wood, tilt);
        const heightAt = (shift: number): number =>
          restOn(profile, sole, aim + shift, { narrowMm: limits.bodyClearanceMm })?.heightMm ??
          Number.NEGATIVE_INFINITY;
        const reach = sole.widthMm * limits.seatShiftRatio;
        for (const side of [-1, 1]) {
          const dense = denseLiftMm(heightAt, seat.heightMm, seat.shift, seat.shift + side * reach);
          expect(seat.lift).toBeLessThan(dense + AS_LOW_MM);
        }
      },
    ),
    { numRuns: Number(process.env.MOULDWRIGHT_RUNS ?? 1500) },
  );
});
