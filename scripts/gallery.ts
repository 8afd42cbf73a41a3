/**
 * `npm run gallery`: plans every section of the gallery again, writes its folder and `docs/gallery.md`. Folders of
 * sections that are no more go. `npm run gallery -- torus thumb` plans only those named; `--times` also measures how
 * long planning takes and puts it into the page.
 */
import { existsSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { arch, cpus } from "node:os";
import { timed } from "../bench/timing.ts";
import { GALLERY, type GalleryEntry } from "../gallery/sections.ts";
import { filesOfGallery, GALLERY_PLANS, planOfGallery } from "./gallery-files.ts";
import { GALLERY_PAGE, galleryPage, timesIn, timesText } from "./gallery-page.ts";

const TIMES_OPTION = "--times";

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

/** Medians over a few runs of each section, planning alone. */
function measured(): string {
  const runs = { warmUps: 1, runs: 5, budgetMs: 5000 };
  const medianMs = new Map(
    GALLERY.map((entry) => [entry.id, timed(() => planOfGallery(entry), runs).medianMs]),
  );
  const machine = `${cpus().length} cores, ${arch()}, Node ${process.versions.node.split(".")[0]}`;
  return timesText({ taken: `Medians on a shared machine (${machine}).`, medianMs });
}
