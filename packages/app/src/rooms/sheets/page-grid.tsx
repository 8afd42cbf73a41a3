/** All pages side by side; one that is pressed is shown large, with the way to its neighbours. */
import { useEffect, useRef, useState } from "react";
import { Button, Dialog, Heading, Modal, ModalOverlay } from "react-aria-components";
import { type DrawQueue, drawQueue } from "./draw-queue.ts";
import type { PageTold } from "./messages.ts";
import type { OpenedPdf } from "./open-pdf.ts";
import { PagePicture } from "./page-picture.tsx";
import type { MadeSheets } from "./use-sheets.ts";

const QUEUE: DrawQueue = drawQueue();

export function PageGrid({ made }: { readonly made: MadeSheets }) {
  const { pdf, cannot } = useOpened(made.file);
  const [large, setLarge] = useState<number | null>(null);
  const { pages } = made;
  // A new set may be shorter than the page that was open.
  const shown = large === null ? undefined : pages[large - 1];
  return (
    <>
      {cannot ? (
        <p className="trouble" role="alert">
          <strong>This browser cannot show the pages.</strong> They are all there: save the PDF and open it in
          your reader.
        </p>
      ) : null}
      <ol className="sheet-pages">
        {pages.map((page) => (
          <li key={page.number}>
            <Button className="sheet-open" onPress={() => setLarge(page.number)}>
              <PagePicture pdf={pdf} queue={QUEUE} page={page} />
              <span className="sheet-name">
                <span className="only-read">Page </span>
                <span className="figures">{page.number}</span> {page.title}
                {page.isFullSize ? <span className="sheet-full">full size</span> : null}
                <span className="only-read">: show large</span>
              </span>
            </Button>
          </li>
        ))}
      </ol>
      <ModalOverlay
        className="sheet-large-ground"
        isOpen={shown !== undefined}
        onOpenChange={() => setLarge(null)}
        isDismissable
      >
        <Modal className="sheet-large">
          {shown === undefined ? null : (
            <LargePage
              pdf={pdf}
              page={shown}
              pageCount={pages.length}
              onTurn={setLarge}
              onClose={() => setLarge(null)}
            />
          )}
        </Modal>
      </ModalOverlay>
    </>
  );
}

interface LargePageProps {
  readonly pdf: OpenedPdf | null;
  readonly page: PageTold;
  readonly pageCount: number;
  readonly onTurn: (pageNumber: number) => void;
  readonly onClose: () => void;
}

function LargePage({ pdf, page, pageCount, onTurn, onClose }: LargePageProps) {
  const pageNumber = page.number;
  const scroll = useRef<HTMLElement>(null);
  // The arrow keys are at hand at once: turning pages, and moving a page that is larger than the screen.
  useEffect(() => scroll.current?.focus(), []);
  const onKeyDown = (event: React.KeyboardEvent): void => {
    if (event.key === "ArrowLeft" && pageNumber > 1) onTurn(pageNumber - 1);
    if (event.key === "ArrowRight" && pageNumber < pageCount) onTurn(pageNumber + 1);
  };
  return (
    <Dialog className="sheet-large-room">
      {/* biome-ignore lint/a11y/noStaticElementInteractions: the arrow keys turn pages wherever the focus is inside; the buttons below do the same. */}
      <div className="sheet-large-keys" onKeyDown={onKeyDown}>
        <div className="sheet-large-head">
          <Heading slot="title" className="sheet-large-title">
            {pageNumber} of {pageCount}: {page.title}
          </Heading>
          <div className="tools">
            <Button className="button" isDisabled={pageNumber === 1} onPress={() => onTurn(pageNumber - 1)}>
              Page before
            </Button>
            <Button
              className="button"
              isDisabled={pageNumber === pageCount}
              onPress={() => onTurn(pageNumber + 1)}
            >
              Next page
            </Button>
            <Button className="button" onPress={onClose}>
              Close
            </Button>
          </div>
        </div>
        <section
          ref={scroll}
          className="sheet-large-scroll"
          // biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls must be reached by the keyboard.
          tabIndex={0}
          aria-label={`Page ${pageNumber}, ${page.title}`}
        >
          <PagePicture pdf={pdf} queue={QUEUE} page={page} />
        </section>
      </div>
    </Dialog>
  );
}

/** The file opened for drawing; the one before stays until the new one is open. */
function useOpened(file: Blob): { readonly pdf: OpenedPdf | null; readonly cannot: boolean } {
  const [opened, setOpened] = useState<OpenedPdf | null>(null);
  const [cannot, setCannot] = useState(false);
  useEffect(() => {
    let isWanted = true;
    let own: OpenedPdf | null = null;
    const open = async (): Promise<void> => {
      const { openPdf } = await import("./open-pdf.ts");
      if (!isWanted) return;
      own = await openPdf(file);
      if (isWanted) {
        setOpened(own);
        setCannot(false);
      } else own.close();
    };
    open().catch(() => {
      if (isWanted) setCannot(true);
    });
    return () => {
      isWanted = false;
      own?.close();
      setOpened(null);
    };
  }, [file]);
  return { pdf: opened, cannot };
}
