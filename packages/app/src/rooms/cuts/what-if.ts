/** What a maker may ask: the job changed so, and how its plan would stand beside the one there is. */
import type { Plan } from "mouldwright/cutting";
import type { Job } from "mouldwright/job";
import { planeName } from "mouldwright/sheets";

export type WayName = "flat" | "bevelled" | "canted";
export type Saving = "fewer planes" | "fewer settings" | "fewer strokes";

export type Wish =
  | { readonly kind: "without"; readonly planeId: string; readonly name: string }
  | { readonly kind: "with"; readonly planeId: string; readonly name: string }
  | { readonly kind: "way"; readonly way: WayName | null }
  | { readonly kind: "save"; readonly on: Saving | null }
  | { readonly kind: "lean"; readonly greatestDeg: number }
  | { readonly kind: "swap"; readonly first: number; readonly second: number }
  | { readonly kind: "unswap" };

const WAY_WORDS: Readonly<Record<WayName, string>> = {
  flat: "lying flat",
  bevelled: "bevelled first",
  canted: "in a canted jaw",
};

/** The wish in a few words, for the button that undoes it and for the heading of the comparison. */
export function wishWords(wish: Wish): string {
  switch (wish.kind) {
    case "without":
      return `without the ${wish.name}`;
    case "with":
      return `with the ${wish.name} again`;
    case "way":
      return wish.way === null ? "whichever way is best" : WAY_WORDS[wish.way];
    case "save":
      return wish.on ?? "no saving preferred";
    case "lean":
      return `leaned ${wish.greatestDeg}° at most`;
    case "swap":
      return `cuts ${wish.first} and ${wish.second} swapped`;
    case "unswap":
      return "cuts in the order as planned";
  }
}

/** The job with the wish in its way of working; `plan` is the one whose cuts a swap names. */
export function jobWith(job: Job, plan: Plan, wish: Wish): Job {
  const way = job.way ?? {};
  switch (wish.kind) {
    case "without":
      return withWay(job, { ...way, without: [...new Set([...(way.without ?? []), wish.planeId])] });
    case "with": {
      const without = (way.without ?? []).filter((word) => word !== wish.planeId && word !== wish.name);
      return withWay(job, { ...way, without: without.length === 0 ? undefined : without });
    }
    case "way":
      return withWay(job, { ...way, ways: wish.way === null ? undefined : [wish.way] });
    case "save":
      return withWay(job, { ...way, prefer: wish.on ?? undefined });
    case "lean":
      return withWay(job, { ...way, greatestLeanDeg: wish.greatestDeg });
    case "swap": {
      const planeIn = (number: number): string =>
        plan.cuts.find((cut) => cut.number === number)?.plane.id ?? "";
      const swap = {
        first: wish.first,
        second: wish.second,
        cuts: plan.cuts.length,
        planes: [planeIn(wish.first), planeIn(wish.second)] as [string, string],
      };
      return withWay(job, { ...way, swaps: [...(way.swaps ?? []), swap] });
    }
    case "unswap":
      return withWay(job, { ...way, swaps: undefined });
  }
}

type WayWithGaps = {
  readonly [Key in keyof NonNullable<Job["way"]>]: NonNullable<Job["way"]>[Key] | undefined;
};

/** Keys that say nothing are left out, and so is a way that says nothing at all. */
function withWay(job: Job, way: WayWithGaps): Job {
  const { way: _, ...rest } = job;
  const said = Object.entries(way).filter(([, value]) => value !== undefined);
  return said.length === 0 ? rest : { ...rest, way: Object.fromEntries(said) };
}

/** Each plane of the plan once: its id and what it is called. Saws have no place on the shelf. */
export function planesOf(plan: Plan): readonly { readonly id: string; readonly name: string }[] {
  const byId = new Map(
    plan.cuts
      .filter(({ plane }) => plane.kind !== "saw")
      .map((cut) => [cut.plane.id, cut.plane.kind === "plough" ? "plough" : planeName(cut)]),
  );
  return [...byId].map(([id, name]) => ({ id, name }));
}

export interface Compared {
  readonly what: string;
  readonly before: string;
  readonly after: string;
  /** Whether the new one is the better; null where they are alike or neither is better. */
  readonly isBetter: boolean | null;
}

/** How two plans stand beside each other, figure by figure. */
export function compared(before: Plan, after: Plan): readonly Compared[] {
  const settings = (plan: Plan): number => new Set(plan.cuts.map(({ setting }) => setting)).size;
  const minutes = (plan: Plan): number =>
    Math.round(plan.time?.totalMinutes ?? plan.cuts.reduce((sum, cut) => sum + cut.minutes, 0));
  const figures: readonly (readonly [string, number, number])[] = [
    ["Cuts", before.cuts.length, after.cuts.length],
    ["Planes", planesOf(before).length, planesOf(after).length],
    ["Settings", settings(before), settings(after)],
    ["Minutes", minutes(before), minutes(after)],
    ["Places uncut", before.uncut.length, after.uncut.length],
  ];
  return [
    ...figures.map(([what, one, other]) => ({
      what,
      before: String(one),
      after: String(other),
      isBetter: one === other ? null : other < one,
    })),
    { what: "Way", before: before.way, after: after.way, isBetter: null },
  ];
}
