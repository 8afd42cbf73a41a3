/** The board a stick lies on while it is moulded: its bed, its fence, its stops. */
import { chainFromVertices, extentsOf, flattenPiece, type Point } from "../../curve/index.ts";
import type { Plan, PlanCut } from "../../cutting/index.ts";
import { SEARCH_FLATTEN_MM, toRad } from "../../measure/index.ts";
import type { Section } from "../../section/index.ts";
import { type BoardSizes, COMMON_BOARD } from "./defaults.ts";
import { type SectionView, viewSection } from "./section-view.ts";
import { type SpringBevel, springBevels } from "./spring-bevels.ts";
import type { WayOfWorking } from "./types.ts";

export interface BoardFence {
  /** Its face stands here, in the section's frame: against the far edge. */
  readonly atMm: number;
  /** It bears from here up; below, a bevel or a rebate of the stick leaves a gap. */
  readonly bearsFromMm: number;
  readonly topMm: number;
  readonly widthMm: number;
}

export interface BoardFiller {
  readonly edge: SpringBevel["edge"];
  /** A strip laid under the sawn bevel: three corners, in the section's frame. */
  readonly corners: readonly Point[];
}

export interface StickingBoard {
  readonly widthMm: number;
  readonly lengthMm: number;
  readonly thicknessMm: number;
  /** Null where the face runs out too low on the far edge: then screws through the waste at both ends hold it. */
  readonly fence: BoardFence | null;
  /** Ahead of the stick; the far end is where the push goes. Null where the section is too low anywhere. */
  readonly stop: { readonly fromStartMm: number; readonly topMm: number } | null;
  /** The stick's gauge edge lies flush with the board's front edge, so that a plane's fence can run down past it. */
  readonly front: "flush with the gauge edge";
  readonly fillers: readonly BoardFiller[];
  /** What decided the fence's height. */
  readonly fenceBelow: "the face at the far edge" | "the planes' soles beyond the far edge";
}

export interface BoardQuestion {
  readonly section: Section;
  readonly way: WayOfWorking;
  readonly plannedLengthMm: number;
  readonly plan?: Plan | undefined;
  readonly sizes?: Partial<BoardSizes> | undefined;
}

/**
 * Fence at the far edge, stop ahead, gauge edge free for the planes' own fences. Both stay clear of every sole: the
 * finished face, and with a plan also whatever soles come down to beyond the far edge.
 */
export function stickingBoard(question: BoardQuestion): StickingBoard {
  const sizes = { ...COMMON_BOARD, ...question.sizes };
  const view = viewSection(question.section);
  const widthMm = view.stick.maxX - view.stick.minX;
  const faceMm = view.farEdgeHeightMm ?? 0;
  const soleMm = question.plan === undefined ? null : lowestSoleBeyond(question.plan.cuts, view);
  const isSoleLower = soleMm !== null && soleMm < faceMm;
  const isBevelled = question.way === "bevelled first";
  const bevels = isBevelled ? springBevels(question.section).bevels : [];
  return {
    widthMm: widthMm + sizes.fenceWidthMm,
    lengthMm: question.plannedLengthMm + sizes.stopLengthMm + 2 * sizes.endMm,
    thicknessMm: sizes.thicknessMm,
    fence: fenceFor(view, isSoleLower ? soleMm : faceMm, bevels, sizes),
    stop: stopFor(view, question.plannedLengthMm, sizes),
    front: "flush with the gauge edge",
    fillers: bevels.map((bevel) => fillerUnder(bevel, view)),
    fenceBelow: isSoleLower ? "the planes' soles beyond the far edge" : "the face at the far edge",
  };
}

function fenceFor(
  view: SectionView,
  belowMm: number,
  bevels: readonly SpringBevel[],
  sizes: BoardSizes,
): BoardFence | null {
  const bearsFromMm = bevels.find((bevel) => bevel.edge === "far edge")?.onEdgeMm ?? 0;
  const topMm = Math.min(belowMm - sizes.clearMm, sizes.fenceThickestMm + bearsFromMm);
  if (topMm - bearsFromMm < sizes.leastFenceMm) return null;
  return { atMm: view.stick.maxX, bearsFromMm, topMm, widthMm: sizes.fenceWidthMm };
}

function stopFor(view: SectionView, lengthMm: number, sizes: BoardSizes): StickingBoard["stop"] {
  const thicknessMm = view.stick.maxY - view.stick.minY;
  const lowestMm =
    view.moulded === null
      ? thicknessMm
      : Math.min(...view.moulded.pieces.map((piece) => extentsOf(piece).minY)) - view.stick.minY;
  const topMm = lowestMm - sizes.clearMm;
  return topMm < sizes.leastFenceMm ? null : { fromStartMm: sizes.endMm + lengthMm, topMm };
}

function fillerUnder(bevel: SpringBevel, view: SectionView): BoardFiller {
  const edgeMm = bevel.edge === "gauge edge" ? view.stick.minX : view.stick.maxX;
  return { edge: bevel.edge, corners: [bevel.from, bevel.to, { x: edgeMm, y: view.stick.minY }] };
}

/** How low a sole comes on the far side of the far edge, mm above the back; null if none reaches past it. */
function lowestSoleBeyond(cuts: readonly PlanCut[], view: SectionView): number | null {
  let lowest: number | null = null;
  for (const cut of cuts) {
    if (cut.cant !== 0 || cut.sole === undefined || cut.sole.length < 2) continue;
    const sole = chainFromVertices(cut.sole).pieces.flatMap((piece) =>
      flattenPiece(piece, SEARCH_FLATTEN_MM),
    );
    for (const pose of (cut.runs ?? []).flat()) {
      for (const [from, to] of edgesOf(sole, pose)) {
        const height = lowestPast(from, to, view.stick.maxX);
        if (height === null) continue;
        const aboveMm = height - view.stick.minY;
        lowest = lowest === null ? aboveMm : Math.min(lowest, aboveMm);
      }
    }
  }
  return lowest;
}

/** The sole's edges as placed. */
function edgesOf(sole: readonly Point[], [x, y, tiltDeg]: readonly [number, number, number]) {
  const cos = Math.cos(toRad(tiltDeg));
  const sin = Math.sin(toRad(tiltDeg));
  const placed = sole.map((p) => ({ x: x + p.x * cos - p.y * sin, y: y + p.x * sin + p.y * cos }));
  return placed.slice(1).map((to, index) => [placed[index] as Point, to] as const);
}

function lowestPast(from: Point, to: Point, edgeMm: number): number | null {
  if (from.x <= edgeMm && to.x <= edgeMm) return null;
  if (from.x >= edgeMm && to.x >= edgeMm) return Math.min(from.y, to.y);
  const t = (edgeMm - from.x) / (to.x - from.x);
  const crossing = from.y + t * (to.y - from.y);
  return Math.min(crossing, from.x > edgeMm ? from.y : to.y);
}
