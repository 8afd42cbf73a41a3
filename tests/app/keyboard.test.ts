/** The whole way without a mouse; where the maker stands is always seen, and never lost when something closes. */
import { afterAll, afterEach, beforeAll, beforeEach, expect, test } from "vitest";
import { focusComesTo, focusNow, tabTo } from "./support/keys.ts";
import {
  type BrowserHome,
  browserHome,
  openRoom,
  roomStands,
  type Served,
  served,
} from "./support/screen.ts";
import { planStands } from "./support/waits.ts";

const ROOMS = ["Jobs", "Section", "Shelf", "Cuts", "Stick and fit", "Light", "Sheets"];

let app: Served;
let home: BrowserHome;

beforeAll(async () => {
  app = await served();
});
beforeEach(async () => {
  home = await browserHome({ ...app, width: 1280, height: 860 });
});
afterEach(async () => {
  const { faults } = home;
  await home.close();
  expect(faults).toEqual([]);
});
afterAll(() => app.close());

test("the first Tab leads over everything into the room", async () => {
  const page = await openRoom(home, app.address, "section");
  await page.keyboard.press("Tab");
  expect(await focusNow(page)).toMatchObject({ name: "Skip to the room", isSeen: true });
  await page.keyboard.press("Enter");
  await focusComesTo(page, /^Section$/);
  await page.keyboard.press("Tab");
  expect(await page.evaluate(() => document.activeElement?.closest("main") !== null)).toBe(true);
  expect((await focusNow(page)).isSeen).toBe(true);
});

test("every room is entered by its link", { timeout: 180_000 }, async () => {
  const page = await openRoom(home, app.address, "section");
  for (const room of ROOMS) {
    expect(await tabTo(page, new RegExp(`^${room}$`))).toEqual([]);
    await page.keyboard.press("Enter");
    await page.getByRole("main", { name: room }).waitFor();
    await roomStands(page);
    expect(await focusNow(page)).toMatchObject({ name: room, isSeen: true });
  }
});

test("in every room each place that Tab leads to is seen", { timeout: 300_000 }, async () => {
  const page = await openRoom(home, app.address, "section");
  await planStands(page);
  const unseen: Record<string, readonly string[]> = {};
  for (const room of ROOMS) {
    await page.getByRole("link", { name: room, exact: true }).focus();
    await page.keyboard.press("Enter");
    await page.getByRole("main", { name: room }).waitFor();
    await roomStands(page);
    // Once round: from this link to itself.
    const found = await tabTo(page, new RegExp(`^${room}$`));
    if (found.length > 0) unseen[room] = found;
  }
  expect(unseen).toEqual({});
});

test("Section: open a part, change a size, pull a handle, undo", { timeout: 180_000 }, async () => {
  const page = await openRoom(home, app.address, "section");
  await planStands(page);
  expect(await tabTo(page, /^\d+bead/)).toEqual([]);
  await page.keyboard.press("Enter");
  const width = page.getByRole("textbox", { name: "Width", exact: true });
  await width.waitFor();
  expect(await tabTo(page, /^Width/)).toEqual([]);
  const before = await width.inputValue();
  await page.keyboard.press("Control+a");
  await page.keyboard.type("8.3");
  await page.keyboard.press("Enter");
  await page.getByRole("button", { name: /^Undo: / }).waitFor();
  expect(await width.inputValue()).toContain("8.3");
  // The field has an undo of its own for what is being typed: the job's is everywhere else.
  expect(await tabTo(page, /^Earlier$/)).toEqual([]);
  await page.keyboard.press("Control+z");
  await page.getByRole("button", { name: "Undo", exact: true }).waitFor();
  expect(await width.inputValue()).toBe(before);

  expect(await tabTo(page, /^End of the .*Arrow keys move it$/, { key: "Shift+Tab" })).toEqual([]);
  const handle = await focusNow(page);
  for (let press = 0; press < 6; press += 1) await page.keyboard.press("ArrowRight");
  await page.getByRole("button", { name: /^Undo: pulled: / }).waitFor();
  const pulled = await focusNow(page);
  expect(pulled.name.split(":")[0]).toBe(handle.name.split(":")[0]);
  expect(pulled.name).not.toBe(handle.name);
  await page.keyboard.press("Control+z");
  await focusComesTo(page, new RegExp(`^${escaped(handle.name)}$`));
  await page.keyboard.press("Control+Shift+z");
  await focusComesTo(page, new RegExp(`^${escaped(pulled.name)}$`));
});

