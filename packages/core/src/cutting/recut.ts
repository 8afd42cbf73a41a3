/**
 * Proves a plan again from its file alone: every cut is made on the stick in order, and what the plan says of it is
 * held against what comes out.
 */
import {
  chainFromVertices,
  difference,
  EMPTY_REGION,
  type Region,
  type Ring,
  regionAreaMm2,
  regionOf,
  ringFromVertices,
} from "../curve/index.ts";
import {
  AREA_AGREEMENT_MM2,
  cataloguedTrouble,
  FINISH_AGREEMENT_MM,
  FLATTEN_MM,
  OVERCUT_MM,
  type Trouble,
} from "../measure/index.ts";
import type { Plane } from "../shelf/index.ts";
import { curveBook } from "./curve-book.ts";
import { deepestFrom } from "./depth.ts";
import { faceFigures, withoutFallen } from "./face.ts";
import { judgeCut } from "./judge-cut.ts";
import { COMMON_LIMITS, type CuttingLimits } from "./limits.ts";
import { overcutOf } from "./overcut.ts";
import { cutFaults, namingFaults, outlinesFaults, ringFaults } from "./plan-faults.ts";
import { planeOfEntry } from "./plane-entry.ts";
import { type CutShape, cutAway, cutShape, sawnAway } from "./simulate.ts";
import { type SweepOptions, sweepReachMm } from "./sweep.ts";
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
  /** The cuts that could be made; one without a movement is left out. */
  readonly cuts: readonly RecutCut[];
  /** What the last cut leaves; nothing if the outlines themselves are unusable. */
  readonly left: Region;
}

/**
 * Makes every cut of a plan again and reports each place where the plan does not hold; README.md lists what is held.
 *
 * For any plan that `readPlan` gives, and any of the same form made by a program: odd geometry (an outline that crosses
 * itself, a run without poses, a sole without length) gives findings, never a throw. A cut that cannot be made is taken
 * by what the plan says it leaves, so that the cuts after it are judged by themselves.
 */
export function recutPlan(plan: Plan, limits: CuttingLimits = COMMON_LIMITS): RecutReport {
  const unusable = outlinesFaults(plan);
  if (unusable.length > 0) return { holds: false, findings: unusable, cuts: [], left: EMPTY_REGION };
  const proof = layOut(plan, limits);
  const findings: Trouble[] = [...namingFaults(plan), ...plannedFindings(proof)];
  const cuts: RecutCut[] = [];
  const woods: Region[] = [proof.stickRegion];
  plan.cuts.forEach((cut, i) => {
    const made = cutAgain(proof, woods, cut, `cuts[${i}]`);
    findings.push(...made.findings);
    if (made.cut) cuts.push(made.cut);
    woods.push(made.left);
  });
  const left = woods[woods.length - 1] as Region;
  findings.push(...faceFindings(proof, left));
  return { holds: findings.length === 0, findings, cuts, left };
}

/** What stays the same from cut to cut. */
interface Proof {
  readonly plan: Plan;
  readonly limits: CuttingLimits;
  readonly stick: Ring;
  readonly stickRegion: Region;
  readonly drawn: Ring;
  readonly planned: Ring;
  readonly plannedRegion: Region;
  readonly sweepOptions: SweepOptions;
}

function layOut(plan: Plan, limits: CuttingLimits): Proof {
  const stick = ringFromVertices(plan.stick);
  const planned = ringFromVertices(plan.planned);
  return {
    plan,
    limits,
    stick,
    stickRegion: regionOf(stick, FLATTEN_MM),
    drawn: ringFromVertices(plan.section),
    planned,
    plannedRegion: regionOf(planned, FLATTEN_MM),
    sweepOptions: { reachMm: reachOf(plan, stick), chordTolMm: FLATTEN_MM, book: curveBook() },
  };
}

/** How far strips and saw lines must reach to pass through the stick from wherever the plan puts them, mm. */
function reachOf(plan: Plan, stick: Ring): number {
  const poses = plan.cuts.flatMap((cut) => (cut.runs ?? []).flat());
  const ends = plan.cuts.flatMap((cut) => [...(cut.line ?? []), ...(cut.sole ?? [])]);
  let farthestMm = 0;
  for (const [x, y] of [...poses, ...ends]) {
    // A number that is none is refused cut by cut.
    if (Number.isFinite(x) && Number.isFinite(y)) farthestMm = Math.max(farthestMm, Math.hypot(x, y));
  }
  return sweepReachMm(stick) + 2 * farthestMm;
}

/** The planned face lies in the stick, and within the tolerance of the drawing, on either side of it. */
function plannedFindings({ plan, stickRegion, drawn, planned, plannedRegion }: Proof): Trouble[] {
  const findings: Trouble[] = [];
  const areaMm2 = regionAreaMm2(difference(plannedRegion, stickRegion));
  if (areaMm2 > AREA_AGREEMENT_MM2)
    findings.push(cataloguedTrouble("plan-outside-stick", "planned", { areaMm2 }));
  const mostMm = plan.tolerance + OVERCUT_MM;
  const there = deepestFrom(drawn, plannedRegion, mostMm);
  const back = deepestFrom(planned, regionOf(drawn, FLATTEN_MM), mostMm);
  const { depthMm, at } = there.depthMm > back.depthMm ? there : back;
  if (depthMm > mostMm && at) {
    const facts = { apartMm: depthMm, toleranceMm: plan.tolerance, xMm: at.x, yMm: at.y };
    findings.push(cataloguedTrouble("recut-planned-off", "planned", facts));
  }
  return findings;
}

interface CutAgain {
  readonly findings: readonly Trouble[];
  /** Null where the cut cannot be made. */
  readonly cut: RecutCut | null;
  readonly left: Region;
}

