import fc from "fast-check";
import { expect, test } from "vitest";
import { sayTrouble } from "../../measure/index.ts";
import { TIMBERS } from "../../timber/index.ts";
import {
  cornerFromAngle,
  cornice,
  flatSettings,
  frame,
  hip,
  mitre,
  mitreOpening,
  mitreSeasons,
  rakePoint,
  riseOf,
  springFrom,
  unlikeMitre,
} from "./index.ts";
import { answer } from "./testing/generators.ts";

const SETTINGS = { seed: 20261124, numRuns: 300 };
const real = (min: number, max: number) => fc.double({ min, max, noNaN: true, noDefaultInfinity: true });
/** Anything a keyboard can give: sizes, nothing, negatives, no number at all. */
const wild = fc.oneof(
  real(-1e4, 1e4),
  fc.constantFrom(0, -1, 180, 360, 400, Number.NaN, Number.POSITIVE_INFINITY, 1e-320),
);
const kind = fc.constantFrom("inside" as const, "outside" as const);

test("cutting the flat settings back: tan and sine give spring and corner again", () => {
  fc.assert(
    fc.property(real(1, 89), real(30, 175), (springDeg, cornerDeg) => {
      const { mitreDeg, bevelDeg } = flatSettings(springDeg, cornerDeg / 2);
      const rad = Math.PI / 180;
      // The direction of the plane on the saw: its length is one, and its part across is sin s cos(C/2).
      const along = Math.cos(bevelDeg * rad) * Math.cos(mitreDeg * rad);
      expect(along).toBeCloseTo(Math.sin((cornerDeg / 2) * rad), 10);
      const across = Math.cos(bevelDeg * rad) * Math.sin(mitreDeg * rad);
      expect(Math.atan2(across, Math.sin(bevelDeg * rad)) / rad).toBeCloseTo(springDeg, 6);
    }),
    SETTINGS,
  );
});

test("a wider corner needs less of both; more spring more mitre and less bevel", () => {
  fc.assert(
    fc.property(real(1, 89), real(30, 170), real(0.5, 5), (springDeg, cornerDeg, more) => {
      const here = flatSettings(springDeg, cornerDeg / 2);
      const wider = flatSettings(springDeg, (cornerDeg + more) / 2);
      expect(wider.mitreDeg).toBeLessThan(here.mitreDeg);
      expect(wider.bevelDeg).toBeLessThan(here.bevelDeg);
      const leaning = flatSettings(Math.min(90, springDeg + more), cornerDeg / 2);
      expect(leaning.mitreDeg).toBeGreaterThan(here.mitreDeg);
      expect(leaning.bevelDeg).toBeLessThan(here.bevelDeg);
    }),
    SETTINGS,
  );
});

test("inside and outside corners share their settings and change hands", () => {
  fc.assert(
    fc.property(real(0.5, 89.5), real(30, 175), (springDeg, cornerDeg) => {
      const spring = answer(springFrom("wall", springDeg));
      const inside = answer(mitre({ spring, corner: answer(cornerFromAngle(cornerDeg, "inside")) })).laidFlat;
      const outside = answer(
        mitre({ spring, corner: answer(cornerFromAngle(cornerDeg, "outside")) }),
      ).laidFlat;
      for (const [a, b] of [
        [inside.leftPiece, outside.leftPiece],
        [inside.rightPiece, outside.rightPiece],
      ] as const) {
        expect(b.mitreDeg).toBe(a.mitreDeg);
        expect(b.bevelDeg).toBe(a.bevelDeg);
        expect(b.edgeAtFence).not.toBe(a.edgeAtFence);
        expect(b.keep).not.toBe(a.keep);
      }
    }),
    SETTINGS,
  );
});

test("a rake's three heights lead back to each other, and keep the order of points on a plumb line", () => {
  fc.assert(
    fc.property(
      real(0, 75),
      real(30, 175),
      real(30, 175),
      kind,
      kind,
      real(0, 300),
      real(0, 300),
      (slopeDeg, lower, upper, lowerKind, upperKind, p, h) => {
        const rise = answer(
          riseOf(
            slopeDeg,
            answer(cornerFromAngle(lower, lowerKind)),
            answer(cornerFromAngle(upper, upperKind)),
          ),
        );
        const there = rakePoint(p, h, "level", rise);
        expect(rakePoint(p, there.rakeHeightMm, "rake", rise).levelHeightMm).toBeCloseTo(h, 8);
        expect(rakePoint(p, there.upperReturnHeightMm, "upper return", rise).levelHeightMm).toBeCloseTo(h, 8);
        expect(rakePoint(p, h + 1, "level", rise).rakeHeightMm).toBeGreaterThan(there.rakeHeightMm);
      },
    ),
    SETTINGS,
  );
});

test("any regular frame: every side alike, outside longer than sight by 2 w tan(180/n)", () => {
  fc.assert(
    fc.property(fc.integer({ min: 3, max: 72 }), real(100, 3000), real(5, 20), (sides, sideMm, widthMm) => {
      const made = answer(frame({ shape: { kind: "regular", sides, sideMm }, stated: "sight", widthMm }));
      for (const { outsideMm, sightMm, longMm } of made.rails) {
        expect(sightMm).toBeCloseTo(sideMm, 6);
        expect(outsideMm - sightMm).toBeCloseTo(2 * widthMm * Math.tan(Math.PI / sides), 6);
        expect(longMm).toBeCloseTo(outsideMm, 6);
      }
    }),
    SETTINGS,
  );
});

