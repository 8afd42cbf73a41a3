/** Files and links from strangers: read as data, refused in plain words, never shown as markup, never a lost job. */
import { deflateSync } from "fflate";
import type { Page } from "playwright-core";
import { afterAll, afterEach, beforeAll, expect, test } from "vitest";
import {
  type BrowserHome,
  browserHome,
  goTo,
  openRoom,
  roomStands,
  type Served,
  served,
} from "./support/screen.ts";

let app: Served;
let home: BrowserHome;
let page: Page;

beforeAll(async () => {
  app = await served();
  home = await browserHome(app);
  page = await openRoom(home, app.address, "jobs");
});
afterAll(async () => {
  await home.close();
  await app.close();
});
afterEach(() => {
  expect(home.faults.splice(0)).toEqual([]);
});

const HOSTILE_SVG = `<?xml version="1.0"?>
<svg xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink" width="30mm" height="20mm" viewBox="0 0 30 20" onload="window.wasRun = true">
  <script>window.wasRun = true</script>
  <image xlink:href="http://charts.example/x.png" width="5" height="5" onerror="window.wasRun = true"/>
  <foreignObject><div xmlns="http://www.w3.org/1999/xhtml"><img src="x" onerror="window.wasRun = true"/></div></foreignObject>
  <path id="section" d="M0 20V4H10A6 6 0 0 1 16 10H30V20Z" onclick="window.wasRun = true"/>
</svg>`;

async function giveFile(name: string, text: string): Promise<void> {
  await page.goto(`${app.address}#jobs`);
  await page.reload();
  await roomStands(page);
  await page.getByRole("button", { name: "New job" }).click();
  await page.getByRole("radio", { name: "File" }).click();
  await page
    .locator("input[type=file]")
    .first()
    .setInputFiles({ name, mimeType: "", buffer: Buffer.from(text) });
  await page.getByRole("region", { name }).waitFor();
}

async function wasRun(): Promise<unknown> {
  return page.evaluate(() => (globalThis as { wasRun?: unknown }).wasRun);
}

test("a drawing full of scripts is read as lines and arcs, and nothing of it runs", async () => {
  await giveFile("doorway.svg", HOSTILE_SVG);
  expect(await page.locator("main script, main foreignObject, main image, main [onclick]").count()).toBe(0);
  expect(await wasRun()).toBeUndefined();
});

test.each([
  [
    "entities.svg",
    `<?xml version="1.0"?><!DOCTYPE svg [<!ENTITY a "aaaa"><!ENTITY b "&a;&a;&a;">]><svg xmlns="http://www.w3.org/2000/svg"><path d="&b;"/></svg>`,
  ],
  ["nothing.svg", "<svg"],
  ["deep.json", `${'{"a":'.repeat(5000)}1${"}".repeat(5000)}`],
  ["newer.json", JSON.stringify({ format: "mouldwright/job", version: 99, name: "later" })],
  [
    "proto.json",
    '{"format":"mouldwright/job","version":1,"name":"x","__proto__":{"isAdmin":true},"stick":{"widthMm":20,"thicknessMm":20},"section":{"parts":[{"kind":"fillet","widthMm":"rest"}]}}',
  ],
])("%s is refused in words, and the list of jobs stays", async (name, text) => {
  await giveFile(name, text);
  const told = (await page.getByRole("region", { name }).textContent()) ?? "";
  expect(told.length).toBeGreaterThan(30);
  expect(told).not.toMatch(/undefined|NaN|\[object|TypeError/);
  expect(await page.evaluate(() => ({}) as { isAdmin?: unknown })).toEqual({});
  expect(await page.evaluate(() => (Object.prototype as { isAdmin?: unknown }).isAdmin)).toBeUndefined();
});

function linkOf(text: string): string {
  const packed = Buffer.from(deflateSync(Buffer.from(text), { level: 9 })).toString("base64url");
  return `${app.address}#job=${packed}`;
}

async function followLink(link: string): Promise<string> {
  await page.goto("about:blank");
  await page.goto(link);
  const question = page.getByRole("dialog").or(page.getByRole("alertdialog"));
  await question.waitFor();
  return (await question.textContent()) ?? "";
}

test.each([
  ["no packing at all", () => `${app.address}#job=%%%`],
  ["a bomb", () => linkOf(`{"format":"mouldwright/job","notes":"${" ".repeat(80_000_000)}"}`)],
  [
    "hostile keys",
    () =>
      linkOf('{"format":"mouldwright/job","version":1,"constructor":{"prototype":{}},"__proto__":{"x":1}}'),
  ],
  ["nesting without end", () => linkOf("[".repeat(200_000))],
])("a link that brings %s is refused in words", async (_what, link) => {
  const told = await followLink(link());
  expect(told).toContain("no job");
  expect(told).not.toMatch(/undefined|NaN|\[object|TypeError/);
  await page.getByRole("button", { name: "Leave it" }).click();
  await page.getByRole("list", { name: "Your jobs" }).waitFor();
});

test("a good link is looked at first, and kept as a copy only then", async () => {
  const job = {
    format: "mouldwright/job",
    version: 1,
    name: "<img src=x onerror=window.wasRun=true> lipping",
    stick: { widthMm: 24, thicknessMm: 12 },
    section: {
      parts: [
        { kind: "bead", widthMm: 6 },
        { kind: "fillet", widthMm: "rest" },
      ],
    },
  };
  expect(await followLink(linkOf(JSON.stringify(job)))).toContain("lipping");
  await page.getByRole("button", { name: "Leave it" }).click();
  await page.getByRole("list", { name: "Your jobs" }).waitFor();
  expect(await page.getByRole("main").getByText("lipping").count()).toBe(0);
  await followLink(linkOf(JSON.stringify(job)));
  await page.getByRole("button", { name: "Keep a copy" }).click();
  await page.getByRole("main", { name: "Section" }).waitFor();
  await goTo(page, "Jobs");
  await page.getByRole("main").getByText("lipping").first().waitFor();
  expect(await wasRun()).toBeUndefined();
});
