/** Printing from the page itself, where the browser shows PDF files; elsewhere the file is saved and printed from there. */

/** A browser that has not shown the file by then will not, ms. */
const SHOWN_WITHIN_MS = 15_000;

let frame: HTMLIFrameElement | null = null;

/** Whether this browser shows PDF files itself: phones mostly do not. */
export function canPrintHere(): boolean {
  return navigator.pdfViewerEnabled;
}

/** Opens the browser's own printing of the file. False where it would not. */
export function printPdf(file: Blob): Promise<boolean> {
  clearPrinting();
  const url = URL.createObjectURL(file);
  const shown = document.createElement("iframe");
  shown.className = "print-frame";
  shown.title = "The sheets, for printing";
  shown.tabIndex = -1;
  shown.setAttribute("aria-hidden", "true");
  frame = shown;
  return new Promise((resolve) => {
    const giveUp = setTimeout(() => resolve(false), SHOWN_WITHIN_MS);
    shown.addEventListener("load", () => {
      clearTimeout(giveUp);
      resolve(asked(shown));
    });
    shown.src = url;
    document.body.append(shown);
  });
}

function asked(shown: HTMLIFrameElement): boolean {
  try {
    if (shown.contentWindow === null) return false;
    shown.contentWindow.focus();
    shown.contentWindow.print();
    return true;
  } catch {
    return false;
  }
}

/** Lets go of the file printed last. */
export function clearPrinting(): void {
  if (frame === null) return;
  URL.revokeObjectURL(frame.src);
  frame.remove();
  frame = null;
}