test("any four-sided frame: corners add to 360°, and the two cuts of a corner add to it", () => {
  const jog = real(-60, 60);
  fc.assert(
    fc.property(fc.tuple(jog, jog, jog, jog, jog, jog, jog, jog), real(5, 40), (by, widthMm) => {
      const corners = [
        { x: by[0], y: by[1] },
        { x: 500 + by[2], y: by[3] },
        { x: 500 + by[4], y: 400 + by[5] },
        { x: by[6], y: 400 + by[7] },
      ];
      const { rails } = answer(frame({ shape: { kind: "polygon", corners }, stated: "sight", widthMm }));
      expect(rails.reduce((sum, { start }) => sum + start.cornerDeg, 0)).toBeCloseTo(360, 8);
      for (const [index, rail] of rails.entries()) {
        const before = rails[(index + 3) % 4]!;
        expect(rail.start.fromEdgeDeg + before.end.fromEdgeDeg).toBeCloseTo(rail.start.cornerDeg, 8);
        expect(rail.start.fromEdgeDeg).toBeCloseTo(rail.start.cornerDeg / 2, 8);
      }
    }),
    SETTINGS,
  );
});

test("two unlike mouldings taken the other way round give the same mitre", () => {
  fc.assert(
    fc.property(real(30, 175), real(5, 200), real(5, 200), (cornerDeg, a, b) => {
      const spring = answer(springFrom("wall", 45));
      const corner = answer(cornerFromAngle(cornerDeg));
      const of = (projectionMm: number) => ({ projectionMm, heightMm: 30, spring });
      const one = answer(unlikeMitre({ corner, first: of(a), second: of(b) }));
      const other = answer(unlikeMitre({ corner, first: of(b), second: of(a) }));
      expect(one.fromFirstWallDeg).toBeCloseTo(other.fromSecondWallDeg, 8);
      expect(one.first.bevelDeg).toBeCloseTo(other.second.bevelDeg, 8);
    }),
    SETTINGS,
  );
});

test("a hip is never steeper than either side, and is their mean in plan where they are alike", () => {
  fc.assert(
    fc.property(real(1, 85), real(1, 85), (mainDeg, adjacentDeg) => {
      const roof = answer(hip({ mainDeg, adjacentDeg }));
      expect(roof.hipDeg).toBeLessThan(Math.min(mainDeg, adjacentDeg) + 1e-9);
      expect(roof.main.planDeg + roof.adjacent.planDeg).toBeCloseTo(90, 8);
      // Seen from either side the hip has one slope.
      const rad = Math.PI / 180;
      expect(Math.tan(adjacentDeg * rad) * Math.sin(roof.adjacent.planDeg * rad)).toBeCloseTo(
        Math.tan(roof.hipDeg * rad),
        8,
      );
    }),
    SETTINGS,
  );
});

test("a mitre's gap grows with width, and drying and swelling open opposite corners", () => {
  fc.assert(
    fc.property(real(1, 500), real(30, 175), real(0.0001, 0.05), (widthMm, cornerDeg, strain) => {
      const dry = mitreOpening(widthMm, cornerDeg, -strain);
      const wet = mitreOpening(widthMm, cornerDeg, strain);
      expect([dry.opensAt, wet.opensAt]).toEqual(["inside corner", "outside corner"]);
      expect(dry.openingDeg).toBeGreaterThan(0);
      expect(wet.openingDeg).toBeLessThan(0);
      expect(mitreOpening(2 * widthMm, cornerDeg, strain).gapMm).toBeCloseTo(2 * wet.gapMm, 9);
    }),
    SETTINGS,
  );
});

test("whatever is typed, the answer is finite or a trouble that can be said", () => {
  const isSound = (value: unknown): boolean =>
    typeof value === "number"
      ? Number.isFinite(value)
      : typeof value !== "object" || value === null || Object.values(value).every(isSound);
  fc.assert(
    fc.property(
      wild,
      wild,
      wild,
      wild,
      kind,
      fc.constantFrom(...TIMBERS),
      (a, b, c, d, cornerKind, timber) => {
        const spring = springFrom("wall", a);
        const corner = cornerFromAngle(b, cornerKind);
        const outcomes = [
          spring,
          corner,
          riseOf(c),
          hip({ mainDeg: a, adjacentDeg: b, cornerDeg: c }),
          frame({
            shape: { kind: "rectangle", acrossMm: a, upMm: b },
            stated: "glass",
            widthMm: c,
            rebateMm: d,
          }),
          frame({
            shape: { kind: "regular", sides: a, sideMm: b },
            stated: "rebate",
            widthMm: c,
            rebateMm: d,
          }),
          frame({
            shape: {
              kind: "polygon",
              corners: [
                { x: a, y: b },
                { x: c, y: d },
                { x: b, y: c },
                { x: d, y: a },
              ],
            },
            stated: "outside",
            widthMm: 10,
          }),
          mitreSeasons({
            timber,
            widthMm: a,
            cornerDeg: b,
            fromPercent: c,
            toPercent: d,
            sawn: "flat",
            wishedGapMm: 1,
          }),
          ...(spring.ok && corner.ok
            ? [
                mitre({ spring: spring.value, corner: corner.value, widthMm: c }),
                cornice({
                  spring: spring.value,
                  projectionMm: c,
                  heightMm: d,
                  wallsMm: [a, b, 1000],
                  corners: [{ corner: corner.value }, { corner: corner.value }],
                }),
              ]
            : []),
        ];
        for (const outcome of outcomes) {
          if (outcome.ok) expect(isSound(outcome.value)).toBe(true);
          else {
            const { sentence, hint } = sayTrouble(outcome.trouble, { unit: "in" });
            expect(`${sentence}${hint}`).not.toMatch(/NaN|Infinity|undefined/);
          }
        }
      },
    ),
    { ...SETTINGS, numRuns: 500 },
  );
});
