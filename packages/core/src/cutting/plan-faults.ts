/**
 * What has to be right before a plan can be cut at all: outlines that enclose something and do not cross, soles that run
 * from left to right, movements that are there, cuts and marks that name each other rightly. `readPlan` has seen to some of it;
 * a plan may also come from a program, so nothing is taken for granted.
 */
import {
  type Chain,
  chainFromVertices,
  ringFromVertices,
  selfCrossings,
  type Vertex,
} from "../curve/index.ts";
import { cataloguedTrouble, SAME_POINT_MM, type Trouble } from "../measure/index.ts";
import { outlineFaults } from "./file-outline.ts";
import type { Plan, PlanCut, Pose } from "./types.ts";

/** What a proof carries at most; a cornice of ten parts stays far below. */
export const PROOF_LIMITS = {
  /** Vertices of the stick and of the planned section; the drawn one may have more. */
  mostVertices: 2000,
  /** Points of a sole, once for each of its poses, in one cut. */
  mostSweptPoints: 20_000,
} as const;

/** Faults of stick, section and planned: with any, there is nothing to cut and nothing to compare with. */
export function outlinesFaults(plan: Plan): readonly Trouble[] {
  const faults: Trouble[] = [];
  for (const key of ["stick", "section", "planned"] as const) {
    if (key !== "section" && plan[key].length > PROOF_LIMITS.mostVertices) {
      faults.push(tooMany(key, PROOF_LIMITS.mostVertices, "vertices"));
      continue;
    }
    const own = ringFaults(plan[key], key);
    faults.push(...own);
    if (own.length > 0) continue;
    const [crossing] = selfCrossings(ringFromVertices(plan[key]), SAME_POINT_MM);
    if (crossing)
      faults.push(cataloguedTrouble("recut-outline-crosses", key, { xMm: crossing.x, yMm: crossing.y }));
  }
  return faults;
}

/** Faults of numbers and names across the plan. */
export function namingFaults(plan: Plan): readonly Trouble[] {
  const faults: Trouble[] = [];
  plan.cuts.forEach(({ number }, i) => {
    if (number !== i + 1)
      faults.push(cataloguedTrouble("recut-number", `cuts[${i}].number`, { number, wanted: i + 1 }));
  });
  const numbers = new Set(plan.cuts.map((cut) => cut.number));
  plan.marks.forEach(({ before }, i) => {
    if (!numbers.has(before))
      faults.push(cataloguedTrouble("plan-names-no-cut", `marks[${i}].before`, { number: before }));
  });
  plan.parts.forEach(({ madeBy }, i) => {
    const stray = madeBy.find((number) => !numbers.has(number));
    if (stray !== undefined)
      faults.push(cataloguedTrouble("plan-names-no-cut", `parts[${i}].madeBy`, { number: stray }));
  });
  return faults;
}

/** Faults of one cut: with any, it cannot be made. */
export function cutFaults(cut: PlanCut, where: string): readonly Trouble[] {
  const noMovement = (): readonly Trouble[] => [
    cataloguedTrouble("plan-cut-has-no-movement", where, { number: cut.number, kind: cut.plane.kind }),
  ];
  if (cut.plane.kind === "saw") {
    if (!cut.line || cut.sole || cut.runs) return noMovement();
    const [[ax, ay], [bx, by]] = cut.line;
    const notFinite = [ax, ay, bx, by].find((value) => !Number.isFinite(value));
    if (notFinite !== undefined) return [numberFault(`${where}.line`, notFinite)];
    return Math.hypot(bx - ax, by - ay) > SAME_POINT_MM
      ? []
      : [cataloguedTrouble("file-points-coincide", `${where}.line[1]`, {})];
  }
  const { sole, runs } = cut;
  if (cut.line || !sole || !runs || runs.length === 0 || runs.some((run) => run.length === 0))
    return noMovement();
  const poses = runs.flat();
  const bad = poses.flat().find((value) => !Number.isFinite(value));
  if (bad !== undefined) return [numberFault(`${where}.runs`, bad)];
  const faults = [...vertexFaults(sole, `${where}.sole`), ...outlineFaults(sole, `${where}.sole`, false)];
  if (faults.length > 0) return faults;
  const chain = chainFromVertices(sole);
  if (!runsLeftToRight(chain))
    return [cataloguedTrouble("recut-sole-bent", `${where}.sole`, { cut: cut.number })];
  return poses.length * chain.pieces.length > PROOF_LIMITS.mostSweptPoints
    ? [tooMany(`${where}.runs`, PROOF_LIMITS.mostSweptPoints, "places of the sole")]
    : [];
}

/** Faults of a closed outline that the kernel could not take. */
export function ringFaults(vertices: readonly Vertex[], where: string): readonly Trouble[] {
  const numbers = vertexFaults(vertices, where);
  if (numbers.length > 0) return numbers;
  if (vertices.length < 2) return [cataloguedTrouble("file-too-few", where, { least: 2, what: "vertices" })];
  return outlineFaults(vertices, where, true);
}

function vertexFaults(vertices: readonly Vertex[], where: string): readonly Trouble[] {
  const i = vertices.findIndex((vertex) => !vertex.every((value) => Number.isFinite(value)));
  const bad = vertices[i]?.find((value) => !Number.isFinite(value));
  if (bad !== undefined) return [numberFault(`${where}[${i}]`, bad)];
  return vertices.length < 2
    ? [cataloguedTrouble("file-too-few", where, { least: 2, what: "vertices" })]
    : [];
}

/** Whether a sole has a width and no piece of it goes back; an upright piece, as a wall-cutting one's, may stand in it. */
function runsLeftToRight(sole: Chain): boolean {
  const [first] = sole.pieces;
  const last = sole.pieces[sole.pieces.length - 1];
  if (!first || !last || last.to.x - first.from.x <= SAME_POINT_MM) return false;
  return sole.pieces.every((piece) => piece.to.x >= piece.from.x - SAME_POINT_MM);
}

/** The greatest step from one pose to the next within a run. */
export function widestStep(runs: readonly (readonly Pose[])[]): {
  readonly apartMm: number;
  readonly apartDeg: number;
} {
  let apartMm = 0;
  let apartDeg = 0;
  for (const run of runs) {
    run.forEach((pose, i) => {
      const last = run[i - 1];
      if (last === undefined) return;
      apartMm = Math.max(apartMm, Math.hypot(pose[0] - last[0], pose[1] - last[1]));
      apartDeg = Math.max(apartDeg, Math.abs(pose[2] - last[2]));
    });
  }
  return { apartMm, apartDeg };
}

function numberFault(where: string, found: number): Trouble {
  return cataloguedTrouble("file-number-not-finite", where, { found: String(found) });
}

function tooMany(where: string, most: number, what: string): Trouble {
  return cataloguedTrouble("file-too-many", where, { most, what });
}
