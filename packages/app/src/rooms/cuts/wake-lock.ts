/** Keeps the screen awake as long as it is wanted, and says so when the browser cannot. */
import { useEffect, useState } from "react";

const CANNOT = "This browser cannot keep the screen awake: set the device's own screen time longer.";
const MAY_NOT = "The screen may go dark: the device does not allow it to be kept awake just now.";

/** Empty while the screen is kept awake; else what to do about it. */
export function useScreenAwake(): string {
  const [says, setSays] = useState("");
  useEffect(() => {
    if (!("wakeLock" in navigator)) {
      setSays(CANNOT);
      return;
    }
    let lock: WakeLockSentinel | null = null;
    let isLeft = false;
    const hold = async (): Promise<void> => {
      if (isLeft || document.visibilityState !== "visible" || (lock !== null && !lock.released)) return;
      try {
        const held = await navigator.wakeLock.request("screen");
        if (isLeft) {
          void held.release();
          return;
        }
        lock = held;
        setSays("");
      } catch {
        setSays(MAY_NOT);
      }
    };
    // The lock goes whenever the page is hidden, and has to be asked for again.
    const onVisibility = (): void => void hold();
    document.addEventListener("visibilitychange", onVisibility);
    void hold();
    return () => {
      isLeft = true;
      document.removeEventListener("visibilitychange", onVisibility);
      void lock?.release();
    };
  }, []);
  return says;
}
