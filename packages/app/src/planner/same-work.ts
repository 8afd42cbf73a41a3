/** Whether two states of a job ask the planner for the same. */
import type { Job } from "mouldwright/job";

export function isSameWork(one: Job, other: Job): boolean {
  return (
    PLANNED_FROM.every((key) => one[key] === other[key]) &&
    (one.shelf === other.shelf || plannedOfShelf(one.shelf) === plannedOfShelf(other.shelf))
  );
}

/** What the plan hangs on, beside the shelf. */
const PLANNED_FROM = [
  "name",
  "unit",
  "section",
  "stick",
  "way",
  "working",
  "hand",
  "inchStep",
  "standing",
] as const satisfies readonly (keyof Job)[];

/** A shelf's file without the notes on its planes: they are for the maker's memory, no plan reads them. */
function plannedOfShelf(shelf: Job["shelf"]): string {
  return JSON.stringify(shelf ?? null, (key, value: unknown) => (key === "note" ? undefined : value));
}
