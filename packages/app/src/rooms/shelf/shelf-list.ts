/** The shelf as the room lists it: by kind, small before large, with what each plane does in this job. */
import type { Plan } from "mouldwright/cutting";
import { PLANE_KINDS, type Plane, type Shelf } from "mouldwright/shelf";

export interface PlaneGroup {
  readonly kind: Plane["kind"];
  readonly planes: readonly Plane[];
}

/** Planes by kind in the order of the shelf file's kinds, each kind from small to large, left hand before right. */
export function groupsOf(shelf: Shelf): readonly PlaneGroup[] {
  return PLANE_KINDS.flatMap((kind): readonly PlaneGroup[] => {
    const planes = shelf.planes.filter((plane) => plane.kind === kind);
    return planes.length === 0 ? [] : [{ kind, planes: [...planes].sort(bySize) }];
  });
}

function bySize(one: Plane, other: Plane): number {
  return sizeOf(one) - sizeOf(other) || handOf(one).localeCompare(handOf(other));
}

/** What a plane is sorted by within its kind, mm. */
function sizeOf(plane: Plane): number {
  switch (plane.kind) {
    case "hollow":
    case "round":
      return plane.radiusMm;
    case "plough":
      return plane.widthsMm[0] ?? 0;
    case "shaped":
      return 0;
    default:
      return plane.widthMm;
  }
}

function handOf(plane: Plane): string {
  return "hand" in plane ? (plane.hand ?? "right") : "";
}

export interface PlaneUse {
  /** Numbers of the cuts it makes. */
  readonly cuts: readonly number[];
  /** Names of the parts that those cuts make. */
  readonly parts: readonly string[];
}

/** What each plane does in a plan, by its id; planes that do nothing are not in it. */
export function usesOf(plan: Plan): ReadonlyMap<string, PlaneUse> {
  const uses = new Map<string, PlaneUse>();
  for (const { plane, number } of plan.cuts) {
    const use = uses.get(plane.id) ?? { cuts: [], parts: [] };
    const made = plan.parts.filter(({ madeBy }) => madeBy.includes(number)).map(({ name }) => name);
    const parts = [...use.parts, ...made.filter((name) => name !== "" && !use.parts.includes(name))];
    uses.set(plane.id, { cuts: [...use.cuts, number], parts });
  }
  return uses;
}

/** Numbers as a maker reads them: `1, 3–5 and 9`. */
export function numbersInWords(numbers: readonly number[]): string {
  const runs: (readonly [number, number])[] = [];
  for (const number of [...new Set(numbers)].sort((a, b) => a - b)) {
    const last = runs[runs.length - 1];
    if (last !== undefined && number === last[1] + 1) runs[runs.length - 1] = [last[0], number];
    else runs.push([number, number]);
  }
  const words = runs.flatMap(([from, to]) => {
    if (from === to) return [String(from)];
    return to === from + 1 ? [String(from), String(to)] : [`${from}\u2013${to}`];
  });
  if (words.length < 2) return words.join("");
  return `${words.slice(0, -1).join(", ")} and ${words[words.length - 1]}`;
}
