import { describe, expect, test } from "vitest";
import {
  chain,
  circleOf,
  nearestOnPiece,
  type Piece,
  type Point,
  pointAt,
  reversePiece,
} from "../curve/index.ts";
import { buildSection } from "./build-section.ts";
import { fitFace } from "./fit-points.ts";
import type { PartSpec } from "./part-spec.ts";
import { readSectionFile } from "./read-file.ts";

/** The face of a built section from the gauge edge on, as pieces. */
function faceOf(widthMm: number, thicknessMm: number, parts: readonly PartSpec[]): readonly Piece[] {
  const built = buildSection({ name: "old", stick: { widthMm, thicknessMm }, parts });
  if (!built.ok) throw new Error(built.trouble.code);
  const pieces = built.value.outline.pieces;
  const isFace = ({ from, to }: Piece) => {
    const onBack = from.y === 0 && to.y === 0;
    const onEdge = (from.x === 0 && to.x === 0) || (from.x === widthMm && to.x === widthMm);
    return !onBack && !onEdge;
  };
  return [...pieces.filter(isFace)].reverse().map(reversePiece);
}

/** Measured about every `apartMm`, each point off by an error that runs through `spreadMm` either way; no dice. */
function measured(face: readonly Piece[], apartMm: number, spreadMm: number): readonly Point[] {
  let count = 0;
  const slip = () => (((count++ * 0.618034) % 1) - 0.5) * 2 * spreadMm;
  const lengthMm = (piece: Piece) =>
    piece.kind === "arc"
      ? circleOf(piece).radiusMm * 4 * Math.abs(Math.atan(piece.bulge))
      : Math.hypot(piece.to.x - piece.from.x, piece.to.y - piece.from.y);
  return face.flatMap((piece, i) => {
    const steps = Math.max(2, Math.round(lengthMm(piece) / apartMm));
    return Array.from({ length: i === face.length - 1 ? steps + 1 : steps }, (_, k) => {
      const p = pointAt(piece, k / steps);
      return { x: Math.max(0, p.x + slip()), y: p.y + slip() };
    });
  });
}

const rest = { kind: "fillet", widthMm: "rest" } as const;

/** The cornice's cyma recta of two quadrants of 9 mm between a fillet of 8 and one of 6, a step of 3 above it. */
const CYMA: readonly PartSpec[] = [
  { kind: "fillet", widthMm: 8 },
  { kind: "step", riseMm: -3 },
  { kind: "cyma recta", acrossMm: 18, riseMm: -18, construction: "thick" },
  rest,
];

const radiiOf = (pieces: readonly Piece[]) =>
  pieces.flatMap((piece) => (piece.kind === "arc" ? [circleOf(piece).radiusMm] : []));

describe("a face measured point by point", () => {
  const face = faceOf(32, 32, CYMA);

  test("exact points give the face they were taken from", () => {
    const { chain: found, offMm } = fitFace(measured(face, 0.8, 0), 0.05);
    expect(offMm).toBeLessThan(0.05);
    expect(found.pieces.map(({ kind }) => kind)).toEqual(["line", "line", "arc", "arc", "line"]);
    for (const radius of radiiOf(found.pieces)) expect(radius).toBeCloseTo(9, 2);
  });

  test("points off by a tenth give the same parts, radii within a fiftieth, joins within two tenths", () => {
    const { chain: found, offMm } = fitFace(measured(face, 0.8, 0.1), 0.25);
    expect(offMm).toBeLessThanOrEqual(0.25);
    expect(found.pieces.map(({ kind }) => kind)).toEqual(["line", "line", "arc", "arc", "line"]);
    for (const radius of radiiOf(found.pieces)) expect(Math.abs(radius - 9)).toBeLessThan(0.02 * 9);
    // An arris is where two flats cross; where parts run on smoothly their join may slide along the face, not off it.
    const arris = found.pieces[1]?.from as Point;
    expect(Math.hypot(arris.x - 8, arris.y - 32)).toBeLessThan(0.2);
    for (const { from } of found.pieces)
      expect(Math.min(...face.map((piece) => nearestOnPiece(piece, from).distanceMm))).toBeLessThan(0.2);
  });

  test("flats come out level and walls upright, though no two of their points do", () => {
    const { chain: found } = fitFace(measured(face, 0.8, 0.1), 0.25);
    for (const piece of found.pieces) {
      if (piece.kind !== "line") continue;
      const { from, to } = piece;
      expect(Math.min(Math.abs(from.x - to.x), Math.abs(from.y - to.y))).toBeLessThan(0.1);
    }
  });

  test("least squares through all its points serve a radius better than three of them", () => {
    const points = measured(face, 0.8, 0.1);
    const { chain: found } = fitFace(points, 0.25);
    const offs = radiiOf(found.pieces).map((radius) => Math.abs(radius - 9));
    expect(Math.max(...offs)).toBeLessThan(0.15);
  });

  test("a straight run is one line, and two points are a line", () => {
    for (const count of [2, 3, 30]) {
      const points = Array.from({ length: count }, (_, i) => ({ x: (20 * i) / (count - 1), y: 7 }));
      expect(fitFace(points, 0.1).chain).toEqual(
        chain([{ kind: "line", from: { x: 0, y: 7 }, to: { x: 20, y: 7 } }]),
      );
    }
  });
});

