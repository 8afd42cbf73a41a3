// `npm start`: plans the chart cabinet's cornice with a full shelf, prints the card for the bench and draws every
// cut into out/cornice/, which is this script's own folder and is written anew each time.
import { mkdir, rm } from "node:fs/promises";
import { join, relative } from "node:path";
import { fileURLToPath } from "node:url";
import { register } from "tsx/esm/api";

register();
const { main } = await import("../packages/cli/src/main.ts");

const root = fileURLToPath(new URL("..", import.meta.url));
const inRoot = (...steps) => relative(process.cwd(), join(root, ...steps));
const folder = inRoot("out", "cornice");

await rm(folder, { recursive: true, force: true });
await mkdir(folder, { recursive: true });
process.exitCode = await main([
  "plan",
  inRoot("examples", "cornice.json"),
  "--shelf",
  inRoot("examples", "shelves", "full.json"),
  "--out",
  join(folder, "cornice-plan.json"),
  "--pictures",
  folder,
  "--force",
]);
