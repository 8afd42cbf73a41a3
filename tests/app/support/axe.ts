import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import type { AxeResults } from "axe-core";
import type { Page } from "playwright-core";

const SOURCE = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");

interface Axe {
  readonly configure: (spec: object) => void;
  readonly run: (context: Document, options: object) => Promise<unknown>;
}

/** What axe finds against WCAG 2.2 A and AA on the page as it stands, each as one line. */
export async function axeFindings(page: Page): Promise<readonly string[]> {
  await page.evaluate(SOURCE);
  const results = await page.evaluate(async () => {
    const { axe } = globalThis as unknown as {
      axe: Axe;
    };
    // Handles on the board stand as near to each other as the section has them; every size they pull can be typed in the
    // list beside, which WCAG 2.5.8 allows as the equivalent.
    axe.configure({ rules: [{ id: "target-size", selector: "*:not(.handle)" }] });
    return axe.run(document, {
      runOnly: ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"],
    });
  });
  return (results as AxeResults).violations.flatMap(({ id, help, nodes }) =>
    nodes.map(({ target, failureSummary }) => `${id}: ${help}: ${target.join(" ")} ${failureSummary ?? ""}`),
  );
}
