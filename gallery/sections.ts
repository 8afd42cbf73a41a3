/** The gallery: sections that are planned, drawn and looked at again whenever the planner changes. */
import { CHART_CABINET } from "./chart-cabinet.ts";
import { CLASSICAL } from "./classical.ts";
import type { GalleryEntry } from "./entry.ts";
import { HOSTILE } from "./hostile.ts";
import { JOINERY } from "./joinery.ts";

export type { GalleryEntry } from "./entry.ts";

export interface GalleryRoom {
  readonly title: string;
  readonly entries: readonly GalleryEntry[];
}

export const ROOMS: readonly GalleryRoom[] = [
  { title: "Classical forms", entries: CLASSICAL },
  { title: "The chart cabinet", entries: CHART_CABINET },
  { title: "Joinery", entries: JOINERY },
  { title: "Odd and hostile", entries: HOSTILE },
];

export const GALLERY: readonly GalleryEntry[] = ROOMS.flatMap(({ entries }) => entries);
