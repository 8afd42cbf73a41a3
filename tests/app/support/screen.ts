/**
 * The built app in real Chromium, served as `npm start` serves it. Every page is watched: what the console says, what the
 * page's policy reports and every request to anywhere but the app's own address is kept and asked for at the end.
 */
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { type BrowserContext, chromium, type Page } from "playwright-core";
import { serveApp } from "../../../packages/app/serve/serve.mjs";
import { browserPath } from "../../sheets/tools.ts";
import { BUILT } from "./places.ts";

/** Chromium as it runs on a machine without a screen; the rest keeps it from asking anybody anything. */
const BROWSER_ARGUMENTS = [
  "--no-sandbox",
  "--disable-quic",
  "--no-first-run",
  "--disable-background-networking",
  "--disable-component-update",
  "--disable-sync",
  "--enable-unsafe-swiftshader",
];

export interface Served {
  readonly address: string;
  readonly close: () => Promise<void>;
}

/** The built app at a free port of this machine. */
export function served(folder = BUILT, port = 0): Promise<Served> {
  return serveApp(folder, port);
}

export interface BrowserHome {
  readonly context: BrowserContext;
  /** What was said, reported or asked for that should not have been. */
  readonly faults: string[];
  /** Ends the browser; its folder (with everything it keeps) goes too unless it is to be opened again. */
  readonly close: (options?: { readonly keepFolder: boolean }) => Promise<void>;
  readonly folder: string;
}

export interface HomeOptions {
  readonly address: string;
  readonly width?: number;
  readonly height?: number;
  readonly theme?: "light" | "dark";
  readonly isTouch?: boolean;
  /** A folder of an earlier browser, to open with all it kept. */
  readonly folder?: string;
}

/** A browser with a folder of its own, so that what it keeps outlives a page, and if wanted the browser. */
export async function browserHome(options: HomeOptions): Promise<BrowserHome> {
  const folder = options.folder ?? mkdtempSync(join(tmpdir(), "mouldwright-browser-"));
  const context = await chromium.launchPersistentContext(folder, {
    executablePath: browserPath(),
    headless: true,
    args: BROWSER_ARGUMENTS,
    viewport: { width: options.width ?? 1280, height: options.height ?? 860 },
    colorScheme: options.theme ?? "light",
    hasTouch: options.isTouch ?? false,
    acceptDownloads: true,
  });
  const faults: string[] = [];
  await context.exposeBinding("tellPolicyReport", (_source, words: string) => {
    faults.push(`policy: ${words}`);
  });
  await context.addInitScript(() => {
    document.addEventListener("securitypolicyviolation", (event) => {
      const tell = (globalThis as unknown as { tellPolicyReport: (words: string) => void }).tellPolicyReport;
      tell(`${event.violatedDirective} ${event.blockedURI} ${event.sourceFile}`);
    });
  });
  context.on("console", (message) => {
    if (["error", "warning"].includes(message.type())) faults.push(`${message.type()}: ${message.text()}`);
  });
  context.on("weberror", (error) => faults.push(`thrown: ${error.error().stack ?? error.error().message}`));
  context.on("request", (request) => {
    const url = request.url();
    if (!/^(data|blob):/.test(url) && !url.startsWith(options.address))
      faults.push(`asked elsewhere: ${url}`);
  });
  return {
    context,
    faults,
    folder,
    close: async ({ keepFolder } = { keepFolder: false }) => {
      await context.close();
      if (!keepFolder) rmSync(folder, { recursive: true, force: true });
    },
  };
}

/** Opens the app in a room and waits until a job lies on the bench and the room stands. */
export async function openRoom(home: BrowserHome, address: string, room: string): Promise<Page> {
  const page = home.context.pages()[0] ?? (await home.context.newPage());
  await page.goto(`${address}#${room}`);
  await roomStands(page);
  return page;
}

export async function roomStands(page: Page): Promise<void> {
  await page.getByRole("main").waitFor();
  await page.getByText("Opening the room…").waitFor({ state: "detached" });
}

/** Goes to a room as the maker does: by its name among the rooms. */
export async function goTo(page: Page, room: string): Promise<void> {
  await page
    .getByRole("navigation", { name: "Rooms" })
    .getByRole("link", { name: room, exact: true })
    .click();
  await page.getByRole("main", { name: room }).waitFor();
  await roomStands(page);
}
