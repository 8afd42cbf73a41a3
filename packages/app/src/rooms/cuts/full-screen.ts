/** Full screen where the browser allows it; leaving it by the browser's own key leaves the bench view too. */
import { useEffect } from "react";

/** To be called where a finger or key has asked for it: a browser allows it only then, and some never. */
export function enterFullScreen(): void {
  const root = document.documentElement;
  if (document.fullscreenElement !== null || typeof root.requestFullscreen !== "function") return;
  // Refused by the device, the view is as large as the window.
  root.requestFullscreen({ navigationUI: "hide" }).catch(() => undefined);
}

export function useFullScreen(onLeft: () => void): void {
  useEffect(() => {
    let wasFull = document.fullscreenElement !== null;
    const onChange = (): void => {
      const isFull = document.fullscreenElement !== null;
      if (wasFull && !isFull) onLeft();
      wasFull = isFull;
    };
    document.addEventListener("fullscreenchange", onChange);
    return () => document.removeEventListener("fullscreenchange", onChange);
  }, [onLeft]);
}

export function leaveFullScreen(): void {
  if (document.fullscreenElement !== null) document.exitFullscreen().catch(() => undefined);
}
