import { expect, test } from "vitest";
import { reverseRing, ring, ringFromVertices, type Vertex } from "../curve/index.ts";
import { buildSection, type Join, joinsOf, mirrorSection, type PartSpec, type Section } from "./index.ts";

const at = (joins: readonly Join[], x: number, y: number) =>
  joins.find((join) => Math.hypot(join.at.x - x, join.at.y - y) < 1e-9);

/** Tangent of a quarter of an angle: the bulge of an arc that sweeps so many degrees. */
const bulge = (sweepDeg: number) => Math.tan((sweepDeg * Math.PI) / 720);

function joinsAlong(parts: readonly PartSpec[]): readonly Join[] {
  return joinsOf(sectionOf(parts).outline);
}

function sectionOf(parts: readonly PartSpec[]): Section {
  const built = buildSection({ name: "joins", stick: { widthMm: 40, thicknessMm: 20 }, parts });
  if (!built.ok) throw new Error(JSON.stringify(built.trouble));
  return built.value;
}

test("a square step: two arrises of 90° and a step of 90°", () => {
  const joins = joinsAlong([
    { kind: "fillet", widthMm: 15 },
    { kind: "step", riseMm: -6 },
    { kind: "fillet", widthMm: "rest" },
  ]);
  expect(joins).toHaveLength(6);
  expect(at(joins, 15, 20)).toMatchObject({ kind: "arris", angleDeg: 90, turnDeg: 90, radiusBeforeMm: null });
  expect(at(joins, 15, 14)).toMatchObject({ kind: "step", angleDeg: 90, turnDeg: -90, radiusAfterMm: null });
});

test("a straight run in two pieces joins smoothly", () => {
  const joins = joinsOf(
    ringFromVertices([
      [0, 0],
      [10, 0],
      [20, 0],
      [20, 10],
      [0, 10],
    ]),
  );
  expect(at(joins, 10, 0)).toMatchObject({ kind: "smooth", angleDeg: 180 });
});

test("tangents half a degree apart are smooth, a degree apart are not", () => {
  const kinked = (angleDeg: number): readonly Vertex[] => [
    [0, 0],
    [20, 0],
    [20, 10],
    [10, 10 + 10 * Math.tan((angleDeg * Math.PI) / 180)],
    [0, 10],
  ];
  // The middle vertex of the top turns by twice the slope of its two sides.
  const kindAt = (angleDeg: number) => joinsOf(ringFromVertices(kinked(angleDeg)))[3]?.kind;
  expect(kindAt(0.24)).toBe("smooth");
  expect(kindAt(0.5)).toBe("arris");
  expect(kindAt(-0.5)).toBe("step");
});

test("reeds of 60° meet in quirks of 120°", () => {
  const joins = joinsAlong([
    { kind: "fillet", widthMm: 15 },
    { kind: "step", riseMm: -2 },
    { kind: "reeds", count: 2, widthMm: 5 },
    { kind: "fillet", widthMm: "rest" },
  ]);
  const join = at(joins, 20, 18);
  expect(join?.kind).toBe("quirk");
  expect(join?.angleDeg).toBeCloseTo(120, 9);
  expect(join?.radiusBeforeMm).toBeCloseTo(5, 9);
  expect(join?.radiusAfterMm).toBeCloseTo(5, 9);
});

test("half-round reeds meet in a slit of no width: a quirk, also mirrored", () => {
  const section = sectionOf([
    { kind: "fillet", widthMm: 15 },
    { kind: "step", riseMm: -4 },
    { kind: "fillet", widthMm: 2 },
    { kind: "reeds", count: 2, widthMm: 5, sweepDeg: 180 },
    { kind: "fillet", widthMm: "rest" },
  ]);
  for (const joins of [joinsOf(section.outline), joinsOf(mirrorSection(section).outline)]) {
    const cusps = joins.filter((join) => join.angleDeg < 1);
    expect(cusps).toHaveLength(1);
    expect(cusps[0]).toMatchObject({ kind: "quirk", at: { y: 16 } });
    expect(cusps[0]?.turnDeg).toBeCloseTo(-180, 9);
  }
});

test("flutes side by side stand apart by a feather edge: an arris", () => {
  const joins = joinsAlong([
    { kind: "fillet", widthMm: 15 },
    { kind: "flutes", count: 2, widthMm: 5, sweepDeg: 180 },
    { kind: "fillet", widthMm: "rest" },
  ]);
  expect(at(joins, 20, 20)).toMatchObject({ kind: "arris" });
  expect(at(joins, 20, 20)?.angleDeg).toBeCloseTo(0, 9);
});

test("a narrow square groove has two quirks at its floor, a wide one two steps", () => {
  const groove = (widthMm: number) =>
    joinsAlong([
      { kind: "fillet", widthMm: 15 },
      { kind: "quirk", widthMm, depthMm: 4 },
      { kind: "fillet", widthMm: "rest" },
    ]).flatMap((join) => (join.turnDeg < 0 ? [join.kind] : []));
  expect(groove(1.5)).toEqual(["quirk", "quirk"]);
  expect(groove(3.5)).toEqual(["step", "step"]);
});

