/** One section of the gallery, and the short words its parts are written in. */
import type { SectionSpec } from "mouldwright/section";

export interface GalleryEntry {
  /** Name of its folder. */
  readonly id: string;
  /** One of the example shelves. */
  readonly shelf: "full" | "small";
  readonly section: SectionSpec;
}

export const rest = { kind: "fillet", widthMm: "rest" } as const;
export const fillet = (widthMm: number) => ({ kind: "fillet", widthMm }) as const;
export const step = (riseMm: number) => ({ kind: "step", riseMm }) as const;

/** Height of a 60° arc of this radius over its ends: r(1 − cos 30°). */
export const rise60Mm = (radiusMm: number) => radiusMm * (1 - Math.cos(Math.PI / 6));
