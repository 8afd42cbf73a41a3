/** Words inside XML. */
import { printable } from "./printable-text.ts";

export function escapedText(words: string): string {
  return printable(words)
    .replace(/&/g, "&amp;")
    .replace(/</g, "&lt;")
    .replace(/>/g, "&gt;")
    .replace(/"/g, "&quot;")
    .replace(/'/g, "&#39;");
}
