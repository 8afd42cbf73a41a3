/** What a plane runs against: flat planes that cut a wall, and any plane that leans far. */

import { edgeOutOfReach } from "../second-route/edges.ts";
import { mm } from "../second-route/finding.ts";
import { boxOf, flatRing, turnedBy } from "../second-route/flat.ts";
import { sideOf } from "../second-route/guides.ts";
import type { PoseXyt, Xy } from "../second-route/plan-json.ts";
import {
  type CutOnBench,
  endsInPlace,
  FLAT_KINDS,
  leanDeg,
  newWallBeside,
  type SaidPlan,
  standingBeside,
} from "./bench.ts";
import type { Said } from "./rules.ts";

/** A wall to be cut is one from here on, mm. */
const WALL_MM = 0.25;

/** Beyond this no hand holds a plane by eye, degrees, with half a degree for rounding. */
const FREE_LEAN_DEG = 45.5;

/** A seat that lifts the plane by this share of its width holds it well. */
const WELL_HELD_RATIO = 1 / 40;

const EDGES: Readonly<Record<string, Xy>> = {
  "gauge edge": [-1, 0],
  "far edge": [1, 0],
  face: [0, 1],
  back: [0, -1],
};

/** Flat planes that are set down in the middle of a face and have nothing there to run against. */
export function droppedIn(plan: SaidPlan, cuts: readonly CutOnBench[]): readonly Said[] {
  return cuts.flatMap((made): Said[] => {
    const { cut, sole, runs, after } = made;
    if (!FLAT_KINDS.includes(cut.plane.kind) || cut.runsAgainst === "batten") return [];
    return runs.flatMap((run, i): Said[] => {
      const pose = run[0];
      const walls = newWallBeside(made, pose);
      if (Math.max(...walls) < WALL_MM) return [];
      const which = runs.length > 1 ? `run ${i + 1} of the` : "the";
      const isFreeOfEdges = !overhangs(plan, made, pose);
      const standing = Math.min(...standingBeside(after, sole, pose));
      if (cut.plane.kind === "moving fillister" && standing > WALL_MM)
        return [
          {
            cut: cut.number,
            says: `${which} fillister's fence lies under its own sole, and ${mm(standing)} of wood stands on both sides`,
          },
        ];
      if (cut.plane.kind === "plough" || !isFreeOfEdges) return [];
      if (Math.min(...walls) >= WALL_MM)
        return [
          { cut: cut.number, says: `${which} ${cut.plane.kind} plane is dropped in between two new walls` },
        ];
      if (runsAlongToldWall(cuts, made, i)) return [];
      if (cut.runsAgainst !== null && cut.runsAgainst in EDGES)
        return [
          {
            cut: cut.number,
            says: `${which} ${cut.plane.kind} plane does not reach the ${cut.runsAgainst} it is to run against`,
          },
        ];
      return [];
    });
  });
}

/** How near its side a wall has to stand that a plane runs along, mm, and how high it was left. */
const ALONG_MM = 0.3;
const LED_BY_MM = 0.5;
const NTH = ["first", "second", "third", "fourth"];

/** Whether the cut says of one of its runs that it goes along an earlier cut's wall, and that wall stands at its side. */
function runsAlongToldWall(
  cuts: readonly CutOnBench[],
  { cut, sole, runs }: CutOnBench,
  run: number,
): boolean {
  const told = new RegExp(`the ${NTH[run]} along the wall of cut (\\d+)`).exec(cut.says);
  const by = cuts.find((other) => other.cut.number === Number(told?.[1]) && other.cut.number < cut.number);
  const pose = runs[run]?.[0];
  if (!by || !pose) return false;
  const across = (at: Xy) => turnedBy(-pose[2], at)[0];
  const ownEnds = endsInPlace(sole, pose).map(across);
  return by.runs.some(([of]) => {
    if (!of) return false;
    const walls = newWallBeside(by, of);
    return endsInPlace(by.sole, of).some(
      (end, side) =>
        (walls[side] ?? 0) >= LED_BY_MM && Math.abs((ownEnds[side] ?? Infinity) - across(end)) <= ALONG_MM,
    );
  });
}

/** Whether the sole hangs over the edge that the cut names, so that a fence or a finger finds it. */
function overhangs(plan: SaidPlan, { cut, sole }: CutOnBench, pose: PoseXyt): boolean {
  const outward = EDGES[cut.runsAgainst ?? ""];
  if (!outward) return false;
  const away = plan.gaugeEdge === "right" && outward[1] === 0 ? -outward[0] : outward[0];
  const [side] = turnedBy(cut.cant, [away, outward[1]]);
  const box = boxOf([flatRing(plan.stick).map((p) => turnedBy(cut.cant, p))]);
  const xs = endsInPlace(sole, pose).map((end) => turnedBy(cut.cant, end)[0]);
  return side < 0 ? Math.min(...xs) < box.minX : Math.max(...xs) > box.maxX;
}

/** Flat planes whose fence would have to hang deeper than any, pass its arms through wood, or bear on no upright edge. */
export function fencesOutOfReach(plan: SaidPlan, cuts: readonly CutOnBench[]): readonly Said[] {
  return cuts.flatMap(({ cut, runs, before }): Said[] => {
    const edge = cut.runsAgainst ?? "";
    if (!FLAT_KINDS.includes(cut.plane.kind) || !(edge in EDGES)) return [];
    const side = sideOf(plan, cut.cant, edge);
    if (side === null) return [{ cut: cut.number, says: `the ${edge} stands at neither side` }];
    return edgeOutOfReach(cut, runs[0][0], flatRing(plan.stick), before, side).map((says) => ({
      cut: cut.number,
      says: `${edge}: ${says}`,
    }));
  });
}

/** Planes that lean beyond 45° in the hand with neither a guide nor a good seat. */
export function leansFree(cuts: readonly CutOnBench[]): readonly Said[] {
  return cuts.flatMap(({ cut, sole, runs }): Said[] => {
    const lean = Math.max(...runs.map((run) => Math.abs(leanDeg(cut, run[0]))));
    if (lean <= FREE_LEAN_DEG) return [];
    const isGuided = cut.runsAgainst !== null && !cut.runsAgainst.startsWith("line ");
    const width = sole[sole.length - 1][0] - sole[0][0];
    const isWellHeld = cut.seat !== null && cut.seat.lift >= width * WELL_HELD_RATIO;
    return isGuided || isWellHeld
      ? []
      : [
          {
            cut: cut.number,
            says: `the ${cut.plane.kind} begins leaned ${Math.round(lean)}° with nothing to guide it`,
          },
        ];
  });
}
