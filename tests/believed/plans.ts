/** Every plan that is committed: those of the gallery and those of the examples, by a name to call them by. */
import { existsSync, readdirSync, readFileSync } from "node:fs";
import type { SaidPlan } from "./bench.ts";

const FOLDERS: readonly (readonly [string, URL])[] = [
  ["gallery", new URL("../../gallery/plans/", import.meta.url)],
  ["examples", new URL("../../examples/", import.meta.url)],
];

export interface CommittedPlan {
  readonly name: string;
  readonly read: () => SaidPlan;
}

export const COMMITTED_PLANS: readonly CommittedPlan[] = FOLDERS.flatMap(([kind, folder]) =>
  readdirSync(folder)
    .sort()
    .map((id) => ({ id, file: new URL(`${id}/plan.json`, folder) }))
    .filter(({ file }) => existsSync(file))
    .map(({ id, file }) => ({
      name: `${kind}/${id}`,
      read: () => JSON.parse(readFileSync(file, "utf8")) as SaidPlan,
    })),
);
