/** Nothing that was done is lost: reload mid-edit, killed browser, two tabs, full store, a hundred steps back. */
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import type { Page } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { type BrowserHome, browserHome, openRoom, type Served, served } from "./support/screen.ts";
import { jobIsKept, openPart, typeLength } from "./support/waits.ts";

let app: Served;
const homes: BrowserHome[] = [];

beforeAll(async () => {
  app = await served();
});
afterAll(async () => {
  for (const home of homes) await home.close().catch(() => undefined);
  await app.close();
});

async function newHome(folder?: string): Promise<BrowserHome> {
  const home = await browserHome({ ...app, ...(folder === undefined ? {} : { folder }) });
  homes.push(home);
  return home;
}

function widthField(page: Page) {
  return page.getByRole("textbox", { name: "Width", exact: true });
}

async function openBead(page: Page): Promise<void> {
  await openPart(page, "bead");
  await widthField(page).waitFor();
}

test("what was changed is there after a reload, without a moment's wait", async () => {
  const home = await newHome();
  const page = await openRoom(home, app.address, "section");
  await openBead(page);
  await typeLength(page, "Width", "8.3");
  await page.getByRole("button", { name: /^Undo: / }).waitFor();
  await page.reload();
  await openBead(page);
  expect(await widthField(page).inputValue()).toContain("8.3");
  expect(home.faults).toEqual([]);
});

test("a browser that is killed keeps all that it said was saved", async () => {
  const home = await newHome();
  const page = await openRoom(home, app.address, "section");
  await openBead(page);
  await typeLength(page, "Width", "7.75");
  await jobIsKept(page);
  killBrowserOf(home.folder);
  await home.context.close().catch(() => undefined);
  const again = await newHome(home.folder);
  const reopened = await openRoom(again, app.address, "section");
  await openBead(reopened);
  expect(await widthField(reopened).inputValue()).toContain("7.75\u00a0mm");
  expect(again.faults).toEqual([]);
});

/** Ends every process that has this browser's folder among its words, as a crash would. */
function killBrowserOf(folder: string): void {
  for (const id of readdirSync("/proc").filter((name) => /^\d+$/.test(name))) {
    const words = tried(() => readFileSync(join("/proc", id, "cmdline"), "utf8")) ?? "";
    if (words.includes(folder)) tried(() => process.kill(Number(id), "SIGKILL"));
  }
}

/** A process may end by itself between the two looks at it. */
function tried<Value>(work: () => Value): Value | null {
  try {
    return work();
  } catch {
    return null;
  }
}

test("two tabs that both change a job: both versions are kept, and it is said", async () => {
  const home = await newHome();
  const first = await openRoom(home, app.address, "section");
  await openBead(first);
  const second = await home.context.newPage();
  await second.goto(`${app.address}#section`);
  await openBead(second);
  await typeLength(first, "Width", "8");
  await jobIsKept(first);
  await typeLength(second, "Width", "11");
  await second
    .getByText(/both|another (tab|window)|other (tab|window)/i)
    .first()
    .waitFor();
  await first.goto(`${app.address}#jobs`);
  await first.reload();
  const list = first.getByRole("list", { name: "Your jobs" });
  await list.waitFor();
  expect(await list.getByText(/^Open Chart cabinet: cornice/).count()).toBe(2);
});

test("a hundred steps are undone and done again", { timeout: 240_000 }, async () => {
  const home = await newHome();
  const page = await openRoom(home, app.address, "section");
  await openBead(page);
  const before = await widthField(page).inputValue();
  for (let step = 1; step <= 100; step += 1) await typeLength(page, "Width", String(6 + step / 20));
  expect(await widthField(page).inputValue()).toBe("11");
  await page
    .getByRole("heading", { name: "Section" })
    .focus()
    .catch(() => undefined);
  await page.getByRole("main").focus();
  for (let step = 1; step <= 100; step += 1) await page.keyboard.press("Control+z");
  expect(await widthField(page).inputValue()).toBe(before);
  expect(await page.getByRole("button", { name: "Undo", exact: true }).isDisabled()).toBe(true);
  for (let step = 1; step <= 100; step += 1) await page.keyboard.press("Control+Shift+z");
  expect(await widthField(page).inputValue()).toBe("11\u00a0mm");
  expect(home.faults).toEqual([]);
});

/**
 * The browser's own refusal at every write, as it comes when the disk is full. This browser's tools for a small quota do
 * not reach its store of jobs, so the refusal is given at its door.
 */
async function storeIsFull(page: Page, isFull: boolean): Promise<void> {
  await page.evaluate((full) => {
    const store = IDBObjectStore.prototype as unknown as Record<string, unknown>;
    for (const name of ["put", "add"]) {
      store[`true ${name}`] ??= store[name];
      store[name] = full
        ? () => {
            throw new DOMException("The store is full.", "QuotaExceededError");
          }
        : store[`true ${name}`];
    }
  }, isFull);
}

test("a full store is said at once, the work stays on the bench and can be saved to a file", async () => {
  const home = await newHome();
  const page = await openRoom(home, app.address, "section");
  await openBead(page);
  await jobIsKept(page);
  await storeIsFull(page, true);
  await typeLength(page, "Width", "8.5");
  await page.getByRole("banner").getByText("Not saved").waitFor();
  const told = page.getByRole("alert", { name: "Not saved" }).or(page.getByLabel("Not saved"));
  const [download] = await Promise.all([
    page.waitForEvent("download"),
    told.first().getByRole("button", { name: /file/i }).first().click(),
  ]);
  expect(readFileSync((await download.path()) ?? "", "utf8")).toContain("8.5");
  expect(await widthField(page).inputValue()).toContain("8.5");
  await storeIsFull(page, false);
  await typeLength(page, "Width", "8.6");
  await jobIsKept(page);
});
