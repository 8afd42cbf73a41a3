/** The chain of parts, numbered from the gauge edge as on the drawing. */
import type { Trouble } from "mouldwright/measure";
import type { PartKind, PartSpec } from "mouldwright/section";
import { memo, useCallback } from "react";
import { change } from "../../../bench/job-on-bench.ts";
import type { Verdict } from "../answer/verdicts.ts";
import { nameOfPart, partsOfJob, withPartMoved, withPartsPutIn } from "../chain/chain-edits.ts";
import { freshPart, KIND_WORDS } from "../chain/fresh-part.ts";
import type { PlacedPart } from "../chain/laid-chain.ts";
import type { Drawn } from "../use-drawn.ts";
import { AddPart } from "./add-part.tsx";
import { PartForm } from "./part-form.tsx";
import { PartRow } from "./part-row.tsx";
import { type GripHands, useRowDrag } from "./use-row-drag.ts";

export interface PartsListProps {
  readonly drawn: Drawn;
  readonly verdicts: readonly Verdict[];
  readonly isOld: boolean;
  readonly selected: number | null;
  readonly onSelect: (index: number | null) => void;
}

export function PartsList({ drawn, verdicts, isOld, selected, onSelect }: PartsListProps) {
  const parts = partsOfJob(drawn.job);
  const { drag, grip } = useRowDrag((from, to) => {
    const part = parts[from];
    change(`${part === undefined ? "part" : nameOfPart(part)} moved`, (job) => withPartMoved(job, from, to));
    onSelect(null);
  });
  const at = placeForNew(parts, selected);
  const { widthMm } = drawn.job.stick;
  const add = useCallback(
    (kind: PartKind): void => {
      const part = freshPart(kind, widthMm / 4);
      change(`${KIND_WORDS[kind].name} added`, (job) => withPartsPutIn(job, at, [part]));
      onSelect(at);
    },
    [at, widthMm, onSelect],
  );
  return (
    <section className="parts" aria-label="Parts">
      <ol className="part-rows" aria-label="Parts from the gauge edge">
        {parts.map((part, index) => (
          <PartItem
            // Parts have no names of their own in the file: their place in the chain is what they are known by.
            // biome-ignore lint/suspicious/noArrayIndexKey: see above
            key={index}
            index={index}
            count={parts.length}
            part={part}
            place={selected === index ? drawn.placed[index] : undefined}
            verdict={verdicts[index]}
            isOld={isOld}
            isOpen={selected === index}
            troubles={troublesAt(drawn.troubles, index)}
            drop={dropAt(index, drag)}
            grip={grip}
            onSelect={onSelect}
          />
        ))}
      </ol>
      <AddPart where={whereWords(parts, at)} onAdd={add} />
    </section>
  );
}

interface PartItemProps {
  readonly index: number;
  readonly count: number;
  readonly part: PartSpec;
  readonly place: PlacedPart | undefined;
  readonly verdict: Verdict | undefined;
  readonly isOld: boolean;
  readonly isOpen: boolean;
  readonly troubles: readonly Trouble[];
  readonly drop: "above" | "below" | null;
  readonly grip: (index: number) => GripHands;
  readonly onSelect: (index: number | null) => void;
}

/** While something is pulled the rows of all other parts stay as they are. */
const PartItem = memo(function PartItem(props: PartItemProps) {
  const { index, count, part, place, verdict, isOld, isOpen, troubles, drop, grip, onSelect } = props;
  return (
    <PartRow
      index={index}
      name={nameOfPart(part)}
      verdict={verdict}
      isOld={isOld}
      isOpen={isOpen}
      troubles={troubles}
      drop={drop}
      grip={count > 1 ? grip(index) : null}
      onToggle={() => onSelect(isOpen ? null : index)}
    >
      {isOpen ? <PartForm index={index} count={count} part={part} place={place} onSelect={onSelect} /> : null}
    </PartRow>
  );
});

const NO_TROUBLES: readonly Trouble[] = [];

/** After the chosen part; else before a last fillet that takes the rest, or at the end. */
function placeForNew(parts: ReturnType<typeof partsOfJob>, selected: number | null): number {
  if (selected !== null && selected < parts.length) return selected + 1;
  const last = parts.at(-1);
  return last?.kind === "fillet" && last.widthMm === "rest" ? parts.length - 1 : parts.length;
}

function whereWords(parts: ReturnType<typeof partsOfJob>, at: number): string {
  const before = parts[at - 1];
  return before === undefined ? "at the gauge edge" : `after ${at}, ${nameOfPart(before)}`;
}

/** Troubles that name this part: `section.parts[2]` and what lies in it. */
function troublesAt(troubles: readonly Trouble[], index: number): readonly Trouble[] {
  const where = `section.parts[${index}]`;
  const own = troubles.filter((trouble) => trouble.where === where || trouble.where.startsWith(`${where}.`));
  return own.length === 0 ? NO_TROUBLES : own;
}

function dropAt(
  index: number,
  drag: { readonly from: number; readonly to: number } | null,
): "above" | "below" | null {
  if (drag === null || drag.to === drag.from || index !== drag.to) return null;
  return drag.to < drag.from ? "above" : "below";
}
