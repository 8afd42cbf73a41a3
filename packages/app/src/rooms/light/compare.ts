/** Two versions of a moulding held against each other: how much of each shows in light, in shade and in shadow. */
import type { Job } from "mouldwright/job";
import type { LightState, SectionInLight } from "mouldwright/light";
import { sameMm } from "mouldwright/measure";

export interface Share {
  readonly state: LightState;
  readonly showsMm: number;
  /** Of all that shows, 0 to 1. */
  readonly ratio: number;
}

export interface ComparedShare {
  readonly state: LightState;
  readonly first: Share;
  /** Null where there is nothing to compare with. */
  readonly other: Share | null;
  /** How much more the first shows, mm; less where below nought. */
  readonly moreMm: number;
}

export const STATES: readonly LightState[] = ["light", "shade", "shadow"];

export const STATE_SAID: Readonly<Record<LightState, string>> = {
  light: "in the light",
  shade: "turned from the light",
  shadow: "in shadow",
};

export function sharesOf({ shares, widthMm }: Pick<SectionInLight, "shares" | "widthMm">): readonly Share[] {
  return STATES.map((state) => ({
    state,
    showsMm: shares[state],
    ratio: widthMm > 0 ? shares[state] / widthMm : 0,
  }));
}

export function compared(
  first: Pick<SectionInLight, "shares" | "widthMm">,
  other: Pick<SectionInLight, "shares" | "widthMm"> | null,
): readonly ComparedShare[] {
  const others = other === null ? null : sharesOf(other);
  return sharesOf(first).map((share, index) => {
    const against = others?.[index] ?? null;
    const moreMm =
      against === null || sameMm(share.showsMm, against.showsMm) ? 0 : share.showsMm - against.showsMm;
    return { state: share.state, first: share, other: against, moreMm };
  });
}

/** How much deeper a quirk is tried, mm. */
export const DEEPER_MM = 1;

type Part = NonNullable<Job["section"]["parts"]>[number];
type Quirk = Extract<Part, { readonly depthMm: number }>;

function isQuirk(part: Part): part is Quirk {
  return part.kind === "quirk" || part.kind === "vee quirk";
}

export function hasQuirks({ section }: Pick<Job, "section">): boolean {
  return section.parts?.some(isQuirk) ?? false;
}

/** The same job with every quirk deeper; whether it can still be built shows when it is. */
export function withDeeperQuirks(job: Job, deeperMm = DEEPER_MM): Job {
  const parts = job.section.parts?.map((part) =>
    isQuirk(part) ? { ...part, depthMm: part.depthMm + deeperMm } : part,
  );
  return parts === undefined ? job : { ...job, section: { ...job.section, parts } };
}
