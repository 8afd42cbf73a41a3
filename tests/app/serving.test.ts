import { request } from "node:http";
import { afterAll, beforeAll, expect, test } from "vitest";
import { type Served, served } from "./support/screen.ts";

let app: Served;

beforeAll(async () => {
  app = await served();
});
afterAll(() => app.close());

interface Answer {
  readonly status: number;
  readonly headers: Readonly<Record<string, unknown>>;
  readonly text: string;
}

/** Asks as typed, past whatever a friendly client would put right first. */
function ask(path: string, host?: string, method = "GET"): Promise<Answer> {
  const { port, host: own } = new URL(app.address);
  return new Promise((resolve, reject) => {
    const asked = request(
      { host: "127.0.0.1", port, path, method, headers: { Host: host ?? own } },
      (response) => {
        let text = "";
        response.on("data", (part: Buffer) => {
          text += part.toString();
        });
        response.on("end", () =>
          resolve({ status: response.statusCode ?? 0, headers: response.headers, text }),
        );
      },
    );
    asked.on("error", reject);
    asked.end();
  });
}

test("the page comes with its policy and is asked for anew each time", async () => {
  const page = await ask("/");
  expect(page.status).toBe(200);
  expect(page.text).toContain("script-src &#39;self&#39;");
  expect(page.text).not.toMatch(/unsafe-inline|unsafe-eval|https?:/);
  expect(page.headers["cache-control"]).toBe("no-cache");
  expect(page.headers["x-content-type-options"]).toBe("nosniff");
});

test("127.0.0.1 leads to localhost: the jobs are kept by address", async () => {
  const { port } = new URL(app.address);
  const other = await ask("/a?b", `127.0.0.1:${port}`);
  expect(other.status).toBe(308);
  expect(other.headers.location).toBe(`http://localhost:${port}/a?b`);
});

test.each(["charts.example", "localhost.example:80", "localhost"])(
  "another name is refused: %j",
  async (host) => {
    expect((await ask("/", host)).status).toBeGreaterThanOrEqual(400);
  },
);

test.each([
  "/../package.json",
  "/%2e%2e/package.json",
  "/..%2fpackage.json",
  "/assets/%00",
  "/%ff",
  "/..\\package.json",
])("nothing outside the built folder: %s", async (path) => {
  const answer = await ask(path);
  expect(answer.status).toBe(404);
  expect(answer.text).not.toContain("mouldwright-app");
});

test("only reading", async () => {
  expect((await ask("/", undefined, "POST")).status).toBe(405);
});

test("a taken port is refused, never another taken instead", async () => {
  const port = Number(new URL(app.address).port);
  await expect(served(undefined, port)).rejects.toMatchObject({ code: "EADDRINUSE" });
});
