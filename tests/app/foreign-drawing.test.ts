/** A drawing from elsewhere: brought in, its size settled where it does not say it, and worked with in every room. */
import type { Page } from "playwright-core";
import { afterAll, afterEach, beforeAll, beforeEach, expect, test } from "vitest";
import { type BrowserHome, browserHome, goTo, openRoom, type Served, served } from "./support/screen.ts";
import { planStands } from "./support/waits.ts";

/** As a drawing program saves it: no unit, the stick a rectangle without a name, an arc and a free curve. */
const DRAWING = `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 400 200">
  <g transform="translate(20,30)">
    <rect x="0" y="0" width="180" height="96" fill="none" stroke="#000"/>
    <path d="m 0,96 v -96 h 36 c 0,24 20,44 44,44 h 28 v 14 h 72 v 38 z" fill="none" stroke="#000"/>
  </g>
</svg>`;

let app: Served;
let home: BrowserHome;

beforeAll(async () => {
  app = await served();
});
beforeEach(async () => {
  home = await browserHome({ ...app, width: 390, height: 844, isTouch: true });
});
afterEach(async () => {
  const { faults } = home;
  await home.close();
  expect(faults).toEqual([]);
});
afterAll(() => app.close());

async function choose(page: Page, name: string, text: string): Promise<void> {
  await page.getByRole("button", { name: "New job" }).click();
  await page.getByRole("radio", { name: "File", exact: true }).click();
  const [chooser] = await Promise.all([
    page.waitForEvent("filechooser"),
    page.getByRole("button", { name: "Choose a file" }).click(),
  ]);
  await chooser.setFiles({ name, mimeType: "image/svg+xml", buffer: Buffer.from(text) });
}

test("a drawing without unit: the maker says what its numbers are, and works with it", {
  timeout: 240_000,
}, async () => {
  const page = await openRoom(home, app.address, "jobs");
  await choose(page, "rail.svg", DRAWING);
  const found = page.getByRole("region", { name: "rail.svg" });
  await found.getByText("180 × 96\u00a0mm").waitFor();
  await found.getByText(/taken as the stick/).waitFor();
  await found.getByRole("radio", { name: "inches" }).click();
  await found.getByText(/4572/).waitFor();
  await found.getByRole("radio", { name: "pixels" }).click();
  await found.getByText("47.6 × 25.4\u00a0mm").waitFor();
  expect(await found.getByText("has no unit").count()).toBe(0);
  await found.getByRole("button", { name: "Keep and open" }).click();
  await page.getByRole("main", { name: "Section" }).waitFor();
  await planStands(page);
  await page.getByRole("list", { name: "Lines and curves from the far edge" }).waitFor();
  for (const room of ["Cuts", "Stick and fit", "Light", "Sheets", "Shelf"]) {
    await goTo(page, room);
    expect(await page.evaluate(() => document.documentElement.scrollWidth - innerWidth)).toBeLessThanOrEqual(
      0,
    );
  }
  await goTo(page, "Cuts");
  await page.getByRole("article", { name: /^Cut 1 of / }).waitFor({ timeout: 60_000 });
});
