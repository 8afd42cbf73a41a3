import { describe, expect, test } from "vitest";
import { areaMm2, circleOf, extentsOf, flattenPiece, ringFromVertices } from "../../curve/index.ts";
import { buildSection, inspectSection, type Section } from "../../section/index.ts";
import { cornerFromAngle, faceProfile, rake, rakePoint, riseOf, scribe } from "./index.ts";
import { answer, ringOf } from "./testing/generators.ts";
import { onSecondWall } from "./testing/solid.ts";

const onWall = { springFromWallDeg: 0, wallEdge: "gauge edge" } as const;
const sprung = { springFromWallDeg: 38, wallEdge: "far edge" } as const;

/** A cornice such as crowns the harbour office's chart cabinet: fillet, cavetto, fillet, cyma, fillet. */
function chartCabinetCornice(): Section {
  return answer(
    buildSection({
      name: "chart cabinet cornice",
      stick: { widthMm: 70, thicknessMm: 22 },
      startHeightMm: 8,
      parts: [
        { kind: "fillet", widthMm: 6 },
        { kind: "cavetto", acrossMm: 14, riseMm: 8 },
        { kind: "fillet", widthMm: 4 },
        { kind: "cyma recta", acrossMm: 24, riseMm: -8 },
        { kind: "fillet", widthMm: "rest" },
      ],
    }),
  );
}

const square = (): Section => {
  const outline = ringOf([
    [0, 0],
    [40, 0],
    [40, 20],
    [0, 20],
  ]);
  return { name: "block", stick: outline, outline, freeSpans: [], named: [] };
};

describe("rake of a whole section", () => {
  const section = chartCabinetCornice();
  const made = answer(rake({ section, given: "level", placing: onWall, slopeDeg: 22.5 }));

  test("area shrinks by cos a in the rake and stays in the upper return", () => {
    const area = areaMm2(section.outline);
    const cosine = Math.cos((22.5 * Math.PI) / 180);
    // Flattened arcs lose at most their chord error along their length.
    expect(Math.abs(areaMm2(made.rake.section.outline) - area * cosine)).toBeLessThan(0.02);
    expect(Math.abs(areaMm2(made.upperReturn.section.outline) - area)).toBeLessThan(0.02);
    expect(areaMm2(made.level.section.outline)).toBeCloseTo(area, 8);
  });

  test("projections stay; heights follow the formula", () => {
    // The stick's face is highest (22 mm) nowhere; its projection is that of the cavetto's top, 16 mm at h = 20 to 24.
    expect(made.rake.projectionMm).toBeCloseTo(made.level.projectionMm, 9);
    expect(made.upperReturn.projectionMm).toBeCloseTo(made.level.projectionMm, 9);
    const top = rakePoint(8, 70, "level", answer(riseOf(22.5)));
    expect(made.rake.heightMm).toBeCloseTo(top.rakeHeightMm, 9);
    expect(made.upperReturn.heightMm).toBeCloseTo(top.upperReturnHeightMm, 9);
  });

  test("every sample of every arc lies where its own point is taken to", () => {
    const rise = answer(riseOf(22.5));
    const arcs = section.outline.pieces.filter(({ kind }) => kind === "arc");
    const raked = made.rake.section.outline.pieces.flatMap((piece) => flattenPiece(piece, 0.001));
    expect(arcs).toHaveLength(3);
    for (const arc of arcs) {
      for (const { x, y } of flattenPiece(arc, 0.05)) {
        // Flat on the wall, gauge edge down: the projection is y, the height x.
        const { rakeHeightMm } = rakePoint(y, x, "level", rise);
        const nearest = Math.min(...raked.map((one) => Math.hypot(one.x - rakeHeightMm, one.y - y)));
        expect(nearest).toBeLessThan(0.25);
        const onLine = distanceToRun(raked, rakeHeightMm, y);
        expect(onLine).toBeLessThan(0.0003);
      }
    }
  });

  test("arcs become free curves whose half axes multiply to r² cos a", () => {
    expect(made.rake.section.freeSpans).toHaveLength(3);
    const radii = section.outline.pieces.flatMap((piece) =>
      piece.kind === "arc" ? [circleOf(piece).radiusMm] : [],
    );
    expect(made.rake.lostArcs.map(({ radiusMm }) => radiusMm)).toEqual(radii);
    for (const { radiusMm, longMm, shortMm } of made.rake.lostArcs) {
      expect(longMm * shortMm).toBeCloseTo(radiusMm ** 2 * Math.cos((22.5 * Math.PI) / 180), 9);
    }
    // Spans name runs of lines, and the parts' names go along.
    const { outline, freeSpans, named } = made.rake.section;
    for (const { first, count } of freeSpans) {
      expect(outline.pieces.slice(first, first + count).every(({ kind }) => kind === "line")).toBe(true);
    }
    expect(named.map(({ name }) => name)).toEqual(section.named.map(({ name }) => name));
    const cyma = named.find(({ kind }) => kind === "cyma recta")!;
    expect(cyma.count).toBe(freeSpans[0]!.count + freeSpans[1]!.count);
  });

  test("each member can be planned like any section", () => {
    for (const member of [made.level, made.rake, made.upperReturn]) {
      expect(inspectSection(member.section).refusals).toEqual([]);
      const { minX, minY } = extentsOf(member.section.outline);
      expect(Math.hypot(minX, minY)).toBeLessThan(1e-9);
    }
  });

  test("the warning counts the shapes that have become ovals", () => {
    const outcome = rake({ section, given: "level", placing: onWall, slopeDeg: 22.5 });
    expect(outcome.ok && outcome.warnings.map(({ code, facts }) => [code, facts.count])).toEqual([
      ["rake-arcs-drawn-out", 3],
    ]);
  });

  test("no slope gives the section back, arcs and all", () => {
    for (const placing of [onWall, sprung]) {
      const level = answer(rake({ section, given: "level", placing, slopeDeg: 0 }));
      for (const member of [level.rake, level.upperReturn]) {
        expect(member.section.freeSpans).toEqual([]);
        expect(member.springFromWallDeg).toBeCloseTo(placing.springFromWallDeg, 10);
        for (const [index, piece] of section.outline.pieces.entries()) {
          const mapped = member.section.outline.pieces[index]!;
          expect(mapped.kind).toBe(piece.kind);
          expect(Math.hypot(mapped.from.x - piece.from.x, mapped.from.y - piece.from.y)).toBeLessThan(1e-9);
        }
      }
    }
  });

  test.each([
    ["rake", onWall],
    ["rake", sprung],
    ["upper return", onWall],
    ["upper return", sprung],
  ] as const)("back from the %s (spring %j)", (given, placing) => {
    const there = answer(rake({ section, given: "level", placing, slopeDeg: 30 }));
    const member = given === "rake" ? there.rake : there.upperReturn;
    const back = answer(
      rake({
        section: member.section,
        given,
        placing: { springFromWallDeg: member.springFromWallDeg, wallEdge: placing.wallEdge },
        slopeDeg: 30,
      }),
    );
    expect(back.level.springFromWallDeg).toBeCloseTo(placing.springFromWallDeg, 9);
    expect(back.level.heightMm).toBeCloseTo(there.level.heightMm, 6);
    expect(areaMm2(back.level.section.outline)).toBeCloseTo(areaMm2(section.outline), 1);
  });
});

