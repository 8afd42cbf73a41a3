/** Whether what a plane is said to run against is there when it is needed. */
import { edgeOutOfReach } from "./edges.ts";
import { type Box, boxOf, type FlatRegion, flatRing, turnedBy } from "./flat.ts";
import type { CutJson, PlanJson, PoseXyt, Xy } from "./plan-json.ts";
import { alongside, stretches } from "./rays.ts";
import { axisOf, inPlace } from "./strips.ts";

/** Wall that is tall enough to run against: what a snipe bill's nose would leave is not. */
const GUIDE_WALL_MM = 0.25;

/** What a wall may come out lower by where a ray runs another hair's breadth beside it, mm. */
const ROUNDED_MM = 0.01;

/** How far a gauged line may lie beside the place of the sole that is laid to it. */
const BESIDE_LINE_MM = 0.35;

/** What a plane without a fence must hang over an edge for a finger to find it. */
const OVERHANG_MM = 0.1;

const FENCED: readonly string[] = ["moving fillister", "plough", "bead"];

const ORDINALS: readonly string[] = ["first", "second", "third", "fourth", "fifth"];

/**
 * Faults of what a cut is said to run against, in words: its `runsAgainst`, and the walls that its sentence names for the
 * widths after the first. `woods[n]` is the wood after cut n, `woods[0]` the stick.
 */
export function guideFaults(plan: PlanJson, cut: CutJson, woods: readonly FlatRegion[]): readonly string[] {
  return [...firstFaults(plan, cut, woods), ...laterFaults(cut, woods)];
}

function laterFaults(cut: CutJson, woods: readonly FlatRegion[]): readonly string[] {
  return [...cut.says.matchAll(/the (\S+) along the wall of cut (\d+)/g)].flatMap(([, ordinal = "", by]) => {
    const known = ORDINALS.indexOf(ordinal);
    const pose = cut.runs?.[known < 0 ? Number.parseInt(ordinal, 10) - 1 : known]?.[0];
    if (!pose) return [`it has no ${ordinal} width`];
    return wallFaults(cut, pose, Number(by), woods).map((fault) => `${ordinal} width: ${fault}`);
  });
}

function firstFaults(plan: PlanJson, cut: CutJson, woods: readonly FlatRegion[]): readonly string[] {
  const { runsAgainst } = cut;
  if (runsAgainst === null || runsAgainst === "batten") return [];
  const pose = cut.runs?.[0]?.[0];
  const line = /^line (\S+)$/.exec(runsAgainst);
  if (line) return lineFaults(plan, cut, pose, line[1]);
  const wall = /^wall of cut (\d+)$/.exec(runsAgainst);
  if (wall) return pose ? wallFaults(cut, pose, Number(wall[1]), woods) : [];
  if (runsAgainst === "standing wall")
    return pose && standingWalls(cut, pose, woods[cut.number - 1]).length === 0
      ? ["beside the sole stands no wall"]
      : [];
  if (["gauge edge", "far edge", "face", "back"].includes(runsAgainst))
    return pose ? edgeFaults(plan, cut, pose, runsAgainst, woods[cut.number - 1]) : [];
  return [`nothing is called ${runsAgainst}`];
}

function lineFaults(plan: PlanJson, cut: CutJson, pose: PoseXyt | undefined, id: string): readonly string[] {
  const mark = plan.marks.find((other) => other.id === id);
  if (!mark) return [`there is no line ${id}`];
  if (mark.before > cut.number) return [`line ${id} is scribed only before cut ${mark.before}`];
  if (!pose || !cut.sole) return [];
  const xs = cut.sole.map((v) => v[0]);
  // A beak is laid to its line with nose and upright side, any other sole has the line under it or along its end.
  const nose = cut.plane.kind === "snipe bill" ? (cut.plane.nose ?? 0) : null;
  const from = nose === null ? Math.min(...xs) : cut.plane.hand === "left" ? 0 : -nose;
  const to = nose === null ? Math.max(...xs) : cut.plane.hand === "left" ? nose : 0;
  const offX = mark.at[0] - pose[0];
  // Once a line is opened to a V, a leaning plane is laid into its bottom: straight under the line, not along its axis.
  const ways = [turnedBy(-pose[2], [offX, mark.at[1] - pose[1]])[0], offX];
  return ways.some((aside) => aside >= from - BESIDE_LINE_MM && aside <= to + BESIDE_LINE_MM)
    ? []
    : [`line ${id} lies ${offX.toFixed(3)} mm across from the sole's place`];
}

