// A plain web server for the built app on this machine alone: bound to the loopback, other names refused, nothing but
// the built files read. The browser keeps the jobs by address, so there is one address: 127.0.0.1 leads to localhost.
import { createReadStream } from "node:fs";
import { stat } from "node:fs/promises";
import { createServer } from "node:http";
import { extname, join, normalize, sep } from "node:path";

const KINDS = {
  ".css": "text/css; charset=utf-8",
  ".html": "text/html; charset=utf-8",
  ".js": "text/javascript; charset=utf-8",
  ".json": "application/json; charset=utf-8",
  ".mjs": "text/javascript; charset=utf-8",
  ".png": "image/png",
  ".svg": "image/svg+xml",
  ".ttf": "font/ttf",
  ".txt": "text/plain; charset=utf-8",
  ".wasm": "application/wasm",
  ".webmanifest": "application/manifest+json",
};

const GUARDS = {
  "X-Content-Type-Options": "nosniff",
  "Referrer-Policy": "no-referrer",
  "Cross-Origin-Opener-Policy": "same-origin",
  "Cross-Origin-Resource-Policy": "same-origin",
  // The rest of the policy stands in the page; this counts only as a header.
  "Content-Security-Policy": "frame-ancestors 'none'",
};

/** Files with a hash in their name never change; everything else is asked for anew. */
const FOR_EVER = "public, max-age=31536000, immutable";
const ASK_AGAIN = "no-cache";

/**
 * Serves `folder` at http://localhost:PORT until `close`. Rejects with the system's own error (`EADDRINUSE`) where the
 * port is taken: it never moves to another by itself. Port 0 takes any free one (tests).
 */
export function serveApp(folder, port) {
  return new Promise((resolve, reject) => {
    const server = createServer((request, response) => {
      void answer(request, response, folder, server.address().port);
    });
    server.once("error", reject);
    server.listen({ port, host: "127.0.0.1" }, () => {
      const taken = server.address().port;
      resolve({
        port: taken,
        address: `http://localhost:${taken}/`,
        close: () =>
          new Promise((done) => {
            server.close(done);
            server.closeAllConnections();
          }),
      });
    });
  });
}

async function answer(request, response, folder, port) {
  const host = request.headers.host ?? "";
  if (host === `127.0.0.1:${port}`) {
    end(response, 308, { Location: `http://localhost:${port}${request.url ?? "/"}` }, "");
    return;
  }
  if (host !== `localhost:${port}`) {
    end(response, 421, {}, `This server answers to http://localhost:${port} alone.\n`);
    return;
  }
  if (request.method !== "GET" && request.method !== "HEAD") {
    end(response, 405, { Allow: "GET, HEAD" }, "Only GET and HEAD.\n");
    return;
  }
  const file = fileFor(request.url ?? "/", folder);
  const found = file === null ? null : await stat(file).catch(() => null);
  if (file === null || found === null || !found.isFile()) {
    end(response, 404, {}, "There is no such file.\n");
    return;
  }
  response.writeHead(200, {
    ...GUARDS,
    "Content-Type": KINDS[extname(file)] ?? "application/octet-stream",
    "Content-Length": found.size,
    "Cache-Control": file.includes(`${sep}assets${sep}`) ? FOR_EVER : ASK_AGAIN,
  });
  if (request.method === "HEAD") {
    response.end();
    return;
  }
  createReadStream(file)
    .on("error", () => response.destroy())
    .pipe(response);
}

/** The file an address means, or null where it leads out of the folder or cannot be read as an address. */
function fileFor(url, folder) {
  let path;
  try {
    path = decodeURIComponent(url.split(/[?#]/, 1)[0] ?? "");
  } catch {
    return null;
  }
  if (path.includes("\0") || path.includes("\\")) return null;
  const file = normalize(join(folder, path.endsWith("/") ? `${path}index.html` : path));
  return file.startsWith(folder + sep) ? file : null;
}

function end(response, status, headers, text) {
  response.writeHead(status, { ...GUARDS, "Content-Type": "text/plain; charset=utf-8", ...headers });
  response.end(text);
}