describe("consequences of the published method (checks/area-d-rake)", () => {
  test("a level face tips by atan(sin a), a plumb one stays plumb; a square rake face tips the return by a", () => {
    const slopeDeg = 26.565;
    const slope = (slopeDeg * Math.PI) / 180;
    const made = answer(rake({ section: square(), given: "level", placing: onWall, slopeDeg }));
    // The block's foot (x = 0 side) is level; in the rake's stick frame it leans from square to the back.
    const rakeFoot = made.rake.section.outline.pieces.find(({ from, to }) => from.y > 0 && to.y === 0)!;
    const tip = Math.atan2(rakeFoot.from.x - rakeFoot.to.x, rakeFoot.from.y - rakeFoot.to.y);
    expect(Math.abs(tip)).toBeCloseTo(Math.atan(Math.sin(slope)), 9);
    const back = answer(rake({ section: square(), given: "rake", placing: onWall, slopeDeg }));
    const levelFoot = back.level.section.outline.pieces.find(({ from, to }) => from.y > 0 && to.y === 0)!;
    const tipped = Math.atan2(levelFoot.from.x - levelFoot.to.x, levelFoot.from.y - levelFoot.to.y);
    expect(Math.abs(tipped)).toBeCloseTo(slope, 9);
  });

  test("if the rake's height d is given, the level one is (d − p sin a) / cos a", () => {
    const rise = answer(riseOf(30));
    const { levelHeightMm } = rakePoint(20, 40, "rake", rise);
    expect(levelHeightMm).toBeCloseTo((40 - 20 * 0.5) / Math.cos(Math.PI / 6), 10);
  });

  test("at an inside corner the height falls instead, at an obtuse one it rises less", () => {
    const inside = answer(riseOf(30, answer(cornerFromAngle(90, "inside"))));
    expect(rakePoint(20, 30, "level", inside).rakeHeightMm).toBeCloseTo(
      30 * Math.cos(Math.PI / 6) - 20 * 0.5,
      10,
    );
    const obtuse = answer(riseOf(30, answer(cornerFromAngle(120, "outside"))));
    expect(rakePoint(20, 30, "level", obtuse).rakeHeightMm).toBeCloseTo(
      30 * Math.cos(Math.PI / 6) + (20 * 0.5) / Math.sqrt(3),
      10,
    );
  });

  test("refused: a spring and a slope that are none", () => {
    const bad = rake({
      section: square(),
      given: "level",
      placing: { ...onWall, springFromWallDeg: 400 },
      slopeDeg: 20,
    });
    expect(!bad.ok && bad.trouble.code).toBe("spring-angle");
    const steep = rake({ section: square(), given: "level", placing: onWall, slopeDeg: 90 });
    expect(!steep.ok && steep.trouble.code).toBe("slope-angle");
  });
});

