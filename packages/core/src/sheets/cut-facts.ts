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

/** "upright", or "upright to 8° left" where the plane is rocked; of a saw the lean of its blade, to ¼° as scales have it. */
export function leanSpan(cut: PlanCut): string {
  if (cut.line !== undefined) {
    const leanDeg = sawLeanDeg(cut);
    const side = leanDeg > 0 ? "left" : "right";
    return Math.abs(leanDeg) < UPRIGHT_BELOW_DEG
      ? "blade upright"
      : `blade ${formatDeg(Math.abs(leanDeg), { stepDeg: 0.25 })} ${side}`;
  }
  const leans = stationsOf(cut).map((pose) => shortLean(leanInHandDeg(cut, pose[2])));
  return [...new Set(leans)].join(" to ");
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
    ...(isAslant(cut) ? { work: "chamfer" as const } : {}),
  };
  return cutTitle(facts);
}

/** A flat plane whose floor lies aslant in the stick makes a chamfer, however the stick is canted for it. */
function isAslant(cut: PlanCut): boolean {
  const stations = stationsOf(cut);
  const tiltDeg = stations[stations.length - 1]?.[2] ?? 0;
  const fromSquareDeg = Math.abs(tiltDeg - 90 * Math.round(tiltDeg / 90));
  return (
    ["rebate", "moving fillister", "smoother"].includes(cut.plane.kind) && fromSquareDeg > UPRIGHT_BELOW_DEG
  );
}
