/** Troubles of the core as the maker reads them: what is wrong, with the value, and what to do. */
import { sayTrouble, type Trouble } from "mouldwright/measure";
import { useLengthWords } from "./length-words.ts";
import { TradeText } from "./trade-text.tsx";

export function TroubleWords({ troubles }: { readonly troubles: readonly Trouble[] }) {
  const { unit } = useLengthWords();
  if (troubles.length === 0) return null;
  return (
    <div className="trouble" role="alert">
      {troubles.map((trouble) => {
        const { sentence, hint } = sayTrouble(trouble, { unit });
        return (
          <p key={`${trouble.code} ${trouble.where} ${sentence}`}>
            <strong>
              <TradeText>{sentence}</TradeText>
            </strong>{" "}
            <TradeText>{hint}</TradeText>
          </p>
        );
      })}
    </div>
  );
}
