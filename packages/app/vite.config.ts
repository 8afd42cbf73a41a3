import { createHash } from "node:crypto";
import react from "@vitejs/plugin-react";
import { defineConfig, type Plugin } from "vite";
import { offlinePlugin } from "./build/offline-plugin.ts";

/**
 * What the built page may load and talk to: itself alone. No inline script, no eval, no inline style sheet but two
 * fixed ones that the widgets bring along, each named by its hash. Styles set by script on single elements are not
 * style sheets and are allowed by the standard.
 */
const STYLE_SHEETS_OF_REACT_ARIA = [
  `@layer {
  [data-react-aria-pressable] {
    touch-action: pan-x pan-y pinch-zoom;
  }
}`,
  `@layer {
  * {
    overscroll-behavior: contain;
  }
}`,
];

const hashOf = (text: string): string => `'sha256-${createHash("sha256").update(text).digest("base64")}'`;

const POLICY = [
  "default-src 'none'",
  "script-src 'self'",
  `style-src 'self' ${STYLE_SHEETS_OF_REACT_ARIA.map(hashOf).join(" ")}`,
  "img-src 'self' data: blob:",
  "font-src 'self' data: blob:",
  "connect-src 'self'",
  "worker-src 'self'",
  "manifest-src 'self'",
  "frame-src blob:",
  "base-uri 'none'",
  "form-action 'none'",
].join("; ");

/** The policy stands in the page itself, so that any plain web server serves it. While developing, Vite needs more. */
function policyInPage(): Plugin {
  return {
    name: "policy-in-page",
    apply: "build",
    transformIndexHtml: () => [
      {
        tag: "meta",
        attrs: { "http-equiv": "Content-Security-Policy", content: POLICY },
        injectTo: "head-prepend",
      },
    ],
  };
}

export default defineConfig({
  root: import.meta.dirname,
  base: "./",
  plugins: [react(), policyInPage(), offlinePlugin(import.meta.dirname)],
  build: {
    target: "es2022",
    outDir: "dist",
    manifest: "built-files.json",
    modulePreload: { polyfill: false },
    // Nothing is put into the page as data: the policy then needs no exception, and sizes are what they seem.
    assetsInlineLimit: 0,
    chunkSizeWarningLimit: 900,
  },
  worker: { format: "es" },
});