test("a snipe bill's groove is a quirk: 1.5 wide and 4 deep, 20.6° open", () => {
  const joins = joinsAlong([
    { kind: "fillet", widthMm: 15 },
    { kind: "vee quirk", widthMm: 1.5, depthMm: 4, upright: "first" },
    { kind: "fillet", widthMm: "rest" },
  ]);
  const join = at(joins, 15, 16);
  expect(join?.kind).toBe("quirk");
  expect(join?.angleDeg).toBeCloseTo((Math.atan2(1.5, 4) * 180) / Math.PI, 9);
});

test("a bead beside a flat is a step, a cove's end at a fillet an arris or smooth", () => {
  const joins = joinsAlong([
    { kind: "fillet", widthMm: 10 },
    { kind: "step", riseMm: -6 },
    { kind: "fillet", widthMm: 5 },
    { kind: "bead", widthMm: 6 },
    { kind: "cavetto", acrossMm: 5, riseMm: -5 },
    { kind: "fillet", widthMm: "rest" },
  ]);
  expect(at(joins, 15, 14)).toMatchObject({ kind: "step" });
  // The bead comes down plumb and the cove leaves plumb: one tangent.
  expect(at(joins, 21, 14)).toMatchObject({ kind: "smooth" });
  expect(at(joins, 26, 9)).toMatchObject({ kind: "smooth", radiusBeforeMm: null });
});

test("joins are the same set on the mirrored section and from another start", () => {
  const section = sectionOf([
    { kind: "fillet", widthMm: 10 },
    { kind: "quirk", widthMm: 1, depthMm: 3, walls: "first" },
    { kind: "bead", widthMm: 6 },
    { kind: "step", riseMm: 3 },
    { kind: "cyma recta", acrossMm: 12, riseMm: -8 },
    { kind: "fillet", widthMm: "rest" },
  ]);
  const said = (joins: readonly Join[]) =>
    joins.map((join) => `${join.kind} ${join.angleDeg.toFixed(6)}`).sort();
  const drawn = joinsOf(section.outline);
  const { pieces } = section.outline;
  expect(said(joinsOf(mirrorSection(section).outline))).toEqual(said(drawn));
  expect(said(joinsOf(ring([...pieces.slice(5), ...pieces.slice(0, 5)])))).toEqual(said(drawn));
  expect(said(joinsOf(ring(reverseRing(section.outline).pieces)))).toEqual(said(drawn));
});

test("a free curve is one surface: it joins smoothly where its control points say so, and has no joins inside", () => {
  // Leaves level, as the fillet runs; comes down at 45° on the fillet: a step of 135°.
  const section = sectionOf([
    { kind: "fillet", widthMm: 10 },
    { kind: "free curve", beziers: [{ control1: [1, 0], control2: [4, -4], to: [5, -5] }] },
    { kind: "fillet", widthMm: "rest" },
  ]);
  for (const one of [section, mirrorSection(section)]) {
    const joins = joinsOf(one.outline, one.freeSpans);
    expect(joins.map((join) => join.kind).sort()).toEqual([
      "arris",
      "arris",
      "arris",
      "arris",
      "smooth",
      "step",
    ]);
    const step = joins.find((join) => join.kind === "step");
    expect(Math.abs((step?.angleDeg ?? 0) - 135)).toBeLessThan(0.05);
    expect(step?.radiusBeforeMm ?? step?.radiusAfterMm).toBeNull();
  }
  const blind = joinsOf(section.outline);
  expect(blind.length).toBeGreaterThan(20);
});

test("the tangent at the end of a coarse free curve is its circle's, not its first line's", () => {
  // A quadrant of 10 mm as six lines of 15°: each line lies 7.5° off the tangent at its ends.
  const arcPoints = Array.from({ length: 7 }, (_, k): Vertex => {
    const angleRad = (k * Math.PI) / 12;
    return [10 * Math.cos(angleRad), 10 * Math.sin(angleRad)];
  });
  const outline = ringFromVertices([[0, 0], ...arcPoints]);
  const joins = joinsOf(outline, [{ first: 1, count: 6 }]);
  expect(joins.map((join) => [join.kind, Math.round(join.turnDeg * 1e6) / 1e6])).toEqual([
    ["arris", 90],
    ["arris", 90],
    ["arris", 90],
  ]);
});

test("a half-round on a stick as wide as itself: plumb to plumb, no joins but smooth ones and the back's corners", () => {
  const joins = joinsOf(
    ringFromVertices([
      [0, 0],
      [10, 0],
      [10, 5, bulge(180)],
      [0, 5],
    ]),
  );
  expect(joins.map((join) => join.kind)).toEqual(["arris", "arris", "smooth", "smooth"]);
});
