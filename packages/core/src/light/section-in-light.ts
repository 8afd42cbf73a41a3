/** A run of moulding in the light of a lamp, as it will be seen from the front. */
import { type Point, samePoint } from "../curve/index.ts";
import { bug, fine, type Outcome, SAME_POINT_MM } from "../measure/index.ts";
import type { Section } from "../section/index.ts";
import { checkedHanging, hangOutline } from "./hang.ts";
import { checkedLamp, lightDirection, rayInSection, type SectionRay, SIGHT, trueHeightDeg } from "./lamp.ts";
import { acrossMm, type Part } from "./parts.ts";
import { type Grazed, type Reached, reached } from "./shadows.ts";
import { stretchesOf } from "./stretches.ts";
import type { Hanging, Lamp, SectionInLight, ShadowEnd, Shares, Stretch, WallShadow } from "./types.ts";

/**
 * Light, shade and shadow along the face of a straight run without ends, break points in closed form. The face runs from
 * the front of its first edge to the front of its last; what lies over or under these shows nothing from the front.
 * Troubles: `light-angle`, `light-ambient`, `light-spring`.
 */
export function sectionInLight(section: Section, lamp: Lamp, hanging: Hanging): Outcome<SectionInLight> {
  const allowed = checkedLamp(lamp);
  if (!allowed.ok) return allowed;
  const fixed = checkedHanging(hanging);
  if (!fixed.ok) return fixed;
  const direction = lightDirection(lamp);
  const ray = rayInSection(direction, hanging);
  const hung = hangOutline(section, hanging);
  const light = reached(hung.pieces, ray);
  const sight = reached(hung.pieces, SIGHT);
  const stretches = stretchesOf({ section, hung, light, sight, ray, lamp });
  return fine({
    lamp,
    hanging,
    direction,
    trueHeightDeg: trueHeightDeg(direction),
    stretches,
    shadowEnds: shadowEnds(light, stretches, ray),
    widthMm: hung.widthMm,
    projectionMm: hung.projectionMm,
    shares: sharesOf(stretches),
    onWall: shadowOnWall(light.parts, hung.widthMm, ray),
    outline: hung.pieces,
  });
}

function sharesOf(stretches: readonly Stretch[]): Shares {
  const shares = { light: 0, shade: 0, shadow: 0 };
  for (const { state, showsMm } of stretches) shares[state] += showsMm;
  return shares;
}

/** The rays that end a stretch of cast shadow, first edge to last; the caster itself is no end. */
function shadowEnds(
  { grazed }: Reached,
  stretches: readonly Stretch[],
  ray: SectionRay,
): readonly ShadowEnd[] {
  const rising = [...grazed].sort((a, b) => a.end.y - b.end.y);
  return bordersOfShadow(stretches).flatMap((border): readonly ShadowEnd[] => {
    const found = grazedAt(rising, border);
    if (found === undefined) return [];
    const { caster, end } = found;
    return [{ caster, end, rayMm: Math.hypot(end.x - caster.x, end.y - caster.y) / ray.shareRatio }];
  });
}

/** Places where cast shadow and something else meet, or the face ends in shadow. */
function bordersOfShadow(stretches: readonly Stretch[]): readonly Point[] {
  const isShadow = (stretch: Stretch | undefined): boolean => stretch?.state === "shadow";
  return stretches.flatMap((stretch, index) => [
    ...(isShadow(stretch) && !isShadow(stretches[index - 1]) ? [stretch.from] : []),
    ...(isShadow(stretch) && !isShadow(stretches[index + 1]) ? [stretch.to] : []),
  ]);
}

/** The ray that ends at a place, among rays sorted by how high they end. */
function grazedAt(rising: readonly Grazed[], place: Point): Grazed | undefined {
  let low = 0;
  let high = rising.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((rising[middle]?.end.y ?? 0) < place.y - END_SLACK_MM) low = middle + 1;
    else high = middle;
  }
  for (let index = low; index < rising.length; index++) {
    const grazed = rising[index];
    if (grazed === undefined || grazed.end.y > place.y + END_SLACK_MM) return undefined;
    if (samePoint(grazed.end, place, END_SLACK_MM)) return grazed;
  }
  return undefined;
}

/** A ray held to a joint may end so far from it. */
const END_SLACK_MM = 2 * SAME_POINT_MM;

/** The wall stands at x = 0, where a ray across the light at a comes to y = a / x of its way. */
function shadowOnWall(parts: readonly Part[], widthMm: number, ray: SectionRay): WallShadow {
  const casters = parts.map(({ from }) => ({ from, heightMm: acrossMm(ray, from) / ray.way.x }));
  const [one] = casters;
  if (one === undefined) return bug("an outline has no parts", {});
  const first = casters.reduce((best, caster) => (caster.heightMm > best.heightMm ? caster : best), one);
  const last = casters.reduce((best, caster) => (caster.heightMm < best.heightMm ? caster : best), one);
  return {
    beyondFirstMm: Math.max(0, first.heightMm - widthMm),
    beyondLastMm: Math.max(0, 0 - last.heightMm),
    firstCaster: first.from,
    lastCaster: last.from,
  };
}
