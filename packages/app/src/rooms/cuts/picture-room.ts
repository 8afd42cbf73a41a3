/** The room a picture has on the screen, in millimetres of paper, so that its lettering can be read. */
import type { SceneSize } from "mouldwright/sheets";
import { type RefObject, useLayoutEffect, useRef, useState } from "react";

/** What is asked of a picture: how high its lettering, and how much of the screen's height it may take. */
export interface PictureWish {
  readonly leastLetterPx: number;
  /** Lettering that grows with the picture, over its width; where it is to be read from afar. */
  readonly letterRatio: number;
  readonly mostHeightRatio: number;
}

/** The least lettering of the core's drawings, mm. */
const LETTER_MM = 3.5;
/** Wider paper than this makes a picture no clearer, only its lettering smaller. */
const WIDEST_MM = 180;
const NARROWEST_MM = 60;
const LOWEST_MM = 44;
/** On a phone the words below the picture need more of the screen: so much of its share is left to it. */
const PHONE_PX = 480;
const PHONE_SHARE = 0.72;

export interface ScreenNow {
  /** Width of the box, height of the screen, and of what stands above the room: a hint, a word on the store. */
  readonly widthPx: number;
  readonly screenPx: number;
  readonly abovePx: number;
  /** How much larger than usual the reader has the text. */
  readonly textRatio: number;
}

/**
 * The room for a box; the lettering grows with the reader's text. On a phone the picture makes way for what stands above
 * the room, so that the sign that a cut is done is still seen below it.
 */
export function sceneSizeFor(
  { widthPx, screenPx, abovePx, textRatio }: ScreenNow,
  wish: PictureWish,
): SceneSize {
  const letterPx = Math.max(wish.leastLetterPx * textRatio, wish.letterRatio * widthPx);
  const pxPerMm = Math.max(letterPx / LETTER_MM, widthPx / WIDEST_MM);
  const mostPx = screenPx * wish.mostHeightRatio;
  const heightPx = widthPx < PHONE_PX ? mostPx * PHONE_SHARE - abovePx : mostPx;
  return {
    widthMm: Math.max(NARROWEST_MM, Math.floor(widthPx / pxPerMm)),
    heightMm: Math.max(LOWEST_MM, Math.floor(heightPx / pxPerMm)),
  };
}

/** Measures the box that `ref` is put on; null before the first measure. */
export function usePictureRoom<Box extends HTMLElement>(
  wish: PictureWish,
): { readonly ref: RefObject<Box | null>; readonly size: SceneSize | null } {
  const ref = useRef<Box>(null);
  const [size, setSize] = useState<SceneSize | null>(null);
  const { leastLetterPx, letterRatio, mostHeightRatio } = wish;
  useLayoutEffect(() => {
    const box = ref.current;
    if (box === null) return;
    const measure = (): void => {
      const textRatio = Number.parseFloat(getComputedStyle(document.documentElement).fontSize) / 16;
      const next = sceneSizeFor(
        { widthPx: box.clientWidth, screenPx: innerHeight, abovePx: aboveRoomPx(box), textRatio },
        { leastLetterPx, letterRatio, mostHeightRatio },
      );
      setSize((last) =>
        last !== null && last.widthMm === next.widthMm && last.heightMm === next.heightMm ? last : next,
      );
    };
    measure();
    const watcher = new ResizeObserver(measure);
    watcher.observe(box);
    // What stands above the room comes and goes, and with it the height of all.
    const all = box.closest("main");
    if (all !== null) watcher.observe(all);
    addEventListener("resize", measure);
    return () => {
      watcher.disconnect();
      removeEventListener("resize", measure);
    };
  }, [leastLetterPx, letterRatio, mostHeightRatio]);
  return { ref, size };
}

function aboveRoomPx(box: HTMLElement): number {
  const all = box.closest("main");
  const room = [...(all?.children ?? [])].find((child) => child.contains(box));
  if (all === null || room === undefined) return 0;
  const insidePx = room.getBoundingClientRect().top - all.getBoundingClientRect().top;
  return Math.max(0, insidePx - Number.parseFloat(getComputedStyle(all).paddingTop));
}
