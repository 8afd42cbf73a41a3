import { describe, expect, test } from "vitest";
import { curveCovers, MOST_SETTINGS_FOR_ARC, poseOnArc, rockRun } from "./curves.ts";
import { benchOf, drawnSection, pieceAt } from "./testing/benches.ts";
import { hollow, round, shelfOf } from "./testing/shelves.ts";

const RADIUS_MM = 12.7;
const COS_30 = Math.sqrt(3) / 2;
const BULGE_60 = Math.tan(Math.PI / 12);
const BULGE_90 = Math.tan(Math.PI / 8);

/** A low bead of 60° from x = 10 to x = 10 + r on a face lowered to 18 mm in a 40 × 20 mm stick. */
const LOW_BEAD = drawnSection(40, 20, [
  [0, 0],
  [40, 0],
  [40, 18],
  [10 + RADIUS_MM, 18, BULGE_60],
  [10, 18],
  [0, 18],
]);

/** A convex quarter about (12, 7.3), from level at its top to upright at its foot; a fillet below it. */
const QUARTER_OVOLO = drawnSection(40, 20, [
  [0, 0],
  [40, 0],
  [40, 7.3],
  [24.7, 7.3, BULGE_90],
  [12, 20],
  [0, 20],
]);

/** A hollow quarter about (24.7, 20), upright at its top, level at its foot, and a wall of this height at its foot. */
function coveUnderWall(wallMm: number) {
  return drawnSection(40, 20, [
    [0, 0],
    [40, 0],
    [40, 7.3 + wallMm],
    ...(wallMm > 0 ? ([[24.7, 7.3 + wallMm]] as const) : []),
    [24.7, 7.3, -BULGE_90],
    [12, 20],
    [0, 20],
  ]);
}

/** The middle of a quarter's arc about (x, y). */
function middleOfQuarter(x: number, y: number, sign: 1 | -1): [number, number] {
  return [x + (sign * RADIUS_MM) / Math.SQRT2, y + (sign * RADIUS_MM) / Math.SQRT2];
}

