/** All about one plane: sole drawn large, what is read off it, its sizes, its name and note, its use, and off the shelf. */

import { INCH_MM, type Trouble } from "mouldwright/measure";
import type { Plane } from "mouldwright/shelf";
import { useMemo, useState } from "react";
import { Button } from "react-aria-components";
import { change, undo } from "../../bench/job-on-bench.ts";
import { DrawingView } from "../../common/drawing-view.tsx";
import { useLengthWords } from "../../common/length-words.ts";
import { TextArea, TextLine } from "../../common/text-fields.tsx";
import { TradeText } from "../../common/trade-text.tsx";
import { withSize } from "./new-planes.ts";
import { lookThroughOtherJobs, useOtherJobs } from "./other-jobs.ts";
import { planeDrawing, planeExtent } from "./plane-drawing.ts";
import { filledOf, KIND_WORDS } from "./plane-fields.ts";
import { PlaneFieldsForm, TroubleLines } from "./plane-fields-form.tsx";
import { readingsOf } from "./plane-words.ts";
import {
  type Entry,
  entriesOf,
  likeness,
  withPlaneChanged,
  withPlaneLeftOut,
  withPlaneNoted,
  withPlaneRemoved,
} from "./shelf-edits.ts";
import { numbersInWords, type PlaneUse } from "./shelf-list.ts";
import { tryChange, useShelf } from "./use-shelf.ts";

export interface PlaneDetailsProps {
  readonly plane: Plane;
  readonly onRemoved: (name: string) => void;
}

/** What the page takes a millimetre of paper to be. */
const PX_PER_PAPER_MM = 96 / INCH_MM;

/** Room of the large drawing, mm on paper. */
const LARGE_MM = { width: 74, height: 30, body: 10 } as const;

export function PlaneDetails({ plane, onRemoved }: PlaneDetailsProps) {
  const { unit } = useLengthWords();
  const { shelf, leftOut, uses } = useShelf();
  const [troubles, setTroubles] = useState<readonly Trouble[]>([]);
  const drawing = useMemo(() => {
    const { widthMm, heightMm } = planeExtent(plane);
    const scaleRatio = Math.min(LARGE_MM.width / widthMm, LARGE_MM.height / Math.max(heightMm, 1), 8);
    return planeDrawing(plane, { scaleRatio, bodyMm: LARGE_MM.body, title: `${plane.name}, its sole` });
  }, [plane]);
  const entry: Entry = useMemo(() => entriesOf({ planes: [plane], assumed: [] })[0] ?? {}, [plane]);
  const say = (key: string, value: unknown, what: string): void => {
    const next = withSize({ kind: plane.kind, isPair: false, entry }, key, value).entry;
    setTroubles(tryChange(what, (job) => withPlaneChanged(job, plane.id, next)));
  };
  const isOut = leftOut.has(plane.id);
  const remove = (): void => {
    setTroubles(tryChange(`${plane.name} off the shelf`, (job) => withPlaneRemoved(job, plane.id)));
    onRemoved(plane.name);
  };
  return (
    <div className="plane-details">
      <div className="plane-large">
        <div style={{ width: `${drawing.widthMm * PX_PER_PAPER_MM}px` }}>
          <DrawingView drawing={drawing} />
        </div>
      </div>
      <p className="quiet">
        <TradeText>{KIND_WORDS[plane.kind].one}</TradeText>
      </p>
      <dl className="readings">
        {readingsOf(plane, unit).map(({ name, value }) => (
          <div key={name}>
            <dt>{name}</dt>
            <dd className="figures">{value}</dd>
          </div>
        ))}
      </dl>
      <UseOfPlane use={uses.get(plane.id)} isOut={isOut} />
      <OtherUses plane={plane} />
      <div className="tools">
        <Button
          className="button"
          onPress={() =>
            change(isOut ? `${plane.name} taken in again` : `${plane.name} left out`, (job) =>
              withPlaneLeftOut(job, shelf, plane.id, !isOut),
            )
          }
        >
          {isOut ? "Use it in this job again" : "Leave out of this job"}
        </Button>
      </div>
      <h3>Sizes</h3>
      <PlaneFieldsForm
        kind={plane.kind}
        entry={entry}
        filled={filledOf(plane, entry)}
        troubles={troubles.filter(({ where }) => where !== "name" && where !== "note")}
        onChange={(key, value) => say(key, value, `${plane.name}: other size`)}
      />
      <h3>Name and note</h3>
      <TextLine
        label="Name"
        value={plane.name}
        help="Leave it empty and the plane is called after its size."
        onChange={(name) => say("name", name, `${plane.name} renamed`)}
      />
      <TroubleLines troubles={troubles.filter(({ where }) => where === "name")} />
      <TextArea
        label="Note"
        value={plane.note ?? ""}
        help="Maker, condition, how its iron is ground: for your own memory."
        onChange={(note) =>
          setTroubles(tryChange(`note on ${plane.name}`, (job) => withPlaneNoted(job, plane.id, note)))
        }
      />
      <TroubleLines troubles={troubles.filter(({ where }) => where === "note")} />
      <div className="tools plane-away">
        <Button className="button" onPress={remove}>
          Take it off the shelf
        </Button>
      </div>
    </div>
  );
}

function UseOfPlane({ use, isOut }: { readonly use: PlaneUse | undefined; readonly isOut: boolean }) {
  if (isOut) return <p>It is left out: the plan of this job does without it.</p>;
  if (use === undefined) return <p>The plan of this job does not use it.</p>;
  const cuts = `${use.cuts.length === 1 ? "cut" : "cuts"} ${numbersInWords(use.cuts)}`;
  const parts = use.parts.length === 0 ? "" : `, for ${listed(use.parts)}`;
  return (
    <p>
      In this job it makes {cuts}
      {parts}.
    </p>
  );
}

/** What the other kept jobs do with it, once they have been looked through. */
function OtherUses({ plane }: { readonly plane: Plane }) {
  const { count, unknownCount, isLooking, uses } = useOtherJobs();
  if (count === 0) return null;
  const own = uses.get(likeness(plane)) ?? [];
  return (
    <div className="other-uses">
      {own.length === 0 ? null : (
        <ul className="figures">
          {own.map(({ jobId, name, cuts }) => (
            <li key={jobId}>
              {name}: {cuts.length === 1 ? "cut" : "cuts"} {numbersInWords(cuts)}
            </li>
          ))}
        </ul>
      )}
      {unknownCount === 0 ? (
        own.length === 0 ? (
          <p>None of your other jobs uses it.</p>
        ) : null
      ) : (
        <Button className="button" isDisabled={isLooking} onPress={lookThroughOtherJobs}>
          {isLooking ? `Looking through: ${unknownCount} to go` : "Which of my other jobs use it?"}
        </Button>
      )}
    </div>
  );
}

function listed(words: readonly string[]): string {
  if (words.length < 2) return words.join("");
  return `${words.slice(0, -1).join(", ")} and ${words[words.length - 1]}`;
}

/** Said once it has been taken off: the way back stands beside it. */
export function RemovedNotice({ name, onDone }: { readonly name: string; readonly onDone: () => void }) {
  return (
    <p className="notice" role="status">
      <span>{name} is off the shelf.</span>
      <Button
        className="button"
        onPress={() => {
          undo();
          onDone();
        }}
      >
        Put it back
      </Button>
    </p>
  );
}
