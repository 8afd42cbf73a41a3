/** Which paper and which sheets. */

import type { Job } from "mouldwright/job";
import { PAPERS, SHEET_KINDS, type SheetKind } from "mouldwright/sheets";
import { Checkbox, CheckboxGroup } from "react-aria-components";
import { change } from "../../bench/job-on-bench.ts";
import { Choice } from "../../common/choice.tsx";
import { TradeText } from "../../common/trade-text.tsx";
import type { PageTold } from "./messages.ts";
import {
  changeSaid,
  kindsOf,
  PAPER_CHOICES,
  paperOf,
  SHEETS,
  withKinds,
  withPaper,
} from "./sheet-choices.ts";

export interface ChoicesPanelProps {
  readonly job: Job;
  readonly pages: readonly PageTold[];
}

export function ChoicesPanel({ job, pages }: ChoicesPanelProps) {
  const kinds = kindsOf(job);
  const choose = (values: readonly string[]): void => {
    const next: readonly SheetKind[] = SHEET_KINDS.filter((kind) => values.includes(kind));
    change(changeSaid(kinds, next), (before) => withKinds(before, next));
  };
  return (
    <>
      <h2>Paper</h2>
      <Choice
        label="Paper"
        value={paperOf(job)}
        options={PAPER_CHOICES}
        onChange={(paper) => change(`paper ${PAPERS[paper].name}`, (before) => withPaper(before, paper))}
      />
      <h2 className="sheet-kinds-head">Sheets</h2>
      <CheckboxGroup className="sheet-kinds" aria-label="Sheets" value={[...kinds]} onChange={choose}>
        {SHEETS.map(({ kind, name, says }) => {
          const count = pages.filter(({ sheet }) => sheet === kind).length;
          return (
            <Checkbox key={kind} value={kind} className="sheet-kind">
              <span className="check-box" aria-hidden="true">
                <svg viewBox="0 0 16 16" aria-hidden="true">
                  <path d="M3 8.5l3.4 3.5L13 4.5" />
                </svg>
              </span>
              <span>
                {name}
                <span className="sheet-kind-says">
                  {count === 0 ? "" : `${count} ${count === 1 ? "page" : "pages"}: `}
                  {says}
                </span>
              </span>
            </Checkbox>
          );
        })}
      </CheckboxGroup>
      <p className="quiet">
        <TradeText>The story stick needs no rule; the bench card says each setting in its order.</TradeText>
      </p>
    </>
  );
}
