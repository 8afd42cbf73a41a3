/** All jobs saved to one file, read back whole, and brought into another browser every one. */
import { readFileSync } from "node:fs";
import type { Page } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { browserHome, openRoom, type Served, served } from "./support/screen.ts";

let app: Served;

beforeAll(async () => {
  app = await served();
});
afterAll(() => app.close());

async function namesOfJobs(page: Page): Promise<readonly string[]> {
  const jobs = page.getByRole("list", { name: "Your jobs" });
  await jobs.waitFor();
  const buttons = await jobs.getByRole("button", { name: /^More for / }).all();
  return Promise.all(
    buttons.map(async (one) => ((await one.getAttribute("aria-label")) ?? "").replace("More for ", "")),
  );
}

/** The names once no more come: the first visit lays out its examples one after another. */
async function allNamesOfJobs(page: Page, atLeast: number): Promise<readonly string[]> {
  let names = await namesOfJobs(page);
  await expect
    .poll(
      async () => {
        const before = names;
        names = await namesOfJobs(page);
        return names.length >= atLeast && names.length === before.length;
      },
      { interval: 500, timeout: 20_000 },
    )
    .toBe(true);
  return names;
}

test("saved in one browser, every job is there in another", { timeout: 180_000 }, async () => {
  const first = await browserHome({ ...app });
  const page = await openRoom(first, app.address, "jobs");
  const saved = await allNamesOfJobs(page, 4);
  const [download] = await Promise.all([
    page.waitForEvent("download"),
    page.getByRole("button", { name: "Save all to a file" }).click(),
  ]);
  await page.getByText(`All ${saved.length} jobs are in one file.`).waitFor();
  const path = await download.path();
  const bytes = readFileSync(path);
  expect(first.faults).toEqual([]);
  await first.close();

  const other = await browserHome({ ...app, width: 390, height: 844 });
  const there = await openRoom(other, app.address, "jobs");
  const before = await allNamesOfJobs(there, 4);
  await there.getByRole("button", { name: "New job" }).click();
  await there.getByRole("radio", { name: "File", exact: true }).click();
  const [chooser] = await Promise.all([
    there.waitForEvent("filechooser"),
    there.getByRole("button", { name: "Choose a file" }).click(),
  ]);
  await chooser.setFiles({ name: "mouldwright jobs.zip", mimeType: "application/zip", buffer: bytes });
  const inFile = there.getByRole("list", { name: "Jobs in the file" });
  await inFile.waitFor();
  expect((await inFile.getByRole("listitem").allTextContents()).sort()).toEqual([...saved].sort());
  await there.getByRole("button", { name: `Keep all ${saved.length}` }).click();
  await inFile.waitFor({ state: "detached" });
  await there.getByRole("button", { name: "All jobs" }).click();
  await expect
    .poll(async () => (await namesOfJobs(there)).length, { timeout: 20_000 })
    .toBe(before.length + saved.length);
  expect(other.faults).toEqual([]);
  await other.close();
});
