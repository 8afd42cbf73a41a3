/** Light on sections of every kind: against plain rays cast one by one, and what must hold of any of them. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { flattenPiece, type Piece, type Point } from "../curve/index.ts";
import { buildSection, mirrorSection, type PartSpec, type Section } from "../section/index.ts";
import {
  type Hanging,
  type Lamp,
  type SectionInLight,
  type Stretch,
  sectionInLight,
  tonesOf,
} from "./index.ts";
import { lightDirection, rayInSection } from "./lamp.ts";

const SEED = 20250;

/** Parts in any order on a stick that has room for them; rests and steps between them, some leaning. */
const part: fc.Arbitrary<PartSpec> = fc.oneof(
  fc.record({ kind: fc.constant("fillet" as const), widthMm: fc.double({ min: 1, max: 8, noNaN: true }) }),
  fc.record({
    kind: fc.constant("step" as const),
    riseMm: fc.double({ min: 1, max: 6, noNaN: true }).chain((rise) => fc.constantFrom(rise, -rise)),
  }),
  fc.record({
    kind: fc.constantFrom("bead" as const, "torus" as const, "low bead" as const),
    widthMm: fc.double({ min: 2, max: 12, noNaN: true }),
  }),
  fc.record({
    kind: fc.constantFrom("ovolo" as const, "cavetto" as const, "cyma recta" as const),
    acrossMm: fc.double({ min: 4, max: 14, noNaN: true }),
    riseMm: fc.double({ min: 4, max: 8, noNaN: true }).chain((rise) => fc.constantFrom(rise, -rise)),
  }),
  fc.record({
    kind: fc.constant("quirk" as const),
    widthMm: fc.double({ min: 0.5, max: 2, noNaN: true }),
    depthMm: fc.double({ min: 0.5, max: 3, noNaN: true }),
  }),
  fc.record({ kind: fc.constant("scotia" as const), acrossMm: fc.double({ min: 5, max: 14, noNaN: true }) }),
);

const section: fc.Arbitrary<Section> = fc
  .array(part, { minLength: 1, maxLength: 6 })
  .map((parts) =>
    buildSection({
      name: "any",
      stick: { widthMm: 120, thicknessMm: 90 },
      startHeightMm: 50,
      parts: [{ kind: "fillet", widthMm: 3 }, ...parts, { kind: "fillet", widthMm: "rest" }],
    }),
  )
  .filter((built) => built.ok)
  .map((built) => (built.ok ? built.value : undefined) as Section);

const lamp: fc.Arbitrary<Lamp> = fc.record({
  heightDeg: fc.double({ min: -80, max: 80, noNaN: true }),
  directionDeg: fc.double({ min: -80, max: 80, noNaN: true }),
  ambientRatio: fc.double({ min: 0, max: 1, noNaN: true }),
});

const hanging: fc.Arbitrary<Hanging> = fc.record({
  run: fc.constantFrom("level" as const, "upright" as const),
  firstEdge: fc.constantFrom("gauge edge" as const, "far edge" as const),
  springFromWallDeg: fc.oneof(fc.constant(0), fc.double({ min: -60, max: 60, noNaN: true })),
});

function lit(of: Section, by: Lamp, hung: Hanging): SectionInLight {
  const answer = sectionInLight(of, by, hung);
  if (!answer.ok) throw new Error(answer.trouble.code);
  return answer.value;
}

const CHORD_MM = 1e-5;

/** The outline as chords: all that the second way knows of it. */
function polygonOf(pieces: readonly Piece[]): readonly (readonly [Point, Point])[] {
  return pieces.flatMap((piece) => {
    const points = flattenPiece(piece, CHORD_MM);
    return points.slice(1).map((to, index) => [points[index] as Point, to] as const);
  });
}

/** Whether a ray from a place off the wood runs into it. */
function isBlocked(from: Point, way: Point, edges: readonly (readonly [Point, Point])[]): boolean {
  return edges.some(([a, b]) => {
    const ex = b.x - a.x;
    const ey = b.y - a.y;
    const turned = way.x * ey - way.y * ex;
    if (turned === 0) return false;
    const along = ((a.x - from.x) * ey - (a.y - from.y) * ex) / turned;
    const share = ((a.x - from.x) * way.y - (a.y - from.y) * way.x) / turned;
    return along > 0 && share >= 0 && share <= 1;
  });
}

