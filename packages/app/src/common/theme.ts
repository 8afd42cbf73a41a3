/** Light or dark: as the system has it, unless the maker chose. Kept in this browser; nothing else hangs on it. */
import { useSyncExternalStore } from "react";

export const THEME_WISHES = ["system", "light", "dark"] as const;
export type ThemeWish = (typeof THEME_WISHES)[number];

const KEPT_AS = "mouldwright theme";
const systemIsDark = matchMedia("(prefers-color-scheme: dark)");
const listeners = new Set<() => void>();

let wish: ThemeWish = readWish();

/** Shows the theme from the start, and follows the system when that changes. Called once. */
export function showTheme(): void {
  const show = (): void => {
    const isDark = wish === "dark" || (wish === "system" && systemIsDark.matches);
    document.documentElement.dataset.theme = isDark ? "dark" : "light";
  };
  show();
  listeners.add(show);
  systemIsDark.addEventListener("change", show);
}

export function useThemeWish(): ThemeWish {
  return useSyncExternalStore(
    (onChange) => {
      listeners.add(onChange);
      return () => listeners.delete(onChange);
    },
    () => wish,
  );
}

export function wishTheme(next: ThemeWish): void {
  wish = next;
  try {
    localStorage.setItem(KEPT_AS, next);
  } catch {
    // A browser that keeps nothing shows the theme until it is closed.
  }
  for (const listener of listeners) listener();
}

function readWish(): ThemeWish {
  try {
    const kept = localStorage.getItem(KEPT_AS);
    return THEME_WISHES.find((known) => known === kept) ?? "system";
  } catch {
    return "system";
  }
}
