/** Tries a draft on the wood as it stands: what it would take and leave, what holds it, and what forbids it. */
import type { Region } from "../curve/index.ts";
import {
  belowBenchMm,
  benchLevelMm,
  bodyMeetsMm2,
  cutAway,
  hangingByThreadMm2,
  isFlatKind,
  leanDeg,
  partedOffMm2,
  type Run,
  wallsOfCut,
} from "../cutting/index.ts";
import { AREA_AGREEMENT_MM2, countWork, OVERCUT_MM } from "../measure/index.ts";
import { wallAllowanceMm } from "../shelf/index.ts";
import type { Bench } from "./bench.ts";
import {
  areaOf,
  type Draft,
  firstLeanDeg,
  isCurved,
  type PlaneDraft,
  sweepOfDraft,
  withRuns,
} from "./draft-cut.ts";
import { finOfCut } from "./fins.ts";
import { type Guide, guidedRuns } from "./guide.ts";
import { linesOf } from "./line-places.ts";
import { runningLine } from "./running-line.ts";
import { sameWood } from "./same-wood.ts";
import { seatedRuns } from "./seated.ts";
import { hangsClear } from "./seen.ts";
import { keepSlots, runIntoOlder, slotsIn, slotsOfCut } from "./slots.ts";
import type { Refusal, TriedCut } from "./tried-cut.ts";

export type { Refusal, TriedCut };

/** A cut that takes less is not made, mm². */
export const LEAST_TAKE_MM2 = 0.02;

/** Neither runs into a groove nor leaves a fin. */
const CLEAN = { intoGroove: false, fin: null } as const;

/** Whether no hand would make the cut so, though no rule forbids it: it runs into an older groove, or leaves a fin. */
export function isClumsy({ intoGroove, fin }: TriedCut): boolean {
  return intoGroove || fin !== null;
}

/** How much nearer than the limits of the cutting model the planner keeps, mm: other routes measure a shade differently. */
const WALL_MARGIN_MM = 0.02;

const TRIED = new WeakMap<Region, Map<Draft, TriedCut>>();

/** The cut made on this wood; the same draft on the same wood is made once. */
export function tryCut(bench: Bench, before: Region, draft: Draft): TriedCut {
  const known = TRIED.get(before) ?? new Map<Draft, TriedCut>();
  TRIED.set(before, known);
  const tried = known.get(draft) ?? made(bench, before, draft);
  known.set(draft, tried);
  return tried;
}

/** What a cut tried counts for beside what is counted elsewhere, and each vertex of the wood before it (`countWork`). */
const WORK_OF_TRY = 200;
const WORK_OF_VERTEX = 2;

function made(bench: Bench, before: Region, draft: Draft): TriedCut {
  if (draft.kind === "plane" && meetsNothing(before, draft)) return idle(draft, before);
  for (const ring of before) countWork(WORK_OF_VERTEX * ring.xs.length);
  countWork(WORK_OF_TRY);
  const cutOff = cutAway(before, sweepOfDraft(draft));
  const takesMm2 = areaOf(before) - areaOf(cutOff);
  if (draft.kind === "saw") {
    keepSlots(before, cutOff, []);
    const after = sameWood(bench, cutOff);
    return {
      draft,
      before,
      after,
      takesMm2,
      wallMm: [0, 0],
      seat: null,
      guide: null,
      refusals: [],
      ...CLEAN,
    };
  }
  const grooves = slotsOfCut(before, cutOff, draft);
  const intoGroove = grooves.length > 0 && runIntoOlder(grooves, slotsIn(before));
  keepSlots(before, cutOff, grooves);
  const after = sameWood(bench, cutOff);
  const fin = finOfCut(bench, before, after, draft);
  const wallMm = wallsOfCut(before, after, draft.cut);
  const refusals = [
    ...wallRefusals(bench, draft, wallMm),
    ...obstacleRefusals(bench, draft, after),
    ...looseRefusals(bench, before, after),
  ];
  const curved = isCurved(draft);
  const seated = curved ? seatedRuns(bench, before, draft) : null;
  const guided = curved ? null : guidedRuns(bench, before, draft);
  const guide: Guide | null = guided ? guided.guide : seated ? null : { kind: "batten" };
  const final = seated ? seated.draft : guided ? workedInOrder(bench, draft, guided.runs) : draft;
  const cut: TriedCut = {
    draft: final,
    before,
    after,
    takesMm2,
    wallMm,
    seat: seated?.seat ?? null,
    guide,
    refusals,
    intoGroove,
    fin,
  };
  return guide?.kind === "lines" && !hasItsLine(bench, cut, final)
    ? { ...cut, guide: { kind: "batten" } }
    : cut;
}

/** Whether one of the lines that are scribed for a cut lies where its plane can be run along it. */
function hasItsLine(bench: Bench, cut: TriedCut, draft: PlaneDraft): boolean {
  if (draft.onLine || draft.tool.plane.kind === "snipe bill") return true;
  const lines = linesOf(bench, cut, []).map(({ at }) => at);
  return runningLine(draft, lines) >= 0;
}