/** Places of a stretch, by chords, away from its ends; each with the way out of the wood. */
function placesOn({ pieces }: Stretch): readonly { readonly at: Point; readonly out: Point }[] {
  const edges = polygonOf(pieces);
  const total = edges.reduce((sum, [a, b]) => sum + Math.hypot(b.x - a.x, b.y - a.y), 0);
  if (total < 0.2) return [];
  const wanted = [0.13, 0.5, 0.83].map((share) => 0.05 + share * (total - 0.1));
  const found: { at: Point; out: Point }[] = [];
  let run = 0;
  for (const [a, b] of edges) {
    const length = Math.hypot(b.x - a.x, b.y - a.y);
    for (const mm of wanted) {
      if (mm < run || mm >= run + length) continue;
      const t = (mm - run) / length;
      // A stretch runs from the first edge on, the wood to its right.
      found.push({
        at: { x: a.x + (b.x - a.x) * t, y: a.y + (b.y - a.y) * t },
        out: { x: -(b.y - a.y) / length, y: (b.x - a.x) / length },
      });
    }
    run += length;
  }
  return found;
}

/** Brightness of each chord, by vectors in space: lamp and room, each with its own cosine. */
function chordBrightness(pieces: readonly Piece[], state: Stretch["state"], by: Lamp, hung: Hanging) {
  const { right, up, out } = lightDirection(by);
  return polygonOf(pieces).map(([a, b]) => {
    const length = Math.hypot(b.x - a.x, b.y - a.y);
    const looks = { x: -(b.y - a.y) / length, y: (b.x - a.x) / length };
    const across = hung.run === "level" ? up : -right;
    const cosine = state === "light" ? Math.max(0, -(out * looks.x + across * looks.y)) : 0;
    return (1 - by.ambientRatio) * cosine + (by.ambientRatio * (1 + looks.x)) / 2;
  });
}

const OFF_MM = 1e-3;

test("2,000 places and more, each asked by a ray of its own", () => {
  let asked = 0;
  const found = { light: 0, shade: 0, shadow: 0, hidden: 0 };
  fc.assert(
    fc.property(section, lamp, hanging, (of, by, hung) => {
      const answer = lit(of, by, hung);
      const { way } = rayInSection(lightDirection(by), hung);
      const toLamp = { x: -way.x, y: -way.y };
      const edges = polygonOf(answer.outline);
      for (const stretch of answer.stretches) {
        for (const { at, out } of placesOn(stretch)) {
          const meets = toLamp.x * out.x + toLamp.y * out.y;
          // A ray that only just grazes its own chord tells nothing.
          if (Math.abs(meets) < 0.02) continue;
          const off = { x: at.x + out.x * OFF_MM, y: at.y + out.y * OFF_MM };
          const state = meets < 0 ? "shade" : isBlocked(off, toLamp, edges) ? "shadow" : "light";
          expect(stretch.state).toBe(state);
          if (Math.abs(out.x) > 0.02) {
            const isSeen = out.x > 0 && !isBlocked(off, { x: 1, y: 0 }, edges);
            expect(stretch.isSeen).toBe(isSeen);
            if (!isSeen) found.hidden++;
          }
          found[state]++;
          asked++;
        }
      }
    }),
    { numRuns: 400, seed: SEED },
  );
  expect(asked).toBeGreaterThan(2000);
  for (const count of Object.values(found)) expect(count).toBeGreaterThan(50);
}, 120_000);

describe("any section in any light", () => {
  test("the widths seen make up the section's, without gap or overlap", () => {
    fc.assert(
      fc.property(section, lamp, hanging, (of, by, hung) => {
        const answer = lit(of, by, hung);
        const { light, shade, shadow } = answer.shares;
        expect(light + shade + shadow).toBeCloseTo(answer.widthMm, 5);
        let reach = 0;
        for (const { startMm, endMm, isSeen } of answer.stretches) {
          if (!isSeen) continue;
          expect(startMm).toBeCloseTo(reach, 5);
          expect(endMm).toBeGreaterThan(startMm - 1e-6);
          reach = endMm;
        }
        expect(reach).toBeCloseTo(answer.widthMm, 5);
      }),
      { numRuns: 300, seed: SEED },
    );
  });

  test("stretches run on from each other, and neighbours differ in something", () => {
    fc.assert(
      fc.property(section, lamp, hanging, (of, by, hung) => {
        const { stretches } = lit(of, by, hung);
        for (const [index, stretch] of stretches.entries()) {
          const next = stretches[index + 1];
          if (next !== undefined) expect(next.from).toEqual(stretch.to);
          for (const [k, piece] of stretch.pieces.entries()) {
            const after = stretch.pieces[k + 1];
            if (after !== undefined) expect(after.from).toEqual(piece.to);
          }
        }
      }),
      { numRuns: 200, seed: SEED },
    );
  });

  test("brightness: never below nought or above 1, outside the light at most the room's share", () => {
    fc.assert(
      fc.property(section, lamp, hanging, (of, by, hung) => {
        const answer = lit(of, by, hung);
        for (const { state, brightness, pieces } of answer.stretches) {
          const { from, to, least, most } = brightness;
          expect(least).toBeGreaterThanOrEqual(0);
          expect(most).toBeLessThanOrEqual((state === "light" ? 1 : by.ambientRatio) + 1e-12);
          for (const end of [from, to]) {
            expect(end).toBeGreaterThanOrEqual(least);
            expect(end).toBeLessThanOrEqual(most);
          }
          for (const tone of chordBrightness(pieces, state, by, hung)) {
            expect(tone).toBeGreaterThanOrEqual(least - 1e-3);
            expect(tone).toBeLessThanOrEqual(most + 1e-3);
          }
        }
      }),
      { numRuns: 100, seed: SEED },
    );
  });

  test("tones cover what is seen from the first edge to the last", () => {
    fc.assert(
      fc.property(section, lamp, hanging, (of, by, hung) => {
        const answer = lit(of, by, hung);
        let reach = 0;
        for (const { startMm, endMm, brightnessRatio } of tonesOf(answer)) {
          expect(startMm).toBeCloseTo(reach, 4);
          expect(brightnessRatio).toBeGreaterThanOrEqual(by.ambientRatio / 2 - 1e-12);
          reach = endMm;
        }
        expect(reach).toBeCloseTo(answer.widthMm, 4);
      }),
      { numRuns: 100, seed: SEED },
    );
  });
});

