/** Where a section turns, its radii, and running dimensions to them (ISO 129-1: superimposed, from one origin). */
import { circleOf, type Vertex } from "../curve/index.ts";
import { SAME_POINT_MM } from "../measure/index.ts";
import {
  circlePath,
  group,
  type Item,
  openPath,
  type PaperPoint,
  type Path,
  stroke,
  type Text,
  text,
} from "./drawing.ts";
import { flatPoints, pathOf } from "./flat-path.ts";
import { CENTRED_RATIO } from "./labels.ts";
import { INK } from "./palette.ts";
import { arrowHead } from "./plane-lines.ts";
import { type StickView, toPaper } from "./stick-view.ts";
import { textWidthMm } from "./text-width.ts";

/** Two values nearer than this are written once, mm: finer than a hand sets. */
const ONE_VALUE_MM = 0.05;

/** Corners of a ring, and the crowns and bottoms of its arcs. */
export function turningPoints(ring: readonly Vertex[]): readonly PaperPoint[] {
  return ring.flatMap((vertex, index): PaperPoint[] => {
    const next = ring[(index + 1) % ring.length] as Vertex;
    const corner: PaperPoint = [vertex[0], vertex[1]];
    const bulge = vertex[2] ?? 0;
    if (bulge === 0) return [corner];
    const { centre, radiusMm } = circleOf({
      kind: "arc",
      from: { x: vertex[0], y: vertex[1] },
      to: { x: next[0], y: next[1] },
      bulge,
    });
    const extreme: PaperPoint = [centre.x, centre.y + (bulge > 0 ? radiusMm : -radiusMm)];
    return isOnArc(vertex, next, extreme) ? [corner, extreme] : [corner];
  });
}

/** A point of the arc's own circle lies on the arc where it stands beyond the chord, on the bulging side. */
function isOnArc(from: Vertex, to: Vertex, point: PaperPoint): boolean {
  const bulge = from[2] ?? 0;
  const side = (to[0] - from[0]) * (point[1] - from[1]) - (to[1] - from[1]) * (point[0] - from[0]);
  // Travelling anticlockwise the arc runs on the right of its chord.
  return bulge > 0 ? side < 0 : side > 0;
}

export interface ArcMiddle {
  readonly middle: PaperPoint;
  readonly radiusMm: number;
}

/** The middle of every arc with its radius; arcs of one circle that follow each other count once. */
export function arcMiddles(ring: readonly Vertex[]): readonly ArcMiddle[] {
  const found: ArcMiddle[] = [];
  let lastCentre: PaperPoint | null = null;
  ring.forEach((vertex, index) => {
    const next = ring[(index + 1) % ring.length] as Vertex;
    const bulge = vertex[2] ?? 0;
    if (bulge === 0) {
      lastCentre = null;
      return;
    }
    const arc = {
      kind: "arc",
      from: { x: vertex[0], y: vertex[1] },
      to: { x: next[0], y: next[1] },
      bulge,
    } as const;
    const { centre, radiusMm } = circleOf(arc);
    const isSame: boolean =
      lastCentre !== null && Math.hypot(lastCentre[0] - centre.x, lastCentre[1] - centre.y) < ONE_VALUE_MM;
    lastCentre = [centre.x, centre.y];
    if (isSame) return;
    const points = flatPoints(
      pathOf([vertex, [next[0], next[1]]], (point) => [point[0], -point[1]], "chain"),
    );
    const middle = points[Math.floor(points.length / 2)] as PaperPoint;
    found.push({ middle: [middle[0], -middle[1]], radiusMm });
  });
  return found;
}

export interface RunningDimension {
  readonly view: StickView;
  readonly points: readonly PaperPoint[];
  readonly direction: "across" | "up";
  /** The value, mm in the section, from which is counted. */
  readonly originAt: number;
  /** Where the dimension line stands on paper: its y when across, its x when up. */
  readonly lineAt: number;
  /** The side on which the values of an upright line stand; the right if left out. */
  readonly side?: "left" | "right";
  readonly words: (lengthMm: number) => string;
  readonly sizeMm: number;
}

export interface DrawnRunning {
  readonly items: readonly Item[];
  readonly labels: readonly Text[];
}

/** How far from the dimension line the values stand in their row, and the straight end of the knee that leads there. */
const ROW_OFF_MM = 7;
const KNEE_END_MM = 1.4;
const VALUE_GAP_MM = 1.6;

/**
 * One line of arrows from a ring at the origin, each value in a row beside it. Values too close together are spread
 * and reached by a knee in their leader, so that none covers another.
 */
