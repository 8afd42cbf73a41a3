/** Adds the service worker to a build, with the list of all built files and a name that changes whenever one of them does. */
import { createHash } from "node:crypto";
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { transform } from "esbuild";
import type { Plugin } from "vite";

export function offlinePlugin(appFolder: string): Plugin {
  return {
    name: "offline",
    apply: "build",
    async generateBundle(_options, bundle) {
      const built = Object.entries(bundle).map(([file, output]) => ({
        file,
        content: output.type === "chunk" ? output.code : output.source,
      }));
      const publicFolder = join(appFolder, "public");
      const copied = readdirSync(publicFolder, { recursive: true, encoding: "utf8" })
        .filter((file) => file.includes("."))
        .map((file) => ({
          file: file.replaceAll("\\", "/"),
          content: readFileSync(join(publicFolder, file)),
        }));
      const all = [...built, ...copied].filter(({ file }) => !NOT_KEPT.test(file));
      const hash = createHash("sha256");
      for (const { file, content } of all) hash.update(file).update(content);
      const files = ["index.html", ...all.map(({ file }) => file).filter((file) => file !== "index.html")];
      const source = readFileSync(join(appFolder, "src", "offline", "service-worker.ts"), "utf8");
      const { code } = await transform(source, {
        loader: "ts",
        minify: true,
        define: { BUILT: JSON.stringify({ id: hash.digest("hex").slice(0, 16), files }) },
      });
      this.emitFile({ type: "asset", fileName: "service-worker.js", source: code });
    },
  };
}

/** For the tests of sizes, not for the browser. */
const NOT_KEPT = /^built-files\.json$|\.map$/;
