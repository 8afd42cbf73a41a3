/** What the moulding is compared with, and how much of each shows in light, shade and shadow. */
import type { Job } from "mouldwright/job";
import type { SectionInLight } from "mouldwright/light";
import type { Trouble } from "mouldwright/measure";
import { Button } from "react-aria-components";
import { useBench } from "../../bench/job-on-bench.ts";
import { Choice } from "../../common/choice.tsx";
import { useLengthWords } from "../../common/length-words.ts";
import { TroubleWords } from "../../common/trouble-words.tsx";
import { compared, DEEPER_MM, hasQuirks, STATE_SAID } from "./compare.ts";
import { type HeldVersion, holdVersion, isSameSection, letGoOfVersion } from "./held-version.ts";
import { percentWords } from "./look-words.ts";
import { StateMark } from "./state-mark.tsx";

export type ComparedWith = "nothing" | "held" | "deeper quirks";

export interface ComparedVersion {
  readonly name: string;
  readonly lit: SectionInLight | null;
  readonly troubles: readonly Trouble[];
}

export interface CompareControlsProps {
  readonly job: Job;
  readonly held: HeldVersion | null;
  readonly comparedWith: ComparedWith;
  readonly onCompare: (comparedWith: ComparedWith) => void;
  readonly first: SectionInLight | null;
  /** Null while nothing is compared. */
  readonly other: ComparedVersion | null;
}

export function CompareControls(props: CompareControlsProps) {
  const { job, held, comparedWith, onCompare, first, other } = props;
  const options = [
    { value: "nothing" as const, words: "Alone" },
    ...(held === null ? [] : [{ value: "held" as const, words: "With the held one" }]),
    ...(hasQuirks(job) ? [{ value: "deeper quirks" as const, words: "With deeper quirks" }] : []),
  ];
  return (
    <section className="panel light-panel" aria-label="What shows">
      <h2>What shows</h2>
      {first === null ? null : <SharesTable first={first} other={other} />}
      {other === null ? null : <TroubleWords troubles={other.troubles} />}
      {options.length > 1 ? (
        <Choice label="Compare" value={comparedWith} options={options} onChange={onCompare} />
      ) : null}
      <HoldTools job={job} held={held} onCompare={onCompare} />
    </section>
  );
}

interface HoldToolsProps {
  readonly job: Job;
  readonly held: HeldVersion | null;
  readonly onCompare: (comparedWith: ComparedWith) => void;
}

function HoldTools({ job, held, onCompare }: HoldToolsProps) {
  const after = useBench((bench) => bench.lastChange);
  return (
    <>
      <div className="tools light-hold">
        <Button
          className="button"
          onPress={() => {
            holdVersion(job, after);
            onCompare("held");
          }}
        >
          Hold this version
        </Button>
        {held === null ? null : (
          <Button
            className="button"
            onPress={() => {
              letGoOfVersion();
              onCompare("nothing");
            }}
          >
            Let it go
          </Button>
        )}
      </div>
      <p className="quiet">{heldWords(job, held)}</p>
    </>
  );
}

function heldWords(job: Job, held: HeldVersion | null): string {
  if (held === null)
    return "Hold this version, change the section, and come back: both then stand side by side.";
  if (isSameSection(job, held.job)) {
    return "Held. It is still the same as the job: change something in Section and both stand side by side.";
  }
  const after = held.after === "" ? "" : `, after “${held.after}”`;
  return `Held: ${held.job.name}${after}.`;
}

function SharesTable({
  first,
  other,
}: {
  readonly first: SectionInLight;
  readonly other: ComparedVersion | null;
}) {
  const words = useLengthWords();
  const length = (lengthMm: number): string => words.length(lengthMm).replace(/ (?:light|full)$/, "");
  const rows = compared(first, other?.lit ?? null);
  const isCompared = other !== null && other.lit !== null;
  return (
    <table className={isCompared ? "shares shares-compared figures" : "shares figures"}>
      <caption className="only-read">How much of the face shows in light, shade and shadow</caption>
      <thead>
        <tr>
          <td />
          <th scope="col">Now</th>
          {isCompared ? (
            <>
              <th scope="col">{other.name}</th>
              <th scope="col">Now has</th>
            </>
          ) : null}
        </tr>
      </thead>
      <tbody>
        {rows.map(({ state, first: now, other: against, moreMm }) => (
          <tr key={state}>
            <th scope="row">
              <StateMark state={state} />
              {STATE_SAID[state]}
            </th>
            <td>
              {length(now.showsMm)} <span className="quiet">{percentWords(now.ratio)}</span>
            </td>
            {isCompared && against !== null ? (
              <>
                <td>
                  {length(against.showsMm)} <span className="quiet">{percentWords(against.ratio)}</span>
                </td>
                <td>
                  {moreMm === 0 ? "as much" : `${length(Math.abs(moreMm))} ${moreMm > 0 ? "more" : "less"}`}
                </td>
              </>
            ) : null}
          </tr>
        ))}
      </tbody>
    </table>
  );
}

export function deeperName(words: (lengthMm: number) => string): string {
  return `Quirks ${words(DEEPER_MM)} deeper`;
}
