/** The chain of parts, numbered from the gauge edge as on the drawing. */
import type { Trouble } from "mouldwright/measure";
import type { PartKind } from "mouldwright/section";
import { change } from "../../../bench/job-on-bench.ts";
import type { Verdict } from "../answer/verdicts.ts";
import { nameOfPart, partsOfJob, withPartMoved, withPartsPutIn } from "../chain/chain-edits.ts";
import { freshPart, KIND_WORDS } from "../chain/fresh-part.ts";
import type { Drawn } from "../use-drawn.ts";
import { AddPart } from "./add-part.tsx";
import { PartForm } from "./part-form.tsx";
import { PartRow } from "./part-row.tsx";
import { useRowDrag } from "./use-row-drag.ts";

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
  const add = (kind: PartKind): void => {
    const { widthMm } = drawn.job.stick;
    change(`${KIND_WORDS[kind].name} added`, (job) =>
      withPartsPutIn(job, at, [freshPart(kind, widthMm / 4)]),
    );
    onSelect(at);
  };
  return (
    <section className="parts" aria-label="Parts">
      <ol className="part-rows" aria-label="Parts from the gauge edge">
        {parts.map((part, index) => (
          <PartRow
            // Parts have no names of their own in the file: their place in the chain is what they are known by.
            // biome-ignore lint/suspicious/noArrayIndexKey: see above
            key={index}
            index={index}
            name={nameOfPart(part)}
            verdict={verdicts[index]}
            isOld={isOld}
            isOpen={selected === index}
            troubles={troublesAt(drawn.troubles, index)}
            drop={dropAt(index, drag)}
            grip={parts.length > 1 ? grip(index) : null}
            onToggle={() => onSelect(selected === index ? null : index)}
          >
            {selected === index ? (
              <PartForm
                index={index}
                count={parts.length}
                part={part}
                place={drawn.placed[index]}
                onSelect={onSelect}
              />
            ) : null}
          </PartRow>
        ))}
      </ol>
      <AddPart where={whereWords(parts, at)} onAdd={add} />
    </section>
  );
}

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
  return troubles.filter((trouble) => trouble.where === where || trouble.where.startsWith(`${where}.`));
}

function dropAt(
  index: number,
  drag: { readonly from: number; readonly to: number } | null,
): "above" | "below" | null {
  if (drag === null || drag.to === drag.from || index !== drag.to) return null;
  return drag.to < drag.from ? "above" : "below";
}
