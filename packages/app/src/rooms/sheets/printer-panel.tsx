/** Full size on paper: how to print so that it is true, and the correction for a printer that is not. */
import type { Job } from "mouldwright/job";
import { Button } from "react-aria-components";
import { change } from "../../bench/job-on-bench.ts";
import { MadeField } from "./made-field.tsx";
import { isTrue, madeOf, TRUE_MADE, withMade } from "./sheet-choices.ts";

export function PrinterPanel({ job }: { readonly job: Job }) {
  const made = madeOf(job);
  const setMade = (next: typeof made): void =>
    change(`printer makes ${next.acrossMm} × ${next.upMm} mm`, (before) => withMade(before, next));
  return (
    <>
      <p>
        Print at <strong>100 %</strong>, not “fit to page”. Then lay a rule on both bars of a full-size page,
        from 0 to 100: only where they measure 100 mm are templates and lines true.
      </p>
      <div className="made-fields">
        <MadeField
          label="100 mm across came out as"
          valueMm={made.acrossMm}
          onChange={(acrossMm) => setMade({ ...made, acrossMm })}
        />
        <MadeField
          label="100 mm up came out as"
          valueMm={made.upMm}
          onChange={(upMm) => setMade({ ...made, upMm })}
        />
      </div>
      {isTrue(made) ? (
        <p className="quiet">Leave both at 100 mm where the bars are right.</p>
      ) : (
        <>
          <p className="quiet">
            The sheets are stretched to make up for it: on a new print the bars must measure 100 mm. If they
            do not, take the correction off, print one page and measure again.
          </p>
          <Button className="button" onPress={() => setMade(TRUE_MADE)}>
            Take the correction off
          </Button>
        </>
      )}
    </>
  );
}
