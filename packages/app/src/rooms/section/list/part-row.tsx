/** One part in the list: its number, its name, and the planes that make it or why none does. */

import type { Trouble } from "mouldwright/measure";
import type { ReactNode } from "react";
import { Button } from "react-aria-components";
import { TradeText } from "../../../common/trade-text.tsx";
import { TroubleWords } from "../../../common/trouble-words.tsx";
import { CureLine, VerdictSign } from "../answer/answer-panel.tsx";
import type { Verdict } from "../answer/verdicts.ts";
import type { GripHands } from "./use-row-drag.ts";

export interface PartRowProps {
  readonly index: number;
  readonly name: string;
  readonly verdict: Verdict | undefined;
  readonly isOld: boolean;
  readonly isOpen: boolean;
  readonly troubles: readonly Trouble[];
  readonly drop: "above" | "below" | null;
  readonly grip: GripHands | null;
  readonly onToggle: () => void;
  readonly children: ReactNode;
}

export function PartRow(props: PartRowProps) {
  const { index, name, verdict, isOld, isOpen, troubles, drop, grip, onToggle, children } = props;
  const isUncut = (verdict?.uncut.length ?? 0) > 0;
  const classes = ["part-row", isOpen ? "open" : "", drop === null ? "" : `drop-${drop}`];
  return (
    <li className={classes.filter(Boolean).join(" ")}>
      <div className="part-head">
        <Button className="part-button" aria-expanded={isOpen} onPress={onToggle}>
          <span className={`part-balloon ${isUncut ? "uncut" : "cut"}`}>{index + 1}</span>
          <span className="part-words">
            <span className="part-name">{name}</span>
            <span className={`part-verdict${isOld ? " old" : ""}`}>
              {verdict === undefined ? null : <VerdictSign isGood={!isUncut} />}
              {sayVerdict(verdict)}
            </span>
          </span>
        </Button>
        {grip === null ? null : (
          // Dragging is one more way; Earlier and Later do the same for every hand.
          <span className="grip" aria-hidden="true" {...grip}>
            <svg viewBox="0 0 12 24" className="grip-sign" aria-hidden="true">
              <path d="M3 6h.01M9 6h.01M3 12h.01M9 12h.01M3 18h.01M9 18h.01" />
            </svg>
          </span>
        )}
      </div>
      {troubles.length === 0 ? null : <TroubleWords troubles={troubles} />}
      {isOpen ? (
        <div className="part-open">
          {isUncut && verdict !== undefined ? <WhyUncut verdict={verdict} isOld={isOld} /> : null}
          {children}
        </div>
      ) : null}
    </li>
  );
}

function WhyUncut({ verdict, isOld }: { readonly verdict: Verdict; readonly isOld: boolean }) {
  const reasons = [...new Set(verdict.uncut.map(({ why }) => why))];
  const tries = [...new Set(verdict.uncut.map((place) => place.try))];
  return (
    <div className="why-uncut">
      {reasons.map((why) => (
        <p key={why}>
          <TradeText>{why}</TradeText>
        </p>
      ))}
      {verdict.cures.length > 0
        ? verdict.cures.slice(0, 2).map((cure) => <CureLine key={cure.says} cure={cure} isOld={isOld} />)
        : tries.map((words) => (
            <p key={words} className="quiet">
              {words}
            </p>
          ))}
    </div>
  );
}

/** "½ in hollow, 25 mm rebate plane" or "stays uncut". */
export function sayVerdict(verdict: Verdict | undefined): string {
  if (verdict === undefined) return "not looked at yet";
  if (verdict.uncut.length > 0) return "stays uncut";
  return verdict.planes.length === 0 ? "nothing to cut" : verdict.planes.join(", ");
}
