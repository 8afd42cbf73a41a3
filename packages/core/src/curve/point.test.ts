import * as fc from "fast-check";
import { describe, expect, test } from "vitest";
import { Bug } from "../measure/index.ts";
import { orientation } from "./orientation.ts";
import { lerpPoint, point, samePoint, scalePoint, turnPoint } from "./point.ts";
import { PROPERTY } from "./testing/generators.ts";

describe("point", () => {
  test.each([Number.NaN, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY])(
    "refuses %s by name",
    (value) => {
      expect(() => point(value, 0)).toThrow(Bug);
      expect(() => point(value, 0)).toThrow(/^x /);
      expect(() => point(0, value)).toThrow(/^y /);
    },
  );

  test("leaves no negative zero", () => {
    expect(Object.is(point(-0, -0).x, 0)).toBe(true);
    expect(Object.is(scalePoint(point(0, 1), -1).x, 0)).toBe(true);
    expect(Object.is(turnPoint(point(0, 0), Math.PI).y, 0)).toBe(true);
  });

  test("points are the same by straight distance, the limit included", () => {
    // 3-4-5: apart by 3 and 4 along the axes, by 5 straight.
    expect(samePoint(point(0, 0), point(3, 4), 5)).toBe(true);
    expect(samePoint(point(0, 0), point(3, 4), 4.999)).toBe(false);
  });

  test("the way between two points ends in the very second point", () => {
    const b = point(0.1, 0.7);
    expect(lerpPoint(point(0.3, 1e9), b, 1)).toBe(b);
  });
});

describe("orientation", () => {
  test("left, right, on the line", () => {
    expect(orientation(point(0, 0), point(1, 0), point(0, 1))).toBe(1);
    expect(orientation(point(0, 0), point(1, 0), point(0, -1))).toBe(-1);
    expect(orientation(point(0, 0), point(1, 1), point(3, 3))).toBe(0);
  });

  /** A double as a whole number of the smallest steps in use here, 2^-80: exact. */
  const exactly = (value: number): bigint => {
    let scaled = value;
    let power = 0;
    while (!Number.isInteger(scaled) && power < 80) {
      scaled *= 2;
      power++;
    }
    return BigInt(scaled) << BigInt(80 - power);
  };

  test("agrees with whole-number arithmetic a few units in the last place off a line", () => {
    const ulps = fc.integer({ min: -3, max: 3 });
    const steps = fc.integer({ min: -40, max: 40 });
    const near = fc.tuple(steps, ulps, ulps).map(([step, dx, dy]) => ({
      x: 0.5 + step * 0.1 + dx * 2 ** -52,
      y: 0.5 + step * 0.1 + dy * 2 ** -52,
    }));
    fc.assert(
      fc.property(near, near, near, (a, b, c) => {
        const [ax, ay, bx, by, cx, cy] = [a.x, a.y, b.x, b.y, c.x, c.y].map(exactly) as [
          bigint,
          bigint,
          bigint,
          bigint,
          bigint,
          bigint,
        ];
        const exact = (bx - ax) * (cy - ay) - (by - ay) * (cx - ax);
        expect(orientation(a, b, c)).toBe(exact > 0n ? 1 : exact < 0n ? -1 : 0);
        expect(orientation(b, a, c)).toBe(0 - orientation(a, b, c));
        expect(orientation(b, c, a)).toBe(orientation(a, b, c));
      }),
      { ...PROPERTY, numRuns: 5000 },
    );
  });
});
