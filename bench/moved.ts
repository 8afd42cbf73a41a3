/** A section with one vertex moved a little, as under a finger that drags it. */
import { type Ring, ringFromVertices, type Vertex, verticesOf } from "../packages/core/src/curve/index.ts";
import { inspectSection, type Section } from "../packages/core/src/section/index.ts";

const MOVED_BY_MM = 0.1;
/** Directions tried one after another: in, out and along, never the same place twice in a row. */
const DIRECTIONS: readonly (readonly [number, number])[] = [
  [0, -MOVED_BY_MM],
  [-MOVED_BY_MM, 0],
  [MOVED_BY_MM, 0],
  [0, MOVED_BY_MM],
];

/** `count` sections, each with one vertex moved by 0.1 mm; movements that leave no workable section are passed over. */
export function movedSections(section: Section, count: number): readonly Section[] {
  const vertices = verticesOf(section.outline);
  const moved: Section[] = [];
  const tries = vertices.length * DIRECTIONS.length;
  for (let i = 0; moved.length < count && i < tries; i++) {
    const outline = withMoved(vertices, i % vertices.length, DIRECTIONS[Math.floor(i / vertices.length)]);
    const candidate: Section = { ...section, outline, freeSpans: [] };
    if (inspectSection(candidate).refusals.length === 0) moved.push(candidate);
  }
  const found = moved.length;
  for (let i = 0; found > 0 && moved.length < count; i++) moved.push(moved[i % found] as Section);
  return moved;
}

function withMoved(
  vertices: readonly Vertex[],
  at: number,
  [byX, byY]: readonly [number, number] = [0, 0],
): Ring {
  return ringFromVertices(
    vertices.map(([x, y, bulge = 0], i) => (i === at ? [x + byX, y + byY, bulge] : [x, y, bulge])),
  );
}
