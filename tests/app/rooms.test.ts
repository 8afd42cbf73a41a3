/** The main doing of each room, by mouse, on a laptop. */
import { readFileSync } from "node:fs";
import type { Locator, Page } from "playwright-core";
import { afterAll, afterEach, beforeAll, beforeEach, expect, test } from "vitest";
import { type BrowserHome, browserHome, goTo, openRoom, type Served, served } from "./support/screen.ts";
import { openPart, planStands } from "./support/waits.ts";

/** Planning, light and pages are made by workers: on a slow machine they may take so long, ms. */
const SLOW = { timeout: 60_000 } as const;

/** Said by the driver of a machine without a graphics card whenever the browser puts a turning view on the page. */
const OF_DRIVER = /GL Driver Message \(OpenGL, Performance, .*GPU stall due to ReadPixels/;

let app: Served;
let home: BrowserHome;

beforeAll(async () => {
  app = await served();
});
beforeEach(async () => {
  home = await browserHome({ ...app, width: 1280, height: 860 });
});
afterEach(async () => {
  const { faults } = home;
  await home.close();
  expect(faults.filter((fault) => !OF_DRIVER.test(fault))).toEqual([]);
});
afterAll(() => app.close());

function pressed(page: Page, name: string | RegExp): Promise<void> {
  return page.getByRole("main").getByRole("button", { name, exact: true }).click();
}

/** Waits until what is read there is as wished. */
async function comesTo(read: () => Promise<string>, isIt: (words: string) => boolean): Promise<string> {
  const endMs = Date.now() + SLOW.timeout;
  let words = "";
  while (Date.now() < endMs) {
    words = await read().catch(() => "");
    if (isIt(words)) return words;
    await new Promise((resolve) => setTimeout(resolve, 100));
  }
  throw new Error(`it stayed at: ${words.slice(0, 300)}`);
}

async function textOf(place: Locator): Promise<string> {
  return ((await place.textContent()) ?? "").replace(/\s+/g, " ");
}

test("Jobs: begun from a classical form, renamed, duplicated, deleted and taken back", async () => {
  const page = await openRoom(home, app.address, "jobs");
  const jobs = page.getByRole("list", { name: "Your jobs" });
  await jobs.waitFor();
  // At the first visit the pieces of the chart cabinet come in one after the other.
  const first = 5;
  await comesTo(
    async () => String(await jobs.getByRole("listitem").count()),
    (count) => count === String(first),
  );
  await pressed(page, "New job");
  await page.getByRole("radiogroup", { name: "Form" }).getByText("Ovolo", { exact: true }).click();
  await page.getByRole("region", { name: "Ovolo" }).getByRole("button", { name: "Keep and open" }).click();
  await page.getByRole("main", { name: "Section" }).waitFor();
  await page.getByRole("list", { name: "Parts from the gauge edge" }).getByText("ovolo").first().waitFor();
  await planStands(page);

  await goTo(page, "Jobs");
  expect(await jobs.getByRole("listitem").count()).toBe(first + 1);
  await more(page, /^More for Ovolo/, "Name and notes");
  const asked = page.getByRole("dialog", { name: "Name and notes" });
  await asked.getByRole("textbox", { name: "Name", exact: true }).fill("Lid of the chart chest");
  await asked.getByRole("button", { name: "Keep" }).click();
  await jobs.getByText("Lid of the chart chest").waitFor();
  expect(await textOf(page.getByRole("banner"))).toContain("Lid of the chart chest");

  await more(page, "More for Lid of the chart chest", "Duplicate");
  await comesTo(
    async () => String(await jobs.getByRole("listitem").count()),
    (count) => count === String(first + 2),
  );
  const copy = (await jobs
    .getByRole("button", { name: /^More for Lid of the chart chest.+/ })
    .getAttribute("aria-label")) as string;
  await more(page, copy, "Delete");
  const told = page.getByRole("status", { name: "About your jobs" });
  await told.getByText("is deleted").waitFor();
  expect(await jobs.getByRole("listitem").count()).toBe(first + 1);
  await told.getByRole("button", { name: "Undo the delete" }).click();
  await jobs.getByRole("button", { name: copy, exact: true }).waitFor();
  expect(await jobs.getByRole("listitem").count()).toBe(first + 2);
});

async function more(page: Page, card: string | RegExp, item: string): Promise<void> {
  await page.getByRole("button", { name: card, exact: true }).click();
  await page.getByRole("menuitem", { name: item }).click();
}

test("Section and Cuts: inches are read as fractions", { timeout: 180_000 }, async () => {
  const page = await openRoom(home, app.address, "section");
  await planStands(page);
  await openPart(page, "bead");
  const width = page.getByRole("textbox", { name: "Width", exact: true });
  expect(await width.inputValue()).toMatch(/\d\u00a0mm$/);
  const unit = page.getByRole("banner").getByRole("radio", { name: "in", exact: true });
  await unit.click();
  await page.getByRole("button", { name: "Undo: inches" }).waitFor();
  const fraction = /\d*[½¼¾⅛⅜⅝⅞⁄]/;
  expect(await width.inputValue()).toMatch(fraction);
  expect(await width.inputValue()).toContain("″");
  await goTo(page, "Cuts");
  const cut = page.getByRole("article", { name: /^Cut 1 of / });
  await cut.waitFor(SLOW);
  const said = await textOf(cut);
  expect(said).toMatch(fraction);
  expect(said).toContain("″");
  await page.getByRole("button", { name: "Undo: inches" }).click();
  await comesTo(
    () => textOf(cut),
    (words) => / mm/.test(words) && !words.includes("″"),
  );
});

test("Shelf: a pair is put on the shelf and taken off again by undo", async () => {
  const page = await openRoom(home, app.address, "shelf");
  const planes = page.locator(".shelf-groups").getByRole("button");
  await planes.first().waitFor();
  const count = await planes.count();
  await pressed(page, "Add planes");
  const drawer = page.getByRole("dialog", { name: "Add planes" });
  await drawer.getByLabel("By the number of the pair").selectOption("9");
  await drawer.getByRole("button", { name: "Put both on the shelf" }).click();
  const said = await comesTo(
    () => textOf(drawer.getByRole("status")),
    (words) => words.startsWith("On the shelf: "),
  );
  const names = /^On the shelf: (.+) and (.+)\.$/.exec(said)?.slice(1) ?? [];
  expect(names).toHaveLength(2);
  await drawer.getByRole("button", { name: "Close" }).click();
  await drawer.waitFor({ state: "detached" });
  expect(await planes.count()).toBe(count + 2);
  for (const name of names) await planes.filter({ hasText: name }).first().waitFor();
  await page.getByRole("button", { name: "Undo: two planes more" }).click();
  await comesTo(
    async () => String(await planes.count()),
    (now) => now === String(count),
  );
});

test("Shelf: a plane left out of the job is planned without", { timeout: 180_000 }, async () => {
  const page = await openRoom(home, app.address, "cuts");
  await page.getByRole("navigation", { name: "Order of cuts" }).waitFor(SLOW);
  await page.keyboard.press("Home");
  const planes = page
    .getByRole("article", { name: "Overview of the plan" })
    .locator("section", { has: page.getByRole("heading", { name: "Planes to lay out" }) });
  await planes.waitFor();
  const before = await textOf(planes);
  await goTo(page, "Shelf");
  const used = page
    .getByRole("region", { name: "Rounds" })
    .getByRole("button", { name: /cuts? \d/ })
    .first();
  await used.click();
  const drawer = page.getByRole("dialog");
  const name = await textOf(drawer.getByRole("heading", { level: 2 }).first());
  await drawer.getByText(/^In this job it makes cuts? \d/).waitFor();
  await drawer.getByRole("button", { name: "Leave out of this job" }).click();
  await drawer.getByText("It is left out: the plan of this job does without it.").waitFor();
  await drawer.getByRole("button", { name: "Close" }).click();
  const shelf = page.locator(".shelf-count");
  await comesTo(
    () => textOf(shelf),
    (words) => words.includes("1 left out") && !words.includes("as last planned"),
  );
  await page.getByRole("radio", { name: "Left out" }).click();
  await page.getByRole("main").getByRole("button", { name }).waitFor();
  await goTo(page, "Cuts");
  const after = await comesTo(
    () => textOf(planes),
    (words) => words !== "" && words !== before,
  );
  expect(after).not.toContain(name);
  expect(before).toContain(name);
});

test("Stick and fit: a corner angle is typed and the mitre follows", { timeout: 120_000 }, async () => {
  const page = await openRoom(home, app.address, "stick");
  for (const tab of ["Frame", "Cornice", "Slopes", "Stick", "Corner"]) {
    await page.getByRole("tab", { name: tab }).click();
    const panel = page.getByRole("tabpanel", { name: tab });
    await panel.waitFor();
    await panel.getByText("Reckoning…").waitFor({ state: "detached", ...SLOW });
    await panel.getByRole("img").first().waitFor(SLOW);
  }
  const panel = page.getByRole("tabpanel", { name: "Corner" });
  const saw = panel.locator("dl").first();
  await typed(panel, "Spring from the wall", "0");
  await typed(panel, "Angle between the walls", "90");
  // Flat against the wall, the moulding's back is at right angles to the mitre: laid flat it is all bevel, held at its
  // spring all mitre.
  await comesTo(
    () => textOf(saw),
    (words) => words === "Mitre0°Bevel45°",
  );
  await panel.getByRole("radio", { name: "Held at its spring" }).click();
  await comesTo(
    () => textOf(saw),
    (words) => words === "Mitre45°Bevel0°",
  );
  // Half of 120° is left of each piece, 60°; a saw's scale counts from square: 30°.
  await typed(panel, "Angle between the walls", "120");
  await comesTo(
    () => textOf(saw),
    (words) => words === "Mitre30°Bevel0°",
  );
  await typed(panel, "Angle between the walls", "20");
  await panel.getByText("At least 30° here: type more.").waitFor();
  expect(await textOf(saw)).toBe("Mitre30°Bevel0°");
});

async function typed(panel: Locator, label: string, words: string): Promise<void> {
  const field = panel.getByRole("textbox", { name: label });
  await field.fill(words);
  await field.press("Enter");
}

test("Light: the lamp is moved by key and light and shade follow", { timeout: 120_000 }, async () => {
  const page = await openRoom(home, app.address, "light");
  const shares = page.getByRole("table", { name: /light, shade and shadow/ });
  await shares.waitFor(SLOW);
  const before = await textOf(shares);
  const height = page.getByRole("slider", { name: "Height" });
  const from = await height.getAttribute("aria-valuetext");
  await height.focus();
  for (let press = 0; press < 25; press += 1) await page.keyboard.press("ArrowDown");
  await page.getByRole("button", { name: /^Undo: lamp / }).waitFor();
  expect(await height.getAttribute("aria-valuetext")).not.toBe(from);
  await comesTo(
    () => textOf(shares),
    (words) => words !== before && words !== "",
  );
  const percents = [...(await textOf(shares)).matchAll(/(\d+) %/g)].map(([, share]) => Number(share));
  expect(percents.length).toBeGreaterThan(1);
  // Each share is rounded for itself.
  expect(Math.abs(percents.reduce((sum, share) => sum + share, 0) - 100)).toBeLessThanOrEqual(2);

  await page.getByRole("radiogroup", { name: "View" }).getByRole("radio").nth(1).click();
  await page
    .locator(".turning canvas")
    .or(page.getByText("This browser cannot turn the moulding"))
    .first()
    .waitFor(SLOW);
});

test("Sheets: paper and sheets are chosen, and the saved file is what is shown", {
  timeout: 240_000,
}, async () => {
  const page = await openRoom(home, app.address, "sheets");
  const head = page.getByRole("heading", { level: 1 });
  const first = await comesTo(
    () => textOf(head),
    (words) => /\d/.test(words),
  );
  expect(first).toContain("A4");
  await page
    .getByRole("radiogroup", { name: "Paper" })
    .getByRole("radio", { name: /letter/i })
    .click();
  await comesTo(
    () => textOf(head),
    (words) => /letter/i.test(words),
  );
  const sheets = page.getByRole("group", { name: "Sheets" });
  for (const name of [/^End templates/, /^Story stick/, /^Planes and arcs/, /^Stick and fit/, /^Lesson/]) {
    await sheets.getByText(name).first().click();
  }
  const shown = page.locator(".sheet-pages").getByRole("button");
  const pages = Number(/\d+/.exec(first)?.[0]);
  const bench = Number(
    /\d+/.exec(
      await comesTo(
        () => textOf(head),
        (words) => Number(/\d+/.exec(words)?.[0]) < pages / 2,
      ),
    )?.[0],
  );
  await page.getByText("The sheets are being made…").waitFor({ state: "detached", ...SLOW });
  expect(await shown.count()).toBe(bench);
  expect(await page.getByText("Cannot be shown here.").count()).toBe(0);
  const save = page.getByRole("button", { name: "Save the PDF", exact: true });
  const [download] = await Promise.all([page.waitForEvent("download"), save.click()]);
  const file = readFileSync((await download.path()) ?? "", "latin1");
  expect(file.slice(0, 4)).toBe("%PDF");
  // Letter, in the points of a PDF; every page shown is in the file.
  expect(file).toMatch(/612(\.0+)? 792/);
});
