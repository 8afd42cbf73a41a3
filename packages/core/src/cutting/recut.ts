/**
 * Proves a plan again from its file alone: every cut is made on the stick in order, and what the plan says of it is
 * held against what comes out.
 */
import {
  type Chain,
  chainFromVertices,
  difference,
  nearestOnRing,
  type Region,
  type Ring,
  regionAreaMm2,
  regionOf,
  ringFromVertices,
  type Vertex,
} from "../curve/index.ts";
import {
  AREA_AGREEMENT_MM2,
  BEARS_MM,
  FLATTEN_MM,
  OVERCUT_MM,
  type Trouble,
  trouble,
  WALL_AGREEMENT_MM,
} from "../measure/index.ts";
import { type Plane, type Shoulder, wallAllowanceMm } from "../shelf/index.ts";
import { bearingRatio } from "./bearing.ts";
import { curveBook } from "./curve-book.ts";
import { COMMON_LIMITS, type CuttingLimits } from "./limits.ts";
import { overcutOf } from "./overcut.ts";
import { isFlatKind, planeOfEntry } from "./plane-entry.ts";
import {
  belowBenchMm,
  benchLevelMm,
  bodyMeetsMm2,
  type CutShape,
  cutShape,
  firstSeat,
  looseWoodMm2,
  sawnAway,
  wallsOfCut,
} from "./simulate.ts";
import { sweepReachMm } from "./sweep.ts";
import type { Plan, PlanCut } from "./types.ts";

export interface RecutCut {
  readonly number: number;
  readonly takesMm2: number;
  readonly saidMm2: number;
  readonly wallMm: readonly [number, number];
  readonly seatLiftMm: number | null;
  readonly overcutMm: number;
}

export interface RecutReport {
  /** True when the plan holds: no finding at all. */
  readonly holds: boolean;
  readonly findings: readonly Trouble[];
  readonly cuts: readonly RecutCut[];
  /** What the last cut leaves. */
  readonly left: Region;
}

