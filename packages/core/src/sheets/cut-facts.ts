/** What a picture or a card says about a cut, read from the plan. */
import type { PlanCut } from "../cutting/index.ts";
import { formatDeg, normaliseDeg, toDeg } from "../measure/index.ts";
import { type BenchUnit, type CutFacts, cutTitle } from "../planning/index.ts";
import { stationsOf } from "./plane-lines.ts";
import { printable } from "./printable-text.ts";

const UPRIGHT_BELOW_DEG = 0.5;

/** The name its owner gave the plane, or its kind. */
export function planeName(cut: PlanCut): string {
  return printable(cut.plane.name ?? cut.plane.kind).trim();
}

/** The plane's lean in the hand at a tilt, degrees, positive to the left; 0 upright. */
export function leanInHandDeg(cut: PlanCut, tiltDeg: number): number {
  return normaliseDeg(tiltDeg + cut.cant);
}

/** "upright", "8° left": degrees to 1, as a hand holds them. */
export function shortLean(leanDeg: number): string {
  if (Math.abs(leanDeg) < UPRIGHT_BELOW_DEG) return "upright";
  return `${Math.round(Math.abs(leanDeg))}° ${leanDeg > 0 ? "left" : "right"}`;
}

/**
 * How the plane is held from the first stroke on, in few words: "upright", "begun 60° right, raised to 30°", "begun upright,
 * rocked 12° right and 20° left", "first 29° right, last 6°". Of a saw the lean of its blade, to ¼° as scales have it.
 */
export function leanSpan(cut: PlanCut): string {
  if (cut.line !== undefined) {
    const leanDeg = sawLeanDeg(cut);
    const side = leanDeg > 0 ? "left" : "right";
    return Math.abs(leanDeg) < UPRIGHT_BELOW_DEG
      ? "blade upright"
      : `blade ${formatDeg(Math.abs(leanDeg), { stepDeg: 0.25 })} ${side}`;
  }
  const begun = cut.runs?.[0]?.[0];
  if (begun === undefined) return "upright";
  const leans = (cut.runs ?? []).flat().map((pose) => leanInHandDeg(cut, pose[2]));
  if (isInSettings(cut)) return settingsSpan(leans);
  const begunDeg = leanInHandDeg(cut, begun[2]);
  const rightDeg = Math.min(...leans);
  const leftDeg = Math.max(...leans);
  const goesRight = begunDeg - rightDeg >= ONE_LEAN_DEG;
  const goesLeft = leftDeg - begunDeg >= ONE_LEAN_DEG;
  if (!goesRight && !goesLeft) return shortLean(begunDeg);
  const from = `begun ${shortLean(begunDeg)}`;
  if (goesRight && goesLeft) {
    const both = sameSideAs(rightDeg, leftDeg)
      ? `${wholeDegrees(rightDeg)} and ${shortLean(leftDeg)}`
      : `${shortLean(rightDeg)} and ${shortLean(leftDeg)}`;
    return `${from}, rocked ${both}`;
  }
  return `${from}, ${rockedTo(begunDeg, goesRight ? rightDeg : leftDeg)}`;
}

/** A plane that turns by less than this keeps its lean in any hand, degrees. */
const ONE_LEAN_DEG = 2;

/** Where a rock goes from the lean it is begun in: up towards upright, over away from it, or across to the other side. */
function rockedTo(fromDeg: number, toDeg: number): string {
  if (Math.abs(toDeg) < UPRIGHT_BELOW_DEG) return "raised upright";
  if (Math.abs(fromDeg) < UPRIGHT_BELOW_DEG) return `laid over to ${shortLean(toDeg)}`;
  if (!sameSideAs(fromDeg, toDeg)) return `rocked over to ${shortLean(toDeg)}`;
  return Math.abs(toDeg) < Math.abs(fromDeg)
    ? `raised to ${wholeDegrees(toDeg)}`
    : `laid over to ${wholeDegrees(toDeg)}`;
}