/** The same cut with its settings in another order; what it takes is the same. */
function workedInOrder(bench: Bench, draft: PlaneDraft, runs: readonly Run[]): PlaneDraft {
  return runs === draft.runs ? draft : withRuns(bench, draft, runs);
}

/** Whether a cut of single poses hangs clear of the wood. */
function meetsNothing(before: Region, draft: PlaneDraft): boolean {
  return draft.runs.every((run) => run.length === 1 && hangsClear(before, draft, run[0]));
}

function idle(draft: Draft, before: Region): TriedCut {
  return {
    draft,
    before,
    after: before,
    takesMm2: 0,
    wallMm: [0, 0],
    seat: null,
    guide: null,
    refusals: [],
    ...CLEAN,
  };
}

/** Whether a leaning flat plane would be sunk aslant into solid wood, where it has nothing to run on. */
export function sinksAslant(bench: Bench, { draft, wallMm }: TriedCut): boolean {
  return (
    draft.kind === "plane" &&
    isFlatKind(draft.tool.plane.kind) &&
    Math.abs(firstLeanDeg(draft)) > 1 &&
    Math.max(...wallMm) > bench.limits.guideWallMm
  );
}

function wallRefusals(bench: Bench, draft: PlaneDraft, wallMm: readonly [number, number]): Refusal[] {
  const refusals: Refusal[] = [];
  for (const side of ["left", "right"] as const) {
    const found = side === "left" ? wallMm[0] : wallMm[1];
    const allowed = wallAllowanceMm(draft.tool.plane, side);
    if (allowed.kind === "up to" && found > Math.max(OVERCUT_MM, allowed.allowanceMm - WALL_MARGIN_MM)) {
      refusals.push({ rule: "wall", side, foundMm: found, limitMm: allowed.allowanceMm });
    }
  }
  // A V is widened by leaning strokes once upright ones have opened it; a beak let aslant into solid wood skids.
  const opening = Math.max(...wallMm);
  if (
    draft.work === "open V" &&
    Math.abs(leanDeg(draft.runs[0][0][2], draft.cantDeg)) >= bench.limits.leaningFromDeg &&
    opening > bench.limits.guideWallMm
  ) {
    refusals.push({ rule: "wall", foundMm: opening, limitMm: bench.limits.guideWallMm });
  }
  const { plane } = draft.tool;
  const deepest = plane.kind === "plough" || plane.kind === "moving fillister" ? plane.depthMm : null;
  if (deepest !== null && Math.max(...wallMm) > deepest) {
    refusals.push({ rule: "wall", foundMm: Math.max(...wallMm), limitMm: deepest });
  }
  if (isFlatKind(draft.tool.plane.kind)) {
    const leaning = draft.runs.some(
      (run) => Math.abs(leanDeg(run[0][2], draft.cantDeg)) >= bench.limits.leaningFromDeg,
    );
    const most = Math.max(...wallMm);
    if (leaning && most > bench.limits.leaningFlatWallMm - WALL_MARGIN_MM) {
      refusals.push({ rule: "wall", foundMm: most, limitMm: bench.limits.leaningFlatWallMm });
    }
    const slot = Math.min(...wallMm);
    if (slot > bench.limits.slotMm - WALL_MARGIN_MM) {
      refusals.push({ rule: "wall", foundMm: slot, limitMm: bench.limits.slotMm });
    }
  }
  return refusals;
}

function obstacleRefusals(bench: Bench, draft: PlaneDraft, after: Region): Refusal[] {
  const refusals: Refusal[] = [];
  const below = belowBenchMm(draft.cut, benchLevelMm(bench.stick, draft.cantDeg));
  if (below > OVERCUT_MM) refusals.push({ rule: "bench", foundMm: below });
  if (bodyMeetsMm2(after, draft.cut, bench.sweepOptions.reachMm) > AREA_AGREEMENT_MM2) {
    refusals.push({ rule: "body" });
  }
  return refusals;
}

function looseRefusals(bench: Bench, before: Region, after: Region): Refusal[] {
  const most = bench.limits.shavingMm2 * 0.9;
  const parted = after.length < 2 ? 0 : partedOffMm2(before, after);
  if (parted > most) return [{ rule: "loose wood", foundMm: parted }];
  const hanging = hangingMm2(after);
  return hanging > most && hanging > hangingMm2(before) + most
    ? [{ rule: "loose wood", foundMm: hanging }]
    : [];
}

const HANGING = new WeakMap<Region, number>();

/** As `hangingByThreadMm2`, once for the same wood. */
function hangingMm2(wood: Region): number {
  const known = HANGING.get(wood) ?? hangingByThreadMm2(wood);
  HANGING.set(wood, known);
  return known;
}