/** Makes every cut of a plan again and reports each place where the plan does not hold. */
export function recutPlan(plan: Plan, limits: CuttingLimits = COMMON_LIMITS): RecutReport {
  const findings: Trouble[] = [];
  const cuts: RecutCut[] = [];
  const stick = ringFromVertices(plan.stick);
  const planned = ringFromVertices(plan.planned);
  const plannedRegion = regionOf(planned, FLATTEN_MM);
  const reachMm = sweepReachMm(stick);
  const book = curveBook();
  let wood = regionOf(stick, FLATTEN_MM);
  const outside = regionAreaMm2(difference(plannedRegion, wood));
  if (outside > AREA_AGREEMENT_MM2)
    findings.push(trouble("plan-outside-stick", "planned", { areaMm2: outside }));

  for (const cut of plan.cuts) {
    const where = `cuts[${cut.number - 1}]`;
    const before = wood;
    const shape = cut.runs && cut.sole ? shapeOf(cut) : null;
    const sweep = shape ? shape.sweep : sawSweep(cut);
    const after = difference(before, sweep);
    const takesMm2 = regionAreaMm2(before) - regionAreaMm2(after);
    compareAreas(cut, takesMm2, after, where);
    const overcut = overcutOf(planned, plannedRegion, after);
    if (overcut.depthMm > OVERCUT_MM && overcut.at) {
      findings.push(
        trouble("recut-overcut", where, {
          cut: cut.number,
          depthMm: overcut.depthMm,
          xMm: overcut.at.x,
          yMm: overcut.at.y,
        }),
      );
    }
    const judged = shape
      ? judge(cut, shape, before, after, where)
      : { wallMm: [0, 0] as const, seatLiftMm: null };
    cuts.push({ number: cut.number, takesMm2, saidMm2: cut.takes, overcutMm: overcut.depthMm, ...judged });
    wood = after;
  }
  uncutPlaces(plan, planned, plannedRegion, wood, findings);
  return { holds: findings.length === 0, findings, cuts, left: wood };

  function shapeOf(cut: PlanCut): CutShape {
    const sole: Chain = chainFromVertices(cut.sole as readonly Vertex[]);
    return cutShape(
      sole,
      cut.runs as NonNullable<PlanCut["runs"]>,
      cut.cant,
      { reachMm, chordTolMm: FLATTEN_MM, book },
      cut.plane.shoulder ? shoulderOf(cut.plane.shoulder) : undefined,
    );
  }

  function sawSweep(cut: PlanCut): Region {
    if (!cut.line) return [];
    const [[ax, ay], [bx, by]] = cut.line;
    return sawnAway({ x: ax, y: ay }, { x: bx, y: by }, reachMm);
  }

  function compareAreas(cut: PlanCut, takesMm2: number, after: Region, where: string): void {
    if (Math.abs(takesMm2 - cut.takes) > AREA_AGREEMENT_MM2) {
      findings.push(
        trouble("recut-takes", where, { cut: cut.number, saidMm2: cut.takes, foundMm2: takesMm2 }),
      );
    }
    const said = regionOf(
      cut.after.map((ring) => ringFromVertices(ring)),
      FLATTEN_MM,
    );
    const apart = regionAreaMm2(difference(said, after)) + regionAreaMm2(difference(after, said));
    if (apart > AREA_AGREEMENT_MM2) {
      findings.push(trouble("recut-after", where, { cut: cut.number, areaMm2: apart }));
    }
  }

  function judge(
    cut: PlanCut,
    shape: CutShape,
    before: Region,
    after: Region,
    where: string,
  ): { wallMm: readonly [number, number]; seatLiftMm: number | null } {
    const plane = planeOfEntry(cut.plane, shape.sole);
    const wallMm = wallsOfCut(before, after, shape);
    checkWalls(cut, plane, wallMm, where);
    const level = benchLevelMm(stick, cut.cant);
    const below = belowBenchMm(shape, level);
    if (below > OVERCUT_MM) findings.push(trouble("recut-bench", where, { cut: cut.number, depthMm: below }));
    const body = bodyMeetsMm2(after, shape, reachMm);
    if (body > AREA_AGREEMENT_MM2) {
      findings.push(trouble("recut-body", where, { cut: cut.number, areaMm2: body }));
    }
    for (const run of shape.runs)
      for (const pose of run) {
        const lean = leanDeg(pose[2], cut.cant);
        if (Math.abs(lean) > limits.leanDeg + 0.01) {
          findings.push(
            trouble("recut-lean", where, { cut: cut.number, leanDeg: lean, limitDeg: limits.leanDeg }),
          );
          return { wallMm, seatLiftMm: null };
        }
      }
    const loose = looseWoodMm2(after) - looseWoodMm2(before);
    if (loose > limits.shavingMm2)
      findings.push(trouble("recut-loose", where, { cut: cut.number, areaMm2: loose }));
    if (plane.kind !== "hollow" && plane.kind !== "round") {
      if (cut.seat === null && cut.runsAgainst === null) {
        findings.push(trouble("recut-guide", where, { cut: cut.number }));
      }
      return { wallMm, seatLiftMm: null };
    }
    const bears = bearingRatio(planned, shape, Math.max(BEARS_MM, plan.tolerance / 2));
    if (cut.purpose === "shape" && bears < limits.bearingRatio) {
      findings.push(trouble("recut-bearing", where, { cut: cut.number, bearsRatio: bears }));
    }
    const seat = firstSeat(before, shape, limits);
    if (cut.seat && !seat)
      findings.push(trouble("recut-seat", where, { cut: cut.number, liftMm: cut.seat.lift }));
    if (!cut.seat && cut.runsAgainst === null)
      findings.push(trouble("recut-guide", where, { cut: cut.number }));
    return { wallMm, seatLiftMm: seat ? seat.lift : null };
  }

  function checkWalls(cut: PlanCut, plane: Plane, wallMm: readonly [number, number], where: string): void {
    for (const side of ["left", "right"] as const) {
      const mm = wallMm[side === "left" ? 0 : 1];
      const said = cut.wall[side === "left" ? 0 : 1];
      if (Math.abs(mm - said) > WALL_AGREEMENT_MM) {
        findings.push(
          trouble("recut-wall-said", where, { cut: cut.number, side, saidMm: said, foundMm: mm }),
        );
      }
      const allowed = wallAllowanceMm(plane, side);
      if (allowed.kind === "up to" && mm > allowed.allowanceMm + OVERCUT_MM) {
        findings.push(
          trouble("recut-wall", where, { cut: cut.number, side, wallMm: mm, clearsMm: allowed.allowanceMm }),
        );
      }
    }
    if (!isFlatKind(plane.kind)) return;
    const leaning = Math.max(...shapeLeans(cut).map(Math.abs)) >= limits.leaningFromDeg;
    if (leaning && Math.max(...wallMm) > limits.leaningFlatWallMm + OVERCUT_MM) {
      findings.push(
        trouble("recut-leaning-wall", where, {
          cut: cut.number,
          wallMm: Math.max(...wallMm),
          limitMm: limits.leaningFlatWallMm,
        }),
      );
    }
    if (Math.min(...wallMm) > limits.slotMm + OVERCUT_MM) {
      findings.push(
        trouble("recut-slot", where, {
          cut: cut.number,
          depthMm: Math.min(...wallMm),
          limitMm: limits.slotMm,
        }),
      );
    }
  }
}