describe("scribe", () => {
  const section = chartCabinetCornice();

  test("at a square corner the line is the section itself, on the face and at the wall", () => {
    const made = answer(scribe({ section, placing: onWall, corner: answer(cornerFromAngle(90)) }));
    const face = faceProfile(section, onWall)!;
    for (const [index, { x, y }] of face.points.entries()) {
      for (const line of [made.faceLine, made.wallLine]) {
        expect(line[index]!.x).toBeCloseTo(x, 9);
        expect(line[index]!.y).toBe(y);
      }
    }
    expect(made.isPossible).toBe(true);
    expect(made.sawLeanDeg).toBe(0);
    // Every corner of the section's face stands in it: (projection, height) = (8, 6), (16, 20), (16, 24), (8, 48).
    for (const [projection, height] of [
      [8, 6],
      [16, 20],
      [16, 24],
      [8, 48],
      [8, 70],
    ] as const) {
      const nearest = Math.min(...made.faceLine.map(({ x, y }) => Math.hypot(x - projection, y - height)));
      expect(nearest).toBeLessThan(1e-6);
    }
  });

  test.each([45, 75, 90, 120, 150])(
    "corner %d: every point of the line touches the other length's face",
    (cornerDeg) => {
      const corner = answer(cornerFromAngle(cornerDeg));
      for (const placing of [onWall, sprung]) {
        const made = answer(scribe({ section, placing, corner }));
        const face = faceProfile(section, placing)!;
        const toFirst = onSecondWall(cornerDeg, "inside");
        for (const [index, { x: projection, y: height }] of face.points.entries()) {
          const onFace = toFirst([made.faceLine[index]!.x, -projection, height]);
          const atWall = toFirst([made.wallLine[index]!.x, 0, height]);
          // Both must stand as far from the first wall as its own face does at that height.
          expect(-onFace[1]).toBeCloseTo(projection, 9);
          expect(-atWall[1]).toBeCloseTo(projection, 9);
        }
      }
    },
  );

  test("laid flat, the line follows the mitre that is sawn first", () => {
    const corner = answer(cornerFromAngle(90));
    const made = answer(scribe({ section, placing: sprung, corner }));
    // A point on the back's own line, p = q sin s, lies tan(mitre) of its way across.
    const ratio = Math.tan((made.mitreFirst.mitreDeg * Math.PI) / 180);
    expect(ratio).toBeCloseTo(Math.sin((38 * Math.PI) / 180), 9);
    for (const [index, { x }] of made.laidFlatLine.entries())
      expect(x).toBeCloseTo(made.faceLine[index]!.x, 12);
  });

  test("a face that curls under cannot be scribed, and is said with its height", () => {
    // Flat on the wall: a bead hangs over, so the height goes down again from 30 to 20.
    const outline = ringFromVertices([
      [0, 0],
      [60, 0],
      [60, 20],
      [20, 20],
      [30, 10],
      [0, 10],
    ]);
    const hooked: Section = { name: "hooked", stick: outline, outline, freeSpans: [], named: [] };
    const outcome = scribe({ section: hooked, placing: onWall, corner: answer(cornerFromAngle(90)) });
    expect(answer(outcome).isPossible).toBe(false);
    expect(outcome.ok && outcome.warnings.map(({ code, facts }) => [code, facts.heightMm])).toEqual([
      ["scribe-hidden", 30],
    ]);
  });

  test("an outside corner is refused", () => {
    const outcome = scribe({ section, placing: onWall, corner: answer(cornerFromAngle(90, "outside")) });
    expect(!outcome.ok && outcome.trouble.code).toBe("scribe-outside");
  });
});

function distanceToRun(points: readonly { x: number; y: number }[], x: number, y: number): number {
  let best = Number.POSITIVE_INFINITY;
  for (let index = 1; index < points.length; index++) {
    const a = points[index - 1]!;
    const b = points[index]!;
    const length2 = (b.x - a.x) ** 2 + (b.y - a.y) ** 2;
    const t =
      length2 === 0
        ? 0
        : Math.max(0, Math.min(1, ((x - a.x) * (b.x - a.x) + (y - a.y) * (b.y - a.y)) / length2));
    best = Math.min(best, Math.hypot(a.x + t * (b.x - a.x) - x, a.y + t * (b.y - a.y) - y));
  }
  return best;
}
