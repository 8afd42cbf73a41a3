/** The order at a glance: every page with its small picture, what it is, and whether it is done. */
import type { Plan } from "mouldwright/cutting";
import type { Stage } from "mouldwright/job";
import type { Drawing } from "mouldwright/sheets";
import { titleOf } from "mouldwright/sheets";
import { useEffect, useRef } from "react";
import { Button } from "react-aria-components";
import { DrawingView } from "../../common/drawing-view.tsx";
import type { Rule } from "./cut-words.ts";
import { isSamePage, type Page, pageKey, pagesOf } from "./pages.ts";
import { TickSign } from "./signs.tsx";
import { useSmallPictures } from "./small-pictures.ts";

export interface CutStripProps {
  readonly plan: Plan;
  readonly stages: readonly Stage[];
  readonly page: Page;
  readonly done: ReadonlySet<number>;
  readonly rule: Rule;
  readonly onTurn: (page: Page) => void;
}

export function CutStrip({ plan, stages, page, done, rule, onTurn }: CutStripProps) {
  const pictures = useSmallPictures(plan);
  const strip = useRef<HTMLOListElement>(null);
  // The page on show is seen in the strip; the room itself never scrolls for it.
  useEffect(() => {
    const list = strip.current;
    const here = list?.querySelector<HTMLElement>(`[data-page="${pageKey(page)}"]`);
    if (!list || !here) return;
    list.scrollTo({
      left: here.offsetLeft - (list.clientWidth - here.offsetWidth) / 2,
      top: here.offsetTop - (list.clientHeight - here.offsetHeight) / 2,
    });
  }, [page]);
  return (
    <nav className="cut-strip" aria-label="Order of cuts">
      <ol ref={strip}>
        {pagesOf(plan, stages).map((one) => (
          <li
            key={pageKey(one)}
            data-page={pageKey(one)}
            className={one.kind === "made" ? "strip-made" : undefined}
          >
            <Button
              className="strip-button"
              aria-current={isSamePage(one, page) ? "page" : "false"}
              onPress={() => onTurn(one)}
            >
              {one.kind === "overview" ? (
                <span className="strip-overview">Overview</span>
              ) : one.kind === "made" ? (
                <StripCut
                  lead="Made before, cut "
                  number={one.number}
                  title={titleIn(stages[one.stage]?.plan, one.number, rule)}
                  picture={undefined}
                  isDone
                />
              ) : (
                <StripCut
                  lead="Cut "
                  number={one.number}
                  title={titleIn(plan, one.number, rule)}
                  picture={pictures.get(one.number)}
                  isDone={done.has(one.number)}
                />
              )}
            </Button>
          </li>
        ))}
      </ol>
    </nav>
  );
}

interface StripCutProps {
  /** Read out before the number. */
  readonly lead: string;
  readonly number: number;
  readonly title: string;
  readonly picture: Drawing | undefined;
  readonly isDone: boolean;
}

function StripCut({ lead, number, title, picture, isDone }: StripCutProps) {
  return (
    <>
      <span className="strip-number figures">
        <span className="only-read">{lead}</span>
        {number}
        {isDone ? <TickSign /> : null}
      </span>
      <span className="strip-picture" aria-hidden="true">
        {picture === undefined ? null : <DrawingView drawing={picture} />}
      </span>
      <span className="strip-title">
        {title}
        {isDone ? <span className="only-read"> done</span> : null}
      </span>
    </>
  );
}

function titleIn(plan: Plan | undefined, number: number, { unit }: Rule): string {
  const cut = plan?.cuts.find((one) => one.number === number);
  return cut === undefined ? "" : titleOf(cut, unit);
}
