/** The pages of a plan and how they are turned: the overview first, then one cut a page. */
import type { Plan } from "mouldwright/cutting";
import { cutsMade, type Stage } from "mouldwright/job";

/** `made`: a cut of an earlier plan, made before the plan on show begins. */
export type Page =
  | { readonly kind: "overview" }
  | { readonly kind: "made"; readonly stage: number; readonly number: number }
  | { readonly kind: "cut"; readonly number: number };

export function pagesOf(plan: Plan, stages: readonly Stage[] = []): readonly Page[] {
  return [
    { kind: "overview" },
    ...stages.flatMap((stage, at) =>
      cutsMade(stage).map(({ number }): Page => ({ kind: "made", stage: at, number })),
    ),
    ...plan.cuts.map(({ number }): Page => ({ kind: "cut", number })),
  ];
}

/** The same words for the same page. */
export function pageKey(page: Page): string {
  switch (page.kind) {
    case "overview":
      return "overview";
    case "made":
      return `made ${page.stage} ${page.number}`;
    case "cut":
      return `cut ${page.number}`;
  }
}

export function isSamePage(one: Page, other: Page): boolean {
  return pageKey(one) === pageKey(other);
}

/**
 * The page on show: the one wished for, or in a plan that no longer has it the last there is; without a wish the first
 * cut that is not done.
 */
export function pageOnShow(
  plan: Plan,
  wished: Page | null,
  done: ReadonlySet<number>,
  stages: readonly Stage[] = [],
): Page {
  const pages = pagesOf(plan, stages);
  if (wished === null) {
    const next = plan.cuts.find(({ number }) => !done.has(number)) ?? plan.cuts[0];
    return next === undefined ? { kind: "overview" } : { kind: "cut", number: next.number };
  }
  return pages.find((page) => isSamePage(page, wished)) ?? pages[pages.length - 1] ?? { kind: "overview" };
}

/** Where a key turns to, as a place among `count` pages; null for a key that turns nothing. */
export function turnedByKey(key: string, at: number, count: number): number | null {
  const last = count - 1;
  switch (key) {
    case "ArrowRight":
    case "ArrowDown":
    case "PageDown":
      return Math.min(at + 1, last);
    case "ArrowLeft":
    case "ArrowUp":
    case "PageUp":
      return Math.max(at - 1, 0);
    case "Home":
      return 0;
    case "End":
      return last;
    default:
      return null;
  }
}

/** A finger that goes so far across, px, and not more up or down than across, turns the page. */
const SWIPE_PX = 48;

/** +1 for the next page (the finger goes left), -1 for the one before, 0 for no swipe. */
export function swiped(acrossPx: number, downPx: number): -1 | 0 | 1 {
  if (Math.abs(acrossPx) < SWIPE_PX || Math.abs(downPx) > Math.abs(acrossPx)) return 0;
  return acrossPx < 0 ? 1 : -1;
}
