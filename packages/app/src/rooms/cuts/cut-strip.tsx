/** The order at a glance: every page with its small picture, what it is, and whether it is done. */
import type { Plan } from "mouldwright/cutting";
import type { Drawing } from "mouldwright/sheets";
import { titleOf } from "mouldwright/sheets";
import { useEffect, useRef } from "react";
import { Button } from "react-aria-components";
import { DrawingView } from "../../common/drawing-view.tsx";
import type { Rule } from "./cut-words.ts";
import { isSamePage, type Page, pagesOf } from "./pages.ts";
import { TickSign } from "./signs.tsx";
import { useSmallPictures } from "./small-pictures.ts";

export interface CutStripProps {
  readonly plan: Plan;
  readonly page: Page;
  readonly done: ReadonlySet<number>;
  readonly rule: Rule;
  readonly onTurn: (page: Page) => void;
}

export function CutStrip({ plan, page, done, rule, onTurn }: CutStripProps) {
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
        {pagesOf(plan).map((one) => (
          <li key={pageKey(one)} data-page={pageKey(one)}>
            <Button
              className="strip-button"
              aria-current={isSamePage(one, page) ? "page" : "false"}
              onPress={() => onTurn(one)}
              aria-label={labelOf(plan, one, done, rule)}
            >
              {one.kind === "overview" ? (
                <span className="strip-title">Overview</span>
              ) : (
                <StripCut
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
  readonly number: number;
  readonly title: string;
  readonly picture: Drawing | undefined;
  readonly isDone: boolean;
}

function StripCut({ number, title, picture, isDone }: StripCutProps) {
  return (
    <>
      <span className="strip-number figures">
        {number}
        {isDone ? <TickSign /> : null}
      </span>
      <span className="strip-picture" aria-hidden="true">
        {picture === undefined ? null : <DrawingView drawing={picture} />}
      </span>
      <span className="strip-title">{title}</span>
    </>
  );
}

function pageKey(page: Page): string {
  return page.kind === "overview" ? "overview" : `cut ${page.number}`;
}

function titleIn(plan: Plan, number: number, { unit }: Rule): string {
  const cut = plan.cuts.find((one) => one.number === number);
  return cut === undefined ? "" : titleOf(cut, unit);
}

function labelOf(plan: Plan, page: Page, done: ReadonlySet<number>, rule: Rule): string {
  if (page.kind === "overview") return "Overview";
  const title = titleIn(plan, page.number, rule);
  return `Cut ${page.number}: ${title}${done.has(page.number) ? ", done" : ""}`;
}
