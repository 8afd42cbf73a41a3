/**
 * `npm run examples`: plans every job in `examples/` again and writes what stands beside it. A picture that the new
 * plan no longer has is taken away. `npm run examples -- cornice plinth` does only those named.
 */
import { mkdirSync, readdirSync, rmSync, writeFileSync } from "node:fs";
import { EXAMPLES, exampleNames, filesOfExample, readExample } from "./example-files.ts";

const known = exampleNames();
const asked = process.argv.slice(2);
const unknown = asked.filter((name) => !known.includes(name));
if (unknown.length > 0) {
  console.error(`No example is called ${unknown.join(", ")}. There are: ${known.join(", ")}.`);
  process.exit(2);
}

for (const name of asked.length > 0 ? asked : known) {
  const { plan, files } = filesOfExample(readExample(name));
  const folder = new URL(`${name}/`, EXAMPLES);
  mkdirSync(folder, { recursive: true });
  for (const [file, text] of files) writeFileSync(new URL(file, folder), text);
  for (const file of readdirSync(folder)) if (!files.has(file)) rmSync(new URL(file, folder));
  const settings = plan.cuts.at(-1)?.setting ?? 0;
  const left = plan.uncut.length === 0 ? "whole" : `${plan.uncut.length} places stay uncut`;
  console.log(
    `${name.padEnd(20)} ${String(plan.cuts.length).padStart(2)} cuts, ${settings} settings, ${left}`,
  );
}
