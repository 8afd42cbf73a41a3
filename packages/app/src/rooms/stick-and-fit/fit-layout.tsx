/** A page of this room: the answer first, what it is reckoned from beside it (on a phone below it), then the rest. */
import type { ReactNode } from "react";
import { TroubleWords } from "../../common/trouble-words.tsx";
import type { FitPage, FitValue } from "../../fitting/fit-answers.ts";
import { useFitAnswer } from "./use-fit-answer.ts";
import { usePageWidth } from "./use-page-width.ts";

export interface FitLayoutProps<Kind extends FitPage> {
  readonly page: Kind;
  readonly inputs: ReactNode;
  /** What the maker came for: figures and the main picture. */
  readonly first: (value: Extract<FitValue, { readonly kind: Kind }>) => ReactNode;
  /** The rest; on a phone it stands below the inputs. */
  readonly more: (value: Extract<FitValue, { readonly kind: Kind }>) => ReactNode;
}

export function FitLayout<Kind extends FitPage>({ page, inputs, first, more }: FitLayoutProps<Kind>) {
  const { place, widthMm } = usePageWidth();
  const { answer, isOld } = useFitAnswer(page, widthMm);
  const value = answer?.ok === true && isOf(answer.value, page) ? answer.value : null;
  return (
    <div className="fit-page">
      <div className="fit-answer" ref={place} aria-busy={isOld}>
        {answer === null ? <p className="waiting">Reckoning…</p> : null}
        {answer !== null && !answer.ok ? <TroubleWords troubles={answer.troubles} /> : null}
        {value === null ? null : first(value)}
      </div>
      <section className="fit-inputs panel" aria-label="What it is reckoned from">
        {inputs}
      </section>
      {value === null ? null : <div className="fit-rest">{more(value)}</div>}
    </div>
  );
}

function isOf<Kind extends FitPage>(
  value: FitValue,
  kind: Kind,
): value is Extract<FitValue, { readonly kind: Kind }> {
  return value.kind === kind;
}
