/** Sections, benches and drafts that tests lay out by hand. */
import { pointAt, ringFromVertices, type Vertex } from "../../curve/index.ts";
import type { Plan, Pose } from "../../cutting/index.ts";
import { bug, DEFAULT_TOLERANCE_MM, type Outcome } from "../../measure/index.ts";
import { buildSection, type Section, type SectionSpec, stickRing } from "../../section/index.ts";
import type { Shelf } from "../../shelf/index.ts";
import { type Bench, layOutBench, type Tool } from "../bench.ts";
import { type DraftWork, type PlaneDraft, planeDraft } from "../draft-cut.ts";
import { planSection } from "../plan-section.ts";
import type { PlanRequest } from "../request.ts";
import { type Found, searchWay } from "../search.ts";
import type { WorkedPiece } from "../worked-piece.ts";

/** What an outcome holds; a test that gets a refusal here is wrong from the start. */
export function held<T>(outcome: Outcome<T>): T {
  return outcome.ok ? outcome.value : bug("the fixture is refused", { code: outcome.trouble.code });
}

export function sectionOf(spec: SectionSpec): Section {
  return held(buildSection(spec));
}

/** A section by its vertices, anticlockwise, in a stick that lies on its back with its gauge edge at x = 0. */
export function drawnSection(widthMm: number, thicknessMm: number, outline: readonly Vertex[]): Section {
  const stick = stickRing(widthMm, thicknessMm);
  return { name: "drawn", stick, outline: ringFromVertices([...outline]), freeSpans: [], named: [] };
}

/** A bench for exactly this section: nothing is normalised. */
export function benchOf(section: Section, shelf: Shelf, toleranceMm = DEFAULT_TOLERANCE_MM): Bench {
  return layOutBench(section.outline, section.stick, shelf, { toleranceMm });
}

export function planOf(section: Section, shelf: Shelf, more: Partial<PlanRequest> = {}): Plan {
  return held(planSection({ section, shelf, ...more }));
}

/** The plain way's order as it is found, before it is held against others. */
export function foundFlat(section: Section, shelf: Shelf): Found {
  const bench = benchOf(section, shelf);
  const search = searchWay("flat", () => bench);
  let step = search.next();
  while (!step.done) step = search.next();
  return step.value ?? bug("there is no plain way", { name: section.name });
}

/** The one worked piece whose middle lies within a hair of a place. */
export function pieceAt(bench: Bench, x: number, y: number): WorkedPiece {
  const found = bench.worked.filter((worked) => {
    const middle = pointAt(worked.piece, 0.5);
    return Math.hypot(middle.x - x, middle.y - y) < 1e-3;
  });
  return found.length === 1 && found[0]
    ? found[0]
    : bug("no such worked piece", { x, y, found: found.length });
}

export function toolOf(bench: Bench, id: string): Tool {
  return bench.tools.find((tool) => tool.plane.id === id) ?? bug("no such plane", { id });
}

/** A cut of one pose, told by its plane, its work and where the plane stands. */
export function draftAt(
  bench: Bench,
  planeId: string,
  pose: Pose,
  more: {
    readonly work?: DraftWork;
    readonly purpose?: PlaneDraft["purpose"];
    readonly cantDeg?: number;
    readonly shapes?: readonly number[];
  } = {},
): PlaneDraft {
  return planeDraft(bench, {
    work: more.work ?? "step",
    purpose: more.purpose ?? "shape",
    cantDeg: more.cantDeg ?? 0,
    shapes: more.shapes ?? [],
    tool: toolOf(bench, planeId),
    runs: [[pose]],
  });
}
