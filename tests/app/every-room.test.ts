/** What holds in every room: axe, no sideways scroll, targets large enough, text that grows, names that fit. */
import { afterAll, afterEach, beforeAll, describe, expect, test } from "vitest";
import { axeFindings } from "./support/axe.ts";
import { type BrowserHome, browserHome, openRoom, type Served, served } from "./support/screen.ts";
import { smallTargets } from "./support/targets.ts";

const ROOMS = ["jobs", "section", "shelf", "cuts", "stick", "light", "sheets"];
const SIZES = [
  { width: 360, height: 740 },
  { width: 820, height: 1180 },
  { width: 1920, height: 1000 },
];

let app: Served;
beforeAll(async () => {
  app = await served();
});
afterAll(() => app.close());

describe.each(["light", "dark"] as const)("%s", (theme) => {
  let home: BrowserHome;
  beforeAll(async () => {
    home = await browserHome({ ...app, theme });
  });
  afterAll(() => home.close());
  afterEach(() => {
    expect(home.faults.splice(0)).toEqual([]);
  });

  test.each(ROOMS)("axe has nothing against %s, on a phone and on a laptop", async (room) => {
    const page = await openRoom(home, app.address, room);
    const found: Record<string, readonly string[]> = {};
    for (const size of [SIZES[0], SIZES[2]]) {
      if (size === undefined) continue;
      await page.setViewportSize(size);
      await page.waitForTimeout(400);
      // As high as the room is: what lies under the bar at the bottom for the moment is not out of reach. Pictures grow
      // with the screen, and the room with them, until it has room enough.
      for (let height = size.height; ; ) {
        const wanted = await page.evaluate(() => document.documentElement.scrollHeight);
        if (wanted <= height) break;
        height = wanted;
        await page.setViewportSize({ ...size, height });
        await page.waitForTimeout(400);
      }
      found[size.width] = await axeFindings(page);
    }
    expect(found).toEqual({ 360: [], 1920: [] });
  });
});

describe("at every width", () => {
  let home: BrowserHome;
  beforeAll(async () => {
    home = await browserHome(app);
  });
  afterAll(() => home.close());

  test.each(ROOMS)("%s is never wider than the screen, and what is pressed is large enough", async (room) => {
    const page = await openRoom(home, app.address, room);
    const wider: number[] = [];
    for (const size of SIZES) {
      await page.setViewportSize(size);
      await page.waitForTimeout(300);
      const overPx = await page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
      if (overPx > 0) wider.push(size.width);
      expect(await smallTargets(page)).toEqual([]);
    }
    expect(wider).toEqual([]);
  });

  test.each(ROOMS)("%s holds with letters twice as large", async (room) => {
    const page = await openRoom(home, app.address, room);
    const wider: number[] = [];
    for (const size of [SIZES[0], SIZES[1]]) {
      if (size === undefined) continue;
      await page.setViewportSize(size);
      await page.evaluate(() => {
        document.documentElement.style.fontSize = "200%";
      });
      await page.waitForTimeout(600);
      const overPx = await page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
      if (overPx > 0) wider.push(size.width);
    }
    expect(wider).toEqual([]);
  });
});
