import { afterAll, beforeAll, expect, test } from "vitest";
import { type BrowserHome, browserHome, goTo, openRoom, type Served, served } from "./support/screen.ts";

let app: Served;
let home: BrowserHome;

beforeAll(async () => {
  app = await served();
  home = await browserHome(app);
});
afterAll(async () => {
  await home.close();
  await app.close();
});

const ROOMS = ["Jobs", "Section", "Shelf", "Cuts", "Stick and fit", "Light", "Sheets"];

test("from the second visit on every room opens without a server and without a network", async () => {
  const page = await openRoom(home, app.address, "section");
  await page.evaluate(() => navigator.serviceWorker.ready.then((registration) => registration.active?.state));
  await page.waitForFunction(async () => {
    const registration = await navigator.serviceWorker.getRegistration();
    return registration?.active?.state === "activated";
  });
  await app.close();
  await home.context.setOffline(true);
  await page.reload();
  for (const room of ROOMS) {
    await goTo(page, room);
    expect(await page.getByRole("main", { name: room }).textContent()).not.toContain("could not be shown");
  }
  await home.context.setOffline(false);
  expect(home.faults).toEqual([]);
});