function cutAgain(proof: Proof, woods: readonly Region[], cut: PlanCut, where: string): CutAgain {
  const before = woods[woods.length - 1] as Region;
  const pictureFaults = cut.after.flatMap((ring, i) => ringFaults(ring, `${where}.after[${i}]`));
  const picture = pictureFaults.length > 0 ? null : regionOf(cut.after.map(ringFromVertices), FLATTEN_MM);
  const faults = cutFaults(cut, where);
  if (faults.length > 0) {
    return { findings: [...faults, ...pictureFaults], cut: null, left: picture ?? before };
  }
  const plane = planeOfEntry(cut.plane);
  const shape = shapeOf(proof, cut, plane);
  const after = cutAway(before, shape ? shape.sweep : sawn(proof, cut));
  const takesMm2 = regionAreaMm2(before) - regionAreaMm2(after);
  const overcut = overcutOf(proof.planned, proof.plannedRegion, after);
  const findings = [...pictureFaults, ...areaFindings(cut, takesMm2, picture, after, where)];
  if (overcut.depthMm > OVERCUT_MM && overcut.at) {
    const facts = { cut: cut.number, depthMm: overcut.depthMm, xMm: overcut.at.x, yMm: overcut.at.y };
    findings.push(cataloguedTrouble("recut-overcut", where, facts));
  }
  const figures = { number: cut.number, takesMm2, saidMm2: cut.takes, overcutMm: overcut.depthMm };
  if (!shape || !plane) {
    const facts = { cut: cut.number, kind: cut.plane.kind };
    if (shape) findings.push(cataloguedTrouble("recut-plane-unknown", `${where}.plane`, facts));
    return { findings, cut: { ...figures, wallMm: [0, 0], seatLiftMm: null }, left: after };
  }
  const { plan, stick, planned, limits } = proof;
  const { reachMm } = proof.sweepOptions;
  const judged = judgeCut({ plan, cut, where, plane, shape, stick, planned, woods, after, limits, reachMm });
  return {
    findings: [...findings, ...judged.findings],
    cut: { ...figures, wallMm: judged.wallMm, seatLiftMm: judged.seatLiftMm },
    left: after,
  };
}

/** Null for a saw. */
function shapeOf(proof: Proof, cut: PlanCut, plane: Plane | null): CutShape | null {
  if (!cut.sole || !cut.runs) return null;
  const shoulder = plane?.kind === "hollow" || plane?.kind === "round" ? plane.shoulder : undefined;
  return cutShape(chainFromVertices(cut.sole), cut.runs, cut.cant, proof.sweepOptions, shoulder);
}

function sawn(proof: Proof, cut: PlanCut): Region {
  if (!cut.line) return EMPTY_REGION;
  const [[ax, ay], [bx, by]] = cut.line;
  return sawnAway({ x: ax, y: ay }, { x: bx, y: by }, proof.sweepOptions.reachMm);
}

/** `picture` is the wood that the plan draws after the cut, null where it cannot be drawn. */
function areaFindings(
  cut: PlanCut,
  foundMm2: number,
  picture: Region | null,
  after: Region,
  where: string,
): Trouble[] {
  const findings: Trouble[] = [];
  if (!(Math.abs(foundMm2 - cut.takes) <= AREA_AGREEMENT_MM2)) {
    const facts = { cut: cut.number, saidMm2: cut.takes, foundMm2 };
    findings.push(cataloguedTrouble("recut-takes", where, facts));
  }
  if (picture === null) return findings;
  // Crumbs that are parted off are swept away before the picture is drawn.
  const [drawn, left] = [withoutFallen(picture), withoutFallen(after)];
  const areaMm2 = regionAreaMm2(difference(drawn, left)) + regionAreaMm2(difference(left, drawn));
  if (areaMm2 > AREA_AGREEMENT_MM2)
    findings.push(cataloguedTrouble("recut-after", where, { cut: cut.number, areaMm2 }));
  return findings;
}

function faceFindings({ plan, drawn, planned }: Proof, left: Region): Trouble[] {
  const { finish, tolerance, uncut } = plan;
  const face = faceFigures({ drawn, planned, left, toleranceMm: tolerance, uncut });
  const findings: Trouble[] = [];
  for (const side of ["proud", "under"] as const) {
    const saidMm = finish[side];
    const foundMm = side === "proud" ? face.proudMm : face.underMm;
    // Where wood is left unlisted, its feet stand within the tolerance too, and that it is left is said already; where
    // it is listed, they may have been counted in or out.
    const isUnsure =
      side === "proud" && (face.unlisted.at !== null || (uncut.length > 0 && foundMm < saidMm));
    if (!isUnsure && !(Math.abs(foundMm - saidMm) <= FINISH_AGREEMENT_MM))
      findings.push(cataloguedTrouble("recut-finish", `finish.${side}`, { side, saidMm, foundMm }));
  }
  if (face.underMm > tolerance + OVERCUT_MM) {
    const facts = { depthMm: face.underMm, toleranceMm: tolerance };
    findings.push(cataloguedTrouble("recut-under", "finish.under", facts));
  }
  const { depthMm, at } = face.unlisted;
  if (at)
    findings.push(cataloguedTrouble("recut-unlisted", "uncut", { leftMm: depthMm, xMm: at.x, yMm: at.y }));
  for (const place of face.notStanding) {
    const [xMm, yMm] = place.from;
    const where = `uncut[${uncut.indexOf(place)}]`;
    findings.push(cataloguedTrouble("recut-uncut-said", where, { leftMm: place.left, xMm, yMm }));
  }
  return findings;
}
