/** A plan file seen as the bench sees it: the wood before and after each cut, and every run of a plane on it. */
import { type FlatRegion, flatRing } from "../second-route/flat.ts";
import type { BulgedVertex, CutJson, PlanJson, PoseXyt, Xy } from "../second-route/plan-json.ts";
import { alongside, stretches } from "../second-route/rays.ts";
import { axisOf, inPlace } from "../second-route/strips.ts";

/** Chord error here, mm: nothing below is told apart finer than some hundredths. */
const CHORD_MM = 0.002;

/** How far beside a sole's end the wood is looked at, mm. */
const BESIDE_MM = 0.03;

export const FLAT_KINDS: readonly string[] = ["rebate", "moving fillister", "plough", "smoother"];
export const CURVED_KINDS: readonly string[] = ["hollow", "round"];

export interface PartJson {
  readonly id: string;
  readonly name: string;
  readonly madeBy: readonly number[];
}

/** What is asked of here beside what the second route reads. */
export interface SaidPlan extends PlanJson {
  readonly parts: readonly PartJson[];
  readonly warnings: readonly string[];
  readonly cuts: readonly SaidCut[];
}

export interface SaidCut extends CutJson {
  readonly says: string;
  readonly doneWhen: string;
}

/** One cut of a plane with the wood round it, as the file tells it. */
export interface CutOnBench {
  readonly cut: SaidCut;
  readonly sole: readonly BulgedVertex[];
  readonly runs: readonly (readonly PoseXyt[])[];
  readonly before: FlatRegion;
  readonly after: FlatRegion;
}

export function cutsOnBench(plan: SaidPlan): readonly CutOnBench[] {
  const woods: FlatRegion[] = [[flatRing(plan.stick, CHORD_MM)]];
  for (const cut of plan.cuts) woods.push(cut.after.map((ring) => flatRing(ring, CHORD_MM)));
  return plan.cuts.flatMap((cut, i) =>
    cut.sole && cut.runs
      ? [{ cut, sole: cut.sole, runs: cut.runs, before: woods[i], after: woods[i + 1] }]
      : [],
  );
}

/** Lean of the plane in the hand, degrees, -180 to 180: its tilt and how the stick is turned. */
export function leanDeg(cut: CutJson, pose: PoseXyt): number {
  const whole = (((pose[2] + cut.cant) % 360) + 360) % 360;
  return whole > 180 ? whole - 360 : whole;
}

export function endsOf(sole: readonly BulgedVertex[]): readonly [Xy, Xy] {
  const [first, last] = [sole[0], sole[sole.length - 1]];
  return [
    [first[0], first[1]],
    [last[0], last[1]],
  ];
}

export function endsInPlace(sole: readonly BulgedVertex[], pose: PoseXyt): readonly [Xy, Xy] {
  const [left, right] = endsOf(sole);
  return [inPlace(pose, left), inPlace(pose, right)];
}

/** Heights of wood standing along the plane's sides in this pose, left and right, from the sole's ends up, mm. */
export function standingBeside(
  wood: FlatRegion,
  sole: readonly BulgedVertex[],
  pose: PoseXyt,
): readonly [number, number] {
  return standingAt(wood, sole, pose, BESIDE_MM);
}

/** The same just inside the sole's ends: what of it the plane meets on its way down. */
export function standingWithin(
  wood: FlatRegion,
  sole: readonly BulgedVertex[],
  pose: PoseXyt,
): readonly [number, number] {
  return standingAt(wood, sole, pose, -BESIDE_MM);
}

function standingAt(
  wood: FlatRegion,
  sole: readonly BulgedVertex[],
  pose: PoseXyt,
  outwardMm: number,
): readonly [number, number] {
  const [left, right] = endsOf(sole);
  const height = (end: Xy, side: -1 | 1): number =>
    stretches(wood, alongside(pose, end, side * outwardMm), axisOf(pose[2])).reduce(
      (sum, [from, to]) => sum + to - from,
      0,
    );
  return [height(left, -1), height(right, 1)];
}

/** New wall left and right of one pose, mm: stands after the cut, and was inside the wood before it. */
export function newWallBeside({ before, after, sole }: CutOnBench, pose: PoseXyt): readonly [number, number] {
  const outside = standingBeside(after, sole, pose);
  const inside = standingWithin(before, sole, pose);
  return [Math.min(outside[0], inside[0]), Math.min(outside[1], inside[1])];
}
