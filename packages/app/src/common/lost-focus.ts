/** Gives the focus to this place if nothing has it: what had it is gone, and with it where the maker stood. */
export function takeLostFocus(place: HTMLElement | null): void {
  const { activeElement, body } = document;
  if (activeElement === null || activeElement === body) place?.focus({ preventScroll: true });
}
