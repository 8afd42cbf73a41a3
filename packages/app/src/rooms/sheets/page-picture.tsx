/** One page as it will be printed: drawn when it comes near, let go when it is far. */
import { useEffect, useRef, useState } from "react";
import type { DrawQueue } from "./draw-queue.ts";
import type { PageTold } from "./messages.ts";
import type { OpenedPdf } from "./open-pdf.ts";

export interface PagePictureProps {
  readonly pdf: OpenedPdf | null;
  readonly queue: DrawQueue;
  readonly page: PageTold;
}

/** How far outside the screen a page is drawn already. */
const NEAR = "600px";
/** More dots than this are not told apart, and cost memory on a phone. */
const MOST_DOTS_RATIO = 2;

export function PagePicture({ pdf, queue, page }: PagePictureProps) {
  const { number: pageNumber, widthMm, heightMm } = page;
  const canvas = useRef<HTMLCanvasElement>(null);
  const isNear = useIsNear(canvas);
  const widthPx = useWidthPx(canvas);
  const [isBroken, setBroken] = useState(false);
  useEffect(() => {
    const shown = canvas.current;
    if (shown === null) return;
    if (!isNear || pdf === null || widthPx === 0) {
      if (!isNear) shown.width = 0;
      return;
    }
    // Drawn aside and put in whole, so that the last picture stays until the new one is there.
    return queue.add(async (signal) => {
      const aside = document.createElement("canvas");
      try {
        await pdf.draw(pageNumber, aside, widthPx, signal);
        if (signal.aborted) return;
        shown.width = aside.width;
        shown.height = aside.height;
        shown.getContext("2d")?.drawImage(aside, 0, 0);
        setBroken(false);
      } catch {
        if (!signal.aborted && !pdf.isClosed()) setBroken(true);
      } finally {
        aside.width = 0;
      }
    });
  }, [pdf, queue, pageNumber, isNear, widthPx]);
  return (
    <>
      <canvas ref={canvas} className="sheet-page" style={{ aspectRatio: `${widthMm} / ${heightMm}` }} />
      {isBroken ? (
        <span className="sheet-broken">Cannot be shown here. Save the PDF: the page is in it.</span>
      ) : null}
    </>
  );
}

function useIsNear(element: React.RefObject<HTMLElement | null>): boolean {
  const [isNear, setNear] = useState(false);
  useEffect(() => {
    if (element.current === null) return;
    const observer = new IntersectionObserver(
      (entries) => {
        for (const entry of entries) setNear(entry.isIntersecting);
      },
      { rootMargin: NEAR },
    );
    observer.observe(element.current);
    return () => observer.disconnect();
  }, [element]);
  return isNear;
}

/** The element's width in the device's own dots; 0 before it is known. */
function useWidthPx(element: React.RefObject<HTMLElement | null>): number {
  const [widthPx, setWidthPx] = useState(0);
  useEffect(() => {
    if (element.current === null) return;
    const observer = new ResizeObserver(([entry]) => {
      if (entry === undefined) return;
      setWidthPx(Math.round(entry.contentRect.width * Math.min(devicePixelRatio, MOST_DOTS_RATIO)));
    });
    observer.observe(element.current);
    return () => observer.disconnect();
  }, [element]);
  return widthPx;
}