function escaped(words: string): string {
  return words.replace(/[.*+?^${}()|[\]\\]/g, "\\$&");
}

test("Cuts: turn pages, tick one, open the bench view and leave it", { timeout: 180_000 }, async () => {
  const page = await openRoom(home, app.address, "cuts");
  const cut = (number: number) => page.getByRole("article", { name: new RegExp(`^Cut ${number} of `) });
  await cut(1).waitFor({ timeout: 60_000 });
  await tabTo(page, /^Next page$/);
  await page.keyboard.press("ArrowRight");
  await cut(2).waitFor();
  await page.keyboard.press("End");
  await page.keyboard.press("Home");
  await page.getByRole("article", { name: "Overview of the plan" }).waitFor();
  await page.keyboard.press("ArrowRight");
  await cut(1).waitFor();

  expect(await tabTo(page, /^Cut 1\. /)).toEqual([]);
  await page.keyboard.press("Space");
  const box = cut(1).getByRole("checkbox");
  await page.getByRole("button", { name: "Undo: cut 1 done" }).waitFor();
  expect(await box.isChecked()).toBe(true);
  expect(await focusNow(page)).toMatchObject({ tag: "input", isSeen: true });
  await page.keyboard.press("ArrowRight");
  await cut(2).waitFor();

  await tabTo(page, /^At the bench$/, { key: "Shift+Tab" });
  await page.keyboard.press("Enter");
  const bench = (number: number) => page.getByRole("dialog", { name: `At the bench: cut ${number} of` });
  await bench(2).waitFor();
  await page.keyboard.press("ArrowRight");
  await bench(3).waitFor();
  expect(await tabTo(page, /^Done, next$/)).toEqual([]);
  await page.keyboard.press("Enter");
  await bench(4).waitFor();
  await page.keyboard.press("Escape");
  await bench(4).waitFor({ state: "detached" });
  expect((await focusComesTo(page, /^At the bench$/)).isSeen).toBe(true);
  await cut(4).waitFor();
  await page.keyboard.press("ArrowLeft");
  await cut(3).waitFor();
  expect(await cut(3).getByRole("checkbox").isChecked()).toBe(true);
});

/** What opens something over the room, by its room: where the focus is to come back to. */
const OPENERS: readonly { readonly room: string; readonly opener: RegExp }[] = [
  { room: "Cuts", opener: /^What if…$/ },
  { room: "Cuts", opener: /^It came out so…$/ },
  { room: "Cuts", opener: /^At the bench$/ },
  { room: "Shelf", opener: /^Add planes$/ },
  { room: "Shelf", opener: /hollow/ },
  { room: "Sheets", opener: /^Page 1 .*: show large$/ },
];

test.each(OPENERS)("$room: what $opener opens gives the focus back", { timeout: 120_000 }, async (one) => {
  const page = await openRoom(home, app.address, one.room.toLowerCase());
  const main = page.getByRole("main");
  const opener = main.getByRole("button", { name: one.opener }).first();
  await opener.waitFor({ timeout: 60_000 });
  await tabTo(page, one.opener);
  const before = await focusNow(page);
  await page.keyboard.press("Enter");
  const dialog = page.getByRole("dialog");
  await dialog.waitFor();
  // Inside, the focus goes round and does not leave the dialog.
  for (let tab = 0; tab < 3; tab += 1) {
    await page.keyboard.press("Tab");
    expect((await focusNow(page)).isSeen).toBe(true);
    expect(await page.evaluate(() => document.activeElement?.closest("[role=dialog]") !== null)).toBe(true);
  }
  await page.keyboard.press("Escape");
  await dialog.waitFor({ state: "detached" });
  const after = await focusComesTo(page, new RegExp(`^${escaped(before.name)}$`));
  expect(after.isSeen).toBe(true);
});

