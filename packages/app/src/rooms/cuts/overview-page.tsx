/** The whole plan on one page: order, planes, time, way, what stays uncut and what would cure it. */

import type { Plan, PlanCut } from "mouldwright/cutting";
import { type Writer, writerFor } from "mouldwright/measure";
import {
  bandWords,
  cautions,
  errorWriter,
  finishWords,
  leanSpan,
  planeName,
  planesToFetch,
  saversWords,
  stickWords,
  timeWords,
  titleOf,
  uncutWords,
  waysTable,
  wayWords,
} from "mouldwright/sheets";
import type { ReactNode } from "react";
import { Button } from "react-aria-components";
import { TradeText } from "../../common/trade-text.tsx";
import type { Rule } from "./cut-words.ts";
import type { Page } from "./pages.ts";
import { TickSign } from "./signs.tsx";

export interface OverviewPageProps {
  readonly plan: Plan;
  readonly rule: Rule;
  readonly done: ReadonlySet<number>;
  readonly onTurn: (page: Page) => void;
}

export function OverviewPage({ plan, rule, done, onTurn }: OverviewPageProps) {
  const writer = writerFor(rule.unit, "print", rule.inchStep);
  return (
    <article className="overview" aria-label="Overview of the plan">
      <h2 className="overview-name">{plan.name}</h2>
      <p className="overview-verdict">{verdictOf(plan, done)}</p>
      <Uncut plan={plan} writer={writer} />
      <div className="overview-columns">
        <Titled title="Order of cuts">
          {plan.cuts.length === 0 ? (
            <p>No cut: the stick is the section already, or nothing on the shelf reaches it.</p>
          ) : (
            <ol className="order-list">
              {plan.cuts.map((cut) => (
                <OrderRow
                  key={cut.number}
                  cut={cut}
                  rule={rule}
                  isDone={done.has(cut.number)}
                  onTurn={onTurn}
                />
              ))}
            </ol>
          )}
        </Titled>
        <div>
          <Listed title="Planes to lay out" entries={planesToFetch(plan)} />
          <Titled title="Stick">
            <p className="figures">{capital(stickWords(plan, writer.length))}.</p>
          </Titled>
          <Titled title="Time">
            <p className="figures">{capital(timeWords(plan))}.</p>
          </Titled>
          <Titled title="Way">
            <p>
              <TradeText>{`${capital(wayWords(plan))}.`}</TradeText>
            </p>
            {plan.ways.length < 2 ? null : <Ways plan={plan} />}
          </Titled>
          <Listed
            title="Bands"
            entries={(plan.bands ?? []).map((band) =>
              bandWords(band, writer.length, errorWriter(rule.unit, rule.inchStep)),
            )}
          />
          <Listed title="Would save work" entries={saversWords(plan)} />
          <Titled title="When done">
            <p className="figures">
              {finishWords(plan, writer.length, errorWriter(rule.unit, rule.inchStep))}
            </p>
          </Titled>
          <Listed title="Take care" entries={cautions(plan)} />
          <Listed title="Taken as given" entries={plan.assumed} />
        </div>
      </div>
    </article>
  );
}

/** The ways that were compared: their figures side by side, and what is to be said for or against each. */
function Ways({ plan }: { readonly plan: Plan }) {
  return (
    <>
      <table className="ways-table figures">
        <thead>
          <tr>
            <th scope="col">
              <span className="only-read">What</span>
            </th>
            {plan.ways.map(({ way }) => (
              <th key={way} scope="col" className={way === plan.way ? "is-taken" : undefined}>
                {capital(way)}
                {way === plan.way ? <span className="only-read"> (taken)</span> : null}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {waysTable(plan).map(({ what, figures }) => (
            <tr key={what}>
              <th scope="row">{what}</th>
              {plan.ways.map(({ way }, i) => (
                <td key={way} className={way === plan.way ? "is-taken" : undefined}>
                  {figures[i]}
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
      <ul className="plain-list">
        {plan.ways.map(({ way, why }) => (
          <li key={way}>
            <b>{capital(way)}</b>
            {way === plan.way ? " (taken): " : ": "}
            {why}
          </li>
        ))}
      </ul>
    </>
  );
}

function verdictOf(plan: Plan, done: ReadonlySet<number>): string {
  const count = plan.cuts.length;
  const cuts = `${count} ${count === 1 ? "cut" : "cuts"}`;
  const far = done.size === 0 ? "" : done.size === count ? ", all done" : `, ${done.size} of them done`;
  if (plan.uncut.length === 0) return `Your shelf makes the whole of it: ${cuts}${far}.`;
  const places = plan.uncut.length === 1 ? "one place stays" : `${plan.uncut.length} places stay`;
  return `Your shelf does not make all of it: ${places} uncut after ${cuts}${far}.`;
}

/** What stays, and what to do about it; first of all, since the rest hangs on it. */
function Uncut({ plan, writer }: { readonly plan: Plan; readonly writer: Writer }) {
  if (plan.uncut.length === 0 && plan.warnings.length === 0) return null;
  const cures = (plan.cures ?? []).filter(({ places }) => places.length > 0);
  return (
    <div className="trouble overview-uncut figures">
      {plan.uncut.length === 0 ? null : (
        <>
          <h3>Stays uncut</h3>
          <ul className="plain-list">
            {plan.uncut.map((place) => (
              <li key={JSON.stringify([place.from, place.to])}>{uncutWords(plan, place, writer.length)}</li>
            ))}
          </ul>
        </>
      )}
      {cures.length === 0 ? null : (
        <>
          <h3>Would cure it</h3>
          <ul className="plain-list">
            {cures.map((cure) => (
              <li key={cure.says}>{cure.says}</li>
            ))}
          </ul>
        </>
      )}
      {plan.warnings.length === 0 ? null : (
        <>
          <h3>Mind</h3>
          <ul className="plain-list">
            {plan.warnings.map((warning) => (
              <li key={warning}>
                <TradeText>{warning}</TradeText>
              </li>
            ))}
          </ul>
        </>
      )}
    </div>
  );
}

interface OrderRowProps {
  readonly cut: PlanCut;
  readonly rule: Rule;
  readonly isDone: boolean;
  readonly onTurn: (page: Page) => void;
}

function OrderRow({ cut, rule, isDone, onTurn }: OrderRowProps) {
  const title = titleOf(cut, rule.unit);
  return (
    <li>
      <Button className="order-row" onPress={() => onTurn({ kind: "cut", number: cut.number })}>
        <span className="order-number figures">
          <span className="only-read">Turn to cut </span>
          {cut.number}
        </span>
        <span className="order-words">
          <strong>{title}</strong>
          <span className="quiet">
            {planeName(cut)}, {leanSpan(cut)}
          </span>
        </span>
        <span className="order-tick">
          {isDone ? (
            <>
              <TickSign />
              <span className="only-read"> done</span>
            </>
          ) : null}
        </span>
      </Button>
    </li>
  );
}

function Titled({ title, children }: { readonly title: string; readonly children: ReactNode }) {
  return (
    <section className="overview-section">
      <h3>{title}</h3>
      {children}
    </section>
  );
}

function Listed({ title, entries }: { readonly title: string; readonly entries: readonly string[] }) {
  if (entries.length === 0) return null;
  return (
    <Titled title={title}>
      <ul className="plain-list figures">
        {entries.map((entry) => (
          <li key={entry}>
            <TradeText>{entry}</TradeText>
          </li>
        ))}
      </ul>
    </Titled>
  );
}

function capital(words: string): string {
  return words.charAt(0).toUpperCase() + words.slice(1);
}
