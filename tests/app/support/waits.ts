import type { Page } from "playwright-core";

/** Waits until the plan of the job on the bench stands: as long as a slow machine needs. */
export async function planStands(page: Page): Promise<void> {
  await page
    .getByRole("region", { name: "Answer" })
    .getByText(/can be cut|stays? uncut/)
    .waitFor({ timeout: 60_000 });
  await page.getByText("before the change").waitFor({ state: "detached", timeout: 60_000 });
}

/** Waits until the top bar says that the job is kept. */
export async function jobIsKept(page: Page): Promise<void> {
  await page.getByRole("banner").getByText("Saved", { exact: true }).waitFor();
  // "Saved" stands until a save takes longer than a moment: whatever has been pressed is under way by now.
  await page.waitForTimeout(700);
  await page.getByRole("banner").getByText("Saved", { exact: true }).waitFor();
}

/** Opens a part of the section by its name. */
export async function openPart(page: Page, name: string): Promise<void> {
  const rows = page.getByRole("list", { name: "Parts from the gauge edge" });
  await rows.getByRole("button", { name, expanded: false }).first().click();
}

/** Types a length into a field, as a maker does, and leaves the field. */
export async function typeLength(page: Page, label: string, typed: string): Promise<void> {
  const field = page.getByRole("textbox", { name: label, exact: true });
  await field.fill(typed);
  await field.press("Enter");
}
