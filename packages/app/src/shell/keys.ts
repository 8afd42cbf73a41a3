/** Keys that work in every room: undo and redo, unless a field is being typed in, which has its own. */
import { redo, undo } from "../bench/job-on-bench.ts";

export function listenToKeys(): () => void {
  addEventListener("keydown", onKey);
  return () => removeEventListener("keydown", onKey);
}

function onKey(event: KeyboardEvent): void {
  if (!(event.ctrlKey || event.metaKey) || event.altKey || isTyping(event.target)) return;
  const key = event.key.toLowerCase();
  if (key === "z") {
    event.preventDefault();
    if (event.shiftKey) redo();
    else undo();
  }
  if (key === "y" && !event.shiftKey) {
    event.preventDefault();
    redo();
  }
}

function isTyping(target: EventTarget | null): boolean {
  return (
    target instanceof HTMLElement &&
    (target.isContentEditable ||
      target.matches("input:not([type=range], [type=checkbox], [type=radio]), textarea, select"))
  );
}
