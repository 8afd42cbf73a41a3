import { describe, expect, test } from "vitest";
import { circleOf, flattenPiece, type Piece, type Point } from "../curve/index.ts";
import { CORNER_NOISE_MM } from "../measure/index.ts";
import { chordsAsCurves } from "./fit-chords.ts";
import { cyma } from "./forms/cymas.ts";
import { quarter, scotia } from "./forms/quarters.ts";
import { halfRound } from "./forms/rounds.ts";
import { readSectionFile } from "./read-file.ts";
import type { OutlineVertex } from "./read-noise.ts";

/** The corners of a face of lines and arcs, each arc as the chords a program would save. */
function cornersOf(pieces: readonly Piece[], chordTolMm: number): readonly Point[] {
  return pieces.flatMap((piece, i) => flattenPiece(piece, chordTolMm).slice(i === 0 ? 0 : 1));
}

/** A closed outline over a face: down the far side, along the back, up again. */
function closedOver(face: readonly Point[]): readonly OutlineVertex[] {
  const [first, last] = [face[0] as Point, face[face.length - 1] as Point];
  const bottom = Math.min(...face.map(({ y }) => y)) - 8;
  const corners = [...face, { x: last.x, y: bottom }, { x: first.x, y: bottom }];
  return corners.map(({ x, y }) => ({ x, y, bulge: 0, free: 0 }));
}

const rounded = (mm: number, digits: number) => Math.round(mm * 10 ** digits) / 10 ** digits;

const radiiOf = (vertices: readonly OutlineVertex[]) =>
  vertices.flatMap(({ x, y, bulge }, i) => {
    if (bulge === 0) return [];
    const to = vertices[(i + 1) % vertices.length] as OutlineVertex;
    return [circleOf({ kind: "arc", from: { x, y }, to, bulge }).radiusMm];
  });

