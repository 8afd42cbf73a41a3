/** The gallery as a whole: its sections, its folders and its page. */
import { existsSync, readdirSync, readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { GALLERY } from "../../gallery/sections.ts";
import { GALLERY_PLANS } from "../../scripts/gallery-files.ts";
import { GALLERY_PAGE, galleryPage, timesIn, withoutTimes } from "../../scripts/gallery-page.ts";
import { STILL_FOUND } from "./still-found.ts";

const page = readFileSync(GALLERY_PAGE, "utf8");

test("every section has a name of its own and a folder, and no folder is left over", () => {
  const ids = GALLERY.map(({ id }) => id);
  expect(new Set(ids).size).toBe(ids.length);
  expect(ids.length).toBeGreaterThanOrEqual(30);
  expect(readdirSync(GALLERY_PLANS).sort()).toEqual([...ids].sort());
});

test("the page is what the folders say, its times apart (`npm run gallery` renews it)", () => {
  expect(withoutTimes(page)).toBe(withoutTimes(galleryPage("")));
});

test("times are taken out of the comparison, and kept where they are not measured again", () => {
  const times = "some milliseconds\n";
  expect(withoutTimes(galleryPage(times))).toBe(galleryPage(""));
  expect(timesIn(galleryPage(times))).toBe(times);
});

test("every picture and link of the page leads to a file", () => {
  const links = [...page.matchAll(/\]\((?<to>[^)#\s]+)\)/g)].map(({ groups }) => groups?.to ?? "");
  expect(links.length).toBeGreaterThan(3 * GALLERY.length);
  expect(links.filter((to) => !existsSync(new URL(to, GALLERY_PAGE)))).toEqual([]);
});

/** The cuts that a plan tells the maker to clamp a batten on for. */
const BATTEN_SAID = /^Cut (?<number>\d+) has no edge, wall or seat/;

test("a plan names a batten for just those cuts that it was reckoned with one, and their sentences say so", () => {
  for (const { id } of GALLERY) {
    const plan = JSON.parse(readFileSync(new URL(`${id}/plan.json`, GALLERY_PLANS), "utf8"));
    const { cuts, warnings } = plan as {
      readonly cuts: readonly {
        readonly number: number;
        readonly runsAgainst: string | null;
        readonly says: string;
      }[];
      readonly warnings: readonly string[];
    };
    const named = cuts.filter(({ runsAgainst }) => runsAgainst === "batten").map(({ number }) => number);
    const reckoned = warnings.flatMap((said) => {
      const number = BATTEN_SAID.exec(said)?.groups?.number;
      return number === undefined ? [] : [Number(number)];
    });
    expect(named, id).toEqual(reckoned);
    const said = cuts.filter(({ says }) => says.includes("batten")).map(({ number }) => number);
    expect(said, id).toEqual(named);
  }
});

test("known failures name sections that are there", () => {
  const ids = new Set(GALLERY.map(({ id }) => id));
  expect(Object.keys(STILL_FOUND).filter((id) => !ids.has(id))).toEqual([]);
});