test("Jobs: a question asked from a card's menu gives the focus back to the card", async () => {
  const page = await openRoom(home, app.address, "jobs");
  await page.getByRole("list", { name: "Your jobs" }).waitFor();
  for (const item of ["Name and notes", "Share", "Save to a file", "Backups"]) {
    await page
      .getByRole("button", { name: /^More for / })
      .first()
      .focus();
    await page.keyboard.press("Enter");
    await page.getByRole("menu").waitFor();
    await focusComesTo(page, /^Name and notes$/);
    await page.keyboard.type(item.slice(0, 3));
    await focusComesTo(page, new RegExp(`^${item}$`));
    await page.keyboard.press("Enter");
    const dialog = page.getByRole("dialog", { name: item === "Save to a file" ? /./ : new RegExp(item) });
    await dialog.waitFor();
    await page.keyboard.press("Escape");
    await dialog.waitFor({ state: "detached" });
    expect((await focusComesTo(page, /^More for /)).isSeen).toBe(true);
  }
});

test("a job that is opened, begun or deleted by key leaves the focus in the room", {
  timeout: 180_000,
}, async () => {
  const page = await openRoom(home, app.address, "jobs");
  await page.getByRole("list", { name: "Your jobs" }).waitFor();
  await tabTo(page, /^Open Chart cabinet: cornice/);
  await page.keyboard.press("Enter");
  await page.getByRole("main", { name: "Section" }).waitFor();
  await focusComesTo(page, /^Section$/);

  await openRoom(home, app.address, "jobs");
  await page.getByRole("button", { name: "New job" }).focus();
  await page.keyboard.press("Enter");
  await page.getByRole("button", { name: "Keep and open" }).focus();
  await page.keyboard.press("Enter");
  await page.getByRole("main", { name: "Section" }).waitFor();
  await focusComesTo(page, /^Section$/);

  await openRoom(home, app.address, "jobs");
  await page.getByRole("button", { name: "More for Chart cabinet: plinth" }).focus();
  await page.keyboard.press("Enter");
  await focusComesTo(page, /^Name and notes$/);
  await page.keyboard.type("Del");
  await focusComesTo(page, /^Delete$/);
  await page.keyboard.press("Enter");
  await page.getByText("is deleted.").waitFor();
  await focusComesTo(page, /^About your jobs$/);
  expect(await tabTo(page, /^Undo the delete$/)).toEqual([]);
  await page.keyboard.press("Enter");
  await page.getByRole("button", { name: "More for Chart cabinet: plinth" }).waitFor();
  await focusComesTo(page, /^Jobs$/);
});

test("Escape in a field takes back what was typed, the next one leaves the page it stands on", async () => {
  const page = await openRoom(home, app.address, "cuts");
  const opener = page.getByRole("button", { name: "It came out so…" });
  await opener.waitFor({ timeout: 60_000 });
  await opener.focus();
  await page.keyboard.press("Enter");
  const drawer = page.getByRole("dialog", { name: "It came out so" });
  const field = drawer.getByRole("textbox").first();
  await field.focus();
  const before = await field.inputValue();
  await page.keyboard.type("99");
  expect(await field.inputValue()).not.toBe(before);
  await page.keyboard.press("Escape");
  expect(await field.inputValue()).toBe(before);
  expect(await drawer.isVisible()).toBe(true);
  await page.keyboard.press("Escape");
  await drawer.waitFor({ state: "detached" });
  await focusComesTo(page, /^It came out so…$/);
});
