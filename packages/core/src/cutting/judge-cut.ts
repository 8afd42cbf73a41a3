/** One cut of a plan held against the rules of the cutting model and against what the plan says of it. */
import type { Region, Ring } from "../curve/index.ts";
import {
  AREA_AGREEMENT_MM2,
  BEARS_MM,
  cataloguedTrouble,
  OVERCUT_MM,
  POSE_ROUNDING,
  SEAT_AGREEMENT_MM,
  type Trouble,
  WALL_AGREEMENT_MM,
} from "../measure/index.ts";
import { type Plane, wallAllowanceMm } from "../shelf/index.ts";
import { bearingRatio } from "./bearing.ts";
import { guideIsThere, overhangMm } from "./guide.ts";
import { type CuttingLimits, POSES_APART } from "./limits.ts";
import { widestStep } from "./plan-faults.ts";
import { isFlatKind, isSoleOf } from "./plane-entry.ts";
import {
  belowBenchMm,
  benchLevelMm,
  bodyMeetsMm2,
  type CutShape,
  firstSeat,
  partedOffMm2,
  wallsOfCut,
} from "./simulate.ts";
import { leanDeg } from "./turning.ts";
import type { Plan, PlanCut } from "./types.ts";

/** A plane's cut with the wood before and after it. */
export interface MadeCut {
  readonly plan: Plan;
  readonly cut: PlanCut;
  readonly where: string;
  readonly plane: Plane;
  readonly shape: CutShape;
  readonly stick: Ring;
  readonly planned: Ring;
  /** The stick, then what every cut before this one left. */
  readonly woods: readonly Region[];
  readonly after: Region;
  readonly limits: CuttingLimits;
  readonly reachMm: number;
}

export interface Judgement {
  readonly findings: readonly Trouble[];
  readonly wallMm: readonly [number, number];
  readonly seatLiftMm: number | null;
}

export function judgeCut(made: MadeCut): Judgement {
  const { cut, where, plane, shape, after } = made;
  const before = made.woods[made.woods.length - 1] as Region;
  const wallMm = wallsOfCut(before, after, shape);
  const seat = isFlatKind(plane.kind) ? null : firstSeat(before, shape, made.limits);
  const findings = [
    ...soleFindings(made),
    ...poseFindings(made),
    ...wallFindings(made, wallMm),
    ...obstacleFindings(made),
    ...guideFindings(made),
  ];
  const parted = partedOffMm2(before, after);
  if (parted > made.limits.shavingMm2)
    findings.push(cataloguedTrouble("recut-loose", where, { cut: cut.number, areaMm2: parted }));
  if (cut.seat !== null) findings.push(...seatFindings(made, cut.seat.lift, seat?.lift ?? null));
  if (isCurved(plane) && (cut.purpose === "shape" || cut.purpose === "finish"))
    findings.push(...bearingFindings(made));
  return { findings, wallMm, seatLiftMm: seat?.lift ?? null };
}

function isCurved(plane: Plane): boolean {
  return plane.kind === "hollow" || plane.kind === "round";
}

function soleFindings({ cut, where, plane, shape }: MadeCut): Trouble[] {
  return isSoleOf(plane, shape.sole)
    ? []
    : [cataloguedTrouble("recut-sole-other", `${where}.sole`, { cut: cut.number, name: plane.name })];
}

function poseFindings({ cut, where, shape, limits }: MadeCut): Trouble[] {
  const findings: Trouble[] = [];
  const { apartMm, apartDeg } = widestStep(shape.runs);
  if (apartMm > POSES_APART.mm + POSE_ROUNDING || apartDeg > POSES_APART.deg + POSE_ROUNDING) {
    findings.push(
      cataloguedTrouble("recut-poses-apart", `${where}.runs`, {
        cut: cut.number,
        apartMm,
        apartDeg,
        mostMm: POSES_APART.mm,
        mostDeg: POSES_APART.deg,
      }),
    );
  }
  const steepest = leansOf(shape).reduce((a, b) => (Math.abs(b) > Math.abs(a) ? b : a), 0);
  if (Math.abs(steepest) > limits.leanDeg + POSE_ROUNDING) {
    findings.push(
      cataloguedTrouble("recut-lean", where, {
        cut: cut.number,
        leanDeg: steepest,
        limitDeg: limits.leanDeg,
      }),
    );
  }
  return findings;
}

function leansOf(shape: CutShape): number[] {
  return shape.runs.flatMap((run) => run.map((pose) => leanDeg(pose[2], shape.cantDeg)));
}

