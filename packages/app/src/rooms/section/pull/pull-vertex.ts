/** A section held as a path: what a pull does to one of its points, or to the bend of one of its curves. */
import { type Arc, type Point, pointAt, reversePiece } from "mouldwright/curve";
import type { Job } from "mouldwright/job";
import { snapArc } from "mouldwright/section";
import { pathOfJob, withBulge, withVertex } from "../chain/path-edits.ts";
import { tidyMm } from "../chain/refit-part.ts";
import { curveDraws } from "./bend-part.ts";
import type { Handle } from "./handles.ts";
import type { Pull, Pulled } from "./pull.ts";
import { type Draw, settledNumber } from "./settle.ts";

/** More points than this are no drawing to be pulled at: their rings would hide it. */
export const MOST_VERTICES = 60;

export function handlesOfPath(job: Job): readonly Handle[] {
  const path = pathOfJob(job);
  if (path.length > MOST_VERTICES) return [];
  return path.flatMap(([x = 0, y = 0], index): readonly Handle[] => {
    const vertex: Handle = {
      id: `vertex ${index}`,
      kind: "vertex",
      part: index,
      at: { x, y },
      words: `Point ${index + 1}`,
    };
    const drawn = arcAfter(job, index);
    return drawn === null
      ? [vertex]
      : [
          {
            id: `bulge ${index}`,
            kind: "bulge",
            part: index,
            at: pointAt(drawn, 0.5),
            words: `Curve after point ${index + 1}`,
          },
          vertex,
        ];
  });
}

/** The curve from one point to the next; null where it is a flat, or more than half a circle. */
export function arcAfter(job: Job, index: number): Arc | null {
  const path = pathOfJob(job);
  const [from, to] = [path[index], path[(index + 1) % path.length]];
  const bulge = from?.[2] ?? 0;
  if (from === undefined || to === undefined || bulge === 0 || Math.abs(bulge) > 1) return null;
  const [start, end] = [pointOf(from), pointOf(to)];
  if (Math.hypot(end.x - start.x, end.y - start.y) === 0) return null;
  return { kind: "arc", from: start, to: end, bulge };
}

function pointOf([x = 0, y = 0]: readonly number[]): Point {
  return { x, y };
}

export function vertexTo({ job, handle, rule, length }: Pull, to: Point): Pulled {
  const path = pathOfJob(job);
  const others = path.filter((_, index) => index !== handle.part);
  const across = others.map(
    ([x = 0], index): Draw<number> => ({ value: x, says: `upright over ${place(others, index)}` }),
  );
  const up = others.map(
    ([, y = 0], index): Draw<number> => ({ value: y, says: `level with ${place(others, index)}` }),
  );
  const x = rule === null ? { value: to.x, says: "" } : settledNumber(to.x, across, rule);
  const y = rule === null ? { value: to.y, says: "" } : settledNumber(to.y, up, rule);
  const { widthMm, thicknessMm } = job.stick;
  const [atX, atY] = [within(x.value, widthMm), within(y.value, thicknessMm)];
  const says = [x.says, y.says].filter((words) => words !== "").join(", ");
  const isTaken = others.some(([ox, oy]) => ox === atX && oy === atY);
  const next = isTaken ? job : withVertex(job, handle.part, atX, atY);
  return { job: next, says: says || `${length(atX)} from the gauge edge, ${length(atY)} up` };
}

function place(others: readonly (readonly number[])[], index: number): string {
  const [x = 0, y = 0] = others[index] ?? [];
  return `the point at ${Math.round(x * 10) / 10}, ${Math.round(y * 10) / 10}`;
}

function within(valueMm: number, mostMm: number): number {
  return tidyMm(Math.max(0, Math.min(mostMm, valueMm)));
}

export function bulgeTo(pull: Pull, to: Point): Pulled {
  const { job, handle, radii, rule, length } = pull;
  const drawn = arcAfter(job, handle.part);
  if (drawn === null) return { job, says: "" };
  // A path runs round the wood the other way than a chain: walked as the chain is, a round is a round.
  const walked = reversePiece(drawn);
  const { value, says } = curveDraws({ drawn: walked, to, beside: null, radii, rule });
  return { job: withRadius(job, handle.part, value), says: says || `radius ${length(value)}` };
}

/** The curve after a point with this radius, between the same ends. */
export function withRadius(job: Job, index: number, radiusMm: number): Job {
  const drawn = arcAfter(job, index);
  const bent = drawn === null ? null : snapArc(drawn, radiusMm);
  return bent === null ? job : withBulge(job, index, bent.bulge);
}
