/** A section read from a drawing as a job: its outline becomes the job's path. */
import { type Chain, extentsOf, type Point, type Vertex, verticesOf } from "mouldwright/curve";
import { type Job, readJob, writeJob } from "mouldwright/job";
import type { Outcome } from "mouldwright/measure";
import { fitArcs, type Section } from "mouldwright/section";

/** How close the arcs that stand for a free curve keep to it, mm: a hand holds a gauge line no better. */
const CURVE_MM = 0.05;

/** Shelf, unit and whatever else of the bench a new job begins with. */
export type FromBench = Pick<Job, "shelf" | "unit" | "inchStep">;

/**
 * The job of a drawn section, checked like any job from a file. A job holds lines and arcs: free curves become the
 * fewest arcs that keep to them. A stick that is no rectangle is taken as the one it is sawn from.
 */
export function jobOfDrawing(section: Section, given: FromBench): Outcome<Job> {
  const { maxX, maxY } = extentsOf(section.stick);
  const job: Job = {
    format: "mouldwright/job",
    version: 1,
    name: section.name,
    ...given,
    section: { path: pathOf(section).map((vertex) => [...vertex]) },
    stick: { widthMm: maxX, thicknessMm: maxY },
  };
  return readJob(writeJob(job));
}

/** Whether a drawn section has curves that the job takes as arcs. */
export function hasFreeCurves(section: Section): boolean {
  return section.freeSpans.some(({ count }) => count > 1);
}

function pathOf({ outline, freeSpans }: Section): readonly Vertex[] {
  const vertices = verticesOf(outline);
  const count = vertices.length;
  const spanAt = new Map(
    freeSpans.filter((span) => span.count > 1).map((span) => [span.first % count, span.count]),
  );
  if (spanAt.size === 0) return vertices;
  const path: Vertex[] = [];
  // Begun where no curve is under way, so that none is cut in two.
  const first = startOf(count, freeSpans);
  for (let done = 0; done < count; ) {
    const index = (first + done) % count;
    const run = spanAt.get(index);
    if (run === undefined) {
      path.push(vertices[index] as Vertex);
      done += 1;
      continue;
    }
    const points = Array.from({ length: run + 1 }, (_, place) =>
      pointOf(vertices[(index + place) % count] as Vertex),
    );
    path.push(...withoutEnd(fitArcs(points, { tolMm: CURVE_MM }).chain));
    done += run;
  }
  return path;
}

function startOf(count: number, freeSpans: Section["freeSpans"]): number {
  const inside = new Set<number>();
  for (const { first, count: run } of freeSpans) {
    for (let place = 1; place < run; place += 1) inside.add((first + place) % count);
  }
  for (let index = 0; index < count; index += 1) if (!inside.has(index)) return index;
  return 0;
}

function pointOf([x, y]: Vertex): Point {
  return { x, y };
}

function withoutEnd(chain: Chain): Vertex[] {
  return verticesOf(chain).slice(0, -1);
}
