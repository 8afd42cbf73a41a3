/**
 * `npm run screens`: builds the app, opens every room with the chart cabinet's cornice on the bench at the width of a
 * phone, a tablet and a laptop, in light and dark, and keeps the pictures in docs/screens/.
 */
import { mkdirSync, rmSync } from "node:fs";
import { join } from "node:path";
import { setup } from "../tests/app/support/build-app.ts";
import { ROOT } from "../tests/app/support/places.ts";
import { browserHome, openRoom, served } from "../tests/app/support/screen.ts";

const ROOMS = ["jobs", "section", "shelf", "cuts", "stick", "light", "sheets"];
const SCREENS = [
  { width: 390, height: 844 },
  { width: 820, height: 1180 },
  { width: 1440, height: 900 },
];
/** A plan, the pages of a PDF: what is being made must stand before the picture is taken. */
const SETTLED_MS = 6000;

const folder = join(ROOT, "docs", "screens");
await setup();
rmSync(folder, { recursive: true, force: true });
mkdirSync(folder, { recursive: true });
const app = await served();
for (const theme of ["light", "dark"] as const) {
  const home = await browserHome({ ...app, theme });
  for (const room of ROOMS) {
    const page = await openRoom(home, app.address, room);
    for (const size of SCREENS) {
      await page.setViewportSize(size);
      await page.evaluate(() => scrollTo(0, 0));
      await page.waitForTimeout(room === ROOMS[0] ? SETTLED_MS : SETTLED_MS / 2);
      await page.screenshot({ path: join(folder, `${room}-${size.width}-${theme}.png`) });
    }
  }
  for (const fault of home.faults) console.log(fault);
  await home.close();
}
await app.close();
console.log(`Pictures of ${ROOMS.length} rooms stand in docs/screens`);
