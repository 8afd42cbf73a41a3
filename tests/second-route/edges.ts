/**
 * How an edge stands for the plane that is to run against it, read off the wood before the cut: how deep below the sole
 * it begins, how much of it is upright, and what the arms of a plough's fence would have to pass.
 */
import { boxOf, type FlatOutline, type FlatRegion, turnedBy } from "./flat.ts";
import {
  CLEARANCE_MM,
  EDGE_BEARS_MM,
  FENCE_ARMS_MM,
  FENCE_HANG_MM,
  LEANING_FROM_DEG,
  PLOUGH_HANG_MM,
} from "./limits.ts";
import type { CutJson, PoseXyt, Xy } from "./plan-json.ts";
import { stretches } from "./rays.ts";
import { inPlace } from "./strips.ts";

/** What two ways of measuring may differ by, mm. */
const AGREES_MM = 0.05;

/** What is wrong with the edge at this side of the stick, in words; nothing where it guides the plane. */
export function edgeOutOfReach(
  cut: CutJson,
  pose: PoseXyt,
  stick: FlatOutline,
  before: FlatRegion,
  side: "left" | "right",
): readonly string[] {
  const lying = (at: Xy): Xy => turnedBy(cut.cant, at);
  const outward = side === "left" ? -1 : 1;
  const box = boxOf([stick.map(lying)]);
  const edgeX = side === "left" ? box.minX : box.maxX;
  const wood = before.map((outline) => outline.map(lying));
  const sole = cut.sole ?? [];
  const ends = [sole[0], sole[sole.length - 1]].map((v) => lying(inPlace(pose, [v[0], v[1]])));
  const [low, high] = ends[0][0] <= ends[1][0] ? ends : [ends[1], ends[0]];
  const near = side === "left" ? low : high;
  const isOver = (near[0] - edgeX) * outward > 0;
  const slope = high[0] > low[0] ? (high[1] - low[1]) / (high[0] - low[0]) : 0;
  const soleAt = (x: number): number => low[1] + slope * (x - low[0]);
  const levelMm = isOver ? soleAt(edgeX) : near[1];
  const leanRad = ((pose[2] + cut.cant) * Math.PI) / 180;
  const startMm = levelMm + liftMm(before, cut, pose) / Math.cos(leanRad);
  const isPlough = cut.plane.kind === "plough";
  const armsMm = isPlough ? Math.max(FENCE_ARMS_MM, cut.plane.depth ?? 0) : FENCE_ARMS_MM;
  const hangMm = isPlough ? PLOUGH_HANG_MM : FENCE_HANG_MM;
  const fenceTopMm = startMm + (isOver ? 0 : armsMm);
  // A hand tells 3° from upright: so far in, an edge that leans less still stands over the stretch that has to bear.
  const insideX = edgeX - outward * EDGE_BEARS_MM * Math.tan((LEANING_FROM_DEG * Math.PI) / 180);
  const spans = stretches(wood, [insideX, box.minY - 1], [0, 1])
    .map(([from, to]): Xy => [from + box.minY - 1, Math.min(to + box.minY - 1, fenceTopMm)])
    .filter(([from, to]) => to > from);
  const topMm = Math.max(Number.NEGATIVE_INFINITY, ...spans.map(([, to]) => to));
  const faults: string[] = [];
  if (!(startMm - topMm <= hangMm + AGREES_MM))
    faults.push(
      `the edge begins ${(startMm - topMm).toFixed(2)} mm below the sole, the fence hangs ${hangMm}`,
    );
  const uprightMm = spans.reduce((sum, [from, to]) => sum + to - from, 0);
  if (cut.cant % 90 === 0 && uprightMm < EDGE_BEARS_MM - AGREES_MM)
    faults.push(`of the edge ${uprightMm.toFixed(2)} mm stand upright`);
  const overMm = isOver ? 0 : highestMm(wood, Math.min(near[0], edgeX), Math.max(near[0], edgeX)) - levelMm;
  if (overMm > armsMm + AGREES_MM)
    faults.push(`${overMm.toFixed(2)} mm of wood stand under the fence's arms, which pass ${armsMm}`);
  return faults;
}

/** How far up its own axis the plane stands off its place when it is first set down on the wood, mm. */
function liftMm(before: FlatRegion, cut: CutJson, pose: PoseXyt): number {
  const upright = (at: Xy): Xy => turnedBy(-pose[2], at);
  const sole = cut.sole ?? [];
  const [[fromX, y], [toX]] = [sole[0], sole[sole.length - 1]].map((v) =>
    upright(inPlace(pose, [v[0], v[1]])),
  );
  const wood = before.map((outline) => outline.map(upright));
  // A body just clears the wall that it was set to.
  const [left, right] = [Math.min(fromX, toX) + CLEARANCE_MM, Math.max(fromX, toX) - CLEARANCE_MM];
  return Math.max(0, highestMm(wood, left, right) - y);
}

function highestMm(wood: FlatRegion, fromX: number, toX: number): number {
  return placesOver(wood, fromX, toX).reduce((most, [, y]) => Math.max(most, y), Number.NEGATIVE_INFINITY);
}

/** The corners of the wood between two places across, and where its outline passes those places. */
function placesOver(wood: FlatRegion, fromX: number, toX: number): readonly Xy[] {
  const floorMm = boxOf(wood).minY - 1;
  const corners = wood.flatMap((outline) => outline.filter(([x]) => x > fromX && x < toX));
  const passed = [fromX, toX].flatMap((x) =>
    stretches(wood, [x, floorMm], [0, 1]).map(([, to]): Xy => [x, floorMm + to]),
  );
  return [...corners, ...passed];
}