export function runningDimension(wanted: RunningDimension): DrawnRunning {
  const isAcross = wanted.direction === "across";
  const axis = isAcross ? 0 : 1;
  const values = distinct(
    wanted.points.map((point) => point[axis] - wanted.originAt).filter((value) => value > SAME_POINT_MM),
  );
  const furthest = values[values.length - 1];
  if (furthest === undefined) return { items: [], labels: [] };
  const onLine = (value: number): PaperPoint => {
    const at = wanted.originAt + value;
    const placed = toPaper(wanted.view, isAcross ? [at, 0] : [0, at]);
    return isAcross ? [placed[0], wanted.lineAt] : [wanted.lineAt, placed[1]];
  };
  const ends = values.map(onLine);
  const words = values.map(wanted.words);
  const sizes = words.map((word) =>
    isAcross ? textWidthMm(word, wanted.sizeMm) + VALUE_GAP_MM : wanted.sizeMm * 1.25,
  );
  // Upwards the values run against paper's y: spread them along -y.
  const sign = isAcross ? 1 : -1;
  const rows = spread(
    ends.map((end) => sign * end[axis]),
    sizes,
  ).map((row) => sign * row);
  const direction: PaperPoint = isAcross ? [1, 0] : [0, -1];
  const origin = onLine(0);
  const away = wanted.side === "left" ? -1 : 1;
  const knee = (end: PaperPoint, row: number): Path =>
    isAcross
      ? openPath([end, [row, end[1] + ROW_OFF_MM - KNEE_END_MM], [row, end[1] + ROW_OFF_MM]])
      : openPath([end, [end[0] + away * (ROW_OFF_MM - KNEE_END_MM), row], [end[0] + away * ROW_OFF_MM, row]]);
  const items = [
    stroke(circlePath(origin, 1)),
    stroke(openPath([origin, onLine(furthest)])),
    ...values.flatMap((value, index) => {
      const end = ends[index] as PaperPoint;
      return [
        stroke(extension(wanted, value, end)),
        arrowHead(end, direction, INK),
        stroke(knee(end, rows[index] as number)),
      ];
    }),
  ];
  const labels = words.map((word, index): Text => {
    const row = rows[index] as number;
    const at: PaperPoint = isAcross
      ? [row, wanted.lineAt + ROW_OFF_MM + 0.9 + 0.78 * wanted.sizeMm]
      : [wanted.lineAt + away * (ROW_OFF_MM + 0.9), row + CENTRED_RATIO * wanted.sizeMm];
    return text(at, word, {
      sizeMm: wanted.sizeMm,
      anchor: isAcross ? "middle" : wanted.side === "left" ? "end" : "start",
    });
  });
  return { items: [group("running dimension", items)], labels };
}

/** From the nearest point that has this value to the dimension line. */
function extension(wanted: RunningDimension, value: number, end: PaperPoint): Path {
  const isAcross = wanted.direction === "across";
  const axis = isAcross ? 0 : 1;
  const there = wanted.points
    .filter((point) => Math.abs(point[axis] - wanted.originAt - value) < ONE_VALUE_MM)
    .map((point) => toPaper(wanted.view, point));
  const from = there.reduce((kept, point) =>
    (isAcross ? point[1] > kept[1] : wanted.side === "left" ? point[0] < kept[0] : point[0] > kept[0])
      ? point
      : kept,
  );
  return openPath([from, end]);
}

/**
 * Moves rising places apart so that neighbours stand at least half of both sizes from each other, and as little as
 * can be in the sum of squares (pool adjacent violators: Barlow and others, 1972).
 */
export function spread(places: readonly number[], sizes: readonly number[]): readonly number[] {
  // Taking off what the labels before need turns "so far apart" into "not falling".
  const needed: number[] = [];
  sizes.forEach((size, index) => {
    needed.push(index === 0 ? 0 : (needed[index - 1] as number) + ((sizes[index - 1] as number) + size) / 2);
  });
  const pools: { sum: number; count: number }[] = [];
  places.forEach((place, index) => {
    pools.push({ sum: place - (needed[index] as number), count: 1 });
    while (pools.length > 1) {
      const last = pools[pools.length - 1] as { sum: number; count: number };
      const before = pools[pools.length - 2] as { sum: number; count: number };
      if (before.sum / before.count <= last.sum / last.count) break;
      pools.splice(-2, 2, { sum: before.sum + last.sum, count: before.count + last.count });
    }
  });
  const settled = pools.flatMap((pool) => new Array<number>(pool.count).fill(pool.sum / pool.count));
  return settled.map((value, index) => value + (needed[index] as number));
}

function distinct(values: readonly number[]): readonly number[] {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted.filter(
    (value, index) => index === 0 || value - (sorted[index - 1] as number) >= ONE_VALUE_MM,
  );
}
