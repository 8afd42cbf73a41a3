/** `docs/gallery.md`: the table of every plan's figures and the strips below it, from what stands in the folders. */
import { type GalleryRoom, ROOMS } from "../gallery/sections.ts";
import { type GalleryFigures, readFigures } from "./gallery-files.ts";

export const GALLERY_PAGE = new URL("../docs/gallery.md", import.meta.url);

/** Milliseconds by section; `taken` says where and how. They differ from machine to machine. */
export interface GalleryTimes {
  readonly taken: string;
  readonly medianMs: ReadonlyMap<string, number>;
}

const TIMES = /(<!-- times -->\n)([\s\S]*?)(<!-- end of times -->)/;

/** The page without its times: what must be the same everywhere. */
export function withoutTimes(page: string): string {
  return page.replace(TIMES, "$1$3");
}

/** The times that a page shows, as text, to be kept where they are not measured again. */
export function timesIn(page: string): string {
  return TIMES.exec(page)?.[2] ?? "";
}

/** The whole page; `times` as `timesIn` gives it or `timesText` makes it. */
export function galleryPage(times: string): string {
  return [
    "# The gallery",
    "",
    `${ROOMS.reduce((sum, { entries }) => sum + entries.length, 0)} sections, each planned with one of the [example shelves](../examples/shelves). \`npm run gallery\` plans them all again and writes this page; \`npm run gallery -- torus thumb\` plans those named.`,
    "",
    "- **left to curves**: what hollows and rounds have to take, mm²; all else goes with square planes before.",
    "- **off**: how proud of and how far under the drawing the finished face comes out at worst, mm; uncut places apart.",
    "- **seats**: how many of the curved cuts the wood itself holds. **battens**: cuts that run against one clamped on.",
    "- **uncut**: places that stay, with their rules.",
    "",
    ...ROOMS.flatMap(table),
    "## How long each takes",
    "",
    "Not part of any check: it differs from machine to machine. `npm run gallery -- --times` measures again.",
    "",
    "<!-- times -->",
    `${times}<!-- end of times -->`,
    "",
    ...ROOMS.flatMap(pictures),
  ].join("\n");
}

function table({ title, entries }: GalleryRoom): readonly string[] {
  return [
    `## ${title}`,
    "",
    "| section | shelf | cuts | settings | left to curves | off, proud / under | seats | battens | uncut |",
    "|---|---|---:|---:|---:|---:|---:|---:|---|",
    ...entries.map(({ id, shelf, section }) => {
      const figures = readFigures(id);
      return `| [${section.name}](#${id}) | ${shelf} | ${figures.cuts} | ${figures.settings} | ${figures.leftToCurvedMm2.toFixed(1)} | ${figures.proudMm.toFixed(2)} / ${figures.underMm.toFixed(2)} | ${figures.seatsHeld} of ${figures.curvedCuts} | ${figures.battens} | ${uncutWords(figures)} |`;
    }),
    "",
  ];
}

function uncutWords({ uncut }: GalleryFigures): string {
  const counts = new Map<string, number>();
  for (const rule of uncut) counts.set(rule, (counts.get(rule) ?? 0) + 1);
  return [...counts].map(([rule, count]) => (count === 1 ? rule : `${count} × ${rule}`)).join(", ");
}

function pictures({ title, entries }: GalleryRoom): readonly string[] {
  return [
    `## ${title}: the cuts in order`,
    "",
    ...entries.flatMap(({ id, section }) => [
      `### <a id="${id}"></a>${section.name}`,
      "",
      `[plan](../gallery/plans/${id}/plan.json), [figures](../gallery/plans/${id}/figures.json)`,
      "",
      `![${section.name}: all cuts](../gallery/plans/${id}/strip.svg)`,
      "",
    ]),
  ];
}

/** The fenced part of the page. */
export function timesText({ taken, medianMs }: GalleryTimes): string {
  return [
    taken,
    "",
    "| section | ms |",
    "|---|---:|",
    ...[...medianMs].map(([id, ms]) => `| ${id} | ${ms.toFixed(0)} |`),
    "",
  ].join("\n");
}
