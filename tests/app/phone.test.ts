/** The phone in the apron pocket: a newcomer's way by taps, and the cuts turned with one finger. */
import type { Locator, Page } from "playwright-core";
import { afterAll, afterEach, beforeAll, beforeEach, expect, test } from "vitest";
import {
  type BrowserHome,
  browserHome,
  openRoom,
  roomStands,
  type Served,
  served,
} from "./support/screen.ts";
import { jobIsKept, planStands } from "./support/waits.ts";

const PHONE = { width: 360, height: 740, isTouch: true } as const;
const SLOW = { timeout: 60_000 } as const;

let app: Served;
let home: BrowserHome;

beforeAll(async () => {
  app = await served();
});
beforeEach(async () => {
  home = await browserHome({ ...app, ...PHONE });
});
afterEach(async () => {
  const { faults } = home;
  await home.close();
  expect(faults).toEqual([]);
});
afterAll(() => app.close());

async function tapTo(page: Page, room: string): Promise<void> {
  await page.getByRole("navigation", { name: "Rooms" }).getByRole("link", { name: room, exact: true }).tap();
  await page.getByRole("main", { name: room }).waitFor();
  await roomStands(page);
}

/** How much of the page lies beyond the screen's right edge, px; and whether it was pushed sideways. */
function beyondScreen(page: Page): Promise<readonly number[]> {
  return page.evaluate(() => {
    const dialog = document.querySelector("[role=dialog]");
    const places = [document.documentElement, document.body, ...(dialog === null ? [] : [dialog])];
    return places.map((place) => Math.max(0, place.scrollWidth - innerWidth) + place.scrollLeft + scrollX);
  });
}

/** A finger set down in the middle, drawn across and lifted, as the browser itself hears it. */
async function swipe(page: Page, place: Locator, way: "left" | "right"): Promise<void> {
  const box = await place.boundingBox();
  if (box === null) throw new Error("there is nothing to swipe over");
  // Above the rooms' names, which stand at the bottom of a phone.
  const y = Math.min(box.y + box.height / 2, PHONE.height - 140);
  const [from, to] = way === "left" ? [300, 60] : [60, 300];
  const finger = await page.context().newCDPSession(page);
  const touch = (type: "touchStart" | "touchMove" | "touchEnd", x: number) =>
    finger.send("Input.dispatchTouchEvent", { type, touchPoints: type === "touchEnd" ? [] : [{ x, y }] });
  await touch("touchStart", from);
  for (let step = 1; step <= 8; step += 1) await touch("touchMove", from + ((to - from) * step) / 8);
  await touch("touchEnd", to);
  await finger.detach();
}

test("from the first visit to the sheets, by taps", { timeout: 240_000 }, async () => {
  const page = await openRoom(home, app.address, "section");
  await planStands(page);
  expect(await page.getByRole("region", { name: "Answer" }).textContent()).toMatch(/Every part can be cut/);
  await page
    .getByRole("list", { name: "Parts from the gauge edge" })
    .getByRole("button", { name: "bead", expanded: false })
    .first()
    .tap();
  const width = page.getByRole("textbox", { name: "Width", exact: true });
  await width.tap();
  await width.fill("12.7");
  await page.keyboard.press("Enter");
  await page.getByRole("button", { name: /^Undo: / }).waitFor();
  await planStands(page);
  expect(await beyondScreen(page)).toEqual([0, 0]);
  await page.getByRole("button", { name: /^Undo: / }).tap();
  await page.getByRole("button", { name: /^Redo: / }).tap();
  await planStands(page);

  await tapTo(page, "Cuts");
  const first = page.getByRole("article", { name: /^Cut 1 of / });
  await first.waitFor(SLOW);
  await first.locator(".tick-box").tap();
  await page.getByRole("button", { name: "Undo: cut 1 done" }).waitFor();
  expect(await first.getByRole("checkbox").isChecked()).toBe(true);
  await page.getByRole("button", { name: "Next page" }).tap();
  await page.getByRole("article", { name: /^Cut 2 of / }).waitFor();

  await tapTo(page, "Sheets");
  const save = page.getByRole("button", { name: "Save the PDF", exact: true });
  await page.waitForFunction(
    () =>
      [...document.querySelectorAll<HTMLButtonElement>("main button")].some(
        ({ textContent, disabled }) => textContent === "Save the PDF" && !disabled,
      ),
    undefined,
    { timeout: 90_000 },
  );
  const [download] = await Promise.all([page.waitForEvent("download"), save.tap()]);
  expect(download.suggestedFilename()).toMatch(/\.pdf$/);
  await jobIsKept(page);
  expect(await beyondScreen(page)).toEqual([0, 0]);
});