describe("a list of points as a file", () => {
  const face = faceOf(32, 32, CYMA);
  const points = measured(face, 0.8, 0.05).map(({ x, y }) => [x.toFixed(2), y.toFixed(2)] as const);
  const read = (text: string, more: Partial<Parameters<typeof readSectionFile>[0]> = {}) =>
    readSectionFile({ fileName: "old-cornice.csv", text, ...more });
  const sizes = (outcome: ReturnType<typeof read>) => {
    if (!outcome.ok) throw new Error(JSON.stringify(outcome.trouble));
    const arcs = outcome.value.outline.pieces.filter(({ kind }) => kind === "arc");
    return { name: outcome.value.name, arcs: arcs.length, codes: outcome.warnings.map(({ code }) => code) };
  };
  const code = (outcome: ReturnType<typeof read>) =>
    outcome.ok ? null : [outcome.trouble.code, outcome.trouble.where];

  test("commas, semicolons with decimal commas, tabs and blanks part the two lengths alike", () => {
    const ways = [
      points.map(([x, y]) => `${x},${y}`),
      points.map(([x, y]) => `${x.replace(".", ",")}; ${y.replace(".", ",")}`),
      points.map(([x, y]) => `${x}\t${y}`),
      points.map(([x, y]) => `${x}   ${y}`),
    ];
    for (const lines of ways)
      expect(sizes(read(`# old cornice, harbour office\nacross; height\n\n${lines.join("\r\n")}\n`))).toEqual(
        {
          name: "old-cornice",
          arcs: 2,
          codes: expect.arrayContaining(["points-taken-as-parts"]),
        },
      );
  });

  test("depths below the face of a stick give the same section as heights", () => {
    const depths = points.map(([x, y]) => `${x}; ${(32 - Number(y) + 0.1).toFixed(2)}`).join("\n");
    const stickMm = { widthMm: 32, thicknessMm: 32.1 };
    expect(sizes(read(`across; depth\n${depths}`, { stickMm })).arcs).toBe(2);
    expect(code(read(`across; depth\n${depths}`))).toEqual(["points-depths-need-a-stick", ""]);
    expect(code(read("across; depth\n0; 0\n5; 40\n9; 2", { stickMm }))).toEqual([
      "points-under-the-stick",
      "",
    ]);
  });

  test("inches are read as inches, asked for outside or said inside", () => {
    const inches = points.map(
      ([x, y]) => `${(Number(x) / 25.4).toFixed(4)}, ${(Number(y) / 25.4).toFixed(4)}`,
    );
    expect(sizes(read(`unit; in\n${inches.join("\n")}`)).arcs).toBe(2);
    expect(sizes(read(inches.join("\n"), { unit: "in" })).arcs).toBe(2);
  });

  test("how truly it was measured is said in the list", () => {
    const rough = measured(face, 0.8, 0.2).map(({ x, y }) => `${x.toFixed(2)}; ${y.toFixed(2)}`);
    expect(sizes(read(`within; 0.5 mm\n${rough.join("\n")}`)).arcs).toBe(2);
  });

  test("what cannot be read is refused with its line", () => {
    expect(code(read("0; 5\n4; 5; 6\n9; 5"))).toEqual(["points-line-unreadable", "line 2"]);
    expect(code(read("across; width\n4; 5\n9; 5"))).toEqual(["points-line-unreadable", "line 1"]);
    expect(code(read("0; 5\n4; five\n9; 5"))?.[1]).toBe("line 2");
    expect(code(read("0; 5\n4; -5\n9; 5"))).toEqual(["length-negative", "line 2"]);
    expect(code(read("0; 5\n9; 5"))).toEqual(["points-too-few", ""]);
    expect(code(read("0; 5\n0; 5\n0; 5\n0; 5"))).toEqual(["points-too-few", ""]);
    const many = Array.from({ length: 6000 }, (_, i) => `${i / 60}; ${5 + (i % 7) / 100}`).join("\n");
    expect(code(read(many))?.[0]).toBe("drawing-too-many-points");
    expect(code(read("0; 5\n4; 1e999\n9; 5"))?.[1]).toBe("line 2");
    expect(code(read("8; 5\n4; 5\n0; 6"))).toEqual(["points-run-backwards", ""]);
  });
});
