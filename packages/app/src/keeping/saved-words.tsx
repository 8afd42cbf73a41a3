/** In the top bar: whether the job on the bench is kept. What to do when it is not stands in the banner below. */
import { useEffect, useState } from "react";
import { useKeeping } from "./kept-jobs.ts";

/** A save that takes no longer is not worth a word. */
const SAID_AFTER_MS = 600;

export function SavedWords() {
  const saving = useKeeping(({ saving }) => saving.kind);
  const store = useKeeping(({ store }) => store);
  const [isLong, setIsLong] = useState(false);
  useEffect(() => {
    setIsLong(false);
    if (saving !== "saving") return;
    const timer = setTimeout(() => setIsLong(true), SAID_AFTER_MS);
    return () => clearTimeout(timer);
  }, [saving]);
  if (store === "opening") return <p className="saved-words" aria-live="polite" />;
  return (
    <p className={saving === "failed" ? "saved-words saved-words-not" : "saved-words"} aria-live="polite">
      {saving === "failed" ? "Not saved" : saving === "saving" && isLong ? "Saving…" : "Saved"}
    </p>
  );
}
