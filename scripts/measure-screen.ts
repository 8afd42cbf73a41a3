/**
 * `npm run measure`: what the screen does to a maker's patience, measured in Chromium on the built app with the chart
 * cabinet's cornice: time to the first drawing, time from a drag to its new plan (100 drags), the longest frame that was
 * held up, sizes. Puts the figures into README.md. To be run on a quiet machine; no test asks for any of it.
 */
import { readFileSync, writeFileSync } from "node:fs";
import { setup } from "../tests/app/support/build-app.ts";
import { sizesInKilobytes } from "../tests/app/support/built-sizes.ts";
import { measureDrags, measureFirstDrawing } from "../tests/app/support/measure.ts";
import { served } from "../tests/app/support/screen.ts";

const README = new URL("../README.md", import.meta.url);
const BLOCK = /(<!-- measured: screen -->\n)[\s\S]*?(<!-- end of measured -->)/;

await setup();
const app = await served();
const first = await measureFirstDrawing(app.address);
const drags = await measureDrags(app.address, 100);
await app.close();
const { shell, parts } = sizesInKilobytes();
const whole = (value: number): string => String(Math.round(value));
const lines = [
  "| on the screen, cornice of the chart cabinet | |",
  "|---|---|",
  `| first drawing, first visit | ${whole(first.firstVisitMs)} ms |`,
  `| first drawing, later visits | ${whole(first.laterVisitMs)} ms |`,
  `| whole plan after the finger lifts, median of ${drags.planMs.length} | ${whole(quantile(drags.planMs, 0.5))} ms |`,
  `| the same, 95 in 100 | ${whole(quantile(drags.planMs, 0.95))} ms |`,
  `| plan that follows the finger, median of ${drags.quickMs.length} | ${whole(quantile(drags.quickMs, 0.5))} ms |`,
  `| plan that follows the finger, 95 in 100 | ${whole(quantile(drags.quickMs, 0.95))} ms |`,
  `| longest time the screen was held up while dragging | ${drags.longestBlockMs === 0 ? "under 50" : whole(drags.longestBlockMs)} ms |`,
  `| shell, gzipped | ${whole(shell)} kB |`,
  ...Object.entries(parts)
    .filter(([part]) => part.startsWith("src/rooms/"))
    .map(
      ([part, kb]) =>
        `| ${part.replace(/^src\/rooms\/|\.tsx?$/g, "")}, loaded when opened, gzipped | ${whole(kb)} kB |`,
    ),
];
const readme = readFileSync(README, "utf8");
if (!BLOCK.test(readme)) throw new Error("README.md has no place for the screen's figures");
writeFileSync(README, readme.replace(BLOCK, `$1${lines.join("\n")}\n$2`));
console.log(lines.join("\n"));

function quantile(values: readonly number[], share: number): number {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.floor(sorted.length * share))] ?? Number.NaN;
}
