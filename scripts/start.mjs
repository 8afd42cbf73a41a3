// `npm start`: builds the app and serves it on this machine, always at the same address, because the browser keeps the
// jobs by address. Ctrl+C ends it. Another port: `npm start -- --port 4518`.
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { parseArgs } from "node:util";
import { serveApp } from "../packages/app/serve/serve.mjs";

const PORT = 4517;
const APP = join(dirname(fileURLToPath(import.meta.url)), "..", "packages", "app");

const ANOTHER_PORT =
  "Another port: npm start -- --port 4518. The browser keeps jobs by address: at another port the list of jobs begins empty.";

/** The port asked for; the usual one if none. Ends the program where it can be no port. */
function wantedPort() {
  let given;
  try {
    given = parseArgs({ options: { port: { type: "string" } } }).values.port;
  } catch (error) {
    return refuse(`${error.message}. The only option is --port, such as: npm start -- --port 4518`);
  }
  if (given === undefined) return PORT;
  const port = Number(given);
  if (/^\d+$/.test(given) && port >= 1024 && port <= 65_535) return port;
  return refuse(`“${given}” is no port for this. Give a number from 1024 to 65535: npm start -- --port 4518`);
}

function refuse(words) {
  console.error(words);
  process.exit(2);
}

async function build() {
  const { build: buildWithVite } = await import("vite");
  await buildWithVite({ configFile: join(APP, "vite.config.ts"), logLevel: "warn" });
}

/** Takes the port before anything is built, so that a taken one is said at once. */
async function serve(port) {
  try {
    return await serveApp(join(APP, "dist"), port);
  } catch (error) {
    if (error.code === "EACCES")
      return refuse(`This machine does not give port ${port} away. ${ANOTHER_PORT}`);
    if (error.code !== "EADDRINUSE") throw error;
    return refuse(
      `Port ${port} is taken, perhaps by Mouldwright itself in another window: look at http://localhost:${port}/ first.\n${ANOTHER_PORT}`,
    );
  }
}

const port = wantedPort();
const { address } = await serve(port);
console.log("Building Mouldwright for the browser…");
await build();
console.log(`Mouldwright is at ${address} for this machine alone. Ctrl+C ends it.`);
if (port !== PORT) {
  console.log(
    `Jobs are kept by address: those made at port ${PORT} are not seen here; save them to a file there.`,
  );
}
