/** Whether this browser promises to keep what is stored, or may clear it when room runs short. */

export type Persistence =
  /** It promises to keep it until the user clears it. */
  | "promised"
  /** It may clear it when room runs short or the page is not used for long. */
  | "not promised"
  /** It does not say. */
  | "unknown";

export async function persistenceNow(): Promise<Persistence> {
  try {
    if (!("storage" in navigator)) return "unknown";
    return (await navigator.storage.persisted()) ? "promised" : "not promised";
  } catch {
    return "unknown";
  }
}

/** Asks for it; some browsers ask the user, some decide by themselves. */
export async function askToPersist(): Promise<Persistence> {
  try {
    if (!("storage" in navigator)) return "unknown";
    return (await navigator.storage.persist()) ? "promised" : "not promised";
  } catch {
    return "unknown";
  }
}

export interface Room {
  readonly usedBytes: number;
  readonly ofBytes: number;
}

export async function roomNow(): Promise<Room | null> {
  try {
    if (!("storage" in navigator)) return null;
    const { usage, quota } = await navigator.storage.estimate();
    return usage === undefined || quota === undefined ? null : { usedBytes: usage, ofBytes: quota };
  } catch {
    return null;
  }
}
