#!/usr/bin/env node
// Runs the command line straight from its TypeScript sources, so that the command works right after
// `npm ci`, before any build. The loader strips the types; `npm run types` is where they are checked.
try {
  const { register } = await import("tsx/esm/api");
  register();
  const { main } = await import("../src/main.ts");
  process.exitCode = await main(process.argv.slice(2));
} catch (error) {
  // Only a broken installation ends here: `main` itself never throws.
  const reason = error instanceof Error ? error.message.split("\n")[0] : String(error);
  process.stderr.write(
    `mouldwright could not start: ${reason}\nInstall it again with npm ci in its own folder.\n`,
  );
  process.exitCode = 70;
}