describe("an arc with a plane of its own radius", () => {
  test("60° under a 60° hollow is one upright pose on the crown", () => {
    const bench = benchOf(LOW_BEAD, shelfOf(hollow(RADIUS_MM)));
    const crown = 18 + RADIUS_MM * (1 - COS_30);
    const [cover, ...others] = curveCovers(bench, pieceAt(bench, 10 + RADIUS_MM / 2, crown));
    expect(others).toEqual([]);
    expect(cover?.shortMm).toBeLessThan(1e-6);
    expect(cover?.ridgeMm).toBe(0);
    expect(cover?.drafts).toHaveLength(1);
    expect(cover?.drafts[0]?.runs).toHaveLength(1);
    const [pose, ...more] = cover?.drafts[0]?.runs[0] ?? [[0, 0, 99]];
    expect(more).toEqual([]);
    expect(pose[0]).toBeCloseTo(10 + RADIUS_MM / 2, 5);
    expect(pose[1]).toBeCloseTo(crown, 5);
    expect(pose[2]).toBeCloseTo(0, 4);
  });

  test("the same arc leaned 20° to the left is one pose leaned 20° to the left", () => {
    // The chord rises to the right end's disadvantage: turned anticlockwise by 20° about its left end.
    const rad = Math.PI / 9;
    const right: [number, number] = [10 + RADIUS_MM * Math.cos(rad), 10 + RADIUS_MM * Math.sin(rad)];
    const leaned = drawnSection(40, 20, [
      [0, 0],
      [40, 0],
      [40, right[1]],
      [right[0], right[1], BULGE_60],
      [10, 10],
      [0, 10],
    ]);
    const bench = benchOf(leaned, shelfOf(hollow(RADIUS_MM)));
    const piece = bench.worked.find((worked) => worked.curve);
    const cover = piece && curveCovers(bench, piece)[0];
    const pose = cover?.drafts[0]?.runs[0]?.[0] ?? [0, 0, 0];
    expect(cover?.drafts[0]?.runs).toHaveLength(1);
    // Middle of the chord, then the sagitta along the leaned axis (-sin 20°, cos 20°).
    const sag = RADIUS_MM * (1 - COS_30);
    expect(pose[0]).toBeCloseTo((10 + right[0]) / 2 - sag * Math.sin(rad), 4);
    expect(pose[1]).toBeCloseTo((10 + right[1]) / 2 + sag * Math.cos(rad), 4);
    expect(pose[2]).toBeCloseTo(20, 3);
  });

  test("a quarter ovolo is rocked from 30° to 60° about its own centre", () => {
    const bench = benchOf(QUARTER_OVOLO, shelfOf(hollow(RADIUS_MM)));
    const [cover] = curveCovers(bench, pieceAt(bench, ...middleOfQuarter(12, 7.3, 1)));
    expect(cover?.shortMm).toBeLessThan(1e-3);
    const run = cover?.drafts[0]?.runs[0] ?? [];
    const tilts = run.map((pose) => pose[2]);
    // 90° of arc under 60° of sole leaves 30° of rock: the level end wants 30° of lean, the upright one 60°.
    expect(Math.min(...tilts)).toBeCloseTo(-60, 3);
    expect(Math.max(...tilts)).toBeCloseTo(-30, 3);
    for (const [x, y, tilt] of run) {
      expect(Math.hypot(x - 12, y - 7.3)).toBeCloseTo(RADIUS_MM, 5);
      expect((Math.atan2(x - 12, y - 7.3) * 180) / Math.PI).toBeCloseTo(-tilt, 4);
    }
    for (let i = 1; i < run.length; i++) {
      const [a, b] = [run[i - 1], run[i]] as const;
      if (!a || !b) continue;
      expect(Math.abs(b[2] - a[2])).toBeLessThanOrEqual(1 + 1e-6);
      expect(Math.hypot(b[0] - a[0], b[1] - a[1])).toBeLessThanOrEqual(0.2);
    }
  });

  test("a hollow quarter with free room beside it is covered whole", () => {
    const bench = benchOf(coveUnderWall(0), shelfOf(round(RADIUS_MM)));
    const [cover] = curveCovers(bench, pieceAt(bench, ...middleOfQuarter(24.7, 20, -1)));
    expect(cover?.shortMm).toBeLessThan(0.05);
  });

  test("a wall at a cove's foot stops the body, and the cover says how much stays short", () => {
    const wallMm = 3;
    const bench = benchOf(coveUnderWall(wallMm), shelfOf(round(RADIUS_MM)));
    const [cover] = curveCovers(bench, pieceAt(bench, ...middleOfQuarter(24.7, 20, -1)));
    // The body's near side runs half a width, r/2, beside the axis through the centre; leaned by t it meets the wall's
    // plane (r/2) / sin t under the centre. It clears the wall's top, r - 3 under the centre, from sin t = (r/2)/(r - 3).
    const leanRad = Math.asin(RADIUS_MM / 2 / (RADIUS_MM - wallMm));
    const shortMm = RADIUS_MM * (leanRad - Math.PI / 6);
    expect(shortMm).toBeCloseTo(2.414, 3);
    expect(cover?.shortMm).toBeGreaterThan(shortMm - 0.03);
    expect(cover?.shortMm).toBeLessThan(shortMm + 0.03);
  });
});

