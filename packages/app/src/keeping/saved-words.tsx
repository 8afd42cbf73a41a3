export function SavedWords() {
  return <p className="saved-words" aria-live="polite" />;
}
