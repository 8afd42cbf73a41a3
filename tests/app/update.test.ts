/** A newer build: offered, never forced; it takes over only when the maker agrees, and his job stays. */
import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, expect, test } from "vitest";
import { BUILT } from "./support/places.ts";
import { type BrowserHome, browserHome, openRoom, type Served, served } from "./support/screen.ts";

let folder: string;
let app: Served;
let home: BrowserHome;

beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), "mouldwright-build-"));
  cpSync(BUILT, folder, { recursive: true });
  app = await served(folder);
  home = await browserHome(app);
});
afterAll(async () => {
  await home.close();
  await app.close();
  rmSync(folder, { recursive: true, force: true });
});

/** As the next build would be: the same files under another name, and a title to know it by. */
function buildNewer(): void {
  const worker = join(folder, "service-worker.js");
  const code = readFileSync(worker, "utf8");
  const newer = code.replace(/id:"[0-9a-f]+"/, 'id:"feedfacefeedface"');
  expect(newer).not.toBe(code);
  writeFileSync(worker, newer);
  const page = join(folder, "index.html");
  writeFileSync(page, readFileSync(page, "utf8").replace("<title>Mouldwright", "<title>Newer Mouldwright"));
}

test("a newer build waits until the maker agrees", async () => {
  const page = await openRoom(home, app.address, "jobs");
  // A build that serves no page yet may be replaced at any time.
  await page.waitForFunction(() => navigator.serviceWorker.controller?.state === "activated");
  buildNewer();
  await page.evaluate(async () => (await navigator.serviceWorker.getRegistration())?.update());
  const strip = page.getByText("A newer Mouldwright is ready.");
  await strip.waitFor();
  await page.reload();
  expect(await page.title()).toBe("Mouldwright");
  await strip.waitFor();
  await page.getByRole("button", { name: "Take it now" }).click();
  await page.waitForFunction(() => document.title === "Newer Mouldwright");
  await page.getByRole("list", { name: "Your jobs" }).getByText("Chart cabinet: cornice").waitFor();
  await page.reload();
  expect(await page.title()).toBe("Newer Mouldwright");
  expect(home.faults).toEqual([]);
});
