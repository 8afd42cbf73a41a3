/** A newcomer's path: open, change a size, see the answer, turn the cuts, tick one, print. */
import { readFileSync } from "node:fs";
import { afterAll, beforeAll, expect, test } from "vitest";
import { type BrowserHome, browserHome, goTo, openRoom, type Served, served } from "./support/screen.ts";
import { jobIsKept, openPart, planStands, typeLength } from "./support/waits.ts";

let app: Served;
let home: BrowserHome;

beforeAll(async () => {
  app = await served();
  home = await browserHome({ ...app, width: 1280, height: 860 });
});
afterAll(async () => {
  await home.close();
  await app.close();
});

test("from the first visit to the printed sheet", { timeout: 240_000 }, async () => {
  const page = await openRoom(home, app.address, "section");
  await page.getByText("Chart cabinet: cornice").first().waitFor();
  await planStands(page);
  const answer = page.getByRole("region", { name: "Answer" });
  expect(await answer.textContent()).toMatch(/Every part can be cut/);

  await openPart(page, "bead");
  await typeLength(page, "Width", "12.7");
  await planStands(page);
  expect(await page.getByRole("region", { name: "Parts" }).textContent()).toContain("hollow");
  await page.getByRole("button", { name: /^Undo: / }).click();
  await planStands(page);
  await page.getByRole("button", { name: /^Redo: / }).click();
  await planStands(page);

  await goTo(page, "Cuts");
  const turn = page.getByRole("button", { name: "Next page" });
  await turn.waitFor();
  const first = page.getByRole("article", { name: /^Cut 1 of / });
  await first.waitFor();
  const pages = Number(/of (\d+)/.exec((await first.getAttribute("aria-label")) ?? "")?.[1]);
  expect(pages).toBeGreaterThan(5);
  await first.getByRole("checkbox").first().click({ force: true });
  await turn.click();
  await page.getByRole("article", { name: /^Cut 2 of / }).waitFor();
  await page.keyboard.press("ArrowRight");
  await page.getByRole("article", { name: /^Cut 3 of / }).waitFor();
  await page.keyboard.press("Home");
  await page.getByRole("article", { name: "Overview of the plan" }).waitFor();

  await goTo(page, "Sheets");
  const save = page.getByRole("button", { name: /^Save/ }).first();
  await page.waitForFunction(
    () =>
      [...document.querySelectorAll("main button")].some(
        (b) => b.textContent?.startsWith("Save") && !(b as HTMLButtonElement).disabled,
      ),
    undefined,
    { timeout: 90_000 },
  );
  const [download] = await Promise.all([page.waitForEvent("download"), save.click()]);
  const file = readFileSync((await download.path()) ?? "");
  expect(file.subarray(0, 5).toString()).toBe("%PDF-");
  await jobIsKept(page);

  await page.reload();
  await goTo(page, "Cuts");
  await page.getByRole("article", { name: /^Cut |^Overview/ }).waitFor({ timeout: 60_000 });
  expect(
    (await page.getByText(/1 of \d+ done|1 done/).count()) +
      (await page.getByRole("button", { name: /done/ }).count()),
  ).toBeGreaterThan(0);
  expect(home.faults).toEqual([]);
});
