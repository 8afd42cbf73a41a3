/**
 * Where the maker stands: the room is in the address's fragment (`#cuts`), so that the browser's own way back works and a
 * room can be kept as a bookmark. Other fragments (a shared job) are not rooms and are left to whoever reads them.
 */
import { useSyncExternalStore } from "react";
import { ROOM_IDS, type RoomId } from "./rooms.ts";

export const FIRST_ROOM: RoomId = "section";

let lastRoom: RoomId = FIRST_ROOM;

/** A fragment that is no room (a place within one, a shared job) leaves the maker where he stood. */
function roomHere(): RoomId {
  const word = location.hash.slice(1);
  lastRoom = ROOM_IDS.find((id) => id === word) ?? lastRoom;
  return lastRoom;
}

export function useRoom(): RoomId {
  return useSyncExternalStore(listen, roomHere);
}

export function goTo(room: RoomId): void {
  location.hash = room;
}

function listen(onChange: () => void): () => void {
  addEventListener("hashchange", onChange);
  return () => removeEventListener("hashchange", onChange);
}
