/**
 * Re-cuts a plan from its file alone, by another way than the program's: nothing here comes from its packages.
 *
 * Arcs are flattened from their bulges, every strip is built from sole and pose, the wood is cut by polygon-clipping,
 * areas are compared by upright slabs, walls are measured by rays and seats by letting the plane down. README.md says
 * what is held against what.
 */
import type { MultiPolygon } from "polygon-clipping";
import { areaMm2, NoAnswer, outlinesOf, regionOf, without } from "./booleans.ts";
import { apartMm, missingDepth } from "./face.ts";
import { type Finding, mm } from "./finding.ts";
import {
  boundaryDistance,
  boundaryPlaces,
  boxOf,
  type FlatOutline,
  type FlatRegion,
  flatRing,
} from "./flat.ts";
import { faceReport, standing } from "./left-over.ts";
import { AREA_AGREES_MM2, OVERCUT_MM, SHAVING_MM2, THREAD_MM } from "./limits.ts";
import { markFaults } from "./lines.ts";
import { type CutJson, missingKeys, nullNumbers, type PlanJson } from "./plan-json.ts";
import { planeFindings } from "./plane-checks.ts";
import { differenceAreaMm2 } from "./slabs.ts";
import { sweptBy } from "./strips.ts";

export type { Finding, Rule } from "./finding.ts";

/** Everything that does not hold in a plan; nothing when it holds. */
export function examine(planJson: unknown): Finding[] {
  const missing = missingKeys(planJson);
  if (missing.length > 0) return [{ rule: "file", says: `missing: ${missing.join(", ")}` }];
  const plan = planJson as PlanJson;
  const nulls = nullNumbers(plan);
  if (nulls.length > 0) return [{ rule: "file", says: `no number at ${nulls.join(", ")}` }];
  try {
    return findingsOf(plan);
  } catch (error) {
    if (error instanceof NoAnswer) return [{ rule: "no answer", says: error.message }];
    throw error;
  }
}

function findingsOf(plan: PlanJson): Finding[] {
  const found: Finding[] = [];
  const planned: FlatRegion = [flatRing(plan.planned)];
  const drawn: FlatRegion = [flatRing(plan.section)];
  const stick: FlatRegion = [flatRing(plan.stick)];
  const reachMm = reachOver(stick);
  const woods: FlatRegion[] = [stick];
  let wood = regionOf(stick);

  const apart = apartMm(planned, drawn);
  if (apart > plan.tolerance + OVERCUT_MM)
    found.push({ rule: "planned", says: `the planned face lies ${mm(apart)} off the drawing` });
  plan.cuts.forEach((cut, i) => {
    if (cut.number !== i + 1) found.push({ rule: "file", cut: i + 1, says: `it is numbered ${cut.number}` });
    const left = without(wood, sweepOf(cut, reachMm));
    const after = outlinesOf(left);
    woods.push(after);
    found.push(...woodFindings(cut, planned, wood, left, after));
    if (cut.sole && cut.runs)
      found.push(...planeFindings({ plan, cut, sole: cut.sole, runs: cut.runs, woods, planned }));
    wood = left;
  });
  for (const mark of plan.marks)
    for (const fault of markFaults(plan, mark, woods))
      found.push({ rule: "mark", cut: mark.before, says: `${mark.id}: ${fault}` });
  return [...found, ...finishFindings(plan, drawn, woods[woods.length - 1])];
}

/** How far up a strip must be drawn to pass right through the stick, whatever its lean. */
function reachOver(stick: FlatRegion): number {
  const box = boxOf(stick);
  return 3 * (box.maxX - box.minX + box.maxY - box.minY) + 50;
}

function sweepOf(cut: CutJson, reachMm: number): MultiPolygon {
  if (cut.sole && cut.runs) return sweptBy(cut.sole, cut.runs, reachMm);
  return regionOf([rightOfSaw(cut, reachMm)]);
}

