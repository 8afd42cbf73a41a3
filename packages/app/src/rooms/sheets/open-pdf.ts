/**
 * Reads the very file that will be printed and draws its pages. The reader's own worker comes from our own files; it
 * makes no code out of text. Loaded when the first sheets are there.
 */
import {
  GlobalWorkerOptions,
  getDocument,
  type PDFDocumentProxy,
  PDFWorker,
  type RenderTask,
} from "pdfjs-dist";
import workerUrl from "pdfjs-dist/build/pdf.worker.min.mjs?url";

GlobalWorkerOptions.workerSrc = new URL(workerUrl, import.meta.url).href;

export interface OpenedPdf {
  /** Draws a page, from 1 on, so many device pixels wide, on a canvas of that size. */
  readonly draw: (
    pageNumber: number,
    canvas: HTMLCanvasElement,
    widthPx: number,
    signal: AbortSignal,
  ) => Promise<void>;
  readonly close: () => void;
  /** A page that could not be drawn any more because of it is not broken: another file is on its way. */
  readonly isClosed: () => boolean;
}

let worker: PDFWorker | null = null;

export async function openPdf(file: Blob): Promise<OpenedPdf> {
  if (worker === null || worker.destroyed) worker = new PDFWorker();
  const data = new Uint8Array(await file.arrayBuffer());
  const loading = getDocument({
    data,
    worker,
    isEvalSupported: false,
    useWasm: false,
    useSystemFonts: false,
  });
  const pdf = await loading.promise;
  let isClosed = false;
  return {
    draw: (pageNumber, canvas, widthPx, signal) => drawPage(pdf, pageNumber, canvas, widthPx, signal),
    close: () => {
      isClosed = true;
      void loading.destroy();
    },
    isClosed: () => isClosed,
  };
}

async function drawPage(
  pdf: PDFDocumentProxy,
  pageNumber: number,
  canvas: HTMLCanvasElement,
  widthPx: number,
  signal: AbortSignal,
): Promise<void> {
  const page = await pdf.getPage(pageNumber);
  if (signal.aborted) return;
  const viewport = page.getViewport({ scale: widthPx / page.getViewport({ scale: 1 }).width });
  canvas.width = Math.round(viewport.width);
  canvas.height = Math.round(viewport.height);
  const task: RenderTask = page.render({ canvas, viewport });
  const stop = (): void => task.cancel();
  signal.addEventListener("abort", stop, { once: true });
  try {
    await task.promise;
  } finally {
    signal.removeEventListener("abort", stop);
    page.cleanup();
  }
}
