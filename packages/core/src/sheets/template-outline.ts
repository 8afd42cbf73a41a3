/** Outlines taken from a plan for templates: seen from either end, the face alone, what lies over it. */
import {
  type Chain,
  chainFromVertices,
  extentsOf,
  offsetChain,
  ringFromVertices,
  type Vertex,
  verticesOf,
} from "../curve/index.ts";
import type { Plan } from "../cutting/index.ts";
import { SAME_POINT_MM } from "../measure/index.ts";

/** A vertex seen from the other end of the stick, whose width runs from `fromMm` to `toMm`. */
export function mirroredVertex([x, y, bulge]: Vertex, fromMm: number, toMm: number): Vertex {
  const across = fromMm + toMm - x;
  return bulge === undefined ? [across, y] : [across, y, bulge === 0 ? 0 : -bulge];
}

/**
 * The moulded face: the outline from the gauge side to the far side over the top, from left to right, without the
 * sides of the stick below it. Bulges are those of travel from left to right.
 */
export function faceOf(section: readonly Vertex[]): readonly Vertex[] {
  const box = extentsOf(ringFromVertices(section));
  const count = section.length;
  const highest = (isEnd: (vertex: Vertex) => boolean): number => {
    let best = -1;
    section.forEach((vertex, index) => {
      if (isEnd(vertex) && (best < 0 || vertex[1] > (section[best] as Vertex)[1])) best = index;
    });
    return best;
  };
  const right = highest(([x]) => Math.abs(x - box.maxX) <= SAME_POINT_MM);
  const left = highest(([x]) => Math.abs(x - box.minX) <= SAME_POINT_MM);
  if (right < 0 || left < 0) return [];
  // The ring runs anticlockwise, so over the top it goes from right to left.
  const run: Vertex[] = [];
  for (let index = right; ; index = (index + 1) % count) {
    run.push(section[index] as Vertex);
    if (index === left || run.length > count) break;
  }
  return reversedChain(run);
}

/** The same chain travelled the other way. */
export function reversedChain(vertices: readonly Vertex[]): readonly Vertex[] {
  return [...vertices].reverse().map(([x, y], index): Vertex => {
    const before = vertices[vertices.length - 2 - index];
    const bulge = before?.[2] ?? 0;
    return bulge === 0 ? [x, y] : [x, y, -bulge];
  });
}

/** Height of card, block or steel above the highest point of the face, mm. */
const BACKING_MM = 18;
/** Thickness of abrasive paper with what holds it, mm; common practice, no source. */
export const PAPER_ALLOWANCE_MM = 0.5;

/**
 * What lies over the face: a ring, anticlockwise, whose lower side is the face (or a parallel to it so far above) and
 * whose upper side is straight. Laid on the finished moulding it closes on it everywhere.
 */
export function negativeOf(plan: Plan, clearMm = 0): readonly Vertex[] {
  const face = faceOf(plan.section);
  const first = face[0];
  const last = face[face.length - 1];
  if (first === undefined || last === undefined) return [];
  const cleared = clearMm === 0 ? face : clearedFace(face, clearMm);
  const box = extentsOf(ringFromVertices(plan.section));
  const top = Math.max(...face.map(([, y]) => y), box.maxY) + BACKING_MM;
  const [leftEnd, rightEnd] = [cleared[0] as Vertex, cleared[cleared.length - 1] as Vertex];
  return [...cleared.slice(0, -1), [rightEnd[0], rightEnd[1]], [rightEnd[0], top], [leftEnd[0], top]];
}

/** The parallel above a face, its ends brought back over the face's own ends. */
function clearedFace(face: readonly Vertex[], clearMm: number): readonly Vertex[] {
  // Led out level at both ends, so that the parallel reaches past them and can be cut off there.
  const first = face[0] as Vertex;
  const last = face[face.length - 1] as Vertex;
  const led: Chain = chainFromVertices([
    [first[0] - clearMm, first[1]],
    ...face,
    [last[0] + clearMm, last[1]],
  ]);
  const parallel = verticesOf(offsetChain(led, clearMm));
  return parallel.length < 2 ? face : parallel;
}
