/** The same pages give the same bytes, in Node twice and in a browser once. */
import { createHash } from "node:crypto";
import { readFileSync } from "node:fs";
import { createServer } from "node:http";
import { build } from "esbuild";
import { chromium } from "playwright-core";
import { expect, test } from "vitest";
import { writePdf } from "../../packages/pdf/src/index.ts";
import { nodeFonts } from "../../packages/pdf/src/node-fonts.ts";
import { examplePlan, pagesOf } from "./plans.ts";
import { browserPath } from "./tools.ts";

const ROOT = new URL("../../", import.meta.url);

function digest(bytes: Uint8Array): string {
  return createHash("sha256").update(bytes).digest("hex");
}

/** What runs in the browser: the core's pages and the PDF package, with the fonts fetched as any page would. */
const PAGE = `
import { sheetPages } from "mouldwright/sheets";
import { writePdf } from "mouldwright-pdf";
window.make = async (plan, options) => {
  const fetched = async (name) => new Uint8Array(await (await fetch("/fonts/" + name)).arrayBuffer());
  const fonts = { regular: await fetched("DejaVuSansCondensed.ttf"), bold: await fetched("DejaVuSansCondensed-Bold.ttf") };
  const pages = sheetPages(plan, options);
  if (!pages.ok) throw new Error(pages.trouble.code);
  const bytes = await writePdf(pages.value, { title: plan.name, fonts });
  const hash = new Uint8Array(await crypto.subtle.digest("SHA-256", bytes));
  return { length: bytes.length, hash: [...hash].map((byte) => byte.toString(16).padStart(2, "0")).join("") };
};
`;

async function bundle(): Promise<string> {
  const built = await build({
    stdin: { contents: PAGE, resolveDir: new URL("packages/cli", ROOT).pathname, loader: "ts" },
    bundle: true,
    format: "esm",
    platform: "browser",
    write: false,
    logLevel: "silent",
  });
  return built.outputFiles[0]?.text ?? "";
}

test("Node and the browser write the same bytes for a whole set, and Node twice", async () => {
  const plan = examplePlan("low-bead-and-cove");
  const options = {
    unit: "in",
    paper: "letter",
    made: { acrossMm: 100.4, upMm: 99.8 },
    date: "12 March",
  } as const;
  const inNode = async (): Promise<Uint8Array> =>
    writePdf(pagesOf(plan, options), { title: plan.name, fonts: await nodeFonts() });
  const first = await inNode();
  expect(digest(await inNode())).toBe(digest(first));

  const script = await bundle();
  const server = createServer((request, response) => {
    const font = /^\/fonts\/([\w-]+\.ttf)$/.exec(request.url ?? "")?.[1];
    if (font !== undefined) {
      response.end(readFileSync(new URL(`packages/pdf/fonts/${font}`, ROOT)));
    } else if (request.url === "/page.js") {
      response.setHeader("content-type", "text/javascript");
      response.end(script);
    } else {
      response.setHeader("content-type", "text/html");
      response.end('<!doctype html><meta charset="utf-8"><script type="module" src="/page.js"></script>');
    }
  });
  await new Promise<void>((ready) => server.listen(0, "127.0.0.1", () => ready()));
  const address = server.address();
  if (address === null || typeof address === "string") throw new Error("no port");
  const browser = await chromium.launch({ executablePath: browserPath(), args: ["--no-sandbox"] });
  try {
    const page = await browser.newPage();
    await page.goto(`http://127.0.0.1:${address.port}/`);
    await page.waitForFunction("window.make !== undefined");
    const made = await page.evaluate(`window.make(${JSON.stringify(plan)}, ${JSON.stringify(options)})`);
    expect(made).toEqual({ length: first.length, hash: digest(first) });
  } finally {
    await browser.close();
    server.close();
  }
});
