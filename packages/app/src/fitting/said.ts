import type { Trouble } from "mouldwright/measure";

/** What every answer carries besides its own. */
export interface Said {
  readonly warnings: readonly Trouble[];
  readonly assumed: readonly Trouble[];
  readonly cautions: readonly Trouble[];
}
