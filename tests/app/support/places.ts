import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";

export const ROOT = join(dirname(fileURLToPath(import.meta.url)), "..", "..", "..");
export const APP_FOLDER = join(ROOT, "packages", "app");
export const BUILT = join(APP_FOLDER, "dist");
