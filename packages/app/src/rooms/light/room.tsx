/** The moulding as it will look: from the front in the light of a lamp that can be moved, and turned in the hand. */
import type { Job } from "mouldwright/job";
import type { Hanging, Lamp } from "mouldwright/light";
import { lazy, Suspense, useMemo, useState } from "react";
import { useShownJob } from "../../bench/job-on-bench.ts";
import { Choice } from "../../common/choice.tsx";
import { useLengthWords } from "../../common/length-words.ts";
import { TroubleWords } from "../../common/trouble-words.tsx";
import { withDeeperQuirks } from "./compare.ts";
import { CompareControls, type ComparedVersion, type ComparedWith, deeperName } from "./compare-controls.tsx";
import { FrontViews } from "./front-views.tsx";
import { HangingControls } from "./hanging-controls.tsx";
import { type HeldVersion, useHeld } from "./held-version.ts";
import { LampControls } from "./lamp-controls.tsx";
import "./light.css";
import { hangingOf, lampOf } from "./look.ts";
import type { Corner, SeenVersion } from "./messages.ts";
import { useSeen } from "./use-seen.ts";

const TurningView = lazy(async () => ({ default: (await import("./turning-view.tsx")).TurningView }));

const VIEWS = [
  { value: "front", words: "From the front" },
  { value: "turning", words: "Turn it" },
] as const;

export function Content() {
  const job = useShownJob();
  const words = useLengthWords();
  const held = useHeld((state) => state.held);
  const [view, setView] = useState<"front" | "turning">("front");
  const [corner, setCorner] = useState<Corner>("outside");
  const [comparedWith, setComparedWith] = useState<ComparedWith>(held === null ? "nothing" : "held");
  const [draggedLamp, dragLamp] = useState<Lamp | null>(null);
  const [draggedHanging, dragHanging] = useState<Hanging | null>(null);
  const lamp = draggedLamp ?? lampOf(job);
  const hanging = draggedHanging ?? hangingOf(job);
  const jobs = useVersions(job, held, comparedWith);
  const seen = useSeen({ jobs, lamp, hanging, corner: view === "turning" ? corner : null });
  const [first, second] = seen.versions;
  const name = comparedWith === "held" ? "Held" : deeperName(words.length);
  const other = jobs.length > 1 && second !== undefined ? versionNamed(name, second) : null;
  const lit = first?.ok === true ? first.lit : null;
  return (
    <div className="light-room">
      <div className="light-head">
        <h1 className="only-read">Light</h1>
        <Choice label="View" value={view} options={VIEWS} onChange={setView} />
      </div>
      <div className="light-view">
        {first?.ok === false ? <TroubleWords troubles={first.troubles} /> : null}
        {first === undefined ? <p className="waiting">The moulding comes into the light…</p> : null}
        {view === "front" ? (
          <FrontViews
            versions={[
              ...(first?.ok === true ? [{ name: "Now", ...first }] : []),
              ...(jobs.length > 1 && second?.ok === true ? [{ name, ...second }] : []),
            ]}
          />
        ) : (
          <Suspense fallback={<p className="waiting">The moulding is brought to the light…</p>}>
            <TurningView
              solid={seen.solid}
              troubles={seen.solidTroubles}
              lamp={lamp}
              corner={corner}
              onCorner={setCorner}
              run={lit?.hanging.run ?? "level"}
            />
          </Suspense>
        )}
      </div>
      <div className="light-controls">
        <LampControls lamp={lamp} onDrag={dragLamp} />
        <CompareControls
          job={job}
          held={held}
          comparedWith={jobs.length > 1 ? comparedWith : "nothing"}
          onCompare={setComparedWith}
          first={lit}
          other={other}
        />
        {lit === null ? null : (
          <HangingControls hanging={lit.hanging} isOwn={hangingOf(job) === null} onDrag={dragHanging} />
        )}
      </div>
    </div>
  );
}

/** The job, and what it is compared with; the same list as long as no section changes. */
function useVersions(job: Job, held: HeldVersion | null, comparedWith: ComparedWith): readonly Job[] {
  const { section, stick, shelf, name } = job;
  // biome-ignore lint/correctness/useExhaustiveDependencies: of the job only these make its section.
  return useMemo(() => {
    if (comparedWith === "held" && held !== null) return [job, held.job];
    if (comparedWith === "deeper quirks") return [job, withDeeperQuirks(job)];
    return [job];
  }, [section, stick, shelf, name, held, comparedWith]);
}

function versionNamed(name: string, seen: SeenVersion): ComparedVersion {
  return seen.ok ? { name, lit: seen.lit, troubles: [] } : { name, lit: null, troubles: seen.troubles };
}
