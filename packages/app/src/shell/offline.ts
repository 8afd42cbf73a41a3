/**
 * Keeps the app for days without a network, and tells when a newer build is ready. A newer build takes over only when the
 * maker says so.
 */
import { create } from "zustand";

export interface Offline {
  /** Whether all files are kept, so that the next visit needs no network. */
  readonly isKept: boolean;
  /** A newer build that waits to be taken; null where there is none. */
  readonly newer: ServiceWorker | null;
}

export const useOffline = create<Offline>()(() => ({ isKept: false, newer: null }));

/** Called once, after the first screen stands. Without a service worker (plain http, private windows) nothing is kept. */
export async function keepOffline(): Promise<void> {
  if (!import.meta.env.PROD || !("serviceWorker" in navigator)) return;
  try {
    const registration = await navigator.serviceWorker.register("./service-worker.js", { scope: "./" });
    const look = (): void => {
      useOffline.setState({
        isKept: registration.active !== null,
        newer: registration.active === null ? null : registration.waiting,
      });
    };
    look();
    registration.addEventListener("updatefound", () => {
      registration.installing?.addEventListener("statechange", look);
    });
    addEventListener("online", () => void registration.update().catch(() => undefined));
  } catch {
    // The app works without; it only needs its server at every visit.
    useOffline.setState({ isKept: false });
  }
}

/** Lets the newer build take over and shows it; `whenSaved` is waited for first. */
export async function takeNewer(newer: ServiceWorker, whenSaved: () => Promise<void>): Promise<void> {
  await whenSaved();
  navigator.serviceWorker.addEventListener("controllerchange", () => location.reload(), { once: true });
  newer.postMessage("take over");
}
