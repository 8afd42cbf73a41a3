/** Cautions, what was assumed, and what is unusual: short, each in the core's own words. */

import { sayTrouble, type Trouble } from "mouldwright/measure";
import { useLengthWords } from "../../common/length-words.ts";
import { TradeText } from "../../common/trade-text.tsx";
import type { Said } from "../../fitting/said.ts";

export function Cautions({ cautions }: { readonly cautions: readonly Trouble[] }) {
  if (cautions.length === 0) return null;
  return (
    <section className="cautions" aria-label="Cautions">
      <h2>Take care</h2>
      <Lines troubles={cautions} />
    </section>
  );
}

export function Notes({ warnings, assumed }: Pick<Said, "warnings" | "assumed">) {
  return (
    <>
      {warnings.length === 0 ? null : (
        <div className="trouble">
          <Lines troubles={warnings} />
        </div>
      )}
      {assumed.length === 0 ? null : (
        <details className="fit-more">
          <summary>What was assumed</summary>
          <Lines troubles={assumed} />
        </details>
      )}
    </>
  );
}

function Lines({ troubles }: { readonly troubles: readonly Trouble[] }) {
  const { unit } = useLengthWords();
  const said = new Map(troubles.map((trouble) => [`${trouble.code}${trouble.where}`, trouble]));
  return (
    <ul className="fit-lines">
      {[...said].map(([key, trouble]) => {
        const { sentence, hint } = sayTrouble(trouble, { unit });
        return (
          <li key={key}>
            <TradeText>{`${sentence} ${hint}`.trim()}</TradeText>
          </li>
        );
      })}
    </ul>
  );
}