/** What lies right of a saw's line, seen from its first end to its second. */
function rightOfSaw(cut: CutJson, reachMm: number): FlatOutline {
  const [[ax, ay], [bx, by]] = cut.line ?? [
    [0, 0],
    [0, 0],
  ];
  const length = Math.hypot(bx - ax, by - ay);
  const ux = ((bx - ax) / length) * reachMm;
  const uy = ((by - ay) / length) * reachMm;
  return [
    [ax - ux, ay - uy],
    [ax - ux + uy, ay - uy - ux],
    [bx + ux + uy, by + uy - ux],
    [bx + ux, by + uy],
  ];
}

/** What a cut took, left, overcut and parted off. */
function woodFindings(
  cut: CutJson,
  planned: FlatRegion,
  before: MultiPolygon,
  left: MultiPolygon,
  after: FlatRegion,
): readonly Finding[] {
  const found: Finding[] = [];
  const takesMm2 = areaMm2(before) - areaMm2(left);
  if (Math.abs(takesMm2 - cut.takes) > AREA_AGREES_MM2)
    found.push({
      rule: "takes",
      cut: cut.number,
      says: `it takes ${takesMm2.toFixed(4)} mm², said ${cut.takes}`,
    });
  const picture = standing(cut.after.map((ring) => flatRing(ring)));
  const apartMm2 = differenceAreaMm2(picture, standing(after));
  const differsMm2 = apartMm2 > AREA_AGREES_MM2 ? apartMm2 - crumbsMm2(left, picture) : apartMm2;
  if (differsMm2 > AREA_AGREES_MM2)
    found.push({
      rule: "after",
      cut: cut.number,
      says: `what it leaves differs by ${differsMm2.toFixed(4)} mm²`,
    });
  const overcut = missingDepth(planned, after);
  if (overcut.depthMm > OVERCUT_MM)
    found.push({
      rule: "overcut",
      cut: cut.number,
      says: `${mm(overcut.depthMm)} at ${overcut.at.map(mm).join(", ")}`,
    });
  const fallsMm2 = largestFallenMm2(before, left);
  if (fallsMm2 > SHAVING_MM2 && cut.plane.kind !== "saw")
    found.push({ rule: "loose wood", cut: cut.number, says: `${fallsMm2.toFixed(3)} mm² falls off` });
  return found;
}

/**
 * Area of what the picture leaves out of the wood because it is a crumb: no larger than a shaving, and at most a thread of
 * it touches the rest. Whether a crumb that touches in one point is a piece of its own is rounding.
 */
function crumbsMm2(left: MultiPolygon, picture: FlatRegion): number {
  const offMm = boundaryDistance(picture, THREAD_MM);
  return without(left, regionOf(picture)).reduce((sum, piece) => {
    const places = [...boundaryPlaces(outlinesOf([piece]), CRUMB_STEP_MM)];
    const touchesMm = places.filter((p) => offMm(p) < TOUCHES_MM).length * CRUMB_STEP_MM;
    return areaMm2([piece]) <= SHAVING_MM2 && touchesMm < THREAD_MM ? sum + areaMm2([piece]) : sum;
  }, 0);
}

/** Places along a crumb's outline that are looked at stand so far apart; what lies so near touches, mm. */
const CRUMB_STEP_MM = 0.01;
const TOUCHES_MM = 1e-3;

/** Area of the largest piece that a cut parts off: pieces of what was the stick before it, but for the largest. */
function largestFallenMm2(before: MultiPolygon, left: MultiPolygon): number {
  if (left.length < 2) return 0;
  const stick = before.reduce((a, b) => (areaMm2([b]) > areaMm2([a]) ? b : a));
  const shares = left.map((piece) => areaMm2([stick]) - areaMm2(without([stick], [piece])));
  return shares.sort((a, b) => b - a)[1] ?? 0;
}

function finishFindings(plan: PlanJson, drawn: FlatRegion, left: FlatRegion): readonly Finding[] {
  const face = faceReport(plan, drawn, left);
  const found = [...face.findings];
  for (const [name, said, [least, most]] of [
    ["proud", plan.finish.proud, face.proudMm],
    ["under", plan.finish.under, [face.underMm, face.underMm]],
  ] as const)
    if (said < least - 2 * OVERCUT_MM || said > most + 2 * OVERCUT_MM)
      found.push({
        rule: "finish said",
        says: `${name} is said to be ${mm(said)} and is ${mm(least)} to ${mm(most)}`,
      });
  return found;
}
