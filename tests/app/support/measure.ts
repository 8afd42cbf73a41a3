/** What the screen does to a maker's patience, measured on the built app. */
import type { Page } from "playwright-core";
import { type BrowserHome, browserHome, openRoom } from "./screen.ts";

export interface FirstDrawing {
  readonly firstVisitMs: number;
  readonly laterVisitMs: number;
}

/** From the asking for the page to the section's drawing, with an empty browser and with one that keeps the app. */
export async function measureFirstDrawing(address: string): Promise<FirstDrawing> {
  const home = await browserHome({ address });
  const firstVisitMs = await drawingAfter(home, address);
  const page = home.context.pages()[0];
  await page?.waitForFunction(async () => {
    const registration = await navigator.serviceWorker.getRegistration();
    return registration?.active?.state === "activated";
  });
  const laterVisitMs = await drawingAfter(home, address);
  await home.close();
  return { firstVisitMs, laterVisitMs };
}

async function drawingAfter(home: BrowserHome, address: string): Promise<number> {
  const page = home.context.pages()[0] ?? (await home.context.newPage());
  await page.goto("about:blank");
  await page.goto(`${address}#section`, { waitUntil: "commit" });
  await page.locator("main svg[role=img]").first().waitFor();
  return page.evaluate(() => performance.now());
}

export interface Drags {
  /** From the lifting of the finger to the whole new plan, ms. */
  readonly planMs: readonly number[];
  /** Plans made while something was being dragged, ms each. */
  readonly quickMs: readonly number[];
  /** The longest task that held the screen up, ms; nought if none was as long as 50 ms. */
  readonly longestBlockMs: number;
}

/** Drags a handle of the section to and fro, so many times, and waits each time for the new plan. */
export async function measureDrags(address: string, count: number): Promise<Drags> {
  const home = await browserHome({ address, width: 1280, height: 860 });
  const page = await openRoom(home, address, "section");
  await plansStand(page, WHOLE, 1);
  await page.evaluate(() => {
    const kept: number[] = [];
    Object.assign(globalThis, { heldUpMs: kept });
    new PerformanceObserver((list) => {
      for (const { duration } of list.getEntries()) kept.push(duration);
      // Node's types lie over the browser's here and know no long tasks.
    }).observe({ type: "longtask" as "measure" });
  });
  const handle = page.getByLabel(/Arrow keys move it$/).nth(2);
  for (let drag = 0; drag < count; drag += 1) {
    const box = await handle.boundingBox();
    if (box === null) throw new Error("the drawing has no handle to drag");
    const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
    const wholePlans = await plansMade(page, WHOLE);
    const towards = drag % 2 === 0 ? 1 : -1;
    await page.mouse.move(x, y);
    await page.mouse.down();
    for (let step = 1; step <= 8; step += 1) {
      await page.mouse.move(x + towards * step, y);
      await page.waitForTimeout(16);
    }
    await plansStand(page, QUICK, drag + 1);
    await page.mouse.up();
    await plansStand(page, WHOLE, wholePlans + 1);
  }
  const planMs = (await durations(page, WHOLE)).slice(-count);
  const quickMs = await durations(page, QUICK);
  const longestBlockMs = await page.evaluate(() =>
    Math.max(0, ...(globalThis as unknown as { heldUpMs: number[] }).heldUpMs),
  );
  await home.close();
  return { planMs, quickMs, longestBlockMs };
}

/** As the app itself marks them (`planner/plan-on-bench.ts`). */
const WHOLE = "whole plan";
const QUICK = "plan while dragging";

function durations(page: Page, name: string): Promise<readonly number[]> {
  return page.evaluate((named) => performance.getEntriesByName(named).map(({ duration }) => duration), name);
}

async function plansMade(page: Page, name: string): Promise<number> {
  return (await durations(page, name)).length;
}

async function plansStand(page: Page, name: string, count: number): Promise<void> {
  await page.waitForFunction(
    ([named, wanted]) => performance.getEntriesByName(named).length >= wanted,
    [name, count] as const,
    { timeout: 60_000 },
  );
}
