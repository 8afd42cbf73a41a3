/** Fields keep what was typed into them: nothing is rounded by being looked at, left or typed again. */
import type { Page } from "playwright-core";
import { afterAll, afterEach, beforeAll, beforeEach, expect, test } from "vitest";
import { focusNow } from "./support/keys.ts";
import { type BrowserHome, browserHome, openRoom, type Served, served } from "./support/screen.ts";
import { openPart, planStands, typeLength } from "./support/waits.ts";

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

const widthOf = (page: Page) => page.getByRole("textbox", { name: "Width", exact: true });

/** Closes the part and opens it again: the field knows no longer what was typed, only what is kept. */
async function openAgain(page: Page): Promise<void> {
  const rows = page.getByRole("list", { name: "Parts from the gauge edge" });
  await rows.getByRole("button", { name: "bead", expanded: true }).first().click();
  await widthOf(page).waitFor({ state: "detached" });
  await openPart(page, "bead");
}

test("a length comes back as it was typed, and no field is changed by being passed through", {
  timeout: 180_000,
}, async () => {
  const page = await openRoom(home, app.address, "section");
  await planStands(page);
  await openPart(page, "bead");
  const before = await widthOf(page).inputValue();
  await typeLength(page, "Width", "11.113");
  const undone = page.getByRole("button", { name: /^Undo: / });
  await undone.waitFor();
  await openAgain(page);
  expect(await widthOf(page).inputValue()).toBe("11.113\u00a0mm");

  // Through every field of the part, pressing Enter in each: it is still the one change.
  const form = page.locator(".part-form");
  for (const field of await form.getByRole("textbox").all()) {
    await field.focus();
    await page.keyboard.press("Enter");
  }
  // Typed again as it stands, in another way of writing it.
  await typeLength(page, "Width", "1.1113 cm");
  await page.keyboard.press("Tab");
  await undone.click();
  await page.getByRole("button", { name: "Undo", exact: true }).waitFor();
  expect(await widthOf(page).inputValue()).toBe(before);
});

test("in inches a length is its fraction, in either unit the same length", { timeout: 180_000 }, async () => {
  const page = await openRoom(home, app.address, "section");
  await planStands(page);
  await openPart(page, "bead");
  await typeLength(page, "Width", "7/16 in");
  await page.getByRole("button", { name: /^Undo: / }).waitFor();
  const unit = (name: string) =>
    page
      .getByRole("banner")
      .getByRole("radio", { name, exact: true })
      .or(page.getByRole("banner").getByRole("button", { name, exact: true }));
  await unit("in").click();
  await page.waitForFunction(() =>
    [...document.querySelectorAll("input")].some(({ value }) => value === "⁷⁄₁₆″"),
  );
  expect(await widthOf(page).inputValue()).toBe("⁷⁄₁₆″");
  // What was typed in one unit is not read again in the other.
  await widthOf(page).focus();
  await page.keyboard.press("Enter");
  await typeLength(page, "Width", "1/3");
  await openAgain(page);
  expect(await widthOf(page).inputValue()).toBe("¹⁄₃″");
  await unit("mm").click();
  await page.waitForFunction(() =>
    [...document.querySelectorAll("input")].some(({ value }) => value === "8.467\u00a0mm"),
  );
  expect(await widthOf(page).inputValue()).toBe("8.467\u00a0mm");
  await widthOf(page).fill("8.467");
  await page.keyboard.press("Enter");
  await unit("in").click();
  await page.waitForFunction(() =>
    [...document.querySelectorAll("input")].some(({ value }) => value === "¹⁄₃″"),
  );
});

test("a part’s name is taken by Enter, and the maker stays in the field", { timeout: 120_000 }, async () => {
  const page = await openRoom(home, app.address, "section");
  await openPart(page, "bead");
  const name = page.getByRole("textbox", { name: "Name", exact: true });
  await name.fill("little bead");
  await page.keyboard.press("Enter");
  await page.getByRole("button", { name: /^Undo: .*named/ }).waitFor();
  await page.getByRole("button", { name: "little bead", expanded: true }).waitFor();
  expect(await focusNow(page)).toMatchObject({ tag: "input", name: "Name" });
  await page.keyboard.type(" proud");
  expect(await name.inputValue()).toBe("little bead proud");
  await page.keyboard.press("Escape");
  expect(await name.inputValue()).toBe("little bead");
});
