/** How two plans differ, as paths and values; nothing when they are the same within the slack. */
import { flatRing } from "../second-route/flat.ts";
import type { BulgedVertex, CutJson, PlanJson, PoseXyt, Xy } from "../second-route/plan-json.ts";
import { differenceAreaMm2 } from "../second-route/slabs.ts";

/** All that differs between two values by more than the slack in a number, or at all in anything else. */
export function differences(one: unknown, other: unknown, slack: number, path = "plan"): readonly string[] {
  if (typeof one === "number" && typeof other === "number")
    return Math.abs(one - other) <= slack ? [] : [`${path}: ${one}, ${other}`];
  if (Array.isArray(one) && Array.isArray(other)) {
    if (one.length !== other.length) return [`${path}: ${one.length} entries, ${other.length}`];
    return one.flatMap((value, i) => differences(value, other[i], slack, `${path}[${i}]`));
  }
  if (typeof one === "object" && typeof other === "object" && one !== null && other !== null) {
    const keys = [...new Set([...Object.keys(one), ...Object.keys(other)])];
    return keys.flatMap((key) =>
      differences(
        (one as Record<string, unknown>)[key],
        (other as Record<string, unknown>)[key],
        slack,
        `${path}.${key}`,
      ),
    );
  }
  return one === other ? [] : [`${path}: ${JSON.stringify(one)}, ${JSON.stringify(other)}`];
}

/** Figures of a cut are written with four decimals; a mirror may round the last one the other way. */
const FIGURE_MM = 1.5e-4;
const PLACE_MM = 2e-6;
const AREA_MM2 = 5e-3;
/** Heights of what is left are written with three decimals. */
const HEIGHT_MM = 1.5e-3;

/** Where a plan is not the mirror image of another, about the stick's middle; sentences are not looked at. */
export function mirrorDifferences(plan: PlanJson, mirrored: PlanJson): readonly string[] {
  const width = Math.max(...plan.stick.map((v) => v[0])) + Math.min(...plan.stick.map((v) => v[0]));
  const flip = ([x, y]: Xy): Xy => [width - x, y];
  const found: string[] = [];
  const hold = (path: string, one: unknown, other: unknown, slack: number) =>
    found.push(...differences(one, other, slack, path));
  if (plan.cuts.length !== mirrored.cuts.length)
    return [`cuts: ${plan.cuts.length}, ${mirrored.cuts.length}`];
  if (plan.marks.length !== mirrored.marks.length)
    return [`marks: ${plan.marks.length}, ${mirrored.marks.length}`];
  plan.cuts.forEach((cut, i) => {
    const other = mirrored.cuts[i];
    const path = `cuts[${i}]`;
    hold(path, factsOf(cut), factsOf(other), FIGURE_MM);
    hold(`${path}.wall`, [cut.wall[1], cut.wall[0]], other.wall, FIGURE_MM);
    hold(
      `${path}.seat.shift`,
      cut.seat ? -cut.seat.shift : null,
      other.seat ? other.seat.shift : null,
      FIGURE_MM,
    );
    hold(
      `${path}.runs`,
      cut.runs?.map((run) => run.map(poseFlipped)),
      other.runs,
      PLACE_MM,
    );
    const left = cut.after.map((ring) => flatRing(ring).map(flip));
    const apart = differenceAreaMm2(
      left,
      other.after.map((ring) => flatRing(ring as readonly BulgedVertex[])),
    );
    if (apart > AREA_MM2) found.push(`${path}.after: ${apart} mm² apart`);
  });
  const { proud, under, rms } = plan.finish;
  const other = mirrored.finish;
  hold(
    "finish",
    { proud, under, rms },
    { proud: other.proud, under: other.under, rms: other.rms },
    HEIGHT_MM,
  );
  plan.marks.forEach((mark, i) => {
    const other = mirrored.marks[i];
    hold(`marks[${i}].at`, flip(mark.at), other.at, PLACE_MM);
    hold(`marks[${i}]`, { ...mark, at: 0 }, { ...other, at: 0 }, PLACE_MM);
  });
  if (plan.uncut.length !== mirrored.uncut.length)
    found.push(`uncut: ${plan.uncut.length}, ${mirrored.uncut.length}`);
  plan.uncut.forEach((place, i) => {
    // Both lists follow their rings, which begin at different corners: a place is known by its ends.
    const other = mirrored.uncut.find(
      (one) => isNear(one.from, flip(place.to)) && isNear(one.to, flip(place.from)),
    );
    if (other === undefined) found.push(`uncut[${i}]: not in the mirrored plan`);
    else hold(`uncut[${i}]`, uncutFacts(place), uncutFacts(other), HEIGHT_MM);
  });
  return found;

  function poseFlipped([x, y, t]: PoseXyt): PoseXyt {
    return [width - x, y, t === 0 ? 0 : -t];
  }
}

function isNear(a: Xy, b: Xy): boolean {
  return Math.hypot(a[0] - b[0], a[1] - b[1]) < FIGURE_MM;
}

function factsOf(cut: CutJson) {
  const { number, purpose, takes, runsAgainst, fence, setting } = cut;
  const cant = cut.cant === 180 ? 180 : Math.abs(cut.cant);
  return {
    number,
    purpose,
    cant,
    plane: cut.plane.id,
    takes,
    runsAgainst,
    fence,
    setting,
    lift: cut.seat?.lift,
  };
}

function uncutFacts({ left, rule }: PlanJson["uncut"][number]) {
  return { left, rule };
}
