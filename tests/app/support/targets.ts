import type { Page } from "playwright-core";

/** The least size of what is pressed, px; text links within a sentence excepted, as WCAG 2.5.8 has it. */
const LEAST_PX = 44;

/** What can be pressed on the page and is smaller than a finger needs, each by its name and size. */
export function smallTargets(page: Page): Promise<readonly string[]> {
  return page.evaluate((leastPx) => {
    const pressed = [
      ...document.querySelectorAll<HTMLElement>(
        "button, a[href], [role=button], [role=tab], [role=radio], select, input:not([type=hidden])",
      ),
    ];
    return pressed.flatMap((element) => {
      if (!element.checkVisibility({ visibilityProperty: true, opacityProperty: true })) return [];
      // Words with help behind them stand within sentences; hidden inputs are pressed through their label.
      if (element.matches(".help-word, .skip") || element.closest("[data-react-aria-prevent-focus]") !== null)
        return [];
      if (getComputedStyle(element).clipPath === "inset(50%)" || element.closest("[style*='clip']") !== null)
        return [];
      const label = element.closest("label");
      const box = (element.matches("input") && label !== null ? label : element).getBoundingClientRect();
      if (box.width === 0 || box.height === 0) return [];
      // Half a pixel is the browser's rounding.
      if (box.width >= leastPx - 0.5 && box.height >= leastPx - 0.5) return [];
      const name = element.getAttribute("aria-label") ?? element.textContent?.trim().slice(0, 40) ?? "";
      return [
        `${element.tagName.toLowerCase()} “${name}” ${Math.round(box.width)} × ${Math.round(box.height)}`,
      ];
    });
  }, LEAST_PX);
}
