/** What stands around every room: the way to the rooms, the job's name, undo and redo, the unit, how the saving goes. */
import { Suspense, useEffect, useRef } from "react";
import { I18nProvider } from "react-aria-components";
import { takeLostFocus } from "../common/lost-focus.ts";
import { FirstSteps } from "../first-visit/first-steps.tsx";
import { KeepingBanner } from "../keeping/banner.tsx";
import { allSaved } from "../keeping/job-actions.ts";
import { RoomBoundary } from "./room-boundary.tsx";
import { RoomIcon } from "./room-icons.tsx";
import { ROOMS } from "./rooms.ts";
import { TopBar } from "./top-bar.tsx";
import { UpdateStrip } from "./update-strip.tsx";
import { useRoom } from "./where.ts";

export function Frame() {
  const here = useRoom();
  const main = useRef<HTMLElement>(null);
  const before = useRef(here);
  // Whoever came by a button of the room that is left (a job opened, a job begun) stands in the new room.
  useEffect(() => {
    if (before.current !== here) takeLostFocus(main.current);
    before.current = here;
  }, [here]);
  const room = ROOMS.find(({ id }) => id === here) ?? ROOMS[0];
  if (room === undefined) return null;
  return (
    <I18nProvider locale="en-GB">
      <a className="skip" href="#room-here">
        Skip to the room
      </a>
      <div className="frame">
        <div className="head">
          <TopBar roomName={room.name} />
          <UpdateStrip whenSaved={allSaved} />
        </div>
        <nav className="rooms" aria-label="Rooms">
          <ul>
            {ROOMS.map(({ id, name, short }) => (
              <li key={id}>
                <a
                  className="room-link"
                  href={`#${id}`}
                  aria-current={id === here ? "page" : undefined}
                  aria-label={name}
                >
                  <RoomIcon room={id} />
                  <span className="room-name" aria-hidden="true">
                    {name}
                  </span>
                  <span className="room-short" aria-hidden="true">
                    {short}
                  </span>
                </a>
              </li>
            ))}
          </ul>
        </nav>
        <main ref={main} className={`room room-${here}`} id="room-here" tabIndex={-1} aria-label={room.name}>
          <KeepingBanner />
          <FirstSteps here={here} />
          <RoomBoundary key={here}>
            <Suspense fallback={<p className="waiting">Opening the room…</p>}>
              <room.Content />
            </Suspense>
          </RoomBoundary>
        </main>
      </div>
    </I18nProvider>
  );
}