test("every page of the cuts is turned by a finger, and none is wider than the screen", {
  timeout: 240_000,
}, async () => {
  const page = await openRoom(home, app.address, "cuts");
  const first = page.getByRole("article", { name: /^Cut 1 of / });
  await first.waitFor(SLOW);
  const count = Number(/of (\d+)/.exec((await first.getAttribute("aria-label")) ?? "")?.[1]);
  expect(count).toBeGreaterThan(5);
  await swipe(page, first, "right");
  const overview = page.getByRole("article", { name: "Overview of the plan" });
  await overview.waitFor();
  expect(await beyondScreen(page)).toEqual([0, 0]);
  let shown = overview;
  for (let number = 1; number <= count; number += 1) {
    await swipe(page, shown, "left");
    shown = page.getByRole("article", { name: `Cut ${number} of ${count}`, exact: true });
    await shown.waitFor();
    expect({ number, beyond: await beyondScreen(page) }).toEqual({ number, beyond: [0, 0] });
  }
  // A box to tick under the finger is not ticked by it.
  await swipe(page, shown.locator(".tick-box"), "right");
  await swipe(page, page.getByRole("article", { name: /^Cut / }).locator(".tick-box"), "left");
  await shown.waitFor();
  expect(await page.getByRole("button", { name: "Undo", exact: true }).isDisabled()).toBe(true);
  expect(await shown.getByRole("checkbox").isChecked()).toBe(false);
  // Past the last there is nothing to turn to, and the way back is open.
  await swipe(page, shown, "left");
  await swipe(page, shown, "right");
  await page.getByRole("article", { name: `Cut ${count - 1} of ${count}`, exact: true }).waitFor();
});

test("at the bench: turned by a finger, done by a tap, never wider than the screen", {
  timeout: 240_000,
}, async () => {
  const page = await openRoom(home, app.address, "cuts");
  await page.getByRole("article", { name: /^Cut 1 of / }).waitFor(SLOW);
  await page.getByRole("button", { name: "At the bench", exact: true }).tap();
  const bench = (number: number) =>
    page.getByRole("dialog", { name: new RegExp(`^At the bench: cut ${number} of `) });
  await bench(1).waitFor();
  const count = Number(/of (\d+)/.exec((await bench(1).getAttribute("aria-label")) ?? "")?.[1]);
  for (let number = 1; number <= count; number += 1) {
    await bench(number).waitFor();
    expect({ number, beyond: await beyondScreen(page) }).toEqual({ number, beyond: [0, 0, 0] });
    if (number < count) await swipe(page, bench(number).locator(".bench-card"), "left");
  }
  await swipe(page, bench(count).locator(".bench-card"), "right");
  await bench(count - 1).waitFor();
  await bench(count - 1)
    .getByRole("button", { name: "Done, next" })
    .tap();
  await bench(count).waitFor();
  await bench(count).getByRole("button", { name: "Done, finished" }).tap();
  await bench(count).waitFor({ state: "detached" });
  const last = page.getByRole("article", { name: new RegExp(`^Cut ${count} of `) });
  await last.waitFor();
  expect(await last.getByRole("checkbox").isChecked()).toBe(true);
});

test("on the first visit the hint leaves room: the sign that a cut is done is seen without scrolling", {
  timeout: 120_000,
}, async () => {
  const page = await openRoom(home, app.address, "cuts");
  await page.setViewportSize({ width: 390, height: 844 });
  await page.getByRole("article", { name: /^Cut 1 of / }).waitFor(SLOW);
  await page.getByRole("region", { name: "First steps" }).waitFor();
  const ends: Record<number, { readonly isHinted: boolean; readonly isSeen: boolean }> = {};
  for (const number of [1, 2, 3]) {
    const box = page.getByRole("article", { name: new RegExp(`^Cut ${number} of `) }).locator(".tick-box");
    await box.waitFor();
    // The picture has taken its size once it has been measured.
    await page.waitForTimeout(300);
    const isHinted = await page.getByRole("region", { name: "First steps" }).isVisible();
    const below = await box.evaluate((tick) => {
      const rooms = document.querySelector("nav.rooms")?.getBoundingClientRect().top ?? innerHeight;
      return tick.getBoundingClientRect().bottom - rooms;
    });
    ends[number] = { isHinted, isSeen: below <= 0 && (await page.evaluate(() => scrollY)) === 0 };
    await page.getByRole("button", { name: "Next page" }).tap();
  }
  const seen = { isHinted: true, isSeen: true };
  expect(ends).toEqual({ 1: seen, 2: seen, 3: seen });
});