/** What a viewer would note of each stretch, first edge to last. */
function noted(answer: SectionInLight) {
  return answer.stretches
    .filter(({ pieces }) => pieces.length > 0)
    .map(({ state, isSeen, startMm, endMm, brightness }) => ({ state, isSeen, startMm, endMm, brightness }));
}

function expectAlike(a: ReturnType<typeof noted>, b: ReturnType<typeof noted>): void {
  expect(b.map(({ state, isSeen }) => [state, isSeen])).toEqual(
    a.map(({ state, isSeen }) => [state, isSeen]),
  );
  for (const [index, one] of a.entries()) {
    const other = b[index] as (typeof b)[number];
    expect(other.startMm).toBeCloseTo(one.startMm, 5);
    expect(other.endMm).toBeCloseTo(one.endMm, 5);
    expect(other.brightness.from).toBeCloseTo(one.brightness.from, 6);
    expect(other.brightness.to).toBeCloseTo(one.brightness.to, 6);
  }
}

describe("mirrored", () => {
  test("the mirrored section with the lamp on the other side gives the mirrored result", () => {
    fc.assert(
      fc.property(section, lamp, hanging, (of, by, hung) => {
        const flat = { ...hung, springFromWallDeg: 0 };
        const other =
          hung.run === "level"
            ? { ...by, heightDeg: -by.heightDeg }
            : { ...by, directionDeg: -by.directionDeg };
        const straight = lit(of, by, flat);
        const turned = lit(mirrorSection(of), other, flat);
        const back = noted(turned)
          .reverse()
          .map(({ startMm, endMm, brightness, ...rest }) => ({
            ...rest,
            startMm: turned.widthMm - endMm,
            endMm: turned.widthMm - startMm,
            brightness: { ...brightness, from: brightness.to, to: brightness.from },
          }));
        expectAlike(noted(straight), back);
        expect(turned.onWall.beyondFirstMm).toBeCloseTo(straight.onWall.beyondLastMm, 6);
      }),
      { numRuns: 200, seed: SEED },
    );
  });

  test("the mirrored section hung by its other edge is the same moulding", () => {
    fc.assert(
      fc.property(section, lamp, hanging, (of, by, hung) => {
        const edge = hung.firstEdge === "gauge edge" ? "far edge" : "gauge edge";
        expectAlike(
          noted(lit(of, by, hung)),
          noted(lit(mirrorSection(of), by, { ...hung, firstEdge: edge })),
        );
      }),
      { numRuns: 200, seed: SEED },
    );
  });

  test("on a level run left or right of the lamp makes no difference", () => {
    fc.assert(
      fc.property(section, lamp, hanging, (of, by, hung) => {
        const level = { ...hung, run: "level" as const };
        const across = { ...by, directionDeg: -by.directionDeg };
        expectAlike(noted(lit(of, by, level)), noted(lit(of, across, level)));
      }),
      { numRuns: 100, seed: SEED },
    );
  });

  test("an upright run under a lamp from the left is a level one under the same lamp from above", () => {
    fc.assert(
      fc.property(section, lamp, hanging, (of, by, hung) => {
        const turned = { ...by, heightDeg: by.directionDeg, directionDeg: by.heightDeg };
        expectAlike(
          noted(lit(of, by, { ...hung, run: "level" })),
          noted(lit(of, turned, { ...hung, run: "upright" })),
        );
      }),
      { numRuns: 100, seed: SEED },
    );
  });
});
