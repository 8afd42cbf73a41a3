/** The light's worker as the room sees it: while one look is under way only the newest wish waits. */
import type { Job } from "mouldwright/job";
import type { Hanging, Lamp } from "mouldwright/light";
import type { Corner, FromLight, Seen, SolidMade, ToLight } from "./messages.ts";

export interface LightMaker {
  readonly showVersions: (jobs: readonly Job[]) => void;
  readonly look: (lamp: Lamp, hanging: Hanging | null) => void;
  readonly makeSolid: (hanging: Hanging | null, corner: Corner) => void;
  readonly close: () => void;
}

export interface LightHeard {
  readonly onSeen: (seen: Seen) => void;
  readonly onSolid: (made: SolidMade) => void;
}

export function openLight({ onSeen, onSolid }: LightHeard): LightMaker {
  const worker = new Worker(new URL("./light.worker.ts", import.meta.url), { type: "module" });
  const tell = (message: ToLight): void => worker.postMessage(message);
  let wish = 0;
  let solidWish = 0;
  let isLooking = false;
  let waiting: (() => void) | null = null;
  worker.addEventListener("message", ({ data }: MessageEvent<FromLight>) => {
    if (data.kind === "solid") {
      if (data.wish === solidWish) onSolid(data);
      return;
    }
    onSeen(data);
    isLooking = false;
    const next = waiting;
    waiting = null;
    next?.();
  });
  const look = (lamp: Lamp, hanging: Hanging | null): void => {
    if (isLooking) {
      waiting = () => look(lamp, hanging);
      return;
    }
    isLooking = true;
    wish += 1;
    tell({ kind: "look", wish, lamp, hanging });
  };
  return {
    showVersions: (jobs) => tell({ kind: "versions", jobs }),
    look,
    makeSolid: (hanging, corner) => {
      solidWish += 1;
      tell({ kind: "solid", wish: solidWish, hanging, corner });
    },
    close: () => worker.terminate(),
  };
}