function wallFindings(made: MadeCut, wallMm: readonly [number, number]): Trouble[] {
  const { cut, where, plane, shape, limits } = made;
  const findings: Trouble[] = [];
  (["left", "right"] as const).forEach((side, i) => {
    const mm = wallMm[i];
    const saidMm = cut.wall[i];
    if (Math.abs(mm - saidMm) > WALL_AGREEMENT_MM) {
      findings.push(
        cataloguedTrouble("recut-wall-said", where, { cut: cut.number, side, saidMm, foundMm: mm }),
      );
    }
    const allowed = wallAllowanceMm(plane, side);
    if (allowed.kind === "up to" && mm > allowed.allowanceMm + OVERCUT_MM) {
      findings.push(
        cataloguedTrouble("recut-wall", where, {
          cut: cut.number,
          side,
          wallMm: mm,
          clearsMm: allowed.allowanceMm,
        }),
      );
    }
  });
  if (!isFlatKind(plane.kind)) return findings;
  const tallest = Math.max(...wallMm);
  const leaning = leansOf(shape).some((lean) => Math.abs(lean) >= limits.leaningFromDeg);
  if (leaning && tallest > limits.leaningFlatWallMm + OVERCUT_MM) {
    findings.push(
      cataloguedTrouble("recut-leaning-wall", where, {
        cut: cut.number,
        wallMm: tallest,
        limitMm: limits.leaningFlatWallMm,
      }),
    );
  }
  const slot = Math.min(...wallMm);
  if (slot > limits.slotMm + OVERCUT_MM) {
    findings.push(
      cataloguedTrouble("recut-slot", where, { cut: cut.number, depthMm: slot, limitMm: limits.slotMm }),
    );
  }
  return findings;
}

function obstacleFindings({ cut, where, shape, stick, after, reachMm }: MadeCut): Trouble[] {
  const findings: Trouble[] = [];
  const depthMm = belowBenchMm(shape, benchLevelMm(stick, cut.cant));
  if (depthMm > OVERCUT_MM)
    findings.push(cataloguedTrouble("recut-bench", where, { cut: cut.number, depthMm }));
  const areaMm2 = bodyMeetsMm2(after, shape, reachMm);
  if (areaMm2 > AREA_AGREEMENT_MM2)
    findings.push(cataloguedTrouble("recut-body", where, { cut: cut.number, areaMm2 }));
  return findings;
}

/** A flat plane, beak or wall-parer runs against something; whatever has a seat may run by it alone. */
function guideFindings(made: MadeCut): Trouble[] {
  const { cut, where, plane, shape, stick } = made;
  if (cut.runsAgainst === null) {
    const seated = cut.seat !== null && !isFlatKind(plane.kind);
    return seated ? [] : [cataloguedTrouble("recut-guide", where, { cut: cut.number })];
  }
  if (!guideIsThere(made)) {
    return [cataloguedTrouble("recut-guide-absent", where, { cut: cut.number, guide: cut.runsAgainst })];
  }
  const first = shape.runs[0]?.[0];
  const fenced = plane.kind === "plough" || plane.kind === "moving fillister";
  if (!fenced || cut.fence === undefined || first === undefined || overhangMm(shape, first, stick) > 0)
    return [];
  return cut.fence > plane.fenceMm + OVERCUT_MM
    ? [
        cataloguedTrouble("recut-fence", where, {
          cut: cut.number,
          reachMm: cut.fence,
          limitMm: plane.fenceMm,
        }),
      ]
    : [];
}

function seatFindings({ cut, where }: MadeCut, saidMm: number, foundMm: number | null): Trouble[] {
  if (foundMm === null) return [cataloguedTrouble("recut-seat", where, { cut: cut.number, liftMm: saidMm })];
  return Math.abs(foundMm - saidMm) > SEAT_AGREEMENT_MM
    ? [cataloguedTrouble("recut-seat-said", where, { cut: cut.number, saidMm, foundMm })]
    : [];
}

function bearingFindings({ cut, where, planned, shape, limits, plan }: MadeCut): Trouble[] {
  const bears = bearingRatio(planned, shape, Math.max(BEARS_MM, plan.tolerance / 2));
  if (bears >= limits.bearingRatio) return [];
  return [
    cataloguedTrouble("recut-bearing", where, {
      cut: cut.number,
      bearsPercent: Math.floor(100 * bears),
      leastPercent: Math.round(100 * limits.bearingRatio),
    }),
  ];
}
