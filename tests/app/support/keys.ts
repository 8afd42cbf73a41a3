/** Walking the screen by keyboard alone, and whether the maker sees where he is. */
import type { Page } from "playwright-core";

export interface Focus {
  readonly tag: string;
  /** As it is read out, as far as the page says it by itself. */
  readonly name: string;
  /** Whether something around it says that it has the focus. */
  readonly isSeen: boolean;
}

/** What has the focus. The room and a dialog take it as a whole when they are entered: they need no frame of their own. */
export function focusNow(page: Page): Promise<Focus> {
  return page.evaluate(() => {
    const element = document.activeElement ?? document.body;
    const field = element as HTMLInputElement;
    const named = (element.getAttribute("aria-labelledby") ?? "")
      .split(" ")
      .map((id) => document.getElementById(id)?.textContent ?? "")
      .join(" ");
    const words =
      element.getAttribute("aria-label") ??
      (named.trim() === "" ? null : named) ??
      field.labels?.[0]?.textContent ??
      element.textContent ??
      "";
    // A box that is ticked or slid is drawn by what stands around the browser's own, hidden one.
    const holder = element.matches("input") ? element.closest("[data-focus-visible]") : null;
    const drawn = [element, ...(holder === null ? [] : [holder, ...holder.querySelectorAll("*")])];
    const isFramed = drawn.some((one) => {
      const { outlineStyle, outlineWidth, outlineColor } = getComputedStyle(one);
      const box = one.getBoundingClientRect();
      const isClear = /, 0\)$|\/ 0\)$|transparent/.test(outlineColor);
      return (
        outlineStyle !== "none" &&
        Number.parseFloat(outlineWidth) >= 2 &&
        !isClear &&
        box.width > 4 &&
        box.height > 4
      );
    });
    const box = (holder ?? element).getBoundingClientRect();
    const isOnScreen = box.bottom > 0 && box.right > 0 && box.top < innerHeight && box.left < innerWidth;
    return {
      tag: element.tagName.toLowerCase(),
      name: words.replace(/\s+/g, " ").trim(),
      isSeen: element.matches("main, [role=dialog]") || (isFramed && isOnScreen),
    };
  });
}

/** The focus after it has come to rest: a dialog that closes gives it back a moment later. */
export async function focusComesTo(page: Page, name: RegExp): Promise<Focus> {
  const read = async (): Promise<Focus | null> => {
    const focus = await focusNow(page);
    return name.test(focus.name) ? focus : null;
  };
  const endMs = Date.now() + 15_000;
  while (Date.now() < endMs) {
    const focus = await read();
    if (focus !== null) return focus;
    await page.waitForTimeout(50);
  }
  const { tag, name: at } = await focusNow(page);
  throw new Error(`the focus did not come to ${name}: it is at ${tag} “${at.slice(0, 80)}”`);
}

/** Far more than any room has to tab over. */
const MOST_TABS = 140;

/**
 * Presses Tab (or Shift+Tab) until what has the focus is called so. Gives the places on the way where the focus was not
 * seen or lost.
 */
export async function tabTo(
  page: Page,
  name: RegExp,
  { key = "Tab" }: { readonly key?: "Tab" | "Shift+Tab" } = {},
): Promise<readonly string[]> {
  const unseen: string[] = [];
  const way: string[] = [];
  for (let tab = 0; tab < MOST_TABS; tab += 1) {
    await page.keyboard.press(key);
    const focus = await focusNow(page);
    const says = `${focus.tag} “${focus.name.slice(0, 60)}”`;
    way.push(says);
    // Past the last one the browser itself has the focus, then the first again.
    if (!focus.isSeen && focus.tag !== "body") unseen.push(says);
    if (name.test(focus.name)) return unseen;
  }
  throw new Error(`no ${key} leads to ${name}: ${way.slice(0, 60).join(", ")}`);
}
