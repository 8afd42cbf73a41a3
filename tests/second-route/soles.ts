/** Whether a cut's sole is the sole of the plane that it names, from the shelf format's own words. */
import { arcOf, bulgeOf } from "./flat.ts";
import { SAME_NUMBER } from "./limits.ts";
import type { BulgedVertex, CutJson, PlaneJson, PlanJson } from "./plan-json.ts";

/**
 * Whether the cut's entry holds all that the shelf's does. A plough's may add which iron is in, since its sole cannot be
 * told from the list of its irons.
 */
function saysAllOf(onShelf: PlaneJson, plane: PlaneJson): boolean {
  const said = plane as unknown as Record<string, unknown>;
  return Object.entries(onShelf).every(([key, value]) =>
    key === "name" && plane.kind === "plough"
      ? String(said[key]).startsWith(String(value))
      : JSON.stringify(said[key]) === JSON.stringify(value),
  );
}

/** Faults, in words; none when all is well. Bead planes, side planes and shaped soles carry too little to check. */
export function soleFaults(plan: PlanJson, cut: CutJson): readonly string[] {
  const { plane } = cut;
  const sole = cut.sole ?? [];
  const faults: string[] = [];
  const onShelf = plan.shelf.planes.find((other) => other.id === plane.id);
  if (onShelf === undefined) faults.push(`${plane.id} does not stand on the shelf`);
  else if (!saysAllOf(onShelf, plane)) faults.push(`${plane.id} is another plane on the shelf`);
  const width = (sole.at(-1)?.[0] ?? 0) - (sole[0]?.[0] ?? 0);
  if (!(width > 0)) return [...faults, "the sole does not run from left to right"];
  switch (plane.kind) {
    case "hollow":
    case "round":
      return [...faults, ...curvedFaults(plane.kind, plane.radius, plane.width, sole)];
    case "rebate":
    case "moving fillister":
    case "smoother":
    case "plough": {
      const widths = plane.widths ?? [plane.width ?? 0];
      if (sole.length !== 2 || bulgeOf(sole[0]) !== 0 || sole.some((v) => Math.abs(v[1]) > SAME_NUMBER))
        faults.push("a flat plane's sole is one flat");
      if (!widths.some((w) => Math.abs(w - width) < SAME_NUMBER))
        faults.push(`the sole is ${width} mm wide, the plane ${widths.join(" or ")}`);
      return faults;
    }
    case "snipe bill":
      return [...faults, ...snipeFaults(cut, sole)];
    default:
      return faults;
  }
}

function curvedFaults(
  kind: string,
  radius: number | undefined,
  width: number | undefined,
  sole: readonly BulgedVertex[],
): readonly string[] {
  if (radius === undefined || width === undefined || sole.length !== 2) return ["a curved sole is one arc"];
  const [a, b] = sole;
  const bulge = bulgeOf(a);
  if (bulge > 0 !== (kind === "round")) return [`a ${kind}'s sole bends the other way`];
  const arc = arcOf([a[0], a[1]], [b[0], b[1]], bulge);
  const faults: string[] = [];
  if (Math.abs(arc.radiusMm - radius) > SAME_NUMBER * 10)
    faults.push(`radius ${arc.radiusMm}, not ${radius}`);
  if (Math.abs(b[0] - a[0] - width) > SAME_NUMBER) faults.push(`width ${b[0] - a[0]}, not ${width}`);
  // The origin lies on the sole in its middle: the centre is one radius above a round's, below a hollow's.
  const centreY = kind === "round" ? radius : -radius;
  if (Math.hypot(arc.centre[0], arc.centre[1] - centreY) > SAME_NUMBER * 10)
    faults.push("the origin does not lie in the middle of the sole");
  return faults;
}

/** Upright side at x = 0, nose, then the flank at its slope up to the beak's width; the right hand is the mirror image. */
function snipeFaults({ plane }: CutJson, sole: readonly BulgedVertex[]): readonly string[] {
  const { nose, width, slope, hand } = plane;
  if (nose === undefined || width === undefined || slope === undefined)
    return ["a snipe bill lacks its sizes"];
  const rise = (width - nose) * Math.tan((slope * Math.PI) / 180);
  const left: readonly (readonly [number, number])[] = [
    [0, 0],
    [nose, 0],
    [width, rise],
  ];
  const wanted = hand === "left" ? left : left.map(([x, y]) => [-x, y] as const).reverse();
  const isSame =
    sole.length === wanted.length &&
    wanted.every(([x, y], i) => Math.hypot(sole[i][0] - x, sole[i][1] - y) < SAME_NUMBER * 10);
  return isSame ? [] : [`the sole ${JSON.stringify(sole)} is not that of a ${hand} hand snipe bill`];
}