describe("an arc with a plane of another radius", () => {
  test("a smaller hollow and a larger round overcut, so they are never proposed", () => {
    const bead = benchOf(LOW_BEAD, shelfOf(hollow(RADIUS_MM - 0.2), round(RADIUS_MM)));
    const crown = 18 + RADIUS_MM * (1 - COS_30);
    expect(curveCovers(bead, pieceAt(bead, 10 + RADIUS_MM / 2, crown))).toEqual([]);
    const cove = benchOf(coveUnderWall(0), shelfOf(round(RADIUS_MM + 0.2), hollow(RADIUS_MM)));
    expect(curveCovers(cove, pieceAt(cove, ...middleOfQuarter(24.7, 20, -1)))).toEqual([]);
  });

  /** A 12 mm round set along the hollow quarter of 12.7 mm: its cover, and the exact heights of the ridges between. */
  function crept() {
    const roundMm = 12;
    const bench = benchOf(coveUnderWall(0), shelfOf(round(roundMm)));
    const [cover] = curveCovers(bench, pieceAt(bench, ...middleOfQuarter(24.7, 20, -1)));
    const poses = (cover?.drafts[0]?.runs ?? []).map(([pose]) => pose);
    // The plane's own centre stands a radius up its axis from the sole's middle.
    const centres = poses.map(([x, y, tilt]) => {
      const rad = (tilt * Math.PI) / 180;
      return { x: x - roundMm * Math.sin(rad), y: y + roundMm * Math.cos(rad) };
    });
    const touchesRad = centres.map((c) => Math.atan2(c.x - 24.7, 20 - c.y)).sort((a, b) => a - b);
    const offMm = RADIUS_MM - roundMm;
    // Both circles touch the cove from within; they cross on the line midway between the two touching places, and
    // what the crossing lacks to the cove is the ridge.
    const ridges = touchesRad.slice(1).map((touch, i) => {
      const half = (touch - (touchesRad[i] as number)) / 2;
      const crossing = offMm * Math.cos(half) + Math.sqrt(roundMm ** 2 - (offMm * Math.sin(half)) ** 2);
      return { exactMm: RADIUS_MM - crossing, apartMm: 2 * half * RADIUS_MM };
    });
    return { bench, cover, centres, ridges, offMm, bend: 1 / roundMm - 1 / RADIUS_MM };
  }

  test("a smaller round touches the cove at each setting: its centre stands R - r from the cove's", () => {
    const { centres, offMm } = crept();
    expect(centres.length).toBeGreaterThan(1);
    expect(centres.length).toBeLessThanOrEqual(MOST_SETTINGS_FOR_ARC);
    for (const c of centres) expect(Math.hypot(c.x - 24.7, c.y - 20)).toBeCloseTo(offMm, 4);
  });

  test("the ridges between are c²/8 · (1/r - 1/R) high, within half the tolerance and what the cover tells", () => {
    const { bench, cover, ridges, bend } = crept();
    for (const { exactMm, apartMm } of ridges) {
      expect(Math.abs(exactMm / ((apartMm ** 2 / 8) * bend) - 1)).toBeLessThan(0.06);
      expect(exactMm).toBeLessThanOrEqual(bench.toleranceMm / 2);
      expect(exactMm).toBeLessThanOrEqual((cover?.ridgeMm ?? 0) * 1.06);
    }
  });

  // Known: the cover tells the ridge of the widest spacing it may use, not of the one it did use.
  test("the cover tells the highest ridge that it leaves, no higher", () => {
    const { cover, ridges } = crept();
    const highest = Math.max(...ridges.map((ridge) => ridge.exactMm));
    expect(Math.abs((cover?.ridgeMm ?? 0) / highest - 1)).toBeLessThan(0.06);
  });

  test("an arc that would take more than five settings is not crept along", () => {
    // 90° of a 50 mm cove is 78.5 mm; ridges of 0.1 mm under a 12.7 mm round stand 3.7 mm apart: 21 settings.
    const wide = drawnSection(80, 60, [
      [0, 0],
      [80, 0],
      [80, 10],
      [60, 10, -BULGE_90],
      [10, 60],
      [0, 60],
    ]);
    const bench = benchOf(wide, shelfOf(round(RADIUS_MM)));
    const piece = bench.worked.find((worked) => worked.curve);
    expect(piece && curveCovers(bench, piece)).toEqual([]);
  });
});

describe("poses on an arc", () => {
  test("leaned 90° to the left on a bead the sole's middle lies level with the centre, to its left", () => {
    expect(poseOnArc({ x: 5, y: 7 }, 2, true, 90)).toEqual([3, 7, 90]);
  });

  test("upright in a cove the sole's middle lies a radius under the centre", () => {
    expect(poseOnArc({ x: 5, y: 7 }, 2, false, 0)).toEqual([5, 5, 0]);
  });

  test("a rock of a large radius is stepped by length, one of a small radius by degrees", () => {
    const large = rockRun((tilt) => poseOnArc({ x: 0, y: 0 }, 40, true, tilt), 0, 10, 40);
    // 10° of 40 mm is 6.98 mm, in steps of less than 0.2 mm at least 35.
    expect(large.length).toBeGreaterThanOrEqual(36);
    const small = rockRun((tilt) => poseOnArc({ x: 0, y: 0 }, 2, true, tilt), 0, 10, 2);
    expect(small).toHaveLength(11);
  });
});
