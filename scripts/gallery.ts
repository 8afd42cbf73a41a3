/**
 * `npm run gallery`: plans every section of the gallery again, writes its folder and `docs/gallery.md`. Folders of
 * sections that are no more go. `npm run gallery -- torus thumb` plans only those named; `--times` also measures how
 * long planning takes and puts it into the page.
 */
import { existsSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { arch, cpus } from "node:os";
import { GALLERY, type GalleryEntry } from "../gallery/sections.ts";
import { filesOfGallery, GALLERY_PLANS, planOfGallery } from "./gallery-files.ts";
import { GALLERY_PAGE, galleryPage, timesIn, timesText } from "./gallery-page.ts";

const TIMES_OPTION = "--times";

/** Most runs, and what they may take together, ms; a further run is made only while less is spent. */
const TIMED = { mostRuns: 5, budgetMs: 3000 } as const;

const words = process.argv.slice(2);
const asked = words.filter((word) => word !== TIMES_OPTION);
const unknown = asked.filter((id) => !GALLERY.some((entry) => entry.id === id));
if (unknown.length > 0) {
  console.error(
    `No section of the gallery is called ${unknown.join(", ")}. There are: ${GALLERY.map(({ id }) => id).join(", ")}.`,
  );
  process.exit(2);
}

for (const entry of asked.length > 0 ? GALLERY.filter(({ id }) => asked.includes(id)) : GALLERY) renew(entry);
for (const folder of readdirSync(GALLERY_PLANS)) {
  if (!GALLERY.some(({ id }) => id === folder))
    rmSync(new URL(`${folder}/`, GALLERY_PLANS), { recursive: true });
}
const times = words.includes(TIMES_OPTION)
  ? measured()
  : existsSync(GALLERY_PAGE)
    ? timesIn(readFileSync(GALLERY_PAGE, "utf8"))
    : "";
writeFileSync(GALLERY_PAGE, galleryPage(times));

function renew(entry: GalleryEntry): void {
  const startMs = performance.now();
  const { plan, files } = filesOfGallery(entry);
  const tookMs = performance.now() - startMs;
  const folder = new URL(`${entry.id}/`, GALLERY_PLANS);
  mkdirSync(folder, { recursive: true });
  const changed = [...files].filter(([file, text]) => {
    const place = new URL(file, folder);
    if (existsSync(place) && readFileSync(place, "utf8") === text) return false;
    writeFileSync(place, text);
    return true;
  });
  for (const file of readdirSync(folder)) if (!files.has(file)) rmSync(new URL(file, folder));
  const settings = plan.cuts.at(-1)?.setting ?? 0;
  const left = plan.uncut.length === 0 ? "whole" : `${plan.uncut.length} uncut`;
  console.log(
    `${entry.id.padEnd(28)} ${String(plan.cuts.length).padStart(2)} cuts ${String(settings).padStart(2)} settings ${left.padEnd(8)} ${tookMs.toFixed(0).padStart(5)} ms${changed.length > 0 ? "  changed" : ""}`,
  );
}

/** Processor time of planning alone, the median of a few runs: on a machine that others use the clock on the wall says little. */
function measured(): string {
  const medianMs = new Map(GALLERY.map((entry) => [entry.id, planningMs(entry)]));
  const machine = `${cpus().length} cores, ${arch()}, Node ${process.versions.node.split(".")[0]}`;
  return timesText({ taken: `Processor time on a shared machine (${machine}), medians.`, medianMs });
}

function planningMs(entry: GalleryEntry): number {
  const tookMs: number[] = [];
  let spentMs = 0;
  while (tookMs.length === 0 || (tookMs.length < TIMED.mostRuns && spentMs < TIMED.budgetMs)) {
    const from = process.cpuUsage();
    planOfGallery(entry);
    const { user, system } = process.cpuUsage(from);
    tookMs.push((user + system) / 1000);
    spentMs += tookMs.at(-1) ?? 0;
  }
  return tookMs.sort((a, b) => a - b)[tookMs.length >> 1] ?? Number.NaN;
}
