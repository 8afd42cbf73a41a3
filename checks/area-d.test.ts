import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import {
  type Arc,
  circleOf,
  distanceMm,
  flattenPiece,
  lengthMm,
  type Piece,
  sagittaMm,
  sweepRad,
  tangentRad,
} from "../packages/core/src/curve/index.ts";
import { normaliseDeg, toDeg } from "../packages/core/src/measure/index.ts";
import { buildSection, fitArcs, type PartSpec } from "../packages/core/src/section/index.ts";

interface Row {
  readonly id: string;
  readonly input: Readonly<Record<string, number>>;
  readonly expected: Readonly<Record<string, unknown>>;
  readonly source: string;
}

const { rows } = JSON.parse(readFileSync(new URL("./area-d.json", import.meta.url), "utf8")) as {
  rows: readonly Row[];
};

const rowOf = (id: string): Row => rows.find((row) => row.id === id) as Row;

function near(actual: number, expected: unknown, tolerance: number): void {
  expect(Math.abs(actual - (expected as number))).toBeLessThanOrEqual(tolerance);
}

/** The part alone in a block large enough for it, as its pieces from the gauge edge on. */
function piecesOf(part: PartSpec): readonly Piece[] {
  const built = buildSection({
    name: "check",
    stick: { widthMm: 140, thicknessMm: 140 },
    startHeightMm: 70,
    parts: [{ kind: "fillet", widthMm: 30 }, part, { kind: "fillet", widthMm: "rest" }],
  });
  if (!built.ok) throw new Error(JSON.stringify(built.trouble));
  const span = built.value.named.find((one) => one.kind === part.kind);
  const pieces = built.value.outline.pieces.slice(span?.first, (span?.first ?? 0) + (span?.count ?? 0));
  return [...pieces].reverse();
}

function arcsOf(part: PartSpec): readonly Arc[] {
  return piecesOf(part).map((piece) => {
    if (piece.kind !== "arc") throw new Error("an arc was expected");
    return piece;
  });
}

const sweepDeg = (arc: Arc) => Math.abs(toDeg(sweepRad(arc)));
const radiusMm = (arc: Arc) => circleOf(arc).radiusMm;
const SOURCED = rows.map((row) => [row.id, row.source] as const);

test.each(SOURCED)("%s names its source", (_, source) => {
  expect(source.length).toBeGreaterThan(0);
});

describe("Area D: half-rounds and quarters", () => {
  test.each(["bead", "astragal", "torus"] as const)("D-T01: %s on its whole height", (kind) => {
    const { input, expected } = rowOf("D-T01");
    const [arc] = arcsOf({ kind, widthMm: input.height as number });
    near(radiusMm(arc as Arc), expected.radius, 1e-9);
    near(sweepDeg(arc as Arc), expected.arc_deg, 1e-9);
  });

  test.each([
    ["D-O01", "tangent", 1e-9],
    ["D-O01", "longer side", 1e-9],
    ["D-O02", "longer side", 1e-5],
    ["D-O03", "tangent", 1e-6],
  ] as const)("%s, %s: ovolo and cavetto, rising and falling", (id, construction, tolerance) => {
    const { input, expected } = rowOf(id);
    for (const kind of ["ovolo", "cavetto"] as const) {
      for (const sign of [1, -1]) {
        const riseMm = sign * (input.projection as number);
        const arcs = arcsOf({ kind, acrossMm: input.height as number, riseMm, construction });
        expect(arcs).toHaveLength(1);
        near(radiusMm(arcs[0] as Arc), expected.radius, tolerance);
        near(sweepDeg(arcs[0] as Arc), expected.arc_deg, tolerance);
        if (expected.chord !== undefined) {
          near(distanceMm((arcs[0] as Arc).from, (arcs[0] as Arc).to), expected.chord, 1e-9);
        }
      }
    }
  });

  test("D-O03: the centre stands on the line along the projection through one end", () => {
    const { input } = rowOf("D-O03");
    const [arc] = arcsOf({
      kind: "ovolo",
      acrossMm: input.height as number,
      riseMm: -(input.projection as number),
    });
    const { centre } = circleOf(arc as Arc);
    // The curve runs along the height where that line meets it.
    const offs = [(arc as Arc).from, (arc as Arc).to].map((end) => Math.abs(centre.x - end.x));
    near(Math.min(...offs), 0, 1e-9);
  });

  test.each(["first", "last"] as const)("D-S01: scotia, the small quadrant %s", (small) => {
    const { input, expected } = rowOf("D-S01");
    const arcs = arcsOf({ kind: "scotia", acrossMm: input.height as number, small });
    const radii = arcs.map(radiusMm).sort((a, b) => a - b);
    near(radii[0] as number, expected.upper_radius, 1e-9);
    near(radii[1] as number, expected.lower_radius, 1e-9);
    for (const arc of arcs) near(sweepDeg(arc), 90, 1e-9);
    // Walked from the far edge: `to` of the first arc in chain order is the chain's start.
    const riseMm = (arcs[1] as Arc).from.y - (arcs[0] as Arc).to.y;
    near(Math.abs(riseMm), expected.lower_lip_beyond_upper_lip, 1e-9);
    // The large quadrant's lip stands further out.
    expect(Math.sign(riseMm)).toBe(small === "first" ? 1 : -1);
    near(tangentBreakDeg(arcs), 0, 1e-9);
  });
});