function settingsSpan(leansDeg: readonly number[]): string {
  const [first = 0] = leansDeg;
  const last = leansDeg[leansDeg.length - 1] ?? first;
  if (leansDeg.every((lean) => Math.abs(lean - first) < ONE_LEAN_DEG)) return shortLean(first);
  const said = sameSideAs(first, last) ? wholeDegrees(last) : shortLean(last);
  return `first ${shortLean(first)}, last ${said}`;
}

/** Whether the plane is set anew for each of its runs, instead of being rocked through them. */
function isInSettings({ runs = [] }: PlanCut): boolean {
  return runs.length > 1 && runs.every((run) => run.length === 1);
}

function sameSideAs(oneDeg: number, otherDeg: number): boolean {
  const isUpright = Math.min(Math.abs(oneDeg), Math.abs(otherDeg)) < UPRIGHT_BELOW_DEG;
  return !isUpright && Math.sign(oneDeg) === Math.sign(otherDeg);
}

function wholeDegrees(leanDeg: number): string {
  return `${Math.round(Math.abs(leanDeg))}°`;
}

function sawLeanDeg(cut: PlanCut): number {
  const [a, b] = cut.line ?? [
    [0, 0],
    [0, 1],
  ];
  const lineDeg = toDeg(Math.atan2(-(b[0] - a[0]), b[1] - a[1]));
  const onBench = normaliseDeg(lineDeg + cut.cant);
  // A line has no direction of its own: of the two leans the one within a quarter turn of upright is meant.
  return Math.abs(onBench) > 90 ? normaliseDeg(onBench + 180) : onBench;
}

export function titleOf(cut: PlanCut, unit: BenchUnit): string {
  const stations = stationsOf(cut);
  const first = stations[0];
  const last = stations[stations.length - 1];
  const fromDeg = first === undefined ? 0 : leanInHandDeg(cut, first[2]);
  const toDeg =
    cut.line !== undefined ? sawLeanDeg(cut) : last === undefined ? 0 : leanInHandDeg(cut, last[2]);
  const facts: CutFacts = {
    purpose: cut.purpose,
    planeName: planeName(cut),
    kind: cut.plane.kind,
    leanDeg: toDeg,
    cantDeg: cut.cant,
    rocked:
      Math.abs(toDeg - fromDeg) < UPRIGHT_BELOW_DEG || cut.line !== undefined ? null : { fromDeg, toDeg },
    seatOn: null,
    runsAgainst: cut.runsAgainst,
    fenceMm: cut.fence ?? null,
    line: null,
    depthMm: null,
    passes: cut.passes,
    shavingMm: cut.shaving,
    unit,
    placesCount: cut.runs?.length ?? 1,
    leavesWall: Math.max(...cut.wall) >= LEAST_TOLD_WALL_MM,
    ...workSaid(cut),
  };
  return cutTitle(facts);
}

/** A lower wall than this is none to the hand, mm. */
const LEAST_TOLD_WALL_MM = 0.05;

/** What is done, where plane and lean alone would say something else. */
function workSaid(cut: PlanCut): Pick<CutFacts, "work"> {
  const leans = (cut.runs ?? []).flat().map((pose) => leanInHandDeg(cut, pose[2]));
  const isSetAnew = isInSettings(cut) && Math.max(...leans) - Math.min(...leans) >= ONE_LEAN_DEG;
  if (isSetAnew && FLAT_KINDS.includes(cut.plane.kind)) return { work: "facets" };
  if (isSetAnew && CURVED_KINDS.includes(cut.plane.kind)) return { work: "ridges" };
  return isAslant(cut) ? { work: "chamfer" } : {};
}

const CURVED_KINDS = ["hollow", "round"];
const FLAT_KINDS = ["rebate", "moving fillister", "smoother"];

/** A flat plane whose floor lies aslant in the stick makes a chamfer, however the stick is canted for it. */
function isAslant(cut: PlanCut): boolean {
  const stations = stationsOf(cut);
  const tiltDeg = stations[stations.length - 1]?.[2] ?? 0;
  const fromSquareDeg = Math.abs(tiltDeg - 90 * Math.round(tiltDeg / 90));
  return FLAT_KINDS.includes(cut.plane.kind) && fromSquareDeg > UPRIGHT_BELOW_DEG;
}
