/** The rooms, in the order of the work. Each is loaded when it is first entered. */
import { type ComponentType, type LazyExoticComponent, lazy } from "react";

export interface Room {
  readonly id: RoomId;
  readonly name: string;
  /** On a phone, where seven stand side by side. */
  readonly short: string;
  readonly Content: LazyExoticComponent<ComponentType>;
}

export const ROOM_IDS = ["jobs", "section", "shelf", "cuts", "stick", "light", "sheets"] as const;
export type RoomId = (typeof ROOM_IDS)[number];

const room = (
  id: RoomId,
  name: string,
  short: string,
  load: () => Promise<{ readonly Content: ComponentType }>,
): Room => ({
  id,
  name,
  short,
  Content: lazy(async () => ({ default: (await load()).Content })),
});

export const ROOMS: readonly Room[] = [
  room("jobs", "Jobs", "Jobs", () => import("../rooms/jobs/room.tsx")),
  room("section", "Section", "Section", () => import("../rooms/section/room.tsx")),
  room("shelf", "Shelf", "Shelf", () => import("../rooms/shelf/room.tsx")),
  room("cuts", "Cuts", "Cuts", () => import("../rooms/cuts/room.tsx")),
  room("stick", "Stick and fit", "Stick", () => import("../rooms/stick-and-fit/room.tsx")),
  room("light", "Light", "Light", () => import("../rooms/light/room.tsx")),
  room("sheets", "Sheets", "Sheets", () => import("../rooms/sheets/room.tsx")),
];
