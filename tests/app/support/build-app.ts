/** Builds the app once for all tests of the screen, as `npm start` does. */
import { rmSync } from "node:fs";
import { join } from "node:path";
import { build } from "vite";
import { APP_FOLDER } from "./places.ts";

export async function setup(): Promise<void> {
  rmSync(join(APP_FOLDER, "dist"), { recursive: true, force: true });
  // Vitest says "test" to whoever asks; what is built must be what is shipped.
  const { NODE_ENV } = process.env;
  process.env.NODE_ENV = "production";
  await build({ configFile: join(APP_FOLDER, "vite.config.ts"), mode: "production", logLevel: "warn" });
  process.env.NODE_ENV = NODE_ENV;
}