/** Break of direction where two arcs of a chain (each walked backwards) meet. */
function tangentBreakDeg(arcs: readonly Arc[]): number {
  const [first, last] = arcs as readonly [Arc, Arc];
  return normaliseDeg(toDeg(tangentRad(first, 0) - tangentRad(last, 1)));
}

describe("Area D: cymas", () => {
  test.each(["D-C01", "D-C02", "D-C03", "D-C04", "D-C05"])("%s: two equilateral triangles", (id) => {
    const { input, expected } = rowOf(id);
    // The unit square is drawn twenty times as large and measured back.
    const scale = input.height === 1 ? 20 : 1;
    for (const kind of ["cyma recta", "cyma reversa"] as const) {
      for (const sign of [1, -1]) {
        const acrossMm = scale * (input.height as number);
        const riseMm = sign * scale * (input.projection as number);
        const arcs = arcsOf({ kind, acrossMm, riseMm });
        expect(arcs).toHaveLength(2);
        for (const arc of arcs) {
          near(radiusMm(arc) / scale, expected.radius, 1e-8);
          near(sweepDeg(arc), expected.arc_each_deg, 1e-8);
          const chordMm = distanceMm(arc.from, arc.to);
          near(sagittaMm(chordMm, radiusMm(arc)) / scale, expected.sagitta_each, 1e-8);
          near((chordMm * 2) / scale, expected.line, 1e-8);
        }
        const total = arcs.reduce((sum, arc) => sum + lengthMm(arc), 0);
        near(total / scale, expected.total_arc_length, 1e-8);
        near(tangentBreakDeg(arcs), 0, 1e-9);
        const lineDeg = toDeg(Math.atan2(riseMm, acrossMm));
        // Walked backwards, so turned by 180°.
        const endDeg = normaliseDeg(toDeg(tangentRad(arcs[1] as Arc, 0)) + 180);
        near(Math.abs(normaliseDeg(endDeg - lineDeg)), expected.tangent_to_line_at_ends_deg, 1e-8);
      }
    }
  });

  test("D-C10: two quadrants, their centres and length", () => {
    const { expected } = rowOf("D-C10");
    const arcs = arcsOf({ kind: "cyma recta", acrossMm: 20, riseMm: 20, construction: "thick" });
    for (const arc of arcs) {
      near(radiusMm(arc) / 20, expected.radius, 1e-8);
      near(sweepDeg(arc), expected.arc_each_deg, 1e-8);
    }
    near(arcs.reduce((sum, arc) => sum + lengthMm(arc), 0) / 20, expected.total_arc_length, 1e-8);
    expectCentres(arcs, expected.centres);
  });

  test("D-C11: one pair of centres is the recta's, the other the reversa's", () => {
    const { expected } = rowOf("D-C11");
    expectCentres(arcsOf({ kind: "cyma recta", acrossMm: 20, riseMm: 20 }), expected.centres_pair_1);
    expectCentres(arcsOf({ kind: "cyma reversa", acrossMm: 20, riseMm: 20 }), expected.centres_pair_2);
  });
});

/** Centres in the row's frame: projection first, then height, from the lower end, size 1. */
function expectCentres(arcs: readonly Arc[], expected: unknown): void {
  const start = (arcs[0] as Arc).to;
  for (const [index, [projection, height]] of (expected as [number, number][]).entries()) {
    const { centre } = circleOf(arcs[index] as Arc);
    near((centre.y - start.y) / 20, projection, 1e-9);
    near((centre.x - start.x) / 20, height, 1e-9);
  }
}

test("K-14: a fitter finds as many arcs in each form as it was made of", () => {
  const parts: Readonly<Record<string, PartSpec>> = {
    torus: { kind: "torus", widthMm: 20 },
    ovolo: { kind: "ovolo", acrossMm: 20, riseMm: 15 },
    cavetto: { kind: "cavetto", acrossMm: 20, riseMm: 20 },
    scotia: { kind: "scotia", acrossMm: 20 },
    "cyma 60": { kind: "cyma recta", acrossMm: 20, riseMm: 20 },
    "cyma quadrant": { kind: "cyma recta", acrossMm: 20, riseMm: 20, construction: "thick" },
  };
  const { input, expected } = rowOf("K-14");
  const profiles = input.profiles as unknown as readonly string[];
  const counts = expected.arcs as readonly number[];
  for (const [index, profile] of profiles.entries()) {
    const run = [...piecesOf(parts[profile] as PartSpec)]
      .reverse()
      .flatMap((piece, k) => flattenPiece(piece, 1e-4).slice(k === 0 ? 0 : 1));
    for (const tolMm of [0.005, 0.05, 0.199]) {
      expect(fitArcs(run, { tolMm }).chain.pieces.length, `${profile} within ${tolMm}`).toBe(counts[index]);
    }
  }
});
