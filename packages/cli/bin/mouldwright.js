#!/usr/bin/env node
// Runs the command line straight from its TypeScript sources, so that the command works right after
// `npm ci`, before any build. The loader strips the types; `npm run types` is where they are checked.
import { register } from "tsx/esm/api";

register();
const { main } = await import("../src/main.ts");
process.exitCode = await main(process.argv.slice(2));