function wallFaults(
  cut: CutJson,
  pose: PoseXyt,
  by: number,
  woods: readonly FlatRegion[],
): readonly string[] {
  if (!(by >= 1 && by < cut.number)) return [`cut ${by} has not been made yet`];
  for (const { start, inside, outside } of standingWalls(cut, pose, woods[cut.number - 1])) {
    // Beside the wall the wood was there before the named cut and gone after it, high enough to run against.
    const up = axisOf(pose[2]);
    const beside = (wood: FlatRegion): number =>
      stretches(wood, start, up).reduce(
        (sum, [from, to]) => sum + Math.max(0, Math.min(to, outside) - Math.max(from, inside)),
        0,
      );
    if (beside(woods[by - 1]) - beside(woods[by]) >= GUIDE_WALL_MM - ROUNDED_MM) return [];
  }
  return [`beside the sole stands no wall that cut ${by} left`];
}

/** A wall beside a sole: where it is looked at just inside it, and the heights between which it stands. */
interface StandingWall {
  readonly start: Xy;
  readonly inside: number;
  readonly outside: number;
}

/** The walls beside the sole that are tall enough to run against, whoever left them. */
function standingWalls(cut: CutJson, pose: PoseXyt, before: FlatRegion): readonly StandingWall[] {
  const sole = cut.sole ?? [];
  const up = axisOf(pose[2]);
  const ends: readonly (readonly [Xy, -1 | 1])[] = [
    [[sole[0][0], sole[0][1]], -1],
    [[sole[sole.length - 1][0], sole[sole.length - 1][1]], 1],
  ];
  return ends.flatMap(([end, side]) => {
    const start = alongside(pose, end, -side * 0.02);
    const outside = topOf(stretches(before, alongside(pose, end, side * 0.02), up));
    const inside = topOf(stretches(before, start, up));
    return outside - inside < GUIDE_WALL_MM ? [] : [{ start, inside, outside }];
  });
}

function topOf(found: readonly (readonly [number, number])[]): number {
  return found.length > 0 ? found[found.length - 1][1] : 0;
}

function edgeFaults(
  plan: PlanJson,
  cut: CutJson,
  pose: PoseXyt,
  edge: string,
  before: FlatRegion,
): readonly string[] {
  const turn = cut.cant;
  const stick = [plan.stick.map((v): Xy => turnedBy(turn, [v[0], v[1]]))];
  const box = boxOf(stick);
  const side = sideOf(plan, turn, edge);
  if (side === null) return [`with the stick turned by ${turn}° the ${edge} stands at neither side`];
  const sole = cut.sole ?? [];
  const xs = [sole[0], sole[sole.length - 1]].map((v) => turnedBy(turn, inPlace(pose, [v[0], v[1]]))[0]);
  const at = side === "left" ? box.minX : box.maxX;
  const isOver = Math.min(...xs) < at - OVERHANG_MM && Math.max(...xs) > at;
  const isOverRight = Math.max(...xs) > at + OVERHANG_MM && Math.min(...xs) < at;
  const asItStands = edgeOutOfReach(cut, pose, flatRing(plan.stick), before, side);
  if (side === "left" ? isOver : isOverRight) return asItStands;
  if (!FENCED.includes(cut.plane.kind))
    return [`the ${cut.plane.kind} has no fence and does not hang over the ${edge}`];
  const reach = Math.min(...xs.map((x) => Math.abs(x - at)));
  const fence = cut.plane.fence ?? Number.POSITIVE_INFINITY;
  return reach > fence + 0.01 ? [`the fence reaches ${fence} mm, the cut begins ${reach} mm in`] : asItStands;
}

/** On which side the named edge stands once the stick is turned. */
export function sideOf(plan: PlanJson, turn: number, edge: string): "left" | "right" | null {
  const box: Box = boxOf([plan.stick.map((v): Xy => [v[0], v[1]])]);
  const outward: Record<string, Xy> = {
    "gauge edge": plan.gaugeEdge === "right" ? [1, 0] : [-1, 0],
    "far edge": plan.gaugeEdge === "right" ? [-1, 0] : [1, 0],
    face: [0, 1],
    back: [0, -1],
  };
  const [x] = turnedBy(turn, outward[edge] ?? [0, 0]);
  if (!Number.isFinite(box.minX) || Math.abs(x) < 0.5) return null;
  return x < 0 ? "left" : "right";
}
