/** Windows of this browser tell each other what they have kept. What one hears is checked: it only makes it look again. */

export type TabWord =
  | { readonly kind: "kept"; readonly jobId: string; readonly revision: number }
  | { readonly kind: "gone"; readonly jobId: string };

export interface Tabs {
  readonly tell: (word: TabWord) => void;
  readonly close: () => void;
}

export function listenToTabs(onWord: (word: TabWord) => void, name = "mouldwright jobs"): Tabs {
  if (typeof BroadcastChannel === "undefined") return { tell: () => undefined, close: () => undefined };
  const channel = new BroadcastChannel(name);
  channel.onmessage = ({ data }: MessageEvent<unknown>) => {
    const word = tabWordOf(data);
    if (word !== null) onWord(word);
  };
  return { tell: (word) => channel.postMessage(word), close: () => channel.close() };
}

/** Another window may run another version of the program: what is not understood is passed over. */
export function tabWordOf(data: unknown): TabWord | null {
  if (typeof data !== "object" || data === null) return null;
  const { kind, jobId, revision } = data as Readonly<Record<string, unknown>>;
  if (typeof jobId !== "string") return null;
  if (kind === "gone") return { kind, jobId };
  return kind === "kept" && typeof revision === "number" ? { kind, jobId, revision } : null;
}
