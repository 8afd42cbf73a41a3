/** The versions as they are seen, again whenever lamp, hanging or sections change; the last look stays until then. */
import type { Job } from "mouldwright/job";
import type { Hanging, Lamp } from "mouldwright/light";
import type { Trouble } from "mouldwright/measure";
import { useEffect, useRef, useState } from "react";
import { type LightMaker, openLight } from "./light-maker.ts";
import type { Corner, SeenVersion, TurnedSolid } from "./messages.ts";

export interface SeenNow {
  readonly versions: readonly SeenVersion[];
  readonly solid: TurnedSolid | null;
  readonly solidTroubles: readonly Trouble[];
}

export interface Asked {
  /** The same list as long as no section changes. */
  readonly jobs: readonly Job[];
  readonly lamp: Lamp;
  readonly hanging: Hanging | null;
  /** Null while nobody turns it. */
  readonly corner: Corner | null;
}

const NOTHING_YET: SeenNow = { versions: [], solid: null, solidTroubles: [] };

export function useSeen({ jobs, lamp, hanging, corner }: Asked): SeenNow {
  const [seen, setSeen] = useState(NOTHING_YET);
  const maker = useRef<LightMaker | null>(null);
  useEffect(() => {
    const opened = openLight({
      onSeen: ({ versions }) => setSeen((before) => ({ ...before, versions })),
      onSolid: ({ solid, troubles }) => setSeen((before) => ({ ...before, solid, solidTroubles: troubles })),
    });
    maker.current = opened;
    return () => {
      maker.current = null;
      opened.close();
    };
  }, []);
  useEffect(() => maker.current?.showVersions(jobs), [jobs]);
  // biome-ignore lint/correctness/useExhaustiveDependencies: other sections are looked at anew.
  useEffect(() => maker.current?.look(lamp, hanging), [jobs, lamp, hanging]);
  // biome-ignore lint/correctness/useExhaustiveDependencies: another section is made anew.
  useEffect(() => {
    if (corner !== null) maker.current?.makeSolid(hanging, corner);
  }, [jobs, hanging, corner]);
  return seen;
}