describe("chains of chords", () => {
  const forms: readonly (readonly [string, readonly Piece[], readonly number[]])[] = [
    ["ovolo of 12", quarter({ kind: "ovolo", acrossMm: 12, riseMm: -12 }), [12]],
    ["cavetto of 5", quarter({ kind: "cavetto", acrossMm: 5, riseMm: -5 }), [5]],
    ["scotia of 10 and 20", scotia({ kind: "scotia", acrossMm: 30 }), [10, 20]],
    [
      "cyma of two quadrants of 9",
      cyma({ kind: "cyma recta", acrossMm: 18, riseMm: -18, construction: "thick" }),
      [9, 9],
    ],
    ["torus of 14", halfRound({ kind: "torus", widthMm: 14 }), [7]],
  ];

  test.each(forms)(
    "%s: its arcs come back, from files of three digits and of any fineness",
    (_, pieces, radii) => {
      for (const chordTolMm of [0.04, 0.01, 0.001]) {
        const face = cornersOf(pieces, chordTolMm).map(({ x, y }) => ({
          x: rounded(x, 3),
          y: rounded(y, 3),
        }));
        const taken = chordsAsCurves(closedOver(face));
        const found = radiiOf(taken.vertices);
        expect([taken.arcs, taken.freeCurves]).toEqual([radii.length, 0]);
        // A half circle is held in two.
        const wanted = radii.length === found.length ? radii : radii.flatMap((radius) => [radius, radius]);
        expect(found).toHaveLength(wanted.length);
        found.forEach((radius, i) => {
          expect(Math.abs(radius - (wanted[i] as number))).toBeLessThan(0.01);
        });
        expect(taken.farthestMm).toBeLessThanOrEqual(CORNER_NOISE_MM);
      }
    },
  );

  test("flats and walls beside a curve stay what they are, where they run on smoothly too", () => {
    // A flat of 9, a quadrant of 6 that runs on from it, and the wall below.
    const quadrant = quarter({ kind: "ovolo", acrossMm: 6, riseMm: -6 });
    const arc = cornersOf(quadrant, 0.01);
    const start = arc[0] as Point;
    const vertices = closedOver([{ x: start.x - 9, y: start.y }, ...arc]);
    const taken = chordsAsCurves(vertices);
    expect(taken.vertices.filter(({ bulge }) => bulge !== 0)).toHaveLength(1);
    expect(taken.vertices).toHaveLength(vertices.length - (arc.length - 2));
    expect(taken.arcLines).toBe(arc.length - 1);
  });

  test("a chain that is cut by the outline's first vertex is taken whole", () => {
    const whole = closedOver(cornersOf(quarter({ kind: "ovolo", acrossMm: 12, riseMm: -12 }), 0.01));
    const turned = [...whole.slice(9), ...whole.slice(0, 9)];
    const taken = chordsAsCurves(turned);
    expect([taken.arcs, taken.vertices.length]).toEqual([1, chordsAsCurves(whole).vertices.length]);
  });

  test("an ellipse is one free curve, its corners where they were", () => {
    const ellipse = Array.from({ length: 61 }, (_, i) => {
      const angle = (Math.PI / 2) * (1 - i / 60);
      return { x: 30 * Math.cos(angle), y: 18 * Math.sin(angle) };
    });
    const vertices = closedOver(ellipse);
    const taken = chordsAsCurves(vertices);
    expect([taken.arcs, taken.freeCurves, taken.freeLines]).toEqual([0, 1, 60]);
    expect(taken.vertices.map(({ x, y }) => [x, y]).sort()).toEqual(
      vertices.map(({ x, y }) => [x, y]).sort(),
    );
    expect(taken.vertices.filter(({ free }) => free === 1)).toHaveLength(60);
  });

  test("a regular octagon, and twelve facets of 5 mm, are facets", () => {
    for (const [sides, radius] of [
      [8, 10],
      [12, 10],
      [24, 60],
    ] as const) {
      const vertices = Array.from({ length: sides }, (_, i) => {
        const angle = (2 * Math.PI * i) / sides;
        return { x: radius * Math.cos(angle), y: radius * Math.sin(angle), bulge: 0, free: 0 };
      });
      expect(chordsAsCurves(vertices)).toMatchObject({ vertices, arcs: 0, freeCurves: 0 });
    }
  });

  test("arcs, and free curves that are known as such, are left alone", () => {
    const vertices = closedOver(cornersOf(quarter({ kind: "ovolo", acrossMm: 12, riseMm: -12 }), 0.001));
    const known = vertices.map((vertex, i) => (i < vertices.length - 3 ? { ...vertex, free: 4 } : vertex));
    expect(chordsAsCurves(known).vertices).toBe(known);
  });

  test("thousands of corners that lie on nothing end soon, as one free curve", () => {
    // A wave of corners 0.02 mm apart, each off it by up to a ten-thousandth.
    const ragged = Array.from({ length: 50_000 }, (_, i) => ({
      x: i / 50,
      y: 10 + Math.sin(i / 500) * 5 + Math.sin(i * i) * 0.0001,
    }));
    const taken = chordsAsCurves(closedOver(ragged));
    expect(taken.vertices.length).toBeGreaterThan(ragged.length * 0.9);
    expect(taken.freeCurves).toBeGreaterThanOrEqual(1);
  });
});

describe("a drawing made of short lines", () => {
  /** The glazing bar's ovolo between two flats, saved by a program that knows no arcs. */
  const face = cornersOf(quarter({ kind: "ovolo", acrossMm: 10, riseMm: -10 }), 0.02);
  const outline = [
    { x: -6, y: 2 },
    ...face.map(({ x, y }) => ({ x, y })),
    { x: 16, y: -10 },
    { x: 16, y: -22 },
    { x: -6, y: -22 },
  ];
  const points = outline.map(({ x, y }) => `${rounded(x + 6, 3)},${rounded(2 - y, 3)}`).join(" ");
  const svg = `<svg xmlns="http://www.w3.org/2000/svg" width="22mm" height="24mm" viewBox="0 0 22 24"><polygon id="section" points="${points}"/></svg>`;

  test("is read with its arc, and says so", () => {
    const read = readSectionFile({ fileName: "bar.svg", text: svg });
    if (!read.ok) throw new Error(read.trouble.code);
    const arcs = read.value.outline.pieces.filter((piece) => piece.kind === "arc");
    expect(arcs).toHaveLength(1);
    expect(circleOf(arcs[0] as (typeof arcs)[0]).radiusMm).toBeCloseTo(10, 2);
    expect(read.warnings.map(({ code }) => code)).toContain("chords-taken-as-arcs");
  });
});