/** How a plane is held: its tilt in the stick's frame plus how the stick is turned, in (-180, 180]. */
export function leanDeg(tiltDeg: number, cantDeg: number): number {
  let lean = (tiltDeg + cantDeg) % 360;
  if (lean > 180) lean -= 360;
  if (lean <= -180) lean += 360;
  return lean === 0 ? 0 : lean;
}

function shapeLeans(cut: PlanCut): number[] {
  return (cut.runs ?? []).flatMap((run) => run.map((pose) => leanDeg(pose[2], cut.cant)));
}

function shoulderOf(entry: unknown): Shoulder | undefined {
  const read = entry as { width?: unknown; height?: unknown };
  return typeof read.width === "number" && typeof read.height === "number"
    ? { widthMm: read.width, heightMm: read.height }
    : undefined;
}

/** Whatever stands proud by more than the tolerance must be listed as uncut. */
function uncutPlaces(
  plan: Plan,
  planned: Ring,
  plannedRegion: Region,
  left: Region,
  findings: Trouble[],
): void {
  for (const part of difference(left, plannedRegion)) {
    let proud = 0;
    let atX = 0;
    let atY = 0;
    for (let i = 0; i < part.xs.length; i++) {
      const d = nearestOnRing(planned, { x: part.xs[i], y: part.ys[i] }).distanceMm;
      if (d > proud) {
        proud = d;
        atX = part.xs[i];
        atY = part.ys[i];
      }
    }
    if (proud <= plan.tolerance + OVERCUT_MM) continue;
    const box = extentsOfFlat(part.xs, part.ys);
    const listed = plan.uncut.some((place) => {
      const [ax, ay] = place.from;
      const [bx, by] = place.to;
      const slack = place.left + plan.tolerance;
      return (
        Math.max(ax, bx) + slack >= box.minX &&
        Math.min(ax, bx) - slack <= box.maxX &&
        Math.max(ay, by) + slack >= box.minY &&
        Math.min(ay, by) - slack <= box.maxY
      );
    });
    if (!listed) findings.push(trouble("recut-unlisted", "uncut", { leftMm: proud, xMm: atX, yMm: atY }));
  }
}

function extentsOfFlat(xs: Float64Array, ys: Float64Array) {
  return {
    minX: Math.min(...xs),
    maxX: Math.max(...xs),
    minY: Math.min(...ys),
    maxY: Math.max(...ys),
  };
}
